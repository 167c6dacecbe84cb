//! A unit sheet: its book folded.

use std::collections::{BTreeMap, BTreeSet};
use words::{say, t};

use gearing::layout::Layout;
use measure::{Decimal, Typed, Unit};

use crate::procedure::Changes;
use crate::{
    ArmShaft, Book, BookId, Check, Fact, Field, FieldFacts, FieldValue, Group, Kind, Mesh,
    Position, Slot, demo,
    field_rows::{self, INPUT_SHAFTS},
    plan,
};

/// A unit sheet as it stands.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Sheet {
    /// Id of its book.
    pub id: String,
    /// What the person calls the unit; empty while the sheet has not been opened.
    pub name: String,
    /// The layout: `a` to `e`.
    pub layout: String,
    /// The shop's own changes to the procedure of this unit.
    pub changes: Changes,
    values: BTreeMap<Field, FieldValue>,
    /// Values in doubt that a person looked at again.
    looked_at: BTreeSet<Field>,
    variants: BTreeMap<Slot, Option<String>>,
    /// Positions whose sign a person has seen, and why it goes the other way where it does.
    signs: BTreeMap<String, Option<String>>,
    /// Positions in another build than the usual one.
    builds: BTreeMap<String, usize>,
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
                let before = self.values.insert(*field, value.clone());
                if before.as_ref() != Some(value) {
                    self.looked_at.remove(field);
                }
            }
            Fact::FieldCleared { field } => {
                self.values.remove(field);
                self.looked_at.remove(field);
            }
            Fact::ValueStands { field } => drop(self.looked_at.insert(*field)),
            Fact::VariantChosen { slot, position } => {
                self.variants.insert(*slot, position.clone());
            }
            Fact::SignConfirmed { position } => {
                self.signs.insert(position.clone(), None);
            }
            Fact::SignOverridden { position, reason } => {
                self.signs.insert(position.clone(), Some(reason.clone()));
            }
            Fact::BuildChosen { position, build: None } => {
                self.builds.remove(position);
            }
            Fact::BuildChosen { position, build: Some(build) } => {
                self.builds.insert(position.clone(), *build as usize);
            }
            Fact::Guided(fact) => self.changes.take(fact),
            _ => {}
        }
    }

    /// Whether the sheet has been opened.
    pub fn is_open(&self) -> bool {
        !self.layout.is_empty()
    }

    /// How the gearcase is built; the usual layout until the sheet says.
    pub fn layout(&self) -> &'static Layout {
        Layout::find(&self.layout).unwrap_or_else(plan::usual)
    }

    /// The packs the layout can have, in the order of work.
    pub fn slots(&self) -> &'static [Slot] {
        Slot::of(self.layout())
    }

    /// Whether it is the practice unit's, which nobody measured.
    pub fn is_invented(&self) -> bool {
        demo::is_invented(&self.id)
    }

    /// A field's value.
    pub fn value(&self, field: Field) -> Option<&FieldValue> {
        self.values.get(&field)
    }

    /// Whether a person looked at a field's value again and let it stand.
    pub(crate) fn is_looked_at(&self, field: Field) -> bool {
        self.looked_at.contains(&field)
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

    /// Every check a unit of the layout can have, in the order of work.
    pub fn layout_checks(&self) -> &'static [Check] {
        plan::checks(self.layout())
    }

    /// What the shaft of an arm is called on this unit: "driveshaft".
    pub fn shaft(&self, on: ArmShaft) -> String {
        let choices = self.choices(Field::ArmShaft).iter();
        let word =
            choices.filter(|(id, _)| *id == on.id()).map(|(_, word)| t(word).to_lowercase()).next();
        word.unwrap_or_else(|| on.id().to_owned())
    }

    /// The fields this unit can have, in the order of the sheet.
    pub fn fields(&self) -> impl Iterator<Item = &'static FieldFacts> {
        let (layout, checks) = (self.layout(), self.limits());
        let is_here = move |facts: &&FieldFacts| match (facts.field, facts.group) {
            (Field::Teeth(mesh), _) => layout.meshes.contains(&Check::Lash(mesh).part()),
            (_, Group::Limits(check)) => checks.contains(&check),
            (_, Group::Gears | Group::Arm | Group::Leak) => true,
        };
        field_rows::all().filter(is_here)
    }

    /// The words a field can be, and how each is shown for this layout, turned where it is; none for
    /// other fields.
    pub fn choices(&self, field: Field) -> &'static [(&'static str, &'static str)] {
        let is_input = self.layout().meshes.contains(&Check::Lash(Mesh::Upper).part());
        match (field, field.facts().kind) {
            (Field::ArmShaft, _) if is_input => INPUT_SHAFTS,
            (_, Kind::Choice(choices)) => choices,
            _ => &[],
        }
    }

    /// How many of the fields that the set-up takes have a value, and how many there are.
    pub fn typed(&self) -> (usize, usize) {
        let all = || self.fields().filter(|facts| facts.group != Group::Leak);
        (all().filter(|facts| self.value(facts.field).is_some()).count(), all().count())
    }

    /// The checks whose limits the sheet asks for or takes, in the order of work.
    pub fn limits(&self) -> Vec<Check> {
        let usual = || self.slots().iter().flat_map(|slot| slot.positions());
        let can_have = |check: &Check| {
            let sets = |position: Position| position.rereads(*check);
            *check == Check::Torque || usual().any(sets) || self.positions().into_iter().any(sets)
        };
        plan::checks(self.layout()).iter().copied().filter(can_have).collect()
    }

    /// Where a pack lies; `None` where the unit has no such pack.
    ///
    /// Until a person has chosen, the usual position is taken. A pack that a unit may lack and that
    /// moves no gear counts from the moment that a limit of its check is typed; one that does the
    /// same as a pack before it only once it is chosen.
    pub fn position(&self, slot: Slot) -> Option<Position> {
        let position = match self.variants.get(&slot) {
            Some(None) => None,
            Some(Some(id)) => Position::named(id).filter(|position| position.slot == slot),
            None => slot.positions().next().filter(|usual| self.has_unasked(slot, usual)),
        }?;
        Some(position.built(self.builds.get(position.id).copied()))
    }

    fn has_unasked(&self, slot: Slot, usual: &Position) -> bool {
        if !slot.may_be_absent() {
            return true;
        }
        let before = self.slots().iter().take_while(|other| **other != slot);
        let is_second = before.into_iter().any(|other| other.check() == slot.check());
        let has_limit = || slot.check().is_some_and(|check| self.has_limit(check));
        !is_second && (usual.mesh_sign != 0 || has_limit())
    }

    fn has_limit(&self, check: Check) -> bool {
        [Field::Low(check), Field::High(check)].iter().any(|field| self.value(*field).is_some())
    }

    /// The pack that a check is set by, where the unit has one.
    pub fn slot_of(&self, check: Check) -> Option<Slot> {
        let has = |slot: &Slot| slot.check() == Some(check) && self.position(*slot).is_some();
        self.slots().iter().copied().find(has)
    }

    /// Whether a person has said where the pack lies. A pack with one possible place needs no
    /// saying.
    pub fn is_chosen(&self, slot: Slot) -> bool {
        self.variants.contains_key(&slot)
            || (!slot.may_be_absent() && slot.positions().count() == 1)
    }

    /// The positions the unit has, in the order of work.
    pub fn positions(&self) -> Vec<Position> {
        self.slots().iter().filter_map(|slot| self.position(*slot)).collect()
    }

    /// Whether a person has seen which way the pack pushes.
    pub fn is_confirmed(&self, position: &Position) -> bool {
        self.signs.contains_key(position.id)
    }

    /// Whether a person has said that a thicker pack pushes the other way than usual.
    pub fn is_turned(&self, position: &Position) -> bool {
        self.turned_because(position).is_some()
    }

    /// Why a person said that a thicker pack pushes the other way than usual.
    pub fn turned_because(&self, position: &Position) -> Option<&str> {
        self.signs.get(position.id)?.as_deref()
    }

    /// Every pack that pushes the other way than usual, with the reason, a sentence each.
    pub fn turned_says(&self) -> Vec<String> {
        let says = |position: Position| {
            let reason = self.turned_because(&position)?;
            let (id, reason) = (position.id, reason.trim_end_matches('.'));
            Some(say!("{id} is taken to push the other way than usual: {reason}."))
        };
        self.positions().into_iter().filter_map(says).collect()
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

    /// The checks the unit has, in the order of work: those that a pack of it changes, and the
    /// rolling torque once it has a limit.
    pub fn checks(&self) -> Vec<Check> {
        let positions = self.positions();
        let has = |check: &Check| match check {
            Check::Torque => self.has_limit(*check),
            _ => positions.iter().any(|position| position.rereads(*check)),
        };
        plan::checks(self.layout()).iter().copied().filter(has).collect()
    }
}

/// "a", "a and b", "a, b and c".
pub(crate) fn listed(words: &[impl AsRef<str>]) -> String {
    let words: Vec<&str> = words.iter().map(AsRef::as_ref).collect();
    match words.split_last() {
        None => String::new(),
        Some((last, [])) => (*last).to_owned(),
        Some((last, first)) => say!("{before} and {last}", before = first.join(", ")),
    }
}
