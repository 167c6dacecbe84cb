//! Time and fresh names. Everything else takes them as arguments.

use std::time::Duration;

use leptos::prelude::*;

use crate::scratch;

/// Milliseconds since 1970, UTC.
pub fn now() -> i64 {
    js_sys::Date::now() as i64
}

/// Minutes that local time is ahead of UTC, at a moment in milliseconds since 1970.
pub fn utc_offset_minutes(at: i64) -> i32 {
    -(js_sys::Date::new(&(at as f64).into()).get_timezone_offset() as i32)
}

/// The time, followed in steps of half a minute while the caller is on the screen.
pub fn use_now() -> ReadSignal<i64> {
    use_now_each(Duration::from_secs(30))
}

/// The time, followed in steps of one second while the caller is on the screen.
pub fn use_seconds() -> ReadSignal<i64> {
    use_now_each(Duration::from_secs(1))
}

fn use_now_each(step: Duration) -> ReadSignal<i64> {
    let (shown, tick) = signal(now());
    let timer = set_interval_with_handle(move || tick.set(now()), step);
    on_cleanup(move || {
        if let Ok(timer) = timer {
            timer.clear();
        }
    });
    shown
}

/// A name that no other entry, book or device has.
pub fn fresh_id() -> String {
    // Without a secure context there is no `randomUUID`; the app does not start there.
    web_sys::window()
        .and_then(|window| window.crypto().ok())
        .map(|crypto| crypto.random_uuid())
        .unwrap_or_default()
}

/// This device's name, made at the first start.
///
/// It may be lost: a device with a new name goes on counting where the books stand.
pub fn device_id() -> String {
    const KEY: &str = "device";
    scratch::read(KEY).unwrap_or_else(|| {
        let id = fresh_id();
        scratch::write(KEY, &id);
        id
    })
}
