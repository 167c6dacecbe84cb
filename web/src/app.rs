//! Routes, and what stands around every screen.

use leptos::prelude::*;
use leptos_router::components::{FlatRoutes, Route, Router};
use leptos_router::hooks::{use_location, use_params_map};
use leptos_router::path;

use crate::bench::{Bench, Opened, use_bench};
use crate::device::awake::keep_awake;
use crate::device::install::Installer;
use crate::device::now::now;
use crate::device::protection::Protection;
use crate::draft::Drafts;
use crate::page;
use crate::parts::keys::device_mark;
use crate::parts::{Glyph, Icons, Keys, Notice, Skip};
use crate::pictures::PictureDefs;
use crate::place;
use crate::prefs::{NumberEntry, Prefs, Theme};
use crate::screens::{
    BenchScreen, FirstScreen, NewJobScreen, ReadingScreen, RecordScreen, SettingsScreen,
    SetupScreen, SheetScreen, StatesScreen, TinScreen,
};

/// The whole app.
#[component]
pub fn App(
    /// The store and what it holds.
    opened: Opened,
) -> impl IntoView {
    provide_context(Bench::new(opened));
    let prefs = Prefs::kept();
    let drafts = Drafts::default();
    provide_context(prefs);
    provide_context(drafts);
    provide_context(Installer::look());
    provide_context(Protection::look());
    let own_pad = Signal::derive(move || prefs.entry() == NumberEntry::Pad);
    let keys = Keys::provide(own_pad, device_mark().into());

    Effect::new(move |_| {
        page::set(
            "data-theme",
            match prefs.theme() {
                Theme::Auto => None,
                Theme::Sun => Some("sun"),
                Theme::Shed => Some("shed"),
            },
        );
    });
    let is_typing = move || drafts.held() || keys.open().with(Option::is_some);
    Effect::new(move |_| page::set("data-busy", is_typing().then_some("")));

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
    Effect::new(move |before: Option<()>| {
        path.with(|path| place::note(path, now()));
        if before.is_some() {
            // Once the new screen stands; a screen may have put the focus somewhere itself.
            request_animation_frame(page::focus_if_lost);
        }
    });
    view! {
        <Show when=move || in_job.get()>
            <Awake/>
        </Show>
        <Trouble/>
    }
}

/// What is wrong with the store as a whole.
#[component]
fn Trouble() -> impl IntoView {
    let bench = use_bench();
    let notice = |words: &'static str| {
        view! { <Notice glyph=Glyph::Warn title="Look here first." words due=true/> }
    };
    view! { <div role="alert">{move || bench.trouble().map(notice)}</div> }
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
        <FlatRoutes fallback=home>
            <Route path=path!("/") view=home/>
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

/// The bench; before anything was written down, the first opening.
fn home() -> AnyView {
    let bench = use_bench();
    let is_first = Memo::new(move |_| bench.is_empty());
    (move || if is_first.get() { FirstScreen().into_any() } else { BenchScreen().into_any() })
        .into_any()
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
