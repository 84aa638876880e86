"""Writes welch_scipy.csv: one-sided densities of the response channel of vtoolbox_case1_time.csv by scipy.signal.welch.

Run in this folder: python3 welch_scipy.py  (written with SciPy 1.10.1, NumPy 1.24.2)
Columns: case, bin, density in (unit of the channel)^2/Hz, 17 significant digits.
"""
import numpy as np
import scipy.signal as sig

x = np.loadtxt("vtoolbox_case1_time.csv", delimiter=",", skiprows=1)[:, 2]
cases = {  # name: window, nperseg, noverlap, detrend
    "hann512": ("hann", 512, 256, "constant"),
    "boxcar500": ("boxcar", 500, 0, False),
    "hamming333": ("hamming", 333, 166, "constant"),
    "blackman1000": ("blackman", 1000, 750, "linear"),
    "blackmanharris256": ("blackmanharris", 256, 128, "constant"),
}
with open("welch_scipy.csv", "w", newline="\n") as out:
    out.write("case,bin,density\n")
    for name, (window, n, overlap, detrend) in cases.items():
        _, p = sig.welch(x, fs=1280.0, window=window, nperseg=n, noverlap=overlap, detrend=detrend)
        for i, v in enumerate(p):
            out.write(f"{name},{i},{v:.17g}\n")
