//! The form of any instrument, drawn from its table.

use job::instrument::{Asked, NoAnswer, Takes};
use leptos::prelude::*;
use measure::Sign;
use words::{say, t};

use super::answer;
use super::choices::{Choice, cards, one, picks};
use super::clock;
use super::stages;
use super::working::Working;
use crate::parts::{
    Act, Caution, DockedPad, Field, Message, Says, Slot, Slots, Text, TextField, live, whether,
    words,
};
use crate::pictures::Picture;

/// The screen: picture and figure, the form, the rest of the answer; on a wide one the form beside both.
pub fn whole(working: Working) -> AnyView {
    let instrument = working.instrument;
    let place = working.of.map(|_| {
        view! {
            <TextField
                id="check-place"
                label=t("Where it was done, if more than one")
                value=working.place()
                placeholder=instrument.place_like()
            />
        }
    });
    let cautions = instrument.cautions.iter().map(|caution| {
        view! { <Caution title=t("Take care.") words=caution.to_string()/> }
    });
    view! {
        <div class="cols check">
            <div class="head check__head">
                <h1>{instrument.title()}</h1>
                <p>{instrument.purpose()}</p>
            </div>
            <section class="col check__top">
                {clock::running(working)}
                {answer::on_top(working)}
                {stages::shown(working)}
                {clock::acts(working)}
                {map(working)}
                {alarm(working)}
                {cautions.collect_view()}
            </section>
            <section class="col check__form">
                <div class="sheet">
                    {place}
                    {fields(working)}
                </div>
            </section>
            <section class="col">
                {answer::shown(working)}
                <p class="msg msg--refused" role="status">
                    {live(move || working.refused.get().into_any())}
                </p>
            </section>
        </div>
        <DockedPad/>
    }
    .into_any()
}

/// What can hurt a person now.
fn alarm(working: Working) -> AnyView {
    let alarm = Memo::new(move |_| {
        working.answer.with(|answer| match answer {
            Ok(answer) => answer.alarm.clone(),
            Err(lacks) => lacks.alarm.clone(),
        })
    });
    live(move || {
        let caution = alarm.get().map(|(title, words)| {
            view! { <Caution title=title words=words person=true/> }
        });
        caution.into_any()
    })
}

/// What the unit has of this kind.
fn map(working: Working) -> AnyView {
    let instrument = working.instrument;
    let drawn = move || {
        let of = working.of?;
        of.look(|(job, sheet, _), _| instrument.map(sheet, &job.guide)).flatten()
    };
    live(move || match drawn() {
        Some(drawing) => view! {
            <div class="sheet">
                <Picture drawing=Signal::stored(drawing)/>
            </div>
        }
        .into_any(),
        None => ().into_any(),
    })
}

/// The one next act: tick the stage that is now, or keep it, or what is still wanted.
pub fn act(working: Working) -> AnyView {
    let name = working.instrument.title().to_lowercase();
    let said = words(move || match stages::now(working) {
        Some((_, stage)) => stage.act,
        None => working.answer.with(|answer| match answer {
            Ok(_) => say!("Keep {name}"),
            Err(NoAnswer { refused, .. }) if !refused.is_empty() => {
                t("Look at the field").to_owned()
            }
            Err(_) => t("Type what is asked").to_owned(),
        }),
    });
    let waits = Signal::derive(move || working.answer.with(Result::is_err));
    let on_press = Callback::new(move |()| match untrack(|| stages::now(working)) {
        Some(_) => stages::tick(working),
        None => working.keep(),
    });
    view! { <Act words=said waits busy=working.busy on_press/> }.into_any()
}

/// How many places of a series stand side by side.
const ROW: usize = 4;

/// The id of a field in the page.
pub fn id(asked: &Asked) -> String {
    format!("check-{}", asked.id)
}

/// What is asked, and the unit a number there is in; a length follows the switch on the plate.
fn label(working: Working, asked: &'static Asked) -> Signal<String> {
    words(move || match working.unit_of(asked) {
        Some(unit) if unit.quantity() != measure::Quantity::Length => {
            format!("{}, {unit}", asked.label())
        }
        _ => asked.label().to_owned(),
    })
}

/// The fields in order; what follows a fold lies under it, open where something in it is typed.
fn fields(working: Working) -> Vec<AnyView> {
    let all = working.instrument.fields;
    let folded = |asked: &Asked| asked.takes == Takes::Fold;
    let mut starts: Vec<usize> = vec![0];
    starts.extend(all.iter().enumerate().filter(|(_, asked)| folded(asked)).map(|(at, _)| at));
    let ends = starts.iter().skip(1).copied().chain([all.len()]);
    starts.iter().zip(ends).map(|(start, end)| group(working, *start, end)).collect()
}

fn group(working: Working, start: usize, end: usize) -> AnyView {
    let all = working.instrument.fields.iter().enumerate();
    let asked = |(at, asked): (usize, &'static Asked)| {
        let waits = Memo::new(move |_| !working.asks(asked));
        view! { <div prop:hidden=whether(move || waits.get())>{field(working, at, asked)}</div> }
    };
    let shown = all.skip(start).take(end - start).map(asked);
    let shown = shown.collect_view();
    let title = working.instrument.fields.get(start).filter(|asked| asked.takes == Takes::Fold);
    match title {
        None => shown.into_any(),
        Some(title) => {
            // Once open for what is typed in it, it stays: nobody clears a field into hiding.
            let typed = Memo::new(move |was: Option<&bool>| {
                was == Some(&true) || (start..end).any(|at| !working.is_empty(at))
            });
            view! {
                <details class="fold" prop:open=whether(move || typed.get())>
                    <summary>{title.label()}</summary>
                    {shown}
                </details>
            }
            .into_any()
        }
    }
}

fn field(working: Working, at: usize, asked: &'static Asked) -> AnyView {
    let (says, value) = (working.says(asked), working.text(at, 0));
    match asked.takes {
        Takes::Number(_, sign) => number(working, asked, value, says, sign),
        Takes::Fold | Takes::Ticks => ().into_any(),
        Takes::Words => {
            view! { <TextField id=id(asked) label=asked.label() value says/> }.into_any()
        }
        Takes::Numbers(_, _, places) => numbers(working, at, asked, places),
        Takes::Times(places) => view! {
            {clock::begin(working)}
            {numbers(working, at, asked, places)}
        }
        .into_any(),
        Takes::Acts(acts) => clock::acts_without(working, asked, acts),
        Takes::Usual(unit, sign, words) => view! {
            {number(working, asked, value, says, sign)}
            {picks(working, at, asked, &Choice { words, unit: unit.symbol(), units: &[] })}
        }
        .into_any(),
        Takes::One(words) => one(working, at, asked, &Choice { words, ..Choice::default() }),
        Takes::Cards(options) => cards(working, at, asked, options),
        Takes::Unit(units) => {
            let symbols: Vec<&str> = units.iter().map(|unit| unit.symbol()).collect();
            one(working, at, asked, &Choice { words: &symbols, units, ..Choice::default() })
        }
    }
}

fn number(
    working: Working,
    asked: &'static Asked,
    value: Text,
    says: Signal<Option<Says>>,
    sign: Sign,
) -> AnyView {
    let (label, signed) = (label(working, asked), sign == Sign::Any);
    let unit = Signal::derive(move || working.unit_of(asked));
    view! { <Field id=id(asked) label name=asked.label() value says signed unit/> }.into_any()
}

fn numbers(
    working: Working,
    at: usize,
    asked: &'static Asked,
    places: &'static [&'static str],
) -> AnyView {
    let slot = move |line: usize, place: &'static str| Slot {
        id: format!("{}-{line}", id(asked)),
        place: t(place).to_owned(),
        spoken: match places {
            [_] => format!("{}, {}", asked.label(), t(place)),
            _ => say!("{label} at {place}", label = asked.label(), place = t(place)),
        },
        value: working.text(at, line),
        says: Signal::stored(None),
        unit: Signal::derive(move || working.unit_of(asked)),
    };
    // A log shows its next lines once these are full; other series are whole from the start.
    let is_log = places.first() == Some(&"1");
    let filled = Memo::new(move |_| if is_log { working.filled(places) } else { places.len() });
    let rows = (0..places.len()).step_by(ROW).map(|from| {
        let line = |(at, place): (usize, &&'static str)| slot(from + at, place);
        let slots: Vec<Slot> = places.iter().skip(from).take(ROW).enumerate().map(line).collect();
        view! {
            <div class="slots8" prop:hidden=whether(move || filled.get() < from)>
                <Slots slots/>
            </div>
        }
    });
    let rows = rows.collect_view();
    view! {
        <p class="label">{label(working, asked)}</p>
        {rows}
        <Message id=format!("{}-says", id(asked)) says=working.says(asked)/>
    }
    .into_any()
}
