//! Code that comes when it is needed, and what stands where it has not come.

use std::pin::Pin;
use words::t;

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use crate::address::Screen;
use crate::bench::Opened;
use crate::parts::{Back, Dock, Glyph, Notice, Plate};

/// A piece of code did not come, as with no signal before the app is kept on the device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct NotCome;

/// A piece on its way.
pub type Coming<T> = Pin<Box<dyn Future<Output = Result<T, NotCome>>>>;

/// Opens the app, with the practice job at once where that was asked for.
pub type Open = fn(Opened, Pieces, bool);

/// Builds any screen of its piece.
pub type Build = fn(Screen) -> AnyView;

/// Screens that are used together and come together.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Piece {
    /// The builders' pages.
    Builders,
    /// The guided job.
    Guide,
    /// Help, and the short guide.
    Help,
    /// The bench checks.
    Instruments,
    /// Settings, and what goes out and comes in as a file.
    Keep,
    /// The record, on the screen and as a file.
    Paper,
    /// The practice unit.
    Practice,
}

/// Where the pieces come from. Asked for again, a piece that has come costs nothing.
#[derive(Clone, Copy)]
pub struct Pieces {
    /// Everything behind the first page that is not in a piece of its own.
    pub work: fn() -> Coming<Open>,
    /// One of the others.
    pub other: fn(Piece) -> Coming<Build>,
}

/// The life of the whole app, in context of every screen: for what outlives one of them.
#[derive(Clone)]
pub struct Visit(pub Option<Owner>);

/// What has come, in context of every screen.
#[derive(Clone, Copy)]
pub struct Code {
    pieces: Pieces,
    builders: RwSignal<Option<Build>>,
    guide: RwSignal<Option<Build>>,
    help: RwSignal<Option<Build>>,
    instruments: RwSignal<Option<Build>>,
    keep: RwSignal<Option<Build>>,
    paper: RwSignal<Option<Build>>,
    practice: RwSignal<Option<Build>>,
    missing: RwSignal<bool>,
}

impl Code {
    /// Nothing has come yet.
    pub fn of(pieces: Pieces) -> Code {
        Code {
            pieces,
            builders: RwSignal::new(None),
            guide: RwSignal::new(None),
            help: RwSignal::new(None),
            instruments: RwSignal::new(None),
            keep: RwSignal::new(None),
            paper: RwSignal::new(None),
            practice: RwSignal::new(None),
            missing: RwSignal::new(false),
        }
    }

    /// Asks for a piece that will be needed sooner or later; whoever needs it asks again, and is
    /// told if it fails.
    pub fn ahead(self, piece: Piece) {
        spawn_local(async move {
            (self.pieces.other)(piece).await.ok();
        });
    }

    /// A screen of a piece, or what stands there until its code has come.
    pub fn show(self, piece: Piece, screen: Screen) -> AnyView {
        if let Some(build) = self.built(piece) {
            return build(screen);
        }
        let missing = self.missing;
        view! {
            <Show when=move || missing.get()>
                <NotHere/>
            </Show>
        }
        .into_any()
    }

    /// Whether a piece was asked for and did not come; followed.
    pub fn is_missing(self) -> bool {
        self.missing.get()
    }

    /// What builds the screens of a piece, once it has come; asks for it where it has not.
    /// Followed.
    pub fn built(self, piece: Piece) -> Option<Build> {
        let place = match piece {
            Piece::Builders => self.builders,
            Piece::Guide => self.guide,
            Piece::Help => self.help,
            Piece::Instruments => self.instruments,
            Piece::Keep => self.keep,
            Piece::Paper => self.paper,
            Piece::Practice => self.practice,
        };
        let here = place.get();
        if here.is_some() {
            return here;
        }
        spawn_local(async move {
            match (self.pieces.other)(piece).await {
                Ok(build) => place.set(Some(build)),
                Err(NotCome) => self.missing.set(true),
            }
        });
        None
    }
}

/// The code from context.
pub fn use_code() -> Code {
    expect_context()
}

/// Stands in for a screen whose code did not come.
#[component]
pub fn NotHere() -> impl IntoView {
    view! {
        <Plate title=t("Shimwright") subtitle=t("Opening")/>
        <main class="main" id="main" tabindex="-1">
            <Notice
                glyph=Glyph::Warn
                title=t("This screen has not come yet.")
                words=t("It needs a signal once. Find one, then reload; nothing is lost.")
                due=true
            />
        </main>
        <Dock>
            <Back href="/" words=t("Bench")/>
        </Dock>
    }
}
