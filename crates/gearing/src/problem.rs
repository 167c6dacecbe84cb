//! Sets up the search: shelves, candidates, and the windows that keep both small.

use std::collections::HashMap;
use std::rc::Rc;

use measure::{Decimal, real};

use crate::case::Case;
use crate::case_error::{CaseError, Fault};
use crate::effort::Effort;
use crate::model::{Model, loose_high};
use crate::reading_model::{ReadingModel, bit};
use crate::search::{Candidate, Limits, Place, Search, Stock, Target};
use crate::shelf::{Shelf, Totals};
use crate::windows::{narrow, set_floors};

/// The step in which shims to buy are looked for, mm.
const FINE_STEP: Decimal = Decimal::from_parts(1, 0, 0, false, 2);

/// Thicker than any shim that is looked for, mm.
const THICK: f64 = 3.0;

/// What a search is to find.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Wanted {
    /// The least probability of interest.
    pub probability: f64,
    /// Only packs with every mean inside its band.
    pub in_band: bool,
    /// Positions whose pack may have any thickness, whatever is in the tin.
    pub free: u16,
}

/// The shims of some positions of one family.
struct Group {
    members: Vec<usize>,
    shelf: Shelf,
}

/// A search for packs of a case; every pack that meets what is wanted is in it.
pub(crate) fn problem<'a>(
    case: &Case,
    model: &'a Model,
    wanted: Wanted,
) -> Result<Search<'a>, CaseError> {
    let groups = groups(case, model, wanted.free);
    let mut targets = targets(case, model);
    let mut spans = spans(case, model, &groups, wanted.free);
    set_floors(&mut targets, wanted, &spans);
    release(&mut targets, model);
    narrow(&targets, &mut spans);
    set_floors(&mut targets, wanted, &spans);
    narrow(&targets, &mut spans);

    let most = case.max_shims;
    let effort = Rc::new(Effort::default());
    let mut places: Vec<Option<Place>> = case.positions.iter().map(|_| None).collect();
    let mut stocks = Vec::with_capacity(groups.len());
    for group in groups {
        let step = group.shelf.step_mm();
        let last_total = |position: usize| {
            let pack = model.last.get(position).map_or(&[][..], Vec::as_slice);
            places_of(&group.shelf, pack).map_or(0, |pack| group.shelf.total(&pack))
        };
        let bounds = |position: usize| {
            let span = spans.get(position).copied().unwrap_or([0.0; 2]);
            span.map(|change| last_total(position) as f64 + change / step)
        };
        let top = group.members.iter().map(|&position| bounds(position)[1].ceil().max(0.0));
        let top = (top.fold(0.0, f64::max) as usize).min(group.shelf.highest(most));
        let totals = Totals::new(&group.shelf, most, top, Rc::clone(&effort))
            .ok_or_else(|| CaseError::new("stock", Fault::TooManyTotals))?;
        let available = group.shelf.counts();
        let mut members = 0;
        for &position in &group.members {
            members |= bit(position);
            let pack = model.last.get(position).map_or(&[][..], Vec::as_slice);
            let last = places_of(&group.shelf, pack).unwrap_or_default();
            let before = group.shelf.total(&last);
            let unchanged =
                Candidate { total: before, change: 0.0, changed: false, shims: last.len() };
            let mut candidates = vec![unchanged];
            let [low, high] = bounds(position);
            let low = low.floor().max(0.0) as usize;
            let high = high.ceil().max(0.0) as usize;
            if wanted.free & bit(position) != 0 {
                candidates.extend((low..=high).map(|total| {
                    let change = (total as f64 - before as f64) * step;
                    Candidate { total, change, changed: true, shims: 1 }
                }));
            } else if !is_frozen(case, position) {
                for (total, fewest) in totals.between(low, high) {
                    let mut shims = Some(fewest);
                    if total == before {
                        shims = (fewest..=most).find(|&shims| {
                            let other = &mut |found: &[usize]| found != last;
                            totals.packs(&group.shelf, &available, total, shims, other)
                        });
                    }
                    let change = (total as f64 - before as f64) * step;
                    candidates.extend(shims.map(|shims| Candidate {
                        total,
                        change,
                        changed: true,
                        shims,
                    }));
                }
            }
            candidates.sort_by(|a, b| a.change.total_cmp(&b.change));
            if let Some(place) = places.get_mut(position) {
                *place = Some(Place { candidates, shelf: stocks.len(), last });
            }
        }
        stocks.push(Stock { shelf: group.shelf, totals, members, available });
    }
    let places = places.into_iter().flatten().collect();
    let in_band = wanted.in_band;
    Ok(Search {
        targets,
        places,
        stocks,
        spans,
        in_band,
        most,
        effort,
        shared: HashMap::new(),
        together: HashMap::new(),
        judged: HashMap::new(),
        known: HashMap::new(),
        below: HashMap::new(),
    })
}

/// Whether a position must stay as it is.
fn is_frozen(case: &Case, position: usize) -> bool {
    case.positions.get(position).is_some_and(|position| case.frozen.contains(&position.id))
}

/// Positions that draw on one family together; a frozen position keeps its shims to itself, a free
/// one has a shelf of fine steps to itself.
fn groups(case: &Case, model: &Model, free: u16) -> Vec<Group> {
    let mut groups: Vec<Group> = Vec::new();
    let mut done: u16 = 0;
    for (position, of) in case.positions.iter().enumerate() {
        if done & bit(position) != 0 {
            continue;
        }
        let apart = |other: usize| is_frozen(case, other) || free & bit(other) != 0;
        let family =
            |other: &usize| case.positions.get(*other).is_some_and(|p| p.family == of.family);
        let members: Vec<usize> = (position..case.positions.len())
            .filter(|&other| {
                other == position || (!apart(position) && !apart(other) && family(&other))
            })
            .collect();
        done |= members.iter().fold(0, |mask, &member| mask | bit(member));
        // What a pack gives up goes back to all of its family.
        let frozen = is_frozen(case, position);
        let givers = (0..case.positions.len()).filter(|&other| {
            if frozen { other == position } else { family(&other) && !is_frozen(case, other) }
        });
        let packs = givers.filter_map(|other| model.last.get(other)).flatten();
        let in_case = packs.map(|&thickness| (thickness, 1));
        let tin = case.stock.iter().filter(|line| !frozen && line.family == of.family);
        let tin = tin.map(|line| (line.thickness, usize::try_from(line.count).unwrap_or(0)));
        let fine = (free & bit(position) != 0).then_some((FINE_STEP, 1));
        groups.push(Group { members, shelf: Shelf::new(in_case.chain(tin).chain(fine)) });
    }
    groups
}

/// The places of a pack's shims, thick to thin.
fn places_of(shelf: &Shelf, pack: &[Decimal]) -> Option<Vec<usize>> {
    let mut places: Vec<usize> =
        pack.iter().map(|&thickness| shelf.place(thickness)).collect::<Option<_>>()?;
    places.sort_unstable();
    Some(places)
}

/// Where only packs that leave a trapped gear its end play are wanted, its backlash depends on
/// fewer packs.
fn release<'a>(targets: &mut [Target<'a>], model: &'a Model) {
    let keeps_play = |target: &&Target| target.limits.low - target.reach >= 0.0;
    let played: Vec<usize> = targets.iter().filter(keeps_play).map(|target| target.check).collect();
    for target in targets {
        let setting = target.model.trapped.as_ref().map(|trapped| trapped.setting);
        let with_play = model.with_play.get(target.check).and_then(Option::as_ref);
        if setting.is_some_and(|setting| played.contains(&setting))
            && let Some(with_play) = with_play
        {
            target.model = with_play;
            target.scope = with_play.scope();
        }
    }
}

fn targets<'a>(case: &Case, model: &'a Model) -> Vec<Target<'a>> {
    let checks = case.checks.iter().zip(&model.readings).zip(&model.bands).enumerate();
    let target = |(index, ((check, reading), band)): (
        usize,
        ((&crate::case::Check, &'a Option<ReadingModel>), &measure::Band),
    )| {
        let reading = reading.as_ref()?;
        Some(Target {
            check: index,
            model: reading,
            limits: Limits {
                low: real::from_decimal(band.low()),
                high: real::from_decimal(band.high()),
                aim: real::from_decimal(band.aim()),
            },
            loose_high: loose_high(&check.kind),
            scope: reading.scope(),
            floor: 0.0,
            reach: f64::INFINITY,
        })
    };
    checks.filter_map(target).collect()
}

/// How far each position's pack can change, mm.
fn spans(case: &Case, model: &Model, groups: &[Group], free: u16) -> Vec<[f64; 2]> {
    let mut spans = vec![[0.0; 2]; case.positions.len()];
    for group in groups {
        let highest = group.shelf.highest(case.max_shims) as f64 * group.shelf.step_mm();
        for &position in group.members.iter().filter(|&&position| !is_frozen(case, position)) {
            let last = model.last.get(position).map_or(Decimal::ZERO, |pack| pack.iter().sum());
            let last = real::from_decimal(last);
            // A shim to buy comes on top of what is there.
            let highest = if free & bit(position) != 0 { highest + THICK } else { highest };
            if let Some(span) = spans.get_mut(position) {
                *span = [-last, (highest - last).max(0.0)];
            }
        }
    }
    spans
}
