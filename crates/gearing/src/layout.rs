//! The layouts a gearcase can have, with the places a shim pack can lie in.
//!
//! Common practice; signs come from the swelling test: picture the pack growing and see what is
//! shoved which way. Minutes are rough labour figures, waits left out. Limits are never part of
//! this: they come from the unit's own manual.

mod a;
mod b;
mod c;
mod d;
mod e;

/// Every layout.
pub static LAYOUTS: [&Layout; 5] = [&a::LAYOUT, &b::LAYOUT, &c::LAYOUT, &d::LAYOUT, &e::LAYOUT];

/// How a gearcase is built.
#[derive(Debug, PartialEq, Eq)]
pub struct Layout {
    /// `b`.
    pub id: &'static str,
    /// "Forward and reverse gears, sliding dog".
    pub name: &'static str,
    /// Pairs of gears in mesh: `forward`.
    pub meshes: &'static [&'static str],
    /// Shafts whose end play or preload is set: `propshaft`.
    pub settings: &'static [&'static str],
    /// What is set in which order.
    pub order: &'static [Step],
    /// Places of which a unit has one member, or several.
    pub slots: &'static [Slot],
    /// Every place.
    pub positions: &'static [Position],
}

/// One thing to set.
#[derive(Debug, PartialEq, Eq)]
pub struct Step {
    /// The slot whose pack is chosen; `None` where only something is read.
    pub slot: Option<&'static str>,
    /// What is read.
    pub check: &'static str,
    /// The procedure's step.
    pub step: &'static str,
    /// What to mind.
    pub note: Option<&'static str>,
}

/// Variants of one place.
#[derive(Debug, PartialEq, Eq)]
pub struct Slot {
    /// `B1`.
    pub id: &'static str,
    /// Its positions.
    pub members: &'static [&'static str],
    /// How many of them a unit has.
    pub choose: Choose,
    /// Some units have none.
    pub may_be_absent: bool,
    /// The question that finds the member.
    pub ask: &'static str,
}

/// How many members of a slot a unit has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choose {
    /// Exactly one.
    One,
    /// Members stand on their own and may exist together.
    Any,
}

/// A place a pack can lie in.
#[derive(Debug, PartialEq, Eq)]
pub struct Position {
    /// `B1c`.
    pub id: &'static str,
    /// Its slot.
    pub slot: &'static str,
    /// The part that stands still, and the part that is pushed.
    pub between: [&'static str; 2],
    /// The member that moves.
    pub moves: &'static str,
    /// The way it goes with a thicker pack.
    pub thicker: &'static str,
    /// The way it goes with a thinner pack.
    pub thinner: &'static str,
    /// +1 a thicker pack moves the member IN (lash falls), −1 OUT, 0 no mesh moves.
    pub mesh_sign: i8,
    /// +1 a thicker pack tightens the bearings or takes end play away, −1 loosens, 0 neither.
    pub setting_sign: i8,
    /// Checks this pack is chosen by.
    pub controls: &'static [&'static str],
    /// Meshes it moves.
    pub meshes: &'static [&'static str],
    /// Settings it changes.
    pub settings: &'static [&'static str],
    /// Checks that go stale when it changes.
    pub rereads: &'static [&'static str],
    /// The sentence the person confirms.
    pub swelling: &'static str,
    /// +1 a taller bearing in series moves the member as a thicker pack does, −1 the other way, 0
    /// no bearing in series.
    pub height_sign: i8,
    /// Kind of shim that fits.
    pub family: &'static str,
    /// Own labour on top of `after`, minutes.
    pub open_minutes: u32,
    /// Positions that come apart on the way; skip those the unit does not have.
    pub after: &'static [&'static str],
    /// Labour when this position alone is changed, minutes.
    pub alone_minutes: u32,
    /// What has to come out.
    pub open_how: &'static str,
    /// How it behaves in other builds.
    pub builds: &'static [Build],
    /// What to mind.
    pub note: Option<&'static str>,
}

/// How the same position behaves in another build; a field that is given replaces the position's.
#[derive(Debug, PartialEq, Eq)]
pub struct Build {
    /// Which build.
    pub when: &'static str,
    /// Replaces the mesh sign.
    pub mesh_sign: i8,
    /// Replaces the setting sign.
    pub setting_sign: i8,
    /// Replaces the way a thicker pack moves the member.
    pub thicker: Option<&'static str>,
    /// Replaces the checks it is chosen by.
    pub controls: Option<&'static [&'static str]>,
    /// Replaces the meshes it moves.
    pub meshes: Option<&'static [&'static str]>,
    /// Replaces the settings it changes.
    pub settings: Option<&'static [&'static str]>,
    /// Replaces the checks that go stale.
    pub rereads: Option<&'static [&'static str]>,
    /// What to mind.
    pub note: Option<&'static str>,
}

impl Layout {
    /// The layout with an id.
    ///
    /// ```
    /// let layout = gearing::layout::Layout::find("b").unwrap();
    /// assert_eq!(layout.name, "Forward and reverse gears, sliding dog");
    /// assert_eq!(layout.position("B2").unwrap().thicker, "forward gear aft");
    /// ```
    pub fn find(id: &str) -> Option<&'static Layout> {
        LAYOUTS.into_iter().find(|layout| layout.id == id)
    }

    /// A place by its id.
    pub fn position(&self, id: &str) -> Option<&Position> {
        self.positions.iter().find(|position| position.id == id)
    }

    /// A slot by its id.
    pub fn slot(&self, id: &str) -> Option<&Slot> {
        self.slots.iter().find(|slot| slot.id == id)
    }

    /// Labour to change some packs of a unit, minutes: each position once with those that come
    /// apart on the way, but never less than the dearest of them alone. `unit` are the positions
    /// the unit has.
    ///
    /// ```
    /// let layout = gearing::layout::Layout::find("b").unwrap();
    /// let unit = ["B1", "B2", "B3", "B4"];
    /// // Its own 20, and the reverse pack and the washer that come apart on the way; alone it is 50.
    /// assert_eq!(layout.minutes(&["B2"], &unit), 50);
    /// assert_eq!(layout.minutes(&["B1", "B2"], &unit), 80);
    /// ```
    pub fn minutes(&self, changed: &[&str], unit: &[&str]) -> u32 {
        let mut opened: Vec<&Position> = Vec::new();
        let mut next: Vec<&str> = changed.to_vec();
        while let Some(id) = next.pop() {
            let known = opened.iter().any(|position| position.id == id);
            if let Some(position) = self.position(id).filter(|_| !known && unit.contains(&id)) {
                next.extend(position.after);
                opened.push(position);
            }
        }
        let together: u32 = opened.iter().map(|position| position.open_minutes).sum();
        let alone = changed.iter().filter_map(|id| self.position(id));
        together.max(alone.map(|position| position.alone_minutes).max().unwrap_or(0))
    }
}
