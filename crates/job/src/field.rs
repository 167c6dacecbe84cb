//! The fields of a unit sheet. A layout has those of its own gears and checks.

use measure::Decimal;
use words::t;

use crate::by_id::by_id;
use crate::{Check, LeakPart, LeakStage, Mesh, field_rows};

/// A field of the unit sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Field {
    /// Teeth of the pinion.
    PinionTeeth,
    /// Teeth of a driven gear.
    Teeth(Mesh),
    /// Mean pitch radius of the pinion.
    PinionRadius,
    /// Normal pressure angle; seldom in a manual.
    PressureAngle,
    /// Mean spiral angle; seldom in a manual.
    SpiralAngle,
    /// Radius of the arm that the indicator reads on.
    ArmRadius,
    /// The shaft the arm is on.
    ArmShaft,
    /// Low limit of a check. A preload is an end play below zero.
    Low(Check),
    /// High limit of a check.
    High(Check),
    /// The value aimed at.
    Aim(Check),
    /// The side of the pinion that the depth gauge is on.
    DepthSide,
    /// The radius a backlash band holds at.
    Radius(Mesh),
    /// The shaft it holds on.
    Shaft(Mesh),
    /// Where the limits of a check were read.
    Source(Check),
    /// What the manual asks of a leak stage.
    Leak(LeakStage, LeakPart),
    /// Where the leak stages were read.
    LeakSource,
}

/// What a field is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FieldFacts {
    /// The field.
    pub field: Field,
    /// The name in files and addresses: `forward-low`.
    pub id: &'static str,
    /// What [`FieldFacts::label`] turns.
    pub(crate) label: &'static str,
    /// What [`FieldFacts::name`] turns.
    pub(crate) name: &'static str,
    /// What it takes.
    pub kind: Kind,
    /// Where it stands on the sheet.
    pub group: Group,
    /// Checks that cannot be judged without it.
    pub needed_by: &'static [Check],
}

/// What a field takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A length above zero, typed in mm or in; what is usual, in thousandths of a millimetre.
    Length {
        /// The least usual. Common practice, no source; only for a doubt.
        least: i64,
        /// The most usual.
        most: i64,
    },
    /// A length above zero for an end play, below zero for a preload; not both.
    Play,
    /// A torque above zero.
    Torque,
    /// A pressure or vacuum above zero.
    Pressure,
    /// A time above zero.
    Time,
    /// An angle in degrees, zero or more.
    Angle,
    /// A whole number of teeth.
    Teeth,
    /// One of these words; the second of each is shown.
    Choice(&'static [(&'static str, &'static str)]),
    /// Free text.
    Text,
}

/// A part of the sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Group {
    /// Teeth and shafts.
    Gears,
    /// The arm the indicator reads on.
    Arm,
    /// A check's limits.
    Limits(Check),
    /// The leak stages.
    Leak,
}

impl FieldFacts {
    /// The name at the field: "Low".
    pub fn label(&self) -> &'static str {
        t(self.label)
    }

    /// The name inside a sentence: "forward low limit".
    pub fn name(&self) -> &'static str {
        t(self.name)
    }
}

impl Field {
    /// What it is.
    pub fn facts(self) -> &'static FieldFacts {
        // Every field has its row, which a test proves; the fallback is never reached.
        let found = field_rows::all().find(|facts| facts.field == self);
        found.unwrap_or(&field_rows::FIRST)
    }

    /// The field of that id.
    pub fn named(id: &str) -> Option<Field> {
        field_rows::all().find(|facts| facts.id == id).map(|facts| facts.field)
    }

    /// The name in files and addresses.
    pub fn id(self) -> &'static str {
        self.facts().id
    }

    /// The fields of a group, in the order of the sheet, of every layout.
    pub fn of(group: Group) -> impl Iterator<Item = &'static FieldFacts> {
        field_rows::all().filter(move |facts| facts.group == group)
    }

    /// The fields that are in order only together with it, itself among them: limits of one check, a
    /// leak stage.
    pub fn judged_with(self) -> impl Iterator<Item = Field> {
        let stage = if let Field::Leak(stage, _) = self { Some(stage) } else { None };
        let is_with = move |other: &Field| match (other, stage) {
            (Field::Leak(other, _), Some(stage)) => *other == stage,
            _ => *other == self || (self.is_limit() && other.is_limit()),
        };
        Field::of(self.facts().group).map(|facts| facts.field).filter(is_with)
    }

    /// Whether it is a low or high limit, or the aim between them.
    pub fn is_limit(self) -> bool {
        matches!(self, Field::Low(_) | Field::High(_) | Field::Aim(_))
    }
}

by_id!(Field);

impl Group {
    /// The heading.
    pub fn name(self) -> &'static str {
        match self {
            Group::Gears => t("Teeth and shafts"),
            Group::Arm => t("Your arm"),
            Group::Limits(check) => check.name(),
            Group::Leak => t("Leak test"),
        }
    }
}

impl Kind {
    /// What is usual for a length, mm, its sign left out.
    pub(crate) fn usual(self) -> Option<(Decimal, Decimal)> {
        let (least, most) = match self {
            Kind::Length { least, most } => (least, most),
            Kind::Play => (10, 2_000),
            _ => return None,
        };
        Some((Decimal::new(least, 3), Decimal::new(most, 3)))
    }
}

/// The limits of a check: low, high and aim.
pub(crate) fn limits(check: Check) -> (Field, Field, Option<Field>) {
    let aim = (check == Check::Depth).then_some(Field::Aim(check));
    (Field::Low(check), Field::High(check), aim)
}

/// The radius and the shaft that a backlash band holds at.
pub(crate) fn band_at(check: Check) -> Option<(Field, Field)> {
    match check {
        Check::Lash(mesh) => Some((Field::Radius(mesh), Field::Shaft(mesh))),
        Check::Depth | Check::Setting(_) | Check::Torque => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_field_has_one_row_and_its_file_name_is_its_id() {
        for facts in field_rows::all() {
            assert_eq!(facts.field.facts(), facts);
            assert_eq!(Field::named(facts.id), Some(facts.field));
            let written = serde_json::to_string(&facts.field).unwrap();
            assert_eq!(written, format!("\"{}\"", facts.id));
        }
        for (_, checks) in crate::plan::CHECKS {
            for check in checks {
                assert!(Field::of(Group::Limits(*check)).count() >= 3, "{}", check.id());
            }
        }
    }
}
