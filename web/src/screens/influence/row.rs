//! The row that is read: what the pack does, what goes stale with it, and what it costs.

use job::{InfluenceCell, InfluenceRow, Known};
use leptos::prelude::*;
use words::{say, t};

use super::{Map, grid};
use crate::parts::{Sign, State, Tag};

/// The chosen row in words.
pub fn read(map: Map) -> Option<AnyView> {
    let slot = map.slot();
    let row = |told: &job::InfluenceView| {
        told.rows.iter().find(|row| Some(row.slot) == slot).map(|row| sheet(map, row))
    };
    map.look(row).flatten()
}

fn sheet(map: Map, row: &InfluenceRow) -> AnyView {
    let cells = row.cells.iter().map(|cell| effect(map, row, cell)).collect_view();
    let id = row.position.id;
    let turned = map
        .of
        .look(|(_, sheet, _), _| sheet.turned_says().into_iter().find(|says| says.starts_with(id)));
    let turned = turned.flatten().map(|says| view! { <p>{says}</p> });
    view! {
        <div class="sheet" aria-live="polite">
            <div class="h">
                <h2>
                    <Tag words=row.slot.tag() big=true/>
                </h2>
                <small>{say!("{} thicker", grid::thicker(map))}</small>
            </div>
            <p>
                <b>{format!("{}.", capital(&row.says))}</b>
            </p>
            {turned}
            {cells}
            <p>
                <b>{say!("Costs about {} min.", row.minutes)}</b>
                " "
                {format!("{}.", row.opens)}
            </p>
        </div>
    }
    .into_any()
}

/// What becomes of a check when the pack changes, and how its number is known.
fn effect(map: Map, row: &InfluenceRow, cell: &InfluenceCell) -> AnyView {
    let tag = map.of.look(|(_, sheet, _), _| sheet.slot_of(cell.check).map(|slot| slot.tag()));
    let tag = tag.flatten().map(|words| view! { <Tag words/> });
    let is_reread = row.rereads.contains(&cell.check);
    let state = match is_reread {
        true => view! { <State sign=Sign::Stale words=t("Goes stale")/> }.into_any(),
        false => view! { <State sign=Sign::In words=t("Holds")/> }.into_any(),
    };
    let known = cell.change.map(|_| known(cell.known)).unwrap_or_default();
    view! {
        <div class="packrow">
            <span>{tag}</span>
            <p>
                {capital(cell.check.short())}
                <br/>
                <span class="dim">{known}</span>
            </p>
            {state}
        </div>
    }
    .into_any()
}

fn known(known: Known) -> &'static str {
    match known {
        Known::Exact => "exact",
        Known::Formula => t("by the gear shape"),
        Known::Guess => t("a guess, no tooth angles"),
        Known::Learnt => t("learnt from trials"),
    }
}

/// With a capital letter.
fn capital(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(|letter| letter.to_ascii_uppercase());
    first.into_iter().chain(letters).collect()
}
