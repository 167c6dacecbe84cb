//! Words to find a job by.

use job::Fact;
use leptos::prelude::*;
use words::t;

use super::Archive;
use crate::draft::use_draft;
use crate::parts::{Chip, Says, Text, TextField, live, press};

/// The tags of a job, and a field for another.
#[component]
pub fn Tags(archive: Archive) -> impl IntoView {
    let draft = use_draft(&format!("job/{}/archive", archive.of.id()), "tag");
    let says = RwSignal::new(None);
    let put = Callback::new(move |()| {
        let tag = draft.text_untracked().trim().to_owned();
        let forget = draft.forgets();
        archive.record(Fact::JobTagged { tag, tagged: true }, says, forget);
    });
    let typed = move |text: String| {
        says.set(None);
        draft.set(&text);
    };
    let value = Text::new(Signal::derive(move || draft.text()), Callback::new(typed));
    view! {
        <div class="sheet">
            <h2>{t("Tags")}</h2>
            {live(move || chips(archive, says))}
            <TextField id="tag" label=t("Another tag") value says placeholder=t("winter lay-up")/>
            <button class="btn btn--wide" type="button" on:click=press(put)>
                {t("Put the tag on")}
            </button>
        </div>
    }
}

fn chips(archive: Archive, says: RwSignal<Option<Says>>) -> AnyView {
    let tags = archive.of.look(|(job, ..), _| job.tags.clone()).unwrap_or_default();
    if tags.is_empty() {
        return view! { <p class="small">{t("No tag yet. A tag is a word to find the job by.")}</p> }
            .into_any();
    }
    let chip = |tag: String| {
        let taken = tag.clone();
        let take = Callback::new(move |()| {
            archive.record(Fact::JobTagged { tag: taken.clone(), tagged: false }, says, || {});
        });
        view! { <Chip pressed=Signal::stored(true) on_press=take>{tag}</Chip> }
    };
    let chips = tags.into_iter().map(chip).collect_view();
    view! {
        <div class="chips">{chips}</div>
        <p class="small">{t("A tap takes a tag off.")}</p>
    }
    .into_any()
}
