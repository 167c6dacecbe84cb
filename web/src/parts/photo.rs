//! Photo: taken or chosen, made anew before it is kept; and one that is kept, shown.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::{Blob, HtmlInputElement, Url};

use super::icon::{Glyph, Icon};
use super::live::live;
use crate::bench::use_bench;
use crate::device::now::fresh_id;
use crate::device::photo::remade;
use crate::storage::Photo;

/// A photo that is taken and not yet kept.
#[derive(Clone, Copy)]
pub struct PhotoDraft {
    photo: RwSignal<Option<Photo>, LocalStorage>,
    says: RwSignal<Option<String>>,
    busy: RwSignal<bool>,
}

impl PhotoDraft {
    /// None is taken yet.
    pub fn here() -> PhotoDraft {
        let photo = RwSignal::new_local(None);
        PhotoDraft { photo, says: RwSignal::new(None), busy: RwSignal::new(false) }
    }

    /// The name it will be kept under.
    pub fn id(self) -> Option<String> {
        self.photo.with(|photo| photo.as_ref().map(|photo| photo.id.clone()))
    }

    /// The photo, to be kept with the entry that names it.
    pub fn taken(self) -> Vec<Photo> {
        self.photo.get_untracked().into_iter().collect()
    }

    /// Throws it away.
    pub fn clear(self) {
        self.photo.try_set(None);
        self.says.try_set(None);
    }

    fn take(self, file: Blob) {
        self.busy.set(true);
        spawn_local(async move {
            match remade(&file).await {
                Ok(picture) => {
                    self.photo.try_set(Some(Photo { id: fresh_id(), picture }));
                    self.says.try_set(None);
                }
                Err(why) => drop(self.says.try_set(Some(why.to_string()))),
            }
            self.busy.try_set(false);
        });
    }
}

/// Takes a photo or chooses a file.
#[component]
pub fn TakePhoto(
    /// Its id in the page.
    #[prop(into)]
    id: String,
    /// What the photo is of.
    #[prop(into)]
    title: String,
    /// What it must show.
    #[prop(into)]
    note: String,
    /// Where it is until it is kept.
    draft: PhotoDraft,
) -> impl IntoView {
    let take = move |event: leptos::web_sys::Event| {
        let input: Option<HtmlInputElement> = event.target().and_then(|it| it.dyn_into().ok());
        if let Some(file) = input.and_then(|input| input.files()?.get(0)) {
            draft.take(file.into());
        }
    };
    let shown = live(move || match (draft.busy.get(), draft.photo.get()) {
        (true, _) => view! { <small>"One moment"</small> }.into_any(),
        (_, Some(photo)) => picture(&photo.picture, "Taken"),
        _ => view! { <Icon glyph=Glyph::Camera/> }.into_any(),
    });
    let says = live(move || draft.says.get().into_any());
    view! {
        <label class="photo">
            <input id=id type="file" accept="image/*" capture="environment" on:change=take/>
            {shown}
            <b>{title}</b>
            <small>{note}</small>
        </label>
        <p class="msg msg--refused" role="status">
            {says}
        </p>
    }
}

/// A photo that is kept.
#[component]
pub fn Shot(
    /// Its name in the store.
    photo: String,
    /// What it shows.
    name: String,
    /// As wide as what it stands in.
    #[prop(optional)]
    wide: bool,
) -> impl IntoView {
    let bench = use_bench();
    let found = RwSignal::new_local(None::<Blob>);
    spawn_local(async move {
        // A photo that is not here leaves its place empty.
        found.try_set(bench.photo(&photo).await.ok().flatten());
    });
    let words = format!("Photo: {name}");
    let shown =
        live(move || found.with(|blob| blob.as_ref().map(|it| picture(it, &words))).into_any());
    view! { <span class=if wide { "shot shot--wide" } else { "shot" }>{shown}</span> }
}

fn picture(blob: &Blob, words: &str) -> AnyView {
    let address = Url::create_object_url_with_blob(blob).unwrap_or_default();
    let gone = address.clone();
    on_cleanup(move || drop(Url::revoke_object_url(&gone)));
    view! { <img src=address alt=words.to_owned()/> }.into_any()
}
