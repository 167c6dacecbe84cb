//! What was written side by side, for a person to judge.

use job::files::{Beside, Stands};
use job::{Entry, hour_minute};
use leptos::prelude::*;
use words::{say, t};

use super::{BringIn, Looked};
use crate::device::now::utc_offset_minutes;
use crate::parts::{Choice, Sign, State};

/// Every pair: those to judge first, then those that agree.
pub fn pairs(at: BringIn, looked: &Looked) -> AnyView {
    let all = looked.changes.books.iter();
    let all = all.flat_map(|book| book.beside.iter().map(|pair| (book.title.clone(), pair)));
    let (agree, judge): (Vec<_>, Vec<_>) = all.partition(|(_, pair)| pair.agree());
    let judge = judge.into_iter().enumerate();
    let judge: Vec<AnyView> =
        judge.map(|(number, (title, pair))| to_judge(at, number, &title, pair)).collect();
    let agree: Vec<AnyView> = agree.into_iter().map(|(_, pair)| agrees(pair)).collect();
    view! {
        {judge}
        {agree}
    }
    .into_any()
}

fn to_judge(at: BringIn, number: usize, title: &str, pair: &Beside) -> AnyView {
    let is = move |side: Option<Stands>| {
        Signal::derive(move || {
            at.judged.with(|judged| judged.get(number).copied().flatten() == Some(side))
        })
    };
    let choose = move |side: Option<Stands>| {
        Callback::new(move |()| {
            at.judged.update(|judged| {
                if let Some(place) = judged.get_mut(number) {
                    *place = Some(side);
                }
            });
        })
    };
    let sides = [
        (Some(Stands::Ours), t("Written here").to_owned(), said(pair.ours.last())),
        (Some(Stands::Theirs), t("In the file").to_owned(), said(pair.theirs.last())),
        (
            None,
            t("Not sure: leave it").to_owned(),
            t("The later one stands until it is measured again.").to_owned(),
        ),
    ];
    let group = format!("beside-{number}");
    let about = format!("{}, {title}.", pair.about);
    let answers: Vec<AnyView> = sides
        .into_iter()
        .map(|(side, title, note)| {
            let group = group.clone();
            let (chosen, on_choose) = (is(side), choose(side));
            view! { <Choice group title note=Signal::stored(note) chosen on_choose/> }.into_any()
        })
        .collect();
    view! {
        <div class="sheet">
            <div class="h">
                <h2>{t("Written side by side")}</h2>
                <State sign=Sign::Near words=t("To judge")/>
            </div>
            <p class="long">
                <bdi>{about.clone()}</bdi>
                {t(" Both are kept. ")}
                <b>{t("Which one holds?")}</b>
            </p>
            <div role="radiogroup" aria-label=about>
                {answers}
            </div>
        </div>
    }
    .into_any()
}

fn agrees(pair: &Beside) -> AnyView {
    let words = say!("Written here and in the file: {}", said(pair.theirs.last()));
    view! {
        <div class="sheet">
            <div class="h">
                <h2>{pair.about.clone()}</h2>
                <State sign=Sign::In words=t("Agree")/>
            </div>
            <p class="long">{words}</p>
        </div>
    }
    .into_any()
}

fn said(entry: Option<&Entry>) -> String {
    let told = entry.map(|entry| {
        let time = hour_minute(entry.at, utc_offset_minutes(entry.at));
        say!("{} At {time}.", entry.sentence())
    });
    told.unwrap_or_default()
}
