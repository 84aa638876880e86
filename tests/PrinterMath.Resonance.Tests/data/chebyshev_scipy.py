"""Writes chebyshev_scipy.csv: Dolph-Chebyshev windows of n + 1 points by scipy.signal.windows.chebwin, normalised to a sum of one."""
import numpy as np
import scipy
from scipy.signal import windows

with open("chebyshev_scipy.csv", "w", encoding="utf8") as out:
    out.write(f"# scipy.signal.windows.chebwin, SciPy {scipy.__version__}; columns: humps (points less two), tolerance, the window\n")
    for humps in (1, 2, 3, 4):
        for tolerance in (0.01, 0.025, 0.05, 0.1, 0.2):
            w = windows.chebwin(humps + 2, -20 * np.log10(tolerance))
            w /= w.sum()
            out.write(",".join([str(humps), repr(tolerance)] + [repr(float(v)) for v in w]) + "\n")
