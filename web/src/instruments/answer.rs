//! What an instrument says: verdict, figures, picture, what it cannot see, cautions, and why.

use job::instrument::Answer;
use leptos::prelude::*;
use measure::Verdict;

use super::working::Working;
use crate::parts::{Caution, Facts, Sign, State, live};
use crate::pictures::Picture;

/// The answer to what is typed; while nothing is, to what was kept last.
pub fn shown(working: Working) -> AnyView {
    live(move || {
        let now = working.answer.get();
        match now {
            Ok(answer) => answered("Answer", answer),
            Err(lacks) if working.is_typed() => wanted(&lacks.wanted),
            Err(lacks) => {
                let kept = working.last().and_then(|values| working.says_to(&values));
                kept.map_or_else(|| wanted(&lacks.wanted), |answer| answered("Kept", answer))
            }
        }
    })
}

fn wanted(wanted: &[&'static str]) -> AnyView {
    if wanted.is_empty() {
        return ().into_any();
    }
    let wanted = wanted.iter().map(|label| view! { <li>{*label}</li> }).collect_view();
    view! {
        <div class="sheet">
            <h2>"Still wanted"</h2>
            <ul>{wanted}</ul>
        </div>
    }
    .into_any()
}

fn answered(title: &'static str, answer: Answer) -> AnyView {
    let state = answer.verdict.map(|verdict| match verdict {
        Verdict::InBand => view! { <State sign=Sign::In/> },
        Verdict::NearLimit => view! { <State sign=Sign::Near/> },
        Verdict::Out => view! { <State sign=Sign::Out/> },
        Verdict::CannotProve => view! { <State sign=Sign::Open words="Cannot prove"/> },
    });
    let picture = answer.picture.map(|drawing| {
        view! {
            <div class="sheet">
                <Picture drawing=Signal::stored(drawing)/>
            </div>
        }
    });
    let cautions = answer.cautions.into_iter().map(|words| {
        view! { <Caution title="Take care." words=words/> }
    });
    view! {
        {picture}
        <div class="sheet">
            <div class="h">
                <h2>{title}</h2>
                {state}
            </div>
            {answer.says.into_iter().map(|says| view! { <p>{says}</p> }).collect_view()}
            <Facts facts=answer.figures/>
            {answer.blind.map(|blind| view! { <p class="dim">{blind}</p> })}
        </div>
        {cautions.collect_view()}
        {why(answer.explained)}
    }
    .into_any()
}

fn why(explained: Vec<String>) -> Option<impl IntoView> {
    (!explained.is_empty()).then(|| {
        view! {
            <details class="fold">
                <summary>"Why this?"</summary>
                {explained.into_iter().map(|line| view! { <p>{line}</p> }).collect_view()}
            </details>
        }
    })
}
