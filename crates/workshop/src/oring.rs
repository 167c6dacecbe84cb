//! O-rings: squeeze, stretch and fill of a ring in its groove.
//!
//! Measure the groove and the new ring, never the flattened old one.

use std::f64::consts::PI;
use words::key;

use measure::{Decimal, Unit, real};

use crate::formula::evaluate;
use crate::{Basis, Caution, Explanation, Figure, Reading, Refusal};

/// A ring: its section and inside diameter, free.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ring {
    /// Thickness of the cord, W.
    pub section: Reading,
    /// Inside diameter, ID.
    pub inside: Reading,
}

/// A groove on a shaft or carrier, closed by a bore.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Groove {
    /// Diameter at the bottom of the groove.
    pub bottom: Reading,
    /// Gland depth: bottom of the groove to the bore.
    pub depth: Reading,
    /// Width of the groove; `None` where it was not measured.
    pub width: Option<Reading>,
}

/// How a ring sits.
#[derive(Clone, Debug, PartialEq)]
pub struct Answer {
    /// How far it is stretched, %.
    pub stretch: Figure,
    /// Section once stretched, mm.
    pub stretched_section: Figure,
    /// How far it is squeezed, %, stretched section counted.
    pub squeeze: Figure,
    /// How full the groove is, %; `None` without a width.
    pub fill: Option<Figure>,
    /// Inside common practice: squeeze 10 to 40 %, stretch up to 5 %. Not a verdict.
    pub inside_practice: bool,
    /// What to say with it.
    pub cautions: Vec<Caution>,
    /// How it was reckoned.
    pub explanation: Explanation,
}

/// Static squeeze in common use, %. No source.
const SQUEEZE: (f64, f64) = (10.0, 40.0);
/// Most stretch in common use, %. From memory.
const STRETCH: f64 = 5.0;

/// Works out squeeze, stretch and fill.
///
/// Stretch s = (d − ID)/ID. Rubber keeps its volume, so the stretched section solves
/// W′ = W·√((ID + W)/(d + W′)). Squeeze = (W′ − depth)/W′. Fill = (π/4)·W²/(width·depth).
///
/// # Errors
/// [`Refusal::NotMore`] for a ring with a hole larger than its groove, which hangs loose, or with more
/// rubber than its groove has room for; a size of zero or less.
pub fn examine(ring: &Ring, groove: &Groove) -> Result<Answer, Refusal> {
    let section = ring.section.above_zero("ring section", Unit::Millimetre)?;
    let inside = ring.inside.above_zero("ring inside diameter", Unit::Millimetre)?;
    let bottom = groove.bottom.above_zero("groove diameter", Unit::Millimetre)?;
    let depth = groove.depth.above_zero("gland depth", Unit::Millimetre)?;
    if inside.value > bottom.value {
        return Err(Refusal::NotMore {
            what: "groove diameter",
            found: bottom.value,
            than: "ring inside diameter",
            least: inside.value,
            unit: "mm",
            act: "take a smaller ring or measure both again",
        });
    }
    let stretch = evaluate(key!("stretch"), "%", &[inside, bottom], &|[inside, bottom]| {
        100.0 * (bottom - inside) / inside
    })?;
    let stretched_section =
        evaluate("stretched section", "mm", &[section, inside, bottom], &|[
            section,
            inside,
            bottom,
        ]| {
            stretched(section, inside, bottom)
        })?;
    let given = [section, inside, bottom, depth];
    let squeeze = evaluate(key!("squeeze"), "%", &given, &|[section, inside, bottom, depth]| {
        let section = stretched(section, inside, bottom);
        100.0 * (section - depth) / section
    })?;
    let fill = match &groove.width {
        None => None,
        Some(width) => {
            let given = [section, width.above_zero("groove width", Unit::Millimetre)?, depth];
            has_room(given.each_ref().map(|given| given.value))?;
            Some(evaluate(key!("fill"), "%", &given, &|[section, width, depth]| {
                100.0 * PI / 4.0 * section * section / (width * depth)
            })?)
        }
    };
    let inside_practice =
        (SQUEEZE.0..=SQUEEZE.1).contains(&squeeze.real()) && stretch.real() <= STRETCH;
    Ok(Answer {
        stretch,
        stretched_section,
        squeeze,
        fill,
        inside_practice,
        cautions: if inside_practice { Vec::new() } else { vec![Caution::RingOutsidePractice] },
        explanation: Explanation {
            formula: "s = (d − ID)/ID; W′ = W·√((ID + W)/(d + W′)); squeeze = (W′ − depth)/W′; fill = (π/4)·W²/(width·depth)",
            given: given.to_vec(),
            basis: Basis::Derived("rubber keeps its volume when stretched"),
        },
    })
}

/// Rubber keeps its volume: a section larger than the groove's cannot be closed in.
fn has_room([section, width, depth]: [Decimal; 3]) -> Result<(), Refusal> {
    let too_large = Refusal::TooLarge { what: "groove section" };
    let groove = width.checked_mul(depth).ok_or(too_large)?;
    let wide = real::from_decimal(section);
    let ring = real::to_decimal(PI / 4.0 * wide * wide, 2)
        .ok_or(Refusal::TooLarge { what: "ring section" })?;
    if ring <= groove {
        return Ok(());
    }
    let (found, act) = (measure::round(groove, 2), "take a thinner ring or measure both again");
    let (what, than) = ("groove section", "ring section");
    Err(Refusal::NotMore { what, found, than, least: ring, unit: "mm²", act })
}

/// The section of a ring on its groove, mm: the equation is solved by putting the answer back in, which
/// gains about two digits each time.
fn stretched(section: f64, inside: f64, bottom: f64) -> f64 {
    (0..20).fold(section, |now, _| section * ((inside + section) / (bottom + now)).sqrt())
}

/// Least and most squeeze, %, over the tolerances of section and gland, without stretch.
///
/// ((W − t) − g_max)/(W − t) to ((W + t) − g_min)/(W + t).
///
/// # Errors
/// [`Refusal`] for a tolerance that leaves no section, or a gland whose most is below its least.
///
/// ```
/// use measure::{Decimal, Unit, round};
/// use workshop::{Reading, oring::squeeze_range};
/// // .139 ± .004 in a static gland of .110 to .116: 14.1 to 23.1 %; a public gland table says 14–23.
/// let inch = |thousandths| Reading::exact(Decimal::new(thousandths, 3), Unit::Inch);
/// let (least, most) = squeeze_range(&inch(139), &inch(4), [&inch(110), &inch(116)]).unwrap();
/// assert_eq!((round(least, 1), round(most, 1)), (Decimal::new(141, 1), Decimal::new(231, 1)));
/// ```
pub fn squeeze_range(
    section: &Reading,
    tolerance: &Reading,
    [least_gland, most_gland]: [&Reading; 2],
) -> Result<(Decimal, Decimal), Refusal> {
    let section = section.above_zero("ring section", Unit::Millimetre)?.value;
    let tolerance = tolerance.not_negative("section tolerance", Unit::Millimetre)?.value;
    let least_gland = least_gland.above_zero("least gland depth", Unit::Millimetre)?.value;
    let most_gland = most_gland.above_zero("most gland depth", Unit::Millimetre)?.value;
    let (thin, thick) = (section - tolerance, section + tolerance);
    for (what, found, than, least) in [
        ("ring section", section, "section tolerance", tolerance),
        ("most gland depth", most_gland, "least gland depth", least_gland),
    ] {
        if found < least || (found == least && what == "ring section") {
            let act = "measure both again, or swap them";
            return Err(Refusal::NotMore { what, found, than, least, unit: "mm", act });
        }
    }
    let percent = |section: Decimal, gland: Decimal| {
        let times = Decimal::ONE_HUNDRED.checked_mul(section - gland);
        let share = times.and_then(|times| times.checked_div(section));
        share.ok_or(Refusal::TooLarge { what: key!("squeeze") })
    };
    Ok((percent(thin, most_gland)?, percent(thick, least_gland)?))
}
