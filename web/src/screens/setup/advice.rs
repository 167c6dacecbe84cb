//! The card "Fit next": which shims, what each gauge will then read, what that reopens.

use job::{AdviceStatus, AdviceView, Check, Figure, PackAct, PackView, Predicted, SetUp, figure};
use leptos::prelude::*;
use measure::real;
use words::{say, t};

use super::Fitting;
use super::others::Others;
use crate::parts::{Sign, State, Tag, live, press, words};
use crate::pictures::Picture;
use crate::pictures::tin::{Shim, stack};
use crate::screens::frame::OpenJob;
use crate::screens::told;
use crate::shown::writing;

/// The advice; while reading and prediction disagree, only if it is asked for.
#[component]
pub fn FitNext(fitting: Fitting) -> impl IntoView {
    live(move || {
        let is_kept_back = |told: &SetUp| {
            let advice = &told.advice;
            let waits = advice.alarm.is_some() && !fitting.all_the_same.get();
            waits || advice.status == AdviceStatus::PacksUnknown
        };
        match fitting.look(is_kept_back) {
            Some(false) => fitting.look(|told| card(fitting, told)).into_any(),
            _ => ().into_any(),
        }
    })
}

fn card(fitting: Fitting, told: &SetUp) -> AnyView {
    let advice = &told.advice;
    let changed: Vec<&PackView> =
        advice.packs.iter().filter(|pack| pack.act == PackAct::Fit).collect();
    let trial = (!changed.is_empty()).then(|| say!("trial {}", advice.trial));
    view! {
        <div class="fit" id="advice" tabindex="-1">
            <div class="fit__top">
                <h2>{advice.headline.clone()}</h2>
                <span class="nowrap">{trial}</span>
            </div>
            <div class="fit__body">
                {sentences(advice)}
                {lacks(fitting.of, told)}
                {changed.iter().map(|pack| change(fitting.of, pack)).collect_view()}
                {predictions(fitting.of, told)}
                <div>{advice.packs.iter().map(|pack| row(fitting.of, pack)).collect_view()}</div>
                {reopens(advice)}
                {ways(fitting)}
                <Others fitting/>
            </div>
        </div>
    }
    .into_any()
}

/// What is said before the packs: what is in the way, what to buy, what to look at.
fn sentences(advice: &AdviceView) -> AnyView {
    let own = (!advice.says.is_empty()).then_some(&advice.says);
    let all = own.into_iter().chain(&advice.conflicts).chain(&advice.buy).chain(&advice.look);
    all.map(|says| view! { <p>{says.clone()}</p> }).collect_view().into_any()
}

/// The way to what the sheet lacks.
fn lacks(of: OpenJob, told: &SetUp) -> Option<AnyView> {
    let is_wanted = told.advice.status == AdviceStatus::SheetIncomplete;
    let missing =
        told.checks.iter().find_map(|check| check.missing.as_ref()).filter(|_| is_wanted)?;
    let field = *missing.fields.first()?;
    let words = say!("Type {}", field.facts().name());
    Some(view! { <a class="btn" href=of.at_field(field)>{words}</a> }.into_any())
}

/// One pack that is changed: its shims to scale, its thickness, what goes out and in.
fn change(of: OpenJob, pack: &PackView) -> AnyView {
    let shown = of.shown();
    let length = |value| figure(value, Figure::Shim, shown);
    let shims: Vec<Shim> = pack
        .shims
        .iter()
        .map(|shim| Shim {
            thickness: real::from_decimal(shim.net),
            words: length(shim.net),
            count: shim.count.clone(),
        })
        .collect();
    let spread = format!("± {}", length(pack.expanded));
    let (name, total) =
        (format!("{}, {}", pack.slot.tag(), shown.units.length), length(pack.total));
    view! {
        <div class="packed">
            <Picture drawing=stack(&shims)/>
            <div class="grow">
                <p class="dim">{name}</p>
                <p class="fig">{total}</p>
                <p class="dim">{spread}</p>
            </div>
        </div>
        <p>{pack.says.clone()}</p>
    }
    .into_any()
}

/// What the gauges will read that are read again.
fn predictions(of: OpenJob, told: &SetUp) -> AnyView {
    let reopens = &told.advice.reopens;
    let wanted = told.advice.predicted.iter().filter(|it| reopens.contains(&it.check));
    let arm = |check: Check| told.checks.iter().find(|it| it.check == check).and_then(|it| it.arm);
    let arm_words = |check: Check| {
        let shown = of.shown();
        let radius = arm(check).map(|radius| figure(radius, Figure::Radius, shown));
        radius
            .map(|radius| say!(" at your {radius} {} arm", shown.units.length))
            .unwrap_or_default()
    };
    let wanted: Vec<&Predicted> = wanted.collect();
    match wanted.as_slice() {
        [one] => prediction(of, one, &arm_words(one.check)),
        [] => ().into_any(),
        all => {
            let rows = all.iter().map(|it| short(of, it)).collect_view();
            view! {
                <div>
                    <p>
                        <b>{t("You will read")}</b>
                    </p>
                    {rows}
                </div>
            }
            .into_any()
        }
    }
}

/// The one prediction, large.
fn prediction(of: OpenJob, predicted: &Predicted, at: &str) -> AnyView {
    let what = format!(" {}{at}", predicted.check.short());
    let (mean, more) = figures(of, predicted);
    view! {
        <div>
            <p>
                <b>{t("You will read")}</b>
                <span class="dim">{what}</span>
            </p>
            <p>
                <span class="fig fig--5">{mean}</span>
                <b class="t-2">{more}</b>
            </p>
            {band(of, predicted)}
            <p>{predicted.says.clone()}</p>
        </div>
    }
    .into_any()
}

/// One prediction of several.
fn short(of: OpenJob, predicted: &Predicted) -> AnyView {
    let (mean, more) = figures(of, predicted);
    view! {
        <div class="pred">
            <p class="line spread">
                <span class="dim">{predicted.check.short()}</span>
                <span class="nowrap">
                    <b class="t-2">{mean}</b>
                    {more}
                </span>
            </p>
            {band(of, predicted)}
        </div>
    }
    .into_any()
}

/// Mean, then ± and unit.
fn figures(of: OpenJob, predicted: &Predicted) -> (String, String) {
    let (shown, check) = (of.shown(), predicted.check);
    let figure = |value| figure(value, check.figure(), shown);
    let more = format!(" ± {} {}", figure(predicted.expanded), check.shown_unit(shown));
    (figure(predicted.mean), more)
}

fn band(of: OpenJob, predicted: &Predicted) -> Option<AnyView> {
    let shown = of.shown();
    let band = told::predicted_band(predicted, shown)?;
    let drawing = band.small(writing(predicted.check.figure(), shown));
    Some(view! { <Picture drawing/> }.into_any())
}

/// A pack in the order of work: kept or fitted, and the state of the check it sets.
fn row(of: OpenJob, pack: &PackView) -> AnyView {
    let length = figure(pack.total, Figure::Shim, of.shown());
    let (words, sign, word) = match pack.act {
        PackAct::Fit => (say!("Fit {length}"), Sign::Open, t("Change").to_owned()),
        PackAct::Keep if pack.held => {
            (say!("Held {length}"), told::sign(&pack.state), pack.state.to_string())
        }
        PackAct::Keep => (say!("Keep {length}"), told::sign(&pack.state), pack.state.to_string()),
        PackAct::Unknown => (t("Not written down").to_owned(), Sign::Open, t("Open").to_owned()),
    };
    let words = match pack.act {
        PackAct::Fit => view! { <b>{words}</b> }.into_any(),
        PackAct::Keep | PackAct::Unknown => words.into_any(),
    };
    view! {
        <div class="packrow">
            <Tag words=pack.slot.tag()/>
            <p>{words}</p>
            <State sign words=word/>
        </div>
    }
    .into_any()
}

fn reopens(advice: &AdviceView) -> Option<AnyView> {
    let (word, what) = advice.reopens_says.split_once(' ')?;
    Some(view! { <p><b>{word.to_owned()}</b>" "{what.to_owned()}</p> }.into_any())
}

/// Where else to look.
fn ways(fitting: Fitting) -> AnyView {
    let turn = Callback::new(move |()| fitting.others.update(|it| *it = !*it));
    view! {
        <div class="btns">
            <button
                class="btn"
                type="button"
                aria-expanded=words(move || fitting.others.get().to_string())
                on:click=press(turn)
            >
                {t("Other packs")}
            </button>
            <a class="btn" href="#why">
                {t("Why this?")}
            </a>
        </div>
    }
    .into_any()
}
