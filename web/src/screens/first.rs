//! The first opening: what it is, put it on this device, start.

use leptos::prelude::*;

use crate::device::install::{Install, use_installer};
use crate::parts::{Act, Back, Dock, Door, Glyph, Icon, Message, Notice, Plate, Says, live, press};
use crate::pictures::Picture;
use crate::pictures::section::glance;

/// What it is, and the ways to begin; `children` is the way to the practice job.
#[component]
pub fn FirstScreen(children: Children) -> impl IntoView {
    view! {
        <Plate title="Shimwright" subtitle="Bench · empty"/>
        <main class="main" id="main" tabindex="-1">
            <div class="cols">
                <section class="col">
                    <div class="head">
                        <h1>"Right shims, first time"</h1>
                    </div>
                    <WhatItIs/>
                </section>
                <section class="col">
                    <WhereItLives/>
                    {children()}
                    <Door
                        glyph=Glyph::Plus
                        title="Start a real job"
                        note="Layout, sheet, boat."
                        href="/new-job"
                    />
                    <Door
                        glyph=Glyph::Bring
                        title="Bring in a backup"
                        note="From another device, or an older self."
                        href="/bring-in"
                    />
                    <Door
                        glyph=Glyph::Print
                        title="Read the short guide"
                        note="The whole job in a few pages, to print too."
                        href="/guide"
                    />
                    <ByHand/>
                    <p class="small">
                        "No account, no signal needed. Limits come from your manual; the app holds none."
                    </p>
                </section>
            </div>
        </main>
        <Dock>
            <Back href="/settings" words="Settings" glyph=Glyph::Settings/>
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
                    " Type your manual’s limits once."
                </li>
                <li>
                    <b>"2."</b>
                    " Measure: see which shims to fit."
                </li>
                <li>
                    <b>"3."</b>
                    " Read it in band, print the record."
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
                "On this device, works with no signal.",
                "Jobs are saved here at every tap.",
            ),
            Install::Offered | Install::ByShare | Install::ByMenu => (
                Glyph::Phone,
                "Put it on this device first.",
                "Jobs begun in the browser may stay behind.",
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
            Install::ByShare => ("Share", "Add to Home Screen"),
            Install::ByMenu => ("Browser menu", "Add to home screen"),
        };
        view! {
            <p class="small">
                "No blue button for it? " {menu} ", then " <b>{entry}</b> ", where it is offered."
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
            view! { <Act words="Put it on this device" glyph=Glyph::Phone on_press=ask/> }
                .into_any()
        }
        Install::Done | Install::ByShare | Install::ByMenu => {
            view! { <Act words="Start a real job" href="/new-job"/> }.into_any()
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
                <b>"Lay out the practice job"</b>
                <br/>
                <span class="dim">"Invented unit, shims and readings."</span>
            </span>
            <Icon glyph=Glyph::Go/>
        </button>
        <Message id="practice-says" says/>
        <Door
            glyph=Glyph::Cap
            title="Find hidden faults"
            note="Virtual gauges, 20 minutes, told why."
            href="/practice"
        />
    }
}
