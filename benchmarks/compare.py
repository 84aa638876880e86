#!/usr/bin/env python3
"""Times PrinterMath beside SciPy and NumPy, call by call in turn, and writes RESULTS.md. See README.md.

    python3 benchmarks/compare.py            all operations, writes RESULTS.md
    python3 benchmarks/compare.py welch ...  these alone, printed
"""

import datetime
import os
import statistics
import subprocess
import sys
import tempfile
import time
from dataclasses import dataclass
from typing import Optional

HERE = os.path.dirname(os.path.abspath(__file__))
OURS = os.path.join(HERE, "PrinterMath.Benchmarks", "bin", "Release", "net10.0", "PrinterMath.Benchmarks.dll")
ROUNDS = 31
BLOCK_NS = 3e6
WARM_SECONDS = 0.9


@dataclass(frozen=True)
class Row:
    what: str
    task: str
    theirs: Optional[str] = None
    api: str = ""
    times: Optional[float] = None  # our target: at least so many times as fast as their faster median
    below: Optional[float] = None  # our target in seconds
    tolerance: Optional[float] = None  # of the largest number; None: the two do different work
    note: str = ""


ROWS = [
    Row("Welch, 60 s at 3200 Hz, 2048-point Hann, 50 %", "welch", "welch", "scipy.signal.welch", times=1, tolerance=1e-12),
    Row("the same against transforming its segments alone", "welch", "rfft", "scipy.fft.rfft", times=0.4,
        note="target: no more than 2.5 times theirs"),
    Row("Sequence search, 4 families x 151 frequencies, narrow box", "sequences", "sequences", "NumPy", times=15, tolerance=1e-9,
        note="43 to 47 Hz, damping 0.04 to 0.08"),
    Row("Sequence search, 4 families x 151 frequencies, wide box", "sequences-wide", "sequences-wide", "NumPy", times=15, tolerance=1e-9,
        note="40 to 160 Hz, damping 0.02 to 0.10"),
    Row("Raw 3-axis 60 s record to recommendation", "recommendation", below=50e-3),
    Row("Ring-down, one mode, 800 samples", "ringdown", "ringdown", "scipy.optimize.leastsq", tolerance=1e-5),
    Row("Bilinear height at 1 000 000 places, 11 x 11 nodes", "bilinear", "bilinear", "RegularGridInterpolator", times=12, tolerance=1e-12),
    Row("Bicubic height at 1 000 000 places, 11 x 11 nodes", "bicubic", "bicubic", "RectBivariateSpline.ev", times=12, tolerance=1e-12),
    Row("Thin plate of 225 centres at 100 000 places", "plate-heights", "plate-heights", "RBFInterpolator", times=6, tolerance=1e-9),
    Row("Thin plate through 225 points, smoothing given", "plate-fit225", "plate-fit225", "RBFInterpolator", times=0.5, tolerance=1e-9),
    Row("Thin plate through 1024 points, smoothing given", "plate-fit1024", "plate-fit1024", "RBFInterpolator", times=0.5, tolerance=1e-9),
    Row("Thin plate through 225 points, smoothing by cross-validation", "plate-cross-validation225"),
    Row("Pluck, 3 s at 48 kHz", "pluck", "pluck", "numpy.fft autocorrelation", times=1, tolerance=5e-3),
    Row("Tension of an ideal string", "ideal", "ideal", "Python floats", below=1e-6, tolerance=1e-12),
    Row("Tension of a pinned span", "pinned", "pinned", "Python floats", below=1e-6, tolerance=1e-12),
    Row("Tension of a clamped span", "clamped", "clamped", "scipy.optimize.brentq", below=1e-6, tolerance=1e-9),
    Row("Plane through 25 points", "plane25", "plane25", "numpy.linalg.lstsq", below=5e-6, tolerance=1e-9),
    Row("Orthogonal plane through 25 points", "orthogonal25", "orthogonal25", "numpy.linalg.svd", below=5e-6, tolerance=1e-9),
    Row("Minimum zone in z of 10 000 points", "zone10000", "zone10000", "scipy.optimize.linprog (HiGHS)", below=10e-3, tolerance=1e-6),
    Row("Tramming plan, 4 screws, from 100 points", "tramming100", "tramming100", "numpy.linalg.lstsq", below=20e-6, tolerance=1e-9),
    Row("Cross-sections of 1 000 000 beads", "beads", "beads", "NumPy", below=20e-3, tolerance=1e-12),
    Row("Fit series, 50 trials", "fitseries50", "fitseries50", "NumPy", below=200e-6, tolerance=1e-9),
    Row("Linear least squares, 100 readings, 3 columns and a constant", "least-squares-100", "least-squares-100", "numpy.linalg.lstsq", tolerance=1e-9),
    Row("Linear least squares, 1000 readings, 3 columns and a constant", "least-squares-1000", "least-squares-1000", "numpy.linalg.lstsq", tolerance=1e-9),
    Row("Monte Carlo, 1 000 000 draws of a product", "monte-carlo", "monte-carlo", "numpy.random", tolerance=1e-3),
]


class Side:
    """A process that answers one line for each line it is sent, on one core."""

    def __init__(self, command, core, environment):
        self._process = subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, bufsize=1,
            env={**os.environ, **environment, "OMP_NUM_THREADS": "1", "OPENBLAS_NUM_THREADS": "1", "MKL_NUM_THREADS": "1"},
            preexec_fn=lambda: os.sched_setaffinity(0, {core}))
        self.nanoseconds = {}
        self.calls = {}

    def ask(self, *words):
        self._process.stdin.write(" ".join(map(str, words)) + "\n")
        answer = self._process.stdout.readline()
        if not answer:
            raise SystemExit(f"{words}: the process ended")
        return answer.strip()

    def time(self, task, calls):
        return float(self.ask("time", task, calls))

    def warm(self, task):
        """At least 60 calls and two pauses, so that compilation in the background has caught up."""
        for _ in range(3):
            end, done, one = time.monotonic() + WARM_SECONDS / 3, 0, self.time(task, 1)
            while time.monotonic() < end or done < 20:
                calls = max(1, min(20, int(0.1e9 / one)))
                one = self.time(task, calls)
                done += calls
            time.sleep(0.2)
        self.calls[task] = max(1, min(10_000, int(BLOCK_NS / one)))

    def close(self):
        self._process.stdin.close()
        self._process.wait()


def read(path):
    import array
    values = array.array("d")
    with open(path, "rb") as file:
        values.frombytes(file.read())
    return values


def disagreement(ours, theirs, folder, row):
    """Largest difference as a share of the largest number."""
    a, b = os.path.join(folder, "ours"), os.path.join(folder, "theirs")
    ours.ask("result", row.task, a)
    theirs.ask("result", row.theirs, b)
    x, y = read(a), read(b)
    if len(x) != len(y):
        raise SystemExit(f"{row.task}: {len(x)} numbers against {len(y)}")
    return max(abs(p - q) for p, q in zip(x, y)) / max(abs(q) for q in y)


def measure(row, ours, fresh, warm, folder):
    sides = [(ours, row.task)] + ([(fresh, row.theirs), (warm, row.theirs)] if row.theirs else [])
    difference = None
    if row.theirs and row.tolerance:
        difference = disagreement(ours, warm, folder, row)
        if not difference <= row.tolerance:
            raise SystemExit(f"{row.task}: the results differ by {difference:.1e} of the largest; {row.tolerance:.0e} is allowed")
    for side, task in sides:
        side.warm(task)
    taken = [[] for _ in sides]
    for turn in range(ROUNDS):
        for i in range(len(sides)):
            i = (i + turn) % len(sides)
            side, task = sides[i]
            taken[i].append(side.time(task, side.calls[task]))
    return difference, taken


def span(ns):
    for size, unit in ((1e6, "ms"), (1e3, "µs")):
        if ns >= size:
            return f"{ns / size:.3g} {unit}" if ns < 1000 * size else f"{ns / size:.0f} {unit}"
    return f"{ns:.0f} ns"


def line(row, difference, taken):
    medians = [statistics.median(t) for t in taken]
    least = [min(t) for t in taken]
    cells = [f"{span(m)} ({span(s)})" for m, s in zip(medians, least)]
    ratios = [f"{m / medians[0]:.3g}" for m in medians[1:]]
    aim, reached = "none", ""
    if row.times:
        aim = f"at least {row.times:g}"
        reached = "reached" if min(medians[1:]) / medians[0] >= row.times else "**not reached**"
    if row.below:
        aim = f"under {span(row.below * 1e9)}"
        reached = "reached" if medians[0] < row.below * 1e9 else "**not reached**"
    theirs = cells[1:] if row.theirs else ["", ""]
    agreement = f"{difference:.0e} ({row.tolerance:.0e})" if difference is not None else ""
    what = row.what + (f" ({row.note})" if row.note else "")
    return "| " + " | ".join([what, cells[0], row.api, *theirs, *(ratios or ["", ""]), aim, reached, agreement]) + " |"


HEAD = """| operation | ours | theirs, by | fresh | warm | fresh / ours | warm / ours | target | | differ (allowed) |
|---|---|---|---|---|---|---|---|---|---|"""


def processor():
    with open("/proc/cpuinfo", encoding="utf-8") as file:
        text = file.read()
    flags = set(next(l for l in text.splitlines() if l.startswith("flags")).split())
    vector = "AVX-512" if "avx512f" in flags else "AVX2" if "avx2" in flags else "SSE"
    kind = "virtual machine" if "hypervisor" in flags else "machine"
    return f"x86-64 {kind} of {os.cpu_count()} cores, {vector}"


def main():
    if not os.path.exists(OURS):
        raise SystemExit("Build first: dotnet build -c Release benchmarks/PrinterMath.Benchmarks")
    wanted = sys.argv[1:]
    rows = [row for row in ROWS if not wanted or row.task in wanted]
    core = max(os.sched_getaffinity(0))
    python = [sys.executable, os.path.join(HERE, "reference", "serve.py")]
    load = [os.getloadavg()[0]]
    with tempfile.TemporaryDirectory() as folder:
        ours = Side(["dotnet", OURS, "serve"], core, {})
        ours.ask("inputs", folder)
        fresh = Side([*python, folder], core, {})
        warm = Side([*python, folder], core, {"MALLOC_MMAP_THRESHOLD_": str(1 << 30), "MALLOC_TRIM_THRESHOLD_": str(1 << 33), "MALLOC_TOP_PAD_": str(1 << 28)})
        about, framework = warm.ask("about"), ours.ask("about")
        lines = []
        for row in rows:
            lines.append(line(row, *measure(row, ours, fresh, warm, folder)))
            load.append(os.getloadavg()[0])
            print(lines[-1], flush=True)
        allocated = int(ours.ask("bytes", "recommendation")) if not wanted else 0
        for side in (ours, fresh, warm):
            side.close()
    if wanted:
        return
    sdk = subprocess.run(["dotnet", "--version"], cwd=HERE, capture_output=True, text=True, check=True).stdout.strip()
    record = 4 * 192_000 * 8
    with open(os.path.join(HERE, "RESULTS.md"), "w", encoding="utf-8") as file:
        file.write(f"""# Speed beside SciPy and NumPy

Written by `compare.py`; [README.md](README.md) says how it measures. A time is processor time, the median of {ROUNDS} turns, the least in brackets; a ratio above 1 means that we are faster.

- Date: {datetime.date.today().isoformat()}
- Machine: {processor()}; both sides on one core, the same, in turn
- Load (one minute average) while measuring: {min(load):.1f} to {max(load):.1f}; the machine was {"otherwise idle" if max(load) < 1.5 else "shared with other work, which processor time leaves out but caches do not, so take ratios rather than times"}
- Ours: SDK {sdk}, {framework}, Release, default settings of the runtime
- Theirs: {about}

{HEAD}
""" + "\n".join(lines) + f"""

From record to recommendation allocates {allocated / 1e6:.1f} MB in all, {allocated / record:.1f} times the record; a peak below that, which was not measured; the design allows a peak of 5 times.
""")


if __name__ == "__main__":
    main()
