//! O-rings in their grooves. Section and gland figures: a public gland-design table; the worked numbers
//! were run from the same formulae, the stretched section by iteration.

use measure::{Decimal, Unit, round};
use workshop::oring::{Groove, Ring, examine, squeeze_range};
use workshop::{Caution, Reading, as568};

use crate::{assert_close, assert_figure, exact, refused, sure};

fn mm(text: &str) -> Reading {
    sure(text, Unit::Millimetre)
}

fn ring214() -> Ring {
    let size = as568::size(214).unwrap();
    Ring { section: sure("0.139", Unit::Inch), inside: size.inside() }
}

fn groove(bottom: &str) -> Groove {
    Groove { bottom: mm(bottom), depth: mm("2.85"), width: Some(mm("4.75")) }
}

/// -214 stretched over 25.50, 25.75 and 26.24 mm.
#[test]
fn stretch_thins_the_section() {
    for (bottom, stretch, section) in
        [("25.50", 2.041, 3.5006), ("25.75", 3.041, 3.4865), ("26.24", 5.002, 3.4592)]
    {
        // The list was worked in rounded millimetres, 24.99 × 3.53.
        let ring = Ring { section: mm("3.53"), inside: mm("24.99") };
        let found = examine(&ring, &groove(bottom)).unwrap();
        assert_figure(&found.stretch, stretch, 1e-3);
        assert_figure(&found.stretched_section, section, 1e-4);
    }
    // W/√(1 + s) = 3.4945 is the simple form; the exact one is thicker, for the ring's outside is
    // stretched less than its inside.
    assert_close(3.53 / 1.02041f64.sqrt(), 3.4945, 1e-4);
    let ring = Ring { section: mm("3.53"), inside: mm("24.99") };
    assert_figure(&examine(&ring, &groove("25.50")).unwrap().squeeze, 18.59, 0.01);
    assert_figure(&examine(&ring, &groove("25.50")).unwrap().fill.unwrap(), 72.294, 1e-3);
}

/// Squeeze over the tolerances: read in a public gland table (in brackets), run here.
#[test]
fn squeeze_over_tolerances() {
    let inch = |text| sure(text, Unit::Inch);
    let cases = [
        // Static radial.
        ("0.070", "0.003", "0.050", "0.055", "17.9", "31.5"), // (18–32)
        ("0.103", "0.003", "0.080", "0.086", "14.0", "24.5"), // (14–25)
        ("0.139", "0.004", "0.110", "0.116", "14.1", "23.1"), // (14–23)
        ("0.210", "0.005", "0.170", "0.176", "14.1", "20.9"), // (14–21)
        ("0.275", "0.006", "0.225", "0.235", "12.6", "19.9"), // (13–20)
        // Static face.
        ("0.139", "0.004", "0.100", "0.108", "20.0", "30.1"), // (20–30)
        // Dynamic.
        ("0.139", "0.004", "0.119", "0.123", "8.9", "16.8"), // (9–17)
        ("0.275", "0.006", "0.234", "0.240", "10.8", "16.7"), // (10.5–17)
    ];
    for (section, tolerance, shallow, deep, least, most) in cases {
        let found =
            squeeze_range(&inch(section), &inch(tolerance), [&inch(shallow), &inch(deep)]).unwrap();
        assert_eq!(
            (round(found.0, 1), round(found.1, 1)),
            (exact(least), exact(most)),
            "{section}"
        );
    }
}

/// Squeeze 10 to 40 %, stretch up to 5 %: common practice, no source, and never a verdict.
#[test]
fn outside_practice_is_said() {
    let sits = |section, inside, bottom, depth| {
        let ring = Ring { section: mm(section), inside: mm(inside) };
        examine(&ring, &Groove { depth: mm(depth), ..groove(bottom) }).unwrap()
    };
    assert!(sits("2.62", "84", "86", "2.05").inside_practice);
    let stretched = sits("3.00", "80", "86", "2.05");
    assert!(!stretched.inside_practice && stretched.cautions == [Caution::RingOutsidePractice]);
    assert_figure(&stretched.stretch, 7.5, 1e-9);
    assert!(!sits("2.62", "84", "86", "2.50").inside_practice, "squeeze of 3 %");
}

#[test]
fn a_section_in_doubt_is_a_squeeze_in_doubt() {
    let size = as568::size(214).unwrap();
    let found = examine(&Ring { section: size.section(), ..ring214() }, &groove("25.50")).unwrap();
    // Half a width of 0.004 in, rectangular: 0.0587 mm of 3.53; d(squeeze) = depth·dW′/W′².
    assert_close(found.squeeze.standard(), 100.0 * 2.85 * 0.0587 / 3.5006f64.powi(2), 0.02);
}

#[test]
fn a_ring_that_hangs_loose_is_refused() {
    let large = Ring { inside: mm("26"), ..ring214() };
    refused(
        examine(&large, &groove("25.50")),
        "Groove diameter: found 25.5 mm, expected more than the ring inside diameter, 26 mm; take a smaller ring or measure both again.",
    );
    // (π/4)·3.53² = 9.79 mm² of rubber, 3.40 × 2.85 = 9.69 mm² of room (by hand).
    let thick = Ring { section: mm("3.53"), inside: mm("24.99") };
    refused(
        examine(&thick, &Groove { width: Some(mm("3.40")), ..groove("25.50") }),
        "Groove section: found 9.69 mm², expected more than the ring section, 9.79 mm²; take a thinner ring or measure both again.",
    );
    refused(
        examine(&ring214(), &Groove { depth: mm("0"), ..groove("25.50") }),
        "Gland depth: found 0 mm, expected more than zero; measure it again.",
    );
    refused(
        squeeze_range(&mm("3.53"), &mm("0.1"), [&mm("2.9"), &mm("2.8")]),
        "Most gland depth: found 2.8 mm, expected more than the least gland depth, 2.9 mm; measure both again, or swap them.",
    );
    assert_eq!(ring214().section.amount.value, Decimal::new(139, 3));
}
