//! What the app says: undo, cautions, notices, nothing yet, waiting.

use leptos::prelude::*;
use words::t;

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
    let fresh = RwSignal::new(entry(t("6 h: no entry"), Standing::Kept));
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
        <Samples title=t("Undo")>
            <UndoBar last=fresh on_turn=turn/>
            <p class="small">{t("Fresh, 8 seconds. Then it stands in Jump as “Undo last”.")}</p>
            <UndoLast last=fresh on_turn=turn/>
            <UndoBar last=entry(t("Taken back: 6 h"), Standing::TakenBack) on_turn=nothing()/>
            <UndoBar last=entry(t("Saving…"), Standing::Saving) on_turn=nothing()/>
        </Samples>
    }
}

#[component]
pub fn Cautions() -> impl IntoView {
    view! {
        <Samples title=t("Alarm and cautions")>
            <Alarm title=t("Reading and prediction disagree")>
                <p>
                    <b>{t("Leave the shims alone.")}</b>
                    {t(" Causes follow, likeliest first; the first check is in the dock.")}
                </p>
            </Alarm>
            <Caution title=t("Part or job at risk.") words=t("Before the act.")/>
            <Caution
                title=t("A person at risk.")
                words=t("Before the act, stop figure given.")
                person=true
            />
        </Samples>
    }
}

#[component]
pub fn Notices() -> impl IntoView {
    view! {
        <Samples title=t("Notices")>
            <Notice
                glyph=Glyph::Off
                title=t("No signal. All works.")
                words=t("Jobs are on this device.")
            />
            <Notice
                glyph=Glyph::New
                title=t("A new version is ready.")
                words=t("It waits while you type.")
            >
                <div class="btns">
                    <button class="btn btn--plain" type="button">{t("Later")}</button>
                    <button class="btn" type="button">{t("Use it now")}</button>
                </div>
            </Notice>
            <Notice
                glyph=Glyph::Clock
                title=t("Backup due.")
                words=t("61 entries since Sunday.")
                due=true
            />
            <Notice
                glyph=Glyph::Warn
                title=t("Not saved: this device is full.")
                words=t("Your digits stay on the screen. Export, then free some room.")
                due=true
            />
        </Samples>
    }
}

#[component]
pub fn Nothing() -> impl IntoView {
    view! {
        <Samples title=t("Nothing there yet")>
            <Empty title=t("The tin is empty.") words=t("Measure the shims from the case first.")>
                <a class="btn" href="/tin">{t("Put a shim in the tin")}</a>
            </Empty>
            <Empty title=t("No trial yet.") words=t("The first pack is a guess with a wide ±.")/>
        </Samples>
    }
}

#[component]
pub fn Loading() -> impl IntoView {
    view! {
        <Samples title=t("Loading")>
            <p class="small">
                {t("Only where it takes over 300 ms. It stands still; words and count tell.")}
            </p>
            <Wait title=t("Bringing in entries, 34 of 86") words=t("You can work on.") percent=40/>
            <Wait title=t("Looking for packs in 38 shims") words=t("A second or two.")/>
        </Samples>
    }
}
