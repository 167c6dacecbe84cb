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
    if let Some(headline) = answer.headline.as_ref().filter(|headline| headline.title == name) {
        return format!("{} {}", headline.number, headline.unit);
    }
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
        let shown = Shown { units: job::Units::default().with(Unit::Inch), ..Shown::default() };
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

/// Height first: public ring-and-pinion guidance, and an independent mesh model, agree that a pinion
/// too shallow prints toward the tip and one too deep toward the root, in both families of teeth.
#[test]
fn a_print_gives_a_direction_by_its_height_alone() {
    let seen = |drive: &str, coast: &str, along: (&str, &str)| {
        let typed = [
            ("used", "new"),
            ("drive", drive),
            ("coast", coast),
            ("drive-along", along.0),
            ("coast-along", along.1),
        ];
        answer("pattern", &typed)
    };
    let says = |found: &Answer| found.says[0].clone();
    for family in ["depth tapers", "even depth"] {
        for along in [("toe", "toe"), ("heel", "toe"), ("toe", "heel"), ("middle", "middle")] {
            let high = seen(&format!("tip, {family}"), "tip", along);
            assert!(says(&high).contains("too shallow. It goes in"), "{family} {along:?}");
            assert!(high.below.unwrap().label.contains("in, toward the gear axis"));
            let low = seen(&format!("root, {family}"), "root", along);
            assert!(says(&low).contains("too deep. It goes out"), "{family} {along:?}");
            assert_eq!(low.verdict, None);
        }
        for along in [("toe", "toe"), ("heel", "heel"), ("middle", "middle")] {
            let even = seen(&format!("middle, {family}"), "middle", along);
            assert!(even.below.is_none() && says(&even).contains("asks for nothing"));
        }
        let crossed = seen(&format!("middle, {family}"), "middle", ("toe", "heel"));
        assert!(crossed.below.is_none() && says(&crossed).contains("read the depth gap first"));
        let differ = seen(&format!("tip, {family}"), "root", ("toe", "toe"));
        assert!(differ.below.is_none() && says(&differ).contains("print again"));
    }
}

/// A worn print misleads: common practice, no source.
#[test]
fn used_gears_aim_for_the_old_print() {
    let typed = [("used", "run together before"), ("drive", "tip, depth tapers"), ("coast", "tip")];
    let found = answer("pattern", &typed);
    assert!(found.says[0].contains("aim for the old print") && found.below.is_none());
    assert!(found.cautions.iter().any(|said| said.starts_with("A worn print misleads.")));
    let lacks = asked("pattern", &[("drive", "tip, depth tapers")], Shown::default()).unwrap_err();
    assert_eq!(lacks.wanted, ["The gears", "Coast flank"]);
}

/// 24 h on the label, 20 h gone: 4 h to go (by hand). The label's own time decides; 10 min, 24 h and
/// 230 to 315 °C are common practice, no source.
#[test]
fn a_locked_thread_cures_by_its_label() {
    let joint = |since: &str, warm: &str, clean: &str, metal: &str| {
        let typed = [
            ("clean", clean),
            ("metal", metal),
            ("primed", "none"),
            ("full", "24"),
            ("coldest", "15"),
            ("since", since),
            ("joint", warm),
        ];
        answer("locker", &typed)
    };
    let (steel, slow) = ("steel or brass", "stainless, plated or aluminium");
    let curing = joint("20", "21", "yes", steel);
    assert_eq!(figure(&curing, "To go"), "4.0 h");
    assert!(curing.says[0].starts_with("Still curing: 4.0 h to go"));
    assert!(curing.says.last().unwrap().starts_with("Common practice, no source:"));
    assert!(joint("1440 min", "21", "yes", steel).says[0].contains("cured"));
    assert!(joint("30", "12", "yes", steel).says[0].starts_with("Colder than"));
    assert!(joint("30", "21", "no", steel).says[0].starts_with("Take it apart, degrease"));
    assert!(joint("20", "21", "yes", slow).says[1].starts_with("Slow metal and no primer"));
    let cautions: Vec<String> =
        instrument("locker").unwrap().cautions.iter().map(ToString::to_string).collect();
    assert!(cautions[0].starts_with("Gloves and air."));
}

/// Half gone or painted is replaced; −0.90 to −1.05 V: both common practice, no source.
#[test]
fn anodes_grade_and_cell() {
    let found = answer("anode", &[("left", "60|40"), ("loose", "some"), ("grade", "2")]);
    let says = found.says.join(" ");
    assert!(says.contains("No. 1: keep. No. 2: replace") && says.contains("Pits away from lands"));
    assert_eq!(found.verdict, None);
    let cell = answer("anode", &[("cell", "-980")]);
    assert_eq!(cell.verdict, None, "common practice is no verdict");
    assert!(cell.says[0].starts_with("Common practice, no source: −0.90 to −1.05 V"));
    let limits = [("least", "-900"), ("most", "-1.05 V")];
    let judged = |read: &str| answer("anode", &[&[("cell", read)], &limits[..]].concat());
    assert_eq!(judged("-980").verdict, Some(Verdict::InBand));
    assert_eq!(judged("-1.20 V").verdict, Some(Verdict::Out));
    assert_eq!(judged("-850 mV").verdict, Some(Verdict::Out));
    let over = refused("anode", &[("left", "120")]);
    assert_eq!(over, "left: Anode left: found 120 %, expected 0 to 100 %; read it again.");
    assert!(refused("anode", &[("cell", "-9800")]).starts_with("cell: Cell: found -9.8 V"));
}

/// 30.00 beside, 29.90 in the track: 0.05 mm deep (by hand).
#[test]
fn a_land_is_worn_by_half_the_difference() {
    let land = [("sound", "30.00"), ("worn", "29.90"), ("nail", "yes")];
    let found = answer("land", &land);
    near(number(&found, "Depth of the track"), 0.05, 1e-9);
    assert!(found.verdict.is_none() && found.says[0].starts_with("To be felt"));
    let limited = answer("land", &[&land[..], &[("limit", "0.02")]].concat());
    assert_eq!(limited.verdict, Some(Verdict::Out));
    let swapped = refused("land", &[("sound", "29.90"), ("worn", "30.00"), ("nail", "no")]);
    assert!(
        swapped.starts_with("worn: Sound land: found 29.9 mm, expected more than"),
        "{swapped}"
    );
}
