//! What stands around every screen of a job: plate, places, undo; and the job itself.

use std::sync::Arc;
use words::{say, t};

use job::{Job, Sheet, Shown, Tin};
use leptos::prelude::*;
use measure::Unit;
use wasm_bindgen_futures::spawn_local;

use crate::bench::use_bench;
use crate::lock::use_lock;
use crate::page;
use crate::parts::{
    Back, Dock, Empty, Jump, LastEntry, Place, Plate, Rail, UndoBar, UndoLast, UnitToggle, live,
    words,
};
use crate::prefs::use_prefs;
use crate::shown::use_shown;

/// A job with the sheet and the tin it stands on, followed.
#[derive(Clone, Copy)]
pub struct OpenJob {
    id: StoredValue<String>,
    job: Memo<Option<Arc<Job>>>,
    sheet: Memo<Option<Arc<Sheet>>>,
    tin: Memo<Arc<Tin>>,
    shown: Memo<Shown>,
}

/// A screen among the places of a job.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Here {
    /// The guided job.
    Job,
    /// A step of it.
    Step,
    /// What is open, locked and stale, which belongs to the job.
    OpenMap,
    /// The pack list.
    Tools,
    /// Bags and ladder.
    Ladder,
    /// Inspection.
    Judge,
    /// What was agreed, which belongs to the inspection.
    Consent,
    /// Signing for the frozen packs, which belongs to the set-up.
    Freeze,
    /// Set-up.
    Setup,
    /// A reading, which belongs to the set-up.
    Reading,
    /// The bench checks.
    Checks,
    /// What each pack disturbs.
    Map,
    /// The shim tin.
    Tin,
    /// The unit sheet.
    Sheet,
    /// The record.
    Record,
    /// Its tags and its place in the archive, which belong to the record.
    Archive,
}

impl Here {
    /// The name of the screen in the page's title; the record names itself for its file.
    fn title(self) -> Option<&'static str> {
        Some(match self {
            Here::Job => t("Job"),
            Here::Step => t("Step"),
            Here::OpenMap => t("Open map"),
            Here::Tools => t("Tools"),
            Here::Ladder => t("Ladder"),
            Here::Judge => t("Judge"),
            Here::Consent => t("Consent"),
            Here::Freeze => t("Freeze"),
            Here::Setup => t("Set-up"),
            Here::Reading => t("Reading"),
            Here::Checks => t("Bench checks"),
            Here::Map => t("Map"),
            Here::Tin => t("Shim tin"),
            Here::Sheet => t("Unit sheet"),
            Here::Archive => t("Archive"),
            Here::Record => return None,
        })
    }
}

impl OpenJob {
    /// The job of that id.
    pub fn of(id: &str) -> OpenJob {
        let bench = use_bench();
        let job = bench.job(id);
        OpenJob {
            id: StoredValue::new(id.to_owned()),
            job,
            sheet: bench.sheet_of(job),
            tin: bench.tin(),
            shown: use_shown(),
        }
    }

    /// The id of its book.
    pub fn id(self) -> String {
        self.id.get_value()
    }

    /// The address of one of its screens: `setup`, `read/depth`, `record`.
    pub fn at(self, screen: &str) -> String {
        self.id.with_value(|id| format!("/job/{id}/{screen}"))
    }

    /// The address of the guided job.
    pub fn at_job(self) -> String {
        self.id.with_value(|id| format!("/job/{id}"))
    }

    /// The address of a field of its unit sheet.
    pub fn at_field(self, field: job::Field) -> String {
        format!("{}#{}", self.at_sheet(), field.facts().id)
    }

    /// The address of its unit sheet.
    pub fn at_sheet(self) -> String {
        let sheet = self.sheet.with(|sheet| sheet.as_ref().map(|sheet| sheet.id.clone()));
        format!("/sheet/{}", sheet.unwrap_or_default())
    }

    /// Looks at job, sheet and tin together; `None` where there is no such job or sheet.
    pub fn look<T>(self, at: impl FnOnce((&Job, &Sheet, &Tin), Shown) -> T) -> Option<T> {
        let (job, sheet, tin) = (self.job.get()?, self.sheet.get()?, self.tin.get());
        Some(at((&job, &sheet, &tin), self.shown.get()))
    }

    /// The same without following them.
    pub fn look_once<T>(self, at: impl FnOnce((&Job, &Sheet, &Tin), Shown) -> T) -> Option<T> {
        untrack(|| self.look(at))
    }

    /// How numbers are shown.
    pub fn shown(self) -> Shown {
        self.shown.get()
    }
}

/// A screen of a job; without such a job, the way to the bench.
#[component]
pub fn JobScreen(
    /// The job.
    of: OpenJob,
    /// Which screen it is.
    here: Here,
    /// Where back goes, and the name of that place.
    back: (String, &'static str),
    /// The one next act, an [`Act`](crate::parts::Act).
    #[prop(into)]
    act: ViewFn,
    /// What stands right under the plate.
    #[prop(optional, into)]
    under: ViewFn,
    /// What matters now at some of the places.
    #[prop(optional, into)]
    notes: Signal<Vec<(Here, String)>>,
    /// What the screen shows.
    children: ChildrenFn,
) -> impl IntoView {
    let is_there = Memo::new(move |_| of.look(|_, _| ()).is_some());
    if let Some(title) = here.title() {
        let boat = move || of.look(|(job, ..), _| job.boat.clone()).unwrap_or_default();
        page::title(words(move || format!("{title} · {}", boat())));
    }
    live(move || {
        if !is_there.get() {
            return view! { <NoSuchJob/> }.into_any();
        }
        let ((href, name), act) = (back.clone(), act.run());
        view! {
            <JobPlate of/>
            {under.run()}
            {live(move || view! { <Rail places=places(of, here, notes)/> }.into_any())}
            <main class="main" id="main" tabindex="-1">
                {children()}
                <Undo/>
            </main>
            <Dock>
                <Back href words=name/>
                {act}
                {live(move || view! { <JumpAround of here notes/> }.into_any())}
            </Dock>
        }
        .into_any()
    })
}

/// The bar that offers to take the last entry of this visit back.
#[component]
pub fn Undo() -> impl IntoView {
    let (last, on_turn) = last_act();
    view! { <UndoBar last on_turn/> }
}

#[component]
fn JumpAround(of: OpenJob, here: Here, notes: Signal<Vec<(Here, String)>>) -> impl IntoView {
    let (last, on_turn) = last_act();
    view! {
        <Jump places=places(of, here, notes)>
            <UndoLast last on_turn/>
        </Jump>
    }
}

/// The last act of this visit, and what turns it.
pub fn last_act() -> (Signal<Option<LastEntry>>, Callback<()>) {
    let (bench, lock) = (use_bench(), use_lock());
    let turn = move |()| {
        spawn_local(async move {
            // Refused, the entry stands, as the bar goes on saying.
            bench.turn_last().await.ok();
        });
    };
    let reword = use_context::<Reword>();
    let last = Signal::derive(move || {
        let last = bench.last()?;
        let words = match reword {
            _ if last.names_owner && !lock.is_open() => t("Consent").to_owned(),
            Some(Reword(reword)) => reword.run(last.words),
            None => last.words,
        };
        Some(LastEntry { words, ..last })
    });
    (last, Callback::new(turn))
}

/// How a screen that knows more than the books words the last entry; in its context.
#[derive(Clone, Copy)]
pub struct Reword(pub Callback<String, String>);

/// Boat, job and unit, with the unit toggle.
#[component]
pub fn JobPlate(
    /// The job.
    of: OpenJob,
) -> impl IntoView {
    let boat = Signal::derive(move || of.look(|(job, ..), _| job.boat.clone()).unwrap_or_default());
    let which = Signal::derive(move || {
        let unit =
            |(job, sheet, _): (&Job, &Sheet, &Tin), _| say!("Job {} · {}", job.number, sheet.name);
        of.look(unit).unwrap_or_default()
    });
    view! {
        <Plate title=boat subtitle=which>
            <UnitSwitch/>
        </Plate>
    }
}

/// The unit toggle of the plate, for the preference.
#[component]
pub fn UnitSwitch() -> impl IntoView {
    let prefs = use_prefs();
    let inches = Signal::derive(move || prefs.units().length == Unit::Inch);
    let toggle = Callback::new(move |()| {
        let other = if inches.get_untracked() { Unit::Millimetre } else { Unit::Inch };
        prefs.set_unit(other);
    });
    view! { <UnitToggle inches on_toggle=toggle/> }
}

/// Nothing of that name on this device.
#[component]
fn NoSuchJob() -> impl IntoView {
    view! {
        <Plate title=t("Shimwright") subtitle=t("Bench")/>
        <main class="main" id="main" tabindex="-1">
            <h1 class="vh">{t("No such job")}</h1>
            <Empty title=t("No such job here.") words=t("It may be on another device. Open one from the bench.")>
                <a class="btn" href="/">{t("Bench")}</a>
            </Empty>
        </main>
        <Dock>
            <Back href="/" words=t("Bench")/>
        </Dock>
    }
}

/// The places of a job, for rail and jump.
fn places(of: OpenJob, here: Here, notes: Signal<Vec<(Here, String)>>) -> Vec<Place> {
    let place = |words: &str, note: String, href: String, at: &[Here]| Place {
        words: words.to_owned(),
        note: notes
            .with(|notes| notes.iter().find(|(place, _)| at.contains(place)).cloned())
            .map_or(note, |(_, note)| note),
        href,
        here: at.contains(&here),
    };
    let look = |(job, sheet, tin): (&Job, &Sheet, &Tin), _| {
        let to_do = match sheet.to_do().len() {
            0 => String::new(),
            some => say!("{some} to do"),
        };
        (say!("Job {}", job.number), job.readings.len(), tin.count(), to_do)
    };
    let (job, readings, shims, to_do) = of.look(look).unwrap_or_default();
    let nothing = String::new;
    vec![
        place(t("Bench"), nothing(), "/".to_owned(), &[]),
        place(&job, nothing(), of.at_job(), &[Here::Job, Here::OpenMap]),
        place(t("Step"), nothing(), of.at("step"), &[Here::Step]),
        place(t("Tools"), nothing(), of.at("tools"), &[Here::Tools]),
        place(t("Ladder"), nothing(), of.at("ladder"), &[Here::Ladder]),
        place(t("Judge"), nothing(), of.at("inspect"), &[Here::Judge, Here::Consent]),
        place(
            t("Set-up"),
            say!("{readings} read"),
            of.at("setup"),
            &[Here::Setup, Here::Reading, Here::Freeze],
        ),
        place(t("Checks"), nothing(), of.at("check"), &[Here::Checks]),
        place(t("Map"), nothing(), of.at("influence"), &[Here::Map]),
        place(t("Shim tin"), shims.to_string(), "/tin".to_owned(), &[Here::Tin]),
        place(t("Unit sheet"), to_do, of.at_sheet(), &[Here::Sheet]),
        place(t("Record"), nothing(), of.at("record"), &[Here::Record, Here::Archive]),
        place(t("Settings"), nothing(), "/settings".to_owned(), &[]),
    ]
}
