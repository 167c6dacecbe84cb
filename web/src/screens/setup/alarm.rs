//! Reading and prediction disagree: what to look at before another shim is touched.

use job::{AlarmView, CauseView, Shown, figure};
use leptos::prelude::*;
use measure::Decimal;
use words::t;

use super::Fitting;
use crate::parts::{Alarm, live, press};
use crate::pictures::Picture;
use crate::pictures::band::Band;
use crate::screens::told;
use crate::shown::{gauged, writing};

/// The alarm, where there is one.
#[component]
pub fn Disagree(fitting: Fitting) -> impl IntoView {
    let alarm = Memo::new(move |_| fitting.look(|told| told.advice.alarm.clone()).flatten());
    live(move || alarm.get().map(|alarm| view! { <Causes fitting alarm/> }).into_any())
}

#[component]
fn Causes(fitting: Fitting, alarm: AlarmView) -> impl IntoView {
    let shown = fitting.of.shown();
    let causes = alarm.causes.iter().zip(1..).map(cause).collect_view();
    let again = fitting.of.at(&format!("read/{}", alarm.check.id()));
    let (leave, says) = first_sentence(&alarm.says);
    let turn = Callback::new(move |()| fitting.all_the_same.update(|it| *it = !*it));
    let advice = move || match fitting.all_the_same.get() {
        true => t("Hide the advice"),
        false => t("Show the advice"),
    };
    view! {
        <div id="alarm" tabindex="-1">
            <Alarm title=t("Reading and prediction disagree")>
                <div class="line">{figures(&alarm, shown)}</div>
                {picture(&alarm, shown)}
                <p>
                    <b>{leave}</b>
                    " "
                    {says}
                </p>
                <div>{causes}</div>
                <div class="btns">
                    <a class="btn" href=again>
                        {t("Read again")}
                    </a>
                    <button class="btn" type="button" on:click=press(turn)>
                        {live(move || advice().into_any())}
                    </button>
                </div>
            </Alarm>
        </div>
    }
}

/// What stands in bold: the first sentence; and the rest.
fn first_sentence(says: &str) -> (String, String) {
    let end = says.find(". ").map_or(says.len(), |at| at + 1);
    let (first, rest) = says.split_at(end);
    (first.to_owned(), rest.trim_start().to_owned())
}

fn cause((cause, number): (&CauseView, i32)) -> AnyView {
    let (what, look) = first_sentence(&cause.says);
    view! {
        <div class="cause">
            <b>{number}</b>
            <p>
                <b>{what}</b>
                " "
                {look}
            </p>
        </div>
    }
    .into_any()
}

fn figures(alarm: &AlarmView, shown: Shown) -> AnyView {
    let length = |value: Decimal| figure(value, alarm.check.figure(), shown);
    let unit = alarm.check.shown_unit(shown);
    let figure = |name: &'static str, value: String, more: String| {
        view! {
            <p class="grow">
                <span class="dim">{name}</span>
                <br/>
                <span class="fig">{value}</span>
                {more}
            </p>
        }
    };
    let predicted = alarm.predicted.as_ref().map(|predicted| {
        figure(t("Predicted"), length(predicted.mean), format!(" ± {}", length(predicted.expanded)))
    });
    let read = alarm.read.map(|read| figure(t("Read"), length(read), format!(" {unit}")));
    view! {
        {predicted}
        {read}
    }
    .into_any()
}

fn picture(alarm: &AlarmView, shown: Shown) -> Option<AnyView> {
    let band = told::predicted_band(alarm.predicted.as_ref()?, shown)?;
    let band = Band { mean: alarm.read.map(|read| gauged(read, alarm.check, shown)), ..band };
    let drawing = band.small(writing(alarm.check.figure(), shown));
    Some(view! { <Picture drawing/> }.into_any())
}
