//! Torques: what was asked, through which tool, what the wrench was set to, on which threads.

use job::procedure::Record;
use job::{Capture, TorqueOn};
use leptos::prelude::*;
use measure::{Sign, Typed, Unit};
use words::{say, t};

use super::number;
use super::record::id;
use super::working::Working;
use crate::draft::{Draft, use_draft};
use crate::parts::{Field, Pick, Seg, words};

/// What stands beside the value.
#[derive(Clone, Copy)]
pub struct Extras {
    asked: Draft,
    offset: Draft,
    set: Draft,
    on: Draft,
}

const ON: [TorqueOn; 3] = [TorqueOn::Dry, TorqueOn::Oil, TorqueOn::Compound];

impl Extras {
    /// What was left half typed on a step.
    pub fn at(place: &str) -> Extras {
        let draft = |field| use_draft(place, field);
        Extras {
            asked: draft("torque asked"),
            offset: draft("torque offset"),
            set: draft("torque set"),
            on: draft("torque on"),
        }
    }

    /// All of it.
    pub fn all(self) -> [Draft; 4] {
        [self.asked, self.offset, self.set, self.on]
    }

    /// The torque with what stands beside it; `unit` is that of digits without one, where its
    /// argument is one of their quantity.
    ///
    /// # Errors
    /// The sentence for a number that cannot be read.
    pub fn torque(
        self,
        values: Vec<Typed>,
        unit: impl Fn(Unit) -> Unit,
    ) -> Result<Capture, String> {
        let read = |draft: Draft, own: Unit| {
            let text = draft.text_untracked();
            let some = !text.trim().is_empty();
            some.then(|| Typed::parse(&text, unit(own), Sign::Positive))
                .transpose()
                .map_err(|it| it.to_string())
        };
        let on = self.on.text_untracked();
        Ok(Capture::Torque {
            values,
            asked: read(self.asked, Unit::NewtonMetre)?,
            offset: read(self.offset, Unit::Millimetre)?,
            set: read(self.set, Unit::NewtonMetre)?,
            on: ON.into_iter().find(|it| it.word() == on),
        })
    }
}

/// The fields of a torque. What something broke out at has the value alone.
pub fn torque(working: Working, at: usize, record: &Record) -> AnyView {
    let values = number::series(working, at, record);
    let title = record.title();
    if record.label.contains("break-out") {
        return values;
    }
    let extras = working.extras;
    let picks = [t("Dry"), t("Oil"), t("Compound")].map(Pick::from).into();
    let chosen = Signal::derive(move || {
        let on = extras.on.text();
        ON.iter().position(|it| it.word() == on)
    });
    let choose = Callback::new(move |pick: usize| {
        extras.on.set(ON.get(pick).map_or("", |on| on.word()));
    });
    let field = |name: &str, label: String, own: Unit, draft: Draft| {
        let unit = Signal::derive(move || Some(working.unit_like(own)));
        let label = words(move || format!("{label}, {}", working.unit_like(own)));
        let value = working.extra(draft);
        view! { <Field id=format!("{}-{name}", id(at)) label value unit/> }
    };
    let (torque, length) = (Unit::NewtonMetre, Unit::Millimetre);
    view! {
        {field("asked", say!("{title}: asked by the manual"), torque, extras.asked)}
        {field("offset", say!("{title}: offset tool, if any"), length, extras.offset)}
        {field("set", say!("{title}: wrench set to"), torque, extras.set)}
        <Seg id=format!("{}-on", id(at)) label=say!("{title}, on the threads") picks chosen on_choose=choose/>
        {values}
    }
    .into_any()
}

/// "118 N·m, dry, asked 120 N·m, offset 50 mm, set 108 N·m".
pub fn said(value: &Capture) -> String {
    let mut said = value.words();
    if let Capture::Torque { asked, offset, set, .. } = value {
        let more = [
            asked.as_ref().map(|torque| say!("asked {torque}")),
            offset.as_ref().map(|length| say!("offset {length}")),
            set.as_ref().map(|torque| say!("set {torque}")),
        ];
        for word in more.into_iter().flatten() {
            said = format!("{said}, {word}");
        }
    }
    said
}
