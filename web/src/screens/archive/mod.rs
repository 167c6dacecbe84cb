//! Archive: words to find a job by, off the bench and back, and the room its photos take.

mod photos;
mod tags;

use job::{BookId, Fact};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use words::t;

use super::frame::{Here, JobScreen, OpenJob};
use crate::bench::{Bench, use_bench};
use crate::parts::{Act, Message, Says, words};

/// What the parts of the screen share.
#[derive(Clone, Copy)]
struct Archive {
    bench: Bench,
    of: OpenJob,
    /// Whether it is in the archive.
    is_in: Memo<bool>,
    /// Why the job was not put away or the photos did not leave.
    says: RwSignal<Option<Says>>,
}

impl Archive {
    fn of(id: &str) -> Archive {
        let (bench, of) = (use_bench(), OpenJob::of(id));
        let is_in = Memo::new(move |_| of.look(|(job, ..), _| job.archived).unwrap_or_default());
        Archive { bench, of, is_in, says: RwSignal::new(None) }
    }

    /// Writes a fact down; why not is said at `says`, `then` comes once it is kept.
    fn record(self, fact: Fact, says: RwSignal<Option<Says>>, then: impl FnOnce() + 'static) {
        let facts = vec![(BookId::Job(self.of.id()), fact)];
        spawn_local(async move {
            let outcome = self.bench.record(facts).await;
            says.try_set(outcome.as_ref().err().map(|why| Says::Refused(why.to_string())));
            if outcome.is_ok() {
                then();
            }
        });
    }
}

/// The archive screen of a job.
pub fn screen(id: &str) -> AnyView {
    let archive = Archive::of(id);
    let Archive { of, is_in, says, .. } = archive;
    let turn = Callback::new(move |()| {
        archive.record(Fact::JobArchived { archived: !is_in.get_untracked() }, says, || {});
    });
    let next = words(move || {
        if is_in.get() { t("Back on the bench") } else { t("Put it away") }.to_owned()
    });
    let act = move || view! { <Act words=next on_press=turn/> }.into_any();
    view! {
        <JobScreen of here=Here::Archive back=(of.at("record"), t("Record")) act=act>
            <h1 class="vh">{t("Tags and archive")}</h1>
            <div class="cols">
                <section class="col">
                    <Place is_in/>
                    <Message id="archive-says" says=says/>
                    <photos::Photos archive/>
                </section>
                <section class="col">
                    <tags::Tags archive/>
                </section>
            </div>
        </JobScreen>
    }
    .into_any()
}

/// Where the job is, and what that means.
#[component]
fn Place(is_in: Memo<bool>) -> impl IntoView {
    let title = move || if is_in.get() { t("In the archive") } else { t("On the bench") };
    let told = move || match is_in.get() {
        true => t(
            "It stands on no bench and no board. Nothing is lost: it is found, opened and printed as before, and every backup has it.",
        ),
        false => t(
            "Put away, it leaves the bench and the board, and is found by its words. Nothing is lost, and it comes back with a tap.",
        ),
    };
    view! {
        <div class="sheet">
            <h2>{title}</h2>
            <p>{told}</p>
        </div>
    }
}
