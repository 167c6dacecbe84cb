"""Press fits by finite elements, stretched rings by a root finder."""

import random

import numpy as np
from scipy.linalg import solveh_banded
from scipy.optimize import brentq

from bench import Group, sure, value


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
