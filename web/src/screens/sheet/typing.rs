//! What is typed into the sheet: each field is saved on leaving it, one entry at a time.

use std::collections::BTreeMap;
use std::sync::Arc;

use job::{BookId, Fact, Field, FieldValue, Group, Kind, Sheet, next_unit, read_fields};
use leptos::prelude::*;
use measure::Unit;
use wasm_bindgen_futures::spawn_local;

use super::cell::Cell;
use crate::bench::{Bench, use_bench};
use crate::parts::{Says, Text};
use crate::prefs::{Prefs, use_prefs};

/// A sheet and what is being typed into it.
#[derive(Clone, Copy)]
pub struct Typing {
    bench: Bench,
    prefs: Prefs,
    book: StoredValue<BookId>,
    sheet: Memo<Option<Arc<Sheet>>>,
    cells: StoredValue<BTreeMap<Field, Cell>>,
    /// Units taken by the button of a check, before a limit is typed in them.
    units: RwSignal<BTreeMap<&'static str, Unit>>,
}

impl Typing {
    /// Starts with what was half typed.
    pub fn of(id: &str) -> Typing {
        let bench = use_bench();
        let sheet = bench.sheet(id);
        // What layout a unit has is known before its sheet is opened, and never changes; which of
        // its checks it has may.
        let fields: Vec<Field> = sheet.with_untracked(|sheet| {
            let checks = sheet.as_ref().map(|sheet| sheet.layout_checks()).unwrap_or_default();
            let limits = checks.iter().map(|check| Group::Limits(*check));
            let groups = [Group::Gears, Group::Arm, Group::Leak].into_iter().chain(limits);
            groups.flat_map(Field::of).map(|facts| facts.field).collect()
        });
        let cells = fields.into_iter().map(|field| (field, Cell::of(id, field))).collect();
        Typing {
            bench,
            prefs: use_prefs(),
            book: StoredValue::new(BookId::Sheet(id.to_owned())),
            sheet,
            cells: StoredValue::new(cells),
            units: RwSignal::new(BTreeMap::new()),
        }
    }

    /// Looks at the sheet as it is saved.
    pub fn look<T: Default>(self, at: impl FnOnce(&Arc<Sheet>) -> T) -> T {
        self.sheet.with(|sheet| sheet.as_ref().map(at)).unwrap_or_default()
    }

    /// Nothing once the screen has been left.
    fn cell(self, field: Field) -> Option<Cell> {
        self.cells.try_with_value(|cells| cells.get(&field).copied()).flatten()
    }

    /// The text of a field: as being typed, else as saved.
    pub fn text(self, field: Field) -> Text {
        let cell = self.cell(field);
        let shown = move || {
            let typed = cell.and_then(|cell| cell.text.get());
            typed.unwrap_or_else(|| self.saved(field))
        };
        let set = move |text: String| {
            if let Some(cell) = cell {
                cell.set(text);
            }
        };
        Text::new(Signal::derive(shown), Callback::new(set))
    }

    /// What is saved, in the digits it was typed in; with its unit where that is not the field's.
    fn saved(self, field: Field) -> String {
        let unit = self.unit(field);
        self.look(|sheet| match sheet.value(field) {
            Some(FieldValue::Number(typed)) if typed.unit() == unit => typed.text().to_owned(),
            Some(FieldValue::Number(typed)) => typed.to_string(),
            Some(FieldValue::Count(count)) => count.to_string(),
            Some(FieldValue::Word(word)) => word.clone(),
            None => String::new(),
        })
    }

    /// The unit that digits alone take at a field.
    pub fn unit(self, field: Field) -> Unit {
        let facts = field.facts();
        match (facts.kind, facts.group) {
            (Kind::Angle, _) => Unit::Degree,
            (Kind::Torque, _) => self.unit_of(facts.group),
            (Kind::Pressure, _) => self.own_unit(field, Unit::Kilopascal),
            (Kind::Time, _) => self.own_unit(field, Unit::Minute),
            (_, Group::Limits(_)) if is_limit(field) => self.unit_of(facts.group),
            _ => self.own_unit(field, Unit::Millimetre),
        }
    }

    /// The unit a field was typed in; before, the one that this person reads.
    fn own_unit(self, field: Field, usual: Unit) -> Unit {
        self.typed_unit(field).unwrap_or_else(|| self.prefs.units().of(usual))
    }

    /// The unit of the limits of a check.
    pub fn unit_of(self, group: Group) -> Unit {
        let taken = self.units.with(|units| units.get(group.name()).copied());
        let typed = || limits_of(group).find_map(|field| self.typed_unit(field));
        let usual = match group {
            Group::Limits(check) => check.unit(),
            Group::Gears | Group::Arm | Group::Leak => Unit::Millimetre,
        };
        taken.or_else(typed).unwrap_or_else(|| self.prefs.units().of(usual))
    }

    fn typed_unit(self, field: Field) -> Option<Unit> {
        self.look(|sheet| sheet.number(field).map(|typed| typed.unit()))
    }

    /// The word at a field.
    pub fn says(self, field: Field) -> Signal<Option<Says>> {
        let cell = self.cell(field);
        Signal::derive(move || {
            let refused = cell.and_then(|cell| cell.refused.get()).map(Says::Refused);
            let doubt = || self.look(|sheet| sheet.doubt(field).map(|it| it.to_string()));
            refused.or_else(|| doubt().map(Says::Doubt))
        })
    }

    /// Saves what stands in a field, if it is not saved yet.
    pub fn save(self, field: Field) {
        let Some(text) = self.pending(field) else { return };
        if self.cell(field).is_some_and(|cell| cell.is_being_stored(&text)) {
            return;
        }
        if text.trim().is_empty() {
            return self.clear(field);
        }
        // What waits beside it may be in order only together with it.
        let beside = field.judged_with().filter(|it| *it != field && self.is_waiting(*it));
        let together: Vec<Field> = beside.chain([field]).collect();
        if self.read(&together).is_err()
            && let Err(refusals) = self.read(&[field])
        {
            for (field, why) in refusals {
                self.refuse(field, Some(why));
            }
        }
    }

    /// Chooses one of a field's words.
    pub fn choose(self, field: Field, word: &str) {
        self.read_texts(&[(field, word.to_owned(), Unit::Millimetre)]).ok();
    }

    /// Lets a value in doubt stand: a person looked at the page again.
    pub fn let_stand(self, field: Field) {
        if let Some(fact) = untrack(|| self.look(|sheet| sheet.stands(field))) {
            self.record(vec![fact], move |outcome| self.refuse(field, outcome.err()));
        }
    }

    /// Takes the next unit for the limits of a check: the digits stay, and mean that unit.
    pub fn turn_unit(self, group: Group) {
        let Some(turned) = next_unit(untrack(|| self.unit_of(group))) else { return };
        self.units.update(|units| {
            units.insert(group.name(), turned);
        });
        let digits = |field: Field| {
            let typed = untrack(|| {
                self.look(|sheet| sheet.number(field).map(|typed| typed.text().to_owned()))
            });
            self.pending(field).or(typed).map(|text| (field, text, turned))
        };
        let texts: Vec<_> = limits_of(group).filter_map(digits).collect();
        if let Err(refusals) = self.read_texts(&texts) {
            for (field, why) in refusals {
                self.refuse(field, Some(why));
            }
        }
    }

    /// Writes facts down in the sheet's book.
    pub fn record(self, facts: Vec<Fact>, done: impl FnOnce(Result<(), String>) + 'static) {
        let book = self.book.get_value();
        spawn_local(async move {
            let facts = facts.into_iter().map(|fact| (book.clone(), fact)).collect();
            let outcome = self.bench.record(facts).await;
            done(outcome.map(drop).map_err(|why| why.to_string()));
        });
    }

    fn pending(self, field: Field) -> Option<String> {
        self.cell(field)?.text.get_untracked()
    }

    fn is_waiting(self, field: Field) -> bool {
        self.pending(field).is_some_and(|text| !text.trim().is_empty())
    }

    fn refuse(self, field: Field, why: Option<String>) {
        if let Some(cell) = self.cell(field) {
            cell.refused.try_set(why);
        }
    }

    fn clear(self, field: Field) {
        let is_empty = untrack(|| self.look(|sheet| Some(sheet.value(field).is_none())));
        match is_empty {
            Some(false) => self.keep(vec![Fact::FieldCleared { field }], vec![field]),
            _ => self.settle(field, ""),
        }
    }

    fn read(self, fields: &[Field]) -> Result<(), Vec<(Field, String)>> {
        let text = |field: &Field| {
            let unit = untrack(|| self.unit(*field));
            Some((*field, self.pending(*field)?, unit))
        };
        let texts: Vec<_> = fields.iter().filter_map(text).collect();
        self.read_texts(&texts)
    }

    fn read_texts(self, texts: &[(Field, String, Unit)]) -> Result<(), Vec<(Field, String)>> {
        let typed: Vec<_> =
            texts.iter().map(|(field, text, unit)| (*field, text.as_str(), *unit)).collect();
        let sheet = untrack(|| self.look(|sheet| Some(sheet.clone()))).unwrap_or_default();
        match read_fields(&sheet, &typed) {
            Ok(facts) => {
                self.keep(facts, texts.iter().map(|(field, ..)| *field).collect());
                Ok(())
            }
            Err(refusals) => {
                Err(refusals.into_iter().map(|(field, why)| (field, why.to_string())).collect())
            }
        }
    }

    /// Stores, and only then lets the fields show what is saved.
    fn keep(self, facts: Vec<Fact>, fields: Vec<Field>) {
        let texts: Vec<_> = fields
            .into_iter()
            .map(|field| (field, self.pending(field).unwrap_or_default()))
            .collect();
        if facts.is_empty() {
            texts.iter().for_each(|(field, text)| self.settle(*field, text));
            return;
        }
        for (field, text) in &texts {
            if let Some(cell) = self.cell(*field) {
                cell.storing.set(Some(text.clone()));
            }
        }
        self.record(facts, move |outcome| {
            for (field, text) in texts {
                if let Some(cell) = self.cell(field) {
                    cell.storing.try_set(None);
                }
                match &outcome {
                    Ok(()) => self.settle(field, &text),
                    Err(why) => self.refuse(field, Some(why.clone())),
                }
            }
        });
    }

    /// What stood in the field is saved; what was typed since stays.
    fn settle(self, field: Field, text: &str) {
        if let Some(cell) = self.cell(field) {
            cell.settle(text);
        }
    }
}

/// The limits of a check that are typed in one unit.
fn limits_of(group: Group) -> impl Iterator<Item = Field> {
    Field::of(group).map(|facts| facts.field).filter(|field| is_limit(*field))
}

/// Whether a field takes the unit of its check's limits; a radius keeps its own, as a manual may
/// give limits in inches and radii in millimetres.
fn is_limit(field: Field) -> bool {
    field.is_limit()
}
