//! Measures a shim in: two places, the micrometer's zero, how many alike.

use job::{Figure, ShimPreview, figure};
use leptos::prelude::*;
use words::{say, t};

use super::measured::{ALIKE, Measuring, Place};
use crate::parts::{Act, Field, Glyph, Icon, Pair, Pick, Seg, Sign, State, live};
use crate::shown::use_shown;

/// Measures a shim in.
#[component]
pub fn MeasureIn(measuring: Measuring, preview: Memo<ShimPreview>) -> impl IntoView {
    let unit = Memo::new(move |_| measuring.unit());
    let fields = live(move || {
        let unit = unit.get().symbol();
        let at = |place: Place| field(measuring, preview, place, unit);
        let (zero, marked) = (at(Place::Zero), at(Place::Marked));
        let (one, other) = (at(Place::One), at(Place::Other));
        view! {
            <Pair alone=true>{zero} {marked}</Pair>
            <Pair alone=true>{one} {other}</Pair>
        }
        .into_any()
    });
    let picks: Vec<Pick> = ALIKE.iter().map(|count| Pick::from(count.to_string())).collect();
    let alike = Signal::derive(move || Some(measuring.alike.get()));
    let choose = Callback::new(move |at| measuring.alike.set(at));
    let refused = live(move || measuring.refused.get().into_any());
    view! {
        <div class="sheet">
            <h2>{t("Add a shim")}</h2>
            <p class="small">
                {t("Measure at 2 places. Close the micrometer first: what it reads is taken off each shim.")}
            </p>
            {fields}
            {worth(preview)}
            <p class="label" aria-hidden="true">
                {t("How many alike")}
            </p>
            <Seg id="alike" label=t("How many alike") picks chosen=alike on_choose=choose/>
            {reject(measuring, preview)}
            <p class="msg msg--refused" role="status">
                {refused}
            </p>
        </div>
    }
}

fn field(
    measuring: Measuring,
    preview: Memo<ShimPreview>,
    place: Place,
    unit: &'static str,
) -> AnyView {
    let says = Signal::derive(move || preview.with(|preview| measuring.says(place, preview)));
    let placeholder = if place == Place::Marked { t("if it is") } else { "" };
    view! {
        <Field
            id=place.id()
            label=format!("{}, {unit}", place.label())
            value=measuring.text(place)
            says
            placeholder
            signed=place == Place::Zero
            unit=Signal::derive(move || Some(measuring.unit()))
        />
    }
    .into_any()
}

/// What goes in the tin, and whether it is even.
fn worth(preview: Memo<ShimPreview>) -> AnyView {
    let shown = use_shown();
    live(move || {
        let ShimPreview { shim: Some(shim), says, .. } = preview.get() else {
            return ().into_any();
        };
        let shown = shown.get();
        let (state, goes) = match shim.uneven {
            None => {
                let goes = say!("{} goes in the tin", shown.units.length);
                (view! { <State sign=Sign::In words=says/> }.into_any(), goes)
            }
            Some(why) => {
                let refused = view! {
                    <p class="msg msg--refused">
                        <Icon glyph=Glyph::Warn/>
                        <span>{why}</span>
                    </p>
                };
                (refused.into_any(), say!("{} is its mean", shown.units.length))
            }
        };
        view! {
            <div class="line">
                <span class="fig">{figure(shim.net, Figure::Shim, shown)}</span>
                <span>{goes}</span>
            </div>
            <div class="line" role="status">
                {state}
            </div>
        }
        .into_any()
    })
}

/// Sets a measured shim aside.
fn reject(measuring: Measuring, preview: Memo<ShimPreview>) -> AnyView {
    let is_read = Memo::new(move |_| preview.with(|preview| preview.shim.is_some()));
    let press = move |_| preview.with_untracked(|preview| measuring.reject(preview));
    live(move || match is_read.get() {
        false => ().into_any(),
        true => view! {
            <button class="btn btn--plain btn--wide" type="button" on:click=press>
                <Icon glyph=Glyph::Delete/>
                {t("Reject")}
            </button>
        }
        .into_any(),
    })
}

/// The one next act of the tin.
#[component]
pub fn PutIn(measuring: Measuring, preview: Memo<ShimPreview>) -> impl IntoView {
    let words = Signal::derive(move || preview.with(|preview| preview.words.clone()));
    let waits = Signal::derive(move || preview.with(|preview| preview.fact.is_none()));
    let lead = Callback::new(move |()| preview.with_untracked(|preview| measuring.lead(preview)));
    let press = Callback::new(move |()| {
        if let Some(fact) = preview.with_untracked(|preview| preview.fact.clone()) {
            measuring.put_in(fact);
        }
    });
    view! { <Act words waits busy=measuring.busy glyph=Glyph::Plus on_press=press on_waiting=lead/> }
}
