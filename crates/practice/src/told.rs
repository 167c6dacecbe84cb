//! Why a decision was right or not: the clue, what the fault does, what each way costs.

use measure::{Decimal, real};
use simulator::Fault;
use words::{say, t};

use crate::round::{Round, Seen};

/// Minutes to look before anything is stripped (common practice, no source).
const LOOK: u32 = 5;

/// What is said after a decision.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Told {
    /// The decision finds the fault.
    pub is_right: bool,
    /// What to read: a bold beginning, and the rest.
    pub says: Vec<(String, String)>,
    /// What was looked at, and what was not.
    pub reasons: Vec<Reason>,
    /// The hidden fault: "Race off its seat at B2, 0.10".
    pub fault: String,
    /// The act that finds it.
    pub act: String,
}

/// One thing about a decision.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reason {
    /// What.
    pub title: String,
    /// Why it matters.
    pub note: String,
    /// How it stands.
    pub mark: Mark,
}

/// How one thing about a decision stands. No points are given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// It was seen.
    Right,
    /// It was not.
    Missed,
    /// What it costs.
    Cost,
}

impl Round {
    /// What is said of a decision; `show` shows a length of so many millimetres.
    pub fn told(&self, decision: usize, show: &dyn Fn(Decimal) -> String) -> Told {
        let is_right = decision == self.right;
        let title =
            |at: usize| self.decisions.get(at).map(|it| it.title.clone()).unwrap_or_default();
        let act = title(self.right);
        let says = vec![
            self.clue(show),
            (String::new(), self.does(show)),
            self.likelier(decision),
            (
                say!("{act} first."),
                say!(
                    " It costs about {LOOK} minutes. Stripping to the pack costs {}.",
                    self.minutes
                ),
            ),
        ];
        Told { is_right, says, reasons: self.reasons(decision, show), fault: self.names(show), act }
    }

    /// What the readings give away.
    fn clue(&self, show: &dyn Fn(Decimal) -> String) -> (String, String) {
        let off: Vec<String> =
            self.checks.iter().filter(|seen| seen.is_off).map(|seen| said(seen, show)).collect();
        let as_said: Vec<String> = self
            .checks
            .iter()
            .filter(|seen| !seen.is_off)
            .map(|seen| seen.name.to_lowercase())
            .collect();
        let stands = match as_said.as_slice() {
            [] => String::new(),
            [one] => say!(" As said: {checks}.", checks = one),
            [first @ .., last] => {
                let checks = say!("{before} and {last}", before = first.join(", "));
                say!(" As said: {checks}.")
            }
        };
        let bold = match self.fault {
            Fault::WrongSign { .. } => t("The clue was the direction."),
            Fault::Swapped { .. } => t("The clue was that they are off together."),
            Fault::Unseated { .. } | Fault::Mislabelled { .. } => {
                t("The clue was which readings are off.")
            }
        };
        (bold.to_owned(), format!(" {}{stands}", off.join(" ")))
    }

    /// What the fault does.
    fn does(&self, show: &dyn Fn(Decimal) -> String) -> String {
        let at = |position: usize| {
            self.packs.get(position).map(|pack| pack.position.as_str()).unwrap_or_default()
        };
        let total = |position: usize| {
            self.packs.get(position).map(|pack| show(pack.total)).unwrap_or_default()
        };
        match self.fault {
            Fault::WrongSign { position } => say!(
                "The pack at {0} lies on the other side of the race here: a thicker one pushes the \
                 other way than the sheet says. More of the same doubles the mistake.",
                at(position)
            ),
            Fault::Swapped { first, second } => say!(
                "The pack meant for {0}, {1}, lies at {2}, and the one for {2}, {3}, at {0}. Both \
                 gears moved by what the packs differ.",
                at(first),
                total(first),
                at(second),
                total(second)
            ),
            Fault::Unseated { position, extra }
            | Fault::Mislabelled { position, thicker: extra } => {
                let extra = real::to_decimal(extra, 6).unwrap_or_default();
                say!(
                    "Dirt under the race holds it {} off its seat at {}. To the gauge that is extra shim; \
                     a thinner pack would hide it, until it beds in.",
                    show(extra),
                    at(position)
                )
            }
        }
    }

    /// How well the readings fit what was looked for.
    fn likelier(&self, decision: usize) -> (String, String) {
        let share = |at: usize| self.decisions.get(at).and_then(|it| it.share);
        let best = share(self.right).unwrap_or_default();
        let rest = match share(decision) {
            None => t(" The build is not what it seems: in band or not, the mistake stays in.")
                .to_owned(),
            Some(_) if decision == self.right => String::new(),
            Some(chosen) => say!(" What you chose: {chosen} in 100."),
        };
        (say!("Of all causes tried, the readings give this one {best} in 100."), rest)
    }

    fn reasons(&self, decision: usize, show: &dyn Fn(Decimal) -> String) -> Vec<Reason> {
        let mark = |seen: bool| if seen { Mark::Right } else { Mark::Missed };
        let looked = self.decisions.get(decision).is_some_and(|it| it.share.is_some());
        let far = self.checks.get(self.farthest);
        let against = far.map(|seen| {
            say!(
                "{} against {} ± {}",
                show(seen.mean),
                show(seen.predicted.0),
                show(seen.predicted.1)
            )
        });
        let is_right = decision == self.right;
        let costs = if is_right { LOOK } else { LOOK + self.minutes };
        vec![
            Reason {
                title: t("Reading held against what was said before").to_owned(),
                note: against.unwrap_or_default(),
                mark: mark(looked),
            },
            Reason {
                title: t("The cause that fits every reading").to_owned(),
                note: t("not only the one that is out").to_owned(),
                mark: mark(is_right),
            },
            Reason {
                title: say!("Cost: {costs} min"),
                note: t("of the unit's clock").to_owned(),
                mark: Mark::Cost,
            },
        ]
    }

    /// The hidden fault by name.
    fn names(&self, show: &dyn Fn(Decimal) -> String) -> String {
        let at = |position: usize| {
            self.packs.get(position).map(|pack| pack.position.as_str()).unwrap_or_default()
        };
        match self.fault {
            Fault::WrongSign { position } => say!("{} pushes the other way", at(position)),
            Fault::Swapped { first, second } => {
                say!("Packs {} and {} swapped", at(first), at(second))
            }
            Fault::Unseated { position, extra }
            | Fault::Mislabelled { position, thicker: extra } => {
                let extra = real::to_decimal(extra, 6).unwrap_or_default();
                say!("Race off its seat at {}, {}", at(position), show(extra))
            }
        }
    }
}

/// "Forward backlash reads 0.24; 0.35 ± 0.02 was said, from 0.41."
fn said(seen: &Seen, show: &dyn Fn(Decimal) -> String) -> String {
    let (predicted, expanded) = seen.predicted;
    say!(
        "{check} was {before}; {predicted} ± {expanded} was said for the new packs, and it reads \
         {now}.",
        check = seen.name,
        before = show(seen.before),
        predicted = show(predicted),
        expanded = show(expanded),
        now = show(seen.mean)
    )
}
