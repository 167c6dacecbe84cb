//! The first opening: what it is, put it on this device, start.

use leptos::prelude::*;

use crate::device::install::{Install, use_installer};
use crate::parts::{Act, Back, Dock, Door, Glyph, Notice, Plate};
use crate::pictures::Picture;
use crate::pictures::section::{Section, View};

/// What it is, and the ways to begin.
#[component]
pub fn FirstScreen() -> impl IntoView {
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
                    <Door
                        glyph=Glyph::Plus
                        title="Start a real job"
                        note="Layout, sheet, boat."
                        href="/new-job"
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
    let packs = Section::of(["B1", "B2", "B3", "B4"]);
    let drawing = Section { view: View::Low, ..packs }.draw();
    view! {
        <div class="sheet">
            <Picture drawing=drawing class="sk sk--slice"/>
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
    move || match installer.state() {
        Install::Done => view! {
            <Notice
                glyph=Glyph::In
                title="On this device, works with no signal."
                words="Jobs are saved here at every tap."
            />
        },
        Install::Offered | Install::ByShare | Install::ByMenu => view! {
            <Notice
                glyph=Glyph::Phone
                title="Put it on this device first."
                words="Jobs begun in the browser may stay behind."
            />
        },
    }
}

/// How to put it on the device where the browser gives no button for it.
#[component]
fn ByHand() -> impl IntoView {
    let installer = use_installer();
    let way = move || match installer.state() {
        Install::Done | Install::Offered => None,
        Install::ByShare => Some(("Put it here by hand: Share, then ", "Add to Home Screen", ".")),
        Install::ByMenu => Some((
            "Put it here by hand: browser menu, then ",
            "Add to home screen",
            ", if it is there.",
        )),
    };
    move || {
        way().map(|(before, entry, after)| {
            view! {
                <p class="small">
                    {before}
                    <b>{entry}</b>
                    {after}
                </p>
            }
        })
    }
}

#[component]
fn Begin() -> impl IntoView {
    let installer = use_installer();
    let offered = Memo::new(move |_| installer.state() == Install::Offered);
    let ask = Callback::new(move |()| installer.ask());
    move || match offered.get() {
        true => view! { <Act words="Put it on this device" glyph=Glyph::Phone on_press=ask/> },
        false => view! { <Act words="Start a real job" href="/new-job"/> },
    }
}
