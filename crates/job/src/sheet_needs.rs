//! What a unit sheet still asks of the person.

use words::say;

use crate::{Check, Field, Sheet, Slot, field_rows, sheet::listed};

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
            ToDo::Type(field) => say!("Type {}", field.facts().name()),
            ToDo::Check(field) => say!("Check {}", field.facts().name()),
            ToDo::Place(slot) => say!("Say where {} lies", slot.tag()),
            ToDo::Sign(slot) => say!("See which way {} pushes", slot.tag()),
        }
    }
}

impl Sheet {
    /// What the check needs and the sheet does not have.
    pub fn missing(&self, check: Check) -> Option<Missing> {
        let fields: Vec<Field> = field_rows::all()
            .filter(|facts| facts.needed_by.contains(&check))
            .map(|facts| facts.field)
            .filter(|field| self.value(*field).is_none())
            .collect();
        if fields.is_empty() {
            return None;
        }
        let names: Vec<&str> = fields.iter().map(|field| field.facts().name()).collect();
        let (judged, wanted) = (check.name(), listed(&names));
        let sentence = match names.len() {
            1 => say!("{judged} cannot be judged without {wanted}. Type it on the unit sheet."),
            _ => say!("{judged} cannot be judged without {wanted}. Type them on the unit sheet."),
        };
        Some(Missing { check, fields, sentence })
    }

    /// What is left to do on the sheet, in its order.
    pub fn to_do(&self) -> Vec<ToDo> {
        let checks = self.checks();
        let slots =
            self.slots().iter().copied().filter(|slot| !self.is_chosen(*slot)).map(ToDo::Place);
        let signs = self
            .positions()
            .into_iter()
            .filter(|position| !self.is_confirmed(position))
            .map(|position| ToDo::Sign(position.slot));
        let fields = self.fields().filter_map(|facts| {
            let wanted = facts.needed_by.iter().any(|check| checks.contains(check));
            if self.value(facts.field).is_none() {
                return wanted.then_some(ToDo::Type(facts.field));
            }
            self.doubt(facts.field).map(|_| ToDo::Check(facts.field))
        });
        fields.chain(slots).chain(signs).collect()
    }
}
