//! A unit sheet: its book folded.

use std::collections::BTreeMap;

use measure::{Decimal, Typed, Unit};

use crate::{Book, BookId, Check, FIELDS, Fact, Field, FieldValue, Position, Slot, demo};

/// A unit sheet as it stands.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Sheet {
    /// Id of its book.
    pub id: String,
    /// What the person calls the unit; empty while the sheet has not been opened.
    pub name: String,
    /// The layout: `b`.
    pub layout: String,
    values: BTreeMap<Field, FieldValue>,
    variants: BTreeMap<Slot, Option<String>>,
    /// Positions whose sign a person has seen, and whether it goes the other way.
    signs: BTreeMap<String, bool>,
}

impl Sheet {
    /// Folds a book. Total: what does not belong on a sheet is passed over.
    pub fn fold(book: &Book) -> Sheet {
        let mut sheet = Sheet::default();
        if let BookId::Sheet(id) = book.id() {
            sheet.id.clone_from(id);
        }
        for entry in book.live() {
            sheet.apply(&entry.fact);
        }
        sheet
    }

    fn apply(&mut self, fact: &Fact) {
        match fact {
            Fact::SheetOpened { name, layout } => {
                self.name.clone_from(name);
                self.layout.clone_from(layout);
            }
            Fact::FieldTyped { field, value } => {
                self.values.insert(*field, value.clone());
            }
            Fact::FieldCleared { field } => {
                self.values.remove(field);
            }
            Fact::VariantChosen { slot, position } => {
                self.variants.insert(*slot, position.clone());
            }
            Fact::SignConfirmed { position } => {
                self.signs.insert(position.clone(), false);
            }
            Fact::SignOverridden { position, .. } => {
                self.signs.insert(position.clone(), true);
            }
            _ => {}
        }
    }

    /// Whether the sheet has been opened.
    pub fn is_open(&self) -> bool {
        !self.layout.is_empty()
    }

    /// Whether it is the practice unit's, which nobody measured.
    pub fn is_invented(&self) -> bool {
        self.name == demo::UNIT
    }

    /// A field's value.
    pub fn value(&self, field: Field) -> Option<&FieldValue> {
        self.values.get(&field)
    }

    /// A field's number as it was typed.
    pub fn number(&self, field: Field) -> Option<&Typed> {
        match self.values.get(&field)? {
            FieldValue::Number(typed) => Some(typed),
            FieldValue::Count(_) | FieldValue::Word(_) => None,
        }
    }

    /// A field's length, mm.
    pub fn millimetres(&self, field: Field) -> Option<Decimal> {
        self.number(field).map(|typed| typed.in_unit(Unit::Millimetre))
    }

    /// A field's whole number.
    pub fn count(&self, field: Field) -> Option<u32> {
        match self.values.get(&field)? {
            FieldValue::Count(count) => Some(*count),
            FieldValue::Number(_) | FieldValue::Word(_) => None,
        }
    }

    /// A field's word: its choice or text.
    pub fn word(&self, field: Field) -> Option<&str> {
        match self.values.get(&field)? {
            FieldValue::Word(word) => Some(word),
            FieldValue::Number(_) | FieldValue::Count(_) => None,
        }
    }

    /// How many fields have a value, and how many fields there are.
    pub fn typed(&self) -> (usize, usize) {
        (self.values.len(), FIELDS.len())
    }

    /// Where a pack lies; `None` where the unit has no such pack.
    ///
    /// Until a person has chosen, the usual position is taken. The thrust washer counts from the
    /// moment that a limit of the end play is typed.
    pub fn position(&self, slot: Slot) -> Option<&'static Position> {
        match self.variants.get(&slot) {
            Some(None) => None,
            Some(Some(id)) => Position::named(id).filter(|position| position.slot == slot),
            None if slot == Slot::B4 && !self.has_end_play() => None,
            None => slot.positions().next(),
        }
    }

    /// Whether a person has said where the pack lies. A pack with one possible place needs no
    /// saying.
    pub fn is_chosen(&self, slot: Slot) -> bool {
        self.variants.contains_key(&slot)
            || (!slot.may_be_absent() && slot.positions().count() == 1)
    }

    /// The positions the unit has, in the order of work.
    pub fn positions(&self) -> Vec<&'static Position> {
        Slot::ALL.into_iter().filter_map(|slot| self.position(slot)).collect()
    }

    /// Whether a person has seen which way the pack pushes.
    pub fn is_confirmed(&self, position: &Position) -> bool {
        self.signs.contains_key(position.id)
    }

    /// Whether a person has said that a thicker pack pushes the other way than usual.
    pub fn is_turned(&self, position: &Position) -> bool {
        self.signs.get(position.id).copied().unwrap_or_default()
    }

    /// The way the member goes with a thicker pack, and with a thinner one, as this unit has it.
    pub fn ways(&self, position: &Position) -> (&'static str, &'static str) {
        let (thicker, thinner) = (position.thicker, position.thinner);
        if self.is_turned(position) { (thinner, thicker) } else { (thicker, thinner) }
    }

    /// The mesh sign and the setting sign of a position, turned where a person said so.
    pub(crate) fn signs(&self, position: &Position) -> (i8, i8) {
        let way = if self.is_turned(position) { -1 } else { 1 };
        (position.mesh_sign * way, position.setting_sign * way)
    }

    /// The checks the unit has, in the order of work.
    pub fn checks(&self) -> Vec<Check> {
        let positions = self.positions();
        Check::ALL
            .into_iter()
            .filter(|check| positions.iter().any(|position| position.rereads.contains(check)))
            .collect()
    }

    fn has_end_play(&self) -> bool {
        self.values.contains_key(&Field::EndPlayLow)
            || self.values.contains_key(&Field::EndPlayHigh)
    }
}

/// "a", "a and b", "a, b and c".
pub(crate) fn listed(words: &[impl AsRef<str>]) -> String {
    let words: Vec<&str> = words.iter().map(AsRef::as_ref).collect();
    match words.split_last() {
        None => String::new(),
        Some((last, [])) => (*last).to_owned(),
        Some((last, first)) => format!("{} and {last}", first.join(", ")),
    }
}
