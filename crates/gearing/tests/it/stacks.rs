//! Packs for one target, against instances solved three independent ways: two integer-programming
//! solvers and an exhaustive enumeration. The problem is the bounded subset sum (Martello & Toth,
//! Knapsack Problems, 1990, from memory).

use gearing::{Side, nearest_pack, reachable_totals};
use measure::Decimal;

struct Instance {
    name: &'static str,
    /// Decimals of a thickness: 3 for thousandths.
    places: u32,
    sizes: &'static [i64],
    counts: &'static [u32],
    target: i64,
    most: usize,
    error: i64,
    shims: usize,
    /// Every optimal pack, thin to thick.
    packs: &'static [&'static [i64]],
}

const INSTANCES: [Instance; 7] = [
    Instance {
        name: "I1",
        places: 3,
        sizes: &[2, 3, 5, 10, 20, 32],
        counts: &[3, 2, 2, 2, 2, 1],
        target: 47,
        most: 8,
        error: 0,
        shims: 3,
        packs: &[&[5, 10, 32]],
    },
    Instance {
        name: "I2",
        places: 3,
        sizes: &[3, 5, 12, 25, 40],
        counts: &[2, 2, 3, 2, 1],
        target: 71,
        most: 8,
        error: 0,
        shims: 4,
        packs: &[&[3, 3, 25, 40]],
    },
    Instance {
        name: "I4",
        places: 3,
        sizes: &[100, 120, 150, 200, 300, 500],
        counts: &[2, 2, 2, 2, 2, 1],
        target: 1130,
        most: 8,
        error: 10,
        shims: 4,
        packs: &[&[120, 200, 300, 500]],
    },
    Instance {
        name: "I4b",
        places: 3,
        sizes: &[100, 120, 150, 200, 300, 500],
        counts: &[2, 2, 2, 2, 2, 1],
        target: 1130,
        most: 3,
        error: 30,
        shims: 3,
        packs: &[&[300, 300, 500]],
    },
    Instance {
        name: "I6, a tin too thin",
        places: 3,
        sizes: &[2, 3, 5],
        counts: &[1, 1, 1],
        target: 30,
        most: 8,
        error: 20,
        shims: 3,
        packs: &[&[2, 3, 5]],
    },
    Instance {
        name: "I7, nothing needed",
        places: 3,
        sizes: &[2, 3, 5],
        counts: &[1, 1, 1],
        target: 0,
        most: 8,
        error: 0,
        shims: 0,
        packs: &[&[]],
    },
    Instance {
        name: "I8",
        places: 3,
        sizes: &[2, 3, 5, 10, 20, 32],
        counts: &[3, 2, 2, 2, 2, 1],
        target: 47,
        most: 2,
        error: 5,
        shims: 2,
        packs: &[&[10, 32], &[20, 32]],
    },
];

impl Instance {
    fn shims(&self) -> Vec<(Decimal, u32)> {
        let sizes = self.sizes.iter().map(|&size| Decimal::new(size, self.places));
        sizes.zip(self.counts.iter().copied()).collect()
    }

    fn nearest(&self, side: Side) -> Vec<Decimal> {
        let target = Decimal::new(self.target, self.places);
        let mut pack = nearest_pack(target, &self.shims(), self.most, side).unwrap();
        pack.sort();
        pack
    }
}

#[test]
fn seven_instances() {
    for instance in &INSTANCES {
        for side in [Side::Thinner, Side::Thicker] {
            let pack = instance.nearest(side);
            let total: Decimal = pack.iter().sum();
            let target = Decimal::new(instance.target, instance.places);
            let error = Decimal::new(instance.error, instance.places);
            assert_eq!((total - target).abs(), error, "{}", instance.name);
            assert_eq!(pack.len(), instance.shims, "{}", instance.name);
            let optimal = instance.packs.iter().map(|pack| -> Vec<Decimal> {
                pack.iter().map(|&size| Decimal::new(size, instance.places)).collect()
            });
            assert!(optimal.clone().any(|optimal| optimal == pack), "{}: {pack:?}", instance.name);
        }
    }
}

/// 42 and 52 are equally far from 47: the caller says which side is the looser one.
#[test]
fn the_side_decides_between_under_and_over() {
    let [.., tie] = &INSTANCES;
    assert_eq!(tie.nearest(Side::Thinner).iter().sum::<Decimal>(), Decimal::new(42, 3));
    assert_eq!(tie.nearest(Side::Thicker).iter().sum::<Decimal>(), Decimal::new(52, 3));
}

/// Every total, counted by adding shims one after the other.
#[test]
fn totals_against_every_combination() {
    for instance in &INSTANCES {
        for most in 1..=4 {
            let mut reached = vec![(0, 0)];
            for (&size, &count) in instance.sizes.iter().zip(instance.counts) {
                reached = reached
                    .iter()
                    .flat_map(|&(total, shims)| {
                        (0..=count as usize).map(move |n| (total + size * n as i64, shims + n))
                    })
                    .filter(|&(_, shims)| shims <= most)
                    .collect();
            }
            reached.retain(|&(_, shims)| shims > 0);
            reached.sort_unstable();
            reached.dedup_by_key(|(total, _)| *total);
            let found = reachable_totals(&instance.shims(), most).unwrap();
            let expected: Vec<(Decimal, usize)> = reached
                .iter()
                .map(|&(total, shims)| (Decimal::new(total, instance.places), shims))
                .collect();
            assert_eq!(found, expected, "{} with {most}", instance.name);
        }
    }
}

/// Sizes that are no multiples of each other, in inches and millimetres: nothing is rounded.
#[test]
fn no_shim_is_lost_to_rounding() {
    // 0.012 in, 0.0115 in and 0.30 mm.
    let shims = [30480, 29210, 30000].map(|size| (Decimal::new(size, 5), 1));
    let totals = reachable_totals(&shims, 3).unwrap();
    let expected =
        [29210, 30000, 30480, 59210, 59690, 60480, 89690].map(|total| Decimal::new(total, 5));
    assert_eq!(totals.iter().map(|(total, _)| *total).collect::<Vec<_>>(), expected);
}

#[test]
fn thicknesses_that_are_none_are_refused() {
    for (thickness, sentence) in [
        (Decimal::ZERO, "shims[0]: found 0, expected a number above 0"),
        (Decimal::new(-1, 1), "shims[0]: found -0.1, expected a number above 0"),
        (Decimal::from(51), "shims[0]: found 51, expected a number from 0 to 50"),
        (Decimal::new(1, 6), "shims[0]: found 0.000001, expected at most 5 decimals; round it"),
    ] {
        let refused = reachable_totals(&[(thickness, 1)], 4).unwrap_err();
        assert_eq!(refused.to_string(), sentence);
    }
    let fine: Vec<(Decimal, u32)> =
        (0..100).map(|n| (Decimal::new(4_000_001 + 7 * n, 5), 3)).collect();
    let refused = reachable_totals(&fine, 8).unwrap_err();
    assert!(refused.to_string().contains("too many different totals"), "{refused}");
}
