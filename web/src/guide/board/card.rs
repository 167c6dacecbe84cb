//! What the bench is told of a guided job.

use leptos::prelude::*;

use super::{at_a_glance, marks, sign};
use crate::guide::Guide;
use crate::parts::{Act, State, Strip, live, words};

/// Strip, state and next step; nothing until the scope is chosen and the steps are there.
pub fn card(guide: Guide) -> AnyView {
    live(move || {
        let Some(lane) = at_a_glance(guide) else { return ().into_any() };
        let (stages, label) = marks(&lane.stages);
        view! {
            <Strip stages label/>
            <div class="line">
                <State sign=sign(&lane.stands) words=lane.stands.words()/>
                <span class="dim">{format!("{}. {}", lane.line, lane.next)}</span>
            </div>
        }
        .into_any()
    })
}

/// The blue button of the bench: on with the next step.
pub fn next(guide: Guide) -> AnyView {
    let to = Memo::new(move |_| {
        let lane = at_a_glance(guide)?;
        Some(match lane.step {
            Some(step) => (lane.act, guide.at_step(&step)),
            None => (lane.act, guide.of.at("record")),
        })
    });
    live(move || match to.get() {
        Some((next, href)) => {
            let next = words(move || next.clone());
            view! { <Act words=next href=Signal::stored(href)/> }.into_any()
        }
        None => ().into_any(),
    })
}
