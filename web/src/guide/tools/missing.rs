//! Tools that are not in the drawer: had after all, borrowed or ordered.

use job::Readied;
use job::guide::Item;
use leptos::prelude::*;
use words::{say, t};

use super::state::Loading;
use super::van::capital;
use crate::draft::use_draft;
use crate::parts::{Sign, State, TextField, press};

/// The sheet with what is not in the drawer.
pub fn sheet(loading: Loading) -> AnyView {
    let Some((items, short)) = loading.look(|van| (van.not_owned.clone(), van.short)) else {
        return ().into_any();
    };
    if items.is_empty() {
        return ().into_any();
    }
    let state = match short {
        0 => view! { <State sign=Sign::In words=t("All seen to")/> },
        short => view! { <State sign=Sign::Near words=say!("{short} short")/> },
    };
    let open: Vec<Item> = items.iter().filter(|item| item.short).cloned().collect();
    let all = (!open.is_empty()).then(|| {
        let own = Callback::new(move |()| loading.own(&open));
        view! {
            <button class="btn btn--wide" type="button" on:click=press(own)>
                {t("I have all the short ones")}
            </button>
        }
    });
    let rows: Vec<AnyView> =
        items.into_iter().enumerate().map(|(at, item)| row(loading, at, item)).collect();
    view! {
        <div class="sheet">
            <div class="h">
                <h2>{t("Not in the drawer")}</h2>
                {state}
            </div>
            {all}
            {rows}
        </div>
    }
    .into_any()
}

fn row(loading: Loading, at: usize, item: Item) -> AnyView {
    let how = item.readied.as_ref().map(|(how, _)| *how);
    let (name, asked) = (capital(&item.words()), item.asked_in());
    let own = item.clone();
    let have = Callback::new(move |()| loading.own(std::slice::from_ref(&own)));
    let other = |ways: Readied| {
        let name = item.name.clone();
        Callback::new(move |()| loading.ready(&name, ways, ""))
    };
    let (borrow, order) = (other(Readied::Borrowed), other(Readied::Ordered));
    let is = |wanted: Readied| (how == Some(wanted)).to_string();
    let from = match how {
        Some(how @ (Readied::Borrowed | Readied::Ordered)) => {
            view! { <From loading at item how/> }.into_any()
        }
        _ => ().into_any(),
    };
    view! {
        <div class="tool tool--line">
            <p>
                <b>{name.clone()}</b>
                <br/>
                <span class="dim">{asked}</span>
            </p>
            <div class="seg" role="group" aria-label=name>
                <button type="button" aria-pressed="false" on:click=press(have)>
                    {t("Have")}
                </button>
                <button type="button" aria-pressed=is(Readied::Borrowed) on:click=press(borrow)>
                    {t("Borrow")}
                </button>
                <button type="button" aria-pressed=is(Readied::Ordered) on:click=press(order)>
                    {t("Order")}
                </button>
            </div>
            {from}
        </div>
    }
    .into_any()
}

/// From whom it comes, and when.
#[component]
fn From(loading: Loading, at: usize, item: Item, how: Readied) -> impl IntoView {
    let draft = use_draft(&format!("job/{}/tools", loading.guide.of.id()), &item.name);
    let kept = item.readied.map(|(_, from)| from).unwrap_or_default();
    let label = match how {
        Readied::Ordered => t("Ordered where, due when"),
        _ => t("From whom, back when"),
    };
    if !kept.is_empty() {
        return view! { <p class="dim tool__from">{kept}</p> }.into_any();
    }
    let keep = Callback::new(move |()| {
        loading.ready(&item.name, how, draft.text_untracked().trim());
        draft.clear();
    });
    view! {
        <div class="tool__from line">
            <TextField id=format!("from-{at}") label value=draft/>
            <button class="btn" type="button" on:click=press(keep)>
                {t("Keep")}
            </button>
        </div>
    }
    .into_any()
}
