//! Other packs than the advised ones: fewer to open, or surer.

use job::{Figure, FittedShim, OtherPacks, PackAct, Slot, figure, fit, other_packs};
use leptos::prelude::*;
use words::{say, t};

use super::Fitting;
use crate::bench::use_bench;
use crate::device::now::fresh_id;
use crate::parts::{live, press};

/// The other packs, once they are asked for: they take a search each.
#[component]
pub fn Others(fitting: Fitting) -> impl IntoView {
    live(move || match fitting.others.get() {
        true => list(fitting),
        false => ().into_any(),
    })
}

fn list(fitting: Fitting) -> AnyView {
    let found = fitting.of.look(other_packs).unwrap_or_default();
    let none = found.is_empty().then(|| {
        view! { <p>{t("No other packs from this tin come near.")}</p> }
    });
    let choices = found.into_iter().map(|it| choice(fitting, &it)).collect_view();
    view! {
        <div>
            <h3>{t("Other packs")}</h3>
            {none}
            {choices}
            <a class="btn btn--plain btn--wide" href="/tin">
                {t("Look into the tin")}
            </a>
        </div>
    }
    .into_any()
}

fn choice(fitting: Fitting, other: &OtherPacks) -> AnyView {
    let bench = use_bench();
    let shown = fitting.of.shown();
    let changed = || other.packs.iter().filter(|pack| pack.act == PackAct::Fit);
    let words: Vec<String> = changed()
        .map(|pack| format!("{} {}", pack.slot.tag(), figure(pack.total, Figure::Shim, shown)))
        .collect();
    let packs: Vec<(Slot, Vec<FittedShim>)> = changed()
        .map(|pack| (pack.slot, pack.shims.iter().map(|it| it.shim.clone()).collect()))
        .collect();
    let does: Vec<String> = changed().map(|pack| pack.says.clone()).collect();
    let packs = StoredValue::new(packs);
    let fitted = Callback::new(move |()| {
        let facts = fitting.of.look_once(|(job, sheet, tin), _| {
            packs.with_value(|packs| fit(job, sheet, tin, packs, fresh_id))
        });
        fitting.others.set(false);
        fitting.record(bench, facts.unwrap_or_default());
    });
    let way = (!words.is_empty()).then(|| {
        view! {
            <p class="small">{does.join(" ")}</p>
            <button class="btn btn--wide" type="button" on:click=press(fitted)>
                {say!("{} fitted", words.join(", "))}
            </button>
        }
    });
    view! {
        <div class="other">
            <p>
                <b>{other.says.clone()}</b>
            </p>
            {way}
        </div>
    }
    .into_any()
}
