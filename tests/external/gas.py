"""Air in a closed case by its measured equation of state (CoolProp), leak rates by pint and scipy.constants.

The product takes air as an ideal gas. CoolProp does not, and says what that costs.
"""

import random

import pint
import scipy.constants as constants
from CoolProp.CoolProp import PropsSI

from bench import Group, sure, value

UNITS = pint.UnitRegistry()
MOLAR_MASS = PropsSI("M", "Air")


def line(at, gauge, case, barometer):
    return {"at": f"{at} s", "gauge": sure(gauge, "kPa", 6), "case": sure(case, "°C", 6),
            "barometer": sure(barometer, "kPa", 6)}


def bend(kelvin):
    """Second virial coefficient of air, m³/mol: P/(RT) = n + B·n², n in mol/m³."""
    return PropsSI("Bvirial", "P", 1e5, "T", kelvin, "Air")


def tight(bench):
    """A case that does not leak, warmed or cooled, while the weather changes: what seems to be lost."""
    group = Group("air in a closed case, temperature and barometer, CoolProp")
    draw = random.Random(1)
    for _ in range(60):
        stage = draw.choice(["low", "working", "vacuum"])
        before, after = draw.uniform(97.0, 104.0), draw.uniform(97.0, 104.0)
        gauge = draw.uniform(15.0, 110.0) if stage != "vacuum" else draw.uniform(12.0, 50.0)
        first, later = draw.uniform(5.0, 35.0), draw.uniform(5.0, 35.0)
        sign = -1 if stage == "vacuum" else 1
        density = PropsSI("D", "P", 1e3 * (before + sign * gauge), "T", first + 273.15, "Air")
        absolute = PropsSI("P", "D", density, "T", later + 273.15, "Air") / 1e3
        now = sign * (absolute - after)
        if now <= 0:
            continue
        found = bench.ask(bench="leak", stage=stage, volume=sure(1.2, "L"), first=line(0, gauge, first, before),
                          later=line(600, now, later, after))
        # What the ideal gas leaves out is, to a few percent, the change of air's second virial coefficient.
        moles = density / MOLAR_MASS
        per_virial = moles**2 * constants.R * (first + 273.15) / 1e3
        unideal = (bend(first + 273.15) - bend(later + 273.15)) * per_virial * sign
        what = f"{stage} {gauge:.1f} kPa, {first:.1f} to {later:.1f} °C, {before:.1f} to {after:.1f} kPa"
        group.near(what, value(found["lost"]), unideal, 0.003)
        group.near("not ideal", unideal, 0.0, 0.1)  # Below one step of a gauge that reads 0.1 kPa.
        group.near("corrected", value(found["corrected"]), gauge - unideal, 0.003)
    return group.done()


def density(bench):
    """The air that is gone, by its density before and after, and how far from ideal it is."""
    group = Group("density and compressibility, CoolProp")
    draw = random.Random(6)
    for _ in range(40):
        gauge, lost = draw.uniform(20.0, 110.0), draw.uniform(1.0, 8.0)
        first, later = draw.uniform(5.0, 35.0), draw.uniform(5.0, 35.0)
        start = {"P": 1e3 * (101.325 + gauge), "T": first + 273.15}
        full = PropsSI("D", "P", start["P"], "T", start["T"], "Air")
        factor = PropsSI("Z", "P", start["P"], "T", start["T"], "Air")
        group.near("compressibility is that of an ideal gas", factor, 1.0, 0.0015)
        # Real air of 1.2 L, less what a loss at the first temperature takes out of it.
        left = PropsSI("D", "P", start["P"] - 1e3 * lost, "T", start["T"], "Air")
        absolute = PropsSI("P", "D", left, "T", later + 273.15, "Air") / 1e3
        found = bench.ask(bench="leak", stage="working", volume=sure(1.2, "L"), first=line(0, gauge, first, 101.325),
                          later=line(300, absolute - 101.325, later, 101.325))
        before, after = full / MOLAR_MASS, left / MOLAR_MASS
        gone = 1.2e-3 * (before - after) / 300
        bent = 1.2e-3 * (bend(start["T"]) * before**2 - bend(later + 273.15) * after**2) / 300
        kilopascal = 1.2e-3 * 1e3 / 300 / (constants.R * start["T"])
        group.near(f"moles at {gauge:.1f} kPa", value(found["moles"]), gone + bent, 0.003 * kilopascal)
        group.near("not ideal", bent, 0.0, 0.1 * kilopascal)
    return group.done()


def rates(bench):
    """Pa·m³/s in standard cm³/min, with the temperature that "standard" is at."""
    group = Group("leak rate, pint and scipy.constants")
    draw = random.Random(7)
    for _ in range(30):
        volume, lost, case = (round(draw.uniform(*ends), 6) for ends in [(0.3, 3.0), (0.1, 5.0), (0.0, 40.0)])
        found = bench.ask(bench="leak", stage="working", volume=sure(volume, "L", 6),
                          first=line(0, 70.0, case, 101.325), later=line(300, 70.0 - lost, case, 101.325))
        kelvin = UNITS.Quantity(case, "degC").to("K").magnitude
        rate = UNITS.Quantity(volume, "L") * UNITS.Quantity(lost, "kPa") / UNITS.Quantity(300, "s")
        expected = rate.to("Pa*m^3/s").magnitude
        group.near("Pa·m³/s", value(found["rate"]), expected, 1e-6 * expected)
        group.near("moles", value(found["moles"]), expected / (constants.R * kelvin), 1e-6 * expected)
        flow = (rate / UNITS.Quantity(1, "atm")).to("cm^3/min").magnitude
        group.near("at the gas's temperature", value(found["flow_as_it_is"]), flow, 1e-6 * flow)
        cold = flow * constants.zero_Celsius / kelvin
        group.near("at 0 °C", value(found["flow_at_0_celsius"]), cold, 1e-6 * cold)
    return group.done()
