//! New job: layout, unit sheet, boat.

mod layouts;
mod sheets;

use job::{BookId, Fact, next_number};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use words::{say, t};

use crate::address::use_address;
use crate::bench::{Bench, use_bench};
use crate::device::now::fresh_id;
use crate::draft::{Draft, use_draft};
use crate::parts::{Act, Caution, Says, TextField};

use super::shop::ShopScreen;

/// Where the drafts of this form lie.
pub const PLACE: &str = "new-job";

/// What has been filled in so far; it waits while a sheet is typed.
#[derive(Clone, Copy)]
struct Form {
    boat: Draft,
    complaint: Draft,
    /// Letter of the layout; empty until a card is chosen.
    layout: Draft,
    /// Id of the unit sheet.
    sheet: Draft,
    /// What the store or the log said against it.
    refused: RwSignal<Option<String>>,
    busy: RwSignal<bool>,
}

/// What the form waits for.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Waits {
    Sheet,
    Boat,
}

impl Form {
    fn here() -> Form {
        Form {
            boat: use_draft(PLACE, "boat"),
            complaint: use_draft(PLACE, "complaint"),
            layout: use_draft(PLACE, "layout"),
            sheet: use_draft(PLACE, "sheet"),
            refused: RwSignal::new(None),
            busy: RwSignal::new(false),
        }
    }

    /// The sheet that is chosen, if it is there.
    fn chosen(self, bench: Bench) -> Option<String> {
        let id = self.sheet.text();
        bench.sheets().iter().any(|sheet| sheet.id == id).then_some(id)
    }

    /// The layout: that of the sheet that is chosen, else that of the card; at first the most
    /// usual one.
    fn layout_chosen(self, bench: Bench) -> String {
        let id = self.sheet.text();
        let sheet = bench.sheets().into_iter().find(|sheet| sheet.id == id);
        let card = self.layout.text();
        match sheet {
            Some(sheet) => sheet.layout.clone(),
            None if card.is_empty() => "b".to_owned(),
            None => card,
        }
    }

    /// Takes a card; a sheet of another layout is no longer chosen.
    fn choose_layout(self, bench: Bench, letter: &str) {
        if untrack(|| self.layout_chosen(bench)) != letter {
            self.sheet.clear();
        }
        self.layout.set(letter);
    }

    fn waits(self, bench: Bench) -> Option<Waits> {
        let no_boat = self.boat.text().trim().is_empty();
        match self.chosen(bench) {
            None => Some(Waits::Sheet),
            Some(_) => no_boat.then_some(Waits::Boat),
        }
    }

    fn opened(self, bench: Bench) -> Fact {
        Fact::JobOpened {
            boat: self.boat.text().trim().to_owned(),
            complaint: self.complaint.text().trim().to_owned(),
            sheet: self.sheet.text(),
            number: number(bench),
        }
    }

    fn clear(self) {
        for draft in [self.boat, self.complaint, self.layout, self.sheet] {
            draft.clear();
        }
    }
}

fn number(bench: Bench) -> u32 {
    next_number(bench.every_job().iter().map(|job| job.number))
}

/// New job.
#[component]
pub fn NewJobScreen() -> impl IntoView {
    let form = Form::here();
    let subtitle = Signal::stored(t("Layout, sheet, boat").to_owned());
    let back = ("/".to_owned(), t("Bench"));
    view! {
        <ShopScreen title=t("New job") subtitle back act=view! { <OpenJob form/> }.into_any()>
            <div class="head">
                <h1>{t("Which layout is in the case?")}</h1>
                <p>{t("Nose left. Pick the sketch that looks like yours.")}</p>
            </div>
            <layouts::Layouts form/>
            <sheets::Sheets form/>
            <Who form/>
            <Caution
                title=t("Milky or empty lube:").to_owned()
                words=t("tell the owner not to run it.").to_owned()
            />
        </ShopScreen>
    }
}

/// Boat and complaint.
#[component]
fn Who(form: Form) -> impl IntoView {
    let refused = Signal::derive(move || form.refused.get().map(Says::Refused));
    view! {
        <div class="sheet">
            <h2 class="vh">{t("Boat")}</h2>
            <div class="cols">
                <TextField id="boat" label=t("Boat") value=form.boat says=refused/>
                <TextField
                    id="complaint"
                    label=t("Complaint, in the owner’s words")
                    value=form.complaint
                />
            </div>
        </div>
    }
}

/// Opens the job; while it waits, leads to what is missing.
#[component]
fn OpenJob(form: Form) -> impl IntoView {
    let bench = use_bench();
    let address = use_address();
    let waits = Memo::new(move |_| form.waits(bench));
    let words = Signal::derive(move || match waits.get() {
        Some(Waits::Sheet) => t("Choose a unit sheet").to_owned(),
        Some(Waits::Boat) => t("Type the boat").to_owned(),
        None => say!("Open job {}", number(bench)),
    });
    let press = Callback::new(move |()| {
        let id = fresh_id();
        let fact = untrack(|| form.opened(bench));
        form.busy.set(true);
        spawn_local(async move {
            let outcome = bench.record(vec![(BookId::Job(id.clone()), fact)]).await;
            form.busy.try_set(false);
            match outcome {
                Ok(_) => {
                    form.clear();
                    address.go(&format!("/job/{id}"));
                }
                Err(why) => drop(form.refused.try_set(Some(why.to_string()))),
            }
        });
    });
    let lead = Callback::new(move |()| match waits.get_untracked() {
        Some(Waits::Sheet) => crate::page::lead_to("sheets"),
        Some(Waits::Boat) | None => crate::page::lead_to("boat"),
    });
    let is_waiting = Signal::derive(move || waits.get().is_some());
    view! { <Act words waits=is_waiting busy=form.busy on_press=press on_waiting=lead/> }
}
