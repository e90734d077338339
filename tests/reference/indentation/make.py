#!/usr/bin/env python3
"""Reference values for indentations by SciPy: writes student.csv, grubbs.csv and factors.csv beside itself.

student.csv: two-sided quantiles of Student's t. grubbs.csv: critical distances of the two-sided test for one
outlier at 5 %. factors.csv: contact area of a Vickers diamond in a flat over that in a sphere or a cylinder at
the same mean diagonal; here the depth and every point of the rim are found by brentq and the area by quad over
the whole circle, where the project solves quadratics and sums eight nodes on two faces.

Run: pip install scipy; python3 tests/reference/indentation/make.py
"""

import math
from pathlib import Path

from scipy.integrate import quad
from scipy.optimize import brentq
from scipy.stats import t

HERE = Path(__file__).parent
RISE = 1 / math.tan(math.radians(68))


def write(name, head, rows):
    lines = [head] + [",".join(f"{cell!r}" if isinstance(cell, float) else str(cell) for cell in row) for row in rows]
    (HERE / name).write_text("\n".join(lines) + "\n")


def student():
    chances = [0.01, 0.5, 0.6827, 0.9, 0.95, 0.9545, 0.99, 0.999, 0.9999, 0.999999]
    for freedom in [1, 2, 3, 4, 5, 6, 7, 9, 10, 19, 20, 49, 100, 333, 1000]:
        for chance in chances:
            yield freedom, chance, float(t.ppf((1 + chance) / 2, freedom))


def grubbs():
    for n in [3, 4, 5, 6, 7, 8, 10, 15, 20, 30, 50, 100, 500]:
        q = t.isf(0.05 / (2 * n), n - 2)
        yield n, float((n - 1) / math.sqrt(n) * math.sqrt(q * q / (n - 2 + q * q)))


def fall(case, side, x, y):
    """Height of the undisturbed surface over its top at (x, y); diameter 1, axis along x or along the diagonal."""
    if case == "sphere":
        square = x * x + y * y
    elif case == "at45":
        square = y * y
    else:
        square = (x - y) ** 2 / 2
    drop = 0.5 - math.sqrt(0.25 - square)
    return -drop if side == "convex" else drop


def rim(case, side, depth, angle):
    def gap(r):
        x, y = r * math.cos(angle), r * math.sin(angle)
        return RISE * max(abs(x), abs(y)) - depth - fall(case, side, x, y)

    # A bore may meet a face twice; the rim is the first meeting.
    steps = [k / 200 for k in range(100)]
    farthest = next(r for r in steps if gap(r) > 0)
    return brentq(gap, max(0, farthest - 0.005), farthest, xtol=1e-16, rtol=1e-14)


def factor(case, side, ratio):
    def mean_diagonal(depth):
        return sum(rim(case, side, depth, math.pi / 4 + k * math.pi / 2) for k in range(4)) / 2 - ratio

    flat = RISE / math.sqrt(2) * ratio / 2
    deepest = flat if side == "concave" else flat + 0.02
    depth = brentq(mean_diagonal, 1e-7, deepest, xtol=1e-16, rtol=1e-14)
    area = sum(
        quad(lambda a: rim(case, side, depth, a) ** 2 / 2, k * math.pi / 4, (k + 1) * math.pi / 4, epsabs=1e-15, epsrel=1e-11)[0]
        for k in range(8)
    )
    return ratio * ratio / 2 / area


def factors():
    largest = {
        ("sphere", "convex"): 0.206,
        ("sphere", "concave"): 0.094,
        ("at45", "convex"): 0.200,
        ("at45", "concave"): 0.222,
        ("along", "convex"): 0.243,
        ("along", "concave"): 0.125,
    }
    for (case, side), most in largest.items():
        for share in [0.05, 0.25, 0.5, 0.75, 1.0]:
            ratio = most * share
            yield case, side, ratio, factor(case, side, ratio)


write("student.csv", "freedom,chance,t", student())
write("grubbs.csv", "readings,critical", grubbs())
write("factors.csv", "case,side,ratio,factor", factors())
