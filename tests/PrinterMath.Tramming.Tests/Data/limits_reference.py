"""Plans with limits and least total turning by SciPy, for LimitsReferenceTests. Writes limits_reference.csv; run: python3 limits_reference.py

Bed: plane a + b x + c y read on a grid of 5 x 4 places, x = 0..240, y = 0..180 mm, all with the same uncertainty. Lengths in mm.
Smallest tilt: least-distance programming by non-negative least squares (Lawson, Hanson 1974, Solving Least Squares Problems, chapter 23; scipy.optimize.nnls).
Least total turning: linear program (scipy.optimize.linprog, HiGHS). Least excess of limits that exclude each other: linear program.
"""
import numpy as np
from scipy.optimize import linprog, nnls

RNG = np.random.default_rng(20)
GX, GY = [g.ravel() for g in np.meshgrid(np.linspace(0, 240, 5), np.linspace(0, 180, 4))]
CENTRE = np.array([GX.mean(), GY.mean()])
M = np.array([[((GX - CENTRE[0]) ** 2).sum(), ((GX - CENTRE[0]) * (GY - CENTRE[1])).sum()], [0, ((GY - CENTRE[1]) ** 2).sum()]])
M[1, 0] = M[0, 1]


def case(count):
    angle = np.sort(RNG.uniform(0, 2 * np.pi, count)) if count > 4 else np.arange(count) * 2 * np.pi / count + RNG.uniform(-.4, .4, count)
    places = CENTRE + np.column_stack([130 * np.cos(angle), 100 * np.sin(angle)])
    lead = RNG.choice([.5, .7, .8, 1.0], count)
    plane = np.array([RNG.uniform(-1, 1), RNG.uniform(-.01, .01), RNG.uniform(-.01, .01)])
    low = -RNG.uniform(-.1, .9, count)
    high = low + RNG.uniform(.1, 1.2, count)
    return places.round(3), lead, plane.round(5), low.round(3), high.round(3)


def excess(places, low, high):
    # min s: low - s <= m + g.d <= high + s over m, g, s >= 0
    d = places - CENTRE
    rows = np.column_stack([np.ones(len(d)), d])
    a = np.vstack([np.column_stack([rows, -np.ones(len(d))]), np.column_stack([-rows, -np.ones(len(d))])])
    return linprog([0, 0, 0, 1], a, np.concatenate([high, -low]), bounds=[(None, None)] * 3 + [(0, None)]).x[3]


def smallest_tilt(places, plane, low, high):
    # r' M r least subject to low_i - high_j <= (r - g).(p_i - p_j)
    lower = np.linalg.cholesky(M)  # q = L' r
    g = plane[1:]
    rows, right = [], []
    for i in range(len(places)):
        for j in range(len(places)):
            if i != j:
                d = places[i] - places[j]
                rows.append(np.linalg.solve(lower, d))
                right.append(low[i] - high[j] + g @ d)
    e = np.vstack([np.array(rows).T, right])
    u, _ = nnls(e, np.array([0, 0, 1.0]), maxiter=10000)
    r = e @ u - np.array([0, 0, 1.0])
    return np.linalg.solve(lower.T, -r[:2] / r[2])


def least_turning(places, lead, plane):
    # min sum t_i: +-(c - h_i) / lead_i <= t_i
    h = plane[0] + places @ plane[1:]
    n = len(h)
    a = np.vstack([np.column_stack([1 / lead, -np.eye(n)]), np.column_stack([-1 / lead, -np.eye(n)])])
    return linprog(np.r_[0, np.ones(n)], a, np.r_[h / lead, -h / lead], bounds=[(None, None)] * (n + 1)).fun


with open("limits_reference.csv", "w", encoding="utf8") as out:
    out.write("# Made by limits_reference.py with SciPy 1.10.1, NumPy 1.24.2; invented beds, lengths in mm, slopes as ratios; same licence as this repository\n")
    out.write("# count; x; y; lead; low; high; a b c; least excess of the limits; smallest slopes x y (empty when limits exclude each other); least total turns without limits\n")
    for count in [3, 4, 4, 4, 5, 6, 3, 4, 4, 5, 8, 4]:
        places, lead, plane, low, high = case(count)
        s = excess(places, low, high)
        r = smallest_tilt(places, plane, low, high) if s < 1e-9 else []
        row = [[count], places[:, 0], places[:, 1], lead, low, high, plane, [s], r, [least_turning(places, lead, plane)]]
        out.write(";".join(" ".join(repr(float(v)) if k else str(v) for v in part) for k, part in enumerate(row)) + "\n")
