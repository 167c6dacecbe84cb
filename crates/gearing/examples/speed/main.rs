//! How long advice takes: random layouts with four positions and forty stock sizes each.
//!
//! `cargo run --release -p gearing --example speed`

// A measurement may stop at the first thing that is not as it should be.
#![allow(clippy::unwrap_used, clippy::indexing_slicing)]

mod instances;

use std::time::{Duration, Instant};

use instances::{CASES, KINDS, case};

fn main() {
    for (name, shared, step) in KINDS {
        let mut times: Vec<(Duration, String)> = Vec::new();
        for seed in 0..CASES {
            let case = case(seed, shared, step);
            let start = Instant::now();
            let advice = gearing::advise(&case).unwrap();
            times.push((start.elapsed(), format!("{:?} {seed}", advice.status)));
        }
        times.sort();
        let worst = &times[times.len() - 1];
        println!(
            "{name}: median {:?}, worst {:?} ({})",
            times[times.len() / 2].0,
            worst.0,
            worst.1
        );
    }
}
