//! What heat or cold for a fit says in words.

use measure::{Amount, Judgement, Unit, Verdict};
use words::{say, t};
use workshop::Reading;
use workshop::fit::Answer as Needed;

use super::shown::Writing;

/// Whether it may be dropped in now.
pub(super) fn ready(found: &Needed, thermometer: Option<Reading>, heated: bool) -> &'static str {
    if found.allowed == Some(false) {
        return t(
            "No: the part does not stand it. Share it between heat and cold, or find another way.",
        );
    }
    let read = thermometer.and_then(|it| it.amount.to(Unit::Celsius)).map(|it| it.value);
    let (Some(reached), Some(read)) = (&found.reached, read) else {
        return match found.allowed {
            Some(_) => t("Read a thermometer on the part itself: without one there is no verdict."),
            None => t(
                "No verdict: type what its maker allows, and read a thermometer on the part itself.",
            ),
        };
    };
    let short = if heated { read < found.reach.value } else { read > found.reach.value };
    match &found.ready {
        Some(ready) => judged(ready, short),
        None => unjudged(reached, short),
    }
}

fn judged(ready: &Judgement, short: bool) -> &'static str {
    match ready.verdict {
        Verdict::InBand => t("The thermometer proves it: drop it in now."),
        Verdict::NearLimit if short => t("Too near to say: a little further."),
        Verdict::NearLimit => t("Too near to say: read again."),
        Verdict::Out if short => t("Not there yet."),
        Verdict::Out => t("Beyond what the part stands: let it come back."),
        Verdict::CannotProve => t("This thermometer is too coarse to prove it."),
    }
}

/// Without its maker's limit: what the thermometer shows, and that nothing more is said.
fn unjudged(reached: &Judgement, short: bool) -> &'static str {
    match reached.verdict {
        Verdict::Out => t("Not there yet. No verdict: type what its maker allows."),
        Verdict::InBand => t(
            "The thermometer is past the temperature to reach. No verdict: type what its maker allows.",
        ),
        _ if short => {
            t("Too near to say: a little further. No verdict: type what its maker allows.")
        }
        _ => t("Too near to say: read again. No verdict: type what its maker allows."),
    }
}

/// What such a part is commonly taken to, for a caution.
pub(super) fn commonly(limit: Amount, heated: bool, degrees: &Writing) -> String {
    let limit = degrees.converted(limit);
    if heated {
        say!(
            "Common practice, no source: such a part is taken no hotter than {limit}. Its maker goes first: type that limit to get a verdict."
        )
    } else {
        say!(
            "Common practice, no source: such a part is taken no colder than {limit}. Its maker goes first: type that limit to get a verdict."
        )
    }
}
