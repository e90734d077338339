#!/usr/bin/env python3
"""Reference values between the rows of every published table, by SciPy: writes pchip.csv beside itself.

For each table and each column against the table's row scale: PchipInterpolator through the printed cells,
forward at the middle of every interval and at random places, backward by solving that same interpolant
with brentq. Columns that repeat a value have no inverse and get forward points only. SciPy's interpolant
and this project's are written independently of each other; the data are the printed tables themselves.

Run: pip install numpy scipy; python3 tests/reference/pchip/make.py
"""

import datetime
import sys
from pathlib import Path

import numpy as np
import scipy
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq

HERE = Path(__file__).parent
TABLES = HERE.parents[2] / "crates/hardness/data/tables"
ROW_SCALE = {
    "iso-18265-a1": "HV10",
    "astm-e140-t2": "HRB",
    "astm-a370-hrb": "HRB",
    "sae-j417-hv": "HV",
    "sae-j417-hb": "HBW",
    "astm-e140-t3": "HV",
    "astm-e140-t4": "HV",
    "astm-e140-t5": "HRB",
    "astm-e140-t6b": "HRB",
    "astm-e140-t9": "HB500",
    "gb-3771": "HB30",
}
IN_PRINT_ONLY = {"ksi", "d_mm", "ksi_new", "ksi_old", "Rm_sheet", "Rm_bar"}
FORWARD, BACKWARD = 15, 20


def read(path):
    lines = [line.split(",") for line in path.read_text().splitlines() if line[0] != "#"]
    return lines[0], lines[1:]


def cells(head, rows, row_scale, heading):
    at = [head.index(row_scale), head.index(heading)]
    pairs = [[line[i].rstrip("*") for i in at] for line in rows]
    pairs = sorted((float(x), float(y)) for x, y in pairs if y)
    return np.array([x for x, _ in pairs]), np.array([y for _, y in pairs])


def main():
    rng = np.random.default_rng(18265)
    out = []
    for path in sorted(TABLES.glob("*.csv")):
        head, rows = read(path)
        row_scale = ROW_SCALE.get(path.stem, "HRC")
        for heading in head:
            if heading == row_scale or heading in IN_PRINT_ONLY:
                continue
            x, y = cells(head, rows, row_scale, heading)
            curve = PchipInterpolator(x, y)
            middles = (x[:-1] + x[1:]) / 2
            places = np.concatenate([middles, rng.uniform(x[0], x[-1], FORWARD)])
            for place in places:
                out.append((path.stem, heading, "forward", float(place), float(curve(place))))
            if (np.diff(y) == 0).any():
                continue
            # Also close to the rows, where a solver could slip into the neighbouring interval.
            values = np.concatenate([rng.uniform(y[0], y[-1], BACKWARD), np.nextafter(y[1:-1:4], y[-1])])
            for value in values:
                i = min(int(np.searchsorted(y, value, side="right")) - 1, len(y) - 2)
                found = brentq(lambda r: curve(r) - value, x[i], x[i + 1], xtol=1e-13, rtol=1e-14)
                out.append((path.stem, heading, "backward", float(value), float(found)))
    versions = f"python {sys.version.split()[0]}, numpy {np.__version__}, scipy {scipy.__version__}"
    header = [
        "# Between the rows of every published table: monotone cubic (PCHIP) by SciPy, and its inverse by root search.",
        f"# Written by tests/reference/pchip/make.py; {versions}; {datetime.date.today().isoformat()}.",
        "# table, column: file and printed heading under crates/hardness/data/tables; units as printed (MPa for Rm_MPa).",
        "# forward: given on the table's row scale, expected in the column. backward: given in the column, expected on the row scale.",
        "# Shortest decimals that read back as the same double.",
        "table,column,direction,given,expected",
    ]
    lines = header + [",".join([t, c, d, repr(g), repr(e)]) for t, c, d, g, e in out]
    (HERE / "pchip.csv").write_text("\n".join(lines) + "\n")
    backward = sum(1 for row in out if row[2] == "backward")
    print(f"{len(out)} points, {len(out) - backward} forward and {backward} backward")


if __name__ == "__main__":
    main()
