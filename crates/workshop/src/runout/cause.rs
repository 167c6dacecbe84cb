//! Bent shaft, cocked race, out of round: told apart by reading a second place.

use measure::{Uncertainty, Unit};
use words::key;

use super::Answer;
use super::fit::Wave;
use crate::{Figure, Reading, Refusal};

/// A second place along the same shaft, read from the same mark.
#[derive(Clone, Copy, Debug)]
pub struct Along<'a> {
    /// What was read there.
    pub turn: &'a Answer,
    /// Distance from the first place.
    pub distance: Reading,
}

/// A face that should run square, read from the same mark.
#[derive(Clone, Copy, Debug)]
pub struct Face<'a> {
    /// What was read on it.
    pub turn: &'a Answer,
    /// Radius at which the indicator stood.
    pub radius: Reading,
}

/// What a reading round the turn points to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Cause {
    /// The surface's centre lies beside the line it turns on, by the same amount in both places.
    OffCentre,
    /// The centre wanders along the shaft: bent, or its bearings out of line.
    Bent,
    /// The centre is off in one place, and only that one was read: bent or off centre.
    BentOrOffCentre,
    /// A face leans: a race that is not seated, dirt below it, or a collar out of square.
    Cocked,
    /// Two humps in a turn: the surface itself is not round.
    OutOfRound,
}

/// A cause and its size.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// What.
    pub cause: Cause,
    /// How much: mm off centre or of humps, mm for each 100 mm of length for bent and cocked.
    pub size: Figure,
}

/// Names what stands out of the scatter, with its size and uncertainty; nothing where nothing does.
///
/// Stands out means: pure noise would do it less than once in twenty turns. Own reasoning, from the
/// geometry: a parallel offset is the same vector everywhere along a shaft, a bend is not, and a face
/// out of square waves once a turn by radius times its lean.
///
/// # Errors
/// [`Refusal`] for a distance or radius of zero or less.
pub fn tell_apart(
    first: &Answer,
    along: Option<Along>,
    face: Option<Face>,
) -> Result<Vec<Finding>, Refusal> {
    let mut found = Vec::new();
    match along {
        None => found.extend(finding(Cause::BentOrOffCentre, &first.wave)?),
        Some(Along { turn, distance }) => {
            let distance = distance.above_zero(key!("distance"), Unit::Millimetre)?;
            let wander = turn.wave.less(&first.wave);
            let bent = leaning(Cause::Bent, &wander, distance.real(), distance.standard)?;
            if bent.is_none() {
                found.extend(finding(Cause::OffCentre, &first.wave)?);
            }
            found.extend(bent);
        }
    }
    if let Some(Face { turn, radius }) = face {
        let radius = radius.above_zero(key!("radius"), Unit::Millimetre)?;
        found.extend(leaning(Cause::Cocked, &turn.wave, radius.real(), radius.standard)?);
    }
    if let Some(lobes) = &first.lobes {
        found.extend(finding(Cause::OutOfRound, lobes)?);
    }
    Ok(found)
}

fn finding(cause: Cause, wave: &Wave) -> Result<Option<Finding>, Refusal> {
    if !wave.stands_out() {
        return Ok(None);
    }
    let doubt = Uncertainty::default().with("scatter", wave.standard_height());
    Ok(Some(Finding { cause, size: Figure::new(key!("height"), wave.height(), "mm", doubt)? }))
}

/// A wave over a length as a lean, mm for each 100 mm.
fn leaning(
    cause: Cause,
    wave: &Wave,
    length: f64,
    standard: f64,
) -> Result<Option<Finding>, Refusal> {
    if !wave.stands_out() {
        return Ok(None);
    }
    let lean = 100.0 * wave.height() / length;
    let doubt = Uncertainty::default()
        .with("scatter", 100.0 * wave.standard_height() / length)
        .with("length", lean * standard / length);
    Ok(Some(Finding { cause, size: Figure::new(key!("lean"), lean, "mm/100 mm", doubt)? }))
}
