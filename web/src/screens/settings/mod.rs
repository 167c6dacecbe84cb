//! Settings: what is kept and how safely, units, screen, words.

mod about;
mod backup;
mod copy;
mod kept_safe;
mod ways;

pub use kept_safe::megabytes;
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use words::t;

use super::pin::ShopPin;
use super::send::told;
use crate::bench::use_bench;
use crate::lock::use_lock;
use crate::page;
use crate::parts::{Act, Back, Dock, DockedPad, Glyph, Plate, Says, live};

/// Settings and backup.
#[component]
pub fn SettingsScreen() -> impl IntoView {
    let (bench, lock) = (use_bench(), use_lock());
    let says = RwSignal::new(None::<Says>);
    let back_up = move |share| {
        Callback::new(move |()| {
            spawn_local(async move {
                let made = bench.back_up(share).await;
                // The screen may have been left meanwhile; the file is there all the same.
                says.try_set(Some(told(made)));
            });
        })
    };
    let act = live(move || match lock.is_open() {
        true => view! { <Act words=t("Back up now") glyph=Glyph::Save on_press=back_up(false)/> }
            .into_any(),
        false => {
            let lead = Callback::new(|()| page::lead_to("pin"));
            view! { <Act words=t("PIN before a backup") on_press=lead/> }.into_any()
        }
    });
    page::title(Signal::stored(t("Settings").to_owned()));
    view! {
        <Plate title=t("Settings") subtitle=t("This device")/>
        <main class="main" id="main" tabindex="-1">
            <h1 class="vh">{t("Settings")}</h1>
            <div class="cols">
                <section class="col">
                    <backup::Backup says share=back_up(true)/>
                    <copy::OlderCopy backed_up=says/>
                    <kept_safe::KeptSafe/>
                    <ways::Units/>
                </section>
                <section class="col">
                    <ways::Screen/>
                    {live(move || match lock.is_open() {
                        true => view! { <backup::Readings/> }.into_any(),
                        false => ().into_any(),
                    })}
                    <ShopPin/>
                    <about::About/>
                </section>
            </div>
        </main>
        <DockedPad/>
        <Dock>
            <Back href="/" words=t("Bench")/>
            {act}
        </Dock>
    }
}
