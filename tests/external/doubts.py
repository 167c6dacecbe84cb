"""Stated uncertainty against the scatter of 200 000 drawn samples."""

import numpy as np

from bench import Group


def doubts(bench):
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
