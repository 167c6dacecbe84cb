//! From an empty page to the first screen.

use leptos::prelude::*;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::spawn_local;

use crate::address::Screen;
use crate::bench::Opened;
use crate::code::{NotHere, Piece, Pieces};
use crate::device::idle::BOARD;
use crate::device::now::now;
use crate::door;
use crate::language;
use crate::page;
use crate::parts::Icons;
use crate::place;
use crate::prefs::is_kiosk;
use crate::screens::ShutScreen;

#[wasm_bindgen]
extern "C" {
    /// Shows the crash card of `boot.js`.
    #[wasm_bindgen(catch, js_name = shimwrightCrash)]
    fn show_crash(seen: &str) -> Result<(), JsValue>;
}

/// Starts the app on the page. Until the books of the first screen are read, what the page came
/// with stands.
pub fn start(pieces: Pieces) {
    std::panic::set_hook(Box::new(|panic| {
        // A screen that stops the app must not be the one that a reload comes back to.
        place::forget();
        go_to("/");
        // Where even the card is missing, the trap that follows is all that can be shown.
        show_crash(&panic.to_string()).ok();
    }));
    if Opened::was_here() {
        // Code and words come while the store opens.
        spawn_local(async move {
            (pieces.work)().await.ok();
        });
        spawn_local(language::learn_rest());
    }
    spawn_local(async move {
        language::learn_first().await;
        match Opened::read().await {
            Ok(opened) => {
                wake();
                let path = window().location().pathname().unwrap_or_default();
                let at_door = matches!(Screen::of(&path), Screen::Bench | Screen::First);
                if at_door && opened.is_new() {
                    door::open(opened, pieces);
                    page::ready();
                    // The door is drawn first: what follows must not hold up what is read now.
                    request_animation_frame(move || {
                        request_animation_frame(move || fetch_ahead(pieces));
                    });
                } else if let Ok(open) = (pieces.work)().await {
                    language::learn_rest().await;
                    open(opened, pieces, false);
                } else {
                    mount_to_body(NotHere);
                    page::ready();
                }
            }
            Err(why) => {
                mount_to_body(move || {
                    view! {
                        <Icons/>
                        <ShutScreen why/>
                    }
                });
                page::ready();
            }
        }
    });
}

/// Every visit needs these sooner or later; whoever does asks again, and is told if it fails.
fn fetch_ahead(pieces: Pieces) {
    spawn_local(async move {
        (pieces.work)().await.ok();
        language::learn_rest().await;
        (pieces.other)(Piece::Guide).await.ok();
    });
}

/// On the bench's address, goes where the person stopped, before the router looks.
fn wake() {
    let on_bench = window().location().pathname().is_ok_and(|path| path == "/");
    let path = if is_kiosk() { Some(BOARD.to_owned()) } else { place::wake(now()) };
    if let Some(path) = path.filter(|_| on_bench) {
        go_to(&path);
    }
}

/// Changes the address without the router, which is not there yet or not any more.
fn go_to(path: &str) {
    if let Ok(history) = window().history() {
        // Refused, the address stays, which is never wrong.
        history.replace_state_with_url(&JsValue::NULL, "", Some(path)).ok();
    }
}
