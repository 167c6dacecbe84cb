//! The grid: packs down in the order of work, checks across.

use job::{Bearings, Check, Figure, InfluenceCell, InfluenceRow, InfluenceView, Mesh, figure};
use leptos::prelude::*;
use words::{say, t};

use super::Map;
use crate::parts::words;
use crate::pictures::influence::{Cell, Does, Grid, InfluenceGrid, Row};

/// "Read a row: make this pack 0.10 mm thicker."
pub fn how_to_read(map: Map) -> Signal<String> {
    words(move || {
        let shown = map.of.shown();
        say!(
            "Read a row: make this pack {by} {unit} thicker.",
            by = thicker(map),
            unit = shown.units.length
        )
    })
}

/// By how much each pack is made thicker: "0.10".
pub fn thicker(map: Map) -> String {
    let shown = map.of.shown();
    map.look(|told| figure(told.thicker, Figure::Reading, shown)).unwrap_or_default()
}

/// The grid, with what its signs mean.
#[component]
pub fn Shown(map: Map) -> impl IntoView {
    let drawn = Signal::derive(move || {
        let thicker = say!("{} more", thicker(map));
        map.look(|told| grid(told, thicker)).unwrap_or_default()
    });
    let chosen = Signal::derive(move || {
        let slot = map.slot();
        map.look(|told| told.rows.iter().position(|row| Some(row.slot) == slot)).flatten()
    });
    let choose = Callback::new(move |at: usize| {
        let slot = untrack(|| map.look(|told| told.rows.get(at).map(|row| row.slot)).flatten());
        map.chosen.set(slot);
    });
    view! {
        <div class="sheet">
            <InfluenceGrid grid=drawn chosen on_choose=choose/>
            <p class="small">
                {t("▼ falls, ▲ grows, again: no formula, so read it again. The heavy frame is the check the pack is set by.")}
            </p>
        </div>
    }
}

fn grid(told: &InfluenceView, thicker: String) -> Grid {
    let cell = |cell: &InfluenceCell| Cell {
        own: cell.is_own,
        strength: cell.strength,
        number: cell.number.clone(),
        does: Does::named(cell.way),
    };
    let row = |row: &InfluenceRow| Row {
        id: row.slot.tag().to_owned(),
        cells: row.cells.iter().map(cell).collect(),
    };
    Grid {
        thicker,
        checks: told.checks.iter().map(|check| short(*check).to_owned()).collect(),
        rows: told.rows.iter().map(row).collect(),
    }
}

/// The name of a check over a narrow column: it breaks where a hyphen may stand.
fn short(check: Check) -> &'static str {
    match check {
        Check::Depth => t("Depth gap"),
        Check::Lash(Mesh::Main) => t("Lash"),
        Check::Lash(Mesh::Forward) => t("For\u{ad}ward lash"),
        Check::Lash(Mesh::Reverse) => t("Re\u{ad}verse lash"),
        Check::Lash(Mesh::Front) => t("Front lash"),
        Check::Lash(Mesh::Rear) => t("Rear lash"),
        Check::Lash(Mesh::Upper) => t("Upper lash"),
        Check::Lash(Mesh::Lower) => t("Lower lash"),
        Check::Setting(Bearings::Driveshaft) => t("Drive\u{ad}shaft set"),
        Check::Setting(Bearings::PinionPair) => t("Pin\u{ad}ion set"),
        Check::Setting(Bearings::Propshaft) => t("End play"),
        Check::Setting(Bearings::InnerShaft) => t("Inner set"),
        Check::Setting(Bearings::OuterShaft) => t("Outer set"),
        Check::Setting(Bearings::Vertical) => t("Vert\u{ad}ical set"),
        Check::Torque => t("Roll\u{ad}ing torque"),
    }
}
