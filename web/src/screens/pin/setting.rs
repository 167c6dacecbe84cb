//! The PIN among the settings: set it, give it, change it, take it away.

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use words::t;

use super::{Giving, field, forgotten};
use crate::lock::{Lock, use_lock};
use crate::parts::{Message, Says, Sign, State, live, press};

/// What is typed to set, change or take away.
#[derive(Clone, Copy)]
struct Setting {
    lock: Lock,
    now: RwSignal<String>,
    first: RwSignal<String>,
    again: RwSignal<String>,
    /// What is said at the PIN of now.
    at_now: RwSignal<Option<Says>>,
    /// What is said at the new one.
    at_new: RwSignal<Option<Says>>,
    /// What was done.
    done: RwSignal<Option<Says>>,
}

impl Setting {
    fn here() -> Setting {
        let typed = || RwSignal::new(String::new());
        let says = || RwSignal::new(None);
        Setting {
            lock: use_lock(),
            now: typed(),
            first: typed(),
            again: typed(),
            at_now: says(),
            at_new: says(),
            done: says(),
        }
    }

    /// Sets a PIN where there is none.
    fn set(self) {
        spawn_local(async move {
            if self.renewed().await {
                self.end(t("The PIN is set. It is open until nothing was touched for 3 minutes."));
            }
        });
    }

    /// Another PIN, for who knows the one of now.
    fn change(self) {
        spawn_local(async move {
            if self.is_known().await && self.renewed().await {
                self.end(t("The PIN is another one now."));
            }
        });
    }

    /// No PIN any more, for who knows the one of now.
    fn remove(self) {
        spawn_local(async move {
            if self.is_known().await {
                self.lock.keep(None);
                self.end(t("There is no PIN any more."));
            }
        });
    }

    async fn is_known(self) -> bool {
        self.at_now.try_set(None);
        let known = self.lock.open_with(&self.now.get_untracked()).await;
        self.tell(self.at_now, known)
    }

    async fn renewed(self) -> bool {
        let (first, again) = (self.first.get_untracked(), self.again.get_untracked());
        let set = self.lock.set(&first, &again).await;
        self.tell(self.at_new, set)
    }

    /// Says why not, if not. The screen may have been left meanwhile.
    fn tell(self, at: RwSignal<Option<Says>>, outcome: Result<(), String>) -> bool {
        let is_done = outcome.is_ok();
        at.try_set(outcome.err().map(Says::Refused));
        self.done.try_set(None);
        is_done
    }

    fn end(self, words: &str) {
        for typed in [self.now, self.first, self.again] {
            typed.try_set(String::new());
        }
        self.done.try_set(Some(Says::Told(words.to_owned())));
    }
}

/// The shop's PIN.
#[component]
pub fn ShopPin() -> impl IntoView {
    let setting = Setting::here();
    let lock = setting.lock;
    let is_set = Memo::new(move |_| lock.pin().is_some());
    let badge = live(move || match (is_set.get(), lock.is_open()) {
        (false, _) => view! { <State sign=Sign::Open words=t("Not set")/> }.into_any(),
        (true, false) => view! { <State sign=Sign::Lock words=t("Shut")/> }.into_any(),
        (true, true) => view! { <State sign=Sign::In words=t("Given")/> }.into_any(),
    });
    let give = live(move || match lock.is_open() {
        true => ().into_any(),
        false => Giving::here().form(),
    });
    view! {
        <div class="sheet">
            <div class="h">
                <h2>{t("Shop PIN")}</h2>
                {badge}
            </div>
            <p>
                {t("Guards what goes out as a file, what takes entries away, and the owner’s name and signature, on this device.")}
            </p>
            {give}
            {live(move || if is_set.get() { change(setting) } else { first(setting) })}
            <Message id="pin-done" says=setting.done/>
            <p class="small">
                {t("It keeps honest hands off. It encrypts nothing: who gets at the browser’s own tools or files gets past it, and the page that saves all after a crash asks for none.")}
            </p>
        </div>
    }
}

fn first(setting: Setting) -> AnyView {
    let set = press(Callback::new(move |()| setting.set()));
    view! {
        {new(setting)}
        <button class="btn btn--wide" type="button" on:click=set>
            {t("Set the PIN")}
        </button>
    }
    .into_any()
}

fn change(setting: Setting) -> AnyView {
    let change = press(Callback::new(move |()| setting.change()));
    let remove = press(Callback::new(move |()| setting.remove()));
    view! {
        <details class="fold">
            <summary>{t("Change or remove it")}</summary>
            {field("pin-now", t("PIN of now"), setting.now, setting.at_now.into())}
            {new(setting)}
            <div class="btns">
                <button class="btn btn--plain" type="button" on:click=remove>
                    {t("Remove the PIN")}
                </button>
                <button class="btn" type="button" on:click=change>
                    {t("Change the PIN")}
                </button>
            </div>
        </details>
        {forgotten::fold()}
    }
    .into_any()
}

fn new(setting: Setting) -> AnyView {
    view! {
        <div class="pair pair--2">
            {field("pin-new", t("New PIN"), setting.first, setting.at_new.into())}
            {field("pin-again", t("The same again"), setting.again, Signal::stored(None))}
        </div>
    }
    .into_any()
}
