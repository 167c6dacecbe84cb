"""Model R1 of tests/golden/README.md once more, apart from the product: what each gauge will read.

Written from that text with numpy, for cases without a trapped member. Thicknesses are whole numbers
of 0.00001 mm, so that totals are exact.
"""

import math
from fractions import Fraction

import numpy as np

STEP = 100_000
UNKNOWN_TANGENT, UNKNOWN_SPREAD = 0.465, 0.21 / math.sqrt(12)
PACK_SPREAD = 0.002


def steps(text):
    """A thickness in whole steps."""
    value = Fraction(text) * STEP
    assert value.denominator == 1, text
    return int(value)


def normal_interval(low, high):
    """Probability between two standard deviates, exact far out on either side."""
    low, high = np.broadcast_arrays(low, high)
    mirrored = low > 0
    near, far = np.where(mirrored, -high, low), np.where(mirrored, -low, high)
    erfc = np.vectorize(math.erfc, otypes=[float])
    half = math.sqrt(0.5)
    return 0.5 * (erfc(-far * half) - erfc(-near * half))


class Model:
    """Levels, slopes, their covariance and the bands of one line of `advise`."""

    def __init__(self, line):
        self.line = line
        self.positions = line["positions"]
        self.checks = line["checks"]
        self.last = [[steps(s) for s in line["trials"][-1]["packs"][p["id"]]] for p in self.positions]
        self._geometry()
        self.bands = [self._band(check) for check in self.checks]
        self._learn()

    def _geometry(self):
        gears = self.line["gears"]
        teeth = {gear["id"]: gear["teeth"] for gear in gears["driven"]}
        pinion, radius = gears["pinion_teeth"], float(gears["pinion_pitch_radius"])
        self.radius = lambda shaft: radius if shaft == "pinion" else radius * teeth[shaft] / pinion
        self.pinion_angle = lambda mesh: math.atan(pinion / teeth[mesh])
        angles = [gears.get("normal_pressure_angle"), gears.get("spiral_angle")]
        self.known = None not in angles
        if self.known:
            pressure, spiral = (math.radians(float(angle)) for angle in angles)
            self.tangent = math.tan(pressure) / math.cos(spiral)
        else:
            self.tangent = UNKNOWN_TANGENT
        arm = self.line["arm"]
        self.lever = float(arm["radius"]) / self.radius(arm["on"])

    def _band(self, check):
        low, high = float(check["low"]), float(check["high"])
        if "band_radius" in check:
            there = float(check["band_radius"]) / self.radius(check["band_on"])
            low, high = low * self.lever / there, high * self.lever / there
        return low, high

    def _formula(self, check, position):
        """Slope by the formula and its relative spread; None where the pack does nothing."""
        kind, moves = check["kind"], position["moves"]
        if kind == "depth_gap":
            return (-position["mesh_sign"], 0.0) if moves == "pinion" and position["mesh_sign"] else None
        if kind == "end_play":
            named = position["id"] in check["positions"] and position["setting_sign"]
            return (-position["setting_sign"], 0.0) if named else None
        if not position["mesh_sign"] or moves not in ("pinion", check["mesh"]):
            return None
        angle = self.pinion_angle(check["mesh"])
        angle, spread = (angle, 0.10) if moves == "pinion" else (math.pi / 2 - angle, 0.05)
        return -position["mesh_sign"] * 2 * math.sin(angle) * self.tangent * self.lever, spread

    def _noise(self, check):
        """Reseating and gauge variance, and that of one reading."""
        lash = check["kind"] == "backlash"
        series = [trial["readings"].get(check["id"], []) for trial in self.line["trials"]]
        series = [[float(reading) for reading in one] for one in series]
        repeated = [one for one in series if len(one) > 1]
        if repeated:
            squares = sum((len(one) - 1) * np.var(one, ddof=1) for one in repeated)
            scatter = squares / sum(len(one) - 1 for one in repeated)
        else:
            scatter = (0.008 if lash else 0.005) ** 2
        reseat = (0.010 if lash else 0.005) ** 2
        gauge = float(check.get("sigma", 0.01 / math.sqrt(12))) ** 2
        return series, reseat, reseat + gauge, scatter

    def _learn(self):
        count = len(self.checks)
        slopes = []
        self.exact = np.zeros((count, len(self.positions)))
        for c, check in enumerate(self.checks):
            for i, position in enumerate(self.positions):
                formula = self._formula(check, position)
                if formula and formula[1]:
                    slopes.append((c, i, *formula))
                elif formula:
                    self.exact[c, i] = formula[0]
        size = count + len(slopes)
        information, vector = np.zeros((size, size)), np.zeros(size)
        if slopes:
            mean = np.array([slope for _, _, slope, _ in slopes])
            prior = np.diag([(slope * spread) ** 2 for _, _, slope, spread in slopes])
            if not self.known:
                factors = mean / self.tangent * UNKNOWN_SPREAD
                prior += np.outer(factors, factors)
            information[count:, count:] = np.linalg.inv(prior)
            vector[count:] = information[count:, count:] @ mean
        self.inexact = [(c, i, count + k) for k, (c, i, _, _) in enumerate(slopes)]
        self.next = []
        for c, check in enumerate(self.checks):
            series, reseat, fixed, scatter = self._noise(check)
            read = [one for one in series if one]
            preload = self.bands[c][1] <= 0
            self.next.append(reseat if preload else fixed + scatter / len(read[-1]))
            for trial, one in zip(self.line["trials"], series):
                if not one:
                    continue
                change = self._change(trial)
                row = np.zeros(size)
                row[c] = 1
                for check_of, i, k in self.inexact:
                    if check_of == c:
                        row[k] = change[i]
                weight = 1 / (fixed + scatter / len(one))
                information += weight * np.outer(row, row)
                vector += weight * row * (np.mean(one) - self.exact[c] @ change)
        self.covariance = np.linalg.inv(information)
        learned = self.covariance @ vector
        self.level = learned[:count]
        self.slope = self.exact.copy()
        for c, i, k in self.inexact:
            self.slope[c, i] = learned[k]

    def _change(self, trial):
        totals = [sum(steps(s) for s in trial["packs"][p["id"]]) for p in self.positions]
        return np.array([(total - sum(last)) / STEP for total, last in zip(totals, self.last)])

    def scope(self, c):
        """Positions that change a check."""
        return [int(i) for i in np.flatnonzero(self.slope[c])]

    def probability(self, c, change, changed):
        """Probability that a check lands in its band; `change` (mm) and `changed` are arrays whose
        last axis is the position."""
        change, changed = np.asarray(change, float), np.asarray(changed, float)
        mean = self.level[c] + change @ self.slope[c]
        own = [(i, k) for check, i, k in self.inexact if check == c]
        index = [c] + [k for _, k in own]
        row = np.stack([np.ones(change.shape[:-1])] + [change[..., i] for i, _ in own], axis=-1)
        spread = np.einsum("...i,ij,...j->...", row, self.covariance[np.ix_(index, index)], row)
        packs = changed @ (self.slope[c] * PACK_SPREAD) ** 2
        sigma = np.sqrt(spread + self.next[c] + packs)
        low, high = self.bands[c]
        return normal_interval((low - mean) / sigma, (high - mean) / sigma)

    def probability_of(self, packs):
        """Probability that every check lands, for packs as lists of steps."""
        change = [(sum(pack) - sum(last)) / STEP for pack, last in zip(packs, self.last)]
        changed = [sorted(pack) != sorted(last) for pack, last in zip(packs, self.last)]
        return math.prod(float(self.probability(c, change, changed)) for c in range(len(self.checks)))
