#!/usr/bin/env python3
"""The numbers the end-to-end test expects, worked out apart from the product.

Standard library only; it shares no code with the product. Formulae: backlash per axial move from
the tooth geometry of a bevel pair (k = 2 sin(d) tan(an) / cos(b)), the reading at an arm as
reading = tooth * R / r, first-trial prediction and choice as the golden jobs' model R1 states them.
The unit, the readings and the shims are invented. Run it to print the table used in main_job.test.mjs.
"""
from itertools import combinations
from math import atan2, cos, erfc, radians, sin, sqrt, tan

IN = 25.4
ZP, ZG, RP, ARM = 14, 21, 24.0, 30.0
AN, B = radians(20), radians(35)
d_p = atan2(ZP, ZG)
d_g = atan2(ZG, ZP)
k_gear = 2 * sin(d_g) * tan(AN) / cos(B)
k_pinion = 2 * sin(d_p) * tan(AN) / cos(B)
K_gear, K_pinion = k_gear * ARM / RP, k_pinion * ARM / RP
print(f"k gear {k_gear:.4f}  k pinion {k_pinion:.4f}  at the arm {K_gear:.4f} {K_pinion:.4f}")

BANDS = {  # as on the sheet; the lash bands hold at a 22 mm radius on the driveshaft
    "depth": (0.62, 0.68),
    "forward": (0.20 * ARM / 22, 0.35 * ARM / 22),
    "reverse": (0.30 * ARM / 22, 0.55 * ARM / 22),
}
print({c: (round(a, 4), round(b, 4)) for c, (a, b) in BANDS.items()})

READ = {
    "depth": ([0.71, 0.72, 0.71], 0.01),
    "forward": ([v * IN for v in (0.0220, 0.0225, 0.0220, 0.0220)], 0.0001 * IN),
    "reverse": ([0.72, 0.71, 0.73, 0.72], 0.01),
}
ZERO = 0.002  # the micrometer reads this when closed; it is taken off every shim


def net(a, b):
    return round((a + b) / 2 - ZERO, 6)


FOUND = {"B1": [0.50, 0.10], "B2": [0.40, 0.15], "B3": [0.30, 0.20]}
TIN = {
    "B1": [net(0.152, 0.154), net(0.202, 0.202), net(0.053, 0.053), net(0.302, 0.302)],
    "B2": [net(0.252, 0.252), net(0.303, 0.301), net(0.203, 0.203), net(0.102, 0.102)],
    "B3": [net(0.152, 0.152), net(0.252, 0.252), net(0.102, 0.104), net(0.052, 0.052)],
}
for pos, shims in TIN.items():
    print(pos, "tin", shims)


def phi(z):
    return 0.5 * erfc(-z / sqrt(2))


def stats(values):
    m = sum(values) / len(values)
    s = sqrt(sum((v - m) ** 2 for v in values) / (len(values) - 1))
    return m, s, len(values)


def predict(check, dt, changed):
    values, step = READ[check]
    mean, s, n = stats(values)
    reseat = 0.005 if check == "depth" else 0.010
    gauge = step / sqrt(12)
    v = reseat**2 + gauge**2 + s * s / n
    slopes = {  # position: (slope, spread of the slope)
        "depth": {"B1": (-1.0, 0.0)},
        "forward": {"B1": (-K_pinion, 0.10 * K_pinion), "B2": (-K_gear, 0.05 * K_gear)},
        "reverse": {"B1": (-K_pinion, 0.10 * K_pinion), "B3": (-K_gear, 0.05 * K_gear)},
    }[check]
    mu, var = mean, 2 * v
    for p, (k, sk) in slopes.items():
        mu += k * dt[p]
        var += (sk * dt[p]) ** 2
        if changed[p]:
            var += (k * 0.002) ** 2
    return mu, sqrt(var)


def packs(pos):
    pool = FOUND[pos] + TIN[pos]
    seen = {}
    for n in range(1, 5):
        for c in combinations(range(len(pool)), n):
            key = tuple(sorted((pool[i] for i in c), reverse=True))
            seen.setdefault(key, None)
    return list(seen)


def probability(choice):
    dt = {p: sum(choice[p]) - sum(FOUND[p]) for p in choice}
    changed = {p: sorted(choice[p]) != sorted(FOUND[p]) for p in choice}
    p, out = 1.0, {}
    for check, (lo, hi) in BANDS.items():
        mu, s = predict(check, dt, changed)
        p *= phi((hi - mu) / s) - phi((lo - mu) / s)
        out[check] = (mu, s)
    return p, out, changed


# Labour as the positions table gives it: B1 30 and B2 20, both after B3; B3 20.
def minutes(changed):
    opened = {p for p in changed if changed[p]}
    if opened & {"B1", "B2"}:
        opened.add("B3")
    alone = max([{"B1": 60, "B2": 50, "B3": 20}[p] for p in changed if changed[p]], default=0)
    return max(sum({"B1": 30, "B2": 20, "B3": 20}[p] for p in opened), alone)


results = []
for b1 in packs("B1"):
    if abs(sum(b1) - 0.66) > 0.1:
        continue
    for b2 in packs("B2"):
        if abs(sum(b2) - 0.72) > 0.2:
            continue
        for b3 in packs("B3"):
            if abs(sum(b3) - 0.6) > 0.2:
                continue
            choice = {"B1": b1, "B2": b2, "B3": b3}
            p, out, changed = probability(choice)
            results.append((p, minutes(changed), sum(map(len, choice.values())), choice, out))
best = max(r[0] for r in results)
keep = [r for r in results if r[0] >= 0.99 * best]
least = min(r[1] for r in keep)
keep = [r for r in keep if r[1] == least]
fewest = min(r[2] for r in keep)
keep = [r for r in keep if r[2] == fewest]


def tie_break(r):
    total = 0.0
    for check, (lo, hi) in BANDS.items():
        mu = r[4][check][0]
        total += ((mu - (lo + hi) / 2) / ((hi - lo) / 2)) ** 2
    return round(total, 2)


keep.sort(key=tie_break)
print(f"best p {best:.6f}, {least} min, {fewest} shims, {len(keep)} ties")
for p, m, n, choice, out in keep[:6]:
    print(f"p {p:.6f}", choice, {c: (round(a, 4), round(s, 4)) for c, (a, s) in out.items()}, tie_break((p, m, n, choice, out)))
