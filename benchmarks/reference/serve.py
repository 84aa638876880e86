"""Answers compare.py as our own process does: "about", "result task file", "time task calls", one line each."""

import os
import sys
import time

import numpy as np
import scipy

from work import ALL, Data


def libraries():
    np.linalg.lstsq(np.eye(2), np.ones(2), rcond=None)
    with open("/proc/self/maps", encoding="ascii", errors="ignore") as maps:
        names = {os.path.basename(line.split()[-1]) for line in maps if "/" in line}
    return " ".join(sorted(n for n in names if n.startswith(("libblas", "liblapack", "libopenblas", "libmkl", "libblis")))) or "built in"


def timed(call, calls):
    """Nanoseconds of processor time a call, user and system, after one call that is not counted."""
    call()
    begin = time.process_time_ns()
    for _ in range(calls):
        call()
    return (time.process_time_ns() - begin) / calls


def main():
    data, prepared = Data(sys.argv[1]), {}
    for line in sys.stdin:
        word, *rest = line.split()
        if word == "about":
            answer = f"Python {sys.version.split()[0]}, SciPy {scipy.__version__}, NumPy {np.__version__} (linear algebra: {libraries()})"
        else:
            call = prepared.setdefault(rest[0], None) or ALL[rest[0]](data)
            prepared[rest[0]] = call
            if word == "result":
                np.ascontiguousarray(call(), dtype=float).tofile(rest[1])
                answer = "done"
            else:
                answer = repr(timed(call, int(rest[1])))
        print(answer, flush=True)


main()
