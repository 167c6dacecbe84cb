//! Whatever the numbers, there is an answer or a refusal, and never a stop.

use measure::{Amount, Decimal, Unit};
use workshop::fit::{BEARING_STEEL, CAST_ALUMINIUM, Drop, Part, cool, growth, heat, when_warm};
use workshop::leak::{
    Entry, Hold, Hose, Stage, Test, blank, examine as leak, molar_flow, per_kelvin,
};
use workshop::oring::{Groove, Ring, squeeze_range};
use workshop::press::{ALUMINIUM, Press, STEEL};
use workshop::runout::Turn;
use workshop::setting::{Mounting, PushPull, Row, change, end_play, pack, warmed};
use workshop::torque::{OffsetTool, Threads};
use workshop::{
    Limits, Reading, Refusal, as568, drag, land, lube, oring, press, runout, seal, torque,
};

/// Numbers at the ends of what can be held, with doubts that are none.
fn readings(unit: Unit) -> Vec<Reading> {
    let values = [
        Decimal::MAX,
        Decimal::MIN,
        Decimal::ZERO,
        Decimal::NEGATIVE_ONE,
        Decimal::TEN,
        Decimal::new(1, 28),
        Decimal::from(1_000_000_000_000_000i64),
    ];
    let doubts = [0.0, 1e300, f64::NAN];
    values
        .into_iter()
        .flat_map(|value| doubts.map(|u| Reading { amount: Amount { value, unit }, standard: u }))
        .collect()
}

/// An answer, or one sentence that says what was found and what to do.
#[track_caller]
fn held<T>(answer: Result<T, Refusal>) {
    if let Err(refusal) = answer {
        let sentence = refusal.to_string();
        assert!(sentence.ends_with('.') && sentence.len() < 300, "{sentence}");
        let says = [": found ", " is above ", " are both "];
        assert!(says.iter().any(|words| sentence.contains(words)), "{sentence}");
    }
}

/// Every pair of hostile readings in two units.
fn pairs(first: Unit, second: Unit, act: impl Fn(Reading, Reading)) {
    for left in readings(first) {
        for right in readings(second) {
            act(left, right);
        }
    }
}

#[test]
fn leak_tests() {
    for stage in [Stage::Low, Stage::Vacuum] {
        pairs(Unit::Kilopascal, Unit::Celsius, |pressure, case| {
            let line = |at| Entry { at, gauge: pressure, case, barometer: pressure };
            let seconds = |value| Amount { value, unit: Unit::Second };
            let (first, later) =
                (line(seconds(Decimal::MIN)), line(Amount { unit: Unit::Day, ..pressure.amount }));
            let kilopascal = pressure.amount;
            let hold = Hold {
                stage,
                pressure: kilopascal,
                time: seconds(Decimal::ONE),
                most_lost: kilopascal,
                limit: kilopascal,
            };
            let volume =
                Reading { amount: Amount { unit: Unit::Litre, ..pressure.amount }, ..pressure };
            let test = Test {
                hold,
                log: vec![first, later],
                volume: Some(volume),
                turned: Some(true),
                moved: None,
                bubbles: Some(false),
                hose: Hose::Tight,
            };
            held(leak(&test));
            held(blank(&hold, &test.log));
            held(molar_flow(stage, &volume, &first, &later));
            held(per_kelvin(&pressure, &pressure, &case));
        });
    }
}

#[test]
fn lengths() {
    pairs(Unit::Millimetre, Unit::Inch, |one, two| {
        let limits = Limits::between(one.amount, two.amount);
        let angle = |value: i64, reading| {
            (Amount { value: Decimal::from(value), unit: Unit::Degree }, reading)
        };
        let turn = vec![angle(0, one), angle(100, two), angle(200, one), angle(300, two)];
        held(runout::examine(&Turn { readings: turn, closing: Some(two), limits }));
        let odd = [one, two, one, two]
            .map(|reading| (Amount { unit: Unit::Degree, ..reading.amount }, reading));
        held(runout::examine(&Turn { readings: odd.to_vec(), closing: None, limits }));
        held(land::examine(&land::Land { sound: one, worn: two, nail_catches: true, limits }));
        let depth = seal::Depth {
            at: [one, two, one, two],
            square: limits,
            depth: limits,
            as_found: Some(two),
        };
        held(seal::examine(&depth));
        let ring = Ring { section: one, inside: two };
        held(oring::examine(&ring, &Groove { bottom: two, depth: one, width: Some(two) }));
        held(squeeze_range(&one, &two, [&one, &two]));
        held(squeeze_range(&two, &one, [&two, &two]));
        held(as568::for_groove(&one, &two));
        held(end_play(&[PushPull { pushed: one, pulled: two }], &limits));
        held(change(&one, &two));
        held(pack(&one, &two, &one, i8::MIN));
        held(pack(&one, &two, &one, 1));
        let press = Press {
            interference: one,
            bore: two,
            meeting: one,
            outside: two,
            length: one,
            friction: one.amount.value,
            inner: STEEL,
            outer: ALUMINIUM,
        };
        held(press::examine(&press));
        held(growth(&one, &CAST_ALUMINIUM, two.amount.value));
        held(when_warm(&one, &two, &CAST_ALUMINIUM, &BEARING_STEEL, two.amount.value));
    });
}

#[test]
fn the_rest() {
    pairs(Unit::Millimetre, Unit::Degree, |length, angle| {
        let row = Row { cup: length, half_angle: angle };
        let materials = [&CAST_ALUMINIUM, &BEARING_STEEL];
        held(warmed(&[row], &length, Mounting::LongerTightens, materials, length.amount.value));
        let tool = OffsetTool { wrench: length, head: length, angle };
        let torque =
            Reading { amount: Amount { unit: Unit::NewtonMetre, ..angle.amount }, ..angle };
        held(torque::examine(&[torque, torque], Some(&tool), Threads::Dry, Threads::Oil));
        held(torque::at_fastener(&torque, Some(&tool)));
        held(torque::torque_and_angle(&torque, &[angle, angle]));
        held(torque::break_out(&torque, &torque));
        held(drag::at_pinion(&torque, &torque, u32::MAX, 1));
        let drag = drag::Drag {
            effort: drag::Effort::Wrench(torque),
            when: drag::When::Running,
            seals: drag::Seals::In { take: Some(torque) },
            limits: Limits::at_most(torque.amount),
        };
        held(drag::examine(&drag));
    });
    pairs(Unit::Millimetre, Unit::Fahrenheit, |length, heat_of| {
        let drop = Drop {
            diameter: length,
            interference: length,
            clearance: length,
            room: heat_of,
            material: CAST_ALUMINIUM,
            part: Part::Ring,
            limits: Limits::at_most(heat_of.amount),
            thermometer: Some(heat_of),
        };
        held(heat(&drop));
        held(cool(&drop));
    });
    pairs(Unit::Litre, Unit::Kelvin, |volume, kelvin| {
        held(lube::expansion(&volume, &kelvin, &kelvin));
        let limits = lube::PercentLimits { low: volume.amount.value, high: kelvin.amount.value };
        let rest = Amount { unit: Unit::Day, ..volume.amount };
        held(lube::examine(&lube::Fill { volume, rated: volume, limits, rested: rest, rest }));
    });
}
