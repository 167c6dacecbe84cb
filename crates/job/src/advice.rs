//! The "Fit next" card.

use gearing::advice::{Advice, Status};
use measure::{Mark, show};
use words::{say, t};

use crate::case::{Blocked, Bridge};
use crate::pack_view::{change, kept};
use crate::predicted::predicted;
use crate::{
    AlarmView, Check, CheckState, CheckView, Job, PackAct, PackView, Predicted, Sheet, Shown, Tin,
    alarm, sheet::listed, torque,
};

/// What to do with the packs. Lengths are mm.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct AdviceView {
    /// What kind of answer it is.
    pub status: AdviceStatus,
    /// "Fit next: B2", or what is in the way, or what to read.
    pub headline: String,
    /// A sentence more, where there is one.
    pub says: String,
    /// Number of the next trial, from 1.
    pub trial: usize,
    /// Every pack the unit has, in the order of work.
    pub packs: Vec<PackView>,
    /// What each gauge will read with these packs, at the sheet's arm.
    pub predicted: Vec<Predicted>,
    /// Checks that must be read again when the packs are changed.
    pub reopens: Vec<Check>,
    /// The same in a sentence: "Reopens: forward lash only."
    pub reopens_says: String,
    /// Labour, minutes (common practice, no source).
    pub minutes: u32,
    /// Probability that every check reads in band at the next build.
    pub probability: Option<f64>,
    /// Shims to buy or borrow, a sentence each.
    pub buy: Vec<String>,
    /// Checks that no thickness brings into band together, a sentence each.
    pub conflicts: Vec<String>,
    /// Things to look at before going on, a sentence each.
    pub look: Vec<String>,
    /// Reading and prediction disagree: shown instead of the advice.
    pub alarm: Option<AlarmView>,
    /// Checks to read, in order.
    pub read: Vec<Check>,
}

/// Kinds of answer.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum AdviceStatus {
    /// The sheet lacks fields that a check needs.
    #[default]
    SheetIncomplete,
    /// Packs that lie in the case are not written down.
    PacksUnknown,
    /// Checks must be read, or read again, first.
    ReadFirst,
    /// Every check is in band.
    Done,
    /// Here are packs to fit.
    Fit,
    /// No thicknesses bring every check into band.
    Conflict,
    /// No pack from the tin does.
    StockShort,
    /// The arm is on the propshaft and the gears turn it differently.
    MoveArm,
    /// The engine does not take what is written down.
    CannotSay,
}

pub(crate) fn view(
    job: &Job,
    sheet: &Sheet,
    tin: &Tin,
    bridge: &Result<Bridge, Blocked>,
    checks: &[CheckView],
    shown: Shown,
) -> AdviceView {
    let blank = AdviceView {
        trial: crate::case::builds(job, sheet).len() + 1,
        packs: kept(job, sheet, tin, checks),
        ..AdviceView::default()
    };
    let bridge = match bridge {
        Ok(bridge) => bridge,
        Err(blocked) => return blocked_view(blank, blocked),
    };
    match gearing::advise(&bridge.case) {
        Ok(advice) => answer(blank, (job, sheet, tin), bridge, &advice, checks, shown),
        Err(error) => AdviceView {
            status: AdviceStatus::CannotSay,
            headline: t("No advice").to_owned(),
            says: format!("{error}."),
            ..blank
        },
    }
}

fn blocked_view(blank: AdviceView, blocked: &Blocked) -> AdviceView {
    let (status, headline) = match blocked {
        Blocked::Sheet(_) => (AdviceStatus::SheetIncomplete, t("Sheet first")),
        Blocked::Arm => (AdviceStatus::MoveArm, t("Arm first")),
        Blocked::Packs(_) => (AdviceStatus::PacksUnknown, t("Packs first")),
    };
    AdviceView { status, headline: headline.to_owned(), says: blocked.sentence(), ..blank }
}

fn answer(
    blank: AdviceView,
    (job, sheet, tin): (&Job, &Sheet, &Tin),
    bridge: &Bridge,
    advice: &Advice,
    checks: &[CheckView],
    shown: Shown,
) -> AdviceView {
    let unread: Vec<Check> = checks
        .iter()
        .filter(|view| bridge.checks.contains(&view.check))
        .filter(|view| matches!(view.state, CheckState::Open | CheckState::Stale { .. }))
        .map(|view| view.check)
        .collect();
    let again: Vec<Check> = checks
        .iter()
        .filter(|view| bridge.checks.contains(&view.check) && view.state != CheckState::InBand)
        .map(|view| view.check)
        .collect();
    let alarm = alarm::view(bridge, advice, checks, shown);
    let status = match advice.status {
        Status::NeedReading => AdviceStatus::ReadFirst,
        Status::Conflict => AdviceStatus::Conflict,
        Status::StockShort => AdviceStatus::StockShort,
        Status::Fit if !advice.opens.is_empty() => AdviceStatus::Fit,
        // The packs may stay; what is not proven on them is read again.
        Status::Fit | Status::Done if again.is_empty() => AdviceStatus::Done,
        Status::Fit | Status::Done => AdviceStatus::ReadFirst,
    };
    let read = if unread.is_empty() { again } else { unread };
    let changes = matches!(status, AdviceStatus::Fit | AdviceStatus::StockShort);
    let mut packs = blank.packs.clone();
    if changes {
        for pack in &mut packs {
            change(pack, job, tin, bridge, (&advice.opens, &advice.packs), shown);
        }
    }
    let changed: Vec<&str> =
        packs.iter().filter(|pack| pack.act == PackAct::Fit).map(|pack| pack.slot.tag()).collect();
    let reopens = reopens(&packs, checks);
    AdviceView {
        status,
        headline: headline(status, &changed, &read),
        says: then_says(status, &read),
        predicted: predictions(bridge, advice, sheet, shown),
        reopens_says: reopens_says(&reopens),
        reopens,
        minutes: advice.minutes,
        probability: Some(advice.probability),
        buy: advice.buy.iter().map(|line| alarm::buy_says(line, bridge, shown)).collect(),
        conflicts: advice
            .conflicts
            .iter()
            .map(|conflict| alarm::conflict_says(conflict, bridge, shown))
            .collect(),
        look: alarm::look(bridge, advice)
            .into_iter()
            .chain(torque::look(checks, job, sheet, shown))
            .collect(),
        alarm,
        read,
        packs,
        ..blank
    }
}

fn headline(status: AdviceStatus, changed: &[&str], read: &[Check]) -> String {
    match status {
        AdviceStatus::Fit => say!("Fit next: {}", listed(changed)),
        AdviceStatus::StockShort => t("The tin cannot do it").to_owned(),
        AdviceStatus::Conflict => t("No shim can do it").to_owned(),
        AdviceStatus::Done => t("Leave the packs").to_owned(),
        AdviceStatus::ReadFirst => match read.first() {
            Some(check) => say!("Read {} first", check.short()),
            None => t("Read first").to_owned(),
        },
        AdviceStatus::SheetIncomplete
        | AdviceStatus::PacksUnknown
        | AdviceStatus::MoveArm
        | AdviceStatus::CannotSay => t("No advice").to_owned(),
    }
}

/// What comes after the first reading.
fn then_says(status: AdviceStatus, read: &[Check]) -> String {
    let names: Vec<&str> = read.iter().skip(1).map(|check| check.short()).collect();
    if status != AdviceStatus::ReadFirst || names.is_empty() {
        return String::new();
    }
    say!("Then {}.", listed(&names))
}

fn reopens(packs: &[PackView], checks: &[CheckView]) -> Vec<Check> {
    let changed = || packs.iter().filter(|pack| pack.act == PackAct::Fit);
    let is_reread = |check: &Check| changed().any(|pack| pack.position.rereads(*check));
    checks.iter().map(|view| view.check).filter(is_reread).collect()
}

fn reopens_says(reopens: &[Check]) -> String {
    let names: Vec<&str> = reopens.iter().map(|check| check.short()).collect();
    match names.as_slice() {
        [] => String::new(),
        [one] => say!("Reopens: {one} only."),
        _ => say!("Reopens: {}.", listed(&names)),
    }
}

fn predictions(bridge: &Bridge, advice: &Advice, sheet: &Sheet, shown: Shown) -> Vec<Predicted> {
    let of_check = |(check, prediction): (&Check, &Option<_>)| {
        Some(predicted(*check, prediction.as_ref()?, sheet.band_at_arm(*check), shown))
    };
    bridge.checks.iter().zip(&advice.predicted).filter_map(of_check).collect()
}

/// A probability in words a person uses: "98 of 100".
pub(crate) fn chance(probability: f64) -> String {
    let hundred = measure::real::to_decimal(probability * 100.0, 0).unwrap_or_default();
    say!("{} of 100", show(hundred, 0, Mark::Point))
}
