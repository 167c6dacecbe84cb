//! Ring sizes of SAE AS568, five sections, by rule and by public lists that agree.
//!
//! No package has the whole list and public lists contain errors, so none is copied. A size is the
//! nominal diameter in sixteenths of an inch less a fixed amount for its section, cut to 0.001 in; that
//! rule agrees with every size that two independent public lists give alike, and with the published
//! ends of the first two sections, 5.239 and 9.737 in. Which numbers exist, and how their nominal
//! diameters step, is from memory. Rings over about 12 in, where the rule ends, are left out, and so
//! is what only one list says. Tolerances of the inside diameter could not be read anywhere and are
//! left out too.

use measure::{Decimal, Unit};

use crate::{Reading, Refusal};

/// How well a row is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Standing {
    /// Two or more independent public lists give it, and the rule agrees.
    TwoSources,
    /// By the rule alone: measure the ring before ordering.
    Rule,
    /// Public lists differ; this is the rule's value. Measure the ring before ordering.
    SourcesDisagree,
}

/// One size.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Size {
    /// The number after the dash: 214.
    pub dash: u16,
    /// Inside diameter, 0.001 in.
    pub inside_thousandths: u16,
    /// Section, 0.001 in.
    pub section_thousandths: u16,
    /// Tolerance of the section, either way, 0.001 in; two public lists agree.
    pub section_tolerance: u16,
    /// How well the row is known.
    pub standing: Standing,
}

/// Numbers that follow each other in equal steps of the nominal diameter.
struct Run {
    first: u16,
    last: u16,
    /// Nominal inside diameter of the first, 1/16 in.
    sixteenths: u32,
    /// From one number to the next, 1/16 in.
    step: u32,
}

const fn run(first: u16, last: u16, sixteenths: u32, step: u32) -> Run {
    Run { first, last, sixteenths, step }
}

const RUNS: [Run; 17] = [
    run(10, 28, 4, 1),
    run(29, 41, 24, 2),
    run(42, 50, 52, 4),
    run(110, 149, 6, 1),
    run(150, 151, 46, 2),
    run(152, 178, 52, 4),
    run(210, 222, 12, 1),
    run(223, 258, 26, 2),
    run(259, 274, 100, 4),
    run(275, 278, 168, 8),
    run(309, 324, 7, 1),
    run(325, 361, 24, 2),
    run(362, 377, 100, 4),
    run(378, 381, 168, 8),
    run(425, 437, 72, 2),
    run(438, 445, 100, 4),
    run(446, 453, 136, 8),
];

/// Sizes that two or more independent public lists give alike.
const TWO_SOURCES: [u16; 9] = [10, 12, 14, 16, 20, 110, 120, 210, 214];
/// Sizes for which a public list says otherwise than the rule: for -325 37.47, 37.69 and 37.77 mm were
/// seen, the rule says 1.475 in; the others are far off in one list that skips numbers.
const DISAGREE: [u16; 6] = [240, 250, 325, 350, 425, 450];

/// Section, its tolerance, and what the inside diameter is below nominal, 0.001 in, by hundreds.
fn section(dash: u16) -> (u16, u16, u32) {
    match dash / 100 {
        0 => (70, 3, 11),
        1 => (103, 3, 13),
        2 => (139, 4, 16),
        3 => (210, 5, 25),
        _ => (275, 6, 25),
    }
}

/// Every size, by number.
pub fn sizes() -> impl Iterator<Item = Size> {
    RUNS.iter().flat_map(|run| {
        (run.first..=run.last).map(move |dash| {
            let (section_thousandths, section_tolerance, below) = section(dash);
            let sixteenths = run.sixteenths + u32::from(dash - run.first) * run.step;
            // 1/16 in is 62.5 thousandths; what is left of a thousandth is cut off.
            let inside = (sixteenths * 625 - below * 10) / 10;
            let standing = if TWO_SOURCES.contains(&dash) {
                Standing::TwoSources
            } else if DISAGREE.contains(&dash) {
                Standing::SourcesDisagree
            } else {
                Standing::Rule
            };
            Size {
                dash,
                inside_thousandths: u16::try_from(inside).unwrap_or(u16::MAX),
                section_thousandths,
                section_tolerance,
                standing,
            }
        })
    })
}

/// The size of a number; `None` where there is none, or none that is known well enough.
///
/// ```
/// use workshop::as568::{Standing, size};
/// let ring = size(214).unwrap();
/// assert_eq!((ring.inside_thousandths, ring.section_thousandths), (984, 139));
/// assert_eq!(ring.standing, Standing::TwoSources);
/// assert!(size(200).is_none(), "some lists have it, the series does not");
/// ```
pub fn size(dash: u16) -> Option<Size> {
    sizes().find(|size| size.dash == dash)
}

impl Size {
    /// Inside diameter.
    pub fn inside(&self) -> Reading {
        Reading::exact(Decimal::new(i64::from(self.inside_thousandths), 3), Unit::Inch)
    }

    /// Section, its tolerance taken as the half width of a rectangle.
    pub fn section(&self) -> Reading {
        let tolerance = f64::from(self.section_tolerance) / 1000.0;
        Reading::exact(Decimal::new(i64::from(self.section_thousandths), 3), Unit::Inch)
            .within(tolerance / 3f64.sqrt())
    }
}

/// Sizes for a groove: section as asked, stretched by 0 to 5 %, least stretch first.
///
/// # Errors
/// [`Refusal`] for a section or diameter of zero or less.
pub fn for_groove(section: &Reading, bottom: &Reading) -> Result<Vec<Size>, Refusal> {
    let section = section.above_zero("ring section", Unit::Inch)?.value;
    let bottom = bottom.above_zero("groove diameter", Unit::Inch)?.value;
    let thousand = Decimal::ONE_THOUSAND;
    let most = Decimal::new(105, 2);
    let mut found: Vec<Size> = sizes()
        .filter(|size| {
            let inside = Decimal::from(size.inside_thousandths) / thousand;
            let apart = (section * thousand - Decimal::from(size.section_thousandths)).abs();
            // As read with a calliper: the tolerance, and a hundredth of a millimetre or so.
            apart <= Decimal::from(size.section_tolerance + 1)
                && inside <= bottom
                && bottom <= inside * most
        })
        .collect();
    found.sort_by_key(|size| std::cmp::Reverse(size.inside_thousandths));
    Ok(found)
}
