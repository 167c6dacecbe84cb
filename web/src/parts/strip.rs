//! Strip: the stages of a job at a glance.

use leptos::prelude::*;

/// How far a stage is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stage {
    /// Full.
    Done,
    /// Half.
    Here,
    /// Hatched: done, and stale since.
    Stale,
    /// Empty.
    ToDo,
}

/// Stages side by side; `label` says the same in words.
#[component]
pub fn Strip(
    /// In the order of the job.
    stages: Vec<Stage>,
    /// Such as "Stages: Look done, Strip here".
    #[prop(into)]
    label: Signal<String>,
    /// Their names, and which of them is here, where there is room for names.
    #[prop(optional)]
    names: Vec<(&'static str, bool)>,
) -> impl IntoView {
    let mark = |stage| {
        let class = match stage {
            Stage::Done => "d",
            Stage::Here => "h2",
            Stage::Stale => "s",
            Stage::ToDo => "",
        };
        view! { <i class=class></i> }
    };
    let class = if names.is_empty() { "strip" } else { "strip strip--named" };
    let name = |(name, here): (&'static str, bool)| {
        view! { <span class=here.then_some("here")>{name}</span> }
    };
    view! {
        <div class=class role="img" aria-label=label>
            {stages.into_iter().map(mark).collect_view()}
            {names.into_iter().map(name).collect_view()}
        </div>
    }
}
