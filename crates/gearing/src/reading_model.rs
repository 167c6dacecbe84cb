//! What one gauge will read after a pack change, and how sure that is.

use crate::effect::Effect;
use crate::solve::Square;

/// Standard deviation of a changed pack's thickness, mm.
const PACK_SPREAD: f64 = 0.002;

/// A slope before and after the trials.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Slope {
    /// By the formula.
    pub formula: Effect,
    /// After the trials.
    pub mean: f64,
}

impl From<Effect> for Slope {
    fn from(formula: Effect) -> Slope {
        Slope { mean: formula.slope, formula }
    }
}

impl Slope {
    fn exact(&self) -> bool {
        self.formula.own_spread == 0.0
    }
}

/// A gear held between two packs, and the end play or preload that decides how it moves.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Trapped {
    /// The position behind the gear.
    pub behind: usize,
    /// The position on its face side.
    pub face: usize,
    /// End play at the packs of the last trial, mm; a preload is negative.
    pub level: f64,
    /// What changes the end play.
    pub effects: Vec<Effect>,
    /// The check that reads the end play.
    pub setting: usize,
}

impl Trapped {
    /// Half of the preload at these pack changes, mm: what each side gives way.
    fn half_preload(&self, change: &[f64]) -> f64 {
        let moved: f64 =
            self.effects.iter().map(|effect| effect.slope * at(change, effect.position)).sum();
        (-(self.level + moved)).max(0.0) / 2.0
    }

    /// How far the gear moves IN, mm.
    fn travel(&self, change: &[f64]) -> f64 {
        let before = (-self.level).max(0.0) / 2.0;
        at(change, self.behind) - (self.half_preload(change) - before)
    }

    /// How far the gear moves for each millimetre of one of its packs.
    fn travel_rate(&self, change: &[f64], position: usize) -> f64 {
        let half = if self.half_preload(change) > 0.0 { 0.5 } else { 0.0 };
        if position == self.behind { 1.0 - half } else { -half }
    }
}

/// One check's level, slopes and their covariance.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct ReadingModel {
    /// Expected reading at the packs of the last trial, mm.
    pub level: f64,
    /// The positions that change it.
    pub slopes: Vec<Slope>,
    /// Set for the backlash of a trapped gear.
    pub trapped: Option<Trapped>,
    /// Covariance of the level and the inexact slopes, in that order.
    pub covariance: Square,
    /// Variance of the next reading itself, mm².
    pub next: f64,
}

impl ReadingModel {
    pub fn new(slopes: Vec<Slope>, trapped: Option<Trapped>, next: f64) -> ReadingModel {
        ReadingModel { level: 0.0, slopes, trapped, covariance: Square::zeros(0), next }
    }

    /// The same for changes that leave the trapped gear its end play: it stays on the race behind
    /// it, and the pack on its face side does nothing. `None` where no gear is trapped, or where it
    /// is preloaded now.
    pub fn with_play(&self) -> Option<ReadingModel> {
        let played = self.trapped.as_ref().is_some_and(|trapped| trapped.level >= 0.0);
        played.then(|| ReadingModel { trapped: None, ..self.clone() })
    }

    /// The slopes to be learnt.
    pub fn inexact(&self) -> impl Iterator<Item = &Effect> {
        self.slopes.iter().filter(|slope| !slope.exact()).map(|slope| &slope.formula)
    }

    /// How many unknowns: the level and the inexact slopes.
    pub fn unknowns(&self) -> usize {
        1 + self.inexact().count()
    }

    /// The factors of the unknowns at these pack changes.
    pub fn row(&self, change: &[f64]) -> Vec<f64> {
        let inexact = self.slopes.iter().filter(|slope| !slope.exact());
        std::iter::once(1.0).chain(inexact.map(|slope| self.amount(slope, change))).collect()
    }

    /// The part of the reading's change that needs no learning.
    pub fn exact_part(&self, change: &[f64]) -> f64 {
        let exact = self.slopes.iter().filter(|slope| slope.exact());
        exact.map(|slope| slope.mean * self.amount(slope, change)).sum()
    }

    /// Takes over what was learnt: this check's unknowns start at `start` of the covariance.
    pub fn learned(&mut self, mean: &[f64], covariance: &Square, start: usize) {
        let unknowns = self.unknowns();
        let mut mean = mean.iter();
        self.level = mean.next().copied().unwrap_or(0.0);
        for (slope, mean) in self.slopes.iter_mut().filter(|slope| !slope.exact()).zip(mean) {
            slope.mean = *mean;
        }
        self.covariance = Square::zeros(unknowns);
        for row in 0..unknowns {
            for column in 0..unknowns {
                self.covariance.add(row, column, covariance.get(start + row, start + column));
            }
        }
    }

    /// The expected reading, mm.
    pub fn mean(&self, change: &[f64]) -> f64 {
        let amounts = self.slopes.iter().map(|slope| slope.mean * self.amount(slope, change));
        self.level + amounts.sum::<f64>()
    }

    /// The standard deviation of the next reading, mm; `changed` has a bit for each position whose
    /// pack is another one.
    pub fn sigma(&self, change: &[f64], changed: u16) -> f64 {
        self.variance(change, changed).sqrt()
    }

    /// The square of the standard deviation, mm².
    pub fn variance(&self, change: &[f64], changed: u16) -> f64 {
        let mut variance = self.covariance.get(0, 0) + self.next;
        let mut row = 0;
        for slope in &self.slopes {
            if !slope.exact() {
                row += 1;
                let amount = self.amount(slope, change);
                variance += 2.0 * amount * self.covariance.get(0, row);
                let mut column = 0;
                for other in self.slopes.iter().filter(|other| !other.exact()) {
                    column += 1;
                    let other = self.amount(other, change);
                    variance += amount * other * self.covariance.get(row, column);
                }
            }
            variance += self.pack_variance(slope, change, changed);
        }
        variance
    }

    /// The slope of one position at these changes, after the trials.
    pub fn slope_at(&self, change: &[f64], position: usize) -> f64 {
        let of =
            |position: usize| self.slopes.iter().find(|slope| slope.formula.position == position);
        match &self.trapped {
            Some(trapped) if position == trapped.behind || position == trapped.face => {
                of(trapped.behind)
                    .map_or(0.0, |slope| slope.mean * trapped.travel_rate(change, position))
            }
            _ => of(position).map_or(0.0, |slope| slope.mean),
        }
    }

    /// Standard deviation of a slope after the trials; 0 where it is exact.
    pub fn slope_sigma(&self, position: usize) -> f64 {
        let mut inexact = self.inexact();
        let row = inexact.position(|effect| effect.position == position);
        row.map_or(0.0, |row| self.covariance.get(row + 1, row + 1).sqrt())
    }

    /// Bit mask of the positions that change this reading.
    pub fn scope(&self) -> u16 {
        let own = self.slopes.iter().fold(0, |mask, slope| mask | bit(slope.formula.position));
        let trapped = self
            .trapped
            .iter()
            .flat_map(|trapped| trapped.effects.iter().map(|effect| bit(effect.position)));
        trapped.fold(own, |mask, bit| mask | bit)
    }

    /// What a slope is multiplied with: the pack's change, or how far a trapped gear moves.
    fn amount(&self, slope: &Slope, change: &[f64]) -> f64 {
        match &self.trapped {
            Some(trapped) if slope.formula.position == trapped.behind => trapped.travel(change),
            _ => at(change, slope.formula.position),
        }
    }

    /// What the spread of changed packs adds.
    fn pack_variance(&self, slope: &Slope, change: &[f64], changed: u16) -> f64 {
        let of = |position: usize, rate: f64| {
            let spread = slope.mean * rate * PACK_SPREAD;
            if changed & bit(position) != 0 { spread * spread } else { 0.0 }
        };
        match &self.trapped {
            Some(trapped) if slope.formula.position == trapped.behind => {
                [trapped.behind, trapped.face]
                    .into_iter()
                    .map(|position| of(position, trapped.travel_rate(change, position)))
                    .sum()
            }
            _ => of(slope.formula.position, 1.0),
        }
    }
}

/// The bit of a position.
pub(crate) fn bit(position: usize) -> u16 {
    1u16.checked_shl(position as u32).unwrap_or(0)
}

fn at(change: &[f64], position: usize) -> f64 {
    change.get(position).copied().unwrap_or(0.0)
}
