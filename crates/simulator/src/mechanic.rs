//! The mechanic we are compared with: one position at a time, a millimetre for a millimetre.
//!
//! After each dry build he reads every check. He takes the first one in the order of work (depth,
//! then the backlashes, then end play) whose mean is out of its band, and corrects its own position
//! by exactly as much as the mean is off the aim, the right way round: he knows his signs. Of all
//! packs that the tin and the shims already there can make he takes the one nearest to that, the
//! looser one of two that are equally near. If that is the pack already in, he goes on to the next
//! check. He never leaves a place without a shim. He stops when every mean is in its band, by the
//! same rule as ours. Common practice, no source.

use gearing::case::{Case, CheckKind};
use gearing::{Side, nearest_pack};
use measure::{Band, Decimal, Series};

/// The packs he fits next; `None` if nothing he could do changes a pack.
pub(crate) fn correct(case: &Case, bands: &[Band]) -> Option<Vec<Vec<Decimal>>> {
    let last = case.trials.last()?;
    let means =
        last.readings.iter().map(|readings| Some(Series::new(readings.clone()).ok()?.mean()));
    means.zip(bands).enumerate().find_map(|(place, (mean, band))| {
        let mean = mean.filter(|mean| !band.contains(*mean))?;
        let pack = corrected(case, place, mean - band.aim())?;
        let mut packs = last.packs.clone();
        let old = packs.get_mut(place)?;
        let changed = sorted(old) != sorted(&pack);
        *old = pack;
        changed.then_some(packs)
    })
}

/// A pack for a place whose check reads this much above its aim.
fn corrected(case: &Case, place: usize, above: Decimal) -> Option<Vec<Decimal>> {
    let position = case.positions.get(place)?;
    let sign = match case.checks.get(place)?.kind {
        CheckKind::EndPlay { .. } => position.setting_sign,
        _ => position.mesh_sign,
    };
    let old = case.trials.last()?.packs.get(place)?;
    let target = old.iter().sum::<Decimal>() + Decimal::from(sign) * above;
    let tin = case.stock.iter().filter(|line| line.family == position.family);
    let shims: Vec<(Decimal, u32)> = tin
        .map(|line| (line.thickness, line.count))
        .chain(old.iter().map(|shim| (*shim, 1)))
        .collect();
    let looser = if sign > 0 { Side::Thinner } else { Side::Thicker };
    let pack = nearest_pack(target, &shims, case.max_shims, looser).ok()?;
    (!pack.is_empty()).then_some(pack)
}

fn sorted(pack: &[Decimal]) -> Vec<Decimal> {
    let mut pack = pack.to_vec();
    pack.sort();
    pack
}

#[cfg(test)]
mod tests {
    use gearing::layout::Layout;

    use super::*;
    use crate::dice::Dice;
    use crate::gearcase::Gearcase;
    use crate::sheet::Geometry;

    fn hundredths(values: &[i64]) -> Vec<Decimal> {
        values.iter().map(|value| Decimal::new(*value, 2)).collect()
    }

    /// A case of layout (b), pinion pack above its race, whose checks read these means.
    fn case(readings: [i64; 3]) -> Case {
        let layout = Layout::find("b").unwrap();
        let mut drawn =
            (0..).map(|stream| Gearcase::draw(layout, Geometry::Known, &mut Dice::new(5, stream)));
        let gearcase = drawn.find(|drawn| drawn.known.positions[0].id == "B1").unwrap();
        let trial = gearing::case::Trial {
            packs: vec![hundredths(&[50, 10]); 3],
            readings: readings.map(|reading| hundredths(&[reading])).to_vec(),
        };
        let mut case = Case { trials: vec![trial], ..gearcase.known };
        for (check, [low, high]) in case.checks.iter_mut().zip([[62, 68], [30, 50], [40, 80]]) {
            let limits = hundredths(&[low, high, (low + high) / 2]);
            (check.low, check.high, check.aim) = (limits[0], limits[1], Some(limits[2]));
        }
        for line in &mut case.stock {
            line.thickness = line.thickness.round_dp(2);
        }
        case
    }

    fn next(readings: [i64; 3]) -> Option<Vec<Vec<Decimal>>> {
        let case = case(readings);
        correct(&case, &gearing::bands(&case).unwrap())
    }

    // Worked by hand from the rule above.
    #[test]
    fn he_corrects_the_first_check_out_of_band_by_what_it_is_off() {
        // 0.73 is 0.08 over its aim, so 0.60 becomes 0.68: 0.50, 0.10 and 0.08, or 0.40, 0.20, 0.08.
        let packs = next([73, 70, 60]).unwrap();
        assert_eq!(packs[0].iter().sum::<Decimal>(), Decimal::new(68, 2));
        assert_eq!(packs[1..], [hundredths(&[50, 10]), hundredths(&[50, 10])]);
    }

    #[test]
    fn what_is_in_band_he_leaves_alone() {
        // Depth is in band; forward backlash is 0.15 under its aim: 0.60 becomes 0.45.
        let packs = next([62, 25, 90]).unwrap();
        assert_eq!(packs[1].iter().sum::<Decimal>(), Decimal::new(45, 2));
        assert_eq!([&packs[0], &packs[2]], [&hundredths(&[50, 10]), &hundredths(&[50, 10])]);
        assert_eq!(next([68, 30, 80]), None);
    }
}
