//! The normal distribution against mpmath 1.3.0, a general-purpose multiple-precision library:
//! `erfc(-z / sqrt(2)) / 2` at 200 digits, rounded to 17.

// Values stand as computed, a digit more than a float holds.
#![allow(clippy::excessive_precision)]

use measure::normal::{cdf, interval};

const CDF: [(f64, f64); 30] = [
    (-37.0, 5.7255712225245768e-300),
    (-30.0, 4.9067139271481871e-198),
    (-20.0, 2.7536241186062337e-89),
    (-12.0, 1.776482112077679e-33),
    (-8.0, 6.2209605742717841e-16),
    (-6.0, 9.8658764503769814e-10),
    (-5.5, 1.8989562465887719e-8),
    (-4.0, 3.1671241833119921e-5),
    (-3.0, 1.3498980316300945e-3),
    (-2.0, 2.2750131948179207e-2),
    (-1.96, 2.4997895148220436e-2),
    (-1.4, 8.075665923377106e-2),
    (-1.0, 0.15865525393145705),
    (-0.67, 0.2514288950953101),
    (-0.65, 0.25784611080586472),
    (-0.5, 0.3085375387259869),
    (-0.1, 0.46017216272297102),
    (0.0, 0.5),
    (0.1, 0.53982783727702898),
    (0.5, 0.6914624612740131),
    (0.65, 0.74215388919413528),
    (0.67, 0.7485711049046899),
    (1.0, 0.84134474606854295),
    (1.4, 0.91924334076622894),
    (2.0, 0.97724986805182079),
    (3.0, 0.99865010196836991),
    (4.0, 0.99996832875816688),
    (5.0, 0.99999971334842812),
    (6.0, 0.99999999901341235),
    (8.0, 0.99999999999999938),
];

const INTERVAL: [(f64, f64, f64); 10] = [
    (5.0, 6.0, 2.8566498423415621e-7),
    (-6.0, -5.0, 2.8566498423415621e-7),
    (20.0, 21.0, 2.7536241153269557e-89),
    (-37.0, -36.0, 4.1826240657972828e-284),
    (0.1, 0.2, 3.9431872162074044e-2),
    (-0.001, 0.001, 7.9788442782212519e-4),
    (-1.0, 2.0, 0.81859461412036374),
    (0.5, 3.0, 0.3071876406943568),
    (-3.0, -0.5, 0.3071876406943568),
    (-0.5, 0.7, 0.44949880905094008),
];

fn close(found: f64, expected: f64) -> bool {
    (found - expected).abs() <= 1e-15 && (found - expected).abs() <= 1e-14 * expected
}

#[test]
fn cdf_keeps_its_digits_in_the_tails() {
    for (z, expected) in CDF {
        assert!(close(cdf(z), expected), "cdf({z}) = {:e}, not {expected:e}", cdf(z));
    }
}

#[test]
fn an_interval_far_out_keeps_its_digits() {
    for (low, high, expected) in INTERVAL {
        let found = interval(low, high);
        assert!(close(found, expected), "interval({low}, {high}) = {found:e}, not {expected:e}");
    }
}

#[test]
fn the_ends_of_the_line_are_certain() {
    assert_eq!(cdf(f64::NEG_INFINITY), 0.0);
    assert_eq!(cdf(f64::INFINITY), 1.0);
    assert_eq!(interval(f64::NEG_INFINITY, f64::INFINITY), 1.0);
    assert!(cdf(f64::NAN).is_nan());
}

#[test]
fn cdf_never_falls_where_its_parts_meet() {
    for step in 0..100_000 {
        let z = -8.0 + 16.0 * f64::from(step) / 100_000.0;
        assert!(cdf(z + 0.000_16) >= cdf(z), "cdf falls after {z}");
    }
}
