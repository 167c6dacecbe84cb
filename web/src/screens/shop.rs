//! What stands around the screens that belong to no one job: tin, unit sheet, new job.

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use words::{say, t};

use crate::bench::{Bench, use_bench};
use crate::page;
use crate::parts::{
    Act, Back, Dock, DockedPad, Empty, Jump, Place, Plate, Rail, UndoBar, UndoLast,
};

use super::frame::{Here, UnitSwitch};

/// A screen of the shop: plate, places, what it shows, undo and the dock.
#[component]
pub fn ShopScreen(
    /// The name of the screen.
    #[prop(into)]
    title: String,
    /// What matters there now.
    subtitle: Signal<String>,
    /// Which of the places it is, if it is one.
    #[prop(optional)]
    here: Option<Here>,
    /// The unit sheet it is about, if it is about one.
    #[prop(optional)]
    sheet: Option<String>,
    /// Where back goes, and the name of that place.
    back: (String, &'static str),
    /// The one next act.
    act: AnyView,
    /// What the screen shows.
    children: Children,
) -> impl IntoView {
    let bench = use_bench();
    let turn = Callback::new(move |()| {
        spawn_local(async move {
            // Refused, the entry stands as the bar goes on saying.
            bench.turn_last().await.ok();
        });
    });
    let last = Signal::derive(move || bench.last());
    let places = Signal::derive(move || places(bench, here, sheet.as_deref()));
    let (href, words) = back;
    page::title(Signal::stored(title.clone()));
    view! {
        <Plate title subtitle>
            <UnitSwitch/>
        </Plate>
        <Rail places/>
        <main class="main" id="main" tabindex="-1">
            {children()}
            <UndoBar last on_turn=turn/>
        </main>
        <DockedPad/>
        <Dock>
            <Back href words/>
            {act}
            <Jump places>
                <UndoLast last on_turn=turn/>
            </Jump>
        </Dock>
    }
}

/// The places, in the order of the job; those of a job and of a sheet only where there is one.
pub fn places(bench: Bench, here: Option<Here>, sheet: Option<&str>) -> Vec<Place> {
    let job = bench.current_job();
    let of_job = job.as_ref().map(|job| job.sheet.clone());
    let sheet = sheet.map(str::to_owned).or(of_job).or_else(|| bench.first_sheet());
    let place = |words: &str, href: String, is: Option<Here>| Place {
        words: words.to_owned(),
        note: String::new(),
        href,
        here: is.is_some() && is == here,
    };
    let of_job = |screen: &str| job.as_ref().map(|job| format!("/job/{}/{screen}", job.id));
    let whole = job.as_ref().map(|job| (say!("Job {}", job.number), format!("/job/{}", job.id)));
    let tin = bench.tin().with(|tin| tin.count().to_string());
    [
        Some(place(t("Bench"), "/".to_owned(), None)),
        whole.map(|(words, href)| place(&words, href, Some(Here::Job))),
        of_job("step").map(|href| place(t("Step"), href, Some(Here::Step))),
        of_job("tools").map(|href| place(t("Tools"), href, Some(Here::Tools))),
        of_job("ladder").map(|href| place(t("Ladder"), href, Some(Here::Ladder))),
        of_job("inspect").map(|href| place(t("Judge"), href, Some(Here::Judge))),
        of_job("setup").map(|href| place(t("Set-up"), href, Some(Here::Setup))),
        of_job("check").map(|href| place(t("Checks"), href, Some(Here::Checks))),
        of_job("influence").map(|href| place(t("Map"), href, Some(Here::Map))),
        Some(Place { note: tin, ..place(t("Shim tin"), "/tin".to_owned(), Some(Here::Tin)) }),
        sheet.map(|id| place(t("Unit sheet"), format!("/sheet/{id}"), Some(Here::Sheet))),
        of_job("record").map(|href| place(t("Record"), href, Some(Here::Record))),
        Some(place(t("Settings"), "/settings".to_owned(), None)),
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// What stands where a sheet is not.
#[component]
pub fn NoSuchSheet() -> impl IntoView {
    view! {
        <Plate title=t("Unit sheet").to_owned() subtitle=t("Not here").to_owned()/>
        <main class="main" id="main" tabindex="-1">
            <h1 class="vh">{t("No such unit sheet")}</h1>
            <Empty
                title=t("No such unit sheet here.").to_owned()
                words=t("It may be on another device. Choose one for a new job.").to_owned()
            />
        </main>
        <Dock>
            <Back href="/" words=t("Bench")/>
            <Act words=t("New job").to_owned() href="/new-job"/>
        </Dock>
    }
}
