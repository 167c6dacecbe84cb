//! The drawer: found by any name or number, also by one that is wrong.

use job::Tool;
use leptos::prelude::*;
use words::{say, t};

use super::drawing::Drawing;
use super::van::capital;
use crate::parts::{Act, Empty, Facts, Glyph, Icon, Sign, State, TextField, live, press};

/// The two columns of the drawer.
pub fn cols(drawing: Drawing) -> AnyView {
    let add = Callback::new(move |()| {
        drawing.add();
        crate::page::lead_to("tool-name");
    });
    view! {
        <div class="cols">
            <section class="col">
                <div class="head">
                    <h1>{t("Tool drawer")}</h1>
                    <p>{t("What you own. Each unit's list checks itself against it.")}</p>
                </div>
                <div class="sheet">
                    <TextField id="find" label=t("Find by name or number") value=drawing.find/>
                    {live(move || found(drawing))}
                    <button class="btn btn--wide" type="button" on:click=press(add)>
                        <Icon glyph=Glyph::Plus/>
                        {t("Add a tool")}
                    </button>
                </div>
            </section>
            <section class="col">{live(move || open(drawing))}</section>
        </div>
    }
    .into_any()
}

fn found(drawing: Drawing) -> AnyView {
    let found = drawing.found();
    if found.is_empty() {
        let title = t("No tool found.");
        return view! { <Empty title words=t("Add it, with the number that is on it.")/> }
            .into_any();
    }
    let rows: Vec<AnyView> =
        found.into_iter().map(|(tool, minds)| row(drawing, tool, minds)).collect();
    rows.into_any()
}

fn row(drawing: Drawing, tool: Tool, minds: String) -> AnyView {
    let called = goes_by(&tool);
    let fix = (!minds.is_empty()).then(|| {
        view! {
            <div class="fix">
                <p>
                    <b>{t("Printed number is wrong. ")}</b>
                    {minds}
                </p>
            </div>
        }
    });
    let name = capital(&tool.name);
    let choose = Callback::new(move |()| drawing.choose(&tool.id));
    view! {
        <div class="tool">
            <button class="row row--pick" type="button" on:click=press(choose)>
                <span>
                    <b>{name}</b>
                    <br/>
                    <span class="dim">{called}</span>
                </span>
                <State sign=Sign::In words=t("Have")/>
            </button>
            {fix}
        </div>
    }
    .into_any()
}

/// "No. 31 · also called long socket".
fn goes_by(tool: &Tool) -> String {
    let number = (!tool.number.is_empty()).then(|| say!("No. {}", tool.number));
    let others = (!tool.others.is_empty()).then(|| say!("also called {}", tool.others.join(", ")));
    let told: Vec<String> = number.into_iter().chain(others).collect();
    if told.is_empty() { t("no number").to_owned() } else { told.join(" · ") }
}

fn open(drawing: Drawing) -> AnyView {
    if drawing.adds() {
        return view! {
            <div class="sheet">
                <h2>{t("A tool for the drawer")}</h2>
                <TextField
                    id="tool-name"
                    label=t("What the steps call it")
                    value=drawing.name
                    placeholder=t("pinion-nut socket")
                />
                <TextField id="tool-number" label=t("Number on the tool") value=drawing.number/>
                {drawing.acting.says()}
            </div>
        }
        .into_any();
    }
    match drawing.open() {
        Some(tool) => detail(drawing, &tool),
        None => ().into_any(),
    }
}

fn detail(drawing: Drawing, tool: &Tool) -> AnyView {
    let asked = drawing.asked_in(tool);
    let mut facts = vec![(t("Serves"), t(&tool.name).to_owned())];
    facts.extend(asked.filter(|asked| !asked.is_empty()).map(|asked| (t("Asked for"), asked)));
    let own = Some(&tool.number).filter(|number| !number.is_empty());
    let own = own.map(
        |number| view! { <span class="chip chip--static">{say!("{number} on the tool")}</span> },
    );
    let others = tool.others.iter().cloned();
    let others =
        others.map(|other| view! { <span class="chip chip--static">{other}</span> }).collect_view();
    let wrong = tool.corrections.iter().map(|(wrong, note)| {
        view! {
            <div class="fix">
                <p>
                    <b>{t("Printed number is wrong. ")}</b>
                    {t("The list says ")}
                    <s>{wrong.clone()}</s>
                    {format!(": {note}.")}
                </p>
            </div>
        }
    });
    let wrong = wrong.collect_view();
    let keep_other = Callback::new(move |()| drawing.keep_other());
    let gone = Callback::new(move |()| drawing.gone());
    view! {
        <div class="sheet">
            <h2>{capital(&tool.name)}</h2>
            <Facts facts/>
            <p class="label">{t("Numbers it goes by")}</p>
            <div class="chips">{own} {others}</div>
            {wrong}
            <TextField id="other" label=t("Other name or number") value=drawing.other/>
            <button class="btn" type="button" on:click=press(keep_other)>
                {t("Keep the name")}
            </button>
            <TextField id="wrong" label=t("Number that is wrong") value=drawing.wrong/>
            <TextField
                id="note"
                label=t("Correction note")
                value=drawing.note
                placeholder=t("31 fits, 13 does not")
            />
            {drawing.acting.says()}
            <button class="btn btn--plain" type="button" on:click=press(gone)>
                {t("Not in the drawer any more")}
            </button>
        </div>
    }
    .into_any()
}

/// The one next act of the drawer.
pub fn act(drawing: Drawing) -> AnyView {
    let busy = drawing.acting.busy;
    let (words, does) = if drawing.adds() {
        (t("Put it in the drawer"), Callback::new(move |()| drawing.keep_new()))
    } else if drawing.open().is_some() {
        (t("Keep the correction"), Callback::new(move |()| drawing.keep_correction()))
    } else {
        (t("Add a tool"), Callback::new(move |()| drawing.add()))
    };
    view! { <Act words busy on_press=does/> }.into_any()
}
