//! Photo: taken or chosen, made anew before it is kept; and one that is kept, shown.

use leptos::prelude::*;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::{Blob, HtmlInputElement, Url};
use words::{say, t};

use super::icon::{Glyph, Icon};
use super::live::{live, words};
use super::says::{Message, Says};
use crate::bench::use_bench;
use crate::device::now::fresh_id;
use crate::device::photo::remade;
use crate::storage::Photo;

/// The kinds of pictures that are taken.
const KINDS: &str = "image/jpeg,image/png,image/webp";
const NONE_CAME: &str = "No photo came. Where the camera is refused, allow it in the device’s settings, \
                         or choose a picture file. The job goes on without it.";

/// A photo that is taken and not yet kept.
#[derive(Clone, Copy)]
pub struct PhotoDraft {
    photo: RwSignal<Option<Photo>, LocalStorage>,
    says: RwSignal<Option<Says>>,
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

    /// Says why it was not kept; the photo stays, to be kept on another press.
    pub fn refuse(self, why: String) {
        self.says.try_set(Some(Says::Refused(why)));
    }

    /// Throws it away.
    pub fn clear(self) {
        // The screen may have been left meanwhile.
        self.photo.try_set(None);
        self.says.try_set(None);
    }

    fn take(self, file: Blob, on_taken: Option<Callback<()>>) {
        self.busy.set(true);
        spawn_local(async move {
            let made = remade(&file).await;
            self.busy.try_set(false);
            match made {
                Ok(picture) => {
                    self.says.try_set(None);
                    self.photo.try_set(Some(Photo { id: fresh_id(), picture }));
                    if let Some(on_taken) = on_taken {
                        on_taken.try_run(());
                    }
                }
                Err(why) => self.refuse(why.to_string()),
            }
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
    /// Done once a photo is taken.
    #[prop(optional, into)]
    on_taken: Option<Callback<()>>,
) -> impl IntoView {
    let shown = live(move || match (draft.busy.get(), draft.photo.get()) {
        (true, _) => view! { <small role="status">{t("One moment")}</small> }.into_any(),
        (_, Some(photo)) => picture(&photo.picture, t("Taken, not kept yet")),
        _ => view! { <Icon glyph=Glyph::Camera/> }.into_any(),
    });
    let (says_id, file_id) = (format!("{id}-says"), format!("{id}-file"));
    let none_came =
        Signal::derive(move || draft.says.with(|says| matches!(says, Some(Says::Doubt(_)))));
    let file = live(move || match none_came.get() {
        false => ().into_any(),
        true => {
            let input = input(file_id.clone(), says_id.clone(), false, draft, on_taken);
            view! {
                <label class="btn btn--plain photofile">
                    {input}
                    {t("Choose a picture file")}
                </label>
            }
            .into_any()
        }
    });
    let says = Signal::derive(move || draft.says.get());
    view! {
        <label class="photo">
            {input(id.clone(), format!("{id}-says"), true, draft, on_taken)}
            {shown}
            <b>{title}</b>
            <small>{note}</small>
        </label>
        <Message id=format!("{id}-says") says/>
        {file}
    }
}

/// The field behind a slot: the camera, or a file.
fn input(
    id: String,
    says: String,
    camera: bool,
    draft: PhotoDraft,
    on_taken: Option<Callback<()>>,
) -> AnyView {
    let take = move |event: leptos::web_sys::Event| {
        let input: Option<HtmlInputElement> = event.target().and_then(|it| it.dyn_into().ok());
        let Some(input) = input else { return };
        if let Some(file) = input.files().and_then(|files| files.get(0)) {
            draft.take(file.into(), on_taken);
        }
        // So that the same file can be chosen once more.
        input.set_value("");
    };
    let cancel = move |_: leptos::web_sys::Event| {
        drop(draft.says.try_set(Some(Says::Doubt(NONE_CAME.to_owned()))))
    };
    view! {
        <input
            id=id
            type="file"
            accept=KINDS
            capture=camera.then_some("environment")
            aria-describedby=says
            on:change=take
            on:cancel=cancel
        />
    }
    .into_any()
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
    let found = RwSignal::new_local(None::<Result<Blob, ()>>);
    spawn_local(async move {
        let read = bench.photo(&photo).await.ok().flatten().ok_or(());
        found.try_set(Some(read));
    });
    let said = say!("Photo: {name}");
    let shown = live(move || {
        found.with(|found| match found {
            Some(Ok(blob)) => picture(blob, &said),
            Some(Err(())) => {
                view! { <span class="vh">{say!("{said}, not on this device")}</span> }.into_any()
            }
            None => ().into_any(),
        })
    });
    let missing = Signal::derive(move || found.with(|it| matches!(it, Some(Err(())))));
    let class = words(move || {
        let class = if wide { "shot shot--wide" } else { "shot" };
        if missing.get() { format!("{class} shot--none") } else { class.to_owned() }
    });
    view! { <span class=class>{shown}</span> }
}

/// A picture of this page's own; its address goes with it.
fn picture(blob: &Blob, words: &str) -> AnyView {
    let address = Url::create_object_url_with_blob(blob).unwrap_or_default();
    let gone = address.clone();
    on_cleanup(move || drop(Url::revoke_object_url(&gone)));
    view! { <img src=address alt=words.to_owned()/> }.into_any()
}
