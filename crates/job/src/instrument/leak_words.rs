//! What a leak test says in words.

use measure::{Amount, Verdict};
use words::{say, t};
use workshop::Reading;
use workshop::leak::{Answer as Held, Missing, Outcome, Test, one_bubble_in_ten_seconds};

use super::leak_acts::Acts;
use super::shown::Writing;

/// What must be done before there is a verdict.
pub(super) fn waits(outcome: &Outcome, acts: &Acts) -> Option<String> {
    let Outcome::NotYet(missing) = outcome else { return None };
    let wanted: Vec<&str> = missing.iter().map(|it| undone(*it, acts)).collect();
    Some(say!("{} A still test can hide a bad lip.", wanted.join(" ")))
}

/// The verdict and its sentence.
pub(super) fn verdict(outcome: &Outcome) -> (Option<Verdict>, Vec<String>) {
    let (verdict, says) = match outcome {
        Outcome::NotYet(_) => return (None, Vec::new()),
        Outcome::Pass => {
            (Verdict::InBand, t("Held for the whole time while turning, without a bubble."))
        }
        Outcome::Bubbles => (Verdict::Out, t("Bubbles: a leak, whatever the gauge says.")),
        Outcome::Leaks => {
            (Verdict::Out, t("It leaks: more was lost than allowed, and the hose is tight."))
        }
        Outcome::TestTheHose => (
            Verdict::Out,
            t("More was lost than allowed. Test the hose into a blank before the case is blamed."),
        ),
        Outcome::MendTheHose => (Verdict::Out, t("The hose leaks: mend it and start over.")),
        Outcome::ReadAgain => (Verdict::NearLimit, t("Too near the limit: hold again, or longer.")),
        Outcome::CannotProve => {
            (Verdict::CannotProve, t("These gauges are too coarse to prove this limit."))
        }
    };
    (Some(verdict), vec![says.to_owned()])
}

fn undone(missing: Missing, acts: &Acts) -> &'static str {
    match missing {
        Missing::Time => t("Hold for the whole time."),
        Missing::Turned => acts.still_to_turn(),
        Missing::Moved => t("Move the shift rod."),
        Missing::Soap => t("Soap every joint and look."),
    }
}

/// What the gauge cannot see.
pub(super) fn blind(test: &Test, found: &Held, writing: &Writing) -> String {
    let exact = |amount: Amount| Reading::exact(amount.value, amount.unit);
    let bubble = match (&test.volume, test.log.first()) {
        (Some(volume), Some(first)) => {
            one_bubble_in_ten_seconds(volume, &exact(test.hold.time), &first.barometer).ok()
        }
        _ => None,
    };
    let mut says = vec![t("A gauge sees far less than soap does.").to_owned()];
    if let Some(least) = &found.least_seen {
        says.push(say!("This log cannot show a leak below {}.", writing.plain(least)));
    }
    if let Some(bubble) = bubble {
        let taken = writing.plain(&bubble);
        says.push(say!("One bubble in ten seconds takes {taken} off it in that time."));
    }
    says.join(" ")
}
