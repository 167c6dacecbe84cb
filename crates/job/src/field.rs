//! The fields of a unit sheet of layout (b).

use measure::Decimal;
use serde::{Deserialize, Serialize};

use crate::Check;

/// A field of the unit sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[expect(missing_docs, reason = "the table below says what each one is")]
pub enum Field {
    PinionTeeth,
    ForwardTeeth,
    ReverseTeeth,
    PinionRadius,
    PressureAngle,
    SpiralAngle,
    ArmRadius,
    ArmShaft,
    DepthLow,
    DepthHigh,
    DepthAim,
    DepthSide,
    DepthSource,
    ForwardLow,
    ForwardHigh,
    ForwardRadius,
    ForwardShaft,
    ForwardSource,
    ReverseLow,
    ReverseHigh,
    ReverseRadius,
    ReverseShaft,
    ReverseSource,
    EndPlayLow,
    EndPlayHigh,
    EndPlaySource,
}

/// What a field is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct FieldFacts {
    /// The field.
    pub field: Field,
    /// The name in files and addresses: `forward-low`.
    pub id: &'static str,
    /// The name at the field: "Low".
    pub label: &'static str,
    /// The name inside a sentence: "forward low limit".
    pub name: &'static str,
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
}

const LASHES: &[Check] = &[Check::Forward, Check::Reverse];
const DEPTH: &[Check] = &[Check::Depth];
const FORWARD: &[Check] = &[Check::Forward];
const REVERSE: &[Check] = &[Check::Reverse];
const END_PLAY: &[Check] = &[Check::EndPlay];

const RADIUS: Kind = Kind::Length { least: 6_000, most: 400_000 };
const LASH: Kind = Kind::Length { least: 50, most: 2_000 };
const GAP: Kind = Kind::Length { least: 100, most: 5_000 };
const PLAY: Kind = Kind::Length { least: 15, most: 2_000 };
const SHAFTS: Kind = Kind::Choice(&[("driveshaft", "Driveshaft"), ("propshaft", "Propshaft")]);
const SIDES: Kind = Kind::Choice(&[("mesh", "Mesh side"), ("behind", "Behind the pinion")]);

/// Every field, in the order of the sheet.
pub static FIELDS: [FieldFacts; 26] = {
    use Field::*;
    let depth = Group::Limits(Check::Depth);
    let forward = Group::Limits(Check::Forward);
    let reverse = Group::Limits(Check::Reverse);
    let play = Group::Limits(Check::EndPlay);
    [
        row(
            PinionTeeth,
            "pinion-teeth",
            "Pinion teeth",
            "pinion teeth",
            Kind::Teeth,
            Group::Gears,
            LASHES,
        ),
        row(
            ForwardTeeth,
            "forward-teeth",
            "Forward gear teeth",
            "forward gear teeth",
            Kind::Teeth,
            Group::Gears,
            FORWARD,
        ),
        row(
            ReverseTeeth,
            "reverse-teeth",
            "Reverse gear teeth",
            "reverse gear teeth",
            Kind::Teeth,
            Group::Gears,
            REVERSE,
        ),
        row(
            PinionRadius,
            "pinion-radius",
            "Pinion mean pitch radius",
            "pinion pitch radius",
            RADIUS,
            Group::Gears,
            LASHES,
        ),
        row(
            PressureAngle,
            "pressure-angle",
            "Normal pressure angle",
            "pressure angle",
            Kind::Angle,
            Group::Gears,
            &[],
        ),
        row(
            SpiralAngle,
            "spiral-angle",
            "Spiral angle",
            "spiral angle",
            Kind::Angle,
            Group::Gears,
            &[],
        ),
        row(ArmRadius, "arm-radius", "Arm radius", "arm radius", RADIUS, Group::Arm, LASHES),
        row(ArmShaft, "arm-shaft", "Arm is on", "arm shaft", SHAFTS, Group::Arm, LASHES),
        row(DepthLow, "depth-low", "Low", "depth low limit", GAP, depth, DEPTH),
        row(DepthHigh, "depth-high", "High", "depth high limit", GAP, depth, DEPTH),
        row(DepthAim, "depth-aim", "Aim", "depth aim", GAP, depth, &[]),
        row(DepthSide, "depth-side", "Gauge is on", "depth gauge side", SIDES, depth, DEPTH),
        row(DepthSource, "depth-source", "Source", "depth source", Kind::Text, depth, &[]),
        row(ForwardLow, "forward-low", "Low", "forward low limit", LASH, forward, FORWARD),
        row(ForwardHigh, "forward-high", "High", "forward high limit", LASH, forward, FORWARD),
        row(
            ForwardRadius,
            "forward-radius",
            "At radius",
            "forward radius",
            RADIUS,
            forward,
            FORWARD,
        ),
        row(ForwardShaft, "forward-shaft", "On", "forward shaft", SHAFTS, forward, FORWARD),
        row(ForwardSource, "forward-source", "Source", "forward source", Kind::Text, forward, &[]),
        row(ReverseLow, "reverse-low", "Low", "reverse low limit", LASH, reverse, REVERSE),
        row(ReverseHigh, "reverse-high", "High", "reverse high limit", LASH, reverse, REVERSE),
        row(
            ReverseRadius,
            "reverse-radius",
            "At radius",
            "reverse radius",
            RADIUS,
            reverse,
            REVERSE,
        ),
        row(ReverseShaft, "reverse-shaft", "On", "reverse shaft", SHAFTS, reverse, REVERSE),
        row(ReverseSource, "reverse-source", "Source", "reverse source", Kind::Text, reverse, &[]),
        row(EndPlayLow, "end-play-low", "Low", "end play low limit", PLAY, play, END_PLAY),
        row(EndPlayHigh, "end-play-high", "High", "end play high limit", PLAY, play, END_PLAY),
        row(EndPlaySource, "end-play-source", "Source", "end play source", Kind::Text, play, &[]),
    ]
};

const fn row(
    field: Field,
    id: &'static str,
    label: &'static str,
    name: &'static str,
    kind: Kind,
    group: Group,
    needed_by: &'static [Check],
) -> FieldFacts {
    FieldFacts { field, id, label, name, kind, group, needed_by }
}

impl Field {
    /// What it is.
    pub fn facts(self) -> &'static FieldFacts {
        // Every field has its row, which a test proves; the fallback is never reached.
        let [first, ..] = &FIELDS;
        FIELDS.iter().find(|facts| facts.field == self).unwrap_or(first)
    }

    /// The field of that id.
    pub fn named(id: &str) -> Option<Field> {
        FIELDS.iter().find(|facts| facts.id == id).map(|facts| facts.field)
    }

    /// The fields of a group, in the order of the sheet.
    pub fn of(group: Group) -> impl Iterator<Item = &'static FieldFacts> {
        FIELDS.iter().filter(move |facts| facts.group == group)
    }
}

impl Group {
    /// Every group, in the order of the sheet.
    pub const ALL: [Group; 6] = [
        Group::Gears,
        Group::Arm,
        Group::Limits(Check::Depth),
        Group::Limits(Check::Forward),
        Group::Limits(Check::Reverse),
        Group::Limits(Check::EndPlay),
    ];

    /// The heading.
    pub fn name(self) -> &'static str {
        match self {
            Group::Gears => "Teeth and shafts",
            Group::Arm => "Your arm",
            Group::Limits(check) => check.name(),
        }
    }
}

impl Kind {
    /// What is usual for a length, mm.
    pub(crate) fn usual(self) -> Option<(Decimal, Decimal)> {
        match self {
            Kind::Length { least, most } => Some((Decimal::new(least, 3), Decimal::new(most, 3))),
            _ => None,
        }
    }
}

/// The limits of a check: low, high and aim.
pub(crate) fn limits(check: Check) -> (Field, Field, Option<Field>) {
    match check {
        Check::Depth => (Field::DepthLow, Field::DepthHigh, Some(Field::DepthAim)),
        Check::Forward => (Field::ForwardLow, Field::ForwardHigh, None),
        Check::Reverse => (Field::ReverseLow, Field::ReverseHigh, None),
        Check::EndPlay => (Field::EndPlayLow, Field::EndPlayHigh, None),
    }
}

/// The radius and the shaft that a backlash band holds at.
pub(crate) fn band_at(check: Check) -> Option<(Field, Field)> {
    match check {
        Check::Forward => Some((Field::ForwardRadius, Field::ForwardShaft)),
        Check::Reverse => Some((Field::ReverseRadius, Field::ReverseShaft)),
        Check::Depth | Check::EndPlay => None,
    }
}

/// Where the limit of a check was read.
pub(crate) fn source(check: Check) -> Field {
    match check {
        Check::Depth => Field::DepthSource,
        Check::Forward => Field::ForwardSource,
        Check::Reverse => Field::ReverseSource,
        Check::EndPlay => Field::EndPlaySource,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_field_has_one_row_and_its_file_name_is_its_id() {
        for facts in &FIELDS {
            assert_eq!(facts.field.facts(), facts);
            assert_eq!(Field::named(facts.id), Some(facts.field));
            let written = serde_json::to_string(&facts.field).unwrap();
            assert_eq!(written, format!("\"{}\"", facts.id));
            assert!(Group::ALL.contains(&facts.group));
        }
    }
}
