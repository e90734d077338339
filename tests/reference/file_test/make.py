"""Posteriors of the file-test model by brute force, for crates/evidence/tests/golden.rs.

Independent of the Rust code: every bias is integrated by Gauss-Hermite rules with many nodes, one bias at a time and in full, the belief is
evaluated every 0.01 HRC, and nothing is folded, cached or looked up.
The model is that of the source `file-model` with the conditions of `file-adjustments`; the sizes of the shifts for skin, edge and finish are assumed.

Run: python make.py > golden.csv        (needs numpy and scipy; takes about five minutes of one core)
"""

import datetime
import itertools
import sys

import numpy
import scipy
from numpy.polynomial.hermite_e import hermegauss
from scipy.interpolate import CubicSpline
from scipy.special import ndtr

HANDS = {  # s_f, s_e, s_o, s_s, L
    "careful": (0.6, 0.8, 0.3, 0.3, 0.01),
    "practised": (1.0, 1.0, 0.7, 0.5, 0.02),
    "casual": (1.5, 1.5, 1.5, 0.5, 0.03),
}


def normal(nodes):
    x, w = hermegauss(nodes)
    return x, w / w.sum()


def chances(x, s_e, lapse, yes_no):
    """P(bite), P(slight), P(skate) at the latent margin x."""
    d, share = (0.0, 2.0) if yes_no else (1.0, 3.0)
    bite = (1 - lapse) * ndtr((x - d) / s_e) + lapse / share
    skate = (1 - lapse) * ndtr((-x - d) / s_e) + lapse / share
    return {"b": bite, "s": 1 - bite - skate, "k": skate}


def shifts(case):
    """The shift of the whole part: weight, mean, variance."""
    mean = variance = 0.0
    if case["steel"] == "carbide":
        mean, variance = mean - 1.5, variance + 1.5**2
    if case["place"] == "edge":
        mean, variance = mean + 1.5, variance + 1.5**2
    if case["finish"] == "different":
        variance += 1.0
    if case["skin"] == "not_ground":
        return [(0.5, mean, variance), (0.5, mean + 12.5, variance + 16.0)]
    return [(1.0, mean, variance)]


def posterior(case):
    s_f, s_e, s_o, s_s, lapse = HANDS[case["hand"]]
    s_f = numpy.sqrt(max(s_f**2 - 1 / 3, 0) + case["tolerance"] ** 2 / 3)
    yes_no = case["answering"] == "yes_no"
    strokes, proofs = {}, {}
    for grade, outcome, spot in case["strokes"]:
        strokes.setdefault(grade, []).append((outcome, spot))
    for grade, known, outcome in case["proofs"]:
        proofs.setdefault(grade, []).append((known, outcome))
    spots = sorted({spot for _, _, spot in case["strokes"]}) or [0]
    # More nodes where more strokes make a sharper likelihood; the spots' rule stays affordable.
    most = max([len(v) for v in strokes.values()] + [1])
    one_spot = len(spots) == 1
    x_f, w_f = normal((40 if most <= 3 else 100) if one_spot else 24)
    x_o, w_o = normal(30 if one_spot else 16)
    x_s, w_s = normal({1: 40, 2: 9, 3: 6, 4: 5}[len(spots)])
    fine = 0.05 if one_spot else 0.2
    low = min(30.0, min(case["grades"]) - 10)
    high = max(72.0, max(case["grades"]) + 7)
    if case["prior"]:
        # The axis grows so that a narrow expectation near an end is not cut off.
        reach = 4.5 * min(case["prior"][1], 1.0)
        low = min(low, max(case["prior"][0] - reach, 10.0))
        high = max(high, min(case["prior"][0] + reach, 80.0))
    low, high = numpy.floor(low * 4) / 4, numpy.ceil(high * 4) / 4
    margin = 35.0 if case["skin"] == "not_ground" else 16.0
    u = numpy.arange(low - margin, high + margin + fine / 2, fine)  # hardness less the part's shift
    like = numpy.zeros_like(u)
    rule = [((0.0,), 1.0)] if one_spot else [
        (tuple(s_s * x_s[i] for i in index), numpy.prod([w_s[i] for i in index]))
        for index in itertools.product(range(len(x_s)), repeat=len(spots))
    ]
    for biases, w_patch in rule:
        bias_of = dict(zip(spots, biases))
        for b_o, w_operator in zip(s_o * x_o, w_o):
            product = numpy.ones_like(u)
            for grade in sorted(set(strokes) | set(proofs)):
                b = s_f * x_f
                weight = w_f.copy()
                for known, outcome in proofs.get(grade, []):
                    weight = weight * chances(grade + b + b_o - known, s_e, lapse, yes_no)[outcome]
                values = numpy.ones((len(u), len(b)))
                cache = {}
                for outcome, spot in strokes.get(grade, []):
                    if spot not in cache:
                        x = grade + b[None, :] + b_o + bias_of[spot] - u[:, None]
                        cache[spot] = chances(x, s_e, lapse, yes_no)
                    values = values * cache[spot][outcome]
                product = product * (values @ weight)
            like += w_patch * w_operator * product
    spline = CubicSpline(u, like / like.max())
    hrc = numpy.arange(low, high + 0.005, 0.01)
    density = numpy.zeros_like(hrc)
    x, w = normal(80)
    for share, mean, variance in shifts(case):
        sd = numpy.sqrt(variance + (s_s**2 if one_spot else 0.0))
        for node, weight in zip(x, w):
            if weight > 1e-14:
                at = numpy.clip(hrc - mean - sd * node, u[0], u[-1])
                density += share * weight * spline(at)
    if case["prior"]:
        mean, sd = case["prior"]
        density *= numpy.exp(-0.5 * ((hrc - mean) / sd) ** 2)
    cdf = numpy.concatenate([[0.0], numpy.cumsum(0.5 * (density[1:] + density[:-1]))])
    cdf /= cdf[-1]
    ends = [numpy.interp(q, cdf, hrc) for q in (0.025, 0.5, 0.975)]
    below = numpy.interp(case["target"], hrc, cdf)
    return ends + [below[0], below[1] - below[0], 1 - below[1]]


def one_pass(grades, letters, times=1, spots=(0,)):
    return [(g, o, s) for g, o in zip(grades, letters) for s in spots for _ in range(times)]


TRADE = [40.0, 45.0, 50.0, 55.0, 60.0, 65.0]
J864 = [50.0, 55.0, 58.0, 62.0, 65.0]


def rounds(grades, times):
    return [(g, g + d, o) for _ in range(times) for g in grades for d, o in ((-2, "b"), (2, "k"))]


def cases():
    base = dict(hand="practised", answering="three_way", tolerance=1.0, grades=TRADE, strokes=[], proofs=[], skin="ground",
                place="flat", finish="like", steel="ordinary", prior=None, target=(56.0, 60.0))

    def case(name, **changes):
        return name, {**base, **changes}

    for hand in HANDS:
        yield case(f"bracket_{hand}", hand=hand, strokes=one_pass(TRADE, "kkkkbb"))
        yield case(f"slight_three_{hand}", hand=hand, strokes=one_pass(TRADE, "kkkksb", 3))
        yield case(f"ten_{hand}", hand=hand, strokes=one_pass(TRADE, "kkkkbb", 10))
        yield case(f"yes_no_{hand}", hand=hand, answering="yes_no", strokes=one_pass(TRADE, "kkkkbb", 2))
        yield case(f"proved_{hand}", hand=hand, strokes=one_pass(TRADE, "kkkkbb"), proofs=rounds(TRADE, 1))
        yield case(f"proved_twice_three_strokes_{hand}", hand=hand, strokes=one_pass(TRADE, "kkkkbb", 3), proofs=rounds(TRADE, 2))
    yield case("all_skate", strokes=one_pass(TRADE, "kkkkkk"))
    yield case("all_bite", strokes=one_pass(TRADE, "bbbbbb"))
    yield case("contradiction", strokes=one_pass(TRADE, "kkkbkb"))
    yield case("scenario_two", strokes=one_pass(TRADE, "kbkbb"), target=(40.0, 45.0))
    yield case("one_file_skates", grades=[63.0], strokes=[(63.0, "k", 0)], target=(60.0, 64.0))
    yield case("proofs_alone", proofs=rounds(TRADE, 1))
    yield case("one_bad_proof", strokes=one_pass(TRADE, "kkkkbb", 3), proofs=[(60.0, 57.3, "k"), (60.0, 62.0, "k"), (55.0, 53.0, "s")])
    yield case("tolerance_zero", tolerance=0.0, strokes=one_pass(TRADE, "kkkkbb", 2))
    yield case("tolerance_zero_careful_proved", hand="careful", tolerance=0.0, strokes=one_pass(TRADE, "kkkssb", 2), proofs=rounds(TRADE, 1))
    yield case("tolerance_three", tolerance=3.0, strokes=one_pass(TRADE, "kkksbb", 2))
    yield case("tolerance_five_proved", tolerance=5.0, strokes=one_pass(TRADE, "kkksbb"), proofs=rounds(TRADE, 1))
    yield case("own_grades", grades=[41.3, 47.9, 52.6, 58.1, 63.7], strokes=one_pass([41.3, 47.9, 52.6, 58.1, 63.7], "kksbb", 2))
    yield case("j864_set", hand="careful", grades=J864, strokes=one_pass(J864, "kkksb"))
    yield case("soft_set", grades=[30.0, 34.0, 38.0], strokes=one_pass([30.0, 34.0, 38.0], "ksb"), target=(30.0, 36.0))
    yield case("prior", prior=(60.0, 2.0), strokes=one_pass(TRADE, "kkkkbb"))
    yield case("prior_against", prior=(52.0, 1.0), strokes=one_pass(TRADE, "kkkkbb"))
    yield case("prior_alone_near_the_end", prior=(71.5, 0.5), target=(70.0, 72.0))
    yield case("prior_wide_open", prior=(60.0, 8.0), strokes=one_pass(TRADE, "kkkkkk"), target=(64.0, 68.0))
    yield case("two_spots", strokes=one_pass(TRADE, "kkkkbb", 1, (0, 1)))
    yield case("two_spots_differ", strokes=one_pass(TRADE, "kkkkbb", 2) + one_pass(TRADE, "kkkkkb", 2, (3,)))
    yield case("two_spots_careful", hand="careful", strokes=one_pass(TRADE, "kkkksb", 2, (0, 1)))
    yield case("two_spots_proved", strokes=one_pass(TRADE, "kkkkbb", 1, (0, 1)), proofs=rounds([55.0, 60.0], 1))
    yield case("three_spots", strokes=one_pass(TRADE, "kkkksb", 1, (0, 1, 2)))
    yield case("four_spots", strokes=one_pass(TRADE, "kkkkbb", 1, (0, 1, 2, 3)))
    yield case("four_spots_casual", hand="casual", strokes=one_pass([55.0, 60.0], "kb", 2, (0, 1, 2, 3)))
    yield case("carbide_rich", steel="carbide", strokes=one_pass(TRADE, "kkkkbb", 3))
    yield case("edge", place="edge", strokes=one_pass(TRADE, "kkkkbb", 3))
    yield case("finish", finish="different", strokes=one_pass(TRADE, "kkkkbb", 3))
    yield case("not_ground", skin="not_ground", strokes=one_pass(TRADE, "kkkkbb"))
    yield case("not_ground_soft", skin="not_ground", strokes=one_pass(TRADE, "ksbbbb", 2), target=(40.0, 55.0))
    yield case("not_ground_all_conditions", skin="not_ground", place="edge", finish="different", steel="carbide",
               strokes=one_pass(TRADE, "kkkkbb", 2), proofs=rounds([60.0], 1))
    yield case("not_ground_two_spots", skin="not_ground", strokes=one_pass(TRADE, "kkksbb", 1, (0, 1)))
    random = numpy.random.default_rng(20260101)
    for number in range(8):
        strokes = [(float(random.choice(TRADE)), str(random.choice(list("bsk"))), 0) for _ in range(random.integers(1, 15))]
        proofs = [(float(random.choice(TRADE)), round(float(random.uniform(38, 68)), 1), str(random.choice(list("bsk"))))
                  for _ in range(random.integers(0, 6))]
        yield case(f"random_{number}", hand=str(random.choice(list(HANDS))), tolerance=round(float(random.uniform(0, 3)), 1),
                   strokes=strokes, proofs=proofs)


def main():
    print("# Posteriors of the file-test model by brute force: quantiles in HRC, chances of a target.")
    print("# Script: tests/reference/file_test/make.py")
    print(f"# Versions: python {sys.version.split()[0]}, numpy {numpy.__version__}, scipy {scipy.__version__}")
    print(f"# Made: {datetime.date.today().isoformat()}")
    print("# strokes: grade:outcome@spot; proofs: grade@known piece:outcome; outcomes b bite, s slight, k skate; prior: mean sd.")
    print("case,hand,answering,tolerance,grades,strokes,proofs,skin,place,finish,steel,prior,target_low,target_high,q025,q500,q975,under,inside,over")
    for name, case in cases():
        found = posterior(case)
        row = [name, case["hand"], case["answering"], case["tolerance"], " ".join(f"{g:g}" for g in case["grades"]),
               " ".join(f"{g:g}:{o}@{s}" for g, o, s in case["strokes"]), " ".join(f"{g:g}@{k:g}:{o}" for g, k, o in case["proofs"]),
               case["skin"], case["place"], case["finish"], case["steel"], "{:g} {:g}".format(*case["prior"]) if case["prior"] else "",
               *(f"{t:g}" for t in case["target"]), *(f"{v:.4f}" for v in found[:3]), *(f"{v:.6f}" for v in found[3:])]
        print(",".join(str(field) for field in row), flush=True)


if __name__ == "__main__":
    main()
