//! The unit sheets to choose from, and the start of a new one.

use std::sync::Arc;
use words::{say, t};

use job::{BookId, Fact, Sheet};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use super::{Form, PLACE, layouts};
use crate::address::use_address;
use crate::bench::{Bench, use_bench};
use crate::device::now::fresh_id;
use crate::draft::{Draft, use_draft};
use crate::parts::{Choice, Glyph, Icon, Says, TextField, live};

/// Chooses a unit sheet of the layout, or starts one.
#[component]
pub fn Sheets(form: Form) -> impl IntoView {
    let bench = use_bench();
    let name = use_draft(PLACE, "unit");
    let starting = RwSignal::new(!name.text_untracked().is_empty());
    let layout = Memo::new(move |_| form.layout_chosen(bench));
    let of_layout = move || {
        let layout = layout.get();
        let all = bench.sheets().into_iter();
        all.filter(|sheet| sheet.layout == layout).collect::<Vec<_>>()
    };
    let sheets = live(move || {
        let choices = of_layout().into_iter().map(|sheet| choice(bench, &sheet, form.sheet));
        view! {
            <div role="radiogroup" aria-label=t("Unit sheet")>
                {choices.collect::<Vec<_>>()}
            </div>
        }
        .into_any()
    });
    let must_start = Memo::new(move |_| starting.get() || of_layout().is_empty());
    let start = live(move || {
        if must_start.get() {
            view! { <NewSheet name form/> }.into_any()
        } else {
            let start = move |_| {
                starting.set(true);
                crate::page::lead_to("unit");
            };
            view! {
                <button class="btn btn--wide" type="button" on:click=start>
                    <Icon glyph=Glyph::Plus/>
                    {t("Start a new sheet")}
                </button>
            }
            .into_any()
        }
    });
    view! {
        <div class="sheet" id="sheets">
            <h2>{t("Unit sheet")}</h2>
            <p>
                {t("The limits you typed from your own manual. One sheet serves every unit that is the same.")}
            </p>
            {sheets}
            {start}
        </div>
    }
}

/// A sheet to choose, and the way into it.
fn choice(bench: Bench, sheet: &Arc<Sheet>, chosen: Draft) -> AnyView {
    let id = sheet.id.clone();
    let (typed, all) = sheet.typed();
    let used = match bench.every_job().iter().filter(|job| job.sheet == id).count() {
        0 => t("not used yet").to_owned(),
        1 => t("used once").to_owned(),
        times => say!("used {times} times"),
    };
    let note = say!("{} · {typed} of {all} values · {used}", layouts::name(&sheet.layout));
    let is_chosen = Signal::derive({
        let id = id.clone();
        move || chosen.text() == id
    });
    let choose = Callback::new({
        let id = id.clone();
        move |()| chosen.set(&id)
    });
    let title = sheet.name.clone();
    let open = live(move || match is_chosen.get() {
        true => view! {
            <a class="btn btn--plain btn--wide" href=format!("/sheet/{id}")>
                {t("Read or type in this sheet")}
            </a>
        }
        .into_any(),
        false => ().into_any(),
    });
    view! {
        <Choice group="unit-sheet" title note chosen=is_chosen on_choose=choose/>
        {open}
    }
    .into_any()
}

/// Asks what the unit is called, and opens its sheet.
#[component]
fn NewSheet(name: Draft, form: Form) -> impl IntoView {
    let bench = use_bench();
    let address = use_address();
    let refused = RwSignal::new(None::<String>);
    let start = Callback::new(move |()| {
        let id = fresh_id();
        let fact = Fact::SheetOpened {
            name: name.text_untracked().trim().to_owned(),
            layout: untrack(|| form.layout_chosen(bench)),
        };
        spawn_local(async move {
            match bench.record(vec![(BookId::Sheet(id.clone()), fact)]).await {
                Ok(_) => {
                    name.clear();
                    form.sheet.set(&id);
                    address.go(&format!("/sheet/{id}"));
                }
                Err(why) => drop(refused.try_set(Some(why.to_string()))),
            }
        });
    });
    let says = Signal::derive(move || refused.get().map(Says::Refused));
    let on_key = move |event: leptos::ev::KeyboardEvent| {
        if event.key() == "Enter" {
            event.prevent_default();
            start.run(());
        }
    };
    view! {
        <div on:keydown=on_key>
            <TextField id="unit" label=t("Name of the unit") value=name says/>
        </div>
        <button class="btn btn--wide" type="button" on:click=move |_| start.run(())>
            <Icon glyph=Glyph::Plus/>
            {t("Start this sheet")}
        </button>
    }
}
