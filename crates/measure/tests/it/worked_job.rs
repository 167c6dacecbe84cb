//! From what is typed to the verdict: the readings of two invented jobs.
//!
//! The expected numbers were calculated apart from this crate, twice, with Python's standard
//! library and with numpy; the two agree to 1e-9 or better.

use measure::{Band, Series, Sign, Typed, Uncertainty, Unit, Verdict, judge, real};

use crate::exact;

struct Reading {
    typed: &'static str,
    unit: Unit,
    /// The gauge's own step, where it is coarser than the last digit typed.
    gauge_step: Option<&'static str>,
    /// How far the arm's 28 mm may be out, either way; `None` where no arm is used.
    arm_half_width: Option<f64>,
    band: (&'static str, &'static str),
    u: f64,
    probability: f64,
    verdict: Verdict,
}

#[track_caller]
fn check(reading: &Reading) {
    let entries: Vec<Typed> = reading
        .typed
        .split_whitespace()
        .map(|entry| Typed::parse(entry, reading.unit, Sign::NotNegative).unwrap())
        .collect();
    let millimetres = entries.iter().map(|entry| entry.in_unit(Unit::Millimetre)).collect();
    let series = Series::new(millimetres).unwrap();
    let step = match reading.gauge_step {
        Some(step) => Typed::parse(step, reading.unit, Sign::Positive).unwrap().amount(),
        None => entries.first().unwrap().step(),
    };
    let step = step.to(Unit::Millimetre).unwrap().value;
    let mut u = Uncertainty::default()
        .repeatability(series.deviation().unwrap(), entries.len())
        .resolution(real::from_decimal(step));
    if let Some(half_width) = reading.arm_half_width {
        let mean = real::from_decimal(series.mean());
        u = u.rectangular("arm radius", mean * half_width / 28.0);
    }
    let band = Band::new(exact(reading.band.0), exact(reading.band.1)).unwrap();
    let judged = judge(series.mean(), u.standard(), &band);
    assert!((u.standard() / reading.u - 1.0).abs() < 1e-12, "u = {}", u.standard());
    assert!((judged.probability - reading.probability).abs() < 1e-9, "{}", judged.probability);
    // Far out the probability keeps its own digits too.
    assert!((judged.probability / reading.probability - 1.0).abs() < 1e-9, "{}", reading.typed);
    assert_eq!(judged.verdict, reading.verdict, "{}", reading.typed);
}

#[test]
fn depth_gap() {
    let depth = Reading {
        typed: "0.74 0.74 0.74",
        unit: Unit::Millimetre,
        gauge_step: None,
        arm_half_width: None,
        band: ("0.62", "0.68"),
        u: 0.002886751345948129,
        probability: 2.9823632725667915e-96,
        verdict: Verdict::Out,
    };
    check(&depth);
    check(&Reading {
        typed: "0,68 0,69 0,69",
        u: 0.004409585518440985,
        probability: 0.06528500905787009,
        verdict: Verdict::NearLimit,
        ..depth
    });
}

#[test]
fn lash_in_inches_with_a_comma() {
    let lash = Reading {
        typed: "0,0190 0,0195 0,0195 0,0190",
        unit: Unit::Inch,
        gauge_step: Some("0.0005"),
        arm_half_width: Some(0.5),
        band: ("0.26456692913385826", "0.462992125984252"),
        u: 0.007231406653445787,
        probability: 0.00016559141669315145,
        verdict: Verdict::Out,
    };
    check(&lash);
    check(&Reading {
        typed: "0.0185 0.0185 0.0185 0.0190",
        u: 0.006878206083182253,
        probability: 0.0713355532228726,
        verdict: Verdict::NearLimit,
        ..lash
    });
}

#[test]
fn lash_in_millimetres() {
    check(&Reading {
        typed: "0.90 0.90 0.91 0.90",
        unit: Unit::Millimetre,
        gauge_step: None,
        arm_half_width: Some(0.5),
        band: ("0.3876923076923077", "0.7753846153846154"),
        u: 0.010057795621487118,
        probability: 6.4755806636213004e-37,
        verdict: Verdict::Out,
    });
    check(&Reading {
        typed: "0.77 0.79 0.78 0.78",
        unit: Unit::Millimetre,
        gauge_step: None,
        arm_half_width: Some(0.5),
        band: ("0.3876923076923077", "0.7753846153846154"),
        u: 0.009469338273973466,
        probability: 0.3129863565814186,
        verdict: Verdict::NearLimit,
    });
}

#[test]
fn end_play() {
    check(&Reading {
        typed: "0.06 0.06 0.06",
        unit: Unit::Millimetre,
        gauge_step: None,
        arm_half_width: None,
        band: ("0.02", "0.08"),
        u: 0.002886751345948129,
        probability: 0.9999999999978689,
        verdict: Verdict::InBand,
    });
}
