"""Prints shortest durations of positive impulses that keep a tolerance over ranges: linear programs (scipy.optimize.linprog, HiGHS), bisection on the duration.

For each duration the impulses may stand at 401 times; the residual is bounded at 41 frequencies and 3 damping ratios of each range by a polygon of 96 sides. The polygon lets the residual
pass the tolerance by 0.05 %, the grid of times costs a little: the durations are good to about 0.2 %.
"""
import numpy as np
import scipy
from scipy.optimize import linprog

FACETS = np.exp(-2j * np.pi * np.arange(96) / 96)


def least(duration, ranges):
    t = np.linspace(0, duration, 401)
    rows = []
    for low, high, z0, z1 in ranges:
        for f in np.linspace(low, high, 41 if high > low else 1):
            for z in np.linspace(z0, z1, 3 if z1 > z0 else 1):
                w = 2 * np.pi * f
                term = np.exp(z * w * (t - duration) + 1j * w * np.sqrt(1 - z * z) * t)
                rows.append((FACETS[:, None] * term).real)
    a = np.vstack(rows)
    a = np.hstack([a, -np.ones((len(a), 1))])
    cost = np.zeros(402)
    cost[-1] = 1
    equal = np.ones((1, 402))
    equal[0, -1] = 0
    return linprog(cost, A_ub=a, b_ub=np.zeros(len(a)), A_eq=equal, b_eq=[1], bounds=[(0, None)] * 401 + [(None, None)], method="highs").fun


print("SciPy", scipy.__version__)
for tolerance, ranges in (
    (0.05, [(0.9, 1.1, 0.1, 0.1)]),
    (0.05, [(0.8, 1.2, 0.1, 0.1)]),
    (0.05, [(0.8, 1.2, 0.02, 0.1)]),
    (0.10, [(0.8, 1.2, 0, 0)]),
    (0.05, [(0.75, 1.25, 0, 0)]),
    (0.05, [(0.7, 1.3, 0, 0)]),
    (0.05, [(0.78, 0.86, 0.03, 0.07), (1.2, 1.32, 0.02, 0.05)]),
):
    low, high = 0.3, 2.5
    while high - low > 2e-4:
        middle = (low + high) / 2
        low, high = (middle, high) if least(middle, ranges) > tolerance else (low, middle)
    print(tolerance, ranges, f"{high:.4f}", flush=True)
