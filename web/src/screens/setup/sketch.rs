//! The section sketch: choose a pack, and see what a thicker or thinner one would do.

use job::{BookId, Fact, Figure, PackAct, SetUp, Shown, Slot, WhatIf, figure, what_if};
use leptos::prelude::*;
use measure::{Amount, Decimal, Unit, real};
use words::{say, t};

use super::Fitting;
use crate::bench::use_bench;
use crate::parts::{Chip, Pick, Seg, live, press, words};
use crate::pictures::Picture;
use crate::pictures::drawing::Drawing;
use crate::pictures::section::Section;

/// The pack that is thought about, and by how much it is thought thicker, mm.
#[derive(Clone, Copy)]
pub struct Thought {
    told: Memo<Option<SetUp>>,
    slot: RwSignal<Option<Slot>>,
    by: RwSignal<Option<Decimal>>,
}

impl Thought {
    /// Until a person chooses: the first pack that is to be changed, and the change advised.
    pub fn of(told: Memo<Option<SetUp>>) -> Thought {
        Thought { told, slot: RwSignal::new(None), by: RwSignal::new(None) }
    }

    /// The pack.
    pub fn slot(self) -> Option<Slot> {
        let advised = self.told.with(|told| {
            let packs = &told.as_ref()?.advice.packs;
            let changed = packs.iter().find(|pack| pack.act == PackAct::Fit);
            changed.or(packs.first()).map(|pack| pack.slot)
        });
        self.slot.get().or(advised)
    }

    /// The thickness the chosen pack is thought to have, mm; `None` while it is not known.
    pub fn total(self) -> Option<Decimal> {
        let now = self.told.with(|told| {
            let slot = self.slot();
            let packs = &told.as_ref()?.advice.packs;
            let pack = packs.iter().find(|pack| Some(pack.slot) == slot)?;
            (pack.act != PackAct::Unknown).then_some(pack.now)
        });
        now.map(|now| now + self.by())
    }

    /// How much thicker it is thought, mm; less than zero thinner.
    fn by(self) -> Decimal {
        let advised = self.told.with(|told| {
            let slot = self.slot();
            let packs = &told.as_ref()?.advice.packs;
            let pack = packs.iter().find(|pack| Some(pack.slot) == slot)?;
            Some(pack.total - pack.now)
        });
        self.by.get().or(advised).unwrap_or_default()
    }

    fn choose(self, slot: Slot) {
        self.by.set(None);
        self.slot.set(Some(slot));
    }
}

/// The step of the what-if: 0.05 mm, or 0.0020 in.
fn step(shown: Shown) -> Decimal {
    let step = match shown.units.length {
        Unit::Inch => Amount { value: Decimal::new(2, 3), unit: Unit::Inch },
        _ => Amount { value: Decimal::new(5, 2), unit: Unit::Millimetre },
    };
    step.to(Unit::Millimetre).map_or(step.value, |step| step.value)
}

/// The sketch with its control.
#[component]
pub fn Sketch(fitting: Fitting) -> impl IntoView {
    let drawing = Signal::derive(move || drawing(fitting).unwrap_or_default());
    let slots = Memo::new(move |_| {
        let slots = |told: &SetUp| told.advice.packs.iter().map(|pack| pack.slot).collect();
        fitting.look(slots).unwrap_or_default()
    });
    // An upper unit has no nose: its input stands where the others have theirs.
    let side = words(move || {
        let is_upper = fitting.of.look(|(_, sheet, _), _| sheet.layout == "d") == Some(true);
        if is_upper { t("input left") } else { t("nose left") }.to_owned()
    });
    let row = live(move || view! { <Positions fitting slots=slots.get()/> }.into_any());
    view! {
        <div class="sheet">
            <div class="h">
                <h1 class="t-2">{t("Fit the packs")}</h1>
                <small>{side}</small>
            </div>
            <Picture drawing class="sk"/>
            {row}
            {live(move || fitting.thought.slot().map(|slot| view! { <Steps fitting pack=slot/> }).into_any())}
            {live(move || hold(fitting).into_any())}
        </div>
    }
}

/// The row of positions: the control of the sketch.
#[component]
fn Positions(fitting: Fitting, slots: Vec<Slot>) -> impl IntoView {
    let thought = fitting.thought;
    let picks = slots.iter().map(|slot| Pick::from(slot.tag())).collect();
    let all = StoredValue::new(slots);
    let chosen = Signal::derive(move || {
        let slot = thought.slot();
        all.with_value(|slots| slots.iter().position(|other| Some(*other) == slot))
    });
    let choose = Callback::new(move |at| {
        if let Some(slot) = all.with_value(|slots| slots.get(at).copied()) {
            thought.choose(slot);
        }
    });
    view! { <Seg id="position" label=t("Shim position") picks chosen on_choose=choose/> }
}

/// Thinner, thicker, and what that would do.
#[component]
fn Steps(fitting: Fitting, pack: Slot) -> impl IntoView {
    let (thought, of) = (fitting.thought, fitting.of);
    let turn = move |way: Decimal| {
        Callback::new(move |()| {
            let by = untrack(|| thought.by() + way * step(of.shown()));
            thought.by.set(Some(by));
        })
    };
    let button = move |sign: &'static str, way: Decimal| {
        live(move || {
            let step = figure(step(of.shown()), Figure::Reading, of.shown());
            let spoken = match sign {
                "+" => say!("{pack} thicker by {step}", pack = pack.tag()),
                _ => say!("{pack} thinner by {step}", pack = pack.tag()),
            };
            view! {
                <button class="btn btn--plain btn--step" type="button" aria-label=spoken on:click=press(turn(way))>
                    {sign}
                    " "
                    {step}
                </button>
            }
            .into_any()
        })
    };
    let outcome = live(move || {
        let what = what(fitting, pack).map(|what| (total(&what, pack, of.shown()), what.says));
        let (total, says) = what.unwrap_or_default();
        view! {
            <p class="centred" aria-live="polite">
                <b>{total}</b>
                <br/>
                <span class="dim">{says}</span>
            </p>
        }
        .into_any()
    });
    view! {
        <div class="line line--tight spread">
            {button("−", Decimal::NEGATIVE_ONE)}
            {outcome}
            {button("+", Decimal::ONE)}
        </div>
    }
}

/// Whether the chosen pack must stay as it is.
fn hold(fitting: Fitting) -> Option<AnyView> {
    let bench = use_bench();
    let slot = fitting.thought.slot()?;
    let held = fitting.of.look(|(job, ..), _| job.held.contains(&slot))?;
    let turn = Callback::new(move |()| {
        let fact = Fact::PackHeld { slot, held: !held };
        fitting.record(bench, vec![(BookId::Job(fitting.of.id()), fact)]);
    });
    let words = say!("Hold {} as it is", slot.tag());
    let chip = view! {
        <Chip pressed=Signal::stored(held) on_press=turn>
            {words}
        </Chip>
    };
    Some(chip.into_any())
}

fn what(fitting: Fitting, slot: Slot) -> Option<WhatIf> {
    let by = fitting.thought.by();
    fitting.of.look(|books, shown| what_if(books, slot, by, shown))
}

fn total(what: &WhatIf, slot: Slot, shown: Shown) -> String {
    match what.total {
        Some(total) => {
            format!("{} {} {}", slot.tag(), figure(total, Figure::Shim, shown), shown.units.length)
        }
        None => say!("{} not written down", slot.tag()),
    }
}

fn drawing(fitting: Fitting) -> Option<Drawing> {
    let slot = fitting.thought.slot()?;
    let what = what(fitting, slot)?;
    let by = real::from_decimal(fitting.thought.by());
    let sketch = |(_, sheet, _): (&job::Job, &job::Sheet, &job::Tin), _| {
        let packs = sheet.positions().into_iter().map(|position| position.id);
        let position = sheet.position(slot)?;
        let section = Section::of(packs).choosing(position.id);
        let turned = sheet.is_turned(&position);
        let (thicker, _) = sheet.ways(&position);
        Some(match what.way.as_str() {
            "" => Section { turned, note: thicker.to_owned(), ..section },
            way => Section { turned, change: by, note: way.to_owned(), ..section },
        })
    };
    fitting.of.look(sketch)?.map(|section| section.draw())
}
