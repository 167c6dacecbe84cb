//! How an instrument's figures are written: in the unit that was typed, or in those of whoever
//! reads the record, with their ±.

use measure::{Amount, Decimal, Mark, Unit, Verdict, real, round, show};
use words::t;
use workshop::{Figure, Given};

use super::Headline;
use crate::carried::carried;
use crate::{Units, unit_choices};

/// Most places a figure is shown with.
const MOST_PLACES: u32 = 6;

/// Unit and decimal mark of an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Writing {
    /// The unit typed; figures of its quantity are shown in it.
    pub unit: Option<Unit>,
    /// The units of whoever reads it on paper; figures of every quantity are shown in them.
    pub reader: Option<Units>,
    /// The decimal mark.
    pub mark: Mark,
}

impl Writing {
    /// The unit that figures of `own`’s quantity are shown in; `None`: in their own.
    pub fn into(&self, own: Unit) -> Option<Unit> {
        let chosen =
            |units: Units| (!unit_choices(own.quantity()).is_empty()).then(|| units.of(own));
        let typed = || self.unit.filter(|unit| unit.quantity() == own.quantity());
        self.reader.and_then(chosen).or_else(typed)
    }

    /// "0.0329 ± 0.0012 mm": twice the standard uncertainty, to its second digit.
    pub fn figure(&self, figure: &Figure) -> String {
        let own = Unit::parse(figure.unit);
        let into = own.and_then(|own| self.into(own));
        let to = |value| match (own, into) {
            (Some(own), Some(into)) => Amount { value, unit: own }.to(into).map(|it| it.value),
            _ => Some(value),
        };
        let value = to(figure.value).unwrap_or(figure.value);
        let doubt = doubt(figure);
        // A difference: the zero points of two scales do not count.
        let doubt = to(figure.value + doubt).map_or(doubt, |more| (more - value).abs());
        self.doubted(value, doubt, into.map_or(t(figure.unit), Unit::symbol))
    }

    /// A difference of temperatures, kelvin, in the degrees typed: 5 of those are 9 of Fahrenheit.
    pub fn difference(&self, kelvin: &Figure) -> String {
        let degrees = self.into(Unit::Celsius);
        let scale = match degrees {
            Some(Unit::Fahrenheit) => Decimal::new(18, 1),
            _ => Decimal::ONE,
        };
        let unit = degrees.unwrap_or(Unit::Kelvin);
        self.doubted(kelvin.value * scale, doubt(kelvin) * scale, unit.symbol())
    }

    fn doubted(&self, value: Decimal, doubt: Decimal, unit: &str) -> String {
        let places = places(real::from_decimal(doubt));
        let value = show(value, places, self.mark);
        if doubt.is_zero() {
            format!("{value} {unit}")
        } else {
            format!("{value} ± {} {unit}", show(doubt, places, self.mark))
        }
    }

    /// The figure as the answer.
    pub fn headline(&self, title: &'static str, figure: &Figure, note: String) -> Headline {
        let written = self.figure(figure);
        let (number, unit) = written.split_once(' ').unwrap_or((&written, ""));
        Headline { title, number: number.to_owned(), unit: unit.to_owned(), note }
    }

    /// The figure alone, to its second digit: for what is small and only compared.
    pub fn plain(&self, figure: &Figure) -> String {
        let into = Unit::parse(figure.unit).and_then(|own| self.into(own));
        let shown = match (figure.amount(), into) {
            (Some(amount), Some(into)) => amount.to(into).map_or(amount.value, |it| it.value),
            _ => figure.value,
        };
        let places = places(real::from_decimal(shown).abs());
        let unit = into.map_or(t(figure.unit), Unit::symbol);
        format!("{} {unit}", show(shown, places, self.mark))
    }

    /// A number as it was typed, with its unit; a degree stands at its number. On paper in the unit of
    /// whoever reads it.
    pub fn typed(&self, amount: Amount) -> String {
        let reader = self.reader.and_then(|_| self.into(amount.unit));
        let read = reader.and_then(|unit| carried(amount, unit));
        self.as_it_stands(read.unwrap_or(amount))
    }

    fn as_it_stands(&self, amount: Amount) -> String {
        let value =
            show(amount.value, amount.value.normalize().scale().min(MOST_PLACES), self.mark);
        let gap = if amount.unit == Unit::Degree { "" } else { " " };
        format!("{value}{gap}{}", amount.unit)
    }

    /// Millimetres as a small length in the unit typed, without a sign: "0.040 mm", "0.0016 in".
    pub fn small(&self, millimetres: Decimal) -> String {
        let own = Amount { value: millimetres.abs(), unit: Unit::Millimetre };
        let inches = self.into(own.unit).filter(|unit| *unit == Unit::Inch);
        let inches = inches.and_then(|unit| own.to(unit));
        let (amount, places) = inches.map_or((own, 3), |inches| (inches, 4));
        format!("{} {}", show(amount.value, places, self.mark), amount.unit)
    }

    /// An amount in the unit typed, to a tenth; of a bar to a thousandth.
    pub fn converted(&self, amount: Amount) -> String {
        let into = self.into(amount.unit).and_then(|unit| amount.to(unit)).unwrap_or(amount);
        self.as_it_stands(Amount { value: round(into.value, tenths(into.unit)), ..into })
    }

    /// An input of a formula.
    pub fn input(&self, input: &Given) -> String {
        let doubt = real::to_decimal(2.0 * input.standard, 12).unwrap_or_default();
        let places = if doubt.is_zero() {
            input.value.normalize().scale().min(MOST_PLACES)
        } else {
            places(real::from_decimal(doubt))
        };
        let value = show(input.value, places, self.mark);
        format!("{}: {value} {}", t(input.name), input.unit).trim_end().to_owned()
    }
}

/// Places that show about a tenth of a kilopascal, or of another unit’s one.
pub(super) fn tenths(unit: Unit) -> u32 {
    if unit == Unit::Bar { 3 } else { 1 }
}

/// The worst of some verdicts; `None` of none.
pub(super) fn worst(verdicts: impl IntoIterator<Item = Verdict>) -> Option<Verdict> {
    verdicts.into_iter().max_by_key(|verdict| match verdict {
        Verdict::InBand => 0,
        Verdict::NearLimit => 1,
        Verdict::CannotProve => 2,
        Verdict::Out => 3,
    })
}

/// Twice the standard uncertainty.
fn doubt(figure: &Figure) -> Decimal {
    real::to_decimal(2.0 * figure.standard(), 12).unwrap_or_default()
}

/// Places that show the second digit of a doubt.
fn places(doubt: f64) -> u32 {
    let (mut places, mut scaled) = (0, doubt);
    if doubt <= 0.0 {
        return 2;
    }
    while scaled < 10.0 && places < MOST_PLACES {
        scaled *= 10.0;
        places += 1;
    }
    places
}
