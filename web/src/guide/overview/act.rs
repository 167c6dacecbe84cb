//! The blue button of the job: the scope first, then the step to carry on with.

use job::guide::wake;
use leptos::prelude::*;
use words::{say, t};

use super::scope::Choosing;
use crate::guide::open::Lacks;
use crate::page::lead_to;
use crate::parts::{Act, live, whether, words};

/// The next act of the job.
pub fn next(choosing: Choosing) -> AnyView {
    let guide = choosing.guide;
    let lacks = Memo::new(move |_| guide.lacks());
    live(move || match lacks.get() {
        None => carry_on(choosing),
        Some(Lacks::Scope) => begin(choosing),
        Some(Lacks::Coming | Lacks::Procedure) => {
            view! { <Act words=t("Set-up") href=guide.of.at("setup")/> }.into_any()
        }
    })
}

fn begin(choosing: Choosing) -> AnyView {
    let words = words(move || match choosing.chosen() {
        Some(scope) => say!("Start: {}", scope.words().to_lowercase()),
        None => t("Choose the scope").to_owned(),
    });
    let keep = Callback::new(move |()| choosing.keep());
    let waits = whether(move || choosing.chosen().is_none());
    let lead = Callback::new(move |()| lead_to("main"));
    view! { <Act words waits busy=choosing.acting.busy on_press=keep on_waiting=lead/> }.into_any()
}

fn carry_on(choosing: Choosing) -> AnyView {
    let guide = choosing.guide;
    let next = Memo::new(move |_| {
        let moment = guide.moment();
        let told = guide.look(|_, log, course| {
            let wake = wake(course, log, &moment);
            let view = course.step(wake.step.as_deref()?)?;
            let words = if log.steps.is_empty() && log.captures.is_empty() {
                say!("Start: {}", view.act())
            } else {
                say!("Carry on: {}", view.act())
            };
            Some((words, guide.at_step(&view.id)))
        });
        told.flatten().unwrap_or_else(|| (t("Record").to_owned(), guide.of.at("record")))
    });
    let href = Signal::derive(move || next.get().1);
    view! { <Act words=words(move || next.get().0) href/> }.into_any()
}
