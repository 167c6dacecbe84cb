//! Map: what each pack disturbs, how well that is known, and the order that follows from it.

mod grid;
mod order;
mod row;

use job::{InfluenceView, Slot, influence_view};
use leptos::prelude::*;
use words::t;

use super::bench::next;
use super::frame::{Here, JobScreen, OpenJob};
use crate::bench::use_bench;
use crate::parts::{Act, live};

/// What the parts of the screen share.
#[derive(Clone, Copy)]
struct Map {
    of: OpenJob,
    told: Memo<Option<InfluenceView>>,
    /// The pack whose row is read.
    chosen: RwSignal<Option<Slot>>,
}

impl Map {
    fn of(of: OpenJob) -> Map {
        let told = Memo::new(move |_| of.look(influence_view));
        Map { of, told, chosen: RwSignal::new(None) }
    }

    /// Looks at what the core says.
    fn look<T>(self, at: impl FnOnce(&InfluenceView) -> T) -> Option<T> {
        self.told.with(|told| told.as_ref().map(at))
    }

    /// The pack that is read: until a person chooses, the first.
    fn slot(self) -> Option<Slot> {
        let first = self.look(|told| told.rows.first().map(|row| row.slot)).flatten();
        self.chosen.get().or(first)
    }
}

/// What each pack disturbs.
#[component]
pub fn InfluenceScreen(
    /// The job.
    job: String,
) -> impl IntoView {
    let of = OpenJob::of(&job);
    let map = Map::of(of);
    let act = move || view! { <CarryOn of/> }.into_any();
    view! {
        <JobScreen of here=Here::Map back=(of.at("setup"), t("Set-up")) act>
            <div class="cols">
                <section class="col">
                    <div class="head">
                        <h1>{t("What each pack disturbs")}</h1>
                        <p>{grid::how_to_read(map)}</p>
                    </div>
                    <grid::Shown map/>
                </section>
                <section class="col">
                    {live(move || row::read(map).into_any())}
                    {live(move || order::order(map).into_any())}
                </section>
            </div>
        </JobScreen>
    }
}

/// On to the next act of the job.
#[component]
fn CarryOn(of: OpenJob) -> impl IntoView {
    let bench = use_bench();
    live(move || {
        let next = of.look(|(job, ..), _| next(bench, job)).flatten();
        let (words, href) = next.unwrap_or_else(|| (t("Set-up").to_owned(), of.at("setup")));
        view! { <Act words href=Signal::stored(href)/> }.into_any()
    })
}
