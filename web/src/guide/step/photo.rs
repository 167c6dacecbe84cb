//! Photos, and which way something faces: in words, in a picture, or both.

use job::Capture;
use job::guide::{Way, facing as faces};
use job::procedure::Record;
use leptos::prelude::*;
use words::{say, t};

use super::record::id;
use super::working::Working;
use crate::parts::{Glyph, Icon, PhotoDraft, Pick, Seg, TakePhoto, TextField, live, press};

/// A photo: kept as soon as it is taken.
pub fn photo(working: Working, at: usize, record: &Record) -> AnyView {
    let draft = PhotoDraft::here();
    let keep = Callback::new(move |()| {
        let Some(photo) = draft.id() else { return };
        keep(working, at, draft, Capture::Photo(photo));
    });
    slot(working, at, say!("Photo: {}", t(&record.label)), draft, keep)
}

/// Which way it faces.
pub fn facing(working: Working, at: usize, record: &Record) -> AnyView {
    let draft = PhotoDraft::here();
    let text = working.line(at, 0);
    let picks = [t("To the nose"), t("Aft"), t("Up"), t("Down")].map(Pick::from).into();
    let chosen = Signal::derive(move || {
        let said = Way::of(&text.get())?;
        Way::ALL.iter().position(|way| *way == said)
    });
    let choose = Callback::new(move |pick: usize| {
        let said = untrack(|| text.get());
        text.set(faces(&said, Way::ALL.get(pick).copied()));
    });
    let keep = Callback::new(move |()| {
        let Some(photo) = draft.id() else { return };
        let words = untrack(|| working.lines(at)).join(" ").trim().to_owned();
        keep(working, at, draft, Capture::Facing { words, photo: Some(photo) });
    });
    let title = record.title();
    view! {
        <TextField
            id=format!("{}-0", id(at))
            label=say!("{title}: which way it faces")
            value=text
            placeholder=t("oil grooves aft")
        />
        <Seg id=format!("{}-way", id(at)) label=say!("{title}, way") picks chosen on_choose=choose/>
        {slot(working, at, say!("Photo: {}", t(&record.label)), draft, keep)}
    }
    .into_any()
}

/// The slot, and another press where the photo could not be kept.
fn slot(
    working: Working,
    at: usize,
    title: String,
    draft: PhotoDraft,
    keep: Callback<()>,
) -> AnyView {
    let waits = Memo::new(move |_| draft.id().is_some() && !working.acting.busy.get());
    let again = live(move || match waits.get() {
        false => ().into_any(),
        true => view! {
            <button class="btn btn--wide" type="button" on:click=press(keep)>
                <Icon glyph=Glyph::Save/>
                {t("Keep this photo")}
            </button>
        }
        .into_any(),
    });
    view! {
        <TakePhoto
            id=format!("{}-photo", id(at))
            title
            note=t("Sharp, whole, and with its marks. The place it was taken is not kept.")
            draft
            on_taken=keep
        />
        {again}
    }
    .into_any()
}

fn keep(working: Working, at: usize, draft: PhotoDraft, value: Capture) {
    working.keep_with(at, value, Vec::new(), draft.taken(), Box::new(move || draft.clear()));
}
