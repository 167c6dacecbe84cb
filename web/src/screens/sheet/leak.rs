//! What the manual asks of the leak test, stage by stage. All of it may stay empty.

use job::{Field, Group, LeakPart, LeakStage};
use leptos::prelude::*;
use words::t;

use super::limits::{measured, part_state};
use super::typing::Typing;
use crate::parts::{Pair, TextField, whether};

/// The stages of the leak test.
#[component]
pub fn LeakStages(typing: Typing) -> impl IntoView {
    view! {
        <div class="sheet">
            <div class="h">
                <h2>{Group::Leak.name()}</h2>
                {part_state(typing, Group::Leak)}
            </div>
            <p class="small">
                {t("What your manual asks of each stage. The set-up needs none of it; the leak test of a job takes it from here.")}
            </p>
            {LeakStage::ALL.map(|stage| fields(typing, stage)).collect_view()}
            {text(typing, Field::LeakSource, t("own manual, page"))}
        </div>
    }
}

/// One stage, folded until something stands in it.
fn fields(typing: Typing, stage: LeakStage) -> AnyView {
    // Once open for what stands in it, it stays: nobody clears a field into hiding.
    let is_open = Memo::new(move |was: Option<&bool>| {
        let stands = |field: Field| !typing.text(field).is_empty();
        was == Some(&true) || stage.fields().into_iter().any(stands)
    });
    let number = move |part| measured(typing, stage.field(part));
    view! {
        <details class="fold" prop:open=whether(move || is_open.get())>
            <summary>{stage.name()}</summary>
            <Pair alone=true>{number(LeakPart::Limit)} {number(LeakPart::Pressure)}</Pair>
            <Pair alone=true>{number(LeakPart::Time)} {number(LeakPart::MostLost)}</Pair>
            {text(typing, stage.field(LeakPart::Because), t("such as a one-way seal"))}
        </details>
    }
    .into_any()
}

fn text(typing: Typing, field: Field, placeholder: &'static str) -> AnyView {
    let facts = field.facts();
    let (value, says) = (typing.text(field), typing.says(field));
    view! { <TextField id=facts.id label=facts.label() value says placeholder/> }.into_any()
}
