//! The band with the readings in it, and the verdict.

use job::{Preview, Shown, figure};
use leptos::prelude::*;
use measure::Decimal;
use words::{say, t};

use super::series::Series;
use crate::parts::{Sign, State, live, words};
use crate::pictures::Picture;
use crate::pictures::band::Band;
use crate::screens::told;
use crate::shown::{gauged, writing};

/// The verdict, the spread, and the band as it fills.
#[component]
pub fn Live(series: Series) -> impl IntoView {
    let shown = move || series.of.shown();
    let verdict = Memo::new(move |_| series.look(verdict));
    let spread = words(move || {
        let spread = |preview: &Preview| {
            let judged = preview.judged.as_ref()?;
            Some(say!("spread {}", figure(judged.spread, series.check.figure(), shown())))
        };
        series.look(spread).flatten().unwrap_or_default()
    });
    let picture = live(move || {
        let missing = series.look(|preview| preview.missing.clone()).flatten();
        match series.look(|preview| band(series, preview, shown())).flatten() {
            Some(band) => {
                let drawing = band.large(writing(series.check.figure(), shown()));
                view! { <Picture drawing/> }.into_any()
            }
            None => missing.map(|missing| view! { <told::Lacks of=series.of missing/> }).into_any(),
        }
    });
    view! {
        <div class="sheet band">
            <div class="line spread">
                <span aria-live="polite">
                    {live(move || verdict.get().map(|(sign, words)| view! { <State sign words/> }).into_any())}
                </span>
                <b class="nowrap">{spread}</b>
            </div>
            {picture}
        </div>
    }
}

fn verdict(preview: &Preview) -> (Sign, String) {
    match (&preview.judged, &preview.band) {
        (Some(judged), Some(_)) => (told::sign(&judged.state), judged.state.to_string()),
        (_, None) => (Sign::Open, t("No limits").to_owned()),
        (None, Some(_)) => (Sign::Open, t("Read on").to_owned()),
    }
}

fn band(series: Series, preview: &Preview, shown: Shown) -> Option<Band> {
    let judged = preview.judged.as_ref();
    let draw = |value: Decimal| gauged(value, series.check, shown);
    Some(Band {
        name: format!("{}, {}", series.check.name(), series.check.shown_unit(shown)),
        readings: judged
            .map(|it| it.readings.iter().map(|it| draw(*it)).collect())
            .unwrap_or_default(),
        mean: judged.map(|judged| draw(judged.mean)),
        predicted: preview.predicted.as_ref().map(|it| (draw(it.mean), draw(it.expanded))),
        verdict: judged.map(|judged| judged.state.to_string()).unwrap_or_default(),
        ..job::limits(series.check, preview.band?, judged, shown)
    })
}
