//! Makes itself noticed: a buzz and a tone, where the device has them.

use js_sys::{Array, Function, Promise, Reflect};
use leptos::prelude::*;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::AudioContext;

/// Long, short, long: milliseconds of buzz and pause.
const BUZZ: [u32; 5] = [400, 150, 150, 150, 400];
/// A tone that is heard over a shop: hertz.
const PITCH: f32 = 880.0;
/// Seconds.
const LONG: f64 = 0.8;

/// Buzzes and sounds once. A device that has neither stays quiet; the words on the screen do not.
pub fn alert() {
    let pattern: Array = BUZZ.iter().map(|length| JsValue::from(*length)).collect();
    window().navigator().vibrate_with_pattern(&pattern);
    // A page that nobody has touched yet may not sound.
    sound().ok();
}

/// Shows a number at the app's icon, where the device has that; none for 0.
pub fn badge(count: usize) {
    let navigator = JsValue::from(window().navigator());
    let set = Reflect::get(&navigator, &"setAppBadge".into()).ok();
    let Some(set) = set.and_then(|set| set.dyn_into::<Function>().ok()) else { return };
    // Refused, the words on the screen still say it; with 0 the browser takes the badge away.
    if let Ok(Ok(promise)) =
        set.call1(&navigator, &(count as u32).into()).map(JsCast::dyn_into::<Promise>)
    {
        wasm_bindgen_futures::spawn_local(async move { drop(JsFuture::from(promise).await) });
    }
}

fn sound() -> Result<(), JsValue> {
    let context = AudioContext::new()?;
    let tone = context.create_oscillator()?;
    tone.frequency().set_value(PITCH);
    tone.connect_with_audio_node(&context.destination())?;
    let end = context.current_time() + LONG;
    tone.start()?;
    tone.stop_with_when(end)
}
