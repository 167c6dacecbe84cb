//! Teeth and shafts, and the arm.

use job::{Field, Group, expected_says};
use leptos::prelude::*;
use measure::show;
use words::t;

use super::limits::{choice, in_doubt, measured, number, part_state};
use super::typing::Typing;
use crate::parts::{Pair, live};
use crate::shown::use_shown;

/// Teeth, radius and angles.
#[component]
pub fn Gears(typing: Typing) -> impl IntoView {
    let plain = move |field: Field| number(typing, field, field.facts().label().to_owned());
    let of_gears: Vec<Field> = typing.look(|sheet| {
        let fields = sheet.fields().map(|facts| facts.field);
        fields.filter(|field| matches!(field, Field::Teeth(_))).collect()
    });
    let mut of_gears = of_gears.into_iter().map(plain);
    let first = of_gears.next();
    let teeth = view! {
        <Pair alone=true>{plain(Field::PinionTeeth)} {first}</Pair>
        {of_gears.collect::<Vec<_>>()}
    };
    let degrees =
        move |field: Field| number(typing, field, format!("{}, °", field.facts().label()));
    view! {
        <div class="sheet">
            <div class="h">
                <h2>{Group::Gears.name()}</h2>
                {part_state(typing, Group::Gears)}
            </div>
            {teeth}
            {measured(typing, Field::PinionRadius)}
            <p class="small">
                {t("To the middle of the tooth’s width. To its outer end it is up to 18 % too large.")}
            </p>
            <Pair alone=true>{degrees(Field::PressureAngle)} {degrees(Field::SpiralAngle)}</Pair>
            <p class="small">
                {t("Seldom in a manual. Leave the angles empty if yours has none: readings teach the rest.")}
            </p>
            {in_doubt(typing, Group::Gears)}
            {expected(typing)}
        </div>
    }
}

/// Ratio, and what a shim is worth.
fn expected(typing: Typing) -> AnyView {
    let shown = use_shown();
    live(move || {
        let shown = shown.get();
        let ratio = typing.look(|sheet| {
            let lash = sheet.checks().into_iter().find(|check| check.has_arm())?;
            sheet.ratio(lash)
        });
        let says = typing.look(|sheet| expected_says(sheet, shown));
        let ratio = ratio.map(|ratio| {
            view! {
                {t("Ratio ")}
                <b>{show(ratio, 2, shown.mark)}</b>
                ". "
            }
        });
        view! { <p>{ratio} {says}</p> }.into_any()
    })
}

/// The arm the indicator reads on.
#[component]
pub fn YourArm(typing: Typing) -> impl IntoView {
    view! {
        <div class="sheet">
            <div class="h">
                <h2>{Group::Arm.name()}</h2>
                {part_state(typing, Group::Arm)}
            </div>
            {measured(typing, Field::ArmRadius)}
            {choice(typing, Field::ArmShaft)}
            {in_doubt(typing, Group::Arm)}
            <p class="small">
                {t("From the middle of the shaft to where the indicator touches.")}
            </p>
        </div>
    }
}
