//! Choices: one word of some, or one for each place.

use job::Capture;
use job::procedure::{Record, Repeats};
use leptos::prelude::*;
use words::{say, t};

use super::record::id;
use super::working::Working;
use crate::parts::{Chip, Choice, Pick, Seg, live, press};

/// Letters that fit beside each other at 360 px.
const FITS: usize = 24;
/// Letters of a chip; longer answers get a line each.
const SHORT: usize = 20;

/// The options; the last answer that was missing keeps them all at once.
pub fn choice(working: Working, at: usize, record: &Record) -> AnyView {
    match record.wanted() {
        Some(1) => one(working, at, record),
        Some(count) => each(working, at, record, Some(count)),
        None => each(working, at, record, None),
    }
}

/// The options as they are kept; [`t`] turns them where they are shown.
fn words(record: &Record) -> Vec<String> {
    record.choices.iter().map(|choice| choice.word.clone()).collect()
}

/// Letters of an option as it is shown.
fn letters(word: &str) -> usize {
    t(word).chars().count()
}

fn pick(word: String) -> Pick {
    Pick::from(t(&word))
}

fn one(working: Working, at: usize, record: &Record) -> AnyView {
    let options = words(record);
    let whole: usize = options.iter().map(|word| letters(word) + 2).sum();
    let keep = Callback::new({
        let options = options.clone();
        move |chosen: usize| {
            let word = options.get(chosen).cloned().into_iter().collect();
            working.keep(at, Capture::Chosen(word), None);
        }
    });
    let picks = if whole <= FITS {
        let picks = options.into_iter().map(pick).collect();
        let chosen = Signal::stored(None);
        view! { <Seg id=format!("{}-0", id(at)) label=record.title() picks chosen on_choose=keep/> }
            .into_any()
    } else if options.iter().all(|word| letters(word) <= SHORT) {
        let chip = |(place, word): (usize, String)| {
            let choose = Callback::new(move |()| keep.run(place));
            view! {
                <Chip pressed=Signal::stored(false) on_press=choose>
                    {t(&word).to_owned()}
                </Chip>
            }
        };
        let chips = options.into_iter().enumerate().map(chip).collect_view();
        view! {
            <div class="chips" role="group" aria-label=record.title()>
                {chips}
            </div>
        }
        .into_any()
    } else {
        let group = format!("{}-0", id(at));
        let choice = |(place, word): (usize, String)| {
            let choose = Callback::new(move |()| keep.run(place));
            let (group, chosen) = (group.clone(), Signal::stored(false));
            view! { <Choice group title=t(&word).to_owned() chosen on_choose=choose/> }
        };
        let choices = options.into_iter().enumerate().map(choice).collect_view();
        view! {
            <div role="radiogroup" aria-label=record.title()>
                {choices}
            </div>
        }
        .into_any()
    };
    view! {
        <p class="label" aria-hidden="true">
            {record.title()}
        </p>
        {picks}
    }
    .into_any()
}

/// One answer for each place; without a number of places, as many as there are.
fn each(working: Working, at: usize, record: &Record, count: Option<usize>) -> AnyView {
    let shown = RwSignal::new(count.unwrap_or(untrack(|| working.lines(at)).len().max(2)));
    let stored = StoredValue::new(record.clone());
    let answers = live(move || {
        stored.with_value(|record| {
            let places = record.places(shown.get()).into_iter().enumerate();
            let one = |(line, place)| answer(working, at, record, (line, place), count);
            places.map(one).collect_view().into_any()
        })
    });
    let more = count.is_none().then(|| {
        let more = press(Callback::new(move |()| shown.update(|shown| *shown += 1)));
        view! {
            <button class="btn btn--plain" type="button" on:click=more>
                {t("One more")}
                <span class="vh">{t(&record.label).to_owned()}</span>
            </button>
        }
    });
    view! {
        <p class="label" aria-hidden="true">
            {record.title()}
        </p>
        <div class="places">{answers}</div>
        {more}
    }
    .into_any()
}

fn answer(
    working: Working,
    at: usize,
    record: &Record,
    (line, place): (usize, String),
    count: Option<usize>,
) -> AnyView {
    let options = words(record);
    let chosen = Signal::derive({
        let options = options.clone();
        move || {
            let lines = working.lines(at);
            options.iter().position(|word| lines.get(line) == Some(word))
        }
    });
    let choose = Callback::new({
        let options = options.clone();
        move |pick: usize| {
            let word = options.get(pick).map_or("", String::as_str);
            working.set_line(at, line, word);
            let answered = untrack(|| working.lines(at)).iter().filter(|it| !it.is_empty()).count();
            if Some(answered) == count {
                working.keep_typed(at);
            }
        }
    });
    let place = match record.repeats {
        Repeats::Times(..) => say!("Place {place}"),
        _ => say!("No. {place}"),
    };
    let label = format!("{}, {}", record.title(), place.to_lowercase());
    let picks = options.into_iter().map(pick).collect();
    view! {
        <b aria-hidden="true">{place}</b>
        <Seg id=format!("{}-{line}", id(at)) label picks chosen on_choose=choose/>
    }
    .into_any()
}
