//! Starting, routes, and what stands around every screen.

use leptos::prelude::*;
use leptos_router::components::{FlatRoutes, Route, Router};
use leptos_router::hooks::{use_location, use_params_map};
use leptos_router::path;
use wasm_bindgen::prelude::*;

use crate::device::awake::keep_awake;
use crate::device::install::Installer;
use crate::device::now::now;
use crate::device::protection::Protection;
use crate::draft::Drafts;
use crate::parts::keys::device_mark;
use crate::parts::{Icons, Keys, Skip};
use crate::pictures::PictureDefs;
use crate::place;
use crate::prefs::{NumberEntry, Prefs, Theme};
use crate::screens::{
    BenchScreen, FirstScreen, NewJobScreen, ReadingScreen, RecordScreen, SettingsScreen,
    SetupScreen, SheetScreen, StatesScreen, TinScreen,
};

#[wasm_bindgen]
extern "C" {
    /// Shows the crash card of `boot.js`.
    #[wasm_bindgen(catch, js_name = shimwrightCrash)]
    fn show_crash(seen: &str) -> Result<(), JsValue>;
}

/// Starts the app on the page.
pub fn start() {
    std::panic::set_hook(Box::new(|panic| {
        // Where even the card is missing, the trap that follows is all that can be shown.
        show_crash(&panic.to_string()).ok();
    }));
    wake();
    mount_to_body(App);
    ready();
}

/// On the bench's address, goes where the person stopped, before the router looks.
fn wake() {
    let on_bench = window().location().pathname().is_ok_and(|path| path == "/");
    if let Some(path) = place::wake(now()).filter(|_| on_bench)
        && let Ok(history) = window().history()
    {
        // Refused, the app opens on the bench.
        history.replace_state_with_url(&JsValue::NULL, "", Some(&path)).ok();
    }
}

/// Takes the place of the static shell, and says so to `boot.js` and to whoever measures.
fn ready() {
    if let Some(shell) = document().get_element_by_id("shell") {
        shell.remove();
    }
    set_on_page("ready", Some(""));
    if let Some(performance) = window().performance() {
        performance.mark("app-ready").ok();
    }
}

/// Sets or takes away a `data-` attribute of the page.
fn set_on_page(name: &str, value: Option<&str>) {
    let Some(page) = document().document_element() else { return };
    let name = format!("data-{name}");
    // The names are ours and fit to be attribute names, so neither is ever refused.
    match value {
        Some(value) => page.set_attribute(&name, value).ok(),
        None => page.remove_attribute(&name).ok(),
    };
}

/// The whole app.
#[component]
fn App() -> impl IntoView {
    let prefs = Prefs::kept();
    let drafts = Drafts::default();
    provide_context(prefs);
    provide_context(drafts);
    provide_context(Installer::look());
    provide_context(Protection::look());
    let own_pad = Signal::derive(move || prefs.entry() == NumberEntry::Pad);
    Keys::provide(own_pad, device_mark().into());

    Effect::new(move |_| {
        set_on_page(
            "theme",
            match prefs.theme() {
                Theme::Auto => None,
                Theme::Sun => Some("sun"),
                Theme::Shed => Some("shed"),
            },
        );
    });
    Effect::new(move |_| set_on_page("busy", drafts.held().then_some("")));

    view! {
        <Icons/>
        <PictureDefs/>
        <Skip/>
        <Router>
            <Around/>
            <Screens/>
        </Router>
    }
}

/// What stands around every screen.
#[component]
fn Around() -> impl IntoView {
    let path = use_location().pathname;
    let in_job = Memo::new(move |_| path.with(|path| path.starts_with("/job/")));
    Effect::new(move |_| path.with(|path| place::note(path, now())));
    view! { <Show when=move || in_job.get()><Awake/></Show> }
}

/// Keeps the screen lit.
#[component]
fn Awake() -> impl IntoView {
    keep_awake();
}

/// The screen of the address.
#[component]
fn Screens() -> impl IntoView {
    view! {
        <FlatRoutes fallback=|| BenchScreen().into_any()>
            <Route path=path!("/") view=|| BenchScreen().into_any()/>
            <Route path=path!("/first") view=|| FirstScreen().into_any()/>
            <Route path=path!("/new-job") view=|| NewJobScreen().into_any()/>
            <Route path=path!("/job/:id/setup") view=|| by_id(|job| view! { <SetupScreen job/> }.into_any())/>
            <Route path=path!("/job/:id/read/:check") view=reading/>
            <Route path=path!("/job/:id/record") view=|| by_id(|job| view! { <RecordScreen job/> }.into_any())/>
            <Route path=path!("/sheet/:id") view=|| by_id(|sheet| view! { <SheetScreen sheet/> }.into_any())/>
            <Route path=path!("/tin") view=|| TinScreen().into_any()/>
            <Route path=path!("/settings") view=|| SettingsScreen().into_any()/>
            <Route path=path!("/states") view=|| StatesScreen().into_any()/>
        </FlatRoutes>
    }
}

/// Builds a screen anew whenever the address names another job or sheet.
fn by_id(screen: impl Fn(String) -> AnyView + Send + 'static) -> AnyView {
    let id = part("id");
    (move || screen(id.get())).into_any()
}

fn reading() -> AnyView {
    let (job, check) = (part("id"), part("check"));
    (move || view! { <ReadingScreen job=job.get() check=check.get()/> }.into_any()).into_any()
}

/// A named part of the address.
fn part(name: &'static str) -> Memo<String> {
    let parts = use_params_map();
    Memo::new(move |_| parts.with(|parts| parts.get(name).unwrap_or_default()))
}
