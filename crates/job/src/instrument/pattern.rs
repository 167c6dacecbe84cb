//! Tooth print: what was seen on both flanks; only the height gives advice, and only a direction.

use pictures::drawing::Drawing;
use pictures::print::{self, Along};
use words::{key, say, t};
use workshop::pattern::{Advice, Family, Height, Length, Print, Seen, read};
use workshop::{Caution, Explanation};

use super::{Answer, Given, Instrument, Takes, answered, asked, optional};

const ALONG: Takes = Takes::One(&[key!("toe"), key!("middle"), key!("heel")]);
const TIP: &str = key!("tip");
const ROOT: &str = key!("root");
const USED: &str = "run together before";
/// Each with the height and whether the teeth taper.
const CARDS: [(&str, Height, bool); 6] = [
    ("tip, depth tapers", Height::Tip, true),
    ("tip, even depth", Height::Tip, false),
    ("middle, depth tapers", Height::Middle, true),
    ("middle, even depth", Height::Middle, false),
    ("root, depth tapers", Height::Root, true),
    ("root, even depth", Height::Root, false),
];

/// Paint on the gear's teeth.
pub(super) const PATTERN: Instrument = Instrument {
    kind: "pattern",
    title: "Tooth print",
    purpose: "Brake the gear, roll both ways, read the gear's flanks.",
    cautions: &[Caution::LengthwiseMeansNothing],
    fields: &[
        asked("used", "The gears", Takes::One(&[key!("new"), USED])),
        asked(
            "drive",
            "Drive flank, toe left, tip up",
            Takes::Cards(&[CARDS[0].0, CARDS[1].0, CARDS[2].0, CARDS[3].0, CARDS[4].0, CARDS[5].0]),
        ),
        asked("coast", "Coast flank", Takes::One(&[TIP, "middle", ROOT])),
        optional("drive-along", "Drive flank along the tooth, for the record", ALONG),
        optional("coast-along", "Coast flank along the tooth, for the record", ALONG),
        optional("notes", "What else was seen", Takes::Words),
    ],
    answer,
};

/// The picture of a card.
pub(super) fn card(option: &str) -> Option<Drawing> {
    let (_, height, tapers) = CARDS.iter().find(|card| card.0 == option)?;
    Some(print::card(*tapers, drawn(*height)))
}

/// The word a kept print comes to, as the steps name it; `None` where its flanks differ.
pub(super) fn came_to(values: &super::Values) -> Option<&'static str> {
    let word = |id: &str| values.get(id)?.first().map(String::as_str);
    let (_, height, _) = CARDS.iter().find(|card| Some(card.0) == word("drive"))?;
    let along = (word("drive-along"), word("coast-along"));
    match (height, word("coast")?) {
        (Height::Tip, TIP) => Some(TIP),
        (Height::Root, ROOT) => Some(ROOT),
        (Height::Middle, "middle") => match along {
            (Some("toe"), Some("toe")) => Some("toe"),
            (Some("heel"), Some("heel")) => Some("heel"),
            (None | Some("middle"), None | Some("middle")) => Some("centred"),
            _ => None,
        },
        _ => None,
    }
}

fn answer(given: &mut Given) -> Option<Answer> {
    let (used, drive, coast) = (given.word("used"), given.word("drive"), given.word("coast"));
    let along = (given.word("drive-along"), given.word("coast-along"));
    let (_, high, tapers) = *CARDS.iter().find(|card| Some(card.0) == drive)?;
    let low = match coast? {
        TIP => Height::Tip,
        ROOT => Height::Root,
        _ => Height::Middle,
    };
    let seen = Seen {
        family: if tapers { Family::Tapered } else { Family::EvenDepth },
        drive: Print { height: high, length: length(along.0) },
        coast: Print { height: low, length: length(along.1) },
        used: used? == USED,
    };
    let found = read(&seen);
    let inward = match found.advice {
        Advice::PinionIn => Some(true),
        Advice::PinionOut => Some(false),
        _ => None,
    };
    let mut says = vec![meaning(found.advice).to_owned()];
    says.extend(inward.map(|_| t(BEFORE).to_owned()));
    says.extend(given.word("notes").map(|notes| say!("Seen: {}.", notes.trim_end_matches('.'))));
    let why = Explanation {
        formula: "toward the tip on both flanks: pinion too shallow; toward the root: too deep. Depth that tapers is often face-milled, even depth often face-hobbed",
        given: Vec::new(),
        basis: found.basis,
    };
    let writing = given.writing("drive");
    let flank = |height, word: Option<&str>| (drawn(height), placed(word));
    Some(Answer {
        says,
        blind: Some(t(UNLOADED).to_owned()),
        picture: Some(print::flanks(tapers, flank(high, along.0), flank(low, along.1))),
        below: inward.map(print::pinion_moves),
        ..answered(found.cautions, &why, &writing)
    })
}

const BEFORE: &str = "Before a pack is touched: read the depth gap again with the shaft pulled to its thrust face, look at the unit and sign of the etched mark, then wipe, paint thin and print again.";
const UNLOADED: &str = "Unloaded, a print a little to the toe is usual: load moves it to the heel. Common practice, no source.";

fn meaning(advice: Advice) -> &'static str {
    match advice {
        Advice::Leave => {
            t("In the middle of its height on both flanks: the print asks for nothing about depth.")
        }
        Advice::PinionIn => t(
            "Both flanks toward the tip: the pinion sits too shallow. It goes in, by what the depth gap says, not the print; then bring the lash back with the gear.",
        ),
        Advice::PinionOut => t(
            "Both flanks toward the root: the pinion sits too deep. It goes out, by what the depth gap says, not the print; then bring the lash back with the gear.",
        ),
        Advice::PrintAgain => t(
            "The flanks do not agree in height: wipe, paint thin, print again before anything is moved.",
        ),
        Advice::LookAtTheShafts => t(
            "Toe on one flank, heel on the other, at one height: read the depth gap first. In band, look for shafts out of line in housing, bearing or bend; shims do not cure that.",
        ),
        Advice::AimForOldPrint => t(
            "Gears that ran together: aim for the old print. A worn print gives no advice about packs.",
        ),
    }
}

fn length(word: Option<&str>) -> Length {
    match word {
        Some("toe") => Length::Toe,
        Some("heel") => Length::Heel,
        _ => Length::Middle,
    }
}

fn placed(word: Option<&str>) -> Along {
    match word {
        Some("toe") => Along::Toe,
        Some("heel") => Along::Heel,
        Some(_) => Along::Middle,
        None => Along::Usual,
    }
}

fn drawn(height: Height) -> print::Height {
    match height {
        Height::Tip => print::Height::Tip,
        Height::Middle => print::Height::Middle,
        Height::Root => print::Height::Root,
    }
}
