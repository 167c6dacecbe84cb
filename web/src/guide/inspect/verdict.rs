//! The verdict: ticks propose, the person decides.

use job::PartVerdict;
use leptos::prelude::*;
use words::{say, t};

use super::state::{Judging, VERDICTS, told as told_signs};
use crate::page::lead_to;
use crate::parts::{Act, Glyph, Icon, Shot, Sign, TakePhoto, TextField, live, whether};

/// The word and the sign of a verdict.
pub fn told(verdict: PartVerdict) -> (&'static str, Sign, Glyph) {
    match verdict {
        PartVerdict::Reject => (t("Reject"), Sign::Out, Glyph::Out),
        PartVerdict::Watch => (t("Watch"), Sign::Near, Glyph::Near),
        PartVerdict::Reuse => (t("Reuse"), Sign::In, Glyph::In),
    }
}

/// The sheet with the verdict.
pub fn sheet(judging: Judging) -> AnyView {
    if judging.at().is_none() {
        return ().into_any();
    }
    let picks = VERDICTS.iter().enumerate().map(|(at, verdict)| {
        let verdict = *verdict;
        let (word, _, glyph) = told(verdict);
        let chosen = whether(move || judging.verdict() == Some(verdict));
        view! {
            <label>
                <input
                    type="radio"
                    name="verdict"
                    prop:checked=chosen
                    on:change=move |_| judging.decide(at)
                />
                <Icon glyph/>
                {word}
            </label>
        }
    });
    view! {
        <div class="sheet">
            <h2>{t("Your verdict")}</h2>
            <div class="seg seg--verdict" id="verdict" role="radiogroup" aria-label=t("Verdict")>
                {picks.collect_view()}
            </div>
            {live(move || ticks_say(judging))}
            <TextField id="why" label=t("Reason for the record") value=judging.reason()/>
            {live(move || kept_photo(judging))}
            <TakePhoto
                id="photo"
                title=t("Photo of the place")
                note=t("A reject needs one: the sign in view, and the number if there is one")
                draft=judging.photo
            />
            {judging.acting.says()}
        </div>
    }
    .into_any()
}

fn ticks_say(judging: Judging) -> AnyView {
    let Some(verdict) = judging.ticks_say() else { return ().into_any() };
    let word = told(verdict).0.to_lowercase();
    view! {
        <p>
            <b>{say!("Ticks say {word}:")}</b>
            {format!(" {}.", told_signs(&judging.signs()))}
        </p>
    }
    .into_any()
}

fn kept_photo(judging: Judging) -> AnyView {
    let judged = judging
        .open()
        .and_then(|open| Some((open.judged?.photo?, t(&open.criteria.name).to_owned())));
    match judged {
        Some((photo, name)) => view! { <Shot photo name wide=true/> }.into_any(),
        None => ().into_any(),
    }
}

/// The one next act.
pub fn act(judging: Judging) -> AnyView {
    let touched = judging.is_touched() || judging.has_photo();
    let open = judging.open().is_none_or(|open| open.judged.is_none());
    match (judging.verdict(), judging.next()) {
        (Some(verdict), _) if touched => {
            let words = say!("Keep verdict: {}", told(verdict).0.to_lowercase());
            let press = Callback::new(move |()| judging.keep());
            view! { <Act words busy=judging.acting.busy glyph=Glyph::In on_press=press/> }
                .into_any()
        }
        (None, _) if touched => waits(t("Choose a verdict"), "verdict"),
        _ if open => waits(t("Tick what you see"), "signs"),
        (_, Some(next)) => {
            let words = say!("Judge {}", t(&next.criteria.name).to_lowercase());
            let press = Callback::new(move |()| judging.choose(&next.criteria.part));
            view! { <Act words on_press=press/> }.into_any()
        }
        _ => {
            let job = judging.guide.of.at_job();
            view! { <Act words=t("Job") href=Signal::stored(job)/> }.into_any()
        }
    }
}

fn waits(words: &'static str, place: &'static str) -> AnyView {
    let lead = Callback::new(move |()| lead_to(place));
    view! { <Act words waits=true on_waiting=lead/> }.into_any()
}
