//! Random small cases, the same for every run.

use gearing::case::{
    Arm, Case, Check, CheckKind, Driven, Gears, Member, Position, Shaft, StockLine, Trial,
};
use measure::Decimal;

/// Numbers that look random: a linear congruential generator (Knuth's constants, from memory).
pub struct Dice(pub u64);

impl Dice {
    /// From 0 up to, not including, `end`.
    pub fn below(&mut self, end: i64) -> i64 {
        let Dice(state) = self;
        *state =
            state.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        i64::try_from((*state >> 33) % u64::try_from(end).unwrap()).unwrap()
    }

    pub fn between(&mut self, low: i64, high: i64) -> i64 {
        low + self.below(high - low + 1)
    }

    pub fn chance(&mut self, percent: i64) -> bool {
        self.below(100) < percent
    }

    pub fn pick<T: Clone>(&mut self, from: &[T]) -> T {
        from[usize::try_from(self.below(i64::try_from(from.len()).unwrap())).unwrap()].clone()
    }
}

pub fn hundredths(n: i64) -> Decimal {
    Decimal::new(n, 2)
}

/// Invented gears: 14/21 teeth, pinion pitch radius 24 mm.
pub fn gears(known: bool) -> Gears {
    Gears {
        pinion_teeth: 14,
        pinion_pitch_radius: Decimal::from(24),
        driven: ["forward", "reverse"].map(|id| Driven { id: id.into(), teeth: 21 }).to_vec(),
        normal_pressure_angle: known.then(|| Decimal::from(20)),
        spiral_angle: known.then(|| Decimal::from(35)),
        shaft_angle: Decimal::from(90),
    }
}

pub fn position(id: &str, moves: Member, mesh_sign: i8, setting_sign: i8) -> Position {
    Position {
        id: id.into(),
        moves,
        mesh_sign,
        setting_sign,
        family: id.into(),
        open_minutes: 10,
        after: Vec::new(),
    }
}

pub fn driven(id: &str) -> Member {
    Member::Driven(id.into())
}

pub fn check(id: &str, kind: CheckKind, low: i64, high: i64) -> Check {
    Check {
        id: id.into(),
        kind,
        low: hundredths(low),
        high: hundredths(high),
        aim: None,
        sigma: None,
    }
}

pub fn depth() -> CheckKind {
    CheckKind::DepthGap { from_behind: false }
}

pub fn lash(mesh: &str) -> CheckKind {
    CheckKind::Backlash { mesh: mesh.into(), band_at: None }
}

pub fn end_play(positions: &[&str]) -> CheckKind {
    CheckKind::EndPlay { positions: positions.iter().map(|id| (*id).to_owned()).collect() }
}

/// A random case of one of five shapes, with few enough packs to try them all.
pub fn random(seed: u64) -> Case {
    let mut dice = Dice(seed.wrapping_mul(7919));
    let pinion = |dice: &mut Dice| position("P", Member::Pinion, dice.pick(&[1, -1]), 0);
    let (mut positions, checks) = match seed % 5 {
        0 => (
            vec![
                pinion(&mut dice),
                position("F", driven("forward"), dice.pick(&[1, -1]), 0),
                position("R", driven("reverse"), dice.pick(&[1, -1]), 0),
            ],
            vec![
                check("depth", depth(), 62, 68),
                check("lash-forward", lash("forward"), 27, 48),
                check("lash-reverse", lash("reverse"), 35, 70),
            ],
        ),
        1 => (
            vec![
                pinion(&mut dice),
                position("G", driven("forward"), 1, 1),
                position("S", Member::Other("shaft".into()), 0, 1),
            ],
            vec![
                check("depth", depth(), 62, 70),
                check("lash", lash("forward"), 27, 48),
                check("play", end_play(&["G", "S"]), 2, 10),
            ],
        ),
        // A gear trapped between two preloaded bearings.
        2 => (
            vec![
                pinion(&mut dice),
                position("G", driven("forward"), 1, 1),
                position("S", driven("forward"), -1, 1),
            ],
            vec![
                check("depth", depth(), 62, 70),
                check("lash", lash("forward"), 30, 55),
                if dice.chance(50) {
                    check("preload", end_play(&["G", "S"]), -8, 0)
                } else {
                    check("play", end_play(&["G", "S"]), 0, 8)
                },
            ],
        ),
        // Two packs of which only the difference counts.
        3 => (
            vec![position("U", driven("forward"), 1, 1), position("V", driven("forward"), -1, -1)],
            vec![
                check("lash", lash("forward"), 27, 48),
                check("play", end_play(&["U", "V"]), 2, 20),
            ],
        ),
        _ => (
            vec![
                position("F", driven("forward"), 1, 0),
                position("R", driven("reverse"), 1, 1),
                position("W", Member::Other("washer".into()), 0, 1),
            ],
            vec![
                check("lash-forward", lash("forward"), 27, 48),
                check("lash-reverse", lash("reverse"), 35, 70),
                check("play", end_play(&["R", "W"]), 15, 30),
            ],
        ),
    };
    let share = dice.chance(40);
    let after = dice.chance(40);
    for (index, position) in positions.iter_mut().enumerate() {
        position.open_minutes = u32::try_from(dice.pick(&[10, 20, 20, 50])).unwrap();
        if share && index > 0 {
            position.family = "shared".into();
        }
        if after && index == 0 {
            position.after = vec![if seed % 5 == 3 { "V".into() } else { "G".into() }];
        }
    }
    let ids: Vec<String> = positions.iter().map(|position| position.id.clone()).collect();
    for position in &mut positions {
        position.after.retain(|id| ids.contains(id));
    }
    let mut families: Vec<String> = positions.iter().map(|p| p.family.clone()).collect();
    families.dedup();
    let mut stock = Vec::new();
    for family in &families {
        for _ in 0..dice.between(1, 3) {
            let thickness = hundredths(dice.pick(&[5, 8, 10, 12, 15, 20, 25, 30, 40]));
            let count = u32::try_from(dice.between(1, 2)).unwrap();
            stock.push(StockLine { family: family.clone(), thickness, count });
        }
    }
    let max_shims = usize::try_from(dice.between(2, 3)).unwrap();
    let mut trials = Vec::new();
    for _ in 0..dice.between(1, 2) {
        let packs = positions
            .iter()
            .map(|_| {
                let thin = dice.chance(60).then(|| hundredths(dice.between(4, 20)));
                std::iter::once(hundredths(dice.between(30, 60))).chain(thin).collect()
            })
            .collect();
        let readings = checks
            .iter()
            .map(|check| {
                let middle = (check.low + check.high) / Decimal::TWO;
                let off = hundredths(dice.between(-18, 18));
                let least = if check.high <= Decimal::ZERO { -20 } else { 0 };
                let level = (middle + off).max(hundredths(least));
                (0..dice.between(1, 4)).map(|_| level + hundredths(dice.below(2))).collect()
            })
            .collect();
        trials.push(Trial { packs, readings });
    }
    let frozen = if dice.chance(15) { vec![ids[ids.len() - 1].clone()] } else { Vec::new() };
    Case {
        gears: gears(dice.chance(60)),
        arm: Arm { radius: Decimal::from(30), on: Shaft::Pinion },
        positions,
        checks,
        stock,
        max_shims,
        trials,
        frozen,
    }
}
