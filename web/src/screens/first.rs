//! The first opening: what it is, put it on this device, start.

use leptos::prelude::*;
use words::t;

use crate::device::install::{Install, use_installer};
use crate::parts::{Act, Back, Dock, Door, Glyph, Icon, Message, Notice, Plate, Says, live, press};
use crate::pictures::Picture;
use crate::pictures::section::glance;

/// What it is, and the ways to begin; `children` is the way to the practice job.
#[component]
pub fn FirstScreen(children: Children) -> impl IntoView {
    view! {
        <Plate title=t("Shimwright") subtitle=t("Bench · empty")/>
        <main class="main" id="main" tabindex="-1">
            <div class="cols">
                <section class="col">
                    <div class="head">
                        <h1>{t("Right shims, first time")}</h1>
                    </div>
                    <WhatItIs/>
                </section>
                <section class="col">
                    <WhereItLives/>
                    {children()}
                    <Door
                        glyph=Glyph::Plus
                        title=t("Start a real job")
                        note=t("Layout, sheet, boat.")
                        href="/new-job"
                    />
                    <Door
                        glyph=Glyph::Bring
                        title=t("Bring in a backup")
                        note=t("From another device, or an older self.")
                        href="/bring-in"
                    />
                    <Door
                        glyph=Glyph::Print
                        title=t("Read the short guide")
                        note=t("The whole job in a few pages, to print too.")
                        href="/guide"
                    />
                    <ByHand/>
                    <p class="small">
                        {t("No account, no signal needed. Limits come from your manual; the app holds none.")}
                    </p>
                </section>
            </div>
        </main>
        <Dock>
            <Back href="/settings" words=t("Settings") glyph=Glyph::Settings/>
            <Begin/>
        </Dock>
    }
}

#[component]
fn WhatItIs() -> impl IntoView {
    view! {
        <div class="sheet">
            <Picture drawing=glance() class="sk sk--slice"/>
            <ol class="firsts">
                <li>
                    <b>"1."</b>
                    {t(" Type your manual’s limits once.")}
                </li>
                <li>
                    <b>"2."</b>
                    {t(" Measure: see which shims to fit.")}
                </li>
                <li>
                    <b>"3."</b>
                    {t(" Read it in band, print the record.")}
                </li>
            </ol>
        </div>
    }
}

/// Whether the jobs will be kept by the app on this device, or by a browser that may drop them.
#[component]
fn WhereItLives() -> impl IntoView {
    let installer = use_installer();
    live(move || {
        let (glyph, title, words) = match installer.state() {
            Install::Done => (
                Glyph::In,
                t("On this device, works with no signal."),
                t("Jobs are saved here at every tap."),
            ),
            Install::Offered | Install::ByShare | Install::ByMenu => (
                Glyph::Phone,
                t("Put it on this device first."),
                t("Jobs begun in the browser may stay behind."),
            ),
        };
        view! { <Notice glyph title words/> }.into_any()
    })
}

/// How to put it on the device where the browser gives no button for it.
#[component]
fn ByHand() -> impl IntoView {
    let installer = use_installer();
    live(move || {
        let (menu, entry) = match installer.state() {
            Install::Done | Install::Offered => return ().into_any(),
            Install::ByShare => (t("Share"), t("Add to Home Screen")),
            Install::ByMenu => (t("Browser menu"), t("Add to home screen")),
        };
        view! {
            <p class="small">
                {t("No blue button for it? ")} {menu} {t(", then ")} <b>{entry}</b> {t(", where it is offered.")}
            </p>
        }
        .into_any()
    })
}

#[component]
fn Begin() -> impl IntoView {
    let installer = use_installer();
    let ask = Callback::new(move |()| installer.ask());
    live(move || match installer.state() {
        Install::Offered => {
            view! { <Act words=t("Put it on this device") glyph=Glyph::Phone on_press=ask/> }
                .into_any()
        }
        Install::Done | Install::ByShare | Install::ByMenu => {
            view! { <Act words=t("Start a real job") href="/new-job"/> }.into_any()
        }
    })
}

/// The door to the practice job, and what is said where it does not open.
#[component]
pub fn PracticeDoor(
    /// Lays it out.
    on_press: Callback<()>,
    /// What is said under it.
    says: Signal<Option<Says>>,
) -> impl IntoView {
    view! {
        <button class="choice choice--go" type="button" on:click=press(on_press)>
            <Icon glyph=Glyph::Cap/>
            <span>
                <b>{t("Lay out the practice job")}</b>
                <br/>
                <span class="dim">{t("Invented unit, shims and readings.")}</span>
            </span>
            <Icon glyph=Glyph::Go/>
        </button>
        <Message id="practice-says" says/>
        <Door
            glyph=Glyph::Cap
            title=t("Find hidden faults")
            note=t("Virtual gauges, 20 minutes, told why.")
            href="/practice"
        />
    }
}
