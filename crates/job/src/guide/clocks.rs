//! Waits: several at once, counted so that nothing is called done too early.

use words::{say, t};

use super::course::Moment;
use super::log::{Clock, GuideLog};
use crate::clock::{apart, hour_minute};
use crate::guided::capitalised;
use crate::procedure::{Phase, Plan, RecordKind};

const MINUTE: i64 = 60_000;
/// Clocks of devices wander; less than this is no setting back.
const NOTICED: i64 = 2 * MINUTE;

/// A clock as it stands.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ClockView {
    /// Its id.
    pub id: String,
    /// The step it was started in.
    pub step: String,
    /// What waits, as the step calls it.
    pub label: String,
    /// What waits: "Cooling".
    pub name: String,
    /// Minutes left, rounded up; 0 when done.
    pub left: i64,
    /// When it ends by the device's clock as it stands now, milliseconds since 1970.
    pub ends_at: i64,
    /// How much of it has passed, per cent.
    pub percent: u8,
    /// It has ended.
    pub done: bool,
    /// Each mark: minutes after the start, when it is due, and whether it has passed.
    pub marks: Vec<(u32, i64, bool)>,
    /// What stands there: "Cooling until 14:40, 12 min left."
    pub says: String,
}

/// The clocks that were not stopped by hand, in the order started.
///
/// Between two entries of this device at least the time its clock moved forward has passed; a clock
/// set back takes nothing away. So a wait may end late, never early, unless the clock was set
/// forward, which nothing here can see.
pub fn clocks(log: &GuideLog, moment: &Moment) -> Vec<ClockView> {
    log.clocks.iter().filter(|clock| !clock.stopped).map(|clock| view(log, clock, moment)).collect()
}

/// What to say where this device's clock was set back while something waits, or stands before the
/// last entry.
pub fn clock_warning(log: &GuideLog, moment: &Moment) -> Option<String> {
    let now_is_before = log.stamps.iter().filter(|(_, device)| *device == moment.device).max();
    if let Some((mark, _)) = now_is_before
        && mark.at - moment.now > NOTICED
        && is_last(log, mark.order, &moment.device)
    {
        let back = (mark.at - moment.now) / MINUTE;
        let last = apart(mark.at, moment.now, moment.utc_offset);
        return Some(say!(
            "This device's clock stands {back} min before the last entry, {last}. Set it right; \
             waits count on from what has surely passed."
        ));
    }
    let open = clocks(log, moment).into_iter().filter(|clock| !clock.done);
    let since = open.filter_map(|view| {
        let clock = log.clocks.iter().find(|clock| clock.id == view.id)?;
        (clock.device == moment.device).then_some(clock.started.order)
    });
    let since = since.min()?;
    let mut own = own_times(log, since, moment);
    let mut before = own.next()?;
    for at in own {
        if before - at > NOTICED {
            let (back, time) = ((before - at) / MINUTE, hour_minute(before, moment.utc_offset));
            return Some(say!(
                "This device's clock was set back about {back} min after {time}. Waits count on \
                 from what has surely passed; look at another clock too."
            ));
        }
        before = at;
    }
    None
}

/// What a wait usually takes, shortest and longest, minutes. Common practice, no source; the
/// manual's or the package's figure comes first.
pub fn usual_minutes(label: &str) -> Option<(u32, u32)> {
    match label.split(' ').next()? {
        "jar" => Some((30, 30)),
        "cooling" => Some((30, 90)),
        "cure" => Some((10, 24 * 60)),
        "rest" => Some((10, 30)),
        _ => None,
    }
}

/// Why the step at `at` should wait for a running clock.
pub(super) fn holds(plan: &Plan, clock: &ClockView, at: usize, moment: &Moment) -> Option<String> {
    let from = plan.index(&clock.step)?;
    if clock.done || !plan.comes_before(from, at) {
        return None;
    }
    let step = plan.steps.get(at)?;
    let until = apart(clock.ends_at, moment.now, moment.utc_offset);
    let reads = step.records.iter().any(|record| {
        record.kind == RecordKind::Measure
            && ["case temperature", "backlash", "end play", "depth gap", "rolling torque"]
                .iter()
                .any(|read| record.label.contains(read))
    });
    match clock.label.split(' ').next()? {
        "cooling" if reads && step.phase == Phase::SetUp => {
            Some(say!("Case cools until {until}. Read nothing before."))
        }
        "cure" if step.phase == Phase::Test => {
            Some(say!("Compound cures until {until}. Put no pressure on it before."))
        }
        "rest" if step.needs.contains(&clock.step) => {
            Some(say!("Lube rests until {until}. Read the level after."))
        }
        _ => None,
    }
}

fn view(log: &GuideLog, clock: &Clock, moment: &Moment) -> ClockView {
    let passed = passed(log, clock, moment);
    let due = |minutes: u32| moment.now + i64::from(minutes) * MINUTE - passed;
    let end = clock.marks.last().copied().unwrap_or_default();
    let (ends_at, name) = (due(end), name(&clock.label));
    let left = (ends_at - moment.now).max(0);
    let done = left == 0;
    let whole = (i64::from(end) * MINUTE).max(1);
    let percent = u8::try_from((passed.clamp(0, whole)) * 100 / whole).unwrap_or(100);
    let left = left / MINUTE + i64::from(left % MINUTE > 0);
    let says = if done {
        say!("{name} done.")
    } else {
        say!(
            "{name} until {time}, {left} min left.",
            time = apart(ends_at, moment.now, moment.utc_offset)
        )
    };
    let marks = clock.marks.iter();
    let marks = marks.map(|mark| (*mark, due(*mark), i64::from(*mark) * MINUTE <= passed));
    ClockView {
        id: clock.id.clone(),
        step: clock.step.clone(),
        label: clock.label.clone(),
        marks: marks.collect(),
        name,
        left,
        percent,
        ends_at,
        done,
        says,
    }
}

/// What has surely passed since the start, milliseconds.
fn passed(log: &GuideLog, clock: &Clock, moment: &Moment) -> i64 {
    if clock.device != moment.device {
        // Another device's clock: all there is to go by is the difference of the two.
        return (moment.now - clock.started.at).max(0);
    }
    let (mut passed, mut before) = (0i64, clock.started.at);
    for at in own_times(log, clock.started.order, moment) {
        passed = passed.saturating_add(at.saturating_sub(before).max(0));
        before = at;
    }
    passed
}

/// The times of this device's entries from a place on, then now.
fn own_times(log: &GuideLog, from: usize, moment: &Moment) -> impl Iterator<Item = i64> {
    let own = log
        .stamps
        .iter()
        .filter(move |(mark, device)| mark.order >= from && *device == moment.device);
    own.map(|(mark, _)| mark.at).chain([moment.now])
}

fn is_last(log: &GuideLog, order: usize, device: &str) -> bool {
    log.stamps.iter().filter(|stamp| stamp.1 == device).all(|stamp| stamp.0.order <= order)
}

/// "cooling from" → "Cooling".
fn name(label: &str) -> String {
    capitalised(t(label.strip_suffix(" from").unwrap_or(label)))
}
