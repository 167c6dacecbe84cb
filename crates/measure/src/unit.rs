//! Quantities and the units a person may write them in.

/// What kind of thing a number measures.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Quantity { Length, Angle, Torque, Force, Pressure, Temperature, Volume, Time }

/// A unit a person may type or read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Unit {
    Millimetre, Inch,
    Degree, ArcMinute, Radian,
    NewtonMetre, PoundForceInch, PoundForceFoot, KilogramForceMetre,
    Newton, PoundForce, KilogramForce,
    Kilopascal, Bar, PoundPerSquareInch, InchOfMercury,
    Celsius, Fahrenheit, Kelvin,
    Millilitre, Litre, UsFluidOunce, ImperialFluidOunce,
    Second, Minute, Hour, Day,
}

impl Unit {
    /// The quantity it measures.
    pub fn quantity(self) -> Quantity { todo!() }
    /// The symbol shown on screen and written to files: `mm`, `in`, `N·m`, `lbf·in`.
    pub fn symbol(self) -> &'static str { todo!() }
    /// Reads a symbol in any common spelling (`in`, `"`, `inch`, `Nm`, `in-lb`…).
    pub fn parse(_text: &str) -> Option<Unit> { todo!() }
}
