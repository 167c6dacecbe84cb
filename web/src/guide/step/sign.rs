//! The sign of a position: what a thicker pack does, seen by a person.

use job::procedure::Record;
use job::{Capture, Slot};
use leptos::prelude::*;
use words::{say, t};

use super::working::Working;
use crate::parts::{Tag, press};

/// Which way a thicker pack pushes, and whether that is so on this unit.
pub fn sign(working: Working, at: usize, record: &Record) -> AnyView {
    let of = working.guide.of;
    let told = Slot::named(&record.label).and_then(|slot| {
        of.look_once(|(_, sheet, _), _| {
            let position = sheet.position(slot)?;
            Some((position.swelling.to_owned(), sheet.ways(&position).0.to_owned()))
        })
        .flatten()
    });
    let (swelling, way) = told.unwrap_or_default();
    let seen = press(Callback::new(move |()| working.keep(at, Capture::SignSeen, None)));
    let sheet = format!("{}#way-{}", of.at_sheet(), record.label);
    view! {
        <div class="line">
            <Tag words=record.label.clone()/>
            <b>{say!("A thicker pack: {way}.")}</b>
        </div>
        <p>{swelling}</p>
        <div class="btns">
            <button class="btn" type="button" on:click=seen>
                {say!("Yes, {} goes so", record.label)}
            </button>
            <a class="btn btn--plain" href=sheet>
                {t("No: turn the sign")}
            </a>
        </div>
    }
    .into_any()
}
