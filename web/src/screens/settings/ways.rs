//! How this person likes the screen: units, light, number entry.

use leptos::prelude::*;
use measure::Unit;

use crate::parts::{Pick, Seg, Setting};
use crate::prefs::{NumberEntry, Stand, Theme, use_prefs};

const UNITS: [(Unit, &str); 2] = [(Unit::Millimetre, "mm"), (Unit::Inch, "in")];
const THEMES: [(Theme, &str); 3] =
    [(Theme::Auto, "Auto"), (Theme::Sun, "Sun"), (Theme::Shed, "Shed")];
const ENTRIES: [(NumberEntry, &str); 2] =
    [(NumberEntry::Pad, "App’s pad"), (NumberEntry::Phone, "Phone’s")];

const STANDS: [(Stand, &str); 2] = [(Stand::Own, "Mine"), (Stand::Kiosk, "Shop kiosk")];

/// One of a few values, each with its word; `id` tells it from the other groups of the page.
fn one_of<T: Copy + PartialEq + Send + Sync>(
    id: &'static str,
    label: &'static str,
    values: &'static [(T, &'static str)],
    chosen: impl Fn() -> T + Send + Sync + 'static,
    choose: impl Fn(T) + Send + Sync + 'static,
) -> AnyView {
    let picks: Vec<Pick> = values.iter().map(|(_, words)| Pick::from(*words)).collect();
    let at = move || values.iter().position(|(value, _)| *value == chosen());
    let choose = Callback::new(move |at: usize| {
        if let Some((value, _)) = values.get(at) {
            choose(*value);
        }
    });
    view! { <Seg id label picks chosen=Signal::derive(at) on_choose=choose/> }.into_any()
}

#[component]
pub fn Units() -> impl IntoView {
    let prefs = use_prefs();
    let label = "Unit of lash, depth and shims";
    let unit = one_of("unit", label, &UNITS, move || prefs.unit(), move |it| prefs.set_unit(it));
    view! {
        <div class="sheet">
            <h2>"Units"</h2>
            <p class="dim">"For show only. Typed digits keep their unit."</p>
            <Setting title="Lash, depth, shims" beside=true>
                {unit}
            </Setting>
        </div>
    }
}

#[component]
pub fn Screen() -> impl IntoView {
    let prefs = use_prefs();
    let theme =
        one_of("theme", "Light", &THEMES, move || prefs.theme(), move |it| prefs.set_theme(it));
    let entry = one_of(
        "entry",
        "Number entry",
        &ENTRIES,
        move || prefs.entry(),
        move |it| prefs.set_entry(it),
    );
    let stand = one_of(
        "stand",
        "This device",
        &STANDS,
        move || prefs.stand(),
        move |it| prefs.set_stand(it),
    );
    view! {
        <div class="sheet">
            <h2>"Screen and numbers"</h2>
            <Setting title="Light" note="Auto follows the device">
                {theme}
            </Setting>
            <Setting title="Number entry" note="point and comma are both read">
                {entry}
            </Setting>
            <Setting title="This device" note="a kiosk opens on the board and goes back after 3 minutes">
                {stand}
            </Setting>
        </div>
    }
}
