//! How this person likes the screen: units, light, number entry.

use job::unit_choices;
use leptos::prelude::*;
use measure::{Quantity, Unit};
use words::{say, t};

use crate::parts::{Pick, Seg, Setting};
use crate::prefs::{Decimals, Language, NumberEntry, Stand, Theme, use_prefs};

/// Id of the group, what its units are of, a note, the quantity.
const UNITS: [(&str, &str, &str, Quantity); 5] = [
    ("unit", "Lash, depth, shims", "also switched on a job’s plate", Quantity::Length),
    ("unit-torque", "Torque", "rolling and fasteners", Quantity::Torque),
    ("unit-pressure", "Pressure and vacuum", "leak test", Quantity::Pressure),
    ("unit-temperature", "Temperature", "case, race, oil", Quantity::Temperature),
    ("unit-volume", "Lube", "drained and filled", Quantity::Volume),
];
const THEMES: [(Theme, &str); 3] =
    [(Theme::Auto, "Auto"), (Theme::Sun, "Sun"), (Theme::Shed, "Shed")];
const DECIMALS: [(Decimals, &str); 3] =
    [(Decimals::Auto, "Auto"), (Decimals::Point, "0.38"), (Decimals::Comma, "0,38")];
const ENTRIES: [(NumberEntry, &str); 2] =
    [(NumberEntry::Pad, "App’s pad"), (NumberEntry::Phone, "Phone’s")];

const STANDS: [(Stand, &str); 2] = [(Stand::Own, "Mine"), (Stand::Kiosk, "Shop kiosk")];

const LANGUAGES: [(Language, &str); 3] = [
    (Language::Device, "The device’s"),
    (Language::English, "English"),
    (Language::Spanish, "Español"),
];

/// One of a few values, each with its word; `id` tells it from the other groups of the page.
fn one_of<T: Copy + PartialEq + Send + Sync>(
    id: &'static str,
    label: &'static str,
    values: &'static [(T, &'static str)],
    chosen: impl Fn() -> T + Send + Sync + 'static,
    choose: impl Fn(T) + Send + Sync + 'static,
) -> AnyView {
    let picks: Vec<Pick> = values.iter().map(|(_, words)| Pick::from(t(words))).collect();
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
    view! {
        <div class="sheet">
            <h2>{t("Units")}</h2>
            <p class="dim">
                {t("What is shown, and what digits alone mean when you type. Typed digits keep their unit.")}
            </p>
            {UNITS.map(unit).into_iter().collect_view()}
            {decimals()}
        </div>
    }
}

fn decimals() -> AnyView {
    let prefs = use_prefs();
    let decimals = one_of(
        "decimals",
        t("Decimal mark shown"),
        &DECIMALS,
        move || prefs.decimals(),
        move |it| prefs.set_decimals(it),
    );
    view! {
        <Setting title=t("Decimal mark shown") note=t("both are read when typed")>
            {decimals}
        </Setting>
    }
    .into_any()
}

fn unit(
    (id, title, note, quantity): (&'static str, &'static str, &'static str, Quantity),
) -> AnyView {
    let (prefs, units, title, note) = (use_prefs(), unit_choices(quantity), t(title), t(note));
    let picks: Vec<Pick> = units.iter().map(|unit| Pick::from(unit.symbol())).collect();
    let is_chosen = move |unit: &Unit| prefs.units().of(*unit) == *unit;
    let chosen = Signal::derive(move || units.iter().position(is_chosen));
    let choose = Callback::new(move |at: usize| {
        if let Some(unit) = units.get(at) {
            prefs.set_unit(*unit);
        }
    });
    let label = say!("Unit: {title}");
    view! {
        <Setting title note beside=units.len() == 2>
            <Seg id label picks chosen on_choose=choose/>
        </Setting>
    }
    .into_any()
}

#[component]
pub fn Screen() -> impl IntoView {
    let prefs = use_prefs();
    let theme =
        one_of("theme", t("Light"), &THEMES, move || prefs.theme(), move |it| prefs.set_theme(it));
    let entry = one_of(
        "entry",
        t("Number entry"),
        &ENTRIES,
        move || prefs.entry(),
        move |it| prefs.set_entry(it),
    );
    let stand = one_of(
        "stand",
        t("This device"),
        &STANDS,
        move || prefs.stand(),
        move |it| prefs.set_stand(it),
    );
    let spoken = RwSignal::new(Language::kept_here());
    let speak = move |language: Language| {
        spoken.set(language);
        language.keep_here();
        // Texts are turned once, where they are drawn: what is half typed is a draft and survives.
        window().location().reload().ok();
    };
    let language = one_of("language", t("Language"), &LANGUAGES, move || spoken.get(), speak);
    view! {
        <div class="sheet">
            <h2>{t("Screen and numbers")}</h2>
            <Setting title=t("Language") note=t("a change starts the app again; nothing is lost")>
                {language}
            </Setting>
            <Setting title=t("Light") note=t("Auto follows the device")>
                {theme}
            </Setting>
            <Setting title=t("Number entry")>
                {entry}
            </Setting>
            <Setting title=t("This device") note=t("a kiosk opens on the board and goes back after 3 minutes")>
                {stand}
            </Setting>
        </div>
    }
}
