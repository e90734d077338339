"""The tempering regression and the learning from own results worked out another way, for crates/steel/tests/temper and
tests/tests/tempering.rs.

Independent of the Rust code: SciPy's interpolation between the rows of ASTM E140, SciPy's least squares on residuals
that are whitened by the full matrix of covariances of every steel, and the normal law conditioned by NumPy's general
solver. Data, priors and the rounded coefficients are read from crates/steel/data.

Run: python make.py        (needs numpy and scipy; takes about three minutes of one core)
Writes coefficients.csv, left-out.csv, predictions.csv and learning.csv beside itself.
"""

import csv
import itertools
import pathlib

import numpy
from scipy.interpolate import PchipInterpolator
from scipy.optimize import least_squares
from scipy.special import expit

HERE = pathlib.Path(__file__).parent
ROOT = HERE.parents[2]
STEEL = ROOT / "crates/steel/data"


def table(path):
    with open(path, encoding="utf-8") as file:
        return list(csv.DictReader(line for line in file if not line.startswith("#")))


pairs = [(float(r["HRC"]), float(r["HV"])) for r in table(ROOT / "crates/hardness/data/tables/astm-e140-t1.csv")]
hrc_row, hv_row = numpy.array(sorted(pair for pair in pairs if pair[0] >= 20)).T
up, down = PchipInterpolator(hrc_row, hv_row), PchipInterpolator(hv_row, hrc_row)
slope = up.derivative()


def to_hv(hrc):
    return numpy.where(hrc < 20, 238 + 5 * (hrc - 20), up(numpy.clip(hrc, 20, 68)))


def to_hrc(hv):
    # Back along the same curve: the curve the other way round is only near it.
    inside = numpy.clip(hv, 238, 940)
    hrc = down(inside)
    for _ in range(4):
        hrc = numpy.clip(hrc - (up(hrc) - inside) / slope(hrc), 20, 68)
    return numpy.where(hv < 238, 20 + (hv - 238) / 5, hrc)


rows = table(STEEL / "tempering-coefficients.csv")
names = [r["name"] for r in rows if not r["name"].startswith("spread_")]
prior = numpy.array([float(r["prior_mean"]) for r in rows[: len(names)]])
width = numpy.array([float(r["prior_sd"]) for r in rows[: len(names)]])
rounded = numpy.array([float(r["value"]) for r in rows[: len(names)]])
spread = {r["name"].removeprefix("spread_"): float(r["value"]) for r in rows[len(names) :]}


def predict(values, steel, celsius, hours):
    k = dict(zip(names, values))
    c, mn, si, ni, cr, mo, v = steel
    d = c - 0.45
    p = (celsius + 273.15) * (k["constant"] + numpy.log10(hours)) / 1000
    p_room = 298.15 * k["constant"] / 1000
    start = min(68.0, k["start"] + k["start_rise"] * -numpy.expm1(-c / k["start_carbon"]))
    f = numpy.clip(k["first_share"] + k["first_share_carbon"] * d, 0.02, 0.9)
    most = min(k["longest_delay"], 3.6)
    delay = most * -numpy.expm1(-(k["molybdenum"] * mo + k["vanadium"] * v) / most)
    middle = k["second_place"] + k["carbon"] * d + k["silicon"] * si + k["manganese"] * mn
    middle = middle + k["nickel"] * ni + k["chromium"] * cr

    def softened(p):
        held = p - delay * numpy.exp(-(((p - 14.3) / 2.2) ** 2) / 2)
        first = expit((p - k["first_place"] - k["first_silicon"] * si) / k["first_width"])
        return f * first + (1 - f) * expit((held - middle) / k["second_width"])

    kept = numpy.minimum(1, (1 - softened(p)) / (1 - softened(p_room)))
    return to_hrc(k["soft"] + (to_hv(start) - k["soft"]) * kept)


class Steel:
    def __init__(self, row):
        self.key, self.source = row["steel"], row["source"]
        self.shares = [float(row[x]) for x in ("c", "mn", "si", "ni", "cr", "mo", "v")]
        own = [r for r in table(STEEL / "tempering-results.csv") if r["steel"] == self.key]
        self.celsius = numpy.array([float(r["celsius"]) for r in own])
        self.seconds = numpy.array([float(r["seconds"]) for r in own])
        self.hrc = numpy.array([float(r["hrc"]) for r in own])
        weight = numpy.where(self.hrc < 20, 0.2, 1.0)
        if self.source == "penha-2010":
            early = (self.seconds < 600) & (self.celsius >= 400)
            late = ~early & (self.seconds <= 900) & (self.celsius >= 500)
            weight = weight * numpy.where(early, 0.1, 1) * numpy.where(late, 0.3, 1)
        if self.key.startswith("hj1945-0.98"):
            weight = numpy.where((abs(self.celsius - 602) < 4) & (self.seconds > 86000), 0, weight)
        self.counts = weight > 0
        sd = {"penha-2010": 6.0, "hollomon-jaffe-1945": 5.0}.get(self.source, 4.0)
        matrix = numpy.diag(sd**2 / weight[self.counts]) + 1.2**2
        self.root = numpy.linalg.cholesky(matrix)

    def off(self, values):
        return predict(values, self.shares, self.celsius, self.seconds / 3600) - self.hrc

    def white(self, values):
        return numpy.linalg.solve(self.root, self.off(values)[self.counts])

    def shop(self):
        inside = (self.celsius >= 150) & (self.celsius <= 700) & (self.seconds >= 600) & (self.seconds <= 36000)
        return inside & (self.hrc >= 20) & (self.hrc <= 65)


def fit(steels):
    def residuals(z):
        values = prior + width * z
        return numpy.concatenate([*(steel.white(values) for steel in steels), z])

    found = least_squares(residuals, numpy.zeros(len(prior)), xtol=1e-12, ftol=1e-14, gtol=1e-10)
    error = numpy.sqrt(numpy.diag(numpy.linalg.inv(found.jac.T @ found.jac)))
    return prior + width * found.x, width * error


def write(name, head, columns, lines):
    with open(HERE / name, "w", encoding="utf-8", newline="") as file:
        file.write(f"# {head}; written by make.py.\n")
        out = csv.writer(file, lineterminator="\n")
        out.writerow(columns)
        out.writerows(lines)


def fitted():
    steels = [Steel(row) for row in table(STEEL / "tempering-steels.csv")]
    values, errors = fit(steels)
    lines = [(n, f"{v:.5f}", f"{e:.5f}") for n, v, e in zip(names, values, errors)]
    write("coefficients.csv", "The fit by SciPy", ("name", "value", "standard_error"), lines)
    lines = []
    for steel in steels:
        values, _ = fit([other for other in steels if other is not steel])
        off = steel.off(values)[steel.shop()]
        lines.append((steel.key, len(off), f"{numpy.sqrt(numpy.mean(off**2)):.4f}", f"{numpy.mean(off):.4f}"))
    write("left-out.csv", "Steels left out, shop's range, by SciPy", ("steel", "count", "rmse", "bias"), lines)


def predictions():
    steels = {
        "1026": (0.25, 0.79, 0.11, 0, 0, 0, 0),
        "1045": (0.45, 0.75, 0.25, 0, 0, 0, 0),
        "1095": (0.97, 0.40, 0.25, 0, 0, 0, 0),
        "4140": (0.405, 0.875, 0.25, 0, 0.95, 0.20, 0),
        "4340": (0.405, 0.70, 0.25, 1.825, 0.80, 0.25, 0),
        "6150": (0.505, 0.80, 0.25, 0, 0.95, 0, 0.18),
        "9260": (0.60, 0.875, 2.0, 0, 0, 0, 0),
        "52100": (1.04, 0.35, 0.25, 0, 1.45, 0, 0),
        "edge": (1.29, 2.1, 2.1, 3.9, 1.9, 0.59, 0.29),
    }
    lines = []
    for (name, shares), celsius, hours in itertools.product(
        steels.items(), (60, 150, 220, 300, 427, 540, 650, 705), (1 / 6, 1, 10)
    ):
        found = float(predict(rounded, shares, celsius, hours))
        lines.append((name, *shares, celsius, f"{hours:.12g}", f"{found:.5f}"))
    columns = ("steel", "c", "mn", "si", "ni", "cr", "mo", "v", "celsius", "hours", "hrc")
    write("predictions.csv", "The formula with the committed coefficients", columns, lines)


def covariance(a, b):
    above = lambda t: max(0.0, t - 450) / 100
    bell = numpy.exp(-(((a - b) / spread["reach"]) ** 2) / 2)
    return spread["level"] ** 2 + spread["drift"] ** 2 * bell + spread["hot"] ** 2 * above(a) * above(b)


def learning():
    """Every unknown stands in one vector: what each heat is off at each temperature, each oven, each scatter."""
    generator = numpy.random.default_rng(1945)
    lines = []
    for case in range(40):
        heats, ovens = int(generator.integers(1, 4)), int(generator.integers(1, 4))
        oven = [(round(generator.normal(0, 5), 1), round(generator.uniform(0, 15), 1)) for _ in range(ovens)]
        results = [
            {
                "heat": int(generator.integers(heats)),
                "oven": int(generator.integers(ovens)),
                "celsius": round(generator.uniform(150, 680), 1),
                "hrc": round(generator.uniform(25, 60), 2),
                "slope": round(-generator.uniform(0.005, 0.09), 4),
                "composition": round(generator.choice([0, generator.uniform(0, 1.5)]), 2),
                "off": round(generator.normal(0, 2), 2),
                "sd": round(generator.uniform(0.2, 2), 2),
            }
            for _ in range(int(generator.integers(1, 6)) + 1)
        ]
        *known, plan = results
        size = len(results)
        joint = numpy.zeros((size + ovens + heats, size + ovens + heats))
        # Rows 0..size: residual of the heat at the place of each result; then ovens; composition of heats.
        for i, j in itertools.product(range(size), range(size)):
            if results[i]["heat"] == results[j]["heat"]:
                joint[i, j] = covariance(results[i]["celsius"], results[j]["celsius"])
        for i in range(ovens):
            joint[size + i, size + i] = oven[i][1] ** 2
        for i in range(heats):
            joint[size + ovens + i, size + ovens + i] = 1.0
        mean = numpy.concatenate([numpy.zeros(size), [m for m, _ in oven], numpy.zeros(heats)])

        def view(index, with_oven=True):
            row = numpy.zeros(len(mean))
            row[index] = 1
            if with_oven:
                row[size + results[index]["oven"]] = results[index]["slope"]
            row[size + ovens + results[index]["heat"]] = results[index]["composition"]
            return row

        seen = numpy.array([view(i) for i in range(len(known))])
        noise = numpy.diag([spread["scatter"] ** 2 + one["sd"] ** 2 for one in known])
        gain = joint @ seen.T @ numpy.linalg.inv(seen @ joint @ seen.T + noise)
        after_mean = mean + gain @ (numpy.array([one["off"] for one in known]) - seen @ mean)
        after = joint - gain @ seen @ joint

        def of(row, extra=0.0):
            return float(row @ after_mean), float(numpy.sqrt(max(0, row @ after @ row) + extra))

        shift = of(view(size - 1), spread["scatter"] ** 2)
        heat = of(view(size - 1, False))
        unit = numpy.zeros(len(mean))
        unit[size + plan["oven"]] = 1
        told = of(unit)
        text = ";".join(" ".join(str(one[x]) for x in one) for one in results)
        ovens_text = ";".join(f"{m} {s}" for m, s in oven)
        lines.append((heats, ovens_text, text, *(f"{x:.7f}" for x in (*shift, *heat, *told))))
    columns = ("heats", "ovens", "results", "shift", "shift_sd", "heat", "heat_sd", "oven", "oven_sd")
    write(
        "learning.csv",
        "Heat, oven, °C, expected HRC, slope, composition, measured less expected, sd; the last result is the plan",
        columns,
        lines,
    )


if __name__ == "__main__":
    predictions()
    learning()
    fitted()
