#!/usr/bin/env python3
"""What a conversion costs in SciPy: ASTM E140 Table 1, Rockwell C to Vickers and back.

Forward is PchipInterpolator of HV over HRC; backward interpolates the swapped columns, which is what a
user of SciPy would do, and not the inverse of the forward curve. One call on a million values, the best
of seven; printed in nanoseconds for one value. Beside it: cargo bench -p biteband-hardness
"""

import time
from pathlib import Path

import numpy as np
import scipy
from scipy.interpolate import PchipInterpolator

TABLE = Path(__file__).parents[3] / "crates/hardness/data/tables/astm-e140-t1.csv"


def columns():
    lines = [line.split(",") for line in TABLE.read_text().splitlines() if line[0] != "#"]
    head, rows = lines[0], lines[1:][::-1]
    take = lambda name: np.array([float(row[head.index(name)]) for row in rows])
    return take("HRC"), take("HV")


def best(curve, values):
    spent = []
    for _ in range(7):
        start = time.perf_counter()
        curve(values)
        spent.append(time.perf_counter() - start)
    return min(spent) / len(values) * 1e9


def main():
    hrc, hv = columns()
    rng = np.random.default_rng(20260101)
    there = best(PchipInterpolator(hrc, hv), rng.uniform(20, 68, 1_000_000))
    back = best(PchipInterpolator(hv, hrc), rng.uniform(238, 940, 1_000_000))
    print(f"numpy {np.__version__}, scipy {scipy.__version__}")
    print(f"HRC to HV {there:.1f} ns, HV to HRC {back:.1f} ns, both {there + back:.1f} ns a value")


if __name__ == "__main__":
    main()
