//! Uncertainty and verdicts against the guides' own examples.

use measure::{Band, Uncertainty, Verdict, judge, near_width, normal};

use crate::{assert_close, exact, series};

/// JCGM 100:2008, 4.4.3: twenty temperatures, with s = 1.489 °C and s/√n = 0.333 °C as published.
/// (The readings are from memory; they reproduce the published statistics.)
#[test]
fn twenty_temperatures() {
    let readings = series(
        "96.90 98.18 98.25 98.61 99.03 99.49 99.56 99.74 99.89 100.07
         100.33 100.42 100.68 100.95 101.11 101.20 101.57 101.84 102.36 102.72",
    );
    assert_eq!(readings.mean(), exact("100.145"));
    let deviation = readings.deviation().unwrap();
    assert_close(deviation, 1.488844, 1e-6);
    let mean_of_twenty = Uncertainty::default().repeatability(deviation, 20);
    assert_close(mean_of_twenty.standard(), 0.332916, 1e-6);
}

/// JCGM 100:2008, H.1: a 50 mm gauge block, combined 31.7 nm. (The parts, in nm, are from memory.)
#[test]
fn gauge_block() {
    let block = Uncertainty::default()
        .with("standard", 25.0)
        .with("comparison", (5.8f64.powi(2) + 3.9f64.powi(2) + 6.7f64.powi(2)).sqrt())
        .with("expansion", 2.9)
        .with("temperature", 16.6);
    assert_close(block.standard(), 31.66, 0.05);
    assert_eq!(block.parts().len(), 4);
}

/// JCGM 100:2008, F.2.2.1: a reading to the nearest δ carries 0.29 δ.
#[test]
fn resolution() {
    assert_close(Uncertainty::default().resolution(1.0).standard(), 0.29, 0.005);
}

/// JCGM 106:2012, 7.3.3, examples 1 and 2, and 8.3.3.2, example 1 (figures from memory).
#[test]
fn conformance_probability() {
    assert_close(normal::cdf((-5.40 - -5.47) / 0.05), 0.919243, 1e-6);
    assert_close(normal::cdf((509.7 - 490.0) / 8.6), 0.989010, 1e-6);
    // The guard factor 3.09 stands for a probability of 0.999; 2 % of the reading on a limit of 100.
    assert_close(normal::cdf(3.09), 0.999, 1e-6);
    assert_close(100.0 / (1.0 - 3.09 * 0.02), 106.587, 1e-3);
}

fn lash_band() -> Band {
    Band::new(exact("0.20"), exact("0.35")).unwrap()
}

/// A lash band of 0.20–0.35 mm and u = 0.012 mm. The probabilities agree with 1 − the specific
/// risk of suncal 1.7.1, a general-purpose uncertainty package (0.04779 at 0.33, 0.20233 at 0.34).
#[test]
fn lash_near_the_high_limit() {
    let expected = [
        ("0.330", 0.952210, Verdict::InBand),
        ("0.3302", 0.950529, Verdict::InBand),
        ("0.3303", 0.949670, Verdict::NearLimit),
        ("0.340", 0.79767, Verdict::NearLimit),
    ];
    for (y, probability, verdict) in expected {
        let judged = judge(exact(y), 0.012, &lash_band());
        assert_close(judged.probability, probability, 5e-6);
        assert_eq!(judged.verdict, verdict, "{y}");
    }
}

/// The guard band of ISO 14253-1 is 1.65 u (from memory): here 0.0198 mm inside each limit.
#[test]
fn guard_band() {
    assert_close(near_width(0.012), 0.0198, 1e-4);
    let inside = |offset: f64| exact("0.35") - exact(&format!("{offset:.6}"));
    let edge = near_width(0.012);
    assert_eq!(judge(inside(edge + 1e-5), 0.012, &lash_band()).verdict, Verdict::InBand);
    assert_eq!(judge(inside(edge - 1e-5), 0.012, &lash_band()).verdict, Verdict::NearLimit);
}
