//! Set-up: where the packs lie, what to fit next, and how the checks stand.

mod act;
mod advice;
mod alarm;
mod checks;
mod found;
mod others;
mod parts_changed;
mod sketch;
mod tin;
mod trials;
mod why;

use job::{BookId, Fact, SetUp, setup};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use words::t;

use super::frame::{Here, JobScreen, OpenJob};
use crate::bench::Bench;
use crate::page::lead_to;
use crate::parts::DockedPad;
use found::Found;
use sketch::Thought;

/// What the parts of the screen share.
#[derive(Clone, Copy)]
struct Fitting {
    of: OpenJob,
    told: Memo<Option<SetUp>>,
    found: Found,
    thought: Thought,
    /// The advice is shown although reading and prediction disagree.
    all_the_same: RwSignal<bool>,
    /// Other packs than the advised ones are shown.
    others: RwSignal<bool>,
    /// Why an act was not written down.
    refused: RwSignal<Option<String>>,
}

impl Fitting {
    fn of(of: OpenJob) -> Fitting {
        let told =
            Memo::new(move |_| of.look(|(job, sheet, tin), shown| setup(job, sheet, tin, shown)));
        Fitting {
            of,
            told,
            found: Found::of(of),
            thought: Thought::of(told),
            all_the_same: RwSignal::new(false),
            others: RwSignal::new(false),
            refused: RwSignal::new(None),
        }
    }

    /// Writes facts down; why they were not stands under the advice.
    fn record(self, bench: Bench, facts: Vec<(BookId, Fact)>) {
        self.refused.set(None);
        spawn_local(async move {
            if let Err(why) = bench.record(facts).await {
                // The screen may have been left meanwhile.
                self.refused.try_set(Some(why.to_string()));
                lead_to("act-says");
            }
        });
    }

    /// Looks at what the core says.
    fn look<T>(self, at: impl FnOnce(&SetUp) -> T) -> Option<T> {
        self.told.with(|told| told.as_ref().map(at))
    }
}

/// Set-up.
#[component]
pub fn SetupScreen(
    /// The job.
    job: String,
) -> impl IntoView {
    let of = OpenJob::of(&job);
    let fitting = Fitting::of(of);
    let act = move || view! { <act::Next fitting/> }.into_any();
    view! {
        <JobScreen of here=Here::Setup back=("/".to_owned(), t("Bench")) act>
            <div class="cols setup">
                <section class="col">
                    <sketch::Sketch fitting/>
                </section>
                <section class="col">
                    <found::FoundPacks fitting/>
                    <alarm::Disagree fitting/>
                    <advice::FitNext fitting/>
                    <act::Refused fitting/>
                </section>
                <section class="col">
                    <checks::Checks fitting/>
                </section>
                <section class="col">
                    <trials::AtPack fitting/>
                    <tin::CanMake fitting/>
                    <parts_changed::NewParts fitting/>
                    <why::WhyThis fitting/>
                </section>
            </div>
            <DockedPad/>
        </JobScreen>
    }
}
