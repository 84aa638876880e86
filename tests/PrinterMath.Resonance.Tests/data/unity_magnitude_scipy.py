"""Prints widths and ends of the bands about r = 1 of undamped sequences 1, -1, 1, -1, 1: times by scipy.optimize.fsolve from their constraints, ends by brentq.

Symmetric about the middle impulse at h, its neighbours g away: residual |1 - 2 cos(2 pi r g) + 2 cos(2 pi r h)|.
"""
import numpy as np
import scipy
from scipy.optimize import brentq, fsolve

print("SciPy", scipy.__version__)
W = 2 * np.pi


def residual(r, g, h):
    return 1 - 2 * np.cos(W * r * g) + 2 * np.cos(W * r * h)


for name, value, levels in (("UM-ZVD", 0.0, (0.05, 0.1)), ("UM-EI 5 %", -0.05, (0.05,)), ("UM-EI 10 %", -0.10, (0.1,))):
    g, h = fsolve(lambda x: [residual(1, *x) - value, x[0] * np.sin(W * x[0]) - x[1] * np.sin(W * x[1])], [0.276, 0.366], xtol=1e-12)
    for level in levels:
        low = brentq(lambda r: residual(r, g, h) - level, 0.4, 0.97, xtol=1e-13)
        high = brentq(lambda r: residual(r, g, h) - level, 1.03, 1.5, xtol=1e-13)
        print(f"{name}: times {h - g:.6f} {h:.6f} {h + g:.6f} {2 * h:.6f}; at {level}: {low:.6f} to {high:.6f}, width {high - low:.6f}")
