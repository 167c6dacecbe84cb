//! The form of any instrument, drawn from its table.

use job::instrument::{Asked, NoAnswer, Takes};
use leptos::prelude::*;

use super::answer;
use super::working::Working;
use crate::parts::{
    Act, Caution, DockedPad, Field, Message, Pick, Seg, Slot, Slots, TextField, live, words,
};

/// The screen's two columns.
pub fn whole(working: Working) -> AnyView {
    let instrument = working.instrument;
    let place = working.of.map(|_| {
        view! {
            <TextField
                id="check-place"
                label="Where it was done, if more than one"
                value=working.place
                placeholder="prop shaft"
            />
        }
    });
    let cautions = instrument.cautions.iter().map(|caution| {
        view! { <Caution title="Take care." words=caution.to_string()/> }
    });
    let fields = instrument.fields.iter().enumerate().map(|(at, asked)| field(working, at, asked));
    view! {
        <div class="cols">
            <section class="col">
                <div class="head">
                    <h1>{instrument.title}</h1>
                    <p>{instrument.purpose}</p>
                </div>
                {cautions.collect_view()}
                <div class="sheet">
                    {place}
                    {fields.collect_view()}
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

/// The one next act: keep it, or what is still wanted.
pub fn act(working: Working) -> AnyView {
    let name = working.instrument.title.to_lowercase();
    let said = words(move || {
        working.answer.with(|answer| match answer {
            Ok(_) => format!("Keep {name}"),
            Err(NoAnswer { refused, .. }) if !refused.is_empty() => "Look at the field".to_owned(),
            Err(_) => "Type what is asked".to_owned(),
        })
    });
    let waits = Signal::derive(move || working.answer.with(Result::is_err));
    let on_press = Callback::new(move |()| working.keep());
    view! { <Act words=said waits busy=working.busy on_press/> }.into_any()
}

fn id(asked: &Asked) -> String {
    format!("check-{}", asked.id)
}

fn label(asked: &Asked) -> String {
    let unit = match asked.takes {
        Takes::Number(unit, _) | Takes::Numbers(unit, ..) if unit != measure::Unit::Millimetre => {
            format!(", {unit}")
        }
        _ => String::new(),
    };
    format!("{}{unit}", asked.label)
}

fn field(working: Working, at: usize, asked: &'static Asked) -> AnyView {
    let (says, value) = (working.says(asked), working.text(at, 0));
    match asked.takes {
        Takes::Number(_, sign) => {
            let signed = sign == measure::Sign::Any;
            view! { <Field id=id(asked) label=label(asked) value says signed/> }.into_any()
        }
        Takes::Words => {
            view! { <TextField id=id(asked) label=label(asked) value says/> }.into_any()
        }
        Takes::Numbers(_, _, places) => numbers(working, at, asked, places),
        Takes::One(options) => one(working, at, asked, options),
    }
}

fn numbers(
    working: Working,
    at: usize,
    asked: &'static Asked,
    places: &'static [&'static str],
) -> AnyView {
    let slot = |(line, place): (usize, &&str)| Slot {
        id: format!("{}-{line}", id(asked)),
        place: (*place).to_owned(),
        spoken: format!("{} at {place}", asked.label),
        value: working.text(at, line),
        says: Signal::stored(None),
    };
    let slots: Vec<Slot> = places.iter().enumerate().map(slot).collect();
    view! {
        <p class="label">{label(asked)}</p>
        <div class="slots8">
            <Slots slots/>
        </div>
        <Message id=format!("{}-says", id(asked)) says=working.says(asked)/>
    }
    .into_any()
}

fn one(
    working: Working,
    at: usize,
    asked: &'static Asked,
    options: &'static [&'static str],
) -> AnyView {
    let value = working.text(at, 0);
    let chosen = Signal::derive(move || options.iter().position(|option| *option == value.get()));
    let on_choose = Callback::new(move |place: usize| {
        let word = options.get(place).copied().unwrap_or_default();
        working.set(at, 0, word.to_owned());
    });
    let picks: Vec<Pick> = options.iter().map(|option| Pick::from(*option)).collect();
    view! {
        <p class="label">{asked.label}</p>
        <Seg id=id(asked) label=asked.label picks chosen on_choose/>
        <Message id=format!("{}-says", id(asked)) says=working.says(asked)/>
    }
    .into_any()
}
