//! The influence grid: packs down in the order of work, checks across; what each pack moves.

use leptos::prelude::*;
use words::{say, t};

use crate::parts::Tag;

/// More checks than this stand side by side only on a wide screen: on a narrow one they slide.
const FEW: usize = 4;

/// What each pack moves.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Grid {
    /// What is done to each pack: "0.10 more".
    pub thicker: String,
    /// Names of the checks, across: "Depth gap".
    pub checks: Vec<String>,
    /// The packs, down, in the order of work.
    pub rows: Vec<Row>,
}

/// What one pack moves.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    /// `B2`.
    pub id: String,
    /// A cell for each check.
    pub cells: Vec<Cell>,
}

/// What one pack does to one check.
#[derive(Clone, Debug, PartialEq)]
pub struct Cell {
    /// It is the check the pack is for.
    pub own: bool,
    /// How strong, from 0 to 1.
    pub strength: f64,
    /// By how much, as shown: "0.06"; may be empty.
    pub number: String,
    /// What the reading does.
    pub does: Does,
}

/// What a reading does when a pack is made thicker.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Does {
    /// It gets smaller.
    Falls,
    /// It gets bigger.
    Grows,
    /// It changes, nobody can say by how much.
    Again,
    /// Nothing.
    Stays,
}

impl Does {
    /// What the words of the core mean: "falls", "grows", "read again"; anything else is nothing.
    pub fn named(way: &str) -> Does {
        match way {
            "falls" => Does::Falls,
            "grows" => Does::Grows,
            "read again" => Does::Again,
            _ => Does::Stays,
        }
    }

    /// What is seen, and what is spoken in its place.
    fn shown(self) -> (&'static str, &'static str) {
        match self {
            Does::Falls => ("▼", t("falls")),
            Does::Grows => ("▲", t("grows")),
            Does::Again => (t("again"), t("is read again")),
            Does::Stays => ("·", t("no effect")),
        }
    }
}

impl Grid {
    /// All of it in words: "0.10 more at each pack. B1: depth gap falls 0.10, its own check; …"
    pub fn spoken(&self) -> String {
        let mut words = say!("{} at each pack.", self.thicker);
        for row in &self.rows {
            let cells = self.checks.iter().zip(&row.cells);
            let moved = cells.filter(|(_, cell)| cell.does != Does::Stays);
            let moved: Vec<String> = moved.map(|(check, cell)| cell.spoken(check)).collect();
            let moved =
                if moved.is_empty() { t("moves nothing").to_owned() } else { moved.join("; ") };
            words.push_str(&format!(" {}: {moved}.", row.id));
        }
        words
    }
}

impl Cell {
    fn spoken(&self, check: &str) -> String {
        let own = if self.own { t(", its own check") } else { "" };
        let space = if self.number.is_empty() { "" } else { " " };
        format!("{check} {}{space}{}{own}", self.does.shown().1, self.number)
    }
}

/// The grid on the screen; with `on_choose` each pack can be chosen by its tag.
#[component]
pub fn InfluenceGrid(
    /// What each pack moves.
    #[prop(into)]
    grid: Signal<Grid>,
    /// The row that is told about beside the grid.
    #[prop(into, optional)]
    chosen: Signal<Option<usize>>,
    /// A row's tag was pressed.
    #[prop(optional)]
    on_choose: Option<Callback<usize>>,
) -> impl IntoView {
    let is_wide = Memo::new(move |_| grid.with(|grid| grid.checks.len() > FEW));
    let head = move || {
        let names = |grid: &Grid| [std::slice::from_ref(&grid.thicker), &grid.checks].concat();
        let cell = |name| view! { <th scope="col">{name}</th> }.into_any();
        grid.with(|grid| names(grid).into_iter().map(cell).collect::<Vec<_>>())
    };
    let rows = move || {
        let row = |(at, row): (usize, &Row)| line(at, row, chosen, on_choose);
        grid.with(|grid| grid.rows.iter().enumerate().map(row).collect::<Vec<_>>())
    };
    view! {
        // What slides must be in reach of the keys.
        <div class="inflbox" tabindex=move || is_wide.get().then_some("0")>
            <table class="infl" class:infl--wide=is_wide>
                <caption class="vh">{move || grid.with(Grid::spoken)}</caption>
                <thead>
                    <tr>{head}</tr>
                </thead>
                <tbody>{rows}</tbody>
            </table>
        </div>
    }
}

fn line(
    at: usize,
    row: &Row,
    chosen: Signal<Option<usize>>,
    on_choose: Option<Callback<usize>>,
) -> AnyView {
    let id = row.id.clone();
    let is_here = move || chosen.get() == Some(at);
    let tag = match on_choose {
        Some(choose) => view! {
            <button
                class="infl__tag"
                type="button"
                aria-pressed=move || is_here().to_string()
                on:click=move |_| choose.run(at)
            >
                <Tag words=id/>
            </button>
        }
        .into_any(),
        None => view! { <Tag words=id/> }.into_any(),
    };
    let cells = row.cells.iter().map(cell).collect::<Vec<_>>();
    view! {
        <tr class:here=is_here>
            <th scope="row">{tag}</th>
            {cells}
        </tr>
    }
    .into_any()
}

fn cell(cell: &Cell) -> AnyView {
    let (seen, spoken) = cell.does.shown();
    let is_hit = cell.does != Does::Stays;
    let percent = (cell.strength * 100.0).round() as i64;
    let number = (!cell.number.is_empty()).then(|| view! { <b>{cell.number.clone()}</b> });
    view! {
        <td class:hit=is_hit class:own=cell.own style:--n=percent.to_string()>
            {number}
            <span class="vh">{spoken}</span>
            <span aria-hidden="true">{seen}</span>
        </td>
    }
    .into_any()
}

#[cfg(test)]
mod tests {
    use wasm_bindgen_test::wasm_bindgen_test as test;

    use super::*;

    #[test]
    fn the_grid_is_spoken_pack_by_pack_with_its_numbers() {
        let cell =
            |own, number: &str, does| Cell { own, strength: 0.5, number: number.into(), does };
        let grid = Grid {
            thicker: "0.10 more".into(),
            checks: vec!["Depth gap".into(), "Forward lash".into(), "Torque".into()],
            rows: vec![
                Row {
                    id: "B1".into(),
                    cells: vec![
                        cell(true, "0.10", Does::Falls),
                        cell(false, "0.06", Does::named("grows")),
                        cell(false, "", Does::named("read again")),
                    ],
                },
                Row { id: "B4".into(), cells: vec![cell(false, "", Does::named("no effect"))] },
            ],
        };
        assert_eq!(
            grid.spoken(),
            "0.10 more at each pack. B1: Depth gap falls 0.10, its own check; Forward lash grows \
             0.06; Torque is read again. B4: moves nothing."
        );
    }
}
