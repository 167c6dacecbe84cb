//! Nobody is there any more: the shop's PIN is asked for again, and a kiosk goes back to its board.

use std::time::Duration;

use job::pin::stays_given;
use leptos::prelude::*;

use super::now::now;
use crate::address::use_address;
use crate::lock::use_lock;
use crate::prefs::{Stand, use_prefs};

/// The board of the shop.
pub const BOARD: &str = "/board";
/// So long after the last touch.
const IDLE: i64 = 3 * 60_000;
/// How often it is looked at.
const LOOK: Duration = Duration::from_secs(5);

/// Follows touches and keys. What is half typed is kept as a draft, so nothing is lost.
pub fn follow_idle() {
    let (prefs, address, lock) = (use_prefs(), use_address(), use_lock());
    let touched = StoredValue::new(now());
    let shut = move || {
        if !stays_given(touched.get_value(), now()) {
            lock.shut();
        }
    };
    for event in ["pointerdown", "keydown", "wheel"] {
        let listener = window_event_listener_untyped(event, move |_| {
            // A device that slept had no timer meanwhile.
            shut();
            touched.set_value(now());
        });
        on_cleanup(move || listener.remove());
    }
    let look = move || {
        shut();
        let idle = now() - touched.get_value() >= IDLE;
        let away = untrack(|| address.path()) != BOARD;
        if idle && away && untrack(|| prefs.stand()) == Stand::Kiosk {
            address.go(BOARD);
        }
    };
    // Without timers it stays where it is, as any device does.
    let timer = set_interval_with_handle(look, LOOK);
    on_cleanup(move || drop(timer.map(|timer| timer.clear())));
}
