//! What is known of a simulated gearcase: its unit sheet and its tin. All of it is invented.
//!
//! Teeth, angles and ratios are those of the numerical mesh model that the spreads of the slopes
//! come from. Bands and first readings are sized like the golden pack choices in `tests/golden`:
//! depth bands are 0.03 or 0.04 mm to each side and first readings 0.117 mm (root mean square) off
//! the aim; backlash 0.06 to 0.18 mm and 0.173 mm; end play 0.04 to 0.12 mm and 0.079 mm.

use gearing::case::{
    Arm, Case, Check, CheckKind, Driven, Gears, Member, Position, Shaft, StockLine,
};
use gearing::layout;
use measure::{Decimal, real};

use crate::dice::Dice;
use crate::unit::{Place, Sets};

/// Whether the pressure angle and the spiral angle stand on the unit sheet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Geometry {
    /// They do.
    Known,
    /// They do not, as is usual.
    Unknown,
}

/// Teeth of pinion and gear.
const TEETH: [(u32, u32); 5] = [(13, 17), (13, 21), (13, 24), (13, 26), (12, 30)];
/// Normal pressure angles, tenths of a degree.
const PRESSURE_ANGLES: [i64; 3] = [200, 225, 250];
/// Spiral angles, degrees.
const SPIRAL_ANGLES: [i64; 4] = [0, 15, 25, 35];
/// Sizes in the tin, hundredths of a millimetre.
const SIZES: [i64; 10] = [5, 8, 10, 12, 15, 20, 25, 30, 40, 50];
/// Shims of each size in the tin.
const OF_EACH: usize = 2;
/// Sizes of a pack as found, hundredths of a millimetre.
const FOUND: [i64; 2] = [50, 40];
/// How far shims are from their nominal size: one standard deviation, mm.
const SIZE_SPREAD: f64 = 0.002;
/// Shims a pack may have.
const MAX_SHIMS: usize = 4;

/// A case without dry builds.
pub(crate) struct Sheet {
    pub case: Case,
    /// The packs it comes with.
    pub found: Vec<Vec<Decimal>>,
    /// First reading of each check less its aim, mm at the arm.
    pub starts: Vec<f64>,
}

impl Sheet {
    pub fn draw(
        unit: &layout::Layout,
        places: &[Place],
        known: Geometry,
        dice: &mut Dice,
    ) -> Sheet {
        let positions = positions(unit, places, dice);
        let drawn = places.iter().map(|place| check(unit, place.sets, &positions, dice));
        let (checks, starts) = drawn.unzip();
        let mut found = Vec::new();
        let mut stock = Vec::new();
        for position in &positions {
            found.push(FOUND.map(|size| shim(size, dice)).to_vec());
            for size in SIZES.into_iter().flat_map(|size| [size; OF_EACH]) {
                put(&mut stock, &position.family, shim(size, dice), 1);
            }
        }
        let case = Case {
            gears: gears(unit, known, dice),
            arm: Arm { radius: Decimal::from(dice.between(22, 41)), on: Shaft::Pinion },
            positions,
            checks,
            stock,
            max_shims: MAX_SHIMS,
            trials: Vec::new(),
            frozen: Vec::new(),
        };
        Sheet { case, found, starts }
    }
}

fn gears(unit: &layout::Layout, known: Geometry, dice: &mut Dice) -> Gears {
    let (pinion_teeth, teeth) = dice.pick(&TEETH).unwrap_or((13, 24));
    let on_sheet = |angle| (known == Geometry::Known).then_some(angle);
    let pressure_angle = Decimal::new(dice.pick(&PRESSURE_ANGLES).unwrap_or(200), 1);
    let spiral_angle = Decimal::from(dice.pick(&SPIRAL_ANGLES).unwrap_or(35));
    Gears {
        pinion_teeth,
        pinion_pitch_radius: Decimal::from(dice.between(20, 29)),
        driven: unit.meshes.iter().map(|id| Driven { id: (*id).into(), teeth }).collect(),
        normal_pressure_angle: on_sheet(pressure_angle),
        spiral_angle: on_sheet(spiral_angle),
        shaft_angle: Decimal::from(90),
    }
}

/// One position for each place.
fn positions(unit: &layout::Layout, places: &[Place], dice: &mut Dice) -> Vec<Position> {
    let drawn: Vec<&layout::Position> =
        places.iter().filter_map(|place| unit.position(dice.pick(place.members)?)).collect();
    let here = |id: &str| drawn.iter().any(|position| position.id == id);
    let position = |position: &&layout::Position| Position {
        id: position.id.into(),
        moves: match (position.moves, position.meshes) {
            ("pinion", _) => Member::Pinion,
            (_, [mesh]) => Member::Driven((*mesh).into()),
            (other, _) => Member::Other(other.into()),
        },
        mesh_sign: position.mesh_sign,
        setting_sign: position.setting_sign,
        family: position.family.into(),
        open_minutes: position.open_minutes,
        after: position.after.iter().filter(|id| here(id)).map(|id| (*id).into()).collect(),
    };
    drawn.iter().map(position).collect()
}

fn check(
    unit: &layout::Layout,
    sets: Sets,
    positions: &[Position],
    dice: &mut Dice,
) -> (Check, f64) {
    let (id, kind, aim, half, off) = match sets {
        Sets::Depth => {
            let kind = CheckKind::DepthGap { from_behind: false };
            ("depth".to_owned(), kind, 65, dice.between(3, 5), dice.between(-0.20, 0.20))
        }
        Sets::Lash(mesh) => {
            let kind = CheckKind::Backlash { mesh: mesh.into(), band_at: None };
            let off = dice.between(-0.30, 0.30);
            (format!("lash {mesh}"), kind, dice.between(32, 51), dice.between(6, 19), off)
        }
        Sets::Play(shaft) => {
            let changes = |position: &&Position| {
                let place = unit.position(&position.id);
                place.is_some_and(|place| place.settings.contains(&shaft))
            };
            let positions = positions.iter().filter(changes).map(|p| p.id.clone()).collect();
            let kind = CheckKind::EndPlay { positions };
            let off = dice.between(-0.14, 0.14);
            (format!("end play {shaft}"), kind, dice.between(16, 31), dice.between(4, 13), off)
        }
    };
    let [low, high, aim] = [aim - half, aim + half, aim].map(|limit| Decimal::new(limit, 2));
    (Check { id, kind, low, high, aim: Some(aim), sigma: None }, off)
}

/// Puts shims of one thickness into a tin, or takes them out.
pub(crate) fn put(tin: &mut Vec<StockLine>, family: &str, thickness: Decimal, change: i32) {
    let same = |line: &&mut StockLine| line.family == family && line.thickness == thickness;
    match tin.iter_mut().find(same) {
        Some(line) => line.count = line.count.saturating_add_signed(change),
        None => {
            let count = u32::try_from(change).unwrap_or(0);
            tin.push(StockLine { family: family.into(), thickness, count });
        }
    }
}

/// A shim of about this many hundredths of a millimetre, as its micrometer reading says.
fn shim(hundredths: i64, dice: &mut Dice) -> Decimal {
    let nominal = Decimal::new(hundredths, 2);
    nominal + real::to_decimal(dice.normal(SIZE_SPREAD), 3).unwrap_or_default()
}
