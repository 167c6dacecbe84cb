//! Marks on new and old parts. Unit and sign of a mark are typed, never taken for granted: makers
//! etch hundredths or thousandths, and "+" for more distance or for less shim.

use measure::{Decimal, Sign, Typed, Unit};
use serde::{Deserialize, Serialize};
use words::{say, t};

use crate::by_id::by_id;

/// What a mark, or a measured height, is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum MarkKind {
    /// Height the bearing in series with the pack stands at, measured.
    BearingHeight,
    /// Mounting distance of the gear or pinion, as etched on it.
    MountingDistance,
    /// Distance of the case, as marked on it.
    Case,
}

/// What one digit of a mark is worth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MarkUnit {
    /// Millimetres.
    Millimetre,
    /// Hundredths of a millimetre.
    Hundredth,
    /// Thousandths of a millimetre.
    Micrometre,
    /// Inches.
    Inch,
    /// Thousandths of an inch.
    Thou,
}

/// What "+" on a mark means.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Plus {
    /// More height or distance.
    More,
    /// Less height or distance.
    Less,
}

/// One mark on the old part and on the new one.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct PartMark {
    /// What it is about.
    pub kind: MarkKind,
    /// On the old part: the digits, in mm or in before the unit's scale.
    pub old: Typed,
    /// On the new part.
    pub new: Typed,
    /// What a digit is worth.
    pub unit: MarkUnit,
    /// What "+" means.
    pub plus: Plus,
}

/// Two marks farther apart than this are no two parts of one unit, mm (common practice, no source).
const FARTHEST: Decimal = Decimal::TWO;

impl MarkUnit {
    /// Every unit of a mark.
    pub const ALL: [MarkUnit; 5] = [
        MarkUnit::Millimetre,
        MarkUnit::Hundredth,
        MarkUnit::Micrometre,
        MarkUnit::Inch,
        MarkUnit::Thou,
    ];

    /// The unit that marks are in more often than not for whoever measures in `length`.
    pub fn usual(length: Unit) -> MarkUnit {
        if length == Unit::Inch { MarkUnit::Inch } else { MarkUnit::Millimetre }
    }

    /// Its name on the choice and in files: `0.01 mm`.
    pub fn id(self) -> &'static str {
        match self {
            MarkUnit::Millimetre => "mm",
            MarkUnit::Hundredth => "0.01 mm",
            MarkUnit::Micrometre => "0.001 mm",
            MarkUnit::Inch => "in",
            MarkUnit::Thou => "0.001 in",
        }
    }

    /// The unit of that name.
    pub fn named(id: &str) -> Option<MarkUnit> {
        MarkUnit::ALL.into_iter().find(|unit| unit.id() == id)
    }

    /// Its unit without the scale, and the scale's decimals.
    fn base(self) -> (Unit, u32) {
        match self {
            MarkUnit::Millimetre => (Unit::Millimetre, 0),
            MarkUnit::Hundredth => (Unit::Millimetre, 2),
            MarkUnit::Micrometre => (Unit::Millimetre, 3),
            MarkUnit::Inch => (Unit::Inch, 0),
            MarkUnit::Thou => (Unit::Inch, 3),
        }
    }
}

by_id!(MarkUnit);

impl MarkKind {
    /// Every kind, in the order they are asked for.
    pub const ALL: [MarkKind; 3] =
        [MarkKind::BearingHeight, MarkKind::MountingDistance, MarkKind::Case];

    /// The name at the field.
    pub fn name(self) -> &'static str {
        match self {
            MarkKind::BearingHeight => t("Bearing stand height"),
            MarkKind::MountingDistance => t("Mounting distance mark"),
            MarkKind::Case => t("Case mark"),
        }
    }
}

impl PartMark {
    /// Reads what was typed for the old and the new part.
    ///
    /// # Errors
    /// The sentence for the field, and whether it is the new part's.
    pub fn read(
        kind: MarkKind,
        [old, new]: [&str; 2],
        unit: MarkUnit,
        plus: Plus,
    ) -> Result<PartMark, (bool, String)> {
        let (base, _) = unit.base();
        let digits = |text: &str, is_new| {
            if text.chars().any(char::is_alphabetic) {
                let says = t("Type the digits of the mark alone: its unit is chosen beside it.");
                return Err((is_new, says.to_owned()));
            }
            Typed::parse(text, base, Sign::Any).map_err(|error| (is_new, error.to_string()))
        };
        let mark = PartMark { kind, old: digits(old, false)?, new: digits(new, true)?, unit, plus };
        if mark.change().abs() > FARTHEST {
            let apart = measure::show(mark.change().abs(), 2, measure::Mark::Point);
            let says = say!(
                "{} and {} are {apart} mm apart, more than {FARTHEST}. Look at the unit of the mark.",
                mark.old.text(),
                mark.new.text()
            );
            return Err((true, says));
        }
        Ok(mark)
    }

    /// New less old, mm: above zero is more height or distance.
    pub fn change(&self) -> Decimal {
        let (_, scale) = self.unit.base();
        let apart = self.new.in_unit(Unit::Millimetre) - self.old.in_unit(Unit::Millimetre);
        let change = apart * Decimal::new(1, scale);
        if self.plus == Plus::Less { -change } else { change }
    }

    /// Whether its digits are lengths, and near enough to be two parts of one unit.
    pub(crate) fn is_sound(&self) -> bool {
        let (base, _) = self.unit.base();
        self.old.unit() == base && self.new.unit() == base && self.change().abs() <= FARTHEST
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mark(texts: [&str; 2], unit: MarkUnit, plus: Plus) -> Result<PartMark, (bool, String)> {
        PartMark::read(MarkKind::MountingDistance, texts, unit, plus)
    }

    #[test]
    fn unit_and_sign_of_a_mark_are_what_was_chosen() {
        let change = |texts, unit, plus| mark(texts, unit, plus).unwrap().change().normalize();
        assert_eq!(change(["-2", "+3"], MarkUnit::Hundredth, Plus::More), Decimal::new(5, 2));
        assert_eq!(change(["-2", "3"], MarkUnit::Hundredth, Plus::Less), Decimal::new(-5, 2));
        assert_eq!(change(["0", "2"], MarkUnit::Thou, Plus::More), Decimal::new(508, 4));
        assert_eq!(
            change(["14,96", "15.02"], MarkUnit::Millimetre, Plus::More),
            Decimal::new(6, 2)
        );
    }

    #[test]
    fn a_mark_that_makes_no_sense_gets_its_sentence() {
        let refused = |texts, unit| mark(texts, unit, Plus::More).unwrap_err();
        let (is_new, says) = refused(["1", "3 mm"], MarkUnit::Hundredth);
        assert!(is_new);
        assert_eq!(says, "Type the digits of the mark alone: its unit is chosen beside it.");
        let (_, says) = refused(["-2", "3"], MarkUnit::Millimetre);
        assert_eq!(says, "-2 and 3 are 5.00 mm apart, more than 2. Look at the unit of the mark.");
        assert!(!refused(["", "3"], MarkUnit::Hundredth).0);
    }
}
