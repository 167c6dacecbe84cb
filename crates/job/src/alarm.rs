//! What to look at before going on: alarms, conflicts, shims to buy.

use gearing::advice::{Advice, Alarm, Cause, CauseKind, Conflict};
use gearing::case::StockLine;
use measure::{Decimal, real};
use words::{say, t};

use crate::advice::chance;
use crate::case::Bridge;
use crate::guided::capitalised;
use crate::reading::length;
use crate::{Check, CheckView, Predicted, Shown, figure::Figure, figure::figure, sheet::listed};

/// Reading and prediction disagree. Lengths are mm.
#[derive(Clone, Debug, PartialEq)]
pub struct AlarmView {
    /// The check that is farthest off.
    pub check: Check,
    /// What was predicted.
    pub predicted: Option<Predicted>,
    /// What was read.
    pub read: Option<Decimal>,
    /// "Leave the shims alone. The lash fell 0.13 further than the packs explain. …"
    pub says: String,
    /// What may have happened, likeliest first.
    pub causes: Vec<CauseView>,
}

/// What may have happened.
#[derive(Clone, Debug, PartialEq)]
pub struct CauseView {
    /// What, and what to look at first.
    pub says: String,
    /// Its share among all causes tried.
    pub share: f64,
}

/// How many causes are shown at most.
const CAUSES: usize = 4;
/// A cause less likely than this is not shown.
const LEAST_SHARE: f64 = 0.01;

pub(crate) fn view(
    bridge: &Bridge,
    advice: &Advice,
    checks: &[CheckView],
    shown: Shown,
) -> Option<AlarmView> {
    let (off, causes) = advice.alarms.iter().find_map(|alarm| match alarm {
        Alarm::Surprise { off, causes } => Some((off, causes)),
        _ => None,
    })?;
    let far = |off: &Option<f64>| off.map_or(0.0, f64::abs);
    let (check, _) =
        bridge.checks.iter().zip(off).max_by(|(_, a), (_, b)| far(a).total_cmp(&far(b)))?;
    let view = checks.iter().find(|view| view.check == *check)?;
    let predicted = view.predicted.clone();
    let read = view.judged.as_ref().map(|judged| judged.mean);
    let further = predicted.as_ref().zip(read).map(|(predicted, read)| {
        let off = read - predicted.mean;
        let (check, by) = (check.name(), figure(off.abs(), Figure::Reading, shown));
        match off < Decimal::ZERO {
            true => say!("{check} reads {by} less than the packs explain."),
            false => say!("{check} reads {by} more than the packs explain."),
        }
    });
    let says = match further {
        Some(further) => say!("Leave the shims alone. {further} Check in this order:"),
        None => t("Leave the shims alone. Check in this order:").to_owned(),
    };
    let causes = causes
        .iter()
        .filter(|cause| cause.kind != CauseKind::AsPlanned && cause.share >= LEAST_SHARE)
        .take(CAUSES)
        .map(|cause| CauseView { says: cause_says(cause, bridge, shown), share: cause.share })
        .collect();
    Some(AlarmView { check: *check, predicted, read, says, causes })
}

fn cause_says(cause: &Cause, bridge: &Bridge, shown: Shown) -> String {
    let tag =
        |place: usize| bridge.positions.get(place).map_or("?", |position| position.slot.tag());
    let name = |place: usize| bridge.checks.get(place).map_or("?", |check| check.short());
    match &cause.kind {
        CauseKind::AsPlanned => t("Nothing: chance. Read again.").to_owned(),
        CauseKind::OtherSign { position } => say!(
            "{0} pushes the other way. Look where the pack lies, then correct {0} on the sheet.",
            tag(*position)
        ),
        CauseKind::Swapped { first, second } => say!(
            "Packs {first} and {second} swapped. Take both out and measure them.",
            first = tag(*first),
            second = tag(*second)
        ),
        CauseKind::NotChanged { position } => {
            say!("{} not changed. Take the pack out and measure it.", tag(*position))
        }
        CauseKind::ShimMissing { position, thickness } => say!(
            "A shim of {size} is missing at {pack}. Look whether it stuck to the old race.",
            size = figure(*thickness, Figure::Shim, shown),
            pack = tag(*position)
        ),
        CauseKind::NotSeated { position } => say!(
            "{}: race off its seat, or dirt under it. It acts as extra shim. Try the thin feeler \
             at 4 places.",
            tag(*position)
        ),
        CauseKind::Slip { check, factor } => {
            let (check, times) = (name(*check), times(*factor));
            match *factor < 1.0 {
                true => say!(
                    "{check} written {times} times too small: unit or decimal slip. Read the gauge \
                     again."
                ),
                false => say!(
                    "{check} written {times} times too large: unit or decimal slip. Read the gauge \
                     again."
                ),
            }
        }
        CauseKind::OtherShaft { .. } => {
            t("Another arm or shaft than stated. Measure the arm and see which shaft it is on.")
                .to_owned()
        }
    }
}

/// "25.4": the factor, or one over it.
fn times(factor: f64) -> String {
    let factor = if factor < 1.0 { 1.0 / factor } else { factor };
    real::to_decimal(factor, 2).unwrap_or_default().normalize().to_string()
}

pub(crate) fn look(bridge: &Bridge, advice: &Advice) -> Vec<String> {
    let name = |place: usize| bridge.checks.get(place).map_or("?", |check| check.name());
    advice
        .alarms
        .iter()
        .filter_map(|alarm| match alarm {
            Alarm::ReadAgain { check } => {
                Some(say!("{} is too near the limit to be sure: read again.", name(*check)))
            }
            Alarm::TightSpot { check } => Some(say!(
                "{} has a tight spot below the band: look for runout or a cocked race.",
                name(*check)
            )),
            Alarm::NotLoaded { check, play } => Some(say!(
                "{check} is off by about the {play}. Perhaps the parts were not loaded the running \
                 way: load them and read again.",
                check = name(*check),
                play = bridge.checks.get(*play).map_or("?", |check| check.short())
            )),
            Alarm::Doubtful => Some(say!(
                "All in band only in {} cases. Read again first, or find other sizes.",
                chance(advice.probability)
            )),
            Alarm::Surprise { .. } => None,
        })
        .collect()
}

pub(crate) fn buy_says(line: &StockLine, bridge: &Bridge, shown: Shown) -> String {
    let size = figure(line.thickness, Figure::Shim, shown);
    let takes = bridge.positions.iter().filter(|position| position.family == line.family);
    let tags: Vec<&str> = takes.map(|position| position.slot.tag()).collect();
    say!(
        "Buy or borrow {count} of {size} {unit} for {packs}.",
        count = line.count,
        unit = shown.units.length,
        packs = listed(&tags)
    )
}

pub(crate) fn conflict_says(conflict: &Conflict, bridge: &Bridge, shown: Shown) -> String {
    let names: Vec<&str> = conflict
        .checks
        .iter()
        .filter_map(|place| bridge.checks.get(*place))
        .map(|check| check.short())
        .collect();
    let excess = figure(length(conflict.excess), Figure::Reading, shown);
    let (checks, excess) =
        (capitalised(&listed(&names)), format!("{excess} {}", shown.units.length));
    match names.len() {
        1 => say!(
            "{checks} cannot be in band: {excess} too much. Look for a wrong part, a wrong way or a \
             wrong limit."
        ),
        _ => say!(
            "{checks} cannot be in band together: {excess} too much. Look for a wrong part, a wrong \
             way or a wrong limit."
        ),
    }
}
