//! What must be done under pressure, shafts turned and rod moved: tapped with its time, or said in a word.

use measure::{Amount, Typed, Unit, real};
use words::{say, t};
use workshop::leak::Entry;

use super::Given;

/// What is tapped as it is done.
pub(super) const ACTS: &[&str] = &["Prop shaft turned", "Drive shaft turned", "Shift rod moved"];
/// This unit has none to turn or move.
pub(super) const NONE: &str = "none here";

/// The same on the curve.
const FLAGS: [&str; 3] = ["Prop", "Drive", "Rod"];

/// What was done.
pub(super) struct Acts {
    /// Minutes since the first line.
    since: [Option<f64>; 3],
    /// The shafts were turned; `None` where there is none.
    pub turned: Option<bool>,
    /// The rod was moved; `None` where there is none.
    pub moved: Option<bool>,
}

/// Reads what was done; `None` where something was done before the pressure was on.
pub(super) fn acts(given: &mut Given, first: &Entry) -> Option<Acts> {
    let typed = given.numbers("acts");
    let tapped = |at: usize| typed.get(at).and_then(Option::as_ref);
    for (act, done) in ACTS.iter().zip(0..).filter_map(|(act, at)| Some((act, tapped(at)?))) {
        if minutes(done.amount()) < minutes(first.at) {
            given.refuse("acts", too_early(act, done, first));
            return None;
        }
    }
    let since =
        [0, 1, 2].map(|at| tapped(at).map(|typed| minutes(typed.amount()) - minutes(first.at)));
    let [prop, drive, rod] = since;
    let said = |word: Option<&str>, tapped: bool| match word {
        Some(NONE) => None,
        word => Some(tapped || word == Some("yes")),
    };
    let turned = said(given.word("turned"), prop.is_some() && drive.is_some());
    let moved = said(given.word("moved"), rod.is_some());
    Some(Acts { since, turned, moved })
}

impl Acts {
    /// Minutes since the first line and name of each, for the curve.
    pub fn flags(&self) -> Vec<(f64, &'static str)> {
        let done = self.since.iter().zip(FLAGS);
        done.filter_map(|(since, name)| Some(((*since)?, t(name)))).collect()
    }

    /// What is still to be turned.
    pub fn still_to_turn(&self) -> &'static str {
        match self.since {
            [Some(_), None, _] => t("Turn the drive shaft too."),
            [None, Some(_), _] => t("Turn the prop shaft too."),
            _ => t("Turn the shafts."),
        }
    }
}

fn minutes(at: Amount) -> f64 {
    at.to(Unit::Minute).map_or(0.0, |at| real::from_decimal(at.value))
}

fn too_early(act: &str, found: &Typed, first: &Entry) -> String {
    let Amount { value, unit } = first.at;
    say!(
        "{act}: found {found}, expected no less than the first line, {} {unit}. Do it under pressure.",
        value.normalize()
    )
}
