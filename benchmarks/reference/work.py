"""The same work in NumPy and SciPy. Each entry prepares its data and returns a call that returns numbers to compare."""

import os

import numpy as np
from scipy import fft, interpolate, optimize, signal, special


class Data:
    def __init__(self, folder):
        self._folder = folder

    def __getitem__(self, name):
        return np.fromfile(os.path.join(self._folder, name))


def welch(data):
    """scipy.signal.welch: Hann, 2048 points, half overlapped, mean removed."""
    x = data["vibration"]
    return lambda: signal.welch(x, 3200.0, window="hann", nperseg=2048, noverlap=1024, detrend="constant")[1]


def rfft_of_segments(data):
    """scipy.fft.rfft of the segments of that record alone: no window, no mean, no squares."""
    x = data["vibration"]
    segments = np.ascontiguousarray(np.lib.stride_tricks.sliding_window_view(x, 2048)[::1024])
    return lambda: fft.rfft(segments, axis=1)


def remaining(amplitudes, times, last, omega, zeta):
    damped = omega * np.sqrt(1 - zeta * zeta)
    cosine = sine = 0.0
    for a, t in zip(amplitudes, times):
        size = a * np.exp(zeta * omega * (t - last))
        angle = damped * t
        cosine = cosine + size * np.cos(angle)
        sine = sine + size * np.sin(angle)
    return np.sqrt(cosine * cosine + sine * sine)


def refine(at, low, high):
    golden = (np.sqrt(5) - 1) / 2
    a, b = high - golden * (high - low), low + golden * (high - low)
    va, vb = at(a), at(b)
    for _ in range(40):
        down = va > vb
        low, high = np.where(down, low, a), np.where(down, b, high)
        fresh = np.where(down, high - golden * (high - low), low + golden * (high - low))
        value = at(fresh)
        a, b = np.where(down, fresh, b), np.where(down, a, fresh)
        va, vb = np.where(down, value, vb), np.where(down, va, value)
    return np.maximum(va, vb)


def worst(amplitudes, times, band, damping):
    """Largest remaining vibration over the box: all sequences of one length, five damping ratios and all lines at once."""
    zeta = np.linspace(*damping, 5)[:, None]
    low, width = band[0], band[1] - band[0]
    last = times[-1]
    steps = np.maximum(8, np.ceil(width * last * 64)).astype(int)
    starts = np.concatenate(([0], np.cumsum(steps + 1)[:-1]))
    owner = np.repeat(np.arange(len(steps)), steps + 1)
    line = np.arange(len(owner)) - starts[owner]
    omega = 2 * np.pi * (low + width * line / steps[owner])
    values = remaining(amplitudes[:, owner], times[:, owner], last[owner], omega, zeta)
    largest = np.maximum.reduceat(values, starts, axis=1)
    best = np.empty(largest.shape, int)
    rows, hits = np.nonzero(values == largest[:, owner])
    best[rows[::-1], owner[hits[::-1]]] = line[hits[::-1]]
    refined = refine(
        lambda f: remaining(amplitudes, times, last, 2 * np.pi * f, zeta),
        low + width * (best - 1) / steps,
        low + width * (best + 1) / steps)
    inside = (best > 0) & (best < steps)
    return np.where(inside, np.maximum(largest, refined), largest).max(axis=0)


def sequence_search(name, band, damping):
    """The worst residual of the candidates that our side has designed: the designing and the choice are not repeated here."""
    def prepare(data):
        rows = data[name].reshape(-1, 2, 4)
        lengths = (rows[:, 0] != 0).sum(axis=1)
        groups = []
        for k in (2, 3, 4):
            members = np.flatnonzero(lengths == k)
            groups.append((members, np.ascontiguousarray(rows[members, 0, :k].T), np.ascontiguousarray(rows[members, 1, :k].T)))

        def call():
            result = np.empty(len(rows))
            for members, amplitudes, times in groups:
                result[members] = worst(amplitudes, times, band, damping)
            return result
        return call
    return prepare


def ringdown(data):
    """scipy.optimize.leastsq with the analytic derivatives, started at the peak of numpy.fft.rfft; then the covariance."""
    x = data["vibration"][:800]
    n = np.arange(800.0)

    def parts(p):
        fade = np.exp(-p[1] * n)
        return fade * np.cos(p[2] * n), fade * np.sin(p[2] * n)

    def error(p):
        c, s = parts(p)
        return p[0] + p[3] * c + p[4] * s - x

    def slopes(p):
        c, s = parts(p)
        return np.array([np.ones_like(n), -n * (p[3] * c + p[4] * s), n * (p[4] * c - p[3] * s), c, s])

    def call():
        spectrum = np.fft.rfft(x - x.mean())
        peak = np.argmax(np.abs(spectrum))
        start = [x.mean(), 5 / 800, 2 * np.pi * peak / 800, 0.0, 1.0]
        p, covariance, *_ = optimize.leastsq(error, start, Dfun=slopes, col_deriv=True, full_output=True, ftol=1e-12, xtol=1e-12)
        omega = np.hypot(p[1], p[2])
        return np.array([omega * 3200 / (2 * np.pi), p[1] / omega])
    return call


def bilinear(data):
    """scipy.interpolate.RegularGridInterpolator, method linear."""
    nodes = data["nodes"]
    model = interpolate.RegularGridInterpolator((nodes, nodes), data["grid"].reshape(len(nodes), -1))
    places = np.column_stack((data["ys"], data["xs"]))
    return lambda: model(places)


def bicubic(data):
    """scipy.interpolate.RectBivariateSpline.ev."""
    nodes, xs, ys = data["nodes"], data["xs"], data["ys"]
    model = interpolate.RectBivariateSpline(nodes, nodes, data["grid"].reshape(len(nodes), -1).T)
    return lambda: model.ev(xs, ys)


def plate(points, smoothing):
    return interpolate.RBFInterpolator(points[:, :2], points[:, 2], kernel="thin_plate_spline", degree=1, smoothing=smoothing)


def plate_heights(data):
    """scipy.interpolate.RBFInterpolator, thin_plate_spline, degree 1."""
    model = plate(data["points225"].reshape(-1, 3), 1e-4)
    places = np.column_stack((data["xs"], data["ys"]))[:100_000]
    return lambda: model(places)


def plate_fit(name, smoothing):
    """The same, fitted with a given smoothing: no cross-validation, no uncertainty."""
    def prepare(data):
        points = data[name].reshape(-1, 3)
        middle = np.array([[0.15, 0.15]])
        return lambda: plate(points, smoothing)(middle)
    return prepare


def pluck(data):
    """numpy.fft autocorrelation (padded to 288 000) and its highest peak between 20 Hz and 1 kHz."""
    x = data["pluck"]

    def call():
        spectrum = np.fft.rfft(x, 288_000)
        r = np.fft.irfft(spectrum.real ** 2 + spectrum.imag ** 2, 288_000)[:2401]
        k = 48 + np.argmax(r[48:])
        shift = (r[k - 1] - r[k + 1]) / (2 * (r[k - 1] - 2 * r[k] + r[k + 1]))
        return np.array([48_000 / (k + shift)])
    return call


def ideal(data):
    """Plain Python floats."""
    def call(f=150.0, length=0.25, density=8.4e-3):
        return np.array([density * (2 * length * f) ** 2])
    return call


def pinned(data):
    """Plain Python floats."""
    def call(f=150.0, length=0.25, density=8.4e-3, rigidity=2e-5):
        return np.array([density * (2 * length * f) ** 2 - (np.pi / length) ** 2 * rigidity])
    return call


def clamped(data):
    """scipy.optimize.brentq on the frequency equation of a clamped stiff string, lowest mode."""
    from math import atan2, pi, sqrt, tanh

    def call(f=150.0, length=0.25, density=8.4e-3, rigidity=2e-5):
        product = 2 * pi * f * length * length * sqrt(density / rigidity)

        def excess(p):
            q = product / p
            return p - pi - 2 * atan2(p, q * tanh(q / 2))
        p = optimize.brentq(excess, pi, 2 * pi, xtol=1e-15, rtol=4 * np.finfo(float).eps)
        return np.array([density * (2 * pi * f * length / p) ** 2 - (p / length) ** 2 * rigidity])
    return call


def plane(points):
    design = np.empty((len(points), 3))
    design[:, 0] = 1
    design[:, 1:] = points[:, :2]
    return np.linalg.lstsq(design, points[:, 2], rcond=None)[0]


def plane25(data):
    """numpy.linalg.lstsq: the coefficients alone."""
    points = data["points25"].reshape(-1, 3)
    return lambda: plane(points)[1:]


def orthogonal25(data):
    """numpy.linalg.svd of the centred points: the unit normal alone, upwards."""
    points = data["points25"].reshape(-1, 3)

    def call():
        normal = np.linalg.svd(points - points.mean(axis=0), full_matrices=False)[2][2]
        return normal if normal[2] > 0 else -normal
    return call


def zone10000(data):
    """scipy.optimize.linprog, method highs: least t with |z - a - b x - c y| <= t, in numbers of order one; the width alone."""
    points = data["points10000"].reshape(-1, 3)
    x, y, z = points.T
    middle, size = z.mean(), np.abs(z - z.mean()).max()

    def call():
        rows = np.column_stack((np.ones_like(x), x, y))
        limits = np.block([[rows, np.ones((len(x), 1))], [-rows, np.ones((len(x), 1))]])
        scaled = (z - middle) / size
        found = optimize.linprog([0, 0, 0, 1], A_ub=-limits, b_ub=-np.concatenate((scaled, -scaled)), bounds=(None, None), method="highs")
        return np.array([2 * size * found.fun])
    return call


def tramming100(data):
    """numpy.linalg.lstsq and the height of four screws: no uncertainties."""
    points = data["points100"].reshape(-1, 3)
    screws = np.array([[0, 0], [0.3, 0], [0.3, 0.3], [0, 0.3]])
    return lambda: (screws.mean(axis=0) - screws) @ plane(points)[1:]


def beads(data):
    """One NumPy expression."""
    widths = data["widths"]
    return lambda: 2e-4 * (widths - (1 - np.pi / 4) * 2e-4)


def fitseries(data):
    """The same posterior on the same grid, its table of scipy.special.ndtr made beforehand as on our side."""
    sigma = 0.1 * 0.01 * 50 ** (np.arange(16) / 15)
    flows = 0.90 + (np.arange(301) - 50) * 5e-4
    offset = 250
    table = special.ndtr((np.arange(2 * offset + 1) - offset) * 5e-4 / sigma[:, None])
    missed = np.ascontiguousarray(1 - table)
    trials = [(0.93 + 0.005 * (i % 9), (0.004 if i % 2 == 0 else -0.004)) for i in range(50)]
    trials = [(offset - round((flow - flows[0]) / 5e-4), flow + shift < 0.951) for flow, shift in trials]

    def call():
        weights = np.repeat(sigma[:, None] ** 0.25, len(flows), axis=1)
        for first, fits in trials:
            weights *= (table if fits else missed)[:, first:first + len(flows)]
        marginal = weights.sum(axis=0)
        return np.array([marginal @ flows / marginal.sum()])
    return call


def least_squares(readings):
    def prepare(data):
        """numpy.linalg.lstsq with a column of ones: the coefficients alone."""
        response = data["response"][:readings]
        design = np.column_stack((np.ones(readings), data["design"][:3 * readings].reshape(-1, 3)))
        return lambda: np.linalg.lstsq(design, response, rcond=None)[0]
    return prepare


def monte_carlo(data):
    """numpy.random.default_rng, mean, standard deviation, sort, two quantiles."""
    def call():
        rng = np.random.default_rng(1)
        y = rng.normal(2, 0.1, 1_000_000) * rng.normal(3, 0.2, 1_000_000)
        mean, deviation = y.mean(), y.std(ddof=1)
        y.sort()
        return np.array([mean, deviation, y[24_999], y[974_999]])
    return call


ALL = {
    "welch": welch,
    "rfft": rfft_of_segments,
    "sequences": sequence_search("sequences", (43, 47), (0.04, 0.08)),
    "sequences-wide": sequence_search("sequences-wide", (40, 160), (0.02, 0.10)),
    "ringdown": ringdown,
    "bilinear": bilinear,
    "bicubic": bicubic,
    "plate-heights": plate_heights,
    "plate-fit225": plate_fit("points225", 1e-4),
    "plate-fit1024": plate_fit("points1024", 1e-4 * 1024 / 225),
    "pluck": pluck,
    "ideal": ideal,
    "pinned": pinned,
    "clamped": clamped,
    "plane25": plane25,
    "orthogonal25": orthogonal25,
    "zone10000": zone10000,
    "tramming100": tramming100,
    "beads": beads,
    "fitseries50": fitseries,
    "least-squares-100": least_squares(100),
    "least-squares-1000": least_squares(1000),
    "monte-carlo": monte_carlo,
}
