//! Random layouts with four positions and forty stock sizes each, the same for every run.

use gearing::case::{
    Arm, Case, Check, CheckKind, Driven, Gears, Member, Position, Shaft, StockLine, Trial,
};
use measure::Decimal;

/// Cases of each kind.
pub const CASES: u64 = 300;
const SIZES: i64 = 40;

/// A kind of case: whether two positions share a family, and the step of thicknesses in
/// ten-thousandths of a millimetre.
pub const KINDS: [(&str, bool, i64); 5] = [
    ("one family each, steps of 0.01", false, 100),
    ("one family each, steps of 0.001", false, 10),
    ("one family each, steps of 0.0005", false, 5),
    ("two share a family, steps of 0.01", true, 100),
    ("two share a family, steps of 0.001", true, 10),
];

/// Numbers that look random: a linear congruential generator (Knuth's constants, from memory).
struct Dice(u64);

impl Dice {
    fn below(&mut self, end: i64) -> i64 {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        i64::try_from((self.0 >> 33) % u64::try_from(end).unwrap()).unwrap()
    }
}

/// A case whose thicknesses are multiples of `step` ten-thousandths of a millimetre.
pub fn case(seed: u64, shared: bool, step: i64) -> Case {
    let mut dice = Dice(seed);
    let size = |dice: &mut Dice, from: i64, to: i64| {
        let ten_thousandths = from + dice.below(to - from);
        Decimal::new(ten_thousandths / step * step, 4)
    };
    let families = if shared { ["a", "b", "b", "d"] } else { ["a", "b", "c", "d"] };
    let moves = [
        Member::Pinion,
        Member::Driven("forward".into()),
        if shared { Member::Other("shaft".into()) } else { Member::Driven("reverse".into()) },
        Member::Other("washer".into()),
    ];
    let positions: Vec<Position> = (0..4)
        .map(|i| Position {
            id: format!("P{i}"),
            moves: moves[i].clone(),
            mesh_sign: i8::from(!matches!(moves[i], Member::Other(_))),
            setting_sign: i8::from(i == 3 || shared && i > 0),
            family: families[i].into(),
            open_minutes: [60, 50, 20, 10][i],
            after: Vec::new(),
        })
        .collect();
    let packs: Vec<Vec<Decimal>> =
        (0..4).map(|_| vec![size(&mut dice, 4000, 7000), size(&mut dice, 500, 2500)]).collect();
    let mut stock = Vec::new();
    for family in ["a", "b", "c", "d"] {
        for _ in 0..SIZES {
            let thickness = size(&mut dice, 300, 12000);
            let count = u32::try_from(1 + dice.below(3)).unwrap();
            stock.push(StockLine { family: family.into(), thickness, count });
        }
    }
    let hundredths = |n: i64| Decimal::new(n, 2);
    let check = |id: &str, kind, low, high| Check {
        id: id.into(),
        kind,
        low: hundredths(low),
        high: hundredths(high),
        aim: None,
        sigma: None,
    };
    let lash = |mesh: &str| CheckKind::Backlash { mesh: mesh.into(), band_at: None };
    let names = |names: &[&str]| names.iter().map(|name| (*name).to_owned()).collect();
    let checks = if shared {
        vec![
            check("depth", CheckKind::DepthGap { from_behind: false }, 62, 68),
            check("lash", lash("forward"), 27, 48),
            check("play", CheckKind::EndPlay { positions: names(&["P1", "P2"]) }, 2, 10),
            check("float", CheckKind::EndPlay { positions: names(&["P3"]) }, 15, 45),
        ]
    } else {
        vec![
            check("depth", CheckKind::DepthGap { from_behind: false }, 62, 68),
            check("lash-forward", lash("forward"), 27, 48),
            check("lash-reverse", lash("reverse"), 35, 70),
            check("play", CheckKind::EndPlay { positions: names(&["P3"]) }, 15, 45),
        ]
    };
    let mut series = |low: i64, high: i64| {
        let level = low + dice.below(high - low);
        (0..4).map(|_| hundredths(level + dice.below(2))).collect::<Vec<_>>()
    };
    let readings = vec![series(50, 80), series(15, 70), series(5, 80), series(5, 60)];
    Case {
        gears: Gears {
            pinion_teeth: 14,
            pinion_pitch_radius: Decimal::from(24),
            driven: ["forward", "reverse"].map(|id| Driven { id: id.into(), teeth: 21 }).to_vec(),
            normal_pressure_angle: None,
            spiral_angle: None,
            shaft_angle: Decimal::from(90),
        },
        arm: Arm { radius: Decimal::from(30), on: Shaft::Pinion },
        positions,
        checks,
        stock,
        max_shims: 4,
        trials: vec![Trial { packs, readings }],
        frozen: Vec::new(),
    }
}
