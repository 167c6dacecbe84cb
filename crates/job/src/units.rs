//! The units a person reads, one for each quantity that gauges and manuals have several for.

use std::fmt;

use measure::{Quantity, Unit};

/// The unit of each quantity that a person may choose one for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Units {
    /// Of lash, depth, shims: mm or in.
    pub length: Unit,
    /// Of torques.
    pub torque: Unit,
    /// Of pressure and vacuum.
    pub pressure: Unit,
    /// Of temperatures.
    pub temperature: Unit,
    /// Of lube.
    pub volume: Unit,
}

/// The units of each quantity, in the order they are offered; what is usual comes first.
const CHOICES: [(Quantity, &[Unit]); 5] = [
    (Quantity::Length, &[Unit::Millimetre, Unit::Inch]),
    (Quantity::Torque, &[Unit::NewtonMetre, Unit::PoundForceFoot, Unit::PoundForceInch]),
    (
        Quantity::Pressure,
        &[Unit::Kilopascal, Unit::PoundPerSquareInch, Unit::Bar, Unit::InchOfMercury],
    ),
    (Quantity::Temperature, &[Unit::Celsius, Unit::Fahrenheit]),
    (Quantity::Volume, &[Unit::Millilitre, Unit::UsFluidOunce, Unit::ImperialFluidOunce]),
];

/// The units to choose from; none where a quantity has but one.
pub fn unit_choices(quantity: Quantity) -> &'static [Unit] {
    CHOICES.iter().find(|row| row.0 == quantity).map_or(&[], |row| row.1)
}

/// The unit offered after this one, the first after the last; `None` where there is no other.
pub fn next_unit(unit: Unit) -> Option<Unit> {
    let choices = unit_choices(unit.quantity());
    let after = choices.iter().skip_while(|other| **other != unit).nth(1);
    after.or(choices.first()).copied()
}

impl Units {
    /// The unit that numbers of `own`’s quantity are shown and typed in; `own` itself where there
    /// is nothing to choose.
    pub fn of(self, own: Unit) -> Unit {
        match own.quantity() {
            Quantity::Length => self.length,
            Quantity::Torque => self.torque,
            Quantity::Pressure => self.pressure,
            Quantity::Temperature => self.temperature,
            Quantity::Volume => self.volume,
            _ => own,
        }
    }

    /// The same with `unit` for its quantity; unchanged where that is not on offer.
    pub fn with(mut self, unit: Unit) -> Units {
        let place = match unit.quantity() {
            Quantity::Length => &mut self.length,
            Quantity::Torque => &mut self.torque,
            Quantity::Pressure => &mut self.pressure,
            Quantity::Temperature => &mut self.temperature,
            Quantity::Volume => &mut self.volume,
            _ => return self,
        };
        if unit_choices(unit.quantity()).contains(&unit) {
            *place = unit;
        }
        self
    }

    /// The same with the units that a text names by their symbols, as [`Units`] is displayed; the
    /// others stay.
    pub fn named(self, text: &str) -> Units {
        let offered = |symbol: &str| {
            let mut units = CHOICES.iter().flat_map(|row| row.1);
            units.find(|unit| unit.symbol() == symbol).copied()
        };
        text.split(',').filter_map(|symbol| offered(symbol.trim())).fold(self, Units::with)
    }
}

impl Default for Units {
    fn default() -> Self {
        Units {
            length: Unit::Millimetre,
            torque: Unit::NewtonMetre,
            pressure: Unit::Kilopascal,
            temperature: Unit::Celsius,
            volume: Unit::Millilitre,
        }
    }
}

impl fmt::Display for Units {
    /// "mm, N·m, kPa, °C, ml".
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Units { length, torque, pressure, temperature, volume } = self;
        write!(f, "{length}, {torque}, {pressure}, {temperature}, {volume}")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_usual_unit_stands_first_and_each_can_be_chosen_kept_and_read_again() {
        for (quantity, choices) in CHOICES {
            assert_eq!(Units::default().of(choices[0]), choices[0]);
            for unit in choices {
                assert_eq!(unit.quantity(), quantity);
                let chosen = Units::default().with(*unit);
                assert_eq!(chosen.of(choices[0]), *unit);
                assert_eq!(Units::default().named(&chosen.to_string()), chosen);
            }
        }
    }

    #[test]
    fn what_is_not_named_or_not_on_offer_stays() {
        let inches = Units { length: Unit::Inch, ..Units::default() };
        for text in ["in", "in, furlong, K", " in ,,"] {
            assert_eq!(Units::default().named(text), inches, "{text}");
        }
        assert_eq!(inches.with(Unit::Kelvin), inches);
        assert_eq!(inches.of(Unit::Degree), Unit::Degree);
        assert_eq!(unit_choices(Quantity::Angle), []);
    }

    #[test]
    fn the_next_unit_goes_round() {
        assert_eq!(next_unit(Unit::Millimetre), Some(Unit::Inch));
        assert_eq!(next_unit(Unit::Inch), Some(Unit::Millimetre));
        assert_eq!(next_unit(Unit::PoundForceFoot), Some(Unit::PoundForceInch));
        assert_eq!(next_unit(Unit::KilogramForceMetre), Some(Unit::NewtonMetre));
        assert_eq!(next_unit(Unit::Degree), None);
    }
}
