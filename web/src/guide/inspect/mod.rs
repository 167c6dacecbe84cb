//! Judge: what is seen on each part, the verdict with its reason and photo, and what it changes.

mod changes;
mod parts;
mod signs;
mod state;
mod verdict;

use leptos::prelude::*;
use words::t;

use super::{Guide, GuideScreen, Here};
use crate::parts::live;
use state::Judging;

/// The inspection.
pub fn screen(guide: Guide) -> AnyView {
    let judging = Judging::of(guide);
    let act = move || live(move || verdict::act(judging));
    let back = (guide.of.at_job(), t("Job"));
    view! {
        <GuideScreen guide here=Here::Judge back act>
            <div class="cols">
                <section class="col">
                    {live(move || signs::head(judging))} {live(move || signs::sheet(judging))}
                </section>
                <section class="col">
                    {live(move || verdict::sheet(judging))}
                    {live(move || changes::sheet(judging))}
                    {live(move || parts::sheet(judging))}
                    {live(move || parts::gate(judging))}
                </section>
            </div>
        </GuideScreen>
    }
    .into_any()
}
