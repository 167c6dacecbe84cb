//! What an instrument says: picture, verdict, figures, what it cannot see, cautions, and why.

use job::instrument::{Answer, Headline, Table, TableRow};
use leptos::prelude::*;
use measure::Verdict;
use words::t;

use super::working::{Now, Working};
use crate::parts::{Bar, Caution, Facts, Gate, Sign, State, live, press};
use crate::pictures::Picture;

/// The answer to what is typed; while nothing is, to what was kept last.
pub fn shown(working: Working) -> AnyView {
    live(move || match working.says_now() {
        Ok(now) => answered(working, now),
        Err(lacks) => wanted(&lacks.wanted),
    })
}

/// Its picture and the figure that answers, once there are any.
pub fn on_top(working: Working) -> AnyView {
    let top = Memo::new(move |_| {
        let now = working.says_now().ok()?;
        let Answer { picture, headline, band, verdict, .. } = now.answer;
        Some((picture, headline, band, verdict, now.kept))
    });
    live(move || {
        let shown = top.get().map(|(picture, figure, band, verdict, kept)| {
            // A picture that answers alone needs no heading, unless it is of what was kept.
            let is_headed = kept || verdict.is_some() || figure.is_some();
            let head = is_headed.then(|| {
                view! {
                    <div class="h">
                        <h2>{if kept { t("Kept") } else { t("Answer") }}</h2>
                        {verdict.map(state)}
                    </div>
                }
            });
            view! {
                <div class="sheet">
                    {picture.map(|it| view! { <Picture drawing=Signal::stored(it)/> })}
                    {head}
                    {figure.map(headline)}
                    {band.map(|it| view! { <Picture drawing=Signal::stored(it)/> })}
                </div>
            }
        });
        shown.into_any()
    })
}

fn state(verdict: Verdict) -> impl IntoView {
    match verdict {
        Verdict::InBand => view! { <State sign=Sign::In/> },
        Verdict::NearLimit => view! { <State sign=Sign::Near/> },
        Verdict::Out => view! { <State sign=Sign::Out/> },
        Verdict::CannotProve => view! { <State sign=Sign::Open words=t("Cannot prove")/> },
    }
}

fn wanted(wanted: &[&'static str]) -> AnyView {
    if wanted.is_empty() {
        return ().into_any();
    }
    let wanted = wanted.iter().map(|label| view! { <li>{*label}</li> }).collect_view();
    view! {
        <div class="sheet">
            <h2>{t("Still wanted")}</h2>
            <ul>{wanted}</ul>
        </div>
    }
    .into_any()
}

fn answered(working: Working, Now { answer, kept }: Now) -> AnyView {
    let of_unit = working.of_unit(&answer);
    let (says, has_told) = (answer.says, !of_unit.is_empty());
    let gate = answer.waits.map(|waits| {
        view! { <Gate bar=Bar::Shut title=t("No verdict yet.") words=waits/> }
    });
    let below = answer.below.map(|drawing| {
        view! {
            <div class="sheet">
                <Picture drawing=Signal::stored(drawing)/>
            </div>
        }
    });
    let of_unit = of_unit.into_iter().map(|says| view! { <p>{says}</p> }).collect_view();
    let told = has_told.then(|| view! { <div class="told">{of_unit}</div> });
    let cautions = answer.cautions.into_iter().map(|words| {
        view! { <Caution title=t("Take care.") words=words/> }
    });
    view! {
        {gate}
        <div class="sheet">
            {says.into_iter().map(|says| view! { <p>{says}</p> }).collect_view()}
            {told}
            <Facts facts=answer.figures/>
            {answer.table.map(table)}
            {answer.blind.map(|blind| view! { <p class="dim">{blind}</p> })}
            {kept.then(|| open_again(working))}
        </div>
        {below}
        {cautions.collect_view()}
        {why(answer.explained)}
    }
    .into_any()
}

/// The way to what was kept, to be read anew.
fn open_again(working: Working) -> impl IntoView {
    let open = press(Callback::new(move |()| working.open_again()));
    view! {
        <button class="btn btn--plain" type="button" on:click=open>
            {t("Open it again")}
        </button>
    }
}

fn headline(Headline { title, number, unit, note }: Headline) -> impl IntoView {
    view! {
        <p>{title}</p>
        <p class="headline">
            <span class="fig fig--5">{number}</span>
            " "
            <b>{unit}</b>
            " "
            <span class="dim">{note}</span>
        </p>
    }
}

fn table(table: Table) -> AnyView {
    let [name, first, second] = table.heads;
    let row = |TableRow { name, note, cells: [first, second] }: TableRow| {
        view! {
            <tr>
                <th scope="row">
                    {name}
                    <br/>
                    <small class="dim">{note}</small>
                </th>
                <td class="n">{first}</td>
                <td class="n">{second}</td>
            </tr>
        }
    };
    view! {
        <table class="tbl">
            <thead>
                <tr>
                    <th>{name}</th>
                    <th class="n">{first}</th>
                    <th class="n">{second}</th>
                </tr>
            </thead>
            <tbody>{table.rows.into_iter().map(row).collect_view()}</tbody>
        </table>
    }
    .into_any()
}

fn why(explained: Vec<String>) -> Option<impl IntoView> {
    (!explained.is_empty()).then(|| {
        view! {
            <details class="fold">
                <summary>{t("Why this?")}</summary>
                {explained.into_iter().map(|line| view! { <p>{line}</p> }).collect_view()}
            </details>
        }
    })
}
