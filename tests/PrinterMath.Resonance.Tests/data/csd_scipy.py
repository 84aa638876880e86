"""Writes csd_scipy.csv: cross-spectral densities and coherences of force and response in vtoolbox_case1_time.csv by scipy.signal.csd and scipy.signal.coherence.

Run in this folder: python3 csd_scipy.py  (written with SciPy 1.10.1, NumPy 1.24.2)
Columns: case, bin, real and imaginary part of the density in the product of the channels' units per Hz, coherence; 17 significant digits.
"""
import numpy as np
import scipy.signal as sig

data = np.loadtxt("vtoolbox_case1_time.csv", delimiter=",", skiprows=1)
force, response = data[:, 1], data[:, 2]
cases = {  # name: window, nperseg, noverlap, detrend
    "hann512": ("hann", 512, 256, "constant"),
    "hamming333": ("hamming", 333, 166, "constant"),
    "blackman500": ("blackman", 500, 375, "linear"),
}
with open("csd_scipy.csv", "w", newline="\n") as out:
    out.write("case,bin,re,im,coherence\n")
    for name, (window, n, overlap, detrend) in cases.items():
        how = dict(fs=1280.0, window=window, nperseg=n, noverlap=overlap, detrend=detrend)
        _, p = sig.csd(force, response, **how)
        _, c = sig.coherence(force, response, **how)
        for i, (v, g) in enumerate(zip(p, c)):
            out.write(f"{name},{i},{v.real:.17g},{v.imag:.17g},{g:.17g}\n")
