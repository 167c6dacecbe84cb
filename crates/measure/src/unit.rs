//! Quantities and the units a person may write them in.

use std::fmt;
use words::{say, t};

use serde::{Deserialize, Deserializer, Serialize, Serializer};

/// What kind of thing a number measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// How far apart: lash, depth, play, thickness.
    Length,
    /// How far turned.
    Angle,
    /// Turning effort.
    Torque,
    /// Straight pull or push.
    Force,
    /// Pressure or vacuum, as the gauge reads it.
    Pressure,
    /// A point on a thermometer, never a difference of two.
    Temperature,
    /// Oil or grease, by volume.
    Volume,
    /// How long.
    Time,
    /// How many things.
    Count,
    /// A part of a whole.
    Share,
    /// How many times round.
    Turns,
    /// Electric potential against another place.
    Voltage,
    /// How much longer for each degree: a coefficient of linear expansion.
    Expansion,
}

/// A unit a person may type or read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Unit {
    /// Millimetre.
    Millimetre,
    /// Inch: 25.4 mm exactly.
    Inch,
    /// Degree of arc.
    Degree,
    /// Minute of arc: 1/60 of a degree.
    ArcMinute,
    /// Radian: 180/π degrees.
    Radian,
    /// Newton metre.
    NewtonMetre,
    /// Pound-force inch.
    PoundForceInch,
    /// Pound-force foot: 12 lbf·in.
    PoundForceFoot,
    /// Kilogram-force metre: 9.80665 N·m exactly.
    KilogramForceMetre,
    /// Newton.
    Newton,
    /// Pound-force: 4.4482216152605 N exactly. A spring scale marked "lb" reads it.
    PoundForce,
    /// Kilogram-force: 9.80665 N exactly. A spring scale marked "kg" reads it.
    KilogramForce,
    /// Kilopascal.
    Kilopascal,
    /// Bar: 100 kPa exactly.
    Bar,
    /// Pound-force per square inch.
    PoundPerSquareInch,
    /// Conventional inch of mercury: 3386.389 Pa.
    InchOfMercury,
    /// Degree Celsius.
    Celsius,
    /// Degree Fahrenheit.
    Fahrenheit,
    /// Kelvin.
    Kelvin,
    /// Millilitre.
    Millilitre,
    /// Litre.
    Litre,
    /// United States fluid ounce: 29.5735295625 mL exactly.
    UsFluidOunce,
    /// Imperial fluid ounce: 28.4130625 mL exactly, 4 % less than the US one.
    ImperialFluidOunce,
    /// Second.
    Second,
    /// Minute of time.
    Minute,
    /// Hour.
    Hour,
    /// Day of 24 hours.
    Day,
    /// One thing counted: a roller, a screw.
    Piece,
    /// A hundredth of the whole.
    Percent,
    /// Once round.
    Turn,
    /// Volt.
    Volt,
    /// Millivolt: a thousandth of a volt.
    Millivolt,
    /// Micrometre a metre and kelvin: 10⁻⁶/K.
    PerMillionKelvin,
    /// Microinch an inch and degree Fahrenheit: 10⁻⁶/°F, 9/5 of the other.
    PerMillionFahrenheit,
}

/// Every unit, with its symbol and the other spellings people type, each as [`fold`] leaves it.
/// A folded symbol is always a spelling too.
const UNITS: [(Unit, Quantity, &str, &[&str]); 34] = {
    use Quantity as Q;
    use Unit as U;
    [
        (
            U::Millimetre,
            Q::Length,
            "mm",
            &["millimetre", "millimetres", "millimeter", "millimeters"],
        ),
        (
            U::Inch,
            Q::Length,
            "in",
            &["inch", "inches", "pulgada", "pulgadas", "\"", "″", "”", "''", "′′"],
        ),
        (U::Degree, Q::Angle, "°", &["deg", "degree", "degrees", "grado", "grados", "º"]),
        (U::ArcMinute, Q::Angle, "′", &["'", "’", "arcmin", "arc·min", "arcminute", "arcminutes"]),
        (U::Radian, Q::Angle, "rad", &["radian", "radians"]),
        (U::NewtonMetre, Q::Torque, "N·m", &["nm", "newton·metre", "newton·meter"]),
        (
            U::PoundForceInch,
            Q::Torque,
            "lbf·in",
            &["lbfin", "lb·in", "lbin", "lbs·in", "in·lbf", "in·lb", "in·lbs", "inlb", "inlbs"],
        ),
        (
            U::PoundForceFoot,
            Q::Torque,
            "lbf·ft",
            &["lbfft", "lb·ft", "lbft", "lbs·ft", "ft·lbf", "ft·lb", "ft·lbs", "ftlb", "ftlbs"],
        ),
        (U::KilogramForceMetre, Q::Torque, "kgf·m", &["kgfm", "kg·m", "kgm", "m·kg", "mkg"]),
        (U::Newton, Q::Force, "N", &["newton", "newtons"]),
        (U::PoundForce, Q::Force, "lbf", &["lb", "lbs", "pound", "pounds"]),
        (U::KilogramForce, Q::Force, "kgf", &["kg", "kp"]),
        (U::Kilopascal, Q::Pressure, "kPa", &[]),
        (U::Bar, Q::Pressure, "bar", &[]),
        (U::PoundPerSquareInch, Q::Pressure, "psi", &["lbf/in²", "lb/in²", "lbf/in2", "lb/in2"]),
        (U::InchOfMercury, Q::Pressure, "inHg", &["in·hg", "\"hg", "\"·hg", "″hg", "″·hg"]),
        (U::Celsius, Q::Temperature, "°C", &["c", "º·c", "ºc", "°·c", "deg·c", "degc", "celsius"]),
        (
            U::Fahrenheit,
            Q::Temperature,
            "°F",
            &["f", "º·f", "ºf", "°·f", "deg·f", "degf", "fahrenheit"],
        ),
        (U::Kelvin, Q::Temperature, "K", &["kelvin"]),
        (U::Millilitre, Q::Volume, "ml", &["cc", "cm³", "cm3", "millilitre", "milliliter"]),
        (U::Litre, Q::Volume, "L", &["litre", "litres", "liter", "liters", "litro", "litros"]),
        (U::UsFluidOunce, Q::Volume, "US fl oz", &["us·floz", "fl·oz·us", "us·oz", "oz·us"]),
        (
            U::ImperialFluidOunce,
            Q::Volume,
            "imp fl oz",
            &[
                "imperial·fl·oz",
                "fl·oz·imp",
                "fl·oz·imperial",
                "uk·fl·oz",
                "imp·floz",
                "imp·oz",
                "imperial·oz",
            ],
        ),
        (U::Second, Q::Time, "s", &["sec", "secs", "second", "seconds", "segundo", "segundos"]),
        (U::Minute, Q::Time, "min", &["mins", "minute", "minutes", "minuto", "minutos"]),
        (U::Hour, Q::Time, "h", &["hr", "hrs", "hour", "hours", "hora", "horas"]),
        (U::Day, Q::Time, "d", &["day", "days", "día", "días"]),
        (U::Piece, Q::Count, "pcs", &["pc", "piece", "pieces", "pieza", "piezas", "uds"]),
        (U::Percent, Q::Share, "%", &["percent"]),
        (
            U::Turn,
            Q::Turns,
            "turns",
            &["turn", "rev", "revs", "vuelta", "vueltas", "giro", "giros"],
        ),
        (U::Volt, Q::Voltage, "V", &["volt", "volts"]),
        (U::Millivolt, Q::Voltage, "mV", &["millivolt", "millivolts"]),
        (
            U::PerMillionKelvin,
            Q::Expansion,
            "µm/m·K",
            &["um/m·k", "μm/m·k", "µm/m·°c", "um/m·°c", "ppm/k", "ppm/°c"],
        ),
        (U::PerMillionFahrenheit, Q::Expansion, "µin/in·°F", &["uin/in·°f", "uin/in·f", "ppm/°f"]),
    ]
};

impl Unit {
    /// The quantity it measures.
    pub fn quantity(self) -> Quantity {
        self.facts().0
    }

    /// The symbol shown on screen and written to files: `mm`, `in`, `N·m`, `lbf·in`.
    pub fn symbol(self) -> &'static str {
        self.facts().1
    }

    /// Reads a symbol in any common spelling: `in`, `"`, `inch`, `Nm`, `N m`, `in-lb`, `lbf.in`.
    ///
    /// Capitals do not matter. A spelling that could mean two units, such as `fl oz`, is `None`.
    pub fn parse(text: &str) -> Option<Unit> {
        let folded = fold(text);
        UNITS
            .iter()
            .find(|(_, _, symbol, spellings)| {
                spellings.contains(&folded.as_str()) || fold(symbol) == folded
            })
            .map(|(unit, ..)| *unit)
    }

    /// The units of one quantity, the usual one first.
    pub fn all_of(quantity: Quantity) -> impl Iterator<Item = Unit> {
        UNITS.iter().filter(move |row| row.1 == quantity).map(|row| row.0)
    }

    fn facts(self) -> (Quantity, &'static str) {
        // Every unit has its row, which a test proves; the fallback is never reached.
        UNITS.iter().find(|row| row.0 == self).map_or((Quantity::Length, ""), |row| (row.1, row.2))
    }
}

/// Lower case, blanks round it gone, and one `·` for whatever joins two parts: `In. - Lb` → `in·lb`.
pub(crate) fn fold(text: &str) -> String {
    const JOINERS: &[char] = &['·', '⋅', '.', '-', '‑', '*', '×', '(', ')'];
    text.split(|c: char| c.is_whitespace() || JOINERS.contains(&c))
        .filter(|part| !part.is_empty())
        .map(str::to_lowercase)
        .collect::<Vec<_>>()
        .join("·")
}

impl fmt::Display for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            // Words, not symbols.
            Unit::Piece => t("pcs"),
            Unit::Turn => t("turns"),
            _ => self.symbol(),
        })
    }
}

impl fmt::Display for Quantity {
    /// The quantity with its article, as it stands in a sentence: "an angle".
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Quantity::Length => t("a length"),
            Quantity::Angle => t("an angle"),
            Quantity::Torque => t("a torque"),
            Quantity::Force => t("a force"),
            Quantity::Pressure => t("a pressure"),
            Quantity::Temperature => t("a temperature"),
            Quantity::Volume => t("a volume"),
            Quantity::Time => t("a time"),
            Quantity::Count => t("a count"),
            Quantity::Share => t("a share"),
            Quantity::Turns => t("a number of turns"),
            Quantity::Voltage => t("a voltage"),
            Quantity::Expansion => t("an expansion coefficient"),
        })
    }
}

impl Serialize for Unit {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(self.symbol())
    }
}

impl<'de> Deserialize<'de> for Unit {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Unit, D::Error> {
        let text = String::deserialize(deserializer)?;
        Unit::parse(&text).ok_or_else(|| {
            serde::de::Error::custom(say!("{text} is not a unit. Write one such as mm or in."))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_symbol_and_spelling_is_read_as_its_unit() {
        for (unit, quantity, symbol, spellings) in UNITS {
            assert_eq!((unit.quantity(), unit.symbol()), (quantity, symbol));
            assert_eq!(Unit::parse(symbol), Some(unit), "{symbol}");
            for spelling in spellings {
                assert_eq!(fold(spelling), *spelling, "a spelling is listed as fold leaves it");
                assert_eq!(Unit::parse(spelling), Some(unit), "{spelling}");
            }
        }
    }

    #[test]
    fn what_people_write() {
        let written = [
            ("in.", Unit::Inch),
            ("\"", Unit::Inch),
            ("MM", Unit::Millimetre),
            ("lbf·in", Unit::PoundForceInch),
            ("lbf.in", Unit::PoundForceInch),
            ("in-lb", Unit::PoundForceInch),
            ("in. lb.", Unit::PoundForceInch),
            ("lb-in", Unit::PoundForceInch),
            ("ft-lbs", Unit::PoundForceFoot),
            ("Nm", Unit::NewtonMetre),
            ("N m", Unit::NewtonMetre),
            ("N⋅m", Unit::NewtonMetre),
            ("kg-m", Unit::KilogramForceMetre),
            ("in. Hg", Unit::InchOfMercury),
            ("PSI", Unit::PoundPerSquareInch),
            ("deg C", Unit::Celsius),
            ("F", Unit::Fahrenheit),
            ("mL", Unit::Millilitre),
            ("l", Unit::Litre),
            ("US fl. oz.", Unit::UsFluidOunce),
            ("fl oz (imp)", Unit::ImperialFluidOunce),
            ("min", Unit::Minute),
        ];
        for (text, unit) in written {
            assert_eq!(Unit::parse(text), Some(unit), "{text}");
        }
    }

    #[test]
    fn what_could_be_two_units_or_none_is_not_read() {
        for text in ["", "·", "fl oz", "oz", "m", "thou", "mn"] {
            assert_eq!(Unit::parse(text), None, "{text}");
        }
    }

    #[test]
    fn the_file_holds_the_symbol() {
        assert_eq!(serde_json::to_string(&Unit::PoundForceInch).unwrap(), "\"lbf·in\"");
        assert_eq!(serde_json::from_str::<Unit>("\"lbf·in\"").unwrap(), Unit::PoundForceInch);
        let refused = serde_json::from_str::<Unit>("\"furlong\"").unwrap_err().to_string();
        assert!(refused.starts_with("furlong is not a unit."), "{refused}");
    }
}
