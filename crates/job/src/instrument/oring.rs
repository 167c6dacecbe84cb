//! O-rings: squeeze, stretch and fill of a ring in its groove, or the sizes that fit a groove.

use measure::{Decimal, Sign, Unit, real, show};
use pictures::oring::Seated;
use words::{key, say, t};
use workshop::oring::{Answer as Sits, Groove, Ring, examine, squeeze_range};
use workshop::{Figure, Limits, Reading, as568};

use super::oring_sizes::{known, sizes};
use super::shown::Writing;
use super::{Answer, Given, Instrument, Takes, answered, asked, optional};

const LENGTH: Takes = Takes::Number(Unit::Millimetre, Sign::Positive);
const NOT_SEEN: &str = "not seen";
const SHARE: Takes = Takes::Number(Unit::Percent, Sign::NotNegative);

/// A ring in its groove.
pub(super) const ORING: Instrument = Instrument {
    kind: "oring",
    title: key!("O-ring"),
    purpose: "Whether a ring fits its groove, or which sizes would. Go by the groove, not by the old ring.",
    cautions: &[],
    fields: &[
        asked("bottom", "Groove diameter", LENGTH),
        asked("depth", "Gland depth, groove to bore", LENGTH),
        optional("deepest", "Deepest gland, where the manual gives two", LENGTH),
        optional("width", "Groove width", LENGTH),
        optional("dash", "Ring by AS568 number", Takes::Words),
        optional("section", "Or ring section", LENGTH),
        optional("inside", "Ring inside diameter", LENGTH),
        optional("tolerance", "Section may be off by", LENGTH),
        optional("laid", "New, no twist, greased", Takes::One(&[key!("seen"), NOT_SEEN])),
        optional("low", "Least squeeze, manual", SHARE),
        optional("high", "Most squeeze, manual", SHARE),
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let mut writing = given.writing("depth");
    writing.unit = writing.unit.or(given.writing("bottom").unit);
    let size = known(given)?;
    let groove = (given.reading("bottom"), given.reading("depth"), given.reading("width"));
    let (Some(bottom), Some(depth), width) = groove else { return None };
    let groove = Groove { bottom, depth, width };
    let section = given.reading("section").or(size.map(|size| size.section()));
    let inside = given.reading("inside").or(size.map(|size| size.inside()));
    match (section, inside) {
        (Some(section), Some(inside)) => {
            ring(given, &Ring { section, inside }, &groove, size, &writing)
        }
        (None, Some(_)) => {
            given.wanted.push(t("Ring section"));
            None
        }
        (section, None) => sizes(given, section, &groove, &writing),
    }
}

/// How a ring sits.
fn ring(
    given: &mut Given,
    ring: &Ring,
    groove: &Groove,
    size: Option<as568::Size>,
    writing: &Writing,
) -> Option<Answer> {
    let at = match size {
        Some(_) => "dash",
        None => "inside",
    };
    let found = given.at(at, examine(ring, groove))?;
    let limits = Limits { low: given.amount("low"), high: given.amount("high") };
    let judged = limits.judge("squeeze limits", &found.squeeze, Unit::Percent);
    let judged = given.at("high", judged)?;
    let mut figures = vec![
        (t("Stretch"), writing.figure(&found.stretch)),
        (t("Section, stretched"), writing.figure(&found.stretched_section)),
    ];
    figures.extend(found.fill.as_ref().map(|fill| (t("Groove filled"), writing.figure(fill))));
    figures.extend(range(given, ring, groove, size, writing));
    let mut says = vec![practice(&found).to_owned()];
    if given.word("laid") == Some(NOT_SEEN) {
        says.push(t("Look before it is closed: a new ring, no twist, greased.").to_owned());
    }
    says.extend(size.map(|size| super::oring_sizes::named(&size, writing)));
    Some(Answer {
        verdict: judged.map(|judged| judged.verdict),
        headline: Some(writing.headline(t("Squeeze"), &found.squeeze, String::new())),
        says,
        figures,
        blind: Some(
            t("A ring that was in has gone flat: measure the groove and the new ring.").to_owned(),
        ),
        picture: Some(picture(groove, &found)),
        ..answered(&found.cautions, &found.explanation, writing)
    })
}

/// Squeeze from the thinnest ring in the deepest gland to the thickest in the shallowest.
fn range(
    given: &mut Given,
    ring: &Ring,
    groove: &Groove,
    size: Option<as568::Size>,
    writing: &Writing,
) -> Option<(&'static str, String)> {
    let of_size = size
        .map(|size| Reading::exact(Decimal::new(i64::from(size.section_tolerance), 3), Unit::Inch));
    let tolerance = given.reading("tolerance").or(of_size)?;
    let deepest = given.reading("deepest").unwrap_or(groove.depth);
    let range = squeeze_range(&ring.section, &tolerance, [&groove.depth, &deepest]);
    let (least, most) = given.at("deepest", range)?;
    let text = |value| show(value, 1, writing.mark);
    Some((t("Squeeze, unstretched, every tolerance"), say!("{} to {} %", text(least), text(most))))
}

/// Common practice, which is never a verdict.
fn practice(found: &Sits) -> &'static str {
    if found.squeeze.value <= Decimal::ZERO {
        t("The ring does not reach the bore: nothing is squeezed, so nothing is sealed.")
    } else if found.inside_practice {
        t("Inside common practice: squeeze 10 to 40 %, stretch to 5 %. Your manual goes first.")
    } else if found.stretch.value > Decimal::from(5) {
        t("It stretches too far for common practice, 5 % at most. Your manual goes first.")
    } else {
        t("Outside common practice: squeeze 10 to 40 %, stretch to 5 %. Your manual goes first.")
    }
}

fn picture(groove: &Groove, found: &Sits) -> pictures::drawing::Drawing {
    let millimetres = |reading: &Reading| {
        let amount = reading.amount.to(Unit::Millimetre);
        real::from_decimal(amount.map_or(reading.amount.value, |amount| amount.value))
    };
    let whole = |figure: &Figure| show(figure.value, 0, measure::Mark::Point);
    Seated {
        section: real::from_decimal(found.stretched_section.value),
        depth: millimetres(&groove.depth),
        width: groove.width.as_ref().map(millimetres),
        squeeze: whole(&found.squeeze),
        fill: found.fill.as_ref().map(whole),
    }
    .draw()
}
