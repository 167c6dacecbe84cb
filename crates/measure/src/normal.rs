//! The normal distribution.
//!
//! The error function is W. J. Cody's rational approximation, "Rational Chebyshev approximations
//! for the error function", Math. Comp. 23 (1969) 631–637: about 16 significant digits, in the
//! tails too. The constants were read in several public copies of his CALERF; the tests compare
//! with the C library's `erfc`.

// The constants stand as published, which is a digit or two more than a float holds.
#![allow(clippy::excessive_precision)]

use std::f64::consts::FRAC_1_SQRT_2;

/// Φ(z): the probability of a standard normal value at or below `z`.
///
/// Good to 1e-15 absolute, and to 1e-14 of its own size down to z = −37.
///
/// ```
/// use measure::normal;
/// // JCGM 106:2012, 7.3.3, example 1: a limit 1.4 standard uncertainties away.
/// assert!((normal::cdf(1.4) - 0.919243340766229).abs() < 1e-14);
/// ```
pub fn cdf(z: f64) -> f64 {
    if z < -NEAR_ZERO { above(-z) } else { 0.5 + from_middle(z) }
}

/// Φ(high) − Φ(low), with no digits lost where both are far out on one side.
///
/// ```
/// use measure::normal;
/// assert!((normal::interval(-1.96, 1.96) - 0.950004209703559).abs() < 1e-14);
/// ```
pub fn interval(low: f64, high: f64) -> f64 {
    if low > NEAR_ZERO {
        between(low, high)
    } else if high < -NEAR_ZERO {
        between(-high, -low)
    } else {
        from_middle(high) - from_middle(low)
    }
}

/// The part between two values above `NEAR_ZERO`.
fn between(near: f64, far: f64) -> f64 {
    // What is left beyond `far` is then less than exp(−40) of what is left beyond `near`.
    let nothing_beyond = (far - near) * (far + near) > 80.0;
    above(near) - if nothing_beyond { 0.0 } else { above(far) }
}

/// Up to here the integral from the middle is computed directly, beyond it the one from outside.
const NEAR_ZERO: f64 = 0.66;

/// Beyond this a half less what is left is a half.
const ALL: f64 = 8.5;

/// Beyond this nothing is left that a float can hold.
const NOTHING: f64 = 38.6;

/// Φ(z) − ½, negative below the middle.
fn from_middle(z: f64) -> f64 {
    if z.abs() <= NEAR_ZERO {
        0.5 * small(z * FRAC_1_SQRT_2)
    } else if z.abs() > ALL {
        0.5_f64.copysign(z)
    } else {
        (0.5 - above(z.abs())).copysign(z)
    }
}

/// 1 − Φ(z) for z above `NEAR_ZERO`.
fn above(z: f64) -> f64 {
    if z > NOTHING {
        return 0.0;
    }
    let x = z * FRAC_1_SQRT_2;
    0.5 * bell(z) * if x <= 4.0 { middle(x) } else { far(x) }
}

/// exp(−z²/2), the square split so that its rounding does not grow with z.
fn bell(z: f64) -> f64 {
    let coarse = (z * 16.0).trunc() / 16.0;
    let rest = (z - coarse) * (z + coarse);
    (-coarse * coarse / 2.0).exp() * (-rest / 2.0).exp()
}

/// erf(x) for |x| ≤ 0.46875.
fn small(x: f64) -> f64 {
    const ABOVE: [f64; 5] = [
        1.857_777_061_846_031_53e-1,
        3.161_123_743_870_565_60,
        1.138_641_541_510_501_56e2,
        3.774_852_376_853_020_21e2,
        3.209_377_589_138_469_47e3,
    ];
    const BELOW: [f64; 5] = [
        1.0,
        2.360_129_095_234_412_09e1,
        2.440_246_379_344_441_73e2,
        1.282_616_526_077_372_28e3,
        2.844_236_833_439_170_62e3,
    ];
    let square = x * x;
    x * horner(&ABOVE, square) / horner(&BELOW, square)
}

/// erfc(x)·exp(x²) for 0.46875 ≤ x ≤ 4.
fn middle(x: f64) -> f64 {
    const ABOVE: [f64; 9] = [
        2.153_115_354_744_038_46e-8,
        5.641_884_969_886_700_89e-1,
        8.883_149_794_388_375_94,
        6.611_919_063_714_162_95e1,
        2.986_351_381_974_001_31e2,
        8.819_522_212_417_690_90e2,
        1.712_047_612_634_070_58e3,
        2.051_078_377_826_071_47e3,
        1.230_339_354_797_997_25e3,
    ];
    const BELOW: [f64; 9] = [
        1.0,
        1.574_492_611_070_983_47e1,
        1.176_939_508_913_124_99e2,
        5.371_811_018_620_098_58e2,
        1.621_389_574_566_690_19e3,
        3.290_799_235_733_459_63e3,
        4.362_619_090_143_247_16e3,
        3.439_367_674_143_721_64e3,
        1.230_339_354_803_749_42e3,
    ];
    horner(&ABOVE, x) / horner(&BELOW, x)
}

/// erfc(x)·exp(x²) for x > 4.
fn far(x: f64) -> f64 {
    const ABOVE: [f64; 6] = [
        1.631_538_713_730_209_78e-2,
        3.053_266_349_612_323_44e-1,
        3.603_448_999_498_044_39e-1,
        1.257_817_261_112_292_46e-1,
        1.608_378_514_874_227_66e-2,
        6.587_491_615_298_378_03e-4,
    ];
    const BELOW: [f64; 6] = [
        1.0,
        2.568_520_192_289_822_42,
        1.872_952_849_923_467_25,
        5.279_051_029_514_284_12e-1,
        6.051_834_131_244_131_91e-2,
        2.335_204_976_268_691_85e-3,
    ];
    const ONE_OVER_SQRT_PI: f64 = 0.564_189_583_547_756_29;
    let inverse = 1.0 / (x * x);
    (ONE_OVER_SQRT_PI - inverse * horner(&ABOVE, inverse) / horner(&BELOW, inverse)) / x
}

/// A polynomial, highest power first.
fn horner(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().fold(0.0, |sum, coefficient| sum * x + coefficient)
}
