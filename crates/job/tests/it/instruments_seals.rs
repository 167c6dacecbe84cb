//! Rings, seals, tooth print, thread-locker, anodes and lands, from typed text to answer.

use job::Shown;
use job::instrument::{Answer, NoAnswer, Values, instrument};
use measure::{Unit, Verdict};

fn values(fields: &[(&str, &str)]) -> Values {
    let texts = |text: &str| text.split('|').map(str::to_owned).collect();
    fields.iter().map(|(id, text)| ((*id).to_owned(), texts(text))).collect()
}

fn asked(kind: &str, fields: &[(&str, &str)], shown: Shown) -> Result<Answer, NoAnswer> {
    instrument(kind).unwrap().answer(&values(fields), shown)
}

fn answer(kind: &str, fields: &[(&str, &str)]) -> Answer {
    asked(kind, fields, Shown::default()).unwrap_or_else(|why| panic!("{why:?}"))
}

fn refused(kind: &str, fields: &[(&str, &str)]) -> String {
    let refused = asked(kind, fields, Shown::default()).unwrap_err().refused;
    refused.iter().map(|it| format!("{}: {}", it.field, it.says)).collect::<Vec<_>>().join("\n")
}

fn figure(answer: &Answer, name: &str) -> String {
    let found = answer.figures.iter().find(|figure| figure.0 == name);
    found.unwrap_or_else(|| panic!("no {name} in {answer:?}")).1.clone()
}

/// The number a figure begins with.
fn number(answer: &Answer, name: &str) -> f64 {
    figure(answer, name).split(' ').next().unwrap().parse().unwrap()
}

fn near(found: f64, expected: f64, tolerance: f64) {
    assert!((found - expected).abs() <= tolerance, "{found}, not {expected}");
}

/// 24.99 × 3.53 (AS568 -214) on grooves of 25.50, 25.75 and 26.24 mm: own arithmetic, the stretched
/// section by iteration; stretch of 5 % at most is common practice, from memory.
#[test]
fn a_ring_is_stretched_thinned_and_squeezed() {
    let ring = [("inside", "24.99"), ("section", "3.53"), ("depth", "2.85"), ("width", "4.75")];
    for (bottom, stretch, section) in
        [("25.50", 2.041, 3.5006), ("25.75", 3.041, 3.4865), ("26.24", 5.002, 3.4592)]
    {
        let answer = answer("oring", &[&ring[..], &[("bottom", bottom)]].concat());
        near(number(&answer, "Stretch"), stretch, 0.01);
        near(number(&answer, "Section, stretched"), section, 0.001);
    }
    let found = answer("oring", &[&ring[..], &[("bottom", "25.50")]].concat());
    near(number(&found, "Squeeze"), 18.59, 0.05);
    near(number(&found, "Groove filled"), 72.294, 0.05);
    assert_eq!(found.verdict, None, "common practice is no verdict");
    assert!(found.says[0].starts_with("Inside common practice"), "{:?}", found.says);
    let drawn = found.picture.unwrap();
    assert!(drawn.label.contains("squeezes it by 19 %"), "{}", drawn.label);
    let manual = [("low", "15"), ("high", "25")];
    let judged = answer("oring", &[&ring[..], &[("bottom", "25.50")], &manual[..]].concat());
    assert_eq!(judged.verdict, Some(Verdict::InBand));
}

/// Squeeze over section and gland tolerances; in brackets what a public gland table says. Run here.
#[test]
fn squeeze_over_every_tolerance() {
    let cases = [
        ("012", "0.370", "0.050", "0.055", "17.9 to 31.5 %"), // .070 ± .003, static radial (18–32)
        ("120", "1.000", "0.080", "0.086", "14.0 to 24.5 %"), // .103 ± .003 (14–25)
        ("214", "1.000", "0.110", "0.116", "14.1 to 23.1 %"), // .139 ± .004 (14–23)
        ("325", "1.500", "0.170", "0.176", "14.1 to 20.9 %"), // .210 ± .005 (14–21)
        ("425", "4.500", "0.225", "0.235", "12.6 to 19.9 %"), // .275 ± .006 (13–20)
        ("214", "1.000", "0.100", "0.108", "20.0 to 30.1 %"), // static face (20–30)
        ("214", "1.000", "0.119", "0.123", "8.9 to 16.8 %"),  // reciprocating (9–17)
        ("425", "4.500", "0.234", "0.240", "10.8 to 16.7 %"), // reciprocating (10.5–17)
    ];
    for (dash, bottom, depth, deepest, expected) in cases {
        let shown = Shown { unit: Unit::Inch, ..Shown::default() };
        let fields = [("bottom", bottom), ("depth", depth), ("deepest", deepest), ("dash", dash)];
        let answer = asked("oring", &fields, shown).unwrap_or_else(|why| panic!("{dash} {why:?}"));
        assert_eq!(figure(&answer, "Squeeze, unstretched, every tolerance"), expected, "{dash}");
    }
}

/// SAE AS568 inside diameters and sections that two public lists give alike.
#[test]
fn a_size_is_looked_up_by_its_number() {
    let rows = [
        ("-010", "6.07 × 1.78 mm"),
        ("-012", "9.25 × 1.78 mm"),
        ("014", "12.42 × 1.78 mm"),
        ("16", "15.60 × 1.78 mm"),
        ("-020", "21.95 × 1.78 mm"),
        ("AS568-110", "9.19 × 2.62 mm"),
        ("-120", "25.07 × 2.62 mm"),
        ("-210", "18.64 × 3.53 mm"),
        ("214", "24.99 × 3.53 mm"),
    ];
    for (typed, size) in rows {
        let inside: f64 = size.split(' ').next().unwrap().parse().unwrap();
        let section: f64 = size.split(' ').nth(2).unwrap().parse().unwrap();
        let (bottom, depth) = (format!("{:.2}", inside * 1.02), format!("{:.2}", section * 0.8));
        let fields = [("bottom", bottom.as_str()), ("depth", depth.as_str()), ("dash", typed)];
        let says = answer("oring", &fields).says.join(" ");
        assert!(says.contains(size) && says.ends_with("Two public lists agree."), "{says}");
    }
    let none = refused("oring", &[("bottom", "20"), ("depth", "2"), ("dash", "-200")]);
    assert!(none.starts_with("dash: No size -200 in this table"), "{none}");
}

#[test]
fn a_groove_alone_finds_the_sizes_that_fit() {
    let groove = [("bottom", "25.50"), ("depth", "2.85"), ("width", "4.75")];
    let table = answer("oring", &groove).table.unwrap();
    let ring = table.rows.iter().find(|row| row.name.starts_with("-214:")).unwrap();
    // -214 on 25.50 is stretched by 2.0 %, squeezed by 18.6 % in 2.85 (own arithmetic).
    assert_eq!(ring.cells, ["18.6 %", "2.0 %"]);
    assert!(table.rows.iter().all(|row| row.name.ends_with("× 3.53 mm")), "{table:?}");
    let none = answer("oring", &[("bottom", "2"), ("depth", "2.85")]);
    assert!(none.table.is_none() && none.says[0].starts_with("No size of this table fits"));
}

#[test]
fn a_ring_larger_than_its_groove_is_refused_at_its_field() {
    let loose = [("bottom", "25.50"), ("depth", "2.85"), ("section", "3.53"), ("inside", "26.00")];
    assert_eq!(
        refused("oring", &loose),
        "inside: Groove diameter: found 25.5 mm, expected more than the ring inside diameter, 26 mm; take a smaller ring or measure both again."
    );
    // (π/4)·3.53² = 9.79 mm², 3.40 × 2.85 = 9.69 mm² (by hand).
    let full = [
        ("bottom", "25.50"),
        ("depth", "2.85"),
        ("width", "3.40"),
        ("section", "3.53"),
        ("inside", "24.99"),
    ];
    assert!(refused("oring", &full).starts_with("inside: Groove section: found 9.69 mm², "));
    let turned = [&loose[..3], &[("inside", "24.99"), ("tolerance", "0.1"), ("deepest", "2.80")]];
    assert!(refused("oring", &turned.concat()).starts_with("deepest: Most gland depth: found 2.8"));
}

/// 3.1, 3.2, 3.3, 3.2 mm: 0.2 between deepest and least, 1.1 deeper than the old at 2.1 (by hand).
/// Square within 0.25 mm: common practice, no source.
#[test]
fn a_seal_is_held_to_its_four_depths() {
    let typed = [("depth", "3.1|3.2|3.3|3.2"), ("old", "2.1"), ("manual", "to the oil")];
    let found = answer("seal", &typed);
    near(number(&found, "Deepest less least"), 0.2, 1e-9);
    near(number(&found, "Mean depth"), 3.2, 1e-9);
    near(number(&found, "Deeper than the old"), 1.1, 1e-9);
    assert_eq!(found.verdict, None, "no limit typed");
    assert!(found.says.iter().any(|says| says.contains("common practice, no source")));
    let picture = found.picture.unwrap().label;
    assert!(picture.ends_with("Depth at 12 h 3.1, 3 h 3.2, 6 h 3.3, 9 h 3.2."), "{picture}");
    assert!(picture.contains("look left, to the oil"));
    let square = [("depth", "3.10|3.20|3.30|3.20"), ("square", "0.25")];
    assert_eq!(answer("seal", &square).verdict, Some(Verdict::InBand));
    let cocked = [("depth", "3.10|3.30|3.50|3.30"), ("square", "0.25")];
    assert_eq!(answer("seal", &cocked).verdict, Some(Verdict::Out));
    let deep = [("depth", "3.10|3.20|3.30|3.20"), ("square", "0.25"), ("high", "3.0")];
    assert_eq!(answer("seal", &deep).verdict, Some(Verdict::Out), "square, but too deep");
}

/// Public advice on lips conflicts, so the manual, then the as-found photo, decides; never a rule.
#[test]
fn a_lip_looks_as_it_is_recorded() {
    let says = |fields: &[(&str, &str)]| {
        let found = answer("seal", fields);
        (found.says[0].clone(), found.verdict)
    };
    let (oil, water) = ("to the oil", "to the water");
    let (said, verdict) = says(&[("manual", oil), ("fitted", water)]);
    assert!(said.starts_with("The lip looks the other way round") && verdict == Some(Verdict::Out));
    assert!(says(&[("found", oil), ("fitted", oil)]).0.starts_with("The lip looks the way"));
    assert!(
        says(&[("found", water), ("manual", oil)]).0.starts_with("Manual and as found differ.")
    );
    assert!(says(&[("fitted", oil)]).0.starts_with("Neither manual nor as-found is known."));
    let caution: Vec<String> =
        instrument("seal").unwrap().cautions.iter().map(ToString::to_string).collect();
    assert!(caution[0].starts_with("No rule of thumb here."));
}

/// 42.15 in 42.00 holds by 0.15 mm; a shaft of 29.90 in a seal for 30 is 0.10 thin (by hand).
#[test]
fn a_seal_must_be_larger_than_its_bore() {
    let sizes = [("outside", "42.15"), ("bore", "42.00"), ("shaft", "29.90"), ("marked", "30.00")];
    let found = answer("seal", &sizes);
    near(number(&found, "Larger than its bore"), 0.15, 1e-9);
    near(number(&found, "Shaft against the size marked"), -0.10, 1e-9);
    assert_eq!(
        refused("seal", &[("outside", "41.95"), ("bore", "42.00")]),
        "outside: Seal outside diameter: found 41.95 mm, expected more than the bore, 42 mm; measure both again, or take the seal for this bore."
    );
    assert_eq!(
        refused("seal", &[("depth", "3.1|3.2||")]),
        "depth: Found 2 of 4 depths. Read the others too: a seal leans where nobody looks."
    );
    assert_eq!(asked("seal", &[], Shown::default()).unwrap_err().wanted.len(), 1);
}
