//! Lube: what went in against what is rated.

use measure::{Decimal, Sign, Unit, Verdict};
use words::{key, t};
use workshop::lube::{Drain, expansion};
use workshop::lube::{Fill, Meaning, Metal, PercentLimits, Water, drained, examine};

use super::{Answer, Given, Instrument, Takes, answered, asked, optional};

const VOLUME: Takes = Takes::Number(Unit::Millilitre, Sign::Positive);
const TIME: Takes = Takes::Number(Unit::Minute, Sign::NotNegative);
const CLEAR: &str = key!("clear");
const PASTE: &str = "paste or hairs";

/// Volume, rest and what came out.
pub(super) const LUBE: Instrument = Instrument {
    kind: "lube",
    title: "Lube",
    purpose: "Whether the right amount went in and stayed in, and what the drained oil says.",
    cautions: &[workshop::Caution::OilOnWater],
    fields: &[
        asked("volume", "Volume in", VOLUME),
        asked("rated", "Volume the manual rates", VOLUME),
        asked("within", "May be off by", Takes::Number(Unit::Percent, Sign::Positive)),
        asked("rested", "Rested so far", Takes::Times(&["since it was filled"])),
        asked("rest", "Rest before the level is read", TIME),
        optional("cold", "Temperature of the oil", Takes::Number(Unit::Celsius, Sign::Any)),
        optional("warm", "Temperature it will run at", Takes::Number(Unit::Celsius, Sign::Any)),
        optional(
            "water",
            "Water in what came out",
            Takes::One(&[CLEAR, "frothed after a run", "drops settled", key!("milky")]),
        ),
        optional(
            "metal",
            "Metal in what came out",
            Takes::One(&[key!("none"), PASTE, key!("chunks")]),
        ),
    ],
    answer,
};

fn answer(given: &mut Given) -> Option<Answer> {
    let writing = given.writing("volume");
    let read = (given.reading("volume"), given.reading("rated"), given.number("within"));
    let times = (given.amount("rested"), given.amount("rest"));
    let ((Some(volume), Some(rated), Some(within)), (Some(rested), Some(rest))) = (read, times)
    else {
        return None;
    };
    let off = within.in_unit(Unit::Percent);
    let whole = Decimal::ONE_HUNDRED;
    let limits = PercentLimits { low: whole - off, high: whole + off };
    let fill = Fill { volume, rated, limits, rested, rest };
    let found = given.at("rated", examine(&fill))?;
    let mut figures = vec![(t("Share of rated"), writing.figure(&found.share))];
    if let (Some(cold), Some(warm)) = (given.reading("cold"), given.reading("warm")) {
        let growth = given.at("warm", expansion(&volume, &cold, &warm))?;
        figures.push((t("Grows when warm, common practice, no source"), writing.figure(&growth)));
    }
    let mut cautions = vec![found.caution];
    let mut says = vec![meaning(found.meaning).to_owned()];
    if let Some((water, metal)) = seen(given) {
        let (drain, more) = drained(water, metal);
        cautions.extend(more.iter().filter(|caution| **caution != found.caution));
        says.push(came_out(drain).to_owned());
    }
    let verdict = Some(found.judgement.verdict).filter(|_| found.meaning != Meaning::StillResting);
    Some(Answer {
        verdict: verdict
            .filter(|verdict| *verdict != Verdict::CannotProve || found.left_to_rest.is_zero()),
        says,
        figures,
        blind: Some(
            t("A volume does not show where the oil stands: read the level after the rest.")
                .to_owned(),
        ),
        ..answered(&cautions, &found.explanation, &writing)
    })
}

fn seen(given: &mut Given) -> Option<(Water, Metal)> {
    let (water, metal) = (given.word("water"), given.word("metal"));
    if water.is_none() && metal.is_none() {
        return None;
    }
    let water = match water.unwrap_or(CLEAR) {
        CLEAR => Water::None,
        "frothed after a run" => Water::FrothedAfterRun,
        "drops settled" => Water::Settled,
        _ => Water::Milky,
    };
    let metal = match metal.unwrap_or("none") {
        "none" => Metal::None,
        PASTE => Metal::Paste,
        _ => Metal::Chunks,
    };
    Some((water, metal))
}

fn meaning(meaning: Meaning) -> &'static str {
    match meaning {
        Meaning::StillResting => t("Still resting: no verdict before the rest is over."),
        Meaning::AsRated => t("As rated."),
        Meaning::AirPocketOrPlug => {
            t("Too little went in: an air pocket, or the wrong level plug.")
        }
        Meaning::LeftInOrOtherModel => {
            t("Too much went in: oil or water was left in, or it is another model.")
        }
        Meaning::ReadAgain => t("Too near the limit to say: measure again."),
    }
}

fn came_out(drain: Drain) -> &'static str {
    match drain {
        Drain::Common => {
            t("What came out is nothing out of the common. Common practice, no source.")
        }
        Drain::LetStand => t("Let the jar stand, then look again. Common practice, no source."),
        Drain::FindTheWay => {
            t("Water comes in: leak test first, and do not run it. Common practice, no source.")
        }
        Drain::Strip => t("Metal came out: strip it. Common practice, no source."),
    }
}
