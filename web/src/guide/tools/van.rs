//! The van list: by what things are for, each ticked when it is packed.

use job::Readied;
use job::guide::{Item, VanGroup};
use job::item_words;
use leptos::prelude::*;
use words::{say, t};

use super::super::checkpoint::checkpoint;
use super::missing;
use super::state::Loading;
use crate::parts::{Act, Caution, Glyph, Tick, live, whether, words};

/// The group that stands beside what is missing.
const MEASURE: &str = "Measure";

/// The two columns of the list.
pub fn cols(loading: Loading) -> AnyView {
    let title = words(move || {
        let boat = loading.guide.of.look(|(job, ..), _| job.boat.clone()).unwrap_or_default();
        say!("Pack for {boat}")
    });
    let from = words(move || {
        let steps = loading.guide.look(|plan, _, _| plan.steps.len()).unwrap_or_default();
        let packed = loading.look(|van| say!("{} of {} packed.", van.packed, van.count));
        let packed = packed.unwrap_or_default();
        say!("From the {steps} steps of this unit and your drawer. {packed}")
    });
    view! {
        <div class="cols">
            <section class="col">
                <div class="head">
                    <h1>{title}</h1>
                    <p>{from}</p>
                </div>
                {live(move || missing::sheet(loading))}
                {live(move || groups(loading, true))}
            </section>
            <section class="col">
                {live(move || groups(loading, false))}
                {live(move || gate(loading))}
            </section>
        </div>
    }
    .into_any()
}

/// The first group beside what is missing, the rest in the other column.
fn groups(loading: Loading, first: bool) -> AnyView {
    let groups = loading.look(|van| van.groups.clone()).unwrap_or_default();
    let groups = groups.into_iter().filter(|group| (group.name == MEASURE) == first);
    let sheets: Vec<AnyView> = groups.map(|group| sheet(loading, group)).collect();
    sheets.into_any()
}

fn sheet(loading: Loading, group: VanGroup) -> AnyView {
    let packed = say!("{packed} of {count}", packed = group.packed, count = group.items.len());
    let ticks: Vec<AnyView> = group.items.into_iter().map(|item| tick(loading, item)).collect();
    view! {
        <div class="sheet">
            <div class="h">
                <h2>{t(group.name)}</h2>
                <small>{packed}</small>
            </div>
            {ticks}
        </div>
    }
    .into_any()
}

fn tick(loading: Loading, item: Item) -> AnyView {
    let notes = [item.says.clone(), item.asked_in()];
    let notes: Vec<String> = notes.into_iter().filter(|note| !note.is_empty()).collect();
    let (title, packed) = (capital(&item.words()), item.is_packed());
    let turn = Callback::new(move |ticked| {
        let how = if ticked { Readied::Packed } else { Readied::Unpacked };
        loading.ready(&item.name, how, "");
    });
    let note = Signal::stored(notes.join(" · "));
    view! { <Tick title note ticked=whether(move || packed) on_turn=turn/> }.into_any()
}

/// The name of a tool at the start of a row.
pub fn capital(name: &str) -> String {
    let mut letters = t(name).chars();
    let first = letters.next().map(|first| first.to_uppercase().collect::<String>());
    first.unwrap_or_default() + letters.as_str()
}

fn gate(loading: Loading) -> AnyView {
    let Some((doubts, to_do)) = loading.look(|van| (van.doubts.clone(), van.to_do.clone())) else {
        return ().into_any();
    };
    let doubt = |words: String| view! { <Caution title=t("Shim sizes:") words/> };
    let doubts = doubts.into_iter().map(doubt).collect_view();
    let words = t("Ticked against this unit’s steps; borrowed ones have a name.");
    view! {
        {doubts}
        {loading.acting.says()}
        {checkpoint(t("Gate: van packed."), words, &to_do)}
    }
    .into_any()
}

/// The one next act: pack the next thing.
pub fn act(loading: Loading) -> AnyView {
    match loading.look(|van| van.next.clone()).flatten() {
        Some(next) => {
            let words = say!("Packed: {next}", next = item_words(&next));
            let press = Callback::new(move |()| loading.ready(&next, Readied::Packed, ""));
            view! { <Act words busy=loading.acting.busy glyph=Glyph::In on_press=press/> }
                .into_any()
        }
        None => {
            let job = loading.guide.of.at_job();
            view! { <Act words=t("Job") href=Signal::stored(job)/> }.into_any()
        }
    }
}
