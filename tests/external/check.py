"""`shimwright bench` against general-purpose libraries: CoolProp, scipy, numpy, pint.

`python check.py PROGRAM` prints each group, and `# pass` and `# fail`. Nothing here shares code or a
formula with the product where a library has its own way to the answer: air comes from its measured
equation of state, the circle from two other solvers, units from their own tables, a press fit from
finite elements, uncertainty from drawn samples.
"""

import json
import random
import subprocess
import sys

import numpy as np
import pint
import scipy.constants as constants
from CoolProp.CoolProp import PropsSI
from scipy.linalg import solveh_banded
from scipy.optimize import brentq

UNITS = pint.UnitRegistry()
PINT = {"mm": "mm", "in": "inch", "N·m": "N*m", "lbf·in": "lbf*inch", "lbf·ft": "lbf*foot", "kgf·m": "kgf*m",
        "N": "N", "lbf": "lbf", "kgf": "kgf"}


class Group:
    def __init__(self, name):
        self.name, self.passed, self.failed = name, 0, 0

    def near(self, what, found, expected, tolerance):
        stands = found is not None and abs(found - expected) <= tolerance
        self.passed += stands
        self.failed += not stands
        if not stands:
            print(f"not as expected: {self.name}: {what}: {found}, expected {expected} within {tolerance}")

    def done(self):
        print(f"{self.name}: {self.passed} as expected, {self.failed} not")
        return self


class Bench:
    """One process for all lines."""

    def __init__(self, program):
        self.process = subprocess.Popen([program, "bench"], stdin=subprocess.PIPE, stdout=subprocess.PIPE)

    def ask(self, **line):
        self.process.stdin.write(json.dumps(line).encode() + b"\n")
        self.process.stdin.flush()
        answer = json.loads(self.process.stdout.readline())
        if "error" in answer:
            raise SystemExit(f"{line}: {answer['error']}")
        return answer["figures"]

    def close(self):
        self.process.stdin.close()
        self.process.wait()


def value(figure):
    return None if figure is None else float(figure["value"])


def sure(number, unit, places=9):
    """An exact quantity with at most 12 digits, as the entry grammar takes them."""
    return {"read": f"{number:.{places}f} {unit}", "u": "0"}


def gas(bench):
    """Warmed or cooled air in a case that does not leak, by its equation of state."""
    group = Group("air in a closed case, CoolProp")
    draw = random.Random(1)
    for _ in range(60):
        stage = draw.choice(["low", "working", "vacuum"])
        barometer = draw.uniform(97.0, 104.0)
        gauge = draw.uniform(15.0, 110.0) if stage != "vacuum" else draw.uniform(8.0, 50.0)
        first, later = draw.uniform(5.0, 35.0), draw.uniform(5.0, 35.0)
        sign = -1 if stage == "vacuum" else 1
        density = PropsSI("D", "P", 1e3 * (barometer + sign * gauge), "T", first + 273.15, "Air")
        absolute = PropsSI("P", "D", density, "T", later + 273.15, "Air") / 1e3
        now = sign * (absolute - barometer)
        if now <= 0:
            continue
        line = lambda at, gauge, case: {"at": f"{at} s", "gauge": sure(gauge, "kPa", 6), "case": sure(case, "°C", 6),
                                        "barometer": sure(barometer, "kPa", 6)}
        found = bench.ask(bench="leak", stage=stage, volume=sure(1.2, "L"), first=line(0, gauge, first),
                          later=line(600, now, later))
        # What the ideal gas leaves out is, to a few percent, the change of air's second virial coefficient.
        air = lambda kelvin: PropsSI("Bvirial", "P", 1e5, "T", kelvin, "Air") * moles**2 * constants.R * (first + 273.15)
        moles = density / PropsSI("M", "Air")
        unideal = (air(first + 273.15) - air(later + 273.15)) / 1e3 * sign
        group.near(f"{stage} {gauge:.1f} kPa, {first:.1f} to {later:.1f} °C", value(found["lost"]), unideal, 0.003)
        group.near("not ideal", unideal, 0.0, 0.1)  # Below one step of a gauge that reads 0.1 kPa.
    rate = bench.ask(bench="leak", stage="working", volume=sure(1.2, "L"),
                     first={"at": "0 s", "gauge": sure(70, "kPa"), "case": sure(20, "°C"), "barometer": sure(101.325, "kPa")},
                     later={"at": "300 s", "gauge": sure(69.5, "kPa"), "case": sure(20, "°C"), "barometer": sure(101.325, "kPa")})
    group.near("moles", value(rate["moles"]), 1.2e-3 * 500 / 300 / (constants.R * 293.15), 1e-12)
    per_minute = UNITS.Quantity(2e-3, "Pa*m^3/s") / UNITS.Quantity(1, "atm")
    group.near("standard flow", value(rate["flow_as_it_is"]), per_minute.to("cm^3/min").magnitude, 1e-9)
    group.near("at 0 °C", value(rate["flow_at_0_celsius"]), per_minute.to("cm^3/min").magnitude * 273.15 / 293.15, 1e-9)
    return group.done()


def circle(bench):
    """The fitted circle by numpy's least squares, and by its Fourier transform where steps are equal."""
    group = Group("runout, numpy lstsq and rfft")
    draw = random.Random(2)
    for trial in range(80):
        count, equal = draw.randint(4, 12), trial % 2 == 0
        if equal:
            degrees = [round(360 * i / count, 6) for i in range(count)]
        else:
            gaps = [draw.uniform(1, 2) for _ in range(count)]
            degrees = [round(360 * sum(gaps[:i]) / sum(gaps), 6) for i in range(count)]
        off, high = draw.uniform(0, 0.2), draw.uniform(0, 360)
        heights = [round(0.3 + off * np.cos(np.radians(d - high)) + draw.gauss(0, 0.003), 6) for d in degrees]
        found = bench.ask(bench="runout", readings=[{"angle": f"{d:.6f} °", "reading": sure(h, "mm", 6)}
                                                    for d, h in zip(degrees, heights)])
        angles = np.radians(degrees)
        columns = np.column_stack([np.ones(count), np.cos(angles), np.sin(angles)])
        mean, a, b = np.linalg.lstsq(columns, np.array(heights), rcond=None)[0]
        group.near("mean", value(found["mean"]), mean, 1e-9)
        group.near("off centre", value(found["off_centre"]), np.hypot(a, b), 1e-9)
        if found["high_spot"] is not None:
            apart = (value(found["high_spot"]) - np.degrees(np.arctan2(b, a)) + 180) % 360 - 180
            group.near("high spot", apart, 0.0, 1e-6)
        left = np.array(heights) - columns @ [mean, a, b]
        scatter = np.sqrt(left @ left / (count - 3)) if count > 3 else 0.0
        spread = scatter**2 * np.linalg.inv(columns.T @ columns)
        along = np.array([0, a, b]) / np.hypot(a, b)
        group.near("its uncertainty", float(found["off_centre"]["u"]), np.sqrt(along @ spread @ along), 1e-8)
        if equal:
            once = np.fft.rfft(heights)[1]
            group.near("off centre by transform", value(found["off_centre"]), 2 * abs(once) / count, 1e-7)
    return group.done()


def units(bench):
    """Units by pint and scipy.constants."""
    group = Group("torque and its units, pint and scipy.constants")
    for unit in ["N·m", "lbf·in", "lbf·ft", "kgf·m"]:
        expected = UNITS.Quantity(25, PINT[unit]).to("N*m").magnitude
        group.near(unit, value(bench.ask(bench="torque", torque=sure(25, unit))["set"]), expected, 1e-9)
    exact = {"N": 1, "lbf": constants.lbf, "kgf": constants.kgf}
    lengths = {"mm": constants.milli, "in": constants.inch}
    for pull, newton in exact.items():
        for length, metre in lengths.items():
            found = bench.ask(bench="drag", pull=sure(2.5, pull), drum=sure(2, length), cord=sure(0.1, length))
            group.near(f"{pull} on a drum in {length}", value(found["torque"]), 2.5 * newton * 1.05 * metre, 1e-9)
            by_pint = UNITS.Quantity(2.5, PINT[pull]) * UNITS.Quantity(1.05, PINT[length])
            group.near("the same by pint", value(found["torque"]), by_pint.to("N*m").magnitude, 1e-9)
    return group.done()


def rings(press, elements=2000):
    """Contact pressure by axisymmetric finite elements, one row of linear elements a ring, plane stress."""

    def give(inner, outer, modulus, poisson, loaded_inside):
        """Radial move at the loaded face for a pressure of one."""
        radii = np.linspace(inner, outer, elements + 1)
        stiffness = modulus / (1 - poisson**2)
        middle, width = (radii[1:] + radii[:-1]) / 2, np.diff(radii)
        slope, hoop = 1 / width, 0.5 / middle
        same = stiffness * middle * width * (slope**2 + hoop**2)
        diagonal, above = np.zeros(elements + 1), np.zeros(elements + 1)
        diagonal[:-1] += same - 2 * stiffness * poisson * middle * width * slope * hoop
        diagonal[1:] += same + 2 * stiffness * poisson * middle * width * slope * hoop
        above[1:] = stiffness * middle * width * (hoop**2 - slope**2)
        load = np.zeros(elements + 1)
        load[0 if loaded_inside else -1] = inner if loaded_inside else -outer
        moved = solveh_banded(np.vstack([above, diagonal]), load)
        return moved[0] if loaded_inside else -moved[-1]

    half = press["meeting"] / 2
    outside = give(half, press["outside"] / 2, *press["outer"], True)
    inside = give(press["bore"] / 2, half, *press["inner"], False)
    return press["interference"] / 2 / (outside + inside)


def presses(bench):
    group = Group("press fits, finite elements with scipy")
    metals = {"steel": (207e3, 0.29), "aluminium": (71e3, 0.33)}
    draw = random.Random(3)
    for _ in range(20):
        bore = draw.uniform(15, 60)
        meeting = bore + draw.uniform(6, 30)
        outside = meeting + draw.uniform(10, 60)
        delta, length, friction = draw.uniform(0.01, 0.08), draw.uniform(8, 30), 0.15
        inner, outer = draw.choice(list(metals)), draw.choice(list(metals))
        found = bench.ask(bench="press", interference=sure(delta, "mm"), bore=sure(bore, "mm"), meeting=sure(meeting, "mm"),
                          outside=sure(outside, "mm"), length=sure(length, "mm"), friction=str(friction), inner=inner, outer=outer)
        expected = rings({"interference": delta, "bore": bore, "meeting": meeting, "outside": outside,
                          "inner": metals[inner], "outer": metals[outer]})
        group.near("pressure", value(found["pressure"]), expected, 2e-5 * expected)
        force = np.pi * meeting * length * friction * expected
        group.near("force", value(found["force"]), force, 2e-5 * force)
    return group.done()


def stretched(bench):
    """The stretched section by a root finder on the volume itself."""
    group = Group("stretched rings, scipy brentq on equal volumes")
    draw = random.Random(4)
    for _ in range(40):
        section = draw.choice([1.78, 2.62, 3.53, 5.33])
        inside = draw.uniform(10, 120)
        bottom = inside * draw.uniform(1.0, 1.08)
        volume = lambda cord, hole: cord**2 * (hole + cord)  # π²/4 left out on both sides.
        expected = brentq(lambda cord: volume(cord, bottom) - volume(section, inside), 0.5 * section, section, xtol=1e-13)
        found = bench.ask(bench="ring", section=sure(section, "mm"), inside=sure(inside, "mm"), bottom=sure(bottom, "mm"),
                          depth=sure(0.8 * section, "mm"))
        group.near("section", value(found["section"]), expected, 1e-8)
        group.near("squeeze", value(found["squeeze"]), 100 * (1 - 0.8 * section / expected), 1e-6)
    return group.done()


def doubts(bench):
    """Stated uncertainty against the scatter of 200 000 drawn samples."""
    group = Group("uncertainty, numpy samples")
    draw = np.random.default_rng(5)
    sample = lambda middle, u: draw.normal(middle, u, 200_000)
    within = lambda number, u, unit: {"read": f"{number} {unit}", "u": str(u)}
    found = bench.ask(bench="torque", torque=within("100", 1, "N·m"), wrench=within("400", 5, "mm"), head=within("60", 1, "mm"),
                      angle=within("45", 4, "°"))
    wrench, lever = sample(400, 5), sample(60, 1) * np.cos(np.radians(sample(45, 4)))
    group.near("torque", float(found["set"]["u"]), np.std(sample(100, 1) * wrench / (wrench + lever)), 0.02)
    line = lambda at, gauge, case: {"at": f"{at} s", "gauge": within(gauge, 0.1, "kPa"), "case": within(case, 0.2, "°C"),
                                    "barometer": within("101.3", 0.05, "kPa")}
    found = bench.ask(bench="leak", stage="working", volume=within("1.2", 0.05, "L"), first=line(0, "84.0", "24.0"),
                      later=line(600, "79.8", "20.6"))
    first, later = sample(84, 0.1) + sample(101.3, 0.05), sample(79.8, 0.1) + sample(101.3, 0.05)
    lost = first - later * (sample(24, 0.2) + 273.15) / (sample(20.6, 0.2) + 273.15)
    group.near("loss", float(found["lost"]["u"]), np.std(lost), 0.01 * np.std(lost))
    rate = np.std(sample(1.2, 0.05) * lost / 600)
    group.near("rate", float(found["rate"]["u"]), rate, 0.02 * rate)
    return group.done()


def main(program):
    bench = Bench(program)
    groups = [check(bench) for check in (gas, circle, units, presses, stretched, doubts)]
    bench.close()
    print(f"# pass {sum(group.passed for group in groups)}")
    print(f"# fail {sum(group.failed for group in groups)}")
    return int(any(group.failed for group in groups))


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
