//! The readings of the virtual gauges, and the decision.

use job::{Figure, figure};
use leptos::prelude::*;
use practice::{ROUNDS, Seen};
use words::{key, say, t};

use super::Unit;
use crate::parts::{Choice, Tag, Text, TextField, whether};
use crate::pictures::Picture;
use crate::pictures::band::Band;
use crate::shown::{drawn, writing};

/// Every check: the readings, and the band with what was predicted.
pub fn readings(unit: Unit) -> AnyView {
    let Some(round) = unit.round.get() else { return ().into_any() };
    let shown = unit.shown.get();
    let at = unit.lesson.with(|it| it.as_ref().map_or(0, |it| it.at));
    let farthest = round.checks.get(round.farthest).map(|seen| seen.name.to_lowercase());
    let sheets = round.checks.iter().map(|seen| check(unit, seen)).collect_view();
    let packs = round.packs.iter().map(|pack| {
        let total = figure(pack.total, Figure::Shim, shown);
        let now = match pack.is_changed {
            true => say!("changed, now {total}."),
            false => say!("holds {total}."),
        };
        view! {
            <p>
                <Tag words=pack.position.clone()/>
                " "
                {now}
            </p>
        }
    });
    view! {
        <div class="head">
            <p>{say!("Fault {} of {ROUNDS} · {}", at + 1, farthest.unwrap_or_default())}</p>
            <h1 id="next" tabindex="-1">{t("What do you do next?")}</h1>
        </div>
        {sheets}
        <div class="sheet">{packs.collect_view()}</div>
    }
    .into_any()
}

fn check(unit: Unit, seen: &Seen) -> AnyView {
    let shown = unit.shown.get();
    let length = unit.length();
    let stops: &[&str] = if seen.readings.len() == 4 {
        &["0°", "90°", "180°", "270°"]
    } else {
        &[key!("1st"), key!("2nd"), key!("3rd")]
    };
    let cells = stops.iter().zip(&seen.readings).map(|(stop, reading)| {
        view! {
            <span class="cell">
                <small>{t(stop)}</small>
                <b>{length(*reading)}</b>
            </span>
        }
    });
    let draw = |mm| drawn(mm, shown);
    let band = Band {
        name: format!("{}, {}", seen.name, shown.units.length),
        low: draw(seen.band.0),
        high: draw(seen.band.1),
        readings: seen.readings.iter().map(|mm| draw(*mm)).collect(),
        mean: Some(draw(seen.mean)),
        predicted: Some((draw(seen.predicted.0), draw(seen.predicted.1))),
        ..Band::default()
    };
    let (predicted, expanded) = seen.predicted;
    let said = say!("{} ± {} was said before.", length(predicted), length(expanded));
    view! {
        <div class="sheet">
            <h2>{seen.name.clone()}</h2>
            <div class="four">{cells.collect_view()}</div>
            <Picture drawing=Signal::stored(band.small(writing(Figure::Reading, shown)))/>
            <p>{said}</p>
        </div>
    }
    .into_any()
}

/// What can be done next.
pub fn decisions(unit: Unit) -> AnyView {
    let Some(round) = unit.round.get() else { return ().into_any() };
    let choices = round.decisions.iter().enumerate().map(|(at, decision)| {
        view! {
            <Choice
                group="decision"
                title=Signal::stored(decision.title.clone())
                note=Signal::stored(decision.note.clone())
                chosen=whether(move || unit.chosen.get() == Some(at))
                on_choose=Callback::new(move |()| unit.chosen.set(Some(at)))
            />
        }
    });
    view! {
        <div class="flow" role="radiogroup" aria-label=t("Your decision")>
            {choices.collect_view()}
        </div>
    }
    .into_any()
}

/// The learner's own reason.
pub fn because(unit: Unit) -> AnyView {
    let value = Text::new(unit.because.into(), Callback::new(move |text| unit.type_because(text)));
    view! {
        <div class="sheet">
            <TextField id="because" label=t("Because…") value/>
            <p class="small">{t("Your reason is read by the instructor. Nothing is told until you decide.")}</p>
        </div>
    }
    .into_any()
}

/// The decision that is chosen, in words.
pub fn title(unit: Unit) -> String {
    let at = unit.chosen.get();
    let title = unit.round.with(|round| {
        at.and_then(|at| round.as_ref()?.decisions.get(at).map(|it| it.title.clone()))
    });
    title.unwrap_or_default()
}
