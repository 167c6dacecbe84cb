//! The screen of the address, and what stands around every screen.

use leptos::prelude::*;
use measure::Mark;
use words::t;

use crate::address::{Address, Screen, use_address};
use crate::bench::{Bench, Opened, use_bench};
use crate::code::{Code, Piece, Pieces, Visit, use_code};
use crate::device::awake::keep_awake;
use crate::device::idle::{BOARD, follow_idle};
use crate::device::install::Installer;
use crate::device::now::now;
use crate::device::protection::Protection;
use crate::draft::Drafts;
use crate::lock::{Lock, use_lock};
use crate::page;
use crate::parts::keys::device_mark;
use crate::parts::{Glyph, HelpOf, Icons, Keys, Notice, Skip, live};
use crate::pictures::PictureDefs;
use crate::place;
use crate::prefs::{Decimals, NumberEntry, Prefs};
use crate::screens::{
    Asked, BenchScreen, FirstScreen, InfluenceScreen, NewJobScreen, Practice, ReadingScreen,
    SetupScreen, SheetScreen, TinScreen,
};

/// Opens the app, with the practice job at once where that was asked for.
pub fn open(opened: Opened, pieces: Pieces, practice: bool) {
    mount_to_body(move || view! { <App opened pieces practice/> });
}

/// The whole app.
#[component]
pub fn App(
    /// The store and what it holds.
    opened: Opened,
    /// The code that comes later.
    pieces: Pieces,
    /// Whether to lay out the practice job at once.
    practice: bool,
) -> impl IntoView {
    provide_context(Code::of(pieces));
    provide_context(Visit(Owner::current()));
    provide_context(Asked(StoredValue::new(practice)));
    provide_context(Address::follow());
    let (bench, protection) = (Bench::new(opened), Protection::look());
    provide_context(bench);
    let prefs = Prefs::kept();
    let drafts = Drafts::default();
    provide_context(prefs);
    provide_context(drafts);
    provide_context(Lock::look());
    provide_context(Installer::look());
    provide_context(protection);
    Effect::new(move |_| {
        if bench.saved_at().is_some() {
            protection.ask_once();
        }
    });
    let own_pad = Signal::derive(move || prefs.entry() == NumberEntry::Pad);
    let device = device_mark();
    let mark = Signal::derive(move || match prefs.decimals() {
        Decimals::Auto => device,
        Decimals::Point => Mark::Point,
        Decimals::Comma => Mark::Comma,
    });
    let keys = Keys::provide(own_pad, mark);

    page::follow_theme(prefs);
    follow_idle();
    let is_typing = move || drafts.held() || keys.open().with(Option::is_some);
    Effect::new(move |_| page::set("data-busy", is_typing().then_some("")));

    view! {
        <Icons/>
        <PictureDefs/>
        <Skip/>
        <Around/>
        <Screens/>
    }
}

/// What stands around every screen.
#[component]
fn Around() -> impl IntoView {
    let address = use_address();
    let in_job = Memo::new(move |_| {
        let path = address.path();
        path.starts_with("/job/") || path == BOARD
    });
    Effect::new(move |before: Option<()>| {
        place::note(&address.path(), now());
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
        <Waits/>
    }
}

/// What waits in the job, on the screens that have no place for it.
#[component]
fn Waits() -> impl IntoView {
    let (address, code) = (use_address(), use_code());
    let job = Memo::new(move |_| Screen::of(&address.path()).waiting_job().map(str::to_owned));
    live(move || match job.get() {
        Some(job) => code.built(Piece::Guide).map(|build| build(Screen::Waits { job })).into_any(),
        None => ().into_any(),
    })
}

/// What is wrong with the store as a whole.
#[component]
fn Trouble() -> impl IntoView {
    let bench = use_bench();
    let notice = |words: &'static str| {
        view! {
            <Notice glyph=Glyph::Warn title=t("Look here first.") words due=true>
                <a class="btn" href="/settings">
                    {t("Settings and backup")}
                </a>
            </Notice>
        }
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
    let (address, bench, code, lock) = (use_address(), use_bench(), use_code(), use_lock());
    let screen = Memo::new(move |_| match Screen::of(&address.path()) {
        Screen::Bench if bench.is_empty() => Screen::First,
        screen if lock.is_open() => screen,
        screen => screen.locked().unwrap_or(screen),
    });
    provide_context(HelpOf(screen.into()));
    // A screen that stands stays while a book that another tab began is read.
    let open = Memo::new(move |before: Option<&(Screen, bool)>| {
        let screen = screen.get();
        let stood = before.is_some_and(|(was, stood)| *stood && *was == screen);
        let is_open = bench.is_open_for(&screen) || stood;
        (screen, is_open)
    });
    Effect::new(move |said: Option<bool>| {
        let (_, stands) = open.get();
        let said = said.unwrap_or_default();
        if stands && !said {
            page::ready();
            code.ahead(Piece::Guide);
        }
        stands || said
    });
    move || match open.get() {
        // Its books are read within a moment.
        (_, false) => ().into_any(),
        (screen, true) => shown(screen, code),
    }
}

fn shown(screen: Screen, code: Code) -> AnyView {
    match screen {
        Screen::Bench => BenchScreen().into_any(),
        Screen::First => view! { <FirstScreen><Practice/></FirstScreen> }.into_any(),
        Screen::NewJob => NewJobScreen().into_any(),
        Screen::SetUp { job } => view! { <SetupScreen job/> }.into_any(),
        Screen::Reading { job, check } => view! { <ReadingScreen job check/> }.into_any(),
        Screen::Influence { job } => view! { <InfluenceScreen job/> }.into_any(),
        Screen::Sheet { sheet } => view! { <SheetScreen sheet/> }.into_any(),
        Screen::Tin => TinScreen().into_any(),
        screen @ (Screen::Job { .. }
        | Screen::Step { .. }
        | Screen::OwnSteps { .. }
        | Screen::OpenMap { .. }
        | Screen::Ladder { .. }
        | Screen::Inspect { .. }
        | Screen::Consent { .. }
        | Screen::Tools { .. }
        | Screen::Freeze { .. }
        | Screen::Board
        | Screen::Card { .. }
        | Screen::Next { .. }
        | Screen::Waits { .. }) => code.show(Piece::Guide, screen),
        screen @ Screen::Record { .. } => code.show(Piece::Paper, screen),
        screen @ (Screen::ShortGuide | Screen::Help { .. }) => code.show(Piece::Help, screen),
        screen @ Screen::Practice => code.show(Piece::Practice, screen),
        screen @ (Screen::Checks { .. } | Screen::BenchCheck { .. }) => {
            code.show(Piece::Instruments, screen)
        }
        screen @ (Screen::States | Screen::Writing) => code.show(Piece::Builders, screen),
        screen @ (Screen::Settings
        | Screen::Find
        | Screen::Archive { .. }
        | Screen::BringIn
        | Screen::Locked { .. }
        | Screen::SendJob { .. }
        | Screen::SendSheet { .. }) => code.show(Piece::Keep, screen),
    }
}
