//! A shim under the micrometer: what is typed, and what it is worth.

use std::sync::Arc;
use words::t;

use job::{BookId, Fact, Family, ShimPreview, ShimTexts, Shown, Tin, Typing, shim_preview};
use leptos::prelude::*;
use measure::Unit;
use wasm_bindgen_futures::spawn_local;

use crate::bench::{Bench, use_bench};
use crate::device::now::fresh_id;
use crate::draft::{Draft, use_draft};
use crate::page::lead_to;
use crate::parts::{Keys, Says, Text};
use crate::screens::entries::Entries;
use crate::shown::use_shown;

/// A number at the micrometer.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Place {
    /// What it reads when closed.
    Zero,
    /// What is marked on the shim; may be empty.
    Marked,
    /// The first place.
    One,
    /// The second place.
    Other,
}

/// What is typed anew for each shim.
const OTHERS: [Place; 3] = [Place::One, Place::Other, Place::Marked];

/// How many may be alike.
pub const ALIKE: [u32; 5] = [1, 2, 3, 5, 10];

/// What is typed, and what it comes to.
#[derive(Clone, Copy)]
pub struct Measuring {
    bench: Bench,
    keys: Keys,
    shown: Memo<Shown>,
    family: Memo<Option<Family>>,
    /// A name for the shim that is being measured.
    name: RwSignal<String>,
    zero: RwSignal<String>,
    half_zero: Draft,
    /// The places, and the mark.
    others: Entries,
    /// How many are alike, as a place in [`ALIKE`].
    pub alike: RwSignal<usize>,
    /// Why the last one was not written down.
    pub refused: RwSignal<Option<String>>,
    /// It is being written down.
    pub busy: RwSignal<bool>,
}

impl Place {
    /// Its id in the page.
    pub fn id(self) -> &'static str {
        match self {
            Place::Zero => "zero",
            Place::Marked => "marked",
            Place::One => "place-1",
            Place::Other => "place-2",
        }
    }

    /// Its label, without the unit.
    pub fn label(self) -> &'static str {
        match self {
            Place::Zero => t("Zero"),
            Place::Marked => t("Marked on it"),
            Place::One => t("Place 1"),
            Place::Other => t("Place 2"),
        }
    }
}

impl Measuring {
    /// Starts with what was half typed, and with the zero of the shim before.
    pub fn here(tin: Memo<Arc<Tin>>, family: Memo<Option<Family>>) -> Measuring {
        let half_zero = use_draft("tin", Place::Zero.id());
        let before = || tin.with_untracked(|tin| tin.last_zero().map(ToString::to_string));
        let zero = match half_zero.text_untracked() {
            none if none.is_empty() => before().unwrap_or_default(),
            half => half,
        };
        Measuring {
            bench: use_bench(),
            keys: Keys::here(),
            shown: use_shown(),
            family,
            name: RwSignal::new(fresh_id()),
            zero: RwSignal::new(zero),
            half_zero,
            others: Entries::at("tin", &OTHERS.map(Place::id)),
            alike: RwSignal::new(0),
            refused: RwSignal::new(None),
            busy: RwSignal::new(false),
        }
    }

    /// The text of a field.
    pub fn text(self, place: Place) -> Text {
        if let Some(at) = OTHERS.iter().position(|other| *other == place) {
            return self.others.text(at);
        }
        let set = move |text: String| {
            self.half_zero.set(&text);
            self.zero.set(text);
        };
        Text::new(self.zero.into(), Callback::new(set))
    }

    /// The unit that digits alone take.
    pub fn unit(self) -> Unit {
        self.others.unit()
    }

    /// What all of it comes to.
    pub fn preview(self) -> ShimPreview {
        let others = self.others.texts();
        let other = |at: usize| others.get(at).map_or("", String::as_str);
        let (zero, name) = (self.zero.get(), self.name.get());
        let family = self.family.with(|family| family.as_ref().map_or("", |family| family.name));
        let texts = ShimTexts { places: [other(0), other(1)], zero: &zero, marked: other(2) };
        let count = ALIKE.get(self.alike.get()).copied().unwrap_or_default();
        shim_preview(texts, self.unit(), (&name, family, count), self.shown.get())
    }

    /// The word at a field; none while it is being typed in.
    pub fn says(self, place: Place, preview: &ShimPreview) -> Option<Says> {
        let typed_in =
            self.keys.open().with(|open| open.as_ref().is_some_and(|open| open.id == place.id()));
        let Typing { refused, doubt, .. } = at(preview, place);
        let refused = refused.clone().map(Says::Refused);
        let doubt = || doubt.as_ref().map(|doubt| Says::Doubt(doubt.to_string()));
        refused.or_else(doubt).filter(|_| !typed_in)
    }

    /// Leads to what keeps the shim out of the tin.
    pub fn lead(self, preview: &ShimPreview) {
        let is_missing = |place: &Place| at(preview, *place).typed.is_none();
        let needed = [Place::One, Place::Other, Place::Zero].into_iter().find(is_missing);
        let mark_refused = preview.marked.refused.as_ref().map(|_| Place::Marked);
        lead_to(needed.or(mark_refused).unwrap_or(Place::One).id());
    }

    /// Writes the shim down.
    pub fn put_in(self, fact: Fact) {
        self.record(vec![fact]);
    }

    /// Writes it down as rejected, so that nobody measures it again.
    pub fn reject(self, preview: &ShimPreview) {
        let ([Some(one), Some(other)], Some(zero)) =
            (preview.places.clone().map(|place| place.typed), preview.zero.typed.clone())
        else {
            return;
        };
        let shim = self.name.get_untracked();
        let family = self.family.with_untracked(|it| it.as_ref().map_or("", |family| family.name));
        let uneven = preview.shim.as_ref().is_some_and(|shim| shim.uneven.is_some());
        let why = if uneven { "uneven" } else { t("set aside when measured") };
        let added = Fact::ShimsAdded {
            shim: shim.clone(),
            family: family.to_owned(),
            places: [one, other],
            zero,
            marked: preview.marked.typed.clone(),
            count: ALIKE.get(self.alike.get_untracked()).copied().unwrap_or(1),
        };
        self.record(vec![added, Fact::ShimRejected { shim, why: why.to_owned() }]);
    }

    fn record(self, facts: Vec<Fact>) {
        let facts = facts.into_iter().map(|fact| (BookId::Tin, fact)).collect();
        let zero = untrack(|| self.preview()).zero.typed;
        self.busy.set(true);
        spawn_local(async move {
            let outcome = self.bench.record(facts).await;
            self.busy.try_set(false);
            if outcome.is_ok() {
                // The next shim comes; the zero stays, with the unit it was read in.
                self.half_zero.clear();
                if let Some(zero) = zero {
                    self.zero.try_set(zero.to_string());
                }
                (0..OTHERS.len()).for_each(|at| self.others.clear(at));
                self.name.try_set(fresh_id());
                self.alike.try_set(0);
                lead_to(Place::One.id());
            }
            self.refused.try_set(outcome.err().map(|why| why.to_string()));
        });
    }
}

fn at(preview: &ShimPreview, place: Place) -> &Typing {
    let [one, other] = &preview.places;
    match place {
        Place::Zero => &preview.zero,
        Place::Marked => &preview.marked,
        Place::One => one,
        Place::Other => other,
    }
}
