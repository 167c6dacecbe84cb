//! What to do where the rolling torque is out: as far as this unit's own builds have shown, else a
//! small step and another reading. No formula predicts it.

use gearing::rolling::{Learnt, Turned, learn};
use measure::real;
use words::{say, t};

use crate::case::builds;
use crate::figure::{Figure, with_unit};
use crate::reading::length;
use crate::{Check, CheckState, CheckView, Job, Position, Sheet, Shown};

/// What to do where the rolling torque is out of its band.
pub(crate) fn look(checks: &[CheckView], job: &Job, sheet: &Sheet, shown: Shown) -> Option<String> {
    let view = checks.iter().find(|view| view.check == Check::Torque)?;
    let (judged, band) = (view.judged.as_ref()?, view.band?);
    if view.state != CheckState::Out {
        return None;
    }
    let is_high = judged.mean > band.high();
    let (low, high) = (real::from_decimal(band.low()), real::from_decimal(band.high()));
    let says = match learnt(job, sheet, low, high) {
        Some((position, learnt)) => learnt_says(&position, &learnt, sheet, shown),
        None => small_step_says(sheet, is_high),
    };
    Some(match is_high {
        true => say!("Rolling torque is over its band. {says}"),
        false => say!("Rolling torque is under its band. {says}"),
    })
}

/// The pack about which the builds showed most, and what they showed: builds that differ in no other
/// pack that sets bearings.
fn learnt(job: &Job, sheet: &Sheet, low: f64, high: f64) -> Option<(Position, Learnt)> {
    let builds = builds(job, sheet);
    let setting = || sheet.positions().into_iter().filter(|position| position.setting_sign != 0);
    let total = |build: &crate::case::Build, position: &Position| {
        build.packs.get(&position.slot).map(|pack| pack.iter().sum::<measure::Decimal>())
    };
    let of_pack = |position: Position| {
        let last = builds.last()?;
        let others_stay = |build: &&crate::case::Build| {
            let mut others = setting().filter(|other| other.slot != position.slot);
            others.all(|other| total(build, &other) == total(last, &other))
        };
        let turned = builds.iter().filter(others_stay).filter_map(|build| {
            let judged = build.readings.get(&Check::Torque)?.judged(sheet)?;
            let sign = f64::from(sheet.signs(&position).1);
            Some(Turned {
                tightening: sign * real::from_decimal(total(build, &position)?),
                torque: real::from_decimal(judged.mean),
                sigma: real::from_decimal(judged.expanded) / 2.0,
            })
        });
        let learnt = learn(&turned.collect::<Vec<_>>(), low, high).ok()?;
        Some((position, learnt))
    };
    let surest = |(_, learnt): &(Position, Learnt)| learnt.slope.1 / learnt.slope.0;
    setting().filter_map(of_pack).min_by(|a, b| surest(a).total_cmp(&surest(b)))
}

fn learnt_says(position: &Position, learnt: &Learnt, sheet: &Sheet, shown: Shown) -> String {
    let tag = position.slot.tag();
    let thicker = learnt.tighter.0 * f64::from(sheet.signs(position).1);
    let way = if thicker > 0.0 { t("thicker") } else { t("thinner") };
    let [by, uncertain] = [learnt.tighter.0.abs(), 2.0 * learnt.tighter.1]
        .map(|step| with_unit(length(step), Figure::Shim, shown));
    let no_farther = if learnt.is_cut {
        t(" That is as far as your builds reach; it is not proportional.")
    } else {
        ""
    };
    say!(
        "Your own builds at {tag} say: make {tag} {way} by about {by} (± {uncertain}), then read \
         every setting again.{no_farther}"
    )
}

/// The step is common practice, no source.
fn small_step_says(sheet: &Sheet, is_high: bool) -> String {
    let positions = sheet.positions();
    let thicker_tightens = |position: &Position| sheet.signs(position).1 > 0;
    let tags = |thicker: bool| -> Vec<&str> {
        positions
            .iter()
            .filter(|position| position.setting_sign != 0)
            .filter(|position| (thicker_tightens(position) != is_high) == thicker)
            .map(|position| position.slot.tag())
            .collect()
    };
    let or = |tags: &[&str]| match tags {
        [before @ .., last] if !before.is_empty() => {
            say!("{before} or {last}", before = before.join(", "))
        }
        tags => tags.concat(),
    };
    let (thicker, thinner) = (or(&tags(true)), or(&tags(false)));
    let ways = match (thicker.as_str(), thinner.as_str()) {
        (_, "") => say!("{thicker} thicker"),
        ("", _) => say!("{thinner} thinner"),
        _ => say!("{thicker} thicker, or {thinner} thinner"),
    };
    say!(
        "No formula says by how much: make {ways} by about 0.02 mm, then read every setting again."
    )
}
