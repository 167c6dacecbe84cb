"""Thermal fits: the temperature at which the grown bore has the room, by scipy's root finder."""

import random

from scipy.optimize import brentq

from bench import Group, sure, value

# W. D. Callister, Fundamentals of Materials Science and Engineering, 3rd ed., table B.6; bearing steel from memory.
GROWTH = {"aluminium": 21.5e-6, "steel": 12.0e-6}


def grown(diameter, metal, rise):
    return diameter * (1 + GROWTH[metal] * rise)


def warmth(bench):
    group = Group("thermal fits, scipy brentq")
    draw = random.Random(10)
    for _ in range(40):
        diameter, over = round(draw.uniform(20, 120), 3), round(draw.uniform(0.005, 0.08), 4)
        room, clear = round(draw.uniform(0, 35), 2), round(draw.uniform(0, 0.05), 4)
        metal = draw.choice(list(GROWTH))
        # The inner part is larger by the interference and wants its clearance.
        short = lambda rise: grown(diameter, metal, rise) - (diameter + over + clear)
        expected = brentq(short, 0, 1000, xtol=1e-12)
        found = bench.ask(bench="heat", diameter=sure(diameter, "mm"), interference=sure(over, "mm"),
                          clearance=sure(clear, "mm"), room=sure(room, "°C"), material=metal)
        group.near("change", value(found["change"]), expected, 1e-6)
        group.near("reach", value(found["reach"]), room + expected, 1e-6)
        rise = round(draw.uniform(-30, 90), 2)
        left = grown(diameter, "steel", rise) + over - grown(diameter, "aluminium", rise)
        found = bench.ask(bench="warm", diameter=sure(diameter, "mm"), interference=sure(over, "mm"), rise=str(rise))
        group.near("left when warm", value(found["left"]), left, 1e-9)
    return group.done()
