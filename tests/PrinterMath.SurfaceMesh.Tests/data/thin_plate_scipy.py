"""Writes thin_plate_scipy.csv: thin plates through invented points by scipy.interpolate.RBFInterpolator, and their generalised cross-validation by dense linear algebra.

Rows: point,x,y,z (metres); height,s,x,y,z for SciPy's smoothing s, which is 8 pi n lambda; score,s,V,trA; best,s,V,trA for the s of least V.
"""
import csv
import numpy as np
import scipy
from scipy.interpolate import RBFInterpolator
from scipy.optimize import minimize_scalar

golden = 0.6180339887498949
index = np.arange(40)
x = 0.3 * ((0.5 + golden * index) % 1)
y = 0.22 * ((index + 0.5) / 40)
a, b = x / 0.3, y / 0.3
z = 1e-4 * (np.cos(5 * a) * np.sin(3 * b + 0.4) + 2 * a * b) + 6e-6 * np.random.RandomState(7).normal(size=40)
points = np.column_stack([x, y])
places = np.column_stack([0.3 * np.linspace(0.02, 0.97, 12), 0.22 * ((0.13 + 0.37 * np.arange(12)) % 1)])


def influence(s):
    n = len(x)
    r2 = (x[:, None] - x) ** 2 + (y[:, None] - y) ** 2
    kernel = 0.5 * r2 * np.log(np.where(r2 > 0, r2, 1))
    plane = np.column_stack([np.ones(n), x, y])
    q, _ = np.linalg.qr(plane, mode="complete")
    bend = q[:, 3:]
    return np.eye(n) - s * bend @ np.linalg.inv(bend.T @ kernel @ bend + s * np.eye(n - 3)) @ bend.T


def score(s):
    left = np.eye(len(x)) - influence(s)
    return len(x) * np.sum((left @ z) ** 2) / np.trace(left) ** 2, len(x) - np.trace(left)


with open("thin_plate_scipy.csv", "w", newline="") as file:
    file.write(f"# SciPy {scipy.__version__}, NumPy {np.__version__}; written by thin_plate_scipy.py; the points are invented\n")
    out = csv.writer(file, lineterminator="\n")
    for row in zip(x, y, z):
        out.writerow(["point", *map(repr, map(float, row))])
    for s in (0.0, 1e-5, 1e-3):
        model = RBFInterpolator(points, z, kernel="thin_plate_spline", degree=1, smoothing=s)
        for place, height in zip(places, model(places)):
            out.writerow(["height", repr(s), *map(repr, map(float, place)), repr(float(height))])
    for s in (1e-6, 1e-5, 1e-3):
        out.writerow(["score", repr(s), *map(repr, map(float, score(s)))])
    grid = np.exp(np.linspace(np.log(1e-9), np.log(1), 200))
    near = np.log(grid[np.argmin([score(s)[0] for s in grid])])
    best = np.exp(minimize_scalar(lambda log: score(np.exp(log))[0] * 1e12, bounds=(near - 0.2, near + 0.2), method="bounded", options={"xatol": 1e-8}).x)
    out.writerow(["best", repr(float(best)), *map(repr, map(float, score(best)))])
