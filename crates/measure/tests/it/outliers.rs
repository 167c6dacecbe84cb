//! The outlier hint against published data and tables.

use measure::{Decimal, outlier};

use crate::{assert_close, series};

/// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5.17.1
/// (data of Tietjen and Moore, Technometrics 14 (1972) 583), with its published G = 2.4687.
#[test]
fn handbook_example() {
    let readings = series("199.31 199.53 200.19 200.82 201.92 201.95 202.18 245.57");
    let hint = outlier::hint(&readings, Decimal::ZERO).unwrap();
    assert_eq!((hint.index, hint.readings), (7, 8));
    assert_close(hint.distance, 2.468765, 1e-6);
    assert_close(hint.critical, 2.126645, 1e-6);
    assert_eq!(readings.values().len(), 8, "a hint never takes a reading away");
}

/// n; one-sided 5 % and 1 %, two-sided 5 % and 1 %. Computed with scipy 1.17.1 (Student's t);
/// the one-sided 5 % column equals a published table for n = 3 to 20 in four decimals.
const GRUBBS: [(usize, [f64; 4]); 11] = [
    (3, [1.1531, 1.1546, 1.1543, 1.1547]),
    (4, [1.4625, 1.4925, 1.4813, 1.4963]),
    (5, [1.6714, 1.7489, 1.7150, 1.7637]),
    (6, [1.8221, 1.9442, 1.8871, 1.9728]),
    (7, [1.9381, 2.0973, 2.0200, 2.1391]),
    (8, [2.0317, 2.2208, 2.1266, 2.2744]),
    (9, [2.1096, 2.3231, 2.2150, 2.3868]),
    (10, [2.1761, 2.4097, 2.2900, 2.4821]),
    (12, [2.2850, 2.5494, 2.4116, 2.6357]),
    (15, [2.4090, 2.7049, 2.5483, 2.8061]),
    (20, [2.5566, 2.8838, 2.7082, 3.0008]),
];

#[test]
fn critical_distances() {
    for (n, expected) in GRUBBS {
        // A one-sided risk is half the two-sided one.
        for (risk, expected) in [0.10, 0.02, 0.05, 0.01].into_iter().zip(expected) {
            assert_close(outlier::critical(n, risk).unwrap(), expected, 5.1e-5);
        }
    }
    assert_eq!(outlier::critical(2, 0.05), None);
}

/// ASTM E178, reprinted two-sided 5 % list for n = 3 to 8, two decimals.
#[test]
fn critical_distances_of_the_standard() {
    for (n, expected) in (3..).zip([1.15, 1.48, 1.71, 1.89, 2.02, 2.13]) {
        assert_close(outlier::critical(n, 0.05).unwrap(), expected, 0.0051);
    }
}
