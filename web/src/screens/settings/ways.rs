//! How this person likes the screen: units, light, number entry.

use leptos::prelude::*;
use measure::Unit;

use crate::parts::{Pick, Seg, Setting};
use crate::prefs::{NumberEntry, Theme, use_prefs};

/// One of a few values, each with its word.
#[component]
fn OneOf<T: Copy + PartialEq + Send + Sync + 'static>(
    /// Its name among the groups of the page.
    id: &'static str,
    /// What is chosen here.
    label: &'static str,
    /// The values and their words.
    values: &'static [(T, &'static str)],
    /// The value now.
    chosen: Signal<T>,
    /// Chooses another.
    on_choose: Callback<T>,
) -> impl IntoView {
    let picks: Vec<Pick> = values.iter().map(|(_, words)| Pick::from(*words)).collect();
    let at = move || values.iter().position(|(value, _)| *value == chosen.get());
    let choose = Callback::new(move |at: usize| {
        if let Some((value, _)) = values.get(at) {
            on_choose.run(*value);
        }
    });
    view! { <Seg id label picks chosen=Signal::derive(at) on_choose=choose/> }
}

#[component]
pub fn Units() -> impl IntoView {
    let prefs = use_prefs();
    view! {
        <div class="sheet">
            <h2>"Units"</h2>
            <p class="dim">"For show only. Typed digits keep their unit."</p>
            <Setting title="Lash, depth, shims" beside=true>
                <OneOf
                    id="unit"
                    label="Unit of lash, depth and shims"
                    values=&[(Unit::Millimetre, "mm"), (Unit::Inch, "in")]
                    chosen=Signal::derive(move || prefs.unit())
                    on_choose=Callback::new(move |it| prefs.set_unit(it))
                />
            </Setting>
        </div>
    }
}

#[component]
pub fn Screen() -> impl IntoView {
    let prefs = use_prefs();
    view! {
        <div class="sheet">
            <h2>"Screen and numbers"</h2>
            <Setting title="Light" note="Auto follows the device">
                <OneOf
                    id="theme"
                    label="Light"
                    values=&[(Theme::Auto, "Auto"), (Theme::Sun, "Sun"), (Theme::Shed, "Shed")]
                    chosen=Signal::derive(move || prefs.theme())
                    on_choose=Callback::new(move |it| prefs.set_theme(it))
                />
            </Setting>
            <Setting title="Number entry" note="point and comma are both read">
                <OneOf
                    id="entry"
                    label="Number entry"
                    values=&[(NumberEntry::Pad, "App’s pad"), (NumberEntry::Phone, "Phone’s")]
                    chosen=Signal::derive(move || prefs.entry())
                    on_choose=Callback::new(move |it| prefs.set_entry(it))
                />
            </Setting>
        </div>
    }
}
