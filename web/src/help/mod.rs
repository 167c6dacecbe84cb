//! The help of every screen, and the short guide to print.
//!
//! All of it is a piece of code of its own: nothing here may be named by the rest of the app but
//! [`screen()`].

mod guide;
mod picture;
mod table;

use leptos::prelude::*;
use measure::Mark;
use words::t;

use crate::address::Screen;
use crate::parts::Keys;
use crate::pictures::Picture;
use table::{Help, help};

/// The help of a screen, or the guide.
pub fn screen(screen: Screen) -> AnyView {
    match screen {
        Screen::Help { of } => panel(&of),
        _ => guide::screen(),
    }
}

/// The decimal mark of the pictures; a new device has chosen none yet.
fn mark() -> Mark {
    use_context::<Keys>().map_or(Mark::Point, |keys| keys.mark.get_untracked())
}

/// Two sentences and a picture.
fn panel(of: &Screen) -> AnyView {
    let Help { title, what, how, shows } = help(of);
    let drawing = Signal::stored(picture::draw(shows, mark()));
    let guide = (*of != Screen::ShortGuide).then(|| {
        view! {
            <p>
                <a href="/guide">{t("The whole job in a short guide")}</a>
            </p>
        }
    });
    view! {
        <div class="help__pic">
            <Picture drawing/>
        </div>
        <div>
            <h2>{title}</h2>
            <p>{what} " " {how}</p>
            {guide}
        </div>
    }
    .into_any()
}
