"""Values of SlopeRuleReferenceTests, by SciPy: python3 slope_rules.py"""
import numpy as np
from scipy.interpolate import Akima1DInterpolator, CubicSpline, PchipInterpolator

y = [10, 10, 10, 10, 10, 10, 10.5, 15, 50, 60, 85]
at = [4.5, 6.5, 7.5, 8.5]
x = np.arange(11.0)
print("Akima's data")
for name, f in (("natural", CubicSpline(x, y, bc_type="natural")), ("pchip", PchipInterpolator(x, y)), ("akima", Akima1DInterpolator(x, y))):
    print(name, [f"{v:.9f}" for v in f(at)])

print("uneven")
x = np.array([0, 1, 2.5, 3, 4.75, 7])
y = [1, 3, 2, 2.5, 6, 5.5]
at = [0.4, 1.7, 2.8, 4, 6.1]
for name, f in (("natural", CubicSpline(x, y, bc_type="natural")), ("pchip", PchipInterpolator(x, y)), ("akima", Akima1DInterpolator(x, y))):
    print(name, [f"{v:.9f}" for v in f(at)])


def franke(x, y):
    return (0.75 * np.exp(-((9 * x - 2) ** 2 + (9 * y - 2) ** 2) / 4) + 0.75 * np.exp(-(9 * x + 1) ** 2 / 49 - (9 * y + 1) / 10)
            + 0.5 * np.exp(-((9 * x - 7) ** 2 + (9 * y - 3) ** 2) / 4) - 0.2 * np.exp(-(9 * x - 4) ** 2 - (9 * y - 7) ** 2))


print("Franke's function, tensor product of natural splines, errors at 401 x 401 places")
g = np.linspace(0, 1, 401)
for n in (11, 21):
    a = np.linspace(0, 1, n)
    z = franke(a[:, None], a[None, :])
    e = CubicSpline(a, CubicSpline(a, z, bc_type="natural")(g), axis=1, bc_type="natural")(g) - franke(g[:, None], g[None, :])
    print(n, f"{np.abs(e).max():.6e} {np.sqrt((e ** 2).mean()):.6e}")
