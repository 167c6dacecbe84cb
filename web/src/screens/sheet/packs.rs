//! Where each pack lies, and which way it pushes: seen on the sketch, then confirmed.

use job::{Fact, Position, Sheet, Slot};
use leptos::prelude::*;
use words::{say, t};

use super::typing::Typing;
use crate::draft::use_draft;
use crate::parts::{Choice, Pick, Says, Seg, Sign, State, TextField, live};
use crate::pictures::Picture;
use crate::pictures::section::{Section, View};

/// The id of the part that asks where a pack lies.
pub fn place_id(slot: Slot) -> String {
    format!("place-{}", slot.tag())
}

/// The id of the part that asks which way a pack pushes.
pub fn way_id(slot: Slot) -> String {
    format!("way-{}", slot.tag())
}

/// Every pack.
#[component]
pub fn Packs(typing: Typing) -> impl IntoView {
    let slots = Memo::new(move |_| typing.look(|sheet| sheet.slots().to_vec()));
    live(move || {
        let packs = slots.get().into_iter().map(|slot| pack(typing, slot));
        packs.collect::<Vec<_>>().into_any()
    })
}

fn pack(typing: Typing, slot: Slot) -> AnyView {
    let position = Memo::new(move |_| typing.look(|sheet| sheet.position(slot)));
    let way = live(move || match position.get() {
        Some(position) => view! {
            {how_it_is_built(typing, position)}
            <Push typing position/>
        }
        .into_any(),
        None => ().into_any(),
    });
    view! {
        <div class="sheet">
            {(asks(slot)).then(|| where_it_lies(typing, slot))}
            {way}
        </div>
    }
    .into_any()
}

/// Whether there is anything to choose.
fn asks(slot: Slot) -> bool {
    slot.may_be_absent() || slot.positions().nth(1).is_some()
}

/// The places a pack can lie in.
fn where_it_lies(typing: Typing, slot: Slot) -> AnyView {
    let chosen = Memo::new(move |_| {
        typing.look(|sheet| sheet.is_chosen(slot).then(|| sheet.position(slot)))
    });
    let answer = move |position: Option<Position>| {
        let (title, note) = match position {
            Some(position) => {
                let [one, other] = position.between;
                (position.id, say!("Between {one} and {other}."))
            }
            None => (t("None"), t("This unit has no such pack.").to_owned()),
        };
        let is_chosen = Signal::derive(move || chosen.get() == Some(position));
        let choose = Callback::new(move |()| {
            let position = position.map(|position| position.id.to_owned());
            typing.record(vec![Fact::VariantChosen { slot, position }], drop);
        });
        view! { <Choice group=place_id(slot) title note chosen=is_chosen on_choose=choose/> }
            .into_any()
    };
    let none = slot.may_be_absent().then_some(None);
    let answers = slot.positions().map(Some).chain(none).map(answer).collect::<Vec<_>>();
    view! {
        <h2>{say!("Where does {} lie?", slot.tag())}</h2>
        <p>{slot.question()}</p>
        <div id=place_id(slot) role="radiogroup" aria-label=slot.question()>
            {answers}
        </div>
    }
    .into_any()
}

/// What the unit is like round the place, where that turns what the pack does.
fn how_it_is_built(typing: Typing, position: Position) -> Option<AnyView> {
    let all: Vec<&'static str> = position.builds().collect();
    let usual = if all.is_empty() { None } else { Some(t("None of these")) };
    let group = format!("build-{}", position.id);
    let answer = |(build, title): (Option<usize>, &'static str)| {
        let chosen = Signal::stored(position.build == build);
        let choose = Callback::new(move |()| {
            let build = build.and_then(|build| u32::try_from(build).ok());
            let position = position.id.to_owned();
            typing.record(vec![Fact::BuildChosen { position, build }], drop);
        });
        let group = format!("build-{}", position.id);
        view! { <Choice group title=sentence(title) chosen on_choose=choose/> }.into_any()
    };
    let answers = (0..).map(Some).zip(all).chain(usual.map(|usual| (None, usual))).map(answer);
    let answers: Vec<AnyView> = answers.collect();
    let question = say!("How is it built round {}?", position.id);
    usual.map(|_| {
        view! {
            <h2>{question.clone()}</h2>
            <div id=group role="radiogroup" aria-label=question>
                {answers}
            </div>
        }
        .into_any()
    })
}

/// With a capital letter.
fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    let first = letters.next().map(|letter| letter.to_ascii_uppercase());
    first.into_iter().chain(letters).collect()
}

/// Which way the pack pushes.
#[component]
fn Push(typing: Typing, position: Position) -> impl IntoView {
    let turned = Memo::new(move |_| typing.look(|sheet| way(sheet, &position)));
    let asking = RwSignal::new(false);
    let chosen = Signal::derive(move || match asking.get() {
        true => Some(1),
        false => turned.get().map(usize::from),
    });
    let choose = Callback::new(move |at: usize| {
        asking.set(at == 1);
        if at == 0 {
            let position = position.id.to_owned();
            typing.record(vec![Fact::SignConfirmed { position }], drop);
        }
    });
    let picks = vec![
        Pick::from(say!("Thicker: {}", position.thicker)),
        Pick::from(say!("Thicker: {}", position.thinner)),
    ];
    let id = position.id;
    let question = say!("Which way does {id} push?");
    let state = live(move || match turned.get() {
        Some(_) => view! { <State sign=Sign::In words=t("Seen")/> }.into_any(),
        None => view! { <State sign=Sign::Open words=t("Not seen")/> }.into_any(),
    });
    let reason = live(move || match asking.get() {
        true => view! { <OtherWay typing position asking/> }.into_any(),
        false => ().into_any(),
    });
    let because = live(move || {
        let told = |sheet: &Sheet| sheet.turned_because(&position).map(str::to_owned);
        let says = typing.look(|sheet| told(sheet));
        says.map(|says| view! { <p><b>{t("The other way than usual: ")}</b>{says}</p> }).into_any()
    });
    // What grows the usual way is no help where a person saw the other.
    let grows = live(move || match turned.get() {
        Some(true) => ().into_any(),
        _ => view! { <p>{position.grows()}</p> }.into_any(),
    });
    let sketch = Signal::derive(move || {
        let is_turned = turned.get() == Some(true) || asking.get();
        section(typing, position, is_turned).draw()
    });
    view! {
        <div class="h">
            <h2>{question.clone()}</h2>
            {state}
        </div>
        <Picture drawing=sketch class="sk"/>
        {grows}
        <div id=way_id(position.slot)>
            <Seg id=format!("{}-choice", way_id(position.slot)) label=question picks chosen on_choose=choose/>
        </div>
        {reason}
        {because}
        {position.note().map(|note| view! { <p class="small">{note}</p> })}
    }
}

/// Whether a person has seen which way it pushes, and whether it is the other way.
fn way(sheet: &Sheet, position: &Position) -> Option<bool> {
    sheet.is_confirmed(position).then(|| sheet.is_turned(position))
}

fn section(typing: Typing, position: Position, turned: bool) -> Section {
    let packs = typing.look(|sheet| sheet.positions());
    let thicker = if turned { position.thinner } else { position.thicker };
    let drawn = Section::of(packs.iter().map(|pack| pack.id)).choosing(position.id);
    Section { turned, note: thicker.to_owned(), view: View::Close, ..drawn }
}

/// Asks why it pushes the other way.
#[component]
fn OtherWay(typing: Typing, position: Position, asking: RwSignal<bool>) -> impl IntoView {
    let reason = use_draft("sheet/way", position.id);
    let refused = RwSignal::new(None::<String>);
    let says = Signal::derive(move || refused.get().map(Says::Refused));
    let keep = Callback::new(move |()| {
        let fact = Fact::SignOverridden {
            position: position.id.to_owned(),
            reason: reason.text_untracked().trim().to_owned(),
        };
        typing.record(vec![fact], move |outcome| match outcome {
            Ok(()) => {
                reason.clear();
                asking.try_set(false);
            }
            Err(why) => drop(refused.try_set(Some(why))),
        });
    });
    let on_key = move |event: leptos::ev::KeyboardEvent| {
        if event.key() == "Enter" {
            keep.run(());
        }
    };
    view! {
        <div on:keydown=on_key>
            <TextField
                id=format!("reason-{}", position.id)
                label=t("Why does it push the other way?")
                value=reason
                says
            />
        </div>
        <button class="btn btn--wide" type="button" on:click=move |_| keep.run(())>
            {say!("Keep: thicker, {}", position.thinner)}
        </button>
    }
}
