//! Icons: one sprite for the page, used by name.

use leptos::prelude::*;

/// What an icon shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Glyph {
    /// Arrow to where one came from.
    Back,
    /// Arrow into a tray, upward: bring in.
    Bring,
    /// A camera.
    Camera,
    /// A mortarboard: practice.
    Cap,
    /// A clock.
    Clock,
    /// Delete the last character.
    Delete,
    /// Arrow onward.
    Go,
    /// Circle and tick: in band, done.
    In,
    /// Three lines: a list of places.
    Jump,
    /// Padlock.
    Lock,
    /// Hatched diamond: near a limit.
    Near,
    /// Turning arrow: a new version.
    New,
    /// No signal.
    Off,
    /// Half disc: open, not read.
    Open,
    /// Filled octagon: out.
    Out,
    /// A phone taking something in.
    Phone,
    /// Plus.
    Plus,
    /// A printer.
    Print,
    /// A ring: the shim tin.
    Ring,
    /// Arrow into a tray, downward: keep a copy.
    Save,
    /// Sliders: settings.
    Settings,
    /// Broken link: stale.
    Stale,
    /// Arrow that turns back.
    Undo,
    /// Triangle: take care.
    Warn,
}

impl Glyph {
    fn href(self) -> &'static str {
        match self {
            Self::Back => "#i-back",
            Self::Bring => "#i-bring",
            Self::Camera => "#i-cam",
            Self::Cap => "#i-cap",
            Self::Clock => "#i-clock",
            Self::Delete => "#i-del",
            Self::Go => "#i-go",
            Self::In => "#i-in",
            Self::Jump => "#i-jump",
            Self::Lock => "#i-lock",
            Self::Near => "#i-near",
            Self::New => "#i-new",
            Self::Off => "#i-off",
            Self::Open => "#i-open",
            Self::Out => "#i-out",
            Self::Phone => "#i-phone",
            Self::Plus => "#i-plus",
            Self::Print => "#i-print",
            Self::Ring => "#i-ring",
            Self::Save => "#i-save",
            Self::Settings => "#i-set",
            Self::Stale => "#i-stale",
            Self::Undo => "#i-undo",
            Self::Warn => "#i-warn",
        }
    }
}

/// The sprite all icons come from; stands once, at the root of the page.
#[component]
pub fn Icons() -> impl IntoView {
    view! {
        <svg
            class="defs"
            width="0"
            height="0"
            aria-hidden="true"
            focusable="false"
            inner_html=include_str!("icons.svg")
        ></svg>
    }
}

/// One icon, in the colour and size of the text round it. Silent: the words beside it say the same.
#[component]
pub fn Icon(
    /// What it shows.
    glyph: Glyph,
) -> impl IntoView {
    view! {
        <svg class="ic" aria-hidden="true">
            <use href=glyph.href()></use>
        </svg>
    }
}
