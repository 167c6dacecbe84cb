//! What the tin is good for: the kinds of shim in use, and the packs they can make.

use gearing::layout::{LAYOUTS, Layout};
use measure::Decimal;
use words::t;

use crate::{Position, Sheet, Slot, Tin, plan, tin::MAX_SHIMS};

/// A kind of shim and the positions that take it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Family {
    /// The kind as books name it: "forward race".
    pub name: &'static str,
    /// The positions it fits, in the order of work.
    pub positions: Vec<Position>,
}

/// The kinds of shim that the sheets use and those that are in the tin; without a sheet, every
/// kind of the usual layout.
pub fn families<'a>(sheets: impl IntoIterator<Item = &'a Sheet>, tin: &Tin) -> Vec<Family> {
    let sheets: Vec<&Sheet> = sheets.into_iter().collect();
    let used: Vec<Position> = sheets.iter().flat_map(|sheet| sheet.positions()).collect();
    let is_used = |layout: &&&Layout| sheets.iter().any(|sheet| sheet.layout() == **layout);
    let usual = plan::usual();
    let near: Vec<&Layout> = match sheets.as_slice() {
        [] => vec![usual],
        _ => LAYOUTS.iter().filter(is_used).copied().collect(),
    };
    let in_tin = |family: &str| tin.shims().any(|shim| shim.family == family);
    let positions = |layout: &'static Layout| Slot::of(layout).iter().flat_map(|it| it.positions());
    let is_shown = |position: &Position| {
        used.is_empty() || used.iter().any(|it| it.id == position.id) || in_tin(position.family)
    };
    let mut families = Vec::new();
    for position in near.iter().flat_map(|layout| positions(layout)).filter(is_shown) {
        join(&mut families, position);
    }
    let known: Vec<&str> = families.iter().map(|family| family.name).collect();
    for position in LAYOUTS.into_iter().flat_map(positions) {
        if in_tin(position.family) && !known.contains(&position.family) {
            join(&mut families, position);
        }
    }
    families
}

fn join(families: &mut Vec<Family>, position: Position) {
    match families.iter_mut().find(|family| family.name == position.family) {
        Some(family) => family.positions.push(position),
        None => families.push(Family { name: position.family, positions: vec![position] }),
    }
}

impl Family {
    /// The kind as it is shown.
    pub fn words(&self) -> &'static str {
        t(self.name)
    }

    /// The packs that take it: "B1", "B3".
    pub fn tag(&self) -> &'static str {
        self.positions.first().map_or("", |position| position.slot.tag())
    }
}

impl Tin {
    /// Thicknesses of every pack that the offered shims of a family can make, mm, thin ones first.
    pub fn can_make(&self, family: &str) -> Vec<Decimal> {
        self.can_make_with(family, &[])
    }

    /// The same with the shims that lie in the case now, net thicknesses in mm.
    pub fn can_make_with(&self, family: &str, lie: &[Decimal]) -> Vec<Decimal> {
        let of_family = self.stock().into_iter().filter(|line| line.family == family);
        let mut shims: Vec<_> = of_family.map(|line| (line.thickness, line.count)).collect();
        for net in lie {
            match shims.iter_mut().find(|(thickness, _)| thickness == net) {
                Some((_, count)) => *count = count.saturating_add(1),
                None => shims.push((*net, 1)),
            }
        }
        let totals = gearing::reachable_totals(&shims, MAX_SHIMS).unwrap_or_default();
        totals.into_iter().map(|(total, _)| total).collect()
    }
}

#[cfg(test)]
mod tests {
    use measure::{Sign, Typed, Unit};

    use super::*;
    use crate::{Book, BookId, Fact, Stamp};

    fn tin(shims: &[(&str, &str, u32)]) -> Tin {
        let mm = |text: &str| Typed::parse(text, Unit::Millimetre, Sign::Any).unwrap();
        let facts: Vec<Fact> = shims
            .iter()
            .enumerate()
            .map(|(at, (family, text, count))| Fact::ShimsAdded {
                shim: format!("s{at}"),
                family: (*family).to_owned(),
                places: [mm(text), mm(text)],
                zero: mm("0"),
                marked: None,
                count: *count,
            })
            .collect();
        let book = Book::new(BookId::Tin);
        let stamp = Stamp { device: "d".to_owned(), at: 0, act: "a".to_owned() };
        let entries = book.next(facts, &stamp).unwrap();
        Tin::fold(&book.with(entries))
    }

    #[test]
    fn a_pack_is_any_sum_of_at_most_four_shims() {
        let tin = tin(&[("reverse", "0.10", 2), ("reverse", "0.50", 3), ("pinion", "0.20", 1)]);
        // Counted by hand: none to two of 0.10 with none to three of 0.50, at most four together.
        let texts = ["0.1", "0.2", "0.5", "0.6", "0.7", "1", "1.1", "1.2", "1.5", "1.6"];
        let made: Vec<String> =
            tin.can_make("reverse").iter().map(|pack| pack.normalize().to_string()).collect();
        assert_eq!(made, texts);
        assert!(tin.can_make("carrier").is_empty());
        let lies = [Decimal::new(40, 2)];
        assert_eq!(tin.can_make_with("carrier", &lies), lies);
    }

    #[test]
    fn families_are_those_of_the_sheets_and_of_the_tin() {
        let names = |families: Vec<Family>| families.iter().map(|it| it.name).collect::<Vec<_>>();
        let nothing = Tin::default();
        let all = ["driveshaft", "driveshaft flange", "pinion", "forward race", "reverse"];
        assert_eq!(names(families([], &nothing))[..5], all);
        let usual = Sheet::default();
        assert_eq!(names(families([&usual], &nothing)), ["driveshaft", "forward race", "reverse"]);
        let carrier = tin(&[("carrier", "0.50", 1)]);
        let with_carrier = ["driveshaft", "forward race", "reverse", "carrier"];
        assert_eq!(names(families([&usual], &carrier)), with_carrier);
    }
}
