//! Two golden jobs at full digits: `tests/golden/g1.json`, `g2.json`, calculated apart from this
//! code; what they are is told in `g1.md` and `g2.md` beside them.

use gearing::advice::{Alarm, Cause, CauseKind};
use gearing::case::{Arm, Case, CheckKind, Shaft};
use gearing::{backlash, bevel};
use measure::{Decimal, real};
use serde_json::Value;
use shimwright_cli::read_case;

use crate::golden::{assert_reaches, check, file, near, near_relative, packs, position};

fn job(name: &str) -> (Case, Value) {
    let mut value: Value = serde_json::from_str(&file(name)).unwrap();
    (read_case(&value["advise"]).unwrap(), value["expect"].take())
}

fn jobs() -> [(Case, Value); 2] {
    [job("g1.json"), job("g2.json")]
}

#[test]
fn bands_at_the_arm_and_as_angles() {
    for (case, expect) in jobs() {
        let bands = gearing::bands(&case).unwrap();
        for (id, band) in expect["bands_at_arm_mm"].as_object().unwrap() {
            let found = &bands[check(&case, id)];
            near(real::from_decimal(found.low()), band[0].as_f64().unwrap(), 1e-12);
            near(real::from_decimal(found.high()), band[1].as_f64().unwrap(), 1e-12);
        }
        for (id, ways) in expect["band_conversion"].as_object().unwrap() {
            let found = &bands[check(&case, id)];
            let CheckKind::Backlash { mesh, .. } = &case.checks[check(&case, id)].kind else {
                panic!("{id} is no backlash");
            };
            let gear = Shaft::Driven(mesh.clone());
            let other = if case.arm.on == Shaft::Pinion { gear.clone() } else { Shaft::Pinion };
            let other = Arm { radius: case.arm.radius, on: other };
            for (end, limit) in [found.low(), found.high()].into_iter().enumerate() {
                let expected = |way: &str| ways[way][end].as_f64().unwrap();
                let tooth = backlash::at_tooth(limit, &case.gears, &case.arm).unwrap();
                near(real::from_decimal(tooth), expected("at_tooth"), 1e-12);
                let degrees = |shaft| backlash::degrees(tooth, &case.gears, shaft).unwrap();
                near(degrees(&gear), expected("gear_degrees"), 1e-12);
                near(degrees(&Shaft::Pinion), expected("pinion_degrees"), 1e-12);
                let there = backlash::at_arm(tooth, &case.gears, &other).unwrap();
                near(real::from_decimal(there), expected("same_arm_on_other_shaft"), 1e-12);
            }
        }
    }
}

#[test]
fn slopes_before_and_after_the_trials() {
    for (case, expect) in jobs() {
        let influences = gearing::influences(&case).unwrap();
        let of = |id: &str, at: &str| {
            let (check, position) = (check(&case, id), position(&case, at));
            let mut all = influences.iter();
            all.find(|one| one.check == check && one.position == position).unwrap()
        };
        let mut slopes = 0;
        for (id, by_position) in expect["slopes_formula"].as_object().unwrap() {
            for (at, slope) in by_position.as_object().unwrap() {
                near_relative(of(id, at).formula, slope.as_f64().unwrap(), 1e-12);
                slopes += 1;
            }
        }
        assert_eq!(influences.len(), slopes);
        let regression = &expect["regression"];
        for prior in regression["prior_slopes"].as_array().unwrap() {
            let (id, at) = (prior["check"].as_str().unwrap(), prior["position"].as_str().unwrap());
            near_relative(of(id, at).formula_sigma, prior["sd"].as_f64().unwrap(), 1e-9);
            let named = format!("slope of {id} for {at}");
            let mut parameters = regression["parameters"].as_array().unwrap().iter();
            let index = parameters.position(|name| *name == named.as_str()).unwrap();
            let mean = regression["posterior_mean"][index].as_f64().unwrap();
            let variance = regression["posterior_covariance"][index][index].as_f64().unwrap();
            near_relative(of(id, at).slope, mean, 1e-9);
            near_relative(of(id, at).sigma, variance.sqrt(), 1e-9);
        }
        // Levels: what is expected at the packs of the last trial.
        let unchanged = case.trials.last().unwrap().packs.clone();
        for (index, name) in regression["parameters"].as_array().unwrap().iter().enumerate() {
            if let Some(id) = name.as_str().unwrap().strip_prefix("level of ") {
                let found = gearing::predict(&case, &unchanged).unwrap()[check(&case, id)].unwrap();
                near(found.mean, regression["posterior_mean"][index].as_f64().unwrap(), 1e-9);
            }
        }
    }
}

#[test]
fn the_second_trial_foreseen_from_the_first() {
    for (case, expect) in jobs() {
        let second = case.trials[1].packs.clone();
        let first = Case { trials: case.trials[..1].to_vec(), ..case.clone() };
        let predicted = gearing::predict(&first, &second).unwrap();
        for (id, forecast) in expect["forecast_of_trial_2"].as_object().unwrap() {
            let found = predicted[check(&case, id)].unwrap();
            near(found.mean, forecast["mean"].as_f64().unwrap(), 1e-9);
            near(found.sigma, forecast["sigma"].as_f64().unwrap(), 1e-9);
        }
    }
}

#[test]
fn packs_to_fit() {
    for (case, expect) in jobs() {
        let advice = gearing::advise(&case).unwrap();
        assert_reaches(&case, &advice, &expect["choice"]);
        assert!(advice.alarms.is_empty(), "{:?}", advice.alarms);
        // The tie-break is proposed by the reference, not tested by it.
        let sorted = |packs: &[Vec<Decimal>]| -> Vec<Vec<Decimal>> {
            let pack = |pack: &Vec<Decimal>| {
                let mut pack = pack.clone();
                pack.sort();
                pack
            };
            packs.iter().map(pack).collect()
        };
        let pick = packs(&case, &expect["pick"]["packs"]);
        assert_eq!(sorted(&advice.packs), sorted(&pick));
        for (id, predicted) in expect["pick"]["predicted"].as_object().unwrap() {
            let found = advice.predicted[check(&case, id)].unwrap();
            near(found.mean, predicted["mean"].as_f64().unwrap(), 1e-9);
            near(found.sigma, predicted["sigma"].as_f64().unwrap(), 1e-9);
        }
    }
}

#[test]
fn probability_of_each_check() {
    for (case, expect) in jobs() {
        let first = packs(&case, &expect["choice"]["ties"][0]["packs"]);
        let choice = gearing::evaluate(&case, &first).unwrap();
        for (id, probability) in expect["probability"]["by_check"].as_object().unwrap() {
            let found = choice.predicted[check(&case, id)].unwrap().probability;
            near(found, probability.as_f64().unwrap(), 1e-9);
        }
        let closed_form = expect["probability"]["closed_form"].as_f64().unwrap();
        near(choice.probability, closed_form, 1e-9);
        // Six standard errors of the Monte Carlo, and the correlations that the product leaves out.
        near(choice.probability, expect["probability"]["monte_carlo"].as_f64().unwrap(), 4e-4);
    }
}

/// The reference's words for a cause.
fn words(case: &Case, cause: &Cause) -> String {
    let position = |index: usize| &case.positions[index].id;
    let times = |factor: f64| match factor {
        factor if factor >= 1.0 => format!("{factor}"),
        factor => format!("1/{}", (1000.0 / factor).round() / 1000.0),
    };
    match &cause.kind {
        CauseKind::AsPlanned => "none: as planned".to_owned(),
        CauseKind::OtherSign { position: at } => {
            format!("sign of {} is the other way", position(*at))
        }
        CauseKind::Swapped { first, second } => {
            format!("packs of {} and {} swapped", position(*first), position(*second))
        }
        CauseKind::NotChanged { position: at } => {
            format!("pack of {} was not changed", position(*at))
        }
        CauseKind::ShimMissing { position: at, thickness } => {
            format!(
                "shim {} missing from {} (stuck to the old race)",
                thickness.normalize(),
                position(*at)
            )
        }
        CauseKind::NotSeated { position: at } => {
            format!("{} not seated or dirt: acts as 0.02 to 0.15 more pack", position(*at))
        }
        CauseKind::Slip { check, factor } => format!(
            "unit or decimal slip in {}: written value is {} times of the true one",
            case.checks[*check].id,
            times(*factor)
        ),
        CauseKind::OtherShaft { factor } => {
            let ratio = if *factor > 1.0 { "z_gear/z_pinion" } else { "z_pinion/z_gear" };
            format!("arm on the other shaft than stated: all lash times {ratio}")
        }
    }
}

/// Readings as typed, in mm, as the job's trials give them.
fn third_trial(case: &Case, readings: &Value, lash_factor: f64) -> Vec<Vec<Decimal>> {
    let in_mm = |id: &str| {
        let typed = readings[id]["typed"].as_array().unwrap().iter();
        let unit = if readings[id]["unit"] == "in" { Decimal::new(254, 1) } else { Decimal::ONE };
        typed.map(move |text| Decimal::from_str_exact(text.as_str().unwrap()).unwrap() * unit)
    };
    let series = |check: &gearing::case::Check| {
        let lash = matches!(check.kind, CheckKind::Backlash { .. });
        let square = |value: Decimal| {
            let square = real::from_decimal(value) * lash_factor;
            if lash { real::to_decimal(square, 6).unwrap() } else { value }
        };
        in_mm(&check.id).map(square).collect()
    };
    case.checks.iter().map(series).collect()
}

#[test]
fn six_wrong_builds_and_their_causes() {
    // The second job's indicator stands 10° off square; the first one's is square.
    for ((case, expect), angle) in jobs().into_iter().zip([0.0_f64, 10.0]) {
        let fitted = packs(&case, &expect["choice"]["ties"][0]["packs"]);
        for wrong in expect["alarms"].as_array().unwrap() {
            let mut case = case.clone();
            let readings = third_trial(&case, &wrong["readings"], angle.to_radians().cos());
            case.trials.push(gearing::case::Trial { packs: fitted.clone(), readings });
            let advice = gearing::advise(&case).unwrap();
            let Some(Alarm::Surprise { off, causes }) = advice.alarms.first() else {
                panic!("no alarm for {}", wrong["true_cause"]);
            };
            for (id, z) in wrong["z"].as_object().unwrap() {
                near(off[check(&case, id)].unwrap(), z.as_f64().unwrap(), 1e-5);
            }
            for (expected, found) in wrong["causes"].as_array().unwrap().iter().zip(causes) {
                let log_likelihood = expected["log_likelihood"].as_f64().unwrap();
                near_relative(found.log_likelihood, log_likelihood, 1e-6);
                near(found.share, expected["share"].as_f64().unwrap(), 1e-9);
                let cause = expected["cause"].as_str().unwrap();
                // Two causes with the same effect may stand in either order.
                let same = causes.iter().filter(|other| {
                    (other.log_likelihood - log_likelihood).abs() < 1e-6 * log_likelihood.abs()
                });
                let same: Vec<String> = same.map(|other| words(&case, other)).collect();
                assert!(same.iter().any(|words| words == cause), "{same:?} for {cause}");
            }
            let true_cause = wrong["true_cause"].as_str().unwrap();
            assert!(words(&case, &causes[0]).starts_with(true_cause));
        }
    }
}

/// The simulated mesh of the references and the formula agree for the golden gears too.
#[test]
fn lever_and_tangent_by_hand() {
    let (case, _) = job("g1.json");
    let angles = bevel::pitch_angles(13, 24, 90.0);
    let per_mm = bevel::lash_per_mm(bevel::tangent(20.0, 35.0), angles.gear) * 28.0 / 22.0;
    let gear = &gearing::influences(&case).unwrap()[2];
    near(gear.formula, -per_mm, 1e-12);
}
