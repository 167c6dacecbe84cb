//! Send: one job as a file, or a unit sheet as a file or a code.

use job::files::Card;
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use words::{say, t};

use super::shop::NoSuchSheet;
use crate::bench::export::Exported;
use crate::bench::use_bench;
use crate::device::file::{Handed, shares_files};
use crate::page;
use crate::parts::{Act, Back, Dock, Glyph, Icon, Message, Notice, Plate, Says, press};
use crate::storage::StoreError;

/// What was handed over, or why not.
pub fn told(outcome: Result<Exported, StoreError>) -> Says {
    match outcome {
        Ok(made) if made.handed == Handed::NotTaken => Says::Refused(
            t("The share sheet was closed, so no file was kept. Press again.").to_owned(),
        ),
        Ok(made) if made.files > 1 => Says::Told(say!(
            "{} files, the first is {}. Keep them together.",
            made.files,
            made.name
        )),
        Ok(made) => Says::Told(say!(
            "Saved: {}. {} entries, {} photos.",
            made.name,
            made.entries,
            made.photos
        )),
        Err(why) => Says::Refused(why.to_string()),
    }
}

/// Of what is sent.
#[derive(Clone, Copy)]
enum Of {
    Job,
    Sheet,
}

/// One job.
pub fn job(id: &str) -> AnyView {
    let title = untrack(|| use_bench().job(id).get()).map(|job| job.boat.clone());
    let back = (format!("/job/{id}/record"), t("Record"));
    screen(Of::Job, id, title.unwrap_or_default(), back, None)
}

/// One unit sheet.
pub fn sheet(id: &str) -> AnyView {
    let bench = use_bench();
    let Some(sheet) = untrack(|| bench.sheet(id).get()) else {
        return view! { <NoSuchSheet/> }.into_any();
    };
    let address = format!("{}/bring-in#sheet=", window().location().origin().unwrap_or_default());
    let code = bench.card(id).code(&address);
    let code = match code {
        Ok(code) => drawn(&code, &sheet.name),
        Err(why) => {
            let words = why.to_string();
            view! { <Notice glyph=Glyph::Warn title=t("Too long for a code.") words/> }.into_any()
        }
    };
    screen(Of::Sheet, id, sheet.name.clone(), (format!("/sheet/{id}"), t("Unit sheet")), Some(code))
}

fn screen(
    of: Of,
    id: &str,
    title: String,
    back: (String, &'static str),
    code: Option<AnyView>,
) -> AnyView {
    let (bench, says, id) = (use_bench(), RwSignal::new(None), StoredValue::new(id.to_owned()));
    let send = move |share| {
        Callback::new(move |()| {
            spawn_local(async move {
                let id = id.get_value();
                let outcome = match of {
                    Of::Job => bench.back_up_job(&id, share).await,
                    Of::Sheet => bench.back_up_sheet(&id, share).await,
                };
                // The screen may have been left meanwhile; the file is there all the same.
                says.try_set(Some(told(outcome)));
            });
        })
    };
    let words = match of {
        Of::Job => t(
            "One file with the job, its unit sheet and its photos. It can be brought in on another device.",
        ),
        Of::Sheet => t("One file with the unit sheet. It can be brought in on another device."),
    };
    page::title(Signal::stored(t("Send").to_owned()));
    let (href, place) = back;
    let share = shares_files().then(|| {
        view! {
            <button class="btn btn--wide" type="button" on:click=press(send(true))>
                {t("Share it")}
            </button>
        }
    });
    view! {
        <Plate title=t("Send") subtitle=title.clone()/>
        <main class="main" id="main" tabindex="-1">
            <div class="sheet">
                <h1 class="long"><bdi>{title}</bdi></h1>
                <p>{words}</p>
                {share}
                <Message id="send-says" says=says/>
            </div>
            {code}
        </main>
        <Dock>
            <Back href words=place/>
            <Act words=t("Save as a file") glyph=Glyph::Save on_press=send(false)/>
        </Dock>
    }
    .into_any()
}

/// The code as a picture: its light edge belongs to it.
fn drawn(code: &[Vec<bool>], name: &str) -> AnyView {
    const EDGE: usize = 4;
    let mut dark = String::new();
    for (y, row) in (EDGE..).zip(code) {
        for (x, _) in (EDGE..).zip(row).filter(|(_, is_dark)| **is_dark) {
            dark.push_str(&format!("M{x} {y}h1v1h-1z"));
        }
    }
    let side = code.len() + 2 * EDGE;
    let box_ = format!("0 0 {side} {side}");
    let spoken = say!("Code of the unit sheet {name}");
    view! {
        <div class="sheet">
            <h2>{t("Or as a code")}</h2>
            <p>{t("Hold another phone’s camera over it and open the address. It works with no signal where the app is on that phone.")}</p>
            <svg class="code" viewBox=box_ role="img" aria-label=spoken shape-rendering="crispEdges">
                <path class="code__dark" d=dark></path>
            </svg>
            <p class="small">
                <Icon glyph=Glyph::In/>
                {t(" Limits, teeth, arm and where packs lie. Own steps go with the file only.")}
            </p>
        </div>
    }
    .into_any()
}

impl crate::bench::Bench {
    /// A unit sheet as a short text.
    fn card(self, id: &str) -> Card {
        self.with_book(&job::BookId::Sheet(id.to_owned()), Card::of)
    }
}
