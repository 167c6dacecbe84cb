//! One set-up question: what is known, what is in the tin, what has been read.
use measure::Decimal;

/// The gears of a unit.
#[derive(Clone, Debug, PartialEq)]
pub struct Gears {
    /// Teeth of the pinion.
    pub pinion_teeth: u32,
    /// Mean pitch radius of the pinion, mm.
    pub pinion_pitch_radius: Decimal,
    /// Driven gears.
    pub driven: Vec<Driven>,
    /// Normal pressure angle, degrees; often not on the sheet.
    pub normal_pressure_angle: Option<Decimal>,
    /// Mean spiral angle, degrees; often not on the sheet.
    pub spiral_angle: Option<Decimal>,
    /// Angle between the shafts, degrees; 90 unless given.
    pub shaft_angle: Decimal,
}

/// A driven gear.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Driven {
    /// Name: `forward`.
    pub id: String,
    /// Teeth.
    pub teeth: u32,
}

/// The shaft an arm or a band refers to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Shaft {
    /// The pinion's.
    Pinion,
    /// A driven gear's.
    Driven(String),
}

/// The arm the indicator reads on.
#[derive(Clone, Debug, PartialEq)]
pub struct Arm {
    /// Radius, mm.
    pub radius: Decimal,
    /// Shaft it is clamped on.
    pub on: Shaft,
}

/// A place that holds a pack.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Position {
    /// `B2`.
    pub id: String,
    /// What a thicker pack moves.
    pub moves: Member,
    /// +1 thicker moves it IN (lash falls), −1 OUT, 0 no mesh moves.
    pub mesh_sign: i8,
    /// +1 thicker tightens, −1 loosens, 0 neither.
    pub setting_sign: i8,
    /// Kind of shim that fits.
    pub family: String,
    /// Labour to open, minutes.
    pub open_minutes: u32,
    /// Positions that come apart on the way.
    pub after: Vec<String>,
}

/// What a position moves.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Member {
    /// The pinion: every mesh.
    Pinion,
    /// One driven gear.
    Driven(String),
    /// A shaft or nothing in mesh.
    Other(String),
}

/// A check with its band.
#[derive(Clone, Debug, PartialEq)]
pub struct Check {
    /// `lash-forward`.
    pub id: String,
    /// What is read.
    pub kind: CheckKind,
    /// Low limit, mm.
    pub low: Decimal,
    /// High limit, mm.
    pub high: Decimal,
    /// Value aimed at; the middle where absent.
    pub aim: Option<Decimal>,
    /// The gauge's standard uncertainty, mm; a 0.01 mm step where absent.
    pub sigma: Option<Decimal>,
}

/// Kinds of check.
#[derive(Clone, Debug, PartialEq)]
pub enum CheckKind {
    /// Gap between pinion face and gauge.
    DepthGap {
        /// The gauge reads from behind the pinion.
        from_behind: bool,
    },
    /// Backlash of one mesh at the arm.
    Backlash {
        /// The driven gear.
        mesh: String,
        /// Radius and shaft the band holds at; the arm where absent.
        band_at: Option<Arm>,
    },
    /// End play (high limit above 0) or preload (high limit 0 or below).
    EndPlay {
        /// Positions that change it.
        positions: Vec<String>,
    },
}

/// Shims of one thickness in the tin.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StockLine {
    /// Kind of shim.
    pub family: String,
    /// Net thickness, mm.
    pub thickness: Decimal,
    /// How many.
    pub count: u32,
}

/// One dry build: the packs that were in and what the gauges read.
#[derive(Clone, Debug, PartialEq)]
pub struct Trial {
    /// One pack for each position, in the case's order; net thicknesses.
    pub packs: Vec<Vec<Decimal>>,
    /// One series for each check, in the case's order; empty where not read.
    pub readings: Vec<Vec<Decimal>>,
}

/// Everything the advice is made from.
#[derive(Clone, Debug, PartialEq)]
pub struct Case {
    /// The gears.
    pub gears: Gears,
    /// The arm.
    pub arm: Arm,
    /// Positions, in the order of work.
    pub positions: Vec<Position>,
    /// Checks, in the order of work.
    pub checks: Vec<Check>,
    /// The tin, without what is in the case.
    pub stock: Vec<StockLine>,
    /// Most shims in a pack.
    pub max_shims: usize,
    /// Dry builds since the last change of parts, oldest first.
    pub trials: Vec<Trial>,
    /// Ids of positions that must stay as they are.
    pub frozen: Vec<String>,
}
