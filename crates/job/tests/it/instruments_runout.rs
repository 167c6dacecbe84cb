//! Runout at angles of one's own, and its causes told apart, from typed text to answer. The readings
//! are worked out by hand from a·cos θ + b·sin θ; the fit is that of NIST/SEMATECH e-Handbook 2.3.4.4.

use job::instrument::Values;

use crate::instruments::{answer, figure, refusal, values};

/// The first number after some words.
fn after(text: &str, words: &str) -> f64 {
    let rest = text.split_once(words).unwrap_or_else(|| panic!("{words} in {text}")).1;
    rest.trim_start().split(' ').next().unwrap().parse().unwrap()
}

fn near(found: f64, expected: f64) -> bool {
    (found - expected).abs() < 0.02 * expected
}

fn at(angles: &[&str], readings: &[&str]) -> Values {
    values(&[("angle", angles), ("at-angle", readings)])
}

/// 0.001 in: 0.5 2.0 3.5 2.0 at quarter turns: e 1.5, high at 6 o'clock, total 3.0 = 2e.
#[test]
fn four_angles_of_ones_own() {
    let readings = ["0.0005 in", "0.0020 in", "0.0035 in", "0.0020 in"];
    let typed = at(&["0", "90", "180", "270"], &readings);
    assert!(figure("runout", &typed, "Off centre").starts_with("0.00150"));
    let found = answer("runout", &typed);
    let found = found.unwrap();
    assert!(found.headline.unwrap().number.starts_with("0.00300"));
    assert!(found.blind.unwrap().starts_with("Fewer than six angles"));
}

/// cos 30° at twelve angles, 0.050 mm: high at 12 o'clock, nothing left.
#[test]
fn twelve_angles() {
    let angles = ["0", "30", "60", "90", "120", "150", "180", "210", "240", "270", "300", "330"];
    let readings = [
        "0.0500", "0.0433", "0.0250", "0.0000", "-0.0250", "-0.0433", "-0.0500", "-0.0433",
        "-0.0250", "0.0000", "0.0250", "0.0433",
    ];
    let typed = at(&angles, &readings);
    assert!(near(after(&figure("runout", &typed, "Off centre"), ""), 0.05));
    assert_eq!(figure("runout", &typed, "High spot"), "12 h");
    let found = answer("runout", &typed).unwrap();
    assert!(found.says.iter().any(|it| it.starts_with("Not oval")), "{:?}", found.says);
    assert_eq!(
        found.below.unwrap().label,
        "What is left after the circle: 0.000 mm at most either way."
    );
}

#[test]
fn one_angle_twice_is_refused_at_the_angle() {
    let twice = at(&["0", "90", "180", "450"], &["0", "1", "0", "1"]);
    let says = "angle: Angles: found 90 ° twice, expected each angle once; take one of them out.";
    assert_eq!(refusal("runout", &twice), says);
    // 3 o'clock is 90°.
    let mut both = at(&["90"], &["0.01"]);
    both.extend(values(&[("readings", &["0", "", "0.01", "", "0", "", "0.01", ""])]));
    assert_eq!(refusal("runout", &both), says);
    let half = at(&["0", "90", "180", "270"], &["0", "1", "0"]);
    let says = "at-angle: Place 4 lacks its angle or its reading. Type both.";
    assert_eq!(refusal("runout", &half), says);
}

/// The same turn 100 mm along is off centre, not bent; a turn that wanders by 0.03 mm there is bent,
/// 0.03 mm in 100 mm; a face that waves by 0.02 mm at 20 mm leans 0.1 mm in 100 mm; ±0.02 mm twice a
/// turn is an oval.
#[test]
fn causes_are_told_apart_with_their_doubt() {
    const OFF: [&str; 8] =
        ["0.020", "0.014", "0.000", "-0.014", "-0.020", "-0.014", "0.000", "0.014"];
    const MORE: [&str; 8] =
        ["0.050", "0.035", "0.000", "-0.035", "-0.050", "-0.035", "0.000", "0.035"];
    let says = |more: &[(&str, &[&str])]| {
        let mut typed = values(&[("readings", &OFF)]);
        typed.extend(values(more));
        answer("runout", &typed).unwrap().says.join(" ")
    };
    assert!(near(after(&says(&[]), "a second place tells them apart:"), 0.020));
    let same = says(&[("along", &OFF), ("distance", &["100"])]);
    assert!(near(after(&same, "Off centre, not bent:"), 0.020) && same.contains('±'), "{same}");
    let bent = says(&[("along", &MORE), ("distance", &["100"])]);
    assert!(near(after(&bent, "Bent, or its bearings out of line:"), 0.030), "{bent}");
    let face = says(&[("face", &OFF), ("radius", &["20.0"])]);
    let leans = "A face leans: a race not seated, dirt below it, or a collar out of square:";
    assert!(near(after(&face, leans), 0.100), "{face}");
    let oval = ["0.020", "0.000", "-0.020", "0.000", "0.020", "0.000", "-0.020", "0.000"];
    let says = answer("runout", &values(&[("readings", &oval)])).unwrap().says.join(" ");
    assert!(near(after(&says, "Out of round, two humps in a turn:"), 0.020), "{says}");
    assert!(!says.contains("Not oval"), "{says}");
}

/// cos 30° steps at twelve angles, 0.050 mm here and 0.020 mm 100 mm along, and on a face at 20 mm: bent
/// 0.030 mm in 100 mm.
#[test]
fn a_second_place_takes_the_angles_of_the_first() {
    let angles = ["0", "30", "60", "90", "120", "150", "180", "210", "240", "270", "300", "330"];
    let of = |size: f64| -> Vec<String> {
        let at = |angle: &&str| size * angle.parse::<f64>().unwrap().to_radians().cos();
        angles.iter().map(|angle| format!("{:.4}", at(angle))).collect()
    };
    let (first, second) = (of(0.05), of(0.02));
    let mut typed = at(&angles, &[]);
    typed.insert("at-angle".to_owned(), first);
    typed.insert("along-angle".to_owned(), second.clone());
    typed.extend(values(&[("distance", &["100"])]));
    let says = answer("runout", &typed).unwrap().says.join(" ");
    assert!(near(after(&says, "Bent, or its bearings out of line:"), 0.030), "{says}");
    typed.remove("along-angle");
    typed.remove("distance");
    typed.insert("face-angle".to_owned(), second.clone());
    let says = refusal("runout", &typed);
    assert_eq!(says, "radius: Nothing typed here. The second set of readings needs it.");
    typed.extend(values(&[("radius", &["20.0"])]));
    let says = answer("runout", &typed).unwrap().says.join(" ");
    assert!(near(after(&says, "or a collar out of square:"), 0.100), "{says}");
    // One reading short of its angle.
    typed.insert("face-angle".to_owned(), second[..11].to_vec());
    let says = "face-angle: Place 12 lacks its angle or its reading. Type both.";
    assert_eq!(refusal("runout", &typed), says);
    // The hours for the first place, own angles for the second.
    let hours = ["0.0500", "0.0354", "0.0000", "-0.0354", "-0.0500", "-0.0354", "0.0000", "0.0354"];
    let mut mixed = at(&angles, &[]);
    mixed.extend(values(&[("readings", &hours), ("distance", &["100"])]));
    mixed.insert("along-angle".to_owned(), second);
    let says = answer("runout", &mixed).unwrap().says.join(" ");
    assert!(near(after(&says, "Bent, or its bearings out of line:"), 0.030), "{says}");
}

#[test]
fn the_total_stands_in_its_band() {
    let turn = ["0.07", "0.10", "0.09", "0.06", "0.03", "0.00", "0.01", "0.04"];
    let typed = |limit: &str| values(&[("readings", &turn), ("limit", &[limit])]);
    let band = |limit: &str| answer("runout", &typed(limit)).unwrap().band;
    assert_eq!(band("0.13").unwrap().label, "Total runout, mm: band 0.00 to 0.13; mean 0.10");
    assert_eq!(band(""), None, "no limit, no band");
}
