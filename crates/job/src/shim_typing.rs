//! What the tin's form is told while a shim is being measured.

use measure::{Decimal, Sign, Typed, Unit};
use words::{say, t};

use crate::figure::with_unit;
use crate::typing::THICKEST;
use crate::{Doubt, Fact, Figure, NewShim, Shown, Typing, figure};

/// A zero beyond this is doubtful, mm (common practice, no source).
const USUAL_ZERO: Decimal = Decimal::from_parts(5, 0, 0, false, 2);

/// What is typed at the tin's form.
#[derive(Clone, Copy, Debug)]
pub struct ShimTexts<'a> {
    /// The two places.
    pub places: [&'a str; 2],
    /// The micrometer's zero.
    pub zero: &'a str,
    /// What is marked on the shim; may be empty.
    pub marked: &'a str,
}

/// What the tin's form is told.
#[derive(Clone, Debug, PartialEq)]
pub struct ShimPreview {
    /// The two places.
    pub places: [Typing; 2],
    /// The zero.
    pub zero: Typing,
    /// The mark.
    pub marked: Typing,
    /// What the shim is worth, once places and zero are typed.
    pub shim: Option<NewShim>,
    /// "Even within 0.01", or why it will not be offered; empty before.
    pub says: String,
    /// What the blue button says: "Put 0.151 in the tin".
    pub words: String,
    /// What to record when it is pressed; `None` while something is missing or uneven.
    pub fact: Option<Fact>,
}

/// Works out what the tin's form shows. `shim` is a name that was never used before.
pub fn shim_preview(
    texts: ShimTexts<'_>,
    unit: Unit,
    (shim, family, count): (&str, &str, u32),
    shown: Shown,
) -> ShimPreview {
    let places = texts.places.map(|text| Typing::shim(text, unit));
    let zero = Typing::of(texts.zero, unit, Sign::Any, THICKEST, zero_doubt);
    let marked = Typing::shim(texts.marked, unit);
    let read = match (&places, &zero.typed) {
        ([Typing { typed: Some(one), .. }, Typing { typed: Some(other), .. }], Some(zero)) => {
            Some(([one.clone(), other.clone()], zero.clone()))
        }
        _ => None,
    };
    let new = read.as_ref().map(|(places, zero)| NewShim::of(places, zero));
    let is_even = new.as_ref().is_some_and(|new| new.uneven.is_none());
    let fact =
        read.filter(|_| is_even && count > 0 && marked.refused.is_none()).map(|(places, zero)| {
            Fact::ShimsAdded {
                shim: shim.to_owned(),
                family: family.to_owned(),
                places,
                zero,
                marked: marked.typed.clone(),
                count,
            }
        });
    let says = new.as_ref().map_or_else(String::new, |new| match &new.uneven {
        Some(uneven) => uneven.clone(),
        None => say!("Even within {}", with_unit(Decimal::new(1, 2), Figure::Reading, shown)),
    });
    let words = words(&places, &zero, new.as_ref(), count, shown);
    ShimPreview { places, zero, marked, shim: new, says, words, fact }
}

fn words(
    [one, other]: &[Typing; 2],
    zero: &Typing,
    new: Option<&NewShim>,
    count: u32,
    shown: Shown,
) -> String {
    let again = |typing: &Typing| typing.refused.is_some();
    match new {
        Some(NewShim { uneven: Some(_), .. }) => t("Measure it again").to_owned(),
        Some(NewShim { net, .. }) => {
            let net = figure(*net, Figure::Shim, shown);
            match count {
                0 => t("Choose how many").to_owned(),
                1 => say!("Put {net} in the tin"),
                count => say!("Put {count} of {net} in the tin"),
            }
        }
        None if one.typed.is_none() && again(one) => t("Measure place 1 again").to_owned(),
        None if one.typed.is_none() => t("Measure place 1").to_owned(),
        None if other.typed.is_none() && again(other) => t("Measure place 2 again").to_owned(),
        None if other.typed.is_none() => t("Measure place 2").to_owned(),
        None if again(zero) => t("Type the zero again").to_owned(),
        None => t("Type the zero").to_owned(),
    }
}

fn zero_doubt(typed: &Typed) -> Option<Doubt> {
    let is_usual = typed.in_unit(Unit::Millimetre).abs() <= USUAL_ZERO;
    let found = typed.to_string();
    (!is_usual).then_some(Doubt::Unusual { found, least: -USUAL_ZERO, most: USUAL_ZERO })
}
