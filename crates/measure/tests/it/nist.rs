//! Means and standard deviations against the certified values of the NIST Statistical Reference
//! Datasets, univariate summary statistics; the data and where they were read: `tests/nist`.

use measure::{Decimal, Series, real};

use crate::{exact, series};

/// Digits that agree, the measure NIST itself uses: −log10 of the relative deviation.
fn agreeing_digits(found: f64, certified: f64) -> f64 {
    if found == certified { 16.0 } else { -((found - certified) / certified).abs().log10() }
}

/// Certified values have 15 digits; a thousand additions in floating point may cost the last one.
#[track_caller]
fn check(series: &Series, n: usize, mean: &str, deviation: f64) {
    assert_eq!(series.values().len(), n);
    let certified_mean = exact(mean).normalize();
    let rounded = series.mean().round_dp(exact(mean).scale()).normalize();
    assert_eq!(rounded, certified_mean, "mean");
    let digits = agreeing_digits(series.deviation().unwrap(), deviation);
    assert!(digits >= 14.0, "{digits} digits of the deviation agree");
}

#[test]
fn lew() {
    let lew = series(include_str!("../../../../tests/nist/lew.txt"));
    check(&lew, 200, "-177.435000000000", 277.332168044316);
}

#[test]
fn lottery() {
    let lottery = series(include_str!("../../../../tests/nist/lottery.txt"));
    check(&lottery, 218, "518.958715596330", 291.699727470969);
}

#[test]
fn michelso() {
    let michelso = series(include_str!("../../../../tests/nist/michelso.txt"));
    check(&michelso, 100, "299.852400000000", 0.0790105478190518);
}

#[test]
fn mavro() {
    let mavro = series(include_str!("../../../../tests/nist/mavro.txt"));
    check(&mavro, 50, "2.00185600000000", 0.000429123454003053);
}

#[test]
fn num_acc_1() {
    check(&series("10000001 10000003 10000002"), 3, "10000002", 1.0);
}

/// The first value, then a low and a high one 500 times.
fn alternating(first: &str, low: &str, high: &str) -> Series {
    let pair = [exact(low), exact(high)];
    let pairs = std::iter::repeat_n(pair, 500).flatten();
    Series::new(std::iter::once(exact(first)).chain(pairs).collect()).unwrap()
}

#[test]
fn num_acc_2() {
    check(&alternating("1.2", "1.1", "1.3"), 1001, "1.2", 0.1);
}

/// The textbook one-pass formula in floating point keeps one digit of this deviation.
#[test]
fn num_acc_3() {
    check(&alternating("1000000.2", "1000000.1", "1000000.3"), 1001, "1000000.2", 0.1);
}

/// And none of this one. (NumAcc4: rule and certified values from memory.)
#[test]
fn num_acc_4() {
    check(&alternating("10000000.2", "10000000.1", "10000000.3"), 1001, "10000000.2", 0.1);
}

#[test]
fn smallest_largest_and_spread() {
    let michelso = series(include_str!("../../../../tests/nist/michelso.txt"));
    assert_eq!(michelso.min(), exact("299.62"));
    assert_eq!(michelso.max(), exact("300.07"));
    assert_eq!(michelso.spread(), exact("0.45"));
    assert_eq!(
        real::to_decimal(real::from_decimal(michelso.spread()), 2),
        Some(Decimal::new(45, 2))
    );
}
