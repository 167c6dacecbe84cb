//! The room that a job's photos take, and how they leave once a backup has them.

use job::{BookId, PhotosStay, may_free_photos, photos_of};
use leptos::prelude::*;
use measure::Mark;
use wasm_bindgen_futures::spawn_local;
use words::{say, t};

use super::Archive;
use crate::bench::export::last_backup;
use crate::device::now::utc_offset_minutes;
use crate::parts::{Keys, Says, Tick, live, mark, press};
use crate::screens::settings::megabytes;

/// The photos of a job that are on this device.
#[derive(Clone, Default, PartialEq)]
struct Here {
    ids: Vec<String>,
    bytes: f64,
}

/// How many photos are here, and the way they leave.
#[component]
pub fn Photos(archive: Archive) -> impl IntoView {
    let here = RwSignal::new(None::<Here>);
    // Its entries say when photos came or went.
    Effect::new(move |_| {
        archive.of.look(|(job, ..), _| job.last_at);
        spawn_local(async move {
            here.try_set(Some(look(archive).await));
        });
    });
    let mark = Keys::here().mark;
    let count = move || here.with(|here| here.as_ref().map(|here| counted(here, mark.get())));
    view! {
        <div class="sheet">
            <h2>{t("Photos")}</h2>
            <p>{count}</p>
            {live(move || match here.get() {
                Some(here) if !here.ids.is_empty() => leave(archive, here),
                _ => ().into_any(),
            })}
        </div>
    }
}

async fn look(archive: Archive) -> Here {
    let book = BookId::Job(archive.of.id());
    let mut here = Here::default();
    for id in archive.bench.with_book(&book, photos_of) {
        if let Ok(Some(picture)) = archive.bench.photo(&id).await {
            here.bytes += picture.size();
            here.ids.push(id);
        }
    }
    here
}

fn counted(here: &Here, mark: Mark) -> String {
    match here.ids.len() {
        0 => t("None on this device.").to_owned(),
        1 => say!("1 on this device, {}.", megabytes(here.bytes, mark)),
        some => say!("{some} on this device, {}.", megabytes(here.bytes, mark)),
    }
}

/// Why they stay; or, once the person holds the backup, the way they leave.
fn leave(archive: Archive, here: Here) -> AnyView {
    let id = BookId::Job(archive.of.id());
    let last = last_backup().map(|backup| backup.at);
    let may = archive
        .of
        .look(|(job, ..), _| archive.bench.with_book(&id, |book| may_free_photos(job, book, last)));
    let Some(may) = may else { return ().into_any() };
    match may {
        Err(why @ PhotosStay::OnTheBench) => view! { <p>{why.to_string()}</p> }.into_any(),
        Err(why) => view! {
            <p>{why.to_string()}</p>
            <a class="btn btn--wide" href="/settings">
                {t("Settings and backup")}
            </a>
        }
        .into_any(),
        Ok(backup) => take_off(archive, here, backup),
    }
}

fn take_off(archive: Archive, here: Here, backup: i64) -> AnyView {
    let holds = RwSignal::new(false);
    let made = job::date(backup, utc_offset_minutes(backup));
    let take = Callback::new(move |()| {
        let (ids, job) = (here.ids.clone(), archive.of.id());
        spawn_local(async move {
            let outcome = archive.bench.free_photos(&job, ids, backup).await;
            archive.says.try_set(outcome.err().map(|why| Says::Refused(why.to_string())));
        });
    });
    let hold = Callback::new(move |ticked| holds.set(ticked));
    view! {
        <Tick
            title=say!("I have the backup of {made}")
            note=t("It is off this device, and it opens.")
            ticked=holds
            on_turn=hold
        />
        <button
            class="btn btn--wide"
            type="button"
            disabled=mark(move || !holds.get())
            on:click=press(take)
        >
            {t("Take the photos off this device")}
        </button>
        <p class="small">
            {t("The record says that a backup has them. Brought in, the backup puts them back.")}
        </p>
    }
    .into_any()
}
