//! Facts in pairs, and one setting a row.

use leptos::prelude::*;

use super::titled::titled;

/// A fact: what it is, and how it stands.
pub type Fact = (&'static str, String);

/// Facts, one under the other.
#[component]
pub fn Facts(
    /// In the order they are read.
    facts: Vec<Fact>,
) -> impl IntoView {
    let fact = |(name, value): Fact| {
        view! {
            <dt>{name}</dt>
            <dd>{value}</dd>
        }
    };
    view! { <dl class="kv">{facts.into_iter().map(fact).collect_view()}</dl> }
}

/// One setting: its name, and the control beside or below it.
#[component]
pub fn Setting(
    /// What is set here.
    #[prop(into)]
    title: Signal<String>,
    /// What it does.
    #[prop(optional, into)]
    note: Option<Signal<String>>,
    /// The control fits beside the name even on a phone.
    #[prop(optional)]
    beside: bool,
    children: Children,
) -> impl IntoView {
    view! {
        <div class=if beside { "setrow setrow--2" } else { "setrow" }>
            <p>
                {titled(title, note)}
            </p>
            {children()}
        </div>
    }
}
