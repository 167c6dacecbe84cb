//! The waits of the job, and what can be done meanwhile.

use job::guide::ClockView;
use job::{BookId, Guided};
use leptos::prelude::*;
use words::t;

use crate::guide::Guide;
use crate::guide::acting::Acting;
use crate::parts::{Sign, State, live, press};

/// Every wait that was not put away.
pub fn sheet(guide: Guide) -> AnyView {
    let acting = Acting::here();
    let rows = live(move || {
        let clocks = guide.clocks();
        let none = clocks.views.is_empty().then(|| {
            view! { <p class="dim">{t("None. A step that has to wait starts its own.")}</p> }
        });
        let rows = clocks.views.iter().map(|view| row(guide, acting, view)).collect_view();
        let meanwhile = (!clocks.views.is_empty()).then(|| meanwhile(guide));
        view! {
            {none}
            <div>{rows}</div>
            {meanwhile}
        }
        .into_any()
    });
    view! {
        <div class="sheet" id="clocks" tabindex="-1">
            <h2>{t("Clocks")}</h2>
            {rows}
            {acting.says()}
        </div>
    }
    .into_any()
}

fn row(guide: Guide, acting: Acting, view: &ClockView) -> AnyView {
    let clock = view.id.clone();
    let stop = press(Callback::new(move |()| {
        let fact = Guided::ClockStopped { clock: clock.clone(), reason: String::new() };
        let facts = vec![(BookId::Job(guide.of.id()), fact.into())];
        acting.record(facts, Vec::new(), Box::new(|| ()));
    }));
    let class = if view.done { "dial dial--big dial--done" } else { "dial dial--big" };
    let end = match view.done {
        true => view! { <State sign=Sign::In words=t("Done")/> }.into_any(),
        false => view! {
            <span class="fig">
                {view.left}
                <small>{t(" min")}</small>
            </span>
        }
        .into_any(),
    };
    let (does, name) = (if view.done { t("Put away") } else { t("Stop") }, view.name.clone());
    view! {
        <div class="row row--3">
            <span class=class style:--p=view.percent.to_string()></span>
            <p>
                <a href=guide.at_step(&view.step)>
                    <b>{view.name.clone()}</b>
                </a>
                <br/>
                <span class="dim">{view.says.clone()}</span>
            </p>
            {end}
        </div>
        <button class="btn btn--plain btn--wide" type="button" on:click=stop>
            {format!("{does}: {}", name.to_lowercase())}
        </button>
    }
    .into_any()
}

/// The first open steps that wait for nothing.
fn meanwhile(guide: Guide) -> AnyView {
    let steps = guide.look(|_, _, course| {
        let steps = course.meanwhile().take(3).map(|view| {
            let words = format!("{} {}", view.number, view.title);
            view! {
                <li>
                    <a class="row" href=guide.at_step(&view.id)>{words}</a>
                </li>
            }
        });
        steps.collect::<Vec<_>>()
    });
    let steps = steps.unwrap_or_default();
    if steps.is_empty() {
        return ().into_any();
    }
    view! {
        <div>
            <h3>{t("Do meanwhile")}</h3>
            <ul>{steps}</ul>
        </div>
    }
    .into_any()
}
