//! Rolling torque. Worked numbers were run with scipy.constants 1.17.1.

use measure::{Unit, Verdict};
use workshop::drag::{Drag, Effort, Seals, Trend, When, at_pinion, examine, part_of_shaft, trend};
use workshop::{Caution, Limits};

use crate::{amount, assert_figure, exact, refused, sure};

fn cord(pull: &str, unit: Unit, drum: &str, drum_unit: Unit) -> Drag {
    Drag {
        effort: Effort::Cord {
            pull: sure(pull, unit),
            drum: sure(drum, drum_unit),
            cord: sure("0", Unit::Millimetre),
        },
        when: When::Running,
        seals: Seals::Out,
        limits: Limits::default(),
    }
}

/// 2.5 lbf at 1.000 in: 0.282462 N·m; 12 N at 32 mm: 0.384 N·m = 3.398686 lbf·in.
#[test]
fn a_scale_on_a_drum() {
    let found = examine(&cord("2.5", Unit::PoundForce, "2", Unit::Inch)).unwrap().read;
    assert_figure(&found, 0.282462, 1e-6);
    let found = examine(&cord("12", Unit::Newton, "64", Unit::Millimetre)).unwrap().read;
    assert_figure(&found, 0.384, 1e-9);
    let pounds = found.amount().unwrap().to(Unit::PoundForceInch).unwrap().value;
    assert_eq!(measure::round(pounds, 6), exact("3.398686"));
}

#[test]
fn only_running_bearings_alone_are_judged() {
    let newton_metre = |text| amount(text, Unit::NewtonMetre);
    let base = Drag {
        effort: Effort::Wrench(sure("0.60", Unit::NewtonMetre).within(0.02)),
        limits: Limits::between(newton_metre("0.3"), newton_metre("0.8")),
        ..cord("1", Unit::Newton, "50", Unit::Millimetre)
    };
    let verdict = |drag: &Drag| examine(drag).unwrap().judgement.map(|judged| judged.verdict);
    assert_eq!(verdict(&base), Some(Verdict::InBand));
    let peak = Drag { when: When::BreakAway, ..base.clone() };
    assert_eq!(verdict(&peak), None);
    assert!(examine(&peak).unwrap().cautions.contains(&Caution::BreakAway));
    let sealed = Drag { seals: Seals::In { take: None }, ..base.clone() };
    assert_eq!((verdict(&sealed), examine(&sealed).unwrap().bearings), (None, None));
    assert!(examine(&sealed).unwrap().cautions.contains(&Caution::SealsIn));
    let take = Some(sure("0.27", Unit::NewtonMetre).within(0.02));
    let known = examine(&Drag { seals: Seals::In { take }, ..base }).unwrap();
    assert_figure(known.bearings.as_ref().unwrap(), 0.33, 1e-9);
    assert_eq!(known.judgement.unwrap().verdict, Verdict::NearLimit);
}

#[test]
fn shafts_are_subtracted_and_reduced() {
    let torque = |text| sure(text, Unit::NewtonMetre);
    assert_figure(&part_of_shaft(&torque("0.9"), &torque("0.35")).unwrap(), 0.55, 1e-9);
    refused(
        at_pinion(&torque("1"), &torque("1"), 14, 0),
        "Teeth: found 0, expected 1 to 999; read that many.",
    );
}

#[test]
fn a_trend_must_be_more_than_the_gauge() {
    let trial = |text: &str| {
        let effort = Effort::Wrench(sure(text, Unit::NewtonMetre).within(0.02));
        examine(&Drag { effort, ..cord("1", Unit::Newton, "50", Unit::Millimetre) }).unwrap().read
    };
    let of = |first, last| trend(&[trial(first), trial("0.5"), trial(last)]).unwrap().1;
    assert_eq!(of("0.50", "0.54"), Trend::Level);
    assert_eq!(of("0.50", "0.56"), Trend::Rising);
    assert_eq!(of("0.56", "0.50"), Trend::Falling);
    refused(trend(&[trial("0.5")]), "Trials: found 1, expected 2 to 99; read that many.");
}

#[test]
fn what_cannot_be_is_refused() {
    refused(
        examine(&cord("-1", Unit::Newton, "50", Unit::Millimetre)),
        "Pull: found -1 N, expected zero or more; read it again.",
    );
    refused(
        examine(&cord("1", Unit::Newton, "0", Unit::Millimetre)),
        "Drum: found 0 mm, expected more than zero; measure it again.",
    );
}
