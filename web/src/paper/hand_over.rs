//! The record as a file, the owner's words, and the lines for the invoice.

use job::report::{file, file_name};
use job::{invoice_csv, invoice_text};
use js_sys::Array;
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use words::{say, t};

use super::{Told, photos};
use crate::bench::use_bench;
use crate::device::clipboard::copy;
use crate::device::file::{Handed, PAGE, hand_over, shares_files};
use crate::device::now::now;
use crate::parts::{Message, Says, press};

/// What can be handed over.
#[derive(Clone, Copy)]
enum What {
    /// The record as one file; whether to the share sheet.
    File(bool),
    /// The owner's words, copied.
    Owner,
    /// The invoice lines, copied.
    Invoice,
    /// The same as a table.
    Table,
}

/// Hands the record over, whole or in part.
#[component]
pub fn HandOver(
    /// What stands on the record.
    told: Memo<Option<Told>>,
) -> impl IntoView {
    let (bench, says) = (use_bench(), RwSignal::new(None));
    let does = move |what| {
        press(Callback::new(move |()| {
            let Some(told) = told.get_untracked() else { return };
            spawn_local(async move {
                let outcome = match what {
                    What::File(share) => {
                        let held = photos::held(bench, &told.record.photos).await;
                        let page = file(&told.paper(), &|id| held.get(id).cloned());
                        let name = file_name(&told.record, told.shown, now());
                        handed(page, name, PAGE, share).await
                    }
                    What::Owner => copied(&told.owner.text()).await,
                    What::Invoice => {
                        copied(&invoice_text(&told.record, &told.invoice, told.shown.mark)).await
                    }
                    What::Table => {
                        let name = format!("job-{}-invoice.csv", told.record.number);
                        let table = invoice_csv(&told.record, &told.invoice);
                        handed(table, name, "text/csv", false).await
                    }
                };
                // The screen may have been left meanwhile; what was handed over is there.
                says.try_set(Some(outcome));
            });
        }))
    };
    let button = move |what, words: &'static str| {
        view! {
            <button class="btn" type="button" on:click=does(what)>
                {words}
            </button>
        }
        .into_any()
    };
    let share = shares_files().then(|| button(What::File(true), t("Share the record")));
    let lines = move || told.with(|told| told.as_ref().is_some_and(|it| !it.invoice.is_empty()));
    let invoice = move || {
        lines().then(|| {
            (
                button(What::Invoice, t("Copy invoice lines")),
                button(What::Table, t("Save invoice lines as a table")),
            )
        })
    };
    view! {
        <div class="sheet" id="hand-over" tabindex="-1">
            <h2>{t("Hand over")}</h2>
            <p>{t("One file that opens anywhere, without the app.")}</p>
            <div class="line">
                {button(What::File(false), t("Save the record as a file"))}
                {share}
                {button(What::Owner, t("Copy the owner’s words"))}
                {invoice}
            </div>
            <Message id="hand-over-says" says/>
        </div>
    }
}

async fn handed(page: String, name: String, kind: &str, share: bool) -> Says {
    match hand_over(&Array::of1(&page.into()), &name, kind, share).await {
        Ok(Handed::NotTaken) => Says::Refused(
            t("The share sheet was closed, so no file was kept. Press again.").to_owned(),
        ),
        Ok(Handed::Saved) => Says::Told(say!("Saved: {name}.")),
        Ok(Handed::Shared) => Says::Told(say!("Shared: {name}.")),
        Err(_) => Says::Refused(
            t("The browser did not take the file. Free some room, then press again.").to_owned(),
        ),
    }
}

async fn copied(text: &str) -> Says {
    match copy(text).await {
        Ok(()) => Says::Told(t("Copied. Paste it where you want it.").to_owned()),
        Err(_) => Says::Refused(
            t("The browser did not allow copying. Save the record as a file instead.").to_owned(),
        ),
    }
}
