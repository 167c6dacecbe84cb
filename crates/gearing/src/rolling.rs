//! Rolling torque against how tight the bearings are set: learnt from builds, never predicted from one.
//!
//! No formula ties the torque to the preload, and it does not rise in proportion. What two or more
//! builds of this unit showed is a slope for small steps between and beside them, and no more.

/// A build in which the rolling torque was read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Turned {
    /// The packs that set the bearings, together: each thickness times its setting sign, mm.
    pub tightening: f64,
    /// Mean of the readings, N·m.
    pub torque: f64,
    /// Its standard uncertainty, N·m, above 0.
    pub sigma: f64,
}

/// What builds showed about the torque.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Learnt {
    /// Rise for a millimetre tighter, N·m per mm, with its standard uncertainty.
    pub slope: (f64, f64),
    /// How much tighter brings the torque to the middle of its band, mm, with its standard
    /// uncertainty; below zero looser.
    pub tighter: (f64, f64),
    /// The step was cut to as far as the builds lie apart: beyond that nothing was seen.
    pub is_cut: bool,
}

/// Why builds show nothing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unlearnt {
    /// Fewer than two settings, or too close to each other.
    OneSetting,
    /// The torque did not rise as the bearings were set tighter, or no more than the readings scatter.
    NoRise,
}

/// Settings closer than this are the same, mm: the play of a hand-set pack (common practice, no
/// source).
const APART: f64 = 0.02;

/// Learns from builds, oldest first, how far to go from the last one to the middle of a band, N·m.
///
/// A straight line by weighted least squares, each build with the inverse square of its uncertainty.
///
/// ```
/// use gearing::rolling::{Turned, learn};
/// let builds = [(0.50, 0.8), (0.55, 1.6)]
///     .map(|(tightening, torque)| Turned { tightening, torque, sigma: 0.05 });
/// let learnt = learn(&builds, 1.0, 1.4).unwrap();
/// // 0.8 N·m over 0.05 mm; from 1.6 down to 1.2 is half of that back.
/// assert!((learnt.slope.0 - 16.0).abs() < 1e-9);
/// assert!((learnt.tighter.0 + 0.025).abs() < 1e-9);
/// ```
///
/// # Errors
/// Where the builds show no slope.
pub fn learn(builds: &[Turned], low: f64, high: f64) -> Result<Learnt, Unlearnt> {
    let last = builds.last().ok_or(Unlearnt::OneSetting)?;
    let (mut least, mut most) = (f64::INFINITY, f64::NEG_INFINITY);
    let mut sums = [0.0; 3];
    for build in builds {
        (least, most) = (least.min(build.tightening), most.max(build.tightening));
        let weight = build.sigma.powi(-2);
        for (sum, term) in sums.iter_mut().zip([1.0, build.tightening, build.torque]) {
            *sum += weight * term;
        }
    }
    // A hair of room, so that two settings exactly so far apart are.
    if most - least < APART - 1e-9 {
        return Err(Unlearnt::OneSetting);
    }
    let [weight, tightening, torque] = sums;
    let (mut across, mut along) = (0.0, 0.0);
    for build in builds {
        let off = build.tightening - tightening / weight;
        let scaled = off * build.sigma.powi(-2);
        across += scaled * (build.torque - torque / weight);
        along += scaled * off;
    }
    let (slope, sigma) = (across / along, along.recip().sqrt());
    if slope <= 2.0 * sigma {
        return Err(Unlearnt::NoRise);
    }
    let wanted = ((low + high) / 2.0 - last.torque) / slope;
    let tighter = wanted.max(least - most).min(most - least);
    let uncertain = (last.sigma / slope).hypot(tighter * sigma / slope);
    Ok(Learnt { slope: (slope, sigma), tighter: (tighter, uncertain), is_cut: tighter != wanted })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn builds(pairs: &[(f64, f64)]) -> Vec<Turned> {
        pairs
            .iter()
            .map(|&(tightening, torque)| Turned { tightening, torque, sigma: 0.1 })
            .collect()
    }

    #[test]
    fn one_build_or_one_setting_shows_nothing() {
        for seen in [&[][..], &[(0.5, 1.0)], &[(0.5, 1.0), (0.51, 2.0)]] {
            assert_eq!(learn(&builds(seen), 1.0, 2.0), Err(Unlearnt::OneSetting), "{seen:?}");
        }
    }

    #[test]
    fn a_torque_that_does_not_rise_is_not_followed() {
        // It falls, and it rises by less than twice what the slope is uncertain by.
        for seen in [&[(0.50, 1.5), (0.56, 1.0)][..], &[(0.50, 1.0), (0.56, 1.2)]] {
            assert_eq!(learn(&builds(seen), 1.0, 2.0), Err(Unlearnt::NoRise), "{seen:?}");
        }
    }

    /// Worked by hand from the normal equations: x̄ = 0.10, ȳ = 2.0, Sxy = 0.10, Sxx = 0.005.
    #[test]
    fn three_builds_by_hand() {
        let learnt = learn(&builds(&[(0.05, 1.0), (0.10, 2.0), (0.15, 3.0)]), 2.0, 3.0).unwrap();
        assert!((learnt.slope.0 - 20.0).abs() < 1e-9);
        // σ / √Sxx
        assert!((learnt.slope.1 - 0.1 / 0.005_f64.sqrt()).abs() < 1e-9);
        assert!((learnt.tighter.0 + 0.025).abs() < 1e-9);
        assert!(!learnt.is_cut);
    }

    #[test]
    fn no_step_goes_farther_than_was_seen() {
        let learnt = learn(&builds(&[(0.50, 1.0), (0.53, 2.0)]), 5.0, 6.0).unwrap();
        assert!((learnt.tighter.0 - 0.03).abs() < 1e-9);
        assert!(learnt.is_cut);
    }
}
