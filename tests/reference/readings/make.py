"""Posteriors of readings, alone and with files, for crates/evidence/tests/readings_golden.rs.

Independent of the Rust code: no bias of a reading is integrated by sums. The readings are one multivariate normal vector with its full matrix of
covariances, and slips are met by going through every subset of readings that may be slips. The files are integrated by Gauss-Hermite rules, as in
../file_test/make.py. The belief is evaluated every 0.01 HRC.

Run: python make.py > golden.csv        (needs numpy and scipy; takes about a minute of one core)
"""

import datetime
import itertools
import sys

import numpy
import scipy
from numpy.polynomial.hermite_e import hermegauss
from scipy.special import ndtr

HANDS = {  # s_f, s_e, s_o, s_s, L
    "careful": (0.6, 0.8, 0.3, 0.3, 0.01),
    "practised": (1.0, 1.0, 0.7, 0.5, 0.02),
    "casual": (1.5, 1.5, 1.5, 0.5, 0.03),
}
TRADE = [40.0, 45.0, 50.0, 55.0, 60.0, 65.0]


def normal_nodes(count):
    x, w = hermegauss(count)
    return x, w / w.sum()


def files(hrc, hand, strokes):
    """The likelihood of strokes on one spot: a file's bias, then the sum of operator and spot, by Gauss and Hermite."""
    s_f, s_e, s_o, s_s, lapse = HANDS[hand]
    x_f, w_f = normal_nodes(60)
    x_p, w_p = normal_nodes(60)
    found = numpy.zeros_like(hrc)
    for b_part, w_part in zip(numpy.hypot(s_o, s_s) * x_p, w_p):
        product = numpy.ones_like(hrc)
        for grade in sorted({grade for grade, _ in strokes}):
            x = grade + s_f * x_f[None, :] + b_part - hrc[:, None]
            bite = (1 - lapse) * ndtr((x - 1) / s_e) + lapse / 3
            skate = (1 - lapse) * ndtr((-x - 1) / s_e) + lapse / 3
            chance = {"b": bite, "k": skate, "s": 1 - bite - skate}
            values = numpy.ones_like(x)
            for own, outcome in strokes:
                if own == grade:
                    values = values * chance[outcome]
            product = product * (values @ w_f)
        found += w_part * product
    return found


def readings(hrc, groups, spot, slip):
    """The likelihood of all readings: a mixture over which of them are slips of normal laws with all covariances."""
    place, values, random = [], [], []
    for number, group in enumerate(groups):
        for value in group["values"]:
            place.append(number)
            values.append(value)
            random.append(group["random"])
    values, count = numpy.array(values), len(values)
    greatest = {}
    for group in groups:
        if group["key"] is not None:
            greatest[group["key"]] = max(greatest.get(group["key"], 0.0), group["conversion"])
    matrix = numpy.diag(numpy.square(random))
    for i, j in itertools.product(range(count), repeat=2):
        one, other = groups[place[i]], groups[place[j]]
        if place[i] == place[j]:
            matrix[i, j] += one["shared"] ** 2 + spot**2
        if one["key"] is not None and one["key"] == other["key"]:
            matrix[i, j] += greatest[one["key"]] ** 2
    found = numpy.zeros_like(hrc)
    for good in itertools.product([True, False], repeat=count) if slip > 0 else [(True,) * count]:
        kept = [i for i in range(count) if good[i]]
        weight = (slip / 70.0) ** (count - len(kept)) * (1 - slip) ** len(kept)
        if not kept:
            found += weight
            continue
        part = matrix[numpy.ix_(kept, kept)]
        inverse = numpy.linalg.inv(part)
        away = values[kept][None, :] - hrc[:, None]
        square = numpy.einsum("hi,ij,hj->h", away, inverse, away)
        found += weight * numpy.exp(-0.5 * square) / numpy.sqrt(numpy.linalg.det(2 * numpy.pi * part))
    return found


def posterior(case):
    groups, spot = case["groups"], case["spot"]
    if case["strokes"]:
        # The axis of six trade files, grown by five standard deviations of each reading.
        low, high = 30.0, 72.0
        for group in groups:
            total = numpy.sqrt(group["random"] ** 2 + group["shared"] ** 2 + group["conversion"] ** 2 + spot**2)
            low = min(low, max(min(group["values"]) - 5 * total, 10.0))
            high = max(high, min(max(group["values"]) + 5 * total, 80.0))
        low, high = numpy.floor(low * 4) / 4, numpy.ceil(high * 4) / 4
    else:
        low, high = 10.0, 80.0
    hrc = numpy.linspace(low, high, int(round((high - low) * 100)) + 1)
    density = readings(hrc, groups, spot, case["slip"])
    if case["strokes"]:
        density = density * files(hrc, case["hand"], case["strokes"])
    if case["prior"]:
        mean, sd = case["prior"]
        density = density * numpy.exp(-0.5 * ((hrc - mean) / sd) ** 2)
    cdf = numpy.concatenate([[0.0], numpy.cumsum(0.5 * (density[1:] + density[:-1]))])
    cdf /= cdf[-1]
    ends = [numpy.interp(q, cdf, hrc) for q in (0.025, 0.5, 0.975)]
    below = numpy.interp(case["target"], hrc, cdf)
    return ends + [below[0], below[1] - below[0], 1 - below[1]]


def group(values, random, shared, key=None, conversion=0.0):
    return dict(values=values, random=random, shared=shared, key=key, conversion=conversion)


def one_pass(letters, times=1):
    return [(grade, letter) for grade, letter in zip(TRADE, letters) for _ in range(times)]


def cases():
    def case(name, groups, **changes):
        base = dict(hand="practised", strokes=[], spot=0.5, slip=0.01, prior=None, target=(50.0, 54.0))
        return name, {**base, "groups": groups, **changes}

    bench, leeb, vickers = (0.3, 0.4), (0.8, 1.6), (0.35, 0.6)
    for slip in (0.0, 0.01, 0.05):
        yield case(f"bench_one_{slip}", [group([52.0], *bench)], slip=slip)
        yield case(f"bench_three_{slip}", [group([52.0, 52.6, 51.7], *bench)], slip=slip)
        yield case(f"bench_five_{slip}", [group([52.0, 52.6, 51.7, 52.1, 52.4], *bench)], slip=slip)
        yield case(f"leeb_one_{slip}", [group([49.3], *leeb)], slip=slip)
        yield case(f"leeb_five_{slip}", [group([49.3, 51.0, 50.1, 48.8, 50.6], *leeb)], slip=slip)
        yield case(f"converted_{slip}", [group([53.1, 52.2], *vickers, 1, 1.0)], slip=slip)
        yield case(f"two_instruments_{slip}", [group([52.0, 52.6], *bench), group([50.2, 51.9, 51.0], *leeb)], slip=slip)
        yield case(f"shared_conversion_{slip}", [group([53.1, 52.2], *vickers, 1, 1.0), group([51.5], 0.5, 0.9, 1, 1.0)], slip=slip)
        yield case(f"own_conversions_{slip}", [group([53.1, 52.2], *vickers, 1, 1.0), group([51.5], 0.5, 0.9, 2, 1.0)], slip=slip)
        yield case(f"unequal_conversion_{slip}", [group([53.1], *vickers, 1, 0.6), group([51.5, 51.9], 0.5, 0.9, 1, 1.4)], slip=slip)
        yield case(f"three_groups_{slip}", [group([52.5], *bench), group([53.1, 52.2], *vickers, 7, 1.0), group([51.5], *leeb, 7, 1.0)], slip=slip)
        yield case(f"no_shared_{slip}", [group([52.0, 52.6, 51.7], 0.4, 0.0)], slip=slip)
        yield case(f"sharp_{slip}", [group([52.0, 52.1, 51.9, 52.0, 52.05, 51.95, 52.1, 51.95], 0.1, 0.0)], spot=0.3, slip=slip)
        yield case(f"rough_{slip}", [group([44.0, 52.0], 3.0, 4.0, 3, 2.0)], spot=1.5, slip=slip)
        yield case(f"prior_{slip}", [group([52.0, 52.6], *leeb)], prior=(55.0, 2.0), slip=slip)
        yield case(f"soft_{slip}", [group([28.0, 29.1], *bench)], target=(28.0, 32.0), slip=slip)
        yield case(f"low_end_{slip}", [group([16.0], *leeb)], target=(12.0, 18.0), slip=slip)
    yield case("mistyped", [group([52.0, 52.4, 25.0, 51.8], *bench)])
    yield case("mistyped_one_of_two", [group([52.0, 62.0], *bench)])
    yield case("groups_apart", [group([52.0, 52.4], *bench), group([60.0, 60.5], *bench)])
    yield case("lone_slip", [group([35.0], *bench), group([56.0, 56.3], *bench)])
    for hand in HANDS:
        bracket = one_pass("kkkkbb")
        yield case(f"files_bench_{hand}", [group([57.2], *bench)], hand=hand, strokes=bracket, target=(56.0, 60.0))
        yield case(f"files_leeb_{hand}", [group([59.0, 58.1, 60.0], *leeb)], hand=hand, strokes=bracket, target=(56.0, 60.0))
        yield case(f"files_converted_{hand}", [group([56.5, 57.0], *vickers, 1, 1.0)], hand=hand, strokes=one_pass("kkkksb", 3), target=(56.0, 60.0))
    yield case("files_two_groups", [group([57.2, 57.9], *vickers, 1, 1.0), group([59.0], *leeb, 1, 1.0)], strokes=one_pass("kkkkbb", 3), target=(56.0, 60.0))
    yield case("all_skate_bench", [group([66.0, 66.4], *bench)], strokes=one_pass("kkkkkk"), target=(64.0, 68.0))
    yield case("all_skate_leeb", [group([64.0], *leeb)], strokes=one_pass("kkkkkk"), target=(64.0, 68.0))
    yield case("all_bite_soft", [group([27.0, 28.0], *bench)], strokes=one_pass("bbbbbb"), target=(26.0, 30.0))
    yield case("all_bite_low_end", [group([18.0], *leeb)], strokes=one_pass("bbbbbb"), target=(16.0, 20.0))
    yield case("against_files", [group([48.0], *bench)], strokes=one_pass("kkkkbb"), target=(50.0, 56.0))
    yield case("files_prior", [group([58.5], *leeb)], strokes=one_pass("kkkkbb"), prior=(60.0, 2.0), target=(58.0, 60.0))
    yield case("files_no_slips", [group([58.5, 59.5], *leeb)], strokes=one_pass("kkkkbb"), slip=0.0, target=(58.0, 60.0))


def main():
    print("# Posteriors of readings of instruments, alone and with files: quantiles in HRC, chances of a target.")
    print("# Script: tests/reference/readings/make.py")
    print(f"# Versions: python {sys.version.split()[0]}, numpy {numpy.__version__}, scipy {scipy.__version__}")
    print(f"# Made: {datetime.date.today().isoformat()}")
    print("# groups: values with +, then random, shared and, if converted, key and its sd; strokes: grade:outcome; prior: mean sd.")
    print("case,groups,spot,slip,hand,strokes,prior,target_low,target_high,q025,q500,q975,under,inside,over")
    for name, case in cases():
        found = posterior(case)
        groups = " ".join(
            ";".join(["+".join(f"{v:g}" for v in g["values"]), f"{g['random']:g}", f"{g['shared']:g}"]
                     + ([str(g["key"]), f"{g['conversion']:g}"] if g["key"] is not None else []))
            for g in case["groups"])
        row = [name, groups, case["spot"], case["slip"], case["hand"], " ".join(f"{g:g}:{o}" for g, o in case["strokes"]),
               "{:g} {:g}".format(*case["prior"]) if case["prior"] else "", *(f"{t:g}" for t in case["target"]),
               *(f"{v:.4f}" for v in found[:3]), *(f"{v:.6f}" for v in found[3:])]
        print(",".join(str(field) for field in row), flush=True)


if __name__ == "__main__":
    main()
