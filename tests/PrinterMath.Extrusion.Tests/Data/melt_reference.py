"""Check values of melt flow and heating, by NumPy and SciPy alone. Prints what the tests hold."""
import numpy as np
from scipy import integrate, optimize, special

# Cross melt: Q = (pi R^3/tau_w^3) * int tau^2 gamma(tau) dtau, gamma by inversion of tau = eta(gamma)*gamma.
N, TAU, D1, TS, A1, A2 = 0.25, 1.00861e5, 3.31719e9, 373.15, 20.194, 51.6


def plateau(kelvins):
    return D1 * np.exp(-A1 * (kelvins - TS) / (A2 + kelvins - TS))


def stress(rate, kelvins):
    eta0 = plateau(kelvins)
    return rate * eta0 / (1 + (eta0 * rate / TAU) ** (1 - N))


def rate_of(tau, kelvins):
    return np.exp(optimize.brentq(lambda g: np.log(stress(np.exp(g), kelvins) / tau), -60, 60, xtol=1e-14, rtol=1e-15))


def flow(pressure, radius, length, kelvins):
    wall = pressure * radius / (2 * length)
    value, _ = integrate.quad(lambda t: t * t * rate_of(t, kelvins), 0, wall, epsabs=0, epsrel=1e-12, limit=200)
    return np.pi * radius ** 3 / wall ** 3 * value


for mpa in (1, 2, 5):
    q = flow(mpa * 1e6, 0.2e-3, 0.8e-3, 483.15)
    print("capillary", mpa, "MPa", repr(q * 1e9), "mm3/s")


def wall_stress(q, radius, kelvins):
    return np.exp(optimize.brentq(
        lambda t: np.log(np.pi * radius ** 3 * integrate.quad(
            lambda x: x * x * rate_of(x * np.exp(t), kelvins), 0, 1, epsabs=0, epsrel=1e-11)[0] / q), 5, 16, xtol=1e-11))


def taper(q, r1, r2, length, kelvins):
    def at(z):
        radius = r1 + (r2 - r1) * z / length
        return 2 * wall_stress(q, radius, kelvins) / radius
    return integrate.quad(at, 0, length, epsabs=0, epsrel=1e-9)[0]


print("taper 1.0 to 0.2 mm radius, 2 mm long, 5 mm3/s, 210 C", repr(taper(5e-9, 1e-3, 0.2e-3, 2e-3, 483.15)), "Pa")

# Heating of a cylinder with a wall at constant temperature: part of the first difference that is left.
zeros = special.jn_zeros(0, 4000)
weight = special.j1(zeros)
for fo in (1e-3, 1e-2, 0.1, 0.2, 0.4, 0.8):
    decay = np.exp(-zeros ** 2 * fo)
    print("wall fixed", fo, repr(np.sum(2 / (zeros * weight) * decay)), repr(np.sum(4 / zeros ** 2 * decay)))


# The same with a film, Biot number B: z J1(z) = B J0(z).
def film(biot, fo, terms=400):
    edges = np.concatenate([[0], special.jn_zeros(1, terms)])
    tops = special.jn_zeros(0, terms)
    z = np.array([optimize.brentq(lambda v: v * special.j1(v) - biot * special.j0(v), a, b, xtol=1e-14) for a, b in zip(edges, tops)])
    decay = np.exp(-z ** 2 * fo)
    centre = np.sum(2 * special.j1(z) / (z * (special.j0(z) ** 2 + special.j1(z) ** 2)) * decay)
    mean = np.sum(4 * special.j1(z) ** 2 / (z ** 2 * (special.j0(z) ** 2 + special.j1(z) ** 2)) * decay)
    return centre, mean


for biot in (0.1, 1.0, 10.0, 100.0):
    for fo in (0.05, 0.4, 2.0):
        print("film", biot, fo, *map(repr, film(biot, fo)))
