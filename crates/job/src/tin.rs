//! The shim tin: its book folded.

use std::collections::BTreeMap;
use words::{say, t};

use gearing::case::StockLine;
use measure::{Decimal, Sign, Typed, Unit, round};

use crate::{Book, Counted, Fact, Figure, FittedShim, Shown, demo, figure};

/// A shim whose places differ by more than this is not offered, mm (common practice, no source).
const EVEN: Decimal = Decimal::from_parts(10, 0, 0, false, 3);

/// Most shims in a pack (common practice, no source).
pub(crate) const MAX_SHIMS: usize = 4;

/// Net thicknesses are kept to 0.00001 mm, finer than any micrometer.
pub(crate) const NET_PLACES: u32 = 5;

/// The tin as it stands.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Tin {
    shims: BTreeMap<String, Shim>,
    last_zero: Option<Typed>,
}

/// Shims of one measurement.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Shim {
    /// Their name.
    pub id: String,
    /// Kind of shim.
    pub family: String,
    /// Measured at two places.
    pub places: [Typed; 2],
    /// The micrometer's zero.
    pub zero: Typed,
    /// What is marked on them.
    pub marked: Option<Typed>,
    /// How many are in the tin; below zero only where two devices took the same shim.
    pub count: i64,
    /// How many are in each job's case.
    pub in_cases: BTreeMap<String, i64>,
    /// Why they are not offered.
    pub rejected: Option<String>,
}

/// A shim about to go into the tin.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct NewShim {
    /// Net thickness, mm.
    pub net: Decimal,
    /// Difference of the two places, mm.
    pub spread: Decimal,
    /// Why it will not be offered, in one sentence; `None`: even within 0.01.
    pub uneven: Option<String>,
}

/// A line of the tin: equal shims of one family together.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TinRow {
    /// Net thickness, mm.
    pub net: Decimal,
    /// What is marked on them.
    pub marked: Option<Typed>,
    /// How many are in the tin.
    pub count: u32,
    /// How many are in cases.
    pub in_cases: u32,
    /// Why they are not offered: uneven, or rejected.
    pub not_offered: Option<String>,
    /// The shim to count up or down.
    pub shim: String,
}

impl Tin {
    /// Folds a book. Total: what does not belong in the tin is passed over.
    pub fn fold(book: &Book) -> Tin {
        let mut tin = Tin::default();
        for entry in book.live() {
            tin.apply(&entry.fact);
        }
        tin
    }

    fn apply(&mut self, fact: &Fact) {
        match fact {
            Fact::ShimsAdded { shim, family, places, zero, marked, count } => {
                if !demo::is_invented(shim) {
                    self.last_zero = Some(zero.clone());
                }
                let measured = Measured { places: places.clone(), zero: zero.clone() };
                self.put_in(shim, family, measured, marked.clone(), *count);
            }
            Fact::ShimCameOut { shim, family, net, .. } => {
                if let Some((places, zero)) = as_measured(net) {
                    self.put_in(shim, family, Measured { places, zero }, None, 1);
                }
            }
            Fact::ShimsCounted { shim, change, why } => {
                let Some(shim) = self.shims.get_mut(shim) else { return };
                shim.count = shim.count.saturating_add(i64::from(*change));
                if let Counted::Taken { job } | Counted::PutBack { job } = why {
                    let in_case = shim.in_cases.entry(job.clone()).or_default();
                    *in_case = in_case.saturating_sub(i64::from(*change));
                }
            }
            Fact::ShimRejected { shim, why } => {
                if let Some(shim) = self.shims.get_mut(shim) {
                    shim.rejected = Some(why.clone());
                }
            }
            _ => {}
        }
    }

    /// A name is given once; the first to have it keeps it.
    fn put_in(
        &mut self,
        id: &str,
        family: &str,
        Measured { places, zero }: Measured,
        marked: Option<Typed>,
        count: u32,
    ) {
        self.shims.entry(id.to_owned()).or_insert_with(|| Shim {
            id: id.to_owned(),
            family: family.to_owned(),
            places,
            zero,
            marked,
            count: i64::from(count),
            in_cases: BTreeMap::new(),
            rejected: None,
        });
    }

    /// A shim by its name.
    pub fn shim(&self, id: &str) -> Option<&Shim> {
        self.shims.get(id)
    }

    /// Every shim ever put in.
    pub fn shims(&self) -> impl Iterator<Item = &Shim> {
        self.shims.values()
    }

    /// What a change of the tin comes to, with the shim's size: "0.498: 1 out, 3 left".
    ///
    /// `None` for anything else than a count of a shim that is known.
    pub fn says(&self, fact: &Fact, shown: Shown) -> Option<String> {
        let Fact::ShimsCounted { shim, change, .. } = fact else { return None };
        let shim = self.shim(shim)?;
        let (net, left) = (figure(shim.net(), Figure::Shim, shown), shim.left());
        let count = change.unsigned_abs();
        Some(match *change < 0 {
            true => say!("{net}: {count} out, {left} left"),
            false => say!("{net}: {count} in, {left} left"),
        })
    }

    /// How many shims are in the tin, all families together.
    pub fn count(&self) -> u64 {
        self.shims.values().map(|shim| u64::from(shim.left())).sum()
    }

    /// How many shims are in the tin that nobody measured: those of the practice job.
    pub fn invented(&self) -> u64 {
        self.side(true).count()
    }

    /// Only the invented shims, or only the measured ones: an invented unit is never offered
    /// measured shims, and a real one never invented ones.
    #[must_use]
    pub fn side(&self, invented: bool) -> Tin {
        let is_on_side = |(id, _): &(&String, &Shim)| demo::is_invented(id) == invented;
        let shims = self.shims.iter().filter(is_on_side);
        Tin {
            shims: shims.map(|(id, shim)| (id.clone(), shim.clone())).collect(),
            last_zero: self.last_zero.clone(),
        }
    }

    /// The lines of a family, thick ones first; those of which none is left stay.
    pub fn rows(&self, family: &str) -> Vec<TinRow> {
        let mut rows: Vec<TinRow> = self
            .shims
            .values()
            .filter(|shim| shim.family == family)
            .map(|shim| TinRow {
                net: shim.net(),
                marked: shim.marked.clone(),
                count: shim.left(),
                in_cases: shim.in_cases(),
                not_offered: shim.not_offered(),
                shim: shim.id.clone(),
            })
            .collect();
        rows.sort_by(|a, b| b.net.cmp(&a.net).then_with(|| a.shim.cmp(&b.shim)));
        rows
    }

    /// What the set-up engine may take: offered shims, equal ones together.
    pub fn stock(&self) -> Vec<StockLine> {
        let mut lines: BTreeMap<(&str, Decimal), u32> = BTreeMap::new();
        for shim in self.shims.values().filter(|shim| shim.is_offered() && shim.left() > 0) {
            let count = lines.entry((&shim.family, shim.net())).or_default();
            *count = count.saturating_add(shim.left());
        }
        lines
            .into_iter()
            .map(|((family, thickness), count)| StockLine {
                family: family.to_owned(),
                thickness,
                count,
            })
            .collect()
    }

    /// The zero that was typed last: the micrometer's, until it is set anew.
    pub fn last_zero(&self) -> Option<&Typed> {
        self.last_zero.as_ref()
    }

    /// How many offered shims of that family and net thickness are in the tin.
    pub fn in_stock(&self, family: &str, net: Decimal) -> u32 {
        self.offered(family, net).map(Shim::left).fold(0, u32::saturating_add)
    }

    /// Offered shims of that family and net thickness.
    pub(crate) fn offered(&self, family: &str, net: Decimal) -> impl Iterator<Item = &Shim> {
        self.shims
            .values()
            .filter(move |shim| shim.family == family && shim.net() == net && shim.is_offered())
    }
}

impl Shim {
    /// Net thickness, mm: the mean of the two places, the micrometer's zero taken off.
    pub fn net(&self) -> Decimal {
        net(&self.places, &self.zero)
    }

    /// How many are in the tin, never below zero.
    pub fn left(&self) -> u32 {
        u32::try_from(self.count.max(0)).unwrap_or(u32::MAX)
    }

    /// How many are in cases.
    pub fn in_cases(&self) -> u32 {
        let all = self.in_cases.values().copied().fold(0i64, i64::saturating_add);
        u32::try_from(all.max(0)).unwrap_or(u32::MAX)
    }

    /// Whether they may go into a pack.
    pub fn is_offered(&self) -> bool {
        self.rejected.is_none() && spread(&self.places) <= EVEN && self.net() > Decimal::ZERO
    }

    /// Why they may not.
    pub fn not_offered(&self) -> Option<String> {
        let why = self.rejected.as_ref().map(|why| match why.trim() {
            "" => t("Rejected: it stays out of the packs.").to_owned(),
            why => say!("Rejected: {why}."),
        });
        why.or_else(|| NewShim::of(&self.places, &self.zero).uneven)
    }

    /// One of them, for a pack.
    pub fn for_pack(&self) -> FittedShim {
        FittedShim::FromTin { shim: self.id.clone(), net: self.net() }
    }
}

impl NewShim {
    /// What a measured shim is worth.
    pub fn of(places: &[Typed; 2], zero: &Typed) -> NewShim {
        let (net, spread) = (net(places, zero), spread(places));
        let uneven = if net <= Decimal::ZERO {
            Some(t("The micrometer's zero takes all of it. Zero it and measure again.").to_owned())
        } else if spread > EVEN {
            let [one, other] = places;
            Some(say!(
                "Uneven: {one} and {other} differ by {} mm. Measure again, or reject it.",
                measure::show(spread, 3, measure::Mark::Point)
            ))
        } else {
            None
        };
        NewShim { net, spread, uneven }
    }
}

/// Two places and the micrometer's zero.
struct Measured {
    places: [Typed; 2],
    zero: Typed,
}

/// A net thickness as a measurement: both places alike, with a zero of nothing.
fn as_measured(net: &Typed) -> Option<([Typed; 2], Typed)> {
    let zero = Typed::parse("0", net.unit(), Sign::NotNegative).ok()?;
    Some(([net.clone(), net.clone()], zero))
}

fn net([one, other]: &[Typed; 2], zero: &Typed) -> Decimal {
    let half = |typed: &Typed| typed.in_unit(Unit::Millimetre) / Decimal::TWO;
    round(half(one) + half(other) - zero.in_unit(Unit::Millimetre), NET_PLACES)
}

fn spread([one, other]: &[Typed; 2]) -> Decimal {
    (one.in_unit(Unit::Millimetre) - other.in_unit(Unit::Millimetre)).abs()
}
