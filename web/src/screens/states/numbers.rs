//! Fields, slots and the pad.

use leptos::prelude::*;

use super::{Samples, nothing};
use crate::parts::{
    DockedPad, Field, Pad, Pair, Says, Sign, Slot, Slots, Spec, Text, TextField, UnitButton,
};

fn held(text: &str) -> Text {
    RwSignal::new(text.to_owned()).into()
}

fn doubt(words: &str) -> Signal<Option<Says>> {
    Signal::stored(Some(Says::Doubt(words.to_owned())))
}

fn refused(words: &str) -> Signal<Option<Says>> {
    Signal::stored(Some(Says::Refused(words.to_owned())))
}

#[component]
pub fn Fields() -> impl IntoView {
    let inches = "0.012 mm looks like inches. Switch the unit to in, or read the page again.";
    view! {
        <Samples title="A field">
            <Field id="f1" label="Ready" value=held("0.38")/>
            <Field id="f2" label="Doubt: kept, warned" value=held("0.012") says=doubt(inches)/>
            <Field
                id="f3"
                label="Refused: cannot be read"
                value=held("0.3.8")
                says=refused("Two decimal marks in 0.3.8. Type one.")
            />
            <Field id="f4" label="Empty is empty" value=held("") placeholder="not in my manual"/>
            <Field id="f5" label="Takes a minus" value=held("-0.002") signed=true/>
            <Field id="f6" label="Locked" value=held("0.697") disabled=true/>
            <TextField id="f7" label="Words" value=held("Grey Heron")/>
            <Spec id="f8" title="Reverse backlash" sign=Sign::Near words="Check it">
                <Pair>
                    <Field
                        id="f8-low"
                        label="Low"
                        name="Reverse backlash, low"
                        value=held("0.012")
                        says=doubt(inches)
                    />
                    <Field
                        id="f8-high"
                        label="High"
                        name="Reverse backlash, high"
                        value=held("0.24")
                    />
                    <UnitButton of="Reverse backlash" unit="mm" on_press=nothing()/>
                </Pair>
            </Spec>
            <Pair alone=true>
                <Field id="f9" label="Pinion teeth" value=held("14")/>
                <Field id="f10" label="Gear teeth" value=held("21")/>
            </Pair>
            <DockedPad/>
        </Samples>
    }
}

#[component]
pub fn Series() -> impl IntoView {
    let slot = |(place, typed, says): (&str, &str, Signal<Option<Says>>)| Slot {
        id: format!("slot-{place}"),
        place: format!("{place}°"),
        spoken: format!("Reading at {place}°, millimetres"),
        value: held(typed),
        says,
        unit: Signal::stored(None),
    };
    let none = Signal::stored(None);
    let odd = doubt("0.04 stands apart from the others. Read 90° again.");
    let two_marks = refused("Two decimal marks in 0.3.7. Type one.");
    let slots =
        [("0", "0.38", none), ("90", "0.04", odd), ("180", "0.3.7", two_marks), ("270", "", none)];
    view! {
        <Samples title="A reading series">
            <Slots slots=slots.map(slot).to_vec()/>
            <Pad/>
        </Samples>
    }
}
