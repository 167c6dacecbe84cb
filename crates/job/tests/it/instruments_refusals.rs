//! What cannot be, typed as a mechanic types it: refused at its field with what was found, what was
//! expected and what to do. No sources: the sentences are the product's own.

use job::instrument::Values;

use crate::instruments::{held, refusal, values};
use crate::instruments_fit::race;

type Typed = &'static [(&'static str, &'static [&'static str])];

const TORQUE: Typed = &[
    ("wanted", &["80"]),
    ("wrench", &["400"]),
    ("head", &["60"]),
    ("angle", &["180"]),
    ("manual", &["dry"]),
    ("threads", &["dry"]),
];
const RUNOUT: Typed =
    &[("angle", &["0", "90", "180", "270"]), ("at-angle", &["0.00", "0.01", "0.00", "0.01"])];
const RING: Typed =
    &[("bottom", &["25.50"]), ("depth", &["2.85"]), ("section", &["3.53"]), ("inside", &["24.99"])];

/// What is refused when one field of a check that stands is typed like this.
fn typed(kind: &str, mut all: Values, field: &str, texts: &[&str]) -> String {
    assert!(crate::instruments::answer(kind, &all).is_ok(), "{kind} stands before");
    all.extend(values(&[(field, texts)]));
    refusal(kind, &all)
}

#[test]
fn colder_than_anything_can_be() {
    let sentence = |field: &str, what: &str, found: &str| {
        format!(
            "{field}: {what}: found {found}, expected no less than absolute zero, -273.15 °C; check \
             sign and unit."
        )
    };
    assert_eq!(
        typed("leak", held(&[]), "case", &["-300", "20.5"]),
        sentence("case", "Case at first", "-300 °C")
    );
    assert_eq!(
        typed("leak", held(&[]), "case", &["22.0", "-300"]),
        sentence("case", "Case now", "-300 °C")
    );
    assert_eq!(
        typed("leak", held(&[]), "case", &["22.0", "-460 °F"]),
        sentence("case", "Case now", "-460 °F")
    );
    for (field, what) in [
        ("room", "Room"),
        ("thermometer", "Thermometer"),
        ("hottest", "Hottest"),
        ("coldest", "Coldest"),
        ("running", "Temperature it runs at"),
    ] {
        assert_eq!(
            typed("fit", race(&[]), field, &["-273.16"]),
            sentence(field, what, "-273.16 °C")
        );
    }
}

#[test]
fn more_pressure_than_the_unit_stands() {
    let sentence =
        "found 95 kPa, expected 90 kPa at most; stand clear of plugs and let it down now.";
    let over = typed("leak", held(&[]), "pressure", &["95"]);
    assert_eq!(over, format!("pressure: Pressure: {sentence}"));
    let over = typed("leak", held(&[]), "gauge", &["70", "95"]);
    assert_eq!(over, format!("gauge: Pressure: {sentence}"));
    // 14 psi are 96.5 kPa.
    let over = typed("leak", held(&[]), "pressure", &["14 psi"]);
    assert!(
        over.starts_with("pressure: Pressure: found 14 psi, expected 90 kPa at most"),
        "{over}"
    );
}

/// The limit and one number beyond it will do: nothing else needs to be typed first.
#[test]
fn too_much_pressure_is_refused_at_once() {
    let says = "Pressure: found 95 kPa, expected 90 kPa at most; stand clear of plugs and let it down now.";
    for (field, texts) in [
        ("pressure", ["95"].as_slice()),
        ("gauge", &["", "95"]),
        ("blank-gauge", &["70", "95"]),
        ("gauge", &["70", "95 kPa"]),
    ] {
        let lacks =
            crate::instruments::answer("leak", &values(&[("limit", &["90"]), (field, texts)]));
        let lacks = lacks.unwrap_err();
        let said: Vec<_> = lacks.refused.iter().map(|it| (it.field, it.says.as_str())).collect();
        assert_eq!(said, [(field, says)]);
        assert_eq!(lacks.alarm, Some(("Too much pressure.", says.to_owned())));
    }
    // Where to stop is said with the limit; what this unit has no stage for cannot be too much.
    let alone = crate::instruments::answer("leak", &values(&[("limit", &["90"])])).unwrap_err();
    assert_eq!(alone.alarm.unwrap().0, "Stay out of line with plugs.");
    let not = [
        ("stage", ["not applicable"].as_slice()),
        ("because", &["no fitting"]),
        ("limit", &["90"]),
        ("pressure", &["95"]),
    ];
    assert_eq!(crate::instruments::answer("leak", &values(&not)).unwrap().alarm, None);
}

#[test]
fn a_head_that_leaves_no_lever() {
    let no_lever = |wrench: &str, left: &str| {
        assert_eq!(
            typed("torque", values(TORQUE), "wrench", &[wrench]),
            format!(
                "angle: Lever: found L + E·cos a = {left} mm, expected more than zero; turn the head \
                 forward or take a longer wrench."
            )
        );
    };
    no_lever("60", "0");
    no_lever("50", "-10");
}

#[test]
fn one_angle_read_twice() {
    let says = "angle: Angles: found 90 ° twice, expected each angle once; take one of them out.";
    assert_eq!(typed("runout", values(RUNOUT), "angle", &["0", "90", "180", "90"]), says);
    assert_eq!(typed("runout", values(RUNOUT), "angle", &["0", "90", "180", "-270"]), says);
}

#[test]
fn a_ring_that_does_not_belong_in_its_groove() {
    assert_eq!(
        typed("oring", values(RING), "inside", &["26.00"]),
        "inside: Groove diameter: found 25.5 mm, expected more than the ring inside diameter, 26 mm; \
         take a smaller ring or measure both again."
    );
    // (π/4)·3.53² = 9.79 mm² of rubber, 3.40 × 2.85 = 9.69 mm² of room (by hand).
    let full = typed("oring", values(RING), "width", &["3.40"]);
    assert!(full.contains("Groove section: found 9.69 mm², expected more than"), "{full}");
}
