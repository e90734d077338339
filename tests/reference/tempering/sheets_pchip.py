#!/usr/bin/env python3
"""Hardness between the printed points of every tempering curve, by SciPy: writes sheets-pchip.csv beside itself.

PchipInterpolator through the lowest and through the highest printed values of each sheet, at the middle and at a
fifth of every step that is no wider than 120 K; values in doubt, marked with a question mark, are left out.
SciPy's interpolant and this project's are written independently of each other.

Run: pip install scipy; python3 tests/reference/tempering/sheets_pchip.py
"""

import csv
from pathlib import Path

from scipy.interpolate import PchipInterpolator

HERE = Path(__file__).parent
CURVES = HERE.parents[2] / "crates/steel/data/temper-curves.csv"


def points(text):
    for cell in text.split(";"):
        at, hrc = cell.split(":")
        if at == "start" or hrc.endswith("?"):
            continue
        low, _, high = hrc.partition("-")
        yield float(at), float(low), float(high or low)


def main():
    with CURVES.open() as file, (HERE / "sheets-pchip.csv").open("w") as out:
        out.write("id,celsius,low,high\n")
        for row in csv.DictReader(file):
            x, low, high = zip(*points(row["points"]))
            lines = [PchipInterpolator(x, y) for y in (low, high)]
            for a, b in zip(x, x[1:]):
                if b - a > 120:
                    continue
                for at in ((a + b) / 2, a + (b - a) / 5):
                    values = ",".join(f"{float(line(at)):.10f}" for line in lines)
                    out.write(f"{row['id']},{at!r},{values}\n")


main()
