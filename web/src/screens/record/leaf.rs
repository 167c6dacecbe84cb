//! A leaf of the record: each one says which job and which page it is.

use job::Record;
use leptos::prelude::*;

/// What all leaves of a record share.
#[derive(Clone)]
pub struct Leaves {
    /// Job, boat and unit.
    pub title: String,
    /// How many there are.
    pub count: usize,
}

/// What only the first leaf says.
pub struct First {
    opened: String,
    complaint: String,
}

/// One leaf.
#[component]
pub fn Leaf(
    /// The leaves it is one of.
    of: Leaves,
    /// Its number, from 1.
    number: usize,
    /// What only the first leaf says.
    #[prop(optional, into)]
    first: Option<First>,
    children: Children,
) -> impl IntoView {
    let page = format!("Page {number} of {}", of.count);
    let head = match first {
        Some(first) => view! {
            <header class="rec">
                <div>
                    <h1>"Gearcase job record"</h1>
                    <p>{of.title}</p>
                    {(!first.complaint.is_empty())
                        .then(|| view! { <p>{format!("Complaint: {}", first.complaint)}</p> })}
                </div>
                <div class="right">
                    <b>{format!("Opened {}", first.opened)}</b>
                    <br/>
                    {page}
                </div>
            </header>
        }
        .into_any(),
        None => view! {
            <header class="rec rec--s">
                <p>
                    <b>{of.title}</b>
                </p>
                <p>{page}</p>
            </header>
        }
        .into_any(),
    };
    view! { <section class="leaf">{head}{children()}</section> }
}

/// "Job 27 · Grey Heron · Demo unit".
pub fn title(told: &Record) -> String {
    format!("Job {} · {} · {}", told.number, told.boat, told.unit)
}

/// The head of the first leaf.
pub fn first(told: &Record) -> First {
    First { opened: told.opened.clone(), complaint: told.complaint.clone() }
}

/// The draft mark with its reasons, while there are any.
pub fn draft(told: &Record) -> Option<AnyView> {
    let reason = |reason: &String| view! { <li>{reason.clone()}</li> };
    (!told.draft.is_empty()).then(|| {
        view! {
            <div class="draft__mark">
                <p>"Draft. This job is not finished."</p>
                <ul class="ticks">{told.draft.iter().map(reason).collect_view()}</ul>
            </div>
        }
        .into_any()
    })
}
