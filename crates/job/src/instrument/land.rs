//! Wear at the land: the track a seal's lip has cut into its shaft.

use measure::{Decimal, Sign, Unit};
use words::{key, t};
use workshop::Limits;
use workshop::land::{Land, Remedy, examine};

use super::{Answer, Given, Instrument, Takes, answered, asked, optional};

const LENGTH: Takes = Takes::Number(Unit::Millimetre, Sign::Positive);

/// A worn land.
pub(super) const LAND: Instrument = Instrument {
    kind: "land",
    title: "Seal land",
    purpose: "How deep the lip has worn into its shaft, and what may be done.",
    cautions: &[],
    fields: &[
        asked("sound", "Diameter beside the track", LENGTH),
        asked("worn", "Diameter in the track", LENGTH),
        asked("nail", "A fingernail catches", Takes::One(&[key!("no"), key!("yes")])),
        optional("limit", "Deepest track, manual", LENGTH),
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let writing = given.writing("sound");
    let read = (given.reading("sound"), given.reading("worn"), given.word("nail"));
    let land = Land {
        sound: read.0?,
        worn: read.1?,
        nail_catches: read.2? == "yes",
        limits: Limits { low: None, high: given.amount("limit") },
    };
    let found = given.at("worn", examine(&land))?;
    let says = match found.remedy {
        Remedy::FreshTrackSleeveOrShaft => t(
            "To be felt: set the seal aside on a fresh track, sleeve the shaft, or replace it. Common practice, no source.",
        ),
        Remedy::Polish if found.depth.value > Decimal::ZERO => {
            t("To be seen, not felt: polish it, without a lead. Common practice, no source.")
        }
        Remedy::Polish => t("No track."),
    };
    Some(Answer {
        verdict: found.judgement.map(|judged| judged.verdict),
        says: vec![says.to_owned()],
        headline: Some(writing.headline(t("Depth of the track"), &found.depth, String::new())),
        blind: Some(
            t("Two diameters do not show a spiral left by a lathe: look with a loupe.").into(),
        ),
        ..answered(&[], &found.explanation, &writing)
    })
}
