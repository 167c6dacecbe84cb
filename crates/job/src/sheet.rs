//! A unit sheet: its book folded.

use std::collections::BTreeMap;

use gearing::case::{Arm, Driven, Gears, Shaft};
use measure::{Band, Decimal, Typed, Unit};

use crate::{
    ArmShaft, Book, BookId, Check, FIELDS, Fact, Field, FieldValue, Position, Slot, field,
};

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

/// Fields that a check needs and the sheet does not have.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Missing {
    /// The check.
    pub check: Check,
    /// The fields, in the order of the sheet; one or more.
    pub fields: Vec<Field>,
    /// What is missing and what to do, in one sentence.
    pub sentence: String,
}

/// What a sheet still asks of the person.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ToDo {
    /// Type a field that a check needs.
    Type(Field),
    /// Read a field again: its value is in doubt.
    Check(Field),
    /// Say where a pack lies.
    Place(Slot),
    /// See which way a pack pushes.
    Sign(Slot),
}

impl ToDo {
    /// What the blue button says.
    pub fn words(self) -> String {
        match self {
            ToDo::Type(field) => format!("Type {}", field.facts().name),
            ToDo::Check(field) => format!("Check {}", field.facts().name),
            ToDo::Place(slot) => format!("Say where {} lies", slot.tag()),
            ToDo::Sign(slot) => format!("See which way {} pushes", slot.tag()),
        }
    }
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

    /// What the check needs and the sheet does not have.
    pub fn missing(&self, check: Check) -> Option<Missing> {
        let fields: Vec<Field> = FIELDS
            .iter()
            .filter(|facts| facts.needed_by.contains(&check))
            .map(|facts| facts.field)
            .filter(|field| !self.values.contains_key(field))
            .collect();
        if fields.is_empty() {
            return None;
        }
        let names: Vec<&str> = fields.iter().map(|field| field.facts().name).collect();
        let sentence = format!(
            "{} cannot be judged without {}. Type {} on the unit sheet.",
            check.name(),
            listed(&names),
            if names.len() == 1 { "it" } else { "them" },
        );
        Some(Missing { check, fields, sentence })
    }

    /// What is left to do on the sheet, in its order.
    pub fn to_do(&self) -> Vec<ToDo> {
        let checks = self.checks();
        let slots = Slot::ALL.into_iter().filter(|slot| !self.is_chosen(*slot)).map(ToDo::Place);
        let signs = self
            .positions()
            .into_iter()
            .filter(|position| !self.is_confirmed(position))
            .map(|position| ToDo::Sign(position.slot));
        let fields = FIELDS.iter().filter_map(|facts| {
            let wanted = facts.needed_by.iter().any(|check| checks.contains(check));
            if !self.values.contains_key(&facts.field) {
                return wanted.then_some(ToDo::Type(facts.field));
            }
            self.doubt(facts.field).map(|_| ToDo::Check(facts.field))
        });
        fields.chain(slots).chain(signs).collect()
    }

    /// The limits of a check as typed, mm, with their aim; `None` while one is missing or they make
    /// no band.
    pub fn band(&self, check: Check) -> Option<Band> {
        let (low, high, aim) = field::limits(check);
        let band = Band::new(self.millimetres(low)?, self.millimetres(high)?).ok()?;
        match aim.and_then(|aim| self.millimetres(aim)) {
            Some(aim) => band.with_aim(aim).ok(),
            None => Some(band),
        }
    }

    /// The limits of a check at the sheet's arm, mm: a backlash band is carried there from its
    /// radius.
    pub fn band_at_arm(&self, check: Check) -> Option<Band> {
        if check.has_arm() { self.band_at(check, &self.arm(check)?) } else { self.band(check) }
    }

    /// The limits of a backlash at some arm, mm.
    pub(crate) fn band_at(&self, check: Check, to: &Arm) -> Option<Band> {
        let (band, gears, from) = (self.band(check)?, self.gears()?, self.sheet_arm(check)?);
        let carried = |limit| gearing::backlash::carried(limit, &gears, &from, to);
        Band::new(carried(band.low())?, carried(band.high())?).ok()
    }

    /// What a reading at the sheet's arm is multiplied by to be one at another arm; 1 without arms.
    pub(crate) fn lever(&self, check: Check, to: Option<&Arm>) -> Decimal {
        let lever = || {
            let (gears, from) = (self.gears()?, self.arm(check)?);
            gearing::backlash::carried(Decimal::ONE, &gears, &from, to?)
        };
        lever().unwrap_or(Decimal::ONE)
    }

    /// The gears, once their teeth and the pinion's radius are typed.
    pub(crate) fn gears(&self) -> Option<Gears> {
        let driven = [("forward", Field::ForwardTeeth), ("reverse", Field::ReverseTeeth)]
            .into_iter()
            .filter_map(|(id, field)| Some(Driven { id: id.to_owned(), teeth: self.count(field)? }))
            .collect();
        Some(Gears {
            pinion_teeth: self.count(Field::PinionTeeth)?,
            pinion_pitch_radius: self.millimetres(Field::PinionRadius)?,
            driven,
            normal_pressure_angle: self.degrees(Field::PressureAngle),
            spiral_angle: self.degrees(Field::SpiralAngle),
            shaft_angle: Decimal::from(90),
        })
    }

    /// The arm a check is read on, as the sheet says.
    pub(crate) fn arm(&self, check: Check) -> Option<Arm> {
        let on = ArmShaft::named(self.word(Field::ArmShaft)?)?;
        arm(check, self.millimetres(Field::ArmRadius)?, on)
    }

    /// Where the sheet's backlash band holds.
    pub(crate) fn sheet_arm(&self, check: Check) -> Option<Arm> {
        let (radius, shaft) = field::band_at(check)?;
        arm(check, self.millimetres(radius)?, ArmShaft::named(self.word(shaft)?)?)
    }

    fn degrees(&self, field: Field) -> Option<Decimal> {
        self.number(field).map(|typed| typed.in_unit(Unit::Degree))
    }

    fn has_end_play(&self) -> bool {
        self.values.contains_key(&Field::EndPlayLow)
            || self.values.contains_key(&Field::EndPlayHigh)
    }
}

/// An arm of a check: on the propshaft it turns with the gear in mesh.
pub(crate) fn arm(check: Check, radius: Decimal, on: ArmShaft) -> Option<Arm> {
    let on = match on {
        ArmShaft::Driveshaft => Shaft::Pinion,
        ArmShaft::Propshaft => Shaft::Driven(check.gear()?.to_owned()),
    };
    Some(Arm { radius, on })
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
