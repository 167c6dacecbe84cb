//! Putting the app on the device, before the first job: some devices give the installed app an
//! empty store of its own.

use js_sys::Reflect;
use leptos::ev::Custom;
use leptos::prelude::*;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::{JsFuture, spawn_local};

/// How the app can be put on this device.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Install {
    /// It runs as an app already.
    Done,
    /// The browser offers it: [`Installer::ask`] opens its own question.
    Offered,
    /// By hand: Share, then Add to Home Screen.
    ByShare,
    /// By hand, from the browser's menu, where there is such an entry.
    ByMenu,
}

#[wasm_bindgen]
extern "C" {
    /// The browser's offer; `boot.js` holds on to it, since it may come before the app runs.
    #[wasm_bindgen(js_name = Event)]
    type Offer;

    #[wasm_bindgen(catch, method)]
    fn prompt(this: &Offer) -> Result<js_sys::Promise, JsValue>;
}

/// Name under which `boot.js` leaves the browser's offer, and of the event that tells of it.
const OFFER: &str = "shimwrightInstall";

/// Putting the app on the device, in context of every screen.
#[derive(Clone, Copy)]
pub struct Installer {
    state: RwSignal<Install>,
}

impl Installer {
    /// Looks how things stand and follows offers as they come.
    pub fn look() -> Installer {
        let installer = Installer { state: RwSignal::new(state()) };
        for event in [OFFER, "appinstalled"] {
            window_event_listener(Custom::<web_sys::Event>::new(event), move |event| {
                let installed = event.type_() == "appinstalled";
                installer.state.set(if installed { Install::Done } else { state() });
            });
        }
        installer
    }

    /// How the app can be put on this device now.
    pub fn state(self) -> Install {
        self.state.get()
    }

    /// Opens the browser's own question; to be called from a press.
    pub fn ask(self) {
        let Some(offer) = take_offer() else { return };
        spawn_local(async move {
            if let Ok(asked) = offer.prompt() {
                // Whatever the answer: an offer can be asked once, and a yes comes as an event.
                JsFuture::from(asked).await.ok();
            }
            if self.state.try_get_untracked() == Some(Install::Offered) {
                self.state.set(state());
            }
        });
    }
}

/// The installer from context.
pub fn use_installer() -> Installer {
    expect_context()
}

fn state() -> Install {
    let Some(window) = web_sys::window() else { return Install::ByMenu };
    // Only one maker's phones know this property; elsewhere it is undefined.
    let standalone = Reflect::get(&window.navigator(), &"standalone".into()).ok();
    let on_home_screen = standalone.as_ref().and_then(JsValue::as_bool);
    let alone = window.match_media("(display-mode: standalone)").ok().flatten();
    if on_home_screen == Some(true) || alone.is_some_and(|query| query.matches()) {
        Install::Done
    } else if Reflect::get(&window, &OFFER.into()).is_ok_and(|offer| offer.is_object()) {
        Install::Offered
    } else if on_home_screen.is_some() {
        Install::ByShare
    } else {
        Install::ByMenu
    }
}

fn take_offer() -> Option<Offer> {
    let window = web_sys::window()?;
    let offer = Reflect::get(&window, &OFFER.into()).ok().filter(JsValue::is_object)?;
    Reflect::set(&window, &OFFER.into(), &JsValue::UNDEFINED).ok()?;
    Some(offer.unchecked_into())
}
