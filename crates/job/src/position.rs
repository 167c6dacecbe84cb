//! Where packs lie, and what each moves: the layout's places as the unit has them.

use gearing::case::Member;
use gearing::layout::{self, Build, LAYOUTS, Layout};
use serde::{Deserialize, Serialize};
use words::t;

use crate::{Bearings, Check, Mesh};

/// A pack of a unit, named by layout and number. Where it lies is the unit's [`Position`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[expect(missing_docs, reason = "gearing's layouts say what each one is")]
#[rustfmt::skip]
pub enum Slot {
    A1, A2, A3,
    B1, B2, B3, B4,
    C1, C2, C3, C4, C5,
    D1, D2, D3, D4, D4b, D5,
    E1, E2, E3, E4,
}

/// A place a pack can lie in, as the unit has it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Position {
    /// `B1c`.
    pub id: &'static str,
    /// The pack.
    pub slot: Slot,
    /// What the pack lies between, in the language of the app as every text here.
    pub between: [&'static str; 2],
    /// +1 a thicker pack moves its member IN (lash falls), −1 OUT, 0 moves nothing in mesh.
    pub mesh_sign: i8,
    /// +1 a thicker pack tightens the bearings or takes end play away, −1 loosens, 0 neither.
    pub setting_sign: i8,
    /// The way its member goes with a thicker pack: "gear aft".
    pub thicker: &'static str,
    /// The way it goes with a thinner pack: "gear forward".
    pub thinner: &'static str,
    /// The swelling test in words, for the usual build.
    pub swelling: &'static str,
    /// Kind of shim that fits, in English as the tin's book names it; shown turned.
    pub family: &'static str,
    /// Own labour to open, minutes.
    pub open_minutes: u32,
    /// Which of the other builds the unit is, counted from 0; `None`: the usual one.
    pub build: Option<usize>,
    /// The layout's row, its texts in English.
    pub facts: &'static layout::Position,
}

/// The packs of each layout in the order of work; where a pack is set twice, its last turn counts.
static ORDER: [(&str, &[Slot]); 5] = {
    use Slot::*;
    [
        ("a", &[A1, A2, A3]),
        ("b", &[B1, B2, B3, B4]),
        ("c", &[C1, C2, C4, C3, C5]),
        ("d", &[D2, D1, D3, D4, D4b, D5]),
        ("e", &[E2, E1, E3, E4]),
    ]
};

impl Slot {
    /// The packs of a layout, in the order of work.
    pub fn of(layout: &Layout) -> &'static [Slot] {
        ORDER.iter().find(|(id, _)| *id == layout.id).map_or(&[], |(_, slots)| slots)
    }

    /// The tag: `B2`.
    pub fn tag(self) -> &'static str {
        self.facts().1.id
    }

    /// The pack of that tag.
    pub fn named(tag: &str) -> Option<Slot> {
        ORDER.iter().flat_map(|(_, slots)| *slots).copied().find(|slot| slot.tag() == tag)
    }

    /// Its layout and its row there.
    fn facts(self) -> (&'static Layout, &'static layout::Slot) {
        static NONE: layout::Slot = layout::Slot {
            id: "",
            members: &[],
            choose: layout::Choose::One,
            may_be_absent: true,
            ask: "",
        };
        // The enum lists the packs in the order of the layouts, which a test proves.
        let mut number = self as usize;
        for layout in LAYOUTS {
            match layout.slots.get(number) {
                Some(slot) => return (layout, slot),
                None => number -= layout.slots.len(),
            }
        }
        let [first, ..] = LAYOUTS;
        (first, &NONE)
    }

    /// The layout it belongs to.
    pub fn layout(self) -> &'static Layout {
        self.facts().0
    }

    /// The check it is set by; `None` where the app keeps no such check (the split of a clutch gap).
    pub fn check(self) -> Option<Check> {
        use Slot::*;
        Some(match self {
            A1 | B1 | C1 | D1 | E1 => Check::Depth,
            A2 | E3 => Check::Lash(Mesh::Main),
            B2 => Check::FORWARD,
            B3 => Check::REVERSE,
            C2 => Check::Lash(Mesh::Front),
            C3 => Check::Lash(Mesh::Rear),
            D3 => Check::Lash(Mesh::Lower),
            D4 | D4b => Check::Lash(Mesh::Upper),
            A3 | B4 | E4 => Check::END_PLAY,
            C4 => Check::Setting(Bearings::InnerShaft),
            C5 => Check::Setting(Bearings::OuterShaft),
            D2 | E2 => Check::Setting(Bearings::PinionPair),
            D5 => return None,
        })
    }

    /// The question that says where it lies.
    pub fn question(self) -> &'static str {
        t(self.facts().1.ask)
    }

    /// Whether a unit may have no such pack.
    pub fn may_be_absent(self) -> bool {
        self.facts().1.may_be_absent
    }

    /// The places it can lie in, the usual one first, each in its usual build.
    pub fn positions(self) -> impl Iterator<Item = Position> {
        let (layout, slot) = self.facts();
        let members = slot.members.iter().filter_map(|id| layout.position(id));
        members.map(move |facts| Position::of(self, facts))
    }
}

impl Position {
    /// The position of that id, in its usual build.
    pub fn named(id: &str) -> Option<Position> {
        let facts = LAYOUTS.into_iter().find_map(|layout| layout.position(id))?;
        Some(Position::of(Slot::named(facts.slot)?, facts))
    }

    fn of(slot: Slot, facts: &'static layout::Position) -> Position {
        Position {
            id: facts.id,
            slot,
            between: facts.between.map(t),
            mesh_sign: facts.mesh_sign,
            setting_sign: facts.setting_sign,
            thicker: short(facts.thicker),
            thinner: short(facts.thinner),
            swelling: t(facts.swelling),
            family: facts.family,
            open_minutes: facts.open_minutes,
            build: None,
            facts,
        }
    }

    /// The same place in one of its other builds; a number it does not have leaves it as it is.
    pub fn built(self, build: Option<usize>) -> Position {
        let Some(other) = build.and_then(|at| self.facts.builds.get(at)) else { return self };
        Position {
            mesh_sign: other.mesh_sign,
            setting_sign: other.setting_sign,
            thicker: other.thicker.map_or(self.thicker, short),
            build,
            ..self
        }
    }

    /// The builds it can be in besides the usual one: when each holds.
    pub fn builds(&self) -> impl Iterator<Item = &'static str> {
        self.facts.builds.iter().map(|build| t(build.when))
    }

    fn as_built(&self) -> Option<&'static Build> {
        self.facts.builds.get(self.build?)
    }

    /// What to mind about it; nothing where there is nothing.
    pub fn note(&self) -> Option<&'static str> {
        self.facts.note.map(t)
    }

    /// What happens as the pack grows, in the build the unit has.
    pub fn grows(&self) -> &'static str {
        match self.as_built() {
            Some(build) => build.note.map(t).unwrap_or_default(),
            None => self.swelling,
        }
    }

    /// What has to come out to reach it.
    pub fn open_how(&self) -> &'static str {
        t(self.facts.open_how)
    }

    /// The pairs of gears it moves.
    fn meshes(&self) -> &'static [&'static str] {
        self.as_built().and_then(|build| build.meshes).unwrap_or(self.facts.meshes)
    }

    /// The bearings it sets.
    fn settings(&self) -> &'static [&'static str] {
        self.as_built().and_then(|build| build.settings).unwrap_or(self.facts.settings)
    }

    /// Whether a thicker pack changes the reading by the formula.
    pub fn moves(&self, check: Check) -> bool {
        match check {
            Check::Depth => self.mesh_sign != 0 && self.member() == Member::Pinion,
            Check::Lash(_) => self.mesh_sign != 0 && self.meshes().contains(&check.part()),
            Check::Setting(_) => self.setting_sign != 0 && self.settings().contains(&check.part()),
            Check::Torque => false,
        }
    }

    /// Whether a reading of the check goes stale when the pack changes.
    pub fn rereads(&self, check: Check) -> bool {
        let told = self.as_built().and_then(|build| build.rereads).unwrap_or(self.facts.rereads);
        let turns_harder = check == Check::Torque && self.setting_sign != 0;
        self.moves(check) || turns_harder || check.is_among(told)
    }

    /// What a pack here moves, for the set-up engine.
    pub(crate) fn member(&self) -> Member {
        match self.meshes() {
            _ if self.facts.moves == "pinion" => Member::Pinion,
            [mesh] if self.mesh_sign != 0 => Member::Driven((*mesh).to_owned()),
            _ => Member::Other(self.facts.moves.to_owned()),
        }
    }
}

/// The ways of a gear, whichever gear it is.
static OF_A_GEAR: [&str; 6] =
    ["gear forward", "gear aft", "gear up", "gear down", "gear IN", "gear OUT"];

/// "gear aft" for "forward gear aft" and "carrier and reverse gear aft": the pack says which gear,
/// and the words fit beside an arrow.
fn short(way: &'static str) -> &'static str {
    t(OF_A_GEAR.into_iter().find(|short| way.ends_with(short)).unwrap_or(way))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_pack_and_position_of_the_layouts_is_here() {
        for layout in LAYOUTS {
            let slots = Slot::of(layout);
            assert_eq!(slots.len(), layout.slots.len());
            for slot in layout.slots {
                let named = Slot::named(slot.id).unwrap();
                assert!(slots.contains(&named));
                assert_eq!(format!("{named:?}"), slot.id);
                assert_eq!(named.layout().id, layout.id);
                let members: Vec<&str> = named.positions().map(|position| position.id).collect();
                assert_eq!(members, slot.members);
            }
            for position in layout.positions {
                assert_eq!(Position::named(position.id).unwrap().facts, position);
            }
        }
    }

    #[test]
    fn packs_stand_in_the_order_of_work() {
        for layout in LAYOUTS {
            let mut order: Vec<&str> = Vec::new();
            for slot in layout.order.iter().filter_map(|step| step.slot) {
                order.retain(|other| *other != slot);
                order.push(slot);
            }
            let slots: Vec<&str> = Slot::of(layout).iter().map(|slot| slot.tag()).collect();
            assert_eq!(slots, order, "layout {}", layout.id);
        }
    }

    #[test]
    fn every_pack_changes_the_check_it_is_set_by() {
        for slot in LAYOUTS.into_iter().flat_map(Slot::of) {
            let Some(check) = slot.check() else { continue };
            for position in slot.positions() {
                assert!(position.moves(check), "{} {}", position.id, check.id());
            }
        }
    }

    #[test]
    fn what_the_layouts_say_goes_stale_goes_stale() {
        // Checks the app does not keep: read on the bench, never set by a formula.
        let not_kept = ["dog clearance", "gap up", "gap down"];
        for position in LAYOUTS.into_iter().flat_map(|layout| layout.positions) {
            let builds = position.builds.iter().filter_map(|build| build.rereads);
            for words in builds.chain([position.rereads]).flatten() {
                let known = crate::plan::CHECKS.iter().flat_map(|(_, checks)| *checks);
                let kept = known.clone().any(|check| check.is_among(&[words]));
                assert!(kept || not_kept.contains(words), "{} {words}", position.id);
            }
        }
    }

    #[test]
    fn the_ways_are_short() {
        assert_eq!(Position::named("B2").unwrap().thicker, "gear aft");
        assert_eq!(Position::named("D3").unwrap().thinner, "gear down");
        assert_eq!(Position::named("B3b").unwrap().thicker, "gear aft");
        assert_eq!(Position::named("A1").unwrap().thicker, "pinion down");
        assert_eq!(Position::named("E1").unwrap().thicker, "pinion toward the gear");
    }
}
