//! The limits of a check, where they hold and where they were read.

use job::{Check, Field, Figure, Group, Kind, PartState, Sheet, Shown, figure};
use leptos::prelude::*;
use measure::{Band, Unit};
use words::{say, t};

use super::typing::Typing;
use crate::parts::{
    Field as NumberField, Pair, Pick, Seg, Sign, Spec, State, TextField, UnitButton, live, press,
};
use crate::shown::use_shown;

/// One check of the sheet.
pub fn limits(typing: Typing, check: Check) -> AnyView {
    let group = Group::Limits(check);
    let unit = Signal::derive(move || typing.unit_of(group).to_string());
    let turn = Callback::new(move |()| typing.turn_unit(group));
    let (low, high, source) = (Field::Low(check), Field::High(check), Field::Source(check));
    let of = check.name();
    let part = part(typing, group);
    let sign = Signal::derive(move || part.get().0);
    let words = Signal::derive(move || part.get().1.to_owned());
    view! {
        <Spec id=check.id() title=of.to_owned() sign words>
            <Pair>
                {number(typing, low, t("Low").to_owned())}
                {number(typing, high, t("High").to_owned())}
                <UnitButton of unit on_press=turn/>
            </Pair>
            {where_it_holds(typing, check)}
            {in_doubt(typing, group)}
            {shown(typing, check)}
            <TextField
                id=source.facts().id
                label=t("Source")
                value=typing.text(source)
                says=typing.says(source)
                placeholder=t("own manual, page")
            />
        </Spec>
    }
    .into_any()
}

/// A number field of the sheet.
pub fn number(typing: Typing, field: Field, label: String) -> AnyView {
    number_in(typing, field, label, Signal::stored(None))
}

/// The same with a unit of its own, that a person may take another for.
fn number_in(typing: Typing, field: Field, label: String, unit: Signal<Option<Unit>>) -> AnyView {
    let (facts, value) = (field.facts(), typing.text(field));
    let says = typing.says(field);
    let signed = matches!(facts.kind, Kind::Play);
    view! { <NumberField id=facts.id label name=facts.name() value says signed unit/> }.into_any()
}

/// A way on from each value in doubt of a part: to say that it stands.
pub fn in_doubt(typing: Typing, group: Group) -> AnyView {
    let doubtful = Memo::new(move |_| {
        let fields = Field::of(group).map(|facts| facts.field);
        typing.look(|sheet| fields.filter(|it| sheet.doubt(*it).is_some()).collect::<Vec<_>>())
    });
    let stands = move |field: Field| {
        let value = typing.look(|sheet| sheet.number(field).map(ToString::to_string));
        let words = say!("{} {} is right", field.facts().label(), value.unwrap_or_default());
        let stand = Callback::new(move |()| typing.let_stand(field));
        view! {
            <button class="btn btn--plain btn--wide" type="button" on:click=press(stand)>
                {words}
            </button>
        }
    };
    live(move || doubtful.get().into_iter().map(stands).collect_view().into_any())
}

/// A number that keeps its own unit, which stands in its label.
pub fn measured(typing: Typing, field: Field) -> AnyView {
    let unit = Memo::new(move |_| typing.unit(field));
    live(move || {
        let label = format!("{}, {}", field.facts().label(), unit.get());
        number_in(typing, field, label, Signal::derive(move || Some(unit.get())))
    })
}

/// A field that takes one of a few words.
pub fn choice(typing: Typing, field: Field) -> AnyView {
    let facts = field.facts();
    let words = typing.look(|sheet| sheet.choices(field));
    let chosen = Signal::derive(move || {
        typing.look(|sheet| words.iter().position(|(word, _)| sheet.word(field) == Some(word)))
    });
    let choose = Callback::new(move |at: usize| {
        if let Some((word, _)) = words.get(at) {
            typing.choose(field, word);
        }
    });
    let picks: Vec<Pick> = words.iter().map(|(_, shown)| Pick::from(t(shown))).collect();
    view! {
        <div id=facts.id>
            <p class="label" aria-hidden="true">
                {facts.label()}
            </p>
            <Seg id=format!("{}-choice", facts.id) label=facts.label() picks chosen on_choose=choose/>
        </div>
    }
    .into_any()
}

/// The radius and shaft of a backlash, the gauge's side of a depth.
fn where_it_holds(typing: Typing, check: Check) -> AnyView {
    let (radius, shaft) = match check {
        Check::Depth => {
            return view! {
                {choice(typing, Field::DepthSide)}
                {number(typing, Field::Aim(Check::Depth), t("Aim, if your manual gives one").to_owned())}
            }
            .into_any();
        }
        Check::Setting(_) => {
            return view! {
                <p class="small">
                    {t("A preload is below 0, like -0.05. No gauge reads it: the app works it out.")}
                </p>
            }
            .into_any();
        }
        Check::Torque => {
            return view! {
                <p class="small">{t("The whole case turned slowly, no seals. Never predicted.")}</p>
            }
            .into_any();
        }
        Check::Lash(mesh) => (Field::Radius(mesh), Field::Shaft(mesh)),
    };
    view! {
        {measured(typing, radius)}
        {choice(typing, shaft)}
    }
    .into_any()
}

/// The limits in the unit that is shown, and at the arm.
fn shown(typing: Typing, check: Check) -> AnyView {
    let shown = use_shown();
    live(move || {
        let shown = shown.get();
        let typed_in = typing.unit_of(Group::Limits(check));
        let lines = typing.look(|sheet| {
            [in_other_unit(sheet, check, typed_in, shown), at_the_arm(sheet, check, shown)]
        });
        let line = |(before, band): (String, String)| {
            view! {
                <p class="dim">
                    {before}
                    <b>{band}</b>
                </p>
            }
        };
        lines.map(|it| it.map(line)).into_iter().collect::<Vec<_>>().into_any()
    })
}

fn in_other_unit(
    sheet: &Sheet,
    check: Check,
    typed_in: Unit,
    shown: Shown,
) -> Option<(String, String)> {
    let unit = check.shown_unit(shown);
    let band = sheet.band(check).filter(|_| typed_in != unit)?;
    Some((say!("In {unit}: "), range(&band, check.figure(), shown)))
}

fn at_the_arm(sheet: &Sheet, check: Check, shown: Shown) -> Option<(String, String)> {
    let band = sheet.band_at_arm(check).filter(|_| check.has_arm())?;
    let arm = figure(sheet.millimetres(Field::ArmRadius)?, Figure::Radius, shown);
    Some((say!("At your {arm} {} arm: ", shown.units.length), range(&band, Figure::Reading, shown)))
}

fn range(band: &Band, kind: Figure, shown: Shown) -> String {
    let written = |limit| figure(limit, kind, shown);
    format!("{}–{}", written(band.low()), written(band.high()))
}

/// How far a part of the sheet is, as sign and word.
fn part(typing: Typing, group: Group) -> Memo<(Sign, &'static str)> {
    Memo::new(move |_| match typing.look(|sheet| Some(sheet.part(group))) {
        Some(PartState::Typed) => (Sign::In, t("Typed")),
        Some(PartState::Doubtful) => (Sign::Near, t("Check it")),
        Some(PartState::Partly) => (Sign::Open, t("Not all yet")),
        Some(PartState::Empty) | None => (Sign::Open, t("Empty")),
    })
}

/// How far a part of the sheet is.
pub fn part_state(typing: Typing, group: Group) -> AnyView {
    let part = part(typing, group);
    live(move || {
        let (sign, words) = part.get();
        view! { <State sign words/> }.into_any()
    })
}
