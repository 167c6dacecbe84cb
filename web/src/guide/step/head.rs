//! The head of a step, its cautions, what to look at, its parts and its tools.

use job::guide::{Beside, StepState, StepView, beside as looked_at};
use job::procedure::Act;
use leptos::prelude::*;
use words::{say, t};

use super::working::Working;
use crate::guide::rows;
use crate::parts::{Caution, Shot, State, live, words};
use crate::pictures::Picture;
use crate::pictures::section::{Section, View};

/// Stage, number, act and reason; and how it stands.
pub fn head(working: Working) -> AnyView {
    let (title, why) = working.step(|step| (step.title.clone(), step.why.clone()));
    let place = words(move || {
        let of = working.guide.look(|plan, _, _| plan.steps.len()).unwrap_or_default();
        let said = |view: &StepView| {
            let (stage, phase, number) = (view.phase.stage(), view.phase.words(), view.number);
            match view.own {
                true => say!("{stage} · {phase} · step {number} of {of} · the shop’s own"),
                false => say!("{stage} · {phase} · step {number} of {of}"),
            }
        };
        working.view(said).unwrap_or_default()
    });
    let state = Memo::new(move |_| working.view(|view| view.state.clone()));
    let stands = live(move || {
        let Some(state) = state.get().filter(|state| *state != StepState::Open) else {
            return ().into_any();
        };
        let (sign, words) = rows::sign(&state);
        let moment = untrack(|| working.guide.moment());
        let note = untrack(|| working.view(|view| rows::note(view, &moment))).unwrap_or_default();
        view! {
            <div class="line">
                <State sign words/>
                <span>{note}</span>
            </div>
        }
        .into_any()
    });
    view! {
        <div class="head">
            <p>{place}</p>
            <h1>{title}</h1>
            <p>{why}</p>
            {stands}
        </div>
    }
    .into_any()
}

/// What to wait for first.
pub fn waits(working: Working) -> AnyView {
    let waits = Memo::new(move |_| working.view(|view| view.waits.clone()).unwrap_or_default());
    live(move || {
        let wait = |words: String| view! { <Caution title=t("Wait.") words/> };
        waits.get().into_iter().map(wait).collect_view().into_any()
    })
}

/// What can be hurt; its first sentence stands out.
pub fn caution(working: Working) -> AnyView {
    let said = working.step(|step| step.caution.clone());
    if said.is_empty() {
        return ().into_any();
    }
    let (first, rest) = said.split_once(". ").unwrap_or((said.trim_end_matches('.'), ""));
    view! { <Caution title=format!("{first}.") words=rest.to_owned()/> }.into_any()
}

/// What came off, as it was: to look at while it goes back.
pub fn beside(working: Working) -> AnyView {
    let id = working.step(|step| step.id.clone());
    let shown = working.guide.look(|plan, log, _| looked_at(plan, log, &id)).unwrap_or_default();
    if shown.is_empty() {
        return ().into_any();
    }
    let one = |beside: Beside| {
        let shot = beside.photo.map(|photo| {
            view! { <Shot photo name=beside.name.clone() wide=true/> }
        });
        view! {
            <figure>
                {shot}
                <figcaption>
                    <b>{beside.name}</b>
                    <br/>
                    <span class="dim">{beside.words}</span>
                </figcaption>
            </figure>
        }
    };
    view! {
        <div class="sheet">
            <h2>{t("As it came off")}</h2>
            <div class="lookat">{shown.into_iter().map(one).collect_view()}</div>
        </div>
    }
    .into_any()
}

/// Where the pack lies that the step is about.
pub fn sketch(working: Working) -> AnyView {
    let ids = working.step(|step| step.positions.clone());
    let drawing = working.guide.of.look_once(|(_, sheet, _), _| {
        let positions = sheet.positions();
        let chosen = positions.iter().find(|position| ids.iter().any(|id| id == position.id))?;
        let section = Section::of(positions.iter().map(|position| position.id));
        Some(Section { view: View::Low, ..section }.choosing(chosen.id).draw())
    });
    let sheet = drawing.flatten().map(|drawing| {
        view! {
            <div class="sheet">
                <Picture drawing=Signal::stored(drawing) class="sk"/>
            </div>
        }
    });
    sheet.into_any()
}

/// The parts that come off or go on, and where they are bagged or ticked.
pub fn parts(working: Working) -> AnyView {
    let acts = [
        (Act::Off, t("Comes off")),
        (Act::Reject, t("Never used again")),
        (Act::Dry, t("In for the trial")),
        (Act::Back, t("Out of the trial")),
        (Act::On, t("Goes on for good")),
    ];
    let rows: Vec<AnyView> = acts
        .into_iter()
        .filter_map(|(act, title)| {
            let names: Vec<String> = working.step(|step| {
                step.parts_of(act).map(|part| t(&part.replace('-', " ")).to_owned()).collect()
            });
            let said = view! {
                <p>
                    <b>{title}</b>
                    " "
                    {names.join(", ")}
                </p>
            };
            (!names.is_empty()).then(|| said.into_any())
        })
        .collect();
    if rows.is_empty() {
        return ().into_any();
    }
    view! {
        <div class="sheet">
            <h2>{t("Parts")}</h2>
            {rows}
            <a class="btn btn--wide" href=working.guide.of.at("ladder")>
                {t("Bags and ladder")}
            </a>
        </div>
    }
    .into_any()
}

/// Tools and consumables.
pub fn tools(working: Working) -> AnyView {
    let chip =
        |name: &String| view! { <span class="chip chip--static">{t(name).to_owned()}</span> };
    let (tools, more) = working.step(|step| {
        let tools = step.tools.iter().map(chip).collect_view();
        (tools, step.consumables.iter().map(chip).collect_view())
    });
    view! {
        <div class="sheet sheet--quiet">
            <h2>{t("Tools")}</h2>
            <div class="chips">
                {tools}
                {more}
            </div>
        </div>
    }
    .into_any()
}

/// The steps before and after.
pub fn around(working: Working) -> AnyView {
    let id = working.step(|step| step.id.clone());
    let (before, after) = working
        .guide
        .look_once(|plan, _, _| {
            let at = plan.index(&id)?;
            let step = |at: Option<usize>| {
                let step = plan.steps.get(at?)?;
                Some((step.id.clone(), step.title.clone()))
            };
            Some((step(at.checked_sub(1)), step(at.checked_add(1))))
        })
        .flatten()
        .unwrap_or_default();
    let link = |way: &str, to: Option<(String, String)>| {
        to.map(|(id, title)| {
            view! {
                <a class="row" href=working.guide.at_step(&id)>
                    <p>
                        <span class="dim">{way.to_owned()}</span>
                        <br/>
                        {title}
                    </p>
                </a>
            }
        })
    };
    view! {
        <nav class="sheet sheet--quiet" aria-label=t("Steps beside this one")>
            {link(t("Step before"), before)}
            {link(t("Step after"), after)}
        </nav>
    }
    .into_any()
}
