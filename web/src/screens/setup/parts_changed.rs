//! New parts went in: marks of the old and the new one, and the pack to begin with.

use job::{BookId, Fact, Figure, FirstGuess, MarkKind, MarkUnit, PartMark, Plus, Slot, figure};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use words::{say, t};

use super::Fitting;
use crate::bench::use_bench;
use crate::device::now::fresh_id;
use crate::draft::{Draft, use_draft};
use crate::parts::{Field, Message, Pair, Pick, Says, Seg, Tag, Text, live, press};
use crate::prefs::{Prefs, use_prefs};

/// What is typed for one pack whose parts were changed.
#[derive(Clone, Copy)]
struct Marks {
    fitting: Fitting,
    slot: RwSignal<Option<Slot>>,
    prefs: Prefs,
    /// Places of the choices; kept with the digits, which would mean something else without them.
    kind: Draft,
    unit: Draft,
    plus: Draft,
    texts: [Draft; 2],
    refused: RwSignal<Option<(bool, String)>>,
}

impl Marks {
    fn of(fitting: Fitting) -> Marks {
        let place = format!("job/{}/marks", fitting.of.id());
        Marks {
            fitting,
            slot: RwSignal::new(None),
            prefs: use_prefs(),
            kind: use_draft(&place, "kind"),
            unit: use_draft(&place, "digit"),
            plus: use_draft(&place, "plus"),
            texts: ["old", "new"].map(|field| use_draft(&place, field)),
            refused: RwSignal::new(None),
        }
    }

    /// The pack: until a person chooses, the one looked at in the sketch.
    fn slot(self) -> Option<Slot> {
        self.slot.get().or_else(|| self.fitting.thought.slot())
    }

    /// What one digit is: until a person chooses, the unit of lengths that is shown.
    fn unit(self) -> usize {
        let usual = || {
            let usual = MarkUnit::usual(self.prefs.units().length);
            MarkUnit::ALL.iter().position(|unit| *unit == usual).unwrap_or_default()
        };
        self.unit.text().parse().unwrap_or_else(|_| usual())
    }

    /// What is typed of the old part or the new one. From the first digit on, its unit stays.
    fn text(self, draft: Draft) -> Text {
        let set = move |text: String| {
            if self.unit.text_untracked().is_empty() {
                self.unit.set(&untrack(|| self.unit()).to_string());
            }
            draft.set(&text);
        };
        Text::new(Signal::derive(move || draft.text()), Callback::new(set))
    }

    fn clear(self) {
        let [old, new] = self.texts;
        [old, new, self.kind, self.unit, self.plus].into_iter().for_each(Draft::clear);
    }

    /// What to write down.
    fn fact(self) -> Result<Option<Fact>, (bool, String)> {
        let Some(slot) = self.slot() else { return Ok(None) };
        let at = (place(self.kind), self.unit());
        let (Some(kind), Some(unit)) = (MarkKind::ALL.get(at.0), MarkUnit::ALL.get(at.1)) else {
            return Ok(None);
        };
        let plus = if place(self.plus) == 0 { Plus::More } else { Plus::Less };
        let [old, new] = self.texts.map(Draft::text);
        let mark = PartMark::read(*kind, [&old, &new], *unit, plus)?;
        Ok(Some(Fact::PartsChanged { slot, marks: vec![mark] }))
    }

    /// The word at the old part's field, or at the new one's.
    fn says(self, is_new: bool) -> Signal<Option<Says>> {
        Signal::derive(move || {
            let (at_new, why) = self.refused.get()?;
            (at_new == is_new).then_some(Says::Refused(why))
        })
    }
}

/// The place of what is chosen; the first until a person chooses. Followed.
fn place(choice: Draft) -> usize {
    choice.text().parse().unwrap_or_default()
}

/// The form, and the guesses that wait to be fitted.
#[component]
pub fn NewParts(fitting: Fitting) -> impl IntoView {
    let guesses = Memo::new(move |_| {
        let guess =
            |(job, sheet, tin): (&_, &_, &_), shown| job::first_guesses(job, sheet, tin, shown);
        fitting.of.look(guess).unwrap_or_default()
    });
    let waiting = live(move || {
        let guesses = guesses.get();
        let guess = |it: &FirstGuess| view! { <Begin fitting guess=it.clone()/> };
        guesses.iter().map(guess).collect_view().into_any()
    });
    view! {
        <div class="sheet sheet--quiet">
            <h2>{t("New parts")}</h2>
            {waiting}
            <details class="why">
                <summary>
                    <span>{t("A new gear, bearing or case went in")}</span>
                </summary>
                <Form marks=Marks::of(fitting)/>
            </details>
        </div>
    }
}

/// Marks of the old and the new part, their unit, and what + means on them.
#[component]
fn Form(marks: Marks) -> impl IntoView {
    let slots = Memo::new(move |_| {
        let slots = |told: &job::SetUp| told.advice.packs.iter().map(|pack| pack.slot).collect();
        marks.fitting.look(slots).unwrap_or_default()
    });
    let packs = live(move || {
        let slots: Vec<Slot> = slots.get();
        let picks = slots.iter().map(|slot| Pick::from(slot.tag())).collect();
        let at = slots.clone();
        let chosen = Signal::derive(move || at.iter().position(|it| Some(*it) == marks.slot()));
        let choose = Callback::new(move |at: usize| marks.slot.set(slots.get(at).copied()));
        view! { <Seg id="parts-pack" label=t("Pack of the new part") picks chosen on_choose=choose/> }
            .into_any()
    });
    let [old, new] = marks.texts;
    view! {
        <div class="form">
            {packs}
            {choice("parts-kind", t("What is marked"), MarkKind::ALL.map(MarkKind::name).to_vec(), Signal::derive(move || place(marks.kind)), marks.kind)}
            {choice("parts-unit", t("One digit is"), MarkUnit::ALL.map(MarkUnit::id).to_vec(), Signal::derive(move || marks.unit()), marks.unit)}
            {choice("parts-plus", t("A plus means"), vec![t("More"), t("Less")], Signal::derive(move || place(marks.plus)), marks.plus)}
            <Pair alone=true>
                <Field id="parts-old" label=t("Old part") value=marks.text(old) signed=true says=marks.says(false)/>
                <Field id="parts-new" label=t("New part") value=marks.text(new) signed=true says=marks.says(true)/>
            </Pair>
            <KeepMarks marks/>
        </div>
    }
}

fn choice(
    id: &'static str,
    label: &'static str,
    words: Vec<&'static str>,
    at: Signal<usize>,
    kept: Draft,
) -> AnyView {
    let picks = words.into_iter().map(Pick::from).collect();
    let chosen = Signal::derive(move || Some(at.get()));
    view! {
        <div class="wraps">
            <p class="label" aria-hidden="true">
                {label}
            </p>
            <Seg id label picks chosen on_choose=Callback::new(move |to: usize| kept.set(&to.to_string()))/>
        </div>
    }
    .into_any()
}

/// Writes the marks down.
#[component]
fn KeepMarks(marks: Marks) -> impl IntoView {
    let bench = use_bench();
    let keep = Callback::new(move |()| match untrack(|| marks.fact()) {
        Err(refused) => marks.refused.set(Some(refused)),
        Ok(None) => {}
        Ok(Some(fact)) => spawn_local(async move {
            let book = BookId::Job(marks.fitting.of.id());
            let outcome = bench.record(vec![(book, fact)]).await;
            marks.refused.try_set(outcome.as_ref().err().map(|why| (true, why.to_string())));
            if outcome.is_ok() {
                marks.clear();
            }
        }),
    });
    view! {
        <button class="btn btn--wide" type="button" on:click=press(keep)>
            {t("Write the new part down")}
        </button>
    }
}

/// The pack to begin with, and the way to fit it.
#[component]
fn Begin(fitting: Fitting, guess: FirstGuess) -> impl IntoView {
    let bench = use_bench();
    let shown = fitting.of.shown();
    let refused = RwSignal::new(None::<String>);
    let shims: Vec<_> = guess.shims.iter().map(|shim| shim.shim.clone()).collect();
    let each: Vec<String> =
        guess.shims.iter().map(|shim| figure(shim.net, Figure::Shim, shown)).collect();
    let slot = guess.slot;
    let packs = StoredValue::new(vec![(slot, shims)]);
    let fit = Callback::new(move |()| {
        let facts = packs.with_value(|packs| {
            let fit =
                |(job, sheet, tin): (&_, &_, &_), _| job::fit(job, sheet, tin, packs, fresh_id);
            fitting.of.look_once(fit)
        });
        spawn_local(async move {
            let outcome = bench.record(facts.unwrap_or_default()).await;
            refused.try_set(outcome.err().map(|why| why.to_string()));
        });
    });
    let way = if each.is_empty() {
        view! { <p>{t("No pack in tin or case comes near. Measure shims into the tin.")}</p> }
            .into_any()
    } else {
        let words = say!("{} is fitted: {}", slot.tag(), each.join(" + "));
        view! {
            <button class="btn btn--wide" type="button" on:click=press(fit)>
                {words}
            </button>
        }
        .into_any()
    };
    let says = Signal::derive(move || refused.get().map(Says::Refused));
    view! {
        <div class="packrow">
            <Tag words=slot.tag()/>
            <p>{guess.says.clone()}</p>
        </div>
        {way}
        <Message id=format!("begin-{}-says", slot.tag()) says/>
    }
}
