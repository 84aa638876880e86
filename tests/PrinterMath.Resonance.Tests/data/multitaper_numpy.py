"""Writes slepian_scipy.csv and multitaper_numpy.csv.

Run in this folder: python3 multitaper_numpy.py  (written with SciPy 1.10.1, NumPy 1.24.2)
slepian_scipy.csv: tapers by scipy.signal.windows.dpss of 64 samples, NW 2.5. Columns: taper, sample, value.
multitaper_numpy.csv: one-sided densities of the first 1000 samples of the response in vtoolbox_case1_time.csv, mean removed, seven tapers of NW 4 by
scipy.signal.windows.dpss and numpy.fft.rfft, weighted by concentration and by the fixed point of Thomson 1982 (5.2, 5.3) with 1000 iterations. Columns: bin, the two
densities in (unit of the channel)^2/Hz, degrees of freedom of the second; 17 significant digits.
"""
import numpy as np
from scipy.signal.windows import dpss

with open("slepian_scipy.csv", "w", newline="\n") as out:
    out.write("taper,sample,value\n")
    for k, taper in enumerate(dpss(64, 2.5, 5)):
        for i, v in enumerate(taper):
            out.write(f"{k},{i},{v:.17g}\n")

rate = 1280.0
x = np.loadtxt("vtoolbox_case1_time.csv", delimiter=",", skiprows=1)[:1000, 2]
x = x - x.mean()
tapers, lam = dpss(len(x), 4, 7, return_ratios=True)
each = np.abs(np.fft.rfft(tapers * x)) ** 2 / rate
noise = np.full(each.shape[1], x.var() / rate)
plain = lam @ each / lam.sum()
adapted = (each[0] + each[1]) / 2
for _ in range(1000):
    b = adapted / (np.outer(lam, adapted) + np.outer(1 - lam, noise))
    weights = lam[:, None] * b**2
    adapted = (weights * each).sum(0) / weights.sum(0)
freedom = 2 * weights.sum(0) ** 2 / (weights**2).sum(0)
paired = np.full(each.shape[1], 2.0)
paired[0] = paired[-1] = 1
freedom[0] /= 2
freedom[-1] /= 2
with open("multitaper_numpy.csv", "w", newline="\n") as out:
    out.write("bin,concentration,adaptive,freedom\n")
    for i in range(each.shape[1]):
        out.write(f"{i},{paired[i] * plain[i]:.17g},{paired[i] * adapted[i]:.17g},{freedom[i]:.17g}\n")
