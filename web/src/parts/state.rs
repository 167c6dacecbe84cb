//! State: a verdict or a status, as shape, edge and word.

use leptos::prelude::*;
use words::t;

use super::icon::{Glyph, Icon};

/// Which shape and edge a state has; the colour comes last.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sign {
    /// Circle and tick.
    In,
    /// Hatched diamond, dashed.
    Near,
    /// Filled octagon.
    Out,
    /// Broken link, dotted.
    Stale,
    /// Padlock.
    Lock,
    /// Half disc.
    Open,
}

impl Sign {
    /// The word this sign usually goes with.
    pub fn word(self) -> &'static str {
        match self {
            Self::In => t("In band"),
            Self::Near => t("Near limit"),
            Self::Out => t("Out"),
            Self::Stale => t("Stale"),
            Self::Lock => t("Locked"),
            Self::Open => t("Open"),
        }
    }

    fn class(self) -> &'static str {
        match self {
            Self::In => "state state--in",
            Self::Near => "state state--near",
            Self::Out => "state state--out",
            Self::Stale => "state state--stale",
            Self::Lock => "state state--lock",
            Self::Open => "state state--open",
        }
    }

    fn glyph(self) -> Glyph {
        match self {
            Self::In => Glyph::In,
            Self::Near => Glyph::Near,
            Self::Out => Glyph::Out,
            Self::Stale => Glyph::Stale,
            Self::Lock => Glyph::Lock,
            Self::Open => Glyph::Open,
        }
    }
}

/// A verdict or a status.
#[component]
pub fn State(
    /// Shape and edge.
    sign: Sign,
    /// The word, where it is not the usual one.
    #[prop(optional, into)]
    words: Option<String>,
) -> impl IntoView {
    view! {
        <span class=sign.class()>
            <Icon glyph=sign.glyph()/>
            {words.unwrap_or_else(|| sign.word().to_owned())}
        </span>
    }
}
