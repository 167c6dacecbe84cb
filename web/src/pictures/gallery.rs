//! Every picture in its states, for the builders' page.

use gearing::layout::LAYOUTS;
use leptos::prelude::*;

use pictures::oring::Seated;
use pictures::seals::{Seat, map};

use super::Picture;
use super::band::Band;
use super::drawing::Drawing;
use super::gallery_checks::checks;
use super::gauge::Gauge;
use super::influence::{Cell, Does, Grid, InfluenceGrid, Row};
use super::layouts::Layout;
use super::section::{Section, View};
use super::tin::{Comb, Shim, ring, stack};
use super::trials::{Trial, Trials};

/// Every picture in its states. The numbers are invented.
#[component]
pub fn Gallery() -> impl IntoView {
    let groups = [
        ("Section", sections()),
        ("Units", units()),
        ("Layouts", layouts()),
        ("Small bands", small_bands()),
        ("Large bands", large_bands()),
        ("Trials", trials()),
        ("Shims", shims()),
        ("Gauges", gauges()),
        ("Seals", seals()),
        ("Bench checks", checks()),
    ];
    let drawn = groups
        .into_iter()
        .map(|(title, drawings)| {
            view! {
                <section class="sheet sheet--quiet">
                    <h2>{title}</h2>
                    <div class="pictures">
                        {drawings
                            .into_iter()
                            .map(|drawing| view! { <Picture drawing=drawing/> })
                            .collect::<Vec<_>>()}
                    </div>
                </section>
            }
        })
        .collect::<Vec<_>>();
    view! {
        {drawn}
        <Influence/>
    }
}

/// The seal map of every layout, a seal each way, and rings with little and much rubber.
fn seals() -> Vec<Drawing> {
    let maps = ["a", "b", "c", "d", "e"].into_iter().filter_map(Section::card);
    let looks = |tag: &str| (tag != "S3").then_some(tag == "S1");
    let depths = || ["3.1", "3.2", "3.3", "3.2"].map(str::to_owned).to_vec();
    let seat = |to_oil| Seat { to_oil, depths: depths() }.draw();
    let ring = |section, width: Option<f64>, squeeze: &str| {
        let squeeze = squeeze.to_owned();
        Seated { section, depth: 2.85, width, squeeze, fill: None }.draw()
    };
    maps.map(|section| map(&section, looks))
        .chain([Some(true), Some(false), None].map(seat))
        .chain([ring(3.5, Some(4.75), "19"), ring(2.6, None, "-10"), ring(4.6, Some(6.0), "38")])
        .collect()
}

/// The influence grid with a few checks, and with as many as a unit can have.
#[component]
fn Influence() -> impl IntoView {
    let chosen = RwSignal::new(Some(0));
    let choose = Callback::new(move |at| chosen.set(Some(at)));
    view! {
        <section class="sheet sheet--quiet">
            <h2>"Influence"</h2>
            <InfluenceGrid grid=grid(&FEW, &FEW_MOVES) chosen on_choose=choose/>
            <InfluenceGrid grid=grid(&MANY, &MANY_MOVES)/>
        </section>
    }
}

const FEW: [&str; 4] = ["Depth gap", "Forward lash", "Reverse lash", "End play"];
/// A pack, and a digit for each check: tenths of the pack's change; 0 nothing, 9 read again. The
/// check with the biggest is the pack's own.
const FEW_MOVES: [(&str, &str); 4] =
    [("B1", "8440"), ("B2", "0700"), ("B3", "0060"), ("B4", "0008")];
const MANY: [&str; 7] = [
    "Depth gap",
    "Front lash",
    "Rear lash",
    "Driveshaft setting",
    "Inner setting",
    "Outer setting",
    "Rolling torque",
];
const MANY_MOVES: [(&str, &str); 5] = [
    ("C1", "8440009"),
    ("C2", "0700609"),
    ("C3b", "0060769"),
    ("C4", "0000809"),
    ("C5", "0000089"),
];

fn grid(checks: &[&str], moves: &[(&str, &str)]) -> Grid {
    let cell = |digit: u32, own: bool| match digit {
        0 | 9 => Cell {
            own: false,
            strength: 0.0,
            number: String::new(),
            does: if digit == 9 { Does::Again } else { Does::Stays },
        },
        tenths => Cell {
            own,
            strength: f64::from(tenths) / 10.0,
            number: two_places(f64::from(tenths) / 100.0),
            does: if tenths == 7 { Does::Grows } else { Does::Falls },
        },
    };
    let row = |(id, digits): &(&str, &str)| {
        let digits: Vec<u32> = digits.chars().filter_map(|digit| digit.to_digit(10)).collect();
        let most = digits.iter().copied().filter(|digit| *digit < 9).max();
        let cells = digits.iter().map(|digit| cell(*digit, Some(*digit) == most)).collect();
        Row { id: (*id).to_owned(), cells }
    };
    Grid {
        thicker: "0.10 more".to_owned(),
        checks: checks.iter().map(|check| (*check).to_owned()).collect(),
        rows: moves.iter().map(row).collect(),
    }
}

fn two_places(value: f64) -> String {
    written(value, 100)
}

fn three_places(value: f64) -> String {
    written(value, 1000)
}

/// Written from whole numbers: the machinery for floating point would weigh more than the pictures.
fn written(value: f64, parts: i64) -> String {
    let all = (value * parts as f64).round() as i64;
    let (whole, rest) = (all / parts, all % parts + parts);
    let rest: String = rest.to_string().chars().skip(1).collect();
    format!("{whole}.{rest}")
}

/// Units that have every place of every layout between them.
const UNITS: [&[&str]; 12] = [
    &["A1", "A2", "A3"],
    &["A1b", "A2b", "A3b"],
    &["A1c", "A2"],
    &["A1d", "A2b", "A3"],
    &["B1", "B2", "B3", "B4"],
    &["B1b", "B2", "B3b", "B4"],
    &["C1c", "C2", "C3", "C4", "C5"],
    &["C1d", "C2", "C3b"],
    &["D1", "D2", "D3", "D4", "D5"],
    &["D1b", "D2", "D3", "D4", "D4b"],
    &["E1", "E2", "E3", "E4"],
    &["E1b", "E2", "E3", "E4"],
];

/// Every unit bare, then each of its packs a tenth thicker.
fn units() -> Vec<Drawing> {
    let chosen = |section: &Section, id: &str| {
        let words = LAYOUTS.into_iter().find_map(|layout| layout.position(id));
        let note = words.map(|position| position.thicker.to_owned()).unwrap_or_default();
        Section { change: 0.1, note, ..section.clone().choosing(id) }.draw()
    };
    let unit = |ids: &&[&str]| {
        let section = Section::of(ids.iter().copied());
        let each = ids.iter().map(|id| chosen(&section, id));
        [section.draw()].into_iter().chain(each).collect::<Vec<_>>()
    };
    UNITS.iter().flat_map(unit).collect()
}

fn sections() -> Vec<Drawing> {
    let sketch = |id: &str, change, turned, note: &str, view| {
        let section = Section::of(["B1", "B2", "B3", "B4"]).choosing(id);
        Section { change, turned, note: note.to_owned(), view, ..section }.draw()
    };
    vec![
        sketch("B2", 0.0, false, "gear aft", View::Whole),
        sketch("B2", -0.1, false, "gear forward", View::Whole),
        sketch("B2", 0.1, true, "gear forward", View::Whole),
        sketch("B2", 0.0, false, "", View::Low),
        sketch("B1", 0.0, false, "pinion down", View::Close),
        sketch("B2", 0.0, false, "gear aft", View::Close),
        sketch("B3", 0.0, false, "gear forward", View::Close),
        sketch("B4", 0.0, false, "end play smaller", View::Close),
    ]
}

fn layouts() -> Vec<Drawing> {
    [
        (Layout::B, "Forward and reverse"),
        (Layout::A, "Single driven gear"),
        (Layout::C, "Twin propshafts"),
        (Layout::D, "Upper unit, cone clutch"),
        (Layout::E, "Single, both shafts preloaded"),
        (Layout::Closed, "Closed case"),
    ]
    .map(|(layout, label)| layout.draw(label))
    .to_vec()
}

fn band() -> Band {
    Band {
        name: "Forward lash, mm".to_owned(),
        low: 0.273,
        high: 0.477,
        near: 0.03,
        ..Band::default()
    }
}

fn read(readings: &[f64], mean: f64) -> Band {
    Band { readings: readings.to_vec(), mean: Some(mean), ..band() }
}

fn small_bands() -> Vec<Drawing> {
    vec![
        band().small(two_places),
        read(&[0.38], 0.38).small(two_places),
        Band { predicted: Some((0.376, 0.03)), ..band() }.small(two_places),
        Band { found: Some(0.58), ..read(&[], 0.39) }.narrow(two_places),
        Band { stale: true, ..read(&[], 0.44) }.small(two_places),
        read(&[9.6], 9.6).small(two_places),
        Band { low: 0.6, high: 0.66, near: 0.05, ..read(&[], 0.63) }.small(two_places),
    ]
}

fn large_bands() -> Vec<Drawing> {
    let full = read(&[0.38, 0.40, 0.37, 0.38], 0.383);
    vec![
        band().large(two_places),
        read(&[0.38, 0.40], 0.39).large(two_places),
        Band { predicted: Some((0.376, 0.03)), ..full.clone() }.large(two_places),
        Band { predicted: Some((0.45, 0.03)), ..read(&[0.55, 0.57, 0.53, 0.56], 0.553) }
            .large(two_places),
        Band { stale: true, ..full }.large(two_places),
        read(&[1.2, 1.3, 1.25], 1.25).large(two_places),
    ]
}

fn trials() -> Vec<Drawing> {
    let trial = |pack, reading| Trial { pack, reading, left_out: false };
    let empty = Trials {
        across: "B2 pack, mm".to_owned(),
        up: "lash, mm".to_owned(),
        low: 0.273,
        high: 0.477,
        ..Trials::default()
    };
    let one = Trials { built: vec![trial(0.602, 0.45)], ..empty.clone() };
    let two = Trials {
        built: vec![trial(0.531, 0.54), trial(0.602, 0.47)],
        learnt: Some(((0.566, 0.505), -0.96)),
        next: Some((0.697, 0.376, 0.03)),
        ..empty.clone()
    };
    let hot = Trial { left_out: true, ..trial(0.45, 0.30) };
    let left_out = Trials { built: vec![hot, trial(0.531, 0.54)], ..two.clone() };
    [empty, one, two, left_out].map(|it| it.draw(two_places, two_places)).to_vec()
}

fn shims() -> Vec<Drawing> {
    let shim = |thickness, count: &str| Shim {
        thickness,
        words: three_places(thickness),
        count: count.to_owned(),
    };
    let comb = Comb {
        name: "B2".to_owned(),
        packs: vec![0.498, 0.602, 0.697, 0.699, 0.8, 0.801, 0.9],
        wanted: Some(0.698),
        range: Some((0.4, 1.0)),
    };
    let mut drawings = vec![
        stack(&[shim(0.498, "1 of 4"), shim(0.199, "1 of 2")]),
        stack(&[shim(0.1, "1 of 1"), shim(1.0, "1 of 2"), shim(0.05, "in the case")]),
        comb.draw("mm", three_places),
        Comb { packs: Vec::new(), ..comb }.draw("mm", three_places),
    ];
    drawings.extend([(0.498, 4), (0.199, 2), (0.052, 0)].map(|(thick, left)| ring(thick, left)));
    drawings
}

fn gauges() -> Vec<Drawing> {
    let lash = Gauge::Lash { radius: "30.0 mm".to_owned(), on: "driveshaft".to_owned() };
    let depth = Gauge::Depth { gap: "0.60 to 0.66".to_owned() };
    [lash, depth, Gauge::EndPlay].map(|gauge| gauge.draw()).to_vec()
}
