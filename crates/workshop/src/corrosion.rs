//! Corrosion: anodes, a grade from 0 to 3 with pit depth, and a reference cell.

use measure::{Decimal, Judgement};
use words::key;

use crate::{Caution, Figure, Given, Refusal, formula::evaluate};

/// How far corrosion has gone, by eye.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Grade {
    /// None.
    Clean,
    /// White bloom that wipes off.
    Bloom,
    /// Pits away from any land or seat.
    Pits,
    /// Pits through a land, seat or thread, or lifted at an O-ring groove.
    ThroughLand,
}

/// An anode, as it was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Anode {
    /// Share that is left, % of new.
    pub left: Decimal,
    /// Painted over.
    pub painted: bool,
    /// Loose, or without bright contact.
    pub loose: bool,
}

/// What to do with an anode. Common practice, no source.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum AnodeAdvice {
    /// Keep it.
    Keep,
    /// Replace it: half gone, or painted.
    Replace,
    /// Clean the seat to bright metal and tighten it.
    MakeContact,
}

/// Advice on an anode.
///
/// # Errors
/// [`Refusal::Range`] for a share outside 0 to 100 %.
///
/// ```
/// use measure::Decimal;
/// use workshop::corrosion::{Anode, AnodeAdvice, anode};
/// let as_found = Anode { left: Decimal::from(60), painted: false, loose: false };
/// assert_eq!(anode(&as_found).unwrap(), AnodeAdvice::Keep);
/// assert_eq!(anode(&Anode { left: Decimal::from(40), ..as_found }).unwrap(), AnodeAdvice::Replace);
/// let refused = anode(&Anode { left: Decimal::from(120), ..as_found }).unwrap_err();
/// assert_eq!(refused.to_string(), "Anode left: found 120 %, expected 0 to 100 %; read it again.");
/// ```
pub fn anode(anode: &Anode) -> Result<AnodeAdvice, Refusal> {
    let most = Decimal::ONE_HUNDRED;
    if anode.left < Decimal::ZERO || anode.left > most {
        let (found, least) = (anode.left, Decimal::ZERO);
        return Err(Refusal::Range { what: "anode left", found, least, most, unit: "%" });
    }
    Ok(match anode {
        Anode { left, painted, .. } if *painted || *left <= Decimal::from(50) => {
            AnodeAdvice::Replace
        }
        Anode { loose: true, .. } => AnodeAdvice::MakeContact,
        _ => AnodeAdvice::Keep,
    })
}

/// A reading against a silver/silver-chloride cell, volts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cell {
    /// Volts, below zero.
    pub volts: Decimal,
    /// Standard uncertainty, V.
    pub standard: f64,
    /// Least negative and most negative limit: −0.90 and −1.05 V are common practice for boats with
    /// aluminium drives, the maker goes first.
    pub limits: [Decimal; 2],
}

/// What a cell reading says: both too little and too much protection eats aluminium.
#[derive(Clone, Debug, PartialEq)]
pub struct CellAnswer {
    /// The reading, V.
    pub volts: Figure,
    /// Verdict against the limits.
    pub judgement: Judgement,
    /// What to say with it.
    pub caution: Caution,
}

/// Judges a reference-cell reading.
///
/// # Errors
/// [`Refusal`] for a reading that no cell shows, or limits that make no band.
pub fn cell(cell: &Cell) -> Result<CellAnswer, Refusal> {
    let (least, most) = (Decimal::from(-2), Decimal::ONE);
    if cell.volts < least || cell.volts > most {
        return Err(Refusal::Range {
            what: key!("cell"),
            found: cell.volts,
            least,
            most,
            unit: "V",
        });
    }
    if !cell.standard.is_finite() || cell.standard < 0.0 {
        return Err(Refusal::Doubt { what: key!("cell") });
    }
    let [high, low] = cell.limits;
    let band = measure::Band::new(low, high)
        .map_err(|why| Refusal::Limits { what: "cell limits", why })?;
    let given =
        [Given { name: key!("cell"), value: cell.volts, unit: "V", standard: cell.standard }];
    let volts = evaluate(key!("cell"), "V", &given, &|[volts]| volts)?;
    let judgement = measure::judge(cell.volts, cell.standard, &band);
    Ok(CellAnswer { volts, judgement, caution: Caution::ShorePower })
}
