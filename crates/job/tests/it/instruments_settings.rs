//! End play and rolling torque from typed text to answer. Units: scipy.constants 1.17.1. The idea of a
//! setting is that of D. Novak, "Setting Techniques for Tapered Roller Bearings"; the rest is own
//! arithmetic on the formulae.

use job::instrument::Values;
use measure::Verdict;

use crate::instruments::{answer, figure, refusal, values};

fn number(text: &str) -> f64 {
    text.split(' ').next().unwrap().parse().unwrap()
}

/// Plays 0.10, 0.11, 0.11 mm: mean 0.1067; between 0.05 and 0.20.
#[test]
fn end_play_pushed_and_pulled() {
    let typed = values(&[
        ("pulled", &["0.12", "0.13", "0.12"]),
        ("pushed", &["0.02", "0.02", "0.01"]),
        ("low", &["0.05"]),
        ("high", &["0.20"]),
    ]);
    let found = answer("play", &typed).unwrap();
    assert_eq!(found.verdict, Some(Verdict::InBand));
    let headline = found.headline.unwrap();
    assert!((number(&headline.number) - 0.32 / 3.0).abs() < 0.0006, "{headline:?}");
    let zeroed = values(&[("pulled", &["0.10", "0.11", "0.11"])]);
    assert!(answer("play", &zeroed).unwrap().headline.unwrap().number.starts_with("0.107"));
    let half = values(&[("pulled", &["0.12", "0.13", ""]), ("pushed", &["0.02", "", ""])]);
    assert!(refusal("play", &half).starts_with("pushed: Found a push without its pull"));
}

/// End play 0.20, wanted preload 0.05: 0.25 to close; a 1.00 pack becomes 1.25, or 0.75 where thicker
/// opens.
#[test]
fn the_pack_for_a_preload() {
    let wanted = |thicker: &str| {
        values(&[
            ("pulled", &["0.200"]),
            ("wanted", &["-0.050"]),
            ("pack", &["1.000"]),
            ("thicker", &[thicker]),
        ])
    };
    assert_eq!(number(&figure("play", &wanted("closes play"), "To close")), 0.25);
    assert_eq!(number(&figure("play", &wanted("closes play"), "Pack for it")), 1.25);
    assert_eq!(number(&figure("play", &wanted("opens play"), "Pack for it")), 0.75);
}

/// Aluminium 21.5e-6, steel 12.0e-6, 60 K: L = 90 mm gives 0.0513 mm; a 62 mm cup of 14° adds 0.07087.
#[test]
fn heat_moves_a_setting() {
    let warm = |more: &[(&str, &[&str])]| {
        let mut typed = values(&[
            ("pulled", &["0.10"]),
            ("cold", &["20"]),
            ("warm", &["80"]),
            ("spread", &["90.0"]),
        ]);
        typed.extend(values(more));
        number(&figure("play", &typed, "Warm, it changes by"))
    };
    assert!((warm(&[("longer", &["loosens them"])]) - 0.0513).abs() < 0.0006);
    assert!((warm(&[("longer", &["tightens them"])]) + 0.0513).abs() < 0.0006);
    let row: [(&str, &[&str]); 3] =
        [("longer", &["loosens them"]), ("cup", &["62.0"]), ("half-angle", &["14.0"])];
    assert!((warm(&row) - 0.0513 - 0.07087).abs() < 0.0012);
}

#[test]
fn play_refuses_what_cannot_be() {
    let typed = |warm: &str| {
        values(&[
            ("pulled", &["0.10"]),
            ("cold", &["20"]),
            ("warm", &[warm]),
            ("spread", &["90"]),
            ("longer", &["loosens them"]),
        ])
    };
    let colder = refusal("play", &typed("-300"));
    assert!(colder.starts_with("warm: ") && colder.contains("absolute zero"), "{colder}");
    assert!(answer("play", &typed("80")).is_ok());
    let limits = values(&[("pulled", &["0.10"]), ("low", &["0.2"]), ("high", &["0.1"])]);
    assert!(refusal("play", &limits).starts_with("high: "));
}

fn torque(more: &[(&str, &[&str])]) -> Values {
    let mut typed = values(&[("when", &["running"]), ("seals", &["out"])]);
    typed.extend(values(more));
    typed
}

/// 2.5 lbf at 1.000 in: 2.5 lbf·in = 0.282462 N·m; 12 N at 32 mm: 0.384 N·m = 3.398686 lbf·in.
#[test]
fn a_scale_on_a_drum() {
    let pounds = torque(&[
        ("scale", &["lbf"]),
        ("pull", &["2.50"]),
        ("drum", &["2.0000 in"]),
        ("cord", &["0 in"]),
    ]);
    assert!((number(&figure("drag", &pounds, "As read")) - 0.282462).abs() < 0.0006);
    let newtons = torque(&[
        ("unit", &["lbf·in"]),
        ("pull", &["12.0"]),
        ("drum", &["62.0"]),
        ("cord", &["2.00"]),
    ]);
    let read = figure("drag", &newtons, "As read");
    assert!((number(&read) - 3.398686).abs() < 0.006 && read.ends_with("lbf·in"), "{read}");
}

/// 0.35 + 0.60/1.5 = 0.75 N·m through 14 and 21 teeth; 0.52 less 0.35 before the seal: 0.17.
#[test]
fn one_shaft_and_two() {
    let two = torque(&[
        ("torque", &["0.35", "0.35", "0.35"]),
        ("gear-shaft", &["0.60"]),
        ("pinion-teeth", &["14"]),
        ("gear-teeth", &["21"]),
    ]);
    let both = "Both shafts at the pinion, without the mesh";
    assert!((number(&figure("drag", &two, both)) - 0.75).abs() < 0.001);
    let part = torque(&[("torque", &["0.52"]), ("before", &["0.35"]), ("seals", &["in"])]);
    assert!((number(&figure("drag", &part, "The last part takes")) - 0.17).abs() < 0.001);
    let found = answer("drag", &part).unwrap();
    assert_eq!(found.verdict, None, "the seals drag too");
    assert_eq!(found.headline.unwrap().title, "As read, seals in");
    let half = torque(&[("torque", &["0.35"]), ("gear-shaft", &["0.60"])]);
    assert_eq!(answer("drag", &half).unwrap_err().wanted, ["Teeth on both gears"]);
}

#[test]
fn a_trend_must_be_more_than_the_gauge() {
    let says = |now: &str| {
        let typed = torque(&[("torque", &[now]), ("earlier", &["0.30", "0.33"])]);
        answer("drag", &typed).unwrap().says.join(" ")
    };
    assert!(says("0.40").contains("it rises: 0.1000"), "{}", says("0.40"));
    assert!(says("0.20").contains("it falls"));
    assert!(says("0.30").contains("No trend that this gauge could prove"));
}

#[test]
fn break_away_is_never_judged() {
    let typed = torque(&[("when", &["break-away"]), ("torque", &["0.9"]), ("high", &["0.5"])]);
    assert_eq!(answer("drag", &typed).unwrap().verdict, None);
}
