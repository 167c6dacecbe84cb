"""Every unit of the product by pint, the constants of some by scipy.constants."""

import random

import pint
import scipy.constants as constants

from bench import Group, sure, value

UNITS = pint.UnitRegistry()
UNITS.define("conventional_inHg = 3386.389 * pascal")  # NIST SP 811, B.8; pint's own is that of 0 °C.

# Each quantity: the product's symbol and pint's name.
TABLE = {
    "length": {"mm": "mm", "in": "inch"},
    "angle": {"°": "degree", "′": "arcminute", "rad": "radian"},
    "torque": {"N·m": "N*m", "lbf·in": "lbf*inch", "lbf·ft": "lbf*foot", "kgf·m": "kgf*m"},
    "force": {"N": "N", "lbf": "lbf", "kgf": "kgf"},
    "pressure": {"kPa": "kPa", "bar": "bar", "psi": "psi", "inHg": "conventional_inHg"},
    "temperature": {"°C": "degC", "°F": "degF", "K": "kelvin"},
    "volume": {"ml": "mL", "L": "L", "US fl oz": "US_fluid_ounce", "imp fl oz": "imperial_fluid_ounce"},
    "time": {"s": "second", "min": "minute", "h": "hour", "d": "day"},
    "voltage": {"V": "volt", "mV": "mV"},
    "expansion": {"µm/m·K": "micrometer/meter/delta_degC", "µin/in·°F": "microinch/inch/delta_degF"},
}


def conversions(bench):
    """Every unit of a quantity into every other."""
    group = Group("conversions, pint")
    draw = random.Random(8)
    for quantity, names in TABLE.items():
        for symbol, name in names.items():
            for into, other in names.items():
                number = round(draw.uniform(1, 500), 6)
                found = bench.ask(bench="convert", amount=f"{number:.6f} {symbol}", into=into)
                expected = UNITS.Quantity(number, name).to(other).magnitude
                group.near(f"{quantity}: {number} {symbol} in {into}", value(found["amount"]), expected,
                           1e-11 * abs(expected) + 1e-12)
    exact = [("in", "mm", constants.inch / constants.milli), ("lbf", "N", constants.lbf), ("kgf", "N", constants.kgf),
             ("psi", "kPa", constants.psi / constants.kilo), ("bar", "kPa", constants.bar / constants.kilo),
             ("US fl oz", "L", constants.fluid_ounce / constants.liter), ("°", "rad", constants.degree),
             ("imp fl oz", "L", constants.fluid_ounce_imp / constants.liter),
             ("lbf·in", "N·m", constants.lbf * constants.inch), ("lbf·ft", "N·m", constants.lbf * constants.foot)]
    for symbol, into, expected in exact:
        found = value(bench.ask(bench="convert", amount=f"1 {symbol}", into=into)["amount"])
        group.near(f"1 {symbol} by scipy", found, expected, 1e-14 * max(1, expected))
    mercury = value(bench.ask(bench="convert", amount="1 inHg", into="kPa")["amount"])
    group.near("mercury at 0 °C by pint", mercury, UNITS.Quantity(1, "inHg").to("kPa").magnitude, 5e-7)
    for celsius in (-40, 0, 20, 100):
        found = value(bench.ask(bench="convert", amount=f"{celsius} °C", into="°F")["amount"])
        group.near("temperature by scipy", found, constants.convert_temperature(celsius, "C", "F"), 1e-10)
    return group.done()


def drums(bench):
    """A pull on a drum, whatever both are read in."""
    group = Group("rolling torque, pint and scipy.constants")
    exact = {"N": 1, "lbf": constants.lbf, "kgf": constants.kgf}
    lengths = {"mm": constants.milli, "in": constants.inch}
    for pull, newton in exact.items():
        for length, metre in lengths.items():
            found = bench.ask(bench="drag", pull=sure(2.5, pull), drum=sure(2, length), cord=sure(0.1, length))
            group.near(f"{pull} on a drum in {length}", value(found["torque"]), 2.5 * newton * 1.05 * metre, 1e-9)
            by_pint = UNITS.Quantity(2.5, TABLE["force"][pull]) * UNITS.Quantity(1.05, TABLE["length"][length])
            group.near("the same by pint", value(found["torque"]), by_pint.to("N*m").magnitude, 1e-9)
    return group.done()
