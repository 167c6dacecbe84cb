//! The pictures of help and guide; their numbers are invented.

use measure::{Decimal, Mark, show};
use words::t;

use crate::pictures::band::Band;
use crate::pictures::drawing::Drawing;
use crate::pictures::gauge::Gauge;
use crate::pictures::layouts::Layout;
use crate::pictures::section::{Section, View, closed, glance};
use crate::pictures::tin::{Shim, stack};

/// What is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shows {
    /// A reading series in its band.
    Band,
    /// The packs in a strip of the section.
    Case,
    /// A case that is shut.
    Closed,
    /// An indicator on its arm.
    Gauge,
    /// A gearcase in section.
    Layout,
    /// The packs with their tags.
    Packs,
    /// A pack, and the way the gear goes when it gets thicker.
    Thicker,
    /// The seals with their lips.
    Seals,
    /// A pack as shims.
    Shims,
}

/// Its drawing, numbers with that decimal mark.
pub fn draw(shows: Shows, mark: Mark) -> Drawing {
    let number = |value, places| show(Decimal::new(value, places), places, mark);
    match shows {
        Shows::Band => band(mark),
        Shows::Case => glance(),
        Shows::Closed => closed(t("A gearcase that is shut.")),
        Shows::Gauge => {
            let radius = format!("{} mm", number(300, 1));
            Gauge::Lash { radius, on: t("driveshaft").to_owned() }.draw()
        }
        Shows::Layout => {
            Layout::B.draw(t("A gearcase with forward and reverse gears, in section."))
        }
        Shows::Packs => packs().draw(),
        Shows::Thicker => {
            let note = t("gear aft").to_owned();
            Section { change: 0.1, note, view: View::Whole, ..packs().choosing("B2") }.draw()
        }
        Shows::Seals => Section::card("b").map(|card| seals(&card)).unwrap_or_default(),
        Shows::Shims => {
            let shim = |thickness, words, count: &str| Shim {
                thickness,
                words: number(words, 3),
                count: count.to_owned(),
            };
            stack(&[shim(0.498, 498, t("1 of 4")), shim(0.199, 199, t("1 of 2"))])
        }
    }
}

fn packs() -> Section {
    Section::of(["B1", "B2", "B3", "B4"])
}

fn seals(card: &Section) -> Drawing {
    pictures::seals::map(card, |tag| Some(tag == "S1"))
}

fn band(mark: Mark) -> Drawing {
    let band = Band {
        name: t("Forward lash, mm").to_owned(),
        low: 0.27,
        high: 0.48,
        near: 0.03,
        readings: vec![0.38, 0.40, 0.37, 0.38],
        mean: Some(0.383),
        verdict: t("In band").to_owned(),
        ..Band::default()
    };
    band.large(|value| show(Decimal::new((value * 100.0).round() as i64, 2), 2, mark))
}
