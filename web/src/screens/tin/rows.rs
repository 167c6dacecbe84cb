//! The shims of one family, counted up and down.

use std::sync::Arc;
use words::{say, t};

use job::{BookId, Counted, Fact, Family, Figure, Shown, Tin, TinRow, figure};
use leptos::prelude::*;
use measure::real;
use wasm_bindgen_futures::spawn_local;

use crate::bench::{Bench, use_bench};
use crate::parts::{Caution, Empty, live};
use crate::pictures::Picture;
use crate::pictures::tin::ring;
use crate::shown::use_shown;

/// Why a shim was not counted, and how many entries there were then: the next one makes it old.
type Refused = RwSignal<Option<(String, usize)>>;

/// The rows of a family.
pub fn rows(tin: Memo<Arc<Tin>>, family: Family) -> AnyView {
    let (bench, shown) = (use_bench(), use_shown());
    let refused = Refused::new(None);
    let title = format!("{}: {}", family.tag(), family.words());
    let rows = Memo::new(move |_| tin.with(|tin| tin.rows(family.name)));
    let count = live(move || rows.with(|rows| in_all(rows)).into_any());
    let list = live(move || {
        let shown = shown.get();
        let rows = rows.get();
        if rows.is_empty() {
            let title = t("No shim of this kind yet.").to_owned();
            return view! { <Empty title words=t("Measure the first one in.").to_owned()/> }
                .into_any();
        }
        rows.into_iter().map(|it| row(bench, it, shown, refused)).collect::<Vec<_>>().into_any()
    });
    let none_left = live(move || rows.with(|rows| none_left(rows, shown.get())));
    let words = live(move || {
        let still = refused.get().filter(|(_, entries)| *entries == bench.entries());
        still.map(|(why, _)| why).into_any()
    });
    view! {
        <div class="sheet">
            <div class="h">
                <h2>{title}</h2>
                <span class="nowrap">{count}</span>
            </div>
            {list}
            <p class="msg msg--refused" role="status">
                {words}
            </p>
        </div>
        {none_left}
    }
    .into_any()
}

fn in_all(rows: &[TinRow]) -> String {
    match rows.iter().map(|row| row.count).fold(0, u32::saturating_add) {
        1 => t("1 shim").to_owned(),
        count => say!("{count} shims"),
    }
}

/// One thickness.
fn row(bench: Bench, row: TinRow, shown: Shown, refused: Refused) -> AnyView {
    let net = figure(row.net, Figure::Shim, shown);
    let class = if row.count == 0 { "tinrow tinrow--none" } else { "tinrow" };
    let count = |why: Counted, change: i32, sign: &'static str, spoken: String| {
        let shim = row.shim.clone();
        let press = move |_| take(bench, shim.clone(), change, why.clone(), refused);
        view! {
            <button
                class="btn btn--plain"
                type="button"
                aria-label=spoken
                on:click=press
            >
                {sign}
            </button>
        }
    };
    let out = count(Counted::Lost, -1, "−", say!("Take one {net} out"));
    let back = count(Counted::Found, 1, "+", say!("Put one {net} in"));
    view! {
        <div class=class>
            <Picture drawing=ring(real::from_decimal(row.net), row.count)/>
            <p>
                <b class="tinrow__net">{net.clone()}</b>
                <br/>
                <span class="small">{about(&row, shown)}</span>
            </p>
            {out}
            <span class="count">{row.count}</span>
            {back}
        </div>
    }
    .into_any()
}

/// "marked 0.30 · 2 in the case".
fn about(row: &TinRow, shown: Shown) -> String {
    let marked = row.marked.as_ref().map(|marked| {
        let unit = marked.unit();
        let written =
            if unit == shown.units.length { marked.text().to_owned() } else { marked.to_string() };
        say!("marked {written}")
    });
    let in_cases = match row.in_cases {
        0 => None,
        some => Some(say!("{some} in a case")),
    };
    let none = (row.count == 0).then(|| t("none left").to_owned());
    let parts = [marked, in_cases, none, row.not_offered.clone()];
    parts.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

fn take(bench: Bench, shim: String, change: i32, why: Counted, refused: Refused) {
    let fact = Fact::ShimsCounted { shim, change, why };
    spawn_local(async move {
        let outcome = bench.record(vec![(BookId::Tin, fact)]).await;
        let entries = untrack(|| bench.entries());
        refused.try_set(outcome.err().map(|why| (why.to_string(), entries)));
    });
}

/// Says which sizes have run out.
fn none_left(rows: &[TinRow], shown: Shown) -> AnyView {
    let gone: Vec<String> = rows
        .iter()
        .filter(|row| row.count == 0)
        .map(|row| figure(row.net, Figure::Shim, shown))
        .collect();
    if gone.is_empty() {
        return ().into_any();
    }
    let title = say!("No {} left.", gone.join(", no "));
    let words = t("The advice leaves this size out until one is counted in.").to_owned();
    view! { <Caution title words/> }.into_any()
}
