//! A forgotten PIN: how to go on, and nothing is lost.

use job::pin::Release;
use leptos::prelude::*;
use words::{say, t};

use crate::device::now::{now, use_now};
use crate::lock::use_lock;
use crate::parts::{live, press};

/// How to go on without the PIN.
pub fn fold() -> AnyView {
    let (lock, time) = (use_lock(), use_now());
    let release = Memo::new(move |_| lock.pin().map(|pin| pin.release(time.get())));
    let change = move |to: fn(&job::pin::Pin) -> Option<job::pin::Pin>| {
        press(Callback::new(move |()| {
            if let Some(pin) = untrack(|| lock.pin()) {
                lock.keep(to(&pin));
            }
        }))
    };
    let button = move |words: &'static str, to| {
        view! {
            <button class="btn btn--plain btn--wide" type="button" on:click=change(to)>
                {words}
            </button>
        }
        .into_any()
    };
    let stands = live(move || match release.get() {
        None => ().into_any(),
        Some(Release::NotAsked) => {
            button(t("The PIN is forgotten"), |pin| Some(pin.forgotten(now())))
        }
        Some(Release::In(left)) => view! {
            <p role="status">
                <b>{t("Said to be forgotten.")}</b>
                {say!(" It can be taken away here in {left}, unless it is given before.")}
            </p>
            {button(t("It is not forgotten"), |pin| Some(pin.remembered()))}
        }
        .into_any(),
        Some(Release::Due) => view! {
            <p>
                <b>{t("A day has passed.")}</b>
                {t(" It can be taken away now.")}
            </p>
            {button(t("Take the PIN away"), |_| None)}
            {button(t("It is not forgotten"), |pin| Some(pin.remembered()))}
        }
        .into_any(),
    });
    view! {
        <details class="fold">
            <summary id="forgotten">{t("Forgotten?")}</summary>
            <p>
                {t("Jobs, readings and photos stay, and work goes on without it. Say here that it is forgotten: a day later it can be taken away, and whoever works here sees that meanwhile. Do not clear the browser’s data: that deletes the jobs.")}
            </p>
            {stands}
        </details>
    }
    .into_any()
}
