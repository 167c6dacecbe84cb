//! What each pack disturbs: packs down in the order of work, checks across.

use gearing::Influence;
use measure::{Decimal, show};
use words::{say, t};

use crate::case::{Bridge, builds};
use crate::reading::length;
use crate::slopes::imagined;
use crate::{
    Check, Figure, Job, Position, Sheet, Shown, Slot, Tin, figure, sheet::listed, what_if,
};

/// What the influence screen is told. Lengths are mm.
#[derive(Clone, Debug, PartialEq)]
pub struct InfluenceView {
    /// The checks, across, in the order of work.
    pub checks: Vec<Check>,
    /// The packs, down, in the order of work.
    pub rows: Vec<InfluenceRow>,
    /// How much thicker each pack is made: 0.10.
    pub thicker: Decimal,
    /// "B1 and B3 by the gear shape, ± 20 %. B2 learnt from 2 trials." May be empty.
    pub says: String,
}

/// A pack made thicker.
#[derive(Clone, Debug, PartialEq)]
pub struct InfluenceRow {
    /// The pack.
    pub slot: Slot,
    /// Where it lies.
    pub position: Position,
    /// A cell for each check.
    pub cells: Vec<InfluenceCell>,
    /// "pinion down 0.100, depth gap closes 0.10, both lashes fall 0.06".
    pub says: String,
    /// Checks to read again when this pack changes.
    pub rereads: Vec<Check>,
    /// Labour when it is changed alone, minutes (common practice, no source).
    pub minutes: u32,
    /// What has to come out.
    pub opens: &'static str,
}

/// What a pack does to one check.
#[derive(Clone, Debug, PartialEq)]
pub struct InfluenceCell {
    /// The check.
    pub check: Check,
    /// The pack is set by this check: heavy frame.
    pub is_own: bool,
    /// Change of the reading; `None` where no formula moves it.
    pub change: Option<Decimal>,
    /// Its size as shown: "0.06"; empty without a change.
    pub number: String,
    /// "falls", "grows", "read again" or "no effect".
    pub way: &'static str,
    /// How strong it is, from 0 to 1: the change over the thickness added.
    pub strength: f64,
    /// How the number is known.
    pub known: Known,
}

/// How a number is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Known {
    /// A sign: nothing to learn.
    Exact,
    /// By the formula.
    Formula,
    /// By the formula with angles that are not on the sheet.
    Guess,
    /// Readings made it narrower than the formula.
    Learnt,
}

impl InfluenceView {
    /// Why the packs are set in that order, or which of them reopens what was set before it.
    pub fn order_says(&self) -> String {
        let mut back = Vec::new();
        for (number, row) in self.rows.iter().enumerate() {
            let before = self.rows.iter().take(number);
            let set: Vec<&str> = before
                .filter_map(|it| it.slot.check().filter(|check| row.rereads.contains(check)))
                .map(Check::short)
                .collect();
            if !set.is_empty() {
                back.push(say!(
                    "{pack} also reopens {checks}.",
                    pack = row.slot.tag(),
                    checks = listed(&set)
                ));
            }
        }
        if back.is_empty() {
            t("Each pack then disturbs only what comes after it. Going back up reopens all below.")
                .to_owned()
        } else {
            say!("{} Read that again after it. Going back up reopens all below.", back.join(" "))
        }
    }
}

/// A slope counts as learnt once its spread is under this share of the formula's.
const LEARNT: f64 = 0.8;

/// Works out what each pack disturbs.
pub fn influence_view((job, sheet, tin): (&Job, &Sheet, &Tin), shown: Shown) -> InfluenceView {
    let thicker = Decimal::new(1, 1);
    let (checks, influences) = (sheet.checks(), influences(job, sheet, tin));
    let row = |position: Position| InfluenceRow {
        slot: position.slot,
        position,
        cells: checks.iter().map(|it| cell(&position, *it, &influences, thicker, shown)).collect(),
        says: what_if((job, sheet, tin), position.slot, thicker, shown).says,
        rereads: checks.iter().copied().filter(|check| position.rereads(*check)).collect(),
        minutes: minutes(sheet, &position),
        opens: position.open_how(),
    };
    let rows = sheet.positions().into_iter().map(row).collect();
    let says = says(&influences, builds(job, sheet).len(), shown);
    InfluenceView { rows, checks, thicker, says }
}

fn cell(
    position: &Position,
    check: Check,
    influences: &[(Slot, Check, Influence)],
    thicker: Decimal,
    shown: Shown,
) -> InfluenceCell {
    let mut is_it =
        influences.iter().filter(|(slot, of, _)| (*slot, *of) == (position.slot, check));
    let influence = is_it.next().map(|(.., influence)| influence);
    let moved = influence.filter(|influence| influence.slope != 0.0);
    let change = moved.map(|influence| length(influence.slope) * thicker);
    InfluenceCell {
        check,
        is_own: position.slot.check() == Some(check),
        number: change.map_or_else(String::new, |it| figure(it.abs(), Figure::Reading, shown)),
        way: match change {
            Some(change) if change < Decimal::ZERO => t("falls"),
            Some(_) => t("grows"),
            None if position.rereads(check) => t("read again"),
            None => t("no effect"),
        },
        change,
        strength: moved.map_or(0.0, |influence| influence.slope.abs().min(1.0)),
        known: influence.map_or(Known::Exact, known),
    }
}

/// How each pack moves each reading: by what was learnt, or by the formula before packs are known.
pub(crate) fn influences(job: &Job, sheet: &Sheet, tin: &Tin) -> Vec<(Slot, Check, Influence)> {
    let bridge = Bridge::of(job, sheet, tin, &sheet.checks())
        .ok()
        .or_else(|| Bridge::of(&imagined(sheet)?, sheet, &Tin::default(), &sheet.checks()).ok());
    bridge.map(|bridge| bridge.influences()).unwrap_or_default()
}

/// How a slope is known.
pub(crate) fn known(influence: &Influence) -> Known {
    let is_guess = matches!(
        influence.source,
        gearing::Source::Backlash { tangent_sigma, .. } if tangent_sigma > 0.0
    );
    if influence.formula_sigma == 0.0 {
        Known::Exact
    } else if influence.sigma < LEARNT * influence.formula_sigma {
        Known::Learnt
    } else if is_guess {
        Known::Guess
    } else {
        Known::Formula
    }
}

/// Own labour and that of the packs that come apart on the way, but never less than the layout's
/// figure for this pack alone.
fn minutes(sheet: &Sheet, position: &Position) -> u32 {
    let unit: Vec<&str> = sheet.positions().iter().map(|position| position.id).collect();
    sheet.layout().minutes(&[position.id], &unit)
}

/// "B1 and B3 by the gear shape, ± 20 %. B2 learnt from 2 trials: 0.99 per mm, ± 6 %."
fn says(influences: &[(Slot, Check, Influence)], trials: usize, shown: Shown) -> String {
    let lashes = || influences.iter().filter(|(_, check, _)| check.has_arm());
    let percent = |sigma: f64, slope: f64| {
        let share = measure::real::to_decimal(200.0 * sigma / slope.abs(), 0).unwrap_or_default();
        show(share, 0, shown.mark)
    };
    let mut parts = Vec::new();
    for wanted in [Known::Formula, Known::Guess] {
        let of_kind = || lashes().filter(|(.., it)| known(it) == wanted);
        let mut tags: Vec<&str> = of_kind().map(|(slot, ..)| slot.tag()).collect();
        tags.dedup();
        tags.sort_unstable();
        tags.dedup();
        let widest = of_kind().map(|(.., it)| it.sigma / it.slope.abs()).fold(0.0, f64::max);
        if !tags.is_empty() {
            let (packs, percent) = (listed(&tags), percent(widest, 1.0));
            parts.push(match wanted {
                Known::Guess => say!("{packs} guessed without tooth angles, ± {percent} %."),
                _ => say!("{packs} by the gear shape, ± {percent} %."),
            });
        }
    }
    for (slot, check, it) in lashes().filter(|(.., it)| known(it) == Known::Learnt) {
        let slope = show(length(it.slope.abs()), 2, shown.mark);
        parts.push(say!(
            "{pack} learnt from {trials} trials: {slope} of {check} per mm, ± {percent} %.",
            pack = slot.tag(),
            check = check.short(),
            percent = percent(it.sigma, it.slope)
        ));
    }
    parts.join(" ")
}
