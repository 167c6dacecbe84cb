//! What the app says: undo, cautions, notices, nothing yet, waiting.

use leptos::prelude::*;

use super::{Samples, nothing};
use crate::parts::{
    Alarm, Caution, Empty, Glyph, LastEntry, Notice, Standing, UndoBar, UndoLast, Wait,
};

#[component]
pub fn Undoing() -> impl IntoView {
    let entry = |words: &str, standing| {
        Some(LastEntry {
            id: words.to_owned(),
            words: words.to_owned(),
            names_owner: false,
            standing,
        })
    };
    let fresh = RwSignal::new(entry("6 h: no entry", Standing::Kept));
    let turn = Callback::new(move |()| {
        fresh.update(|it| {
            if let Some(it) = it {
                it.standing = match it.standing {
                    Standing::TakenBack => Standing::Kept,
                    Standing::Kept | Standing::Saving => Standing::TakenBack,
                };
            }
        });
    });
    view! {
        <Samples title="Undo">
            <UndoBar last=fresh on_turn=turn/>
            <p class="small">"Fresh, 8 seconds. Then it stands in Jump as “Undo last”."</p>
            <UndoLast last=fresh on_turn=turn/>
            <UndoBar last=entry("Taken back: 6 h", Standing::TakenBack) on_turn=nothing()/>
            <UndoBar last=entry("Saving…", Standing::Saving) on_turn=nothing()/>
        </Samples>
    }
}

#[component]
pub fn Cautions() -> impl IntoView {
    view! {
        <Samples title="Alarm and cautions">
            <Alarm title="Reading and prediction disagree">
                <p>
                    <b>"Leave the shims alone."</b>
                    " Causes follow, likeliest first; the first check is in the dock."
                </p>
            </Alarm>
            <Caution title="Part or job at risk." words="Before the act."/>
            <Caution
                title="A person at risk."
                words="Before the act, stop figure given."
                person=true
            />
        </Samples>
    }
}

#[component]
pub fn Notices() -> impl IntoView {
    view! {
        <Samples title="Notices">
            <Notice
                glyph=Glyph::Off
                title="No signal. All works."
                words="Jobs are on this device."
            />
            <Notice
                glyph=Glyph::New
                title="A new version is ready."
                words="It waits while you type."
            >
                <div class="btns">
                    <button class="btn btn--plain" type="button">"Later"</button>
                    <button class="btn" type="button">"Use it now"</button>
                </div>
            </Notice>
            <Notice
                glyph=Glyph::Clock
                title="Backup due."
                words="61 entries since Sunday."
                due=true
            />
            <Notice
                glyph=Glyph::Warn
                title="Not saved: this device is full."
                words="Your digits stay on the screen. Export, then free some room."
                due=true
            />
        </Samples>
    }
}

#[component]
pub fn Nothing() -> impl IntoView {
    view! {
        <Samples title="Nothing there yet">
            <Empty title="The tin is empty." words="Measure the shims from the case first.">
                <a class="btn" href="/tin">"Put a shim in the tin"</a>
            </Empty>
            <Empty title="No trial yet." words="The first pack is a guess with a wide ±."/>
        </Samples>
    }
}

#[component]
pub fn Loading() -> impl IntoView {
    view! {
        <Samples title="Loading">
            <p class="small">
                "Only where it takes over 300 ms. It stands still; words and count tell."
            </p>
            <Wait title="Bringing in entries, 34 of 86" words="You can work on." percent=40/>
            <Wait title="Looking for packs in 38 shims" words="A second or two."/>
        </Samples>
    }
}
