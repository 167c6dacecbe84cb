//! Every part in every state, for the builders and for the accessibility scan.
//! The numbers and names are invented.

mod controls;
mod numbers;
mod speech;
mod verdicts;
mod writing;

use leptos::prelude::*;

use crate::address::Screen;
use crate::parts::{Back, Dock, Jump, Place, Plate, UnitToggle};
use crate::pictures::gallery::Gallery;
use crate::prefs::{Theme, use_prefs};

/// The builders' page of that address.
pub fn states(screen: Screen) -> AnyView {
    match screen {
        Screen::Writing => writing::WritingScreen().into_any(),
        _ => StatesScreen().into_any(),
    }
}

/// Every part in every state.
#[component]
fn StatesScreen() -> impl IntoView {
    let prefs = use_prefs();
    let inches = RwSignal::new(false);
    let turn = Callback::new(move |()| inches.update(|it| *it = !*it));
    let other = move || if prefs.theme() == Theme::Shed { Theme::Sun } else { Theme::Shed };
    view! {
        <Plate title="Component states" subtitle="for the builders">
            <UnitToggle inches on_toggle=turn/>
        </Plate>
        <main class="main" id="main" tabindex="-1">
            <div class="head">
                <h1>"Component states"</h1>
                <p>"For the builders. Numbers and names are invented."</p>
            </div>
            <button class="btn" type="button" on:click=move |_| prefs.set_theme(other())>
                "The other theme"
            </button>
            <div class="cols sheetcols">
                <section class="col">
                    <verdicts::Verdicts/>
                    <verdicts::Gates/>
                    <speech::Undoing/>
                    <speech::Cautions/>
                </section>
                <section class="col">
                    <controls::Docks/>
                    <speech::Notices/>
                    <numbers::Fields/>
                </section>
                <section class="col">
                    <numbers::Series/>
                    <speech::Nothing/>
                    <speech::Loading/>
                    <controls::Buttons/>
                </section>
                <section class="col">
                    <controls::Grounds/>
                    <verdicts::Rows/>
                </section>
            </div>
            <h2>"Pictures"</h2>
            <Gallery/>
        </main>
        <Dock>
            <Back href="/" words="Bench"/>
            <Jump places=places()/>
        </Dock>
    }
}

/// An invented list of places.
fn places() -> Vec<Place> {
    let place = |words: &str, note: &str, href: &str| Place {
        words: words.to_owned(),
        note: note.to_owned(),
        href: href.to_owned(),
        here: href == "/states",
    };
    vec![
        place("Bench", "", "/"),
        place("Shim tin", "38", "/tin"),
        place("Settings", "", "/settings"),
        place("States", "here", "/states"),
    ]
}

/// A sheet of samples.
#[component]
fn Samples(
    /// What they are samples of.
    title: &'static str,
    children: Children,
) -> impl IntoView {
    view! {
        <div class="sheet sample">
            <h2>{title}</h2>
            {children()}
        </div>
    }
}

/// A press that does nothing.
fn nothing() -> Callback<()> {
    Callback::new(|()| {})
}
