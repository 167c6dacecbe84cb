//! The hidden faults: which were found, which were told; and the whole lesson at its end.

use leptos::prelude::*;
use practice::ROUNDS;
use words::{say, t};

use super::Unit;
use crate::parts::{Sign, State};

/// What became of a fault.
struct Fault {
    name: String,
    note: String,
    sign: Sign,
    word: &'static str,
}

/// The faults of the lesson so far.
pub fn sheet(unit: Unit) -> AnyView {
    let faults = faults(unit);
    let found = faults.iter().filter(|fault| fault.sign == Sign::In).count();
    view! {
        <div class="sheet sheet--quiet">
            <div class="h">
                <h2>{say!("{ROUNDS} hidden faults")}</h2>
                <span class="nowrap dim">{say!("{found} of {ROUNDS} found")}</span>
            </div>
            <div>{faults.into_iter().map(row).collect_view()}</div>
        </div>
    }
    .into_any()
}

/// The lesson at its end, for learner and instructor.
pub fn over(unit: Unit) -> AnyView {
    view! {
        <div class="head">
            <h1 id="next" tabindex="-1">{t("What you decided")}</h1>
            <p>{t("For you and your instructor. Kept on this device until the next lesson.")}</p>
        </div>
        {sheet(unit)}
    }
    .into_any()
}

fn faults(unit: Unit) -> Vec<Fault> {
    let length = unit.length();
    let of = |at: usize| {
        let hidden = Fault {
            name: t("Hidden").to_owned(),
            note: String::new(),
            sign: Sign::Lock,
            word: t("Hidden"),
        };
        let seen = unit.lesson.with(|lesson| {
            let lesson = lesson.as_ref()?;
            Some((lesson.decided.get(at)?.clone(), lesson.round(at)?))
        });
        let Some((decided, round)) = seen else { return hidden };
        let told = round.told(decided.decision, &length);
        let chosen =
            round.decisions.get(decided.decision).map(|it| it.title.clone()).unwrap_or_default();
        let note = match decided.because.trim() {
            "" => chosen,
            because => say!("{chosen}, because: {because}"),
        };
        let (sign, word) =
            if told.is_right { (Sign::In, t("Found")) } else { (Sign::Near, t("Told")) };
        Fault { name: told.fault, note, sign, word }
    };
    (0..ROUNDS).map(of).collect()
}

fn row(fault: Fault) -> AnyView {
    view! {
        <div class="row">
            <p>
                <b>{fault.name}</b>
                <br/>
                <span class="dim">{fault.note}</span>
            </p>
            <State sign=fault.sign words=fault.word/>
        </div>
    }
    .into_any()
}
