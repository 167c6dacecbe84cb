//! What stands in place of a screen that the PIN guards.

use leptos::prelude::*;
use words::t;

use super::Giving;
use crate::page;
use crate::parts::{Act, Back, Dock, DockedPad, Glyph, Notice, Plate};

/// Behind the PIN; `job`: the job it is of.
pub fn locked(job: Option<String>) -> AnyView {
    let giving = Giving::here();
    let (href, place) = match job {
        Some(job) => (format!("/job/{job}"), t("Job")),
        None => ("/".to_owned(), t("Bench")),
    };
    let give = Callback::new(move |()| giving.give());
    page::title(Signal::stored(t("Shop PIN").to_owned()));
    view! {
        <Plate title=t("Shimwright") subtitle=t("Behind the shop’s PIN")/>
        <main class="main" id="main" tabindex="-1">
            <div class="sheet">
                <h1>{t("Give the shop’s PIN")}</h1>
                <Notice
                    glyph=Glyph::Lock
                    title=t("Data goes out here, or the owner is named.")
                    words=t("It stays open until nothing was touched for 3 minutes. Work at the bench needs no PIN.")
                />
                {giving.field()}
                <p class="small">
                    {t("Forgotten? ")} <a href="/settings#forgotten">{t("How to go on")}</a>
                </p>
            </div>
        </main>
        <DockedPad/>
        <Dock>
            <Back href words=place/>
            <Act words=t("Open") busy=giving.busy glyph=Glyph::Lock on_press=give/>
        </Dock>
    }
    .into_any()
}
