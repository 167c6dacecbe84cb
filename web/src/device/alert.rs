//! Makes itself noticed: a buzz and a tone, where the device has them.

use js_sys::Array;
use leptos::prelude::*;
use wasm_bindgen::JsValue;
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

fn sound() -> Result<(), JsValue> {
    let context = AudioContext::new()?;
    let tone = context.create_oscillator()?;
    tone.frequency().set_value(PITCH);
    tone.connect_with_audio_node(&context.destination())?;
    let end = context.current_time() + LONG;
    tone.start()?;
    tone.stop_with_when(end)
}
