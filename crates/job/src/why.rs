//! Where the numbers of an advice come from: formula, inputs and source, as plain data.

use gearing::{Influence, Source};
use measure::{Decimal, real, show};
use words::{say, t};

use crate::case::Bridge;
use crate::figure::with_unit;
use crate::influence_view::{Known, influences, known};
use crate::reading::length;
use crate::standing::asked;
use crate::{
    ArmShaft, Check, Figure, FittedShim, Job, PackAct, PackView, Position, Predicted, SetUp, Sheet,
    ShimView, Shown, Slot, Tin, field, figure,
};

/// Where one number comes from.
#[derive(Clone, Debug, PartialEq)]
pub struct Why {
    /// The number in words: "Forward lash per mm at B2".
    pub what: String,
    /// The number with its unit and, where it has one, its ±.
    pub value: String,
    /// The formula, letters as in `inputs`.
    pub formula: &'static str,
    /// What went into it, in the formula's order.
    pub inputs: Vec<Input>,
    /// Where the formula or the number comes from.
    pub source: String,
}

/// A number that went into a formula.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Input {
    /// Its letter or name.
    pub name: String,
    /// The number with its unit.
    pub value: String,
}

const MODEL: &str = "Set-up model R1, written down in tests/golden with jobs worked out apart.";
const GEOMETRY: &str = "Geometry of a bevel pair, small moves; agrees with a mesh simulation to \
                        0.25 %.";
const SWELLING: &str = "The pack's sign: what a growing pack pushes (common practice, no source).";

/// Where the numbers on the set-up screen come from: the probability, the labour, the packs, what
/// each gauge will read, the bands at the arm, and what each pack is worth.
pub fn why(told: &SetUp, (job, sheet, tin): (&Job, &Sheet, &Tin), shown: Shown) -> Vec<Why> {
    let mut all = Vec::new();
    if let Some(chance) = told.advice.probability {
        all.push(probability(chance, &told.advice.predicted, shown));
    }
    all.extend(minutes(told));
    all.extend(told.advice.packs.iter().filter_map(|pack| thickness(pack, tin, shown)));
    all.extend(told.checks.iter().filter_map(|view| conversion(view.check, sheet, shown)));
    let influences = influences(job, sheet, tin);
    let levels = levels(job, sheet, tin);
    let of_check = |it| prediction(it, told, &levels, &influences, shown);
    all.extend(told.advice.predicted.iter().filter_map(of_check));
    let trials = crate::case::builds(job, sheet).len();
    all.extend(
        influences.iter().map(|(slot, check, it)| slope((*slot, *check, it), sheet, trials, shown)),
    );
    all
}

fn probability(chance: f64, predicted: &[Predicted], shown: Shown) -> Why {
    let of_check = |it: &Predicted| {
        let [mean, expanded] =
            [it.mean, it.expanded].map(|value| figure(value, it.check.figure(), shown));
        let unit = it.check.shown_unit(shown);
        let percent = number(it.probability * 100.0, 1, shown);
        Input {
            name: it.check.name().to_owned(),
            value: say!("{mean} ± {expanded} {unit}, in its band {percent} %"),
        }
    };
    Why {
        what: t("All in band at the next build").to_owned(),
        value: crate::advice::chance(chance),
        formula: t("p = product over the checks of Φ((high − μ)/σ) − Φ((low − μ)/σ); ± is 2 σ"),
        inputs: predicted.iter().map(of_check).collect(),
        source: t(MODEL).to_owned(),
    }
}

/// What each gauge reads on the packs of the last trial, as learnt from all trials.
fn levels(job: &Job, sheet: &Sheet, tin: &Tin) -> Vec<(Check, Decimal)> {
    let Ok(bridge) = Bridge::of(job, sheet, tin, &asked(job, sheet)) else { return Vec::new() };
    let Some(last) = bridge.case.trials.last() else { return Vec::new() };
    let predicted = gearing::predict(&bridge.case, &last.packs).unwrap_or_default();
    let level = |(check, it): (&Check, Option<_>)| {
        it.map(|it: gearing::advice::Prediction| (*check, length(it.mean)))
    };
    bridge.checks.iter().zip(predicted).filter_map(level).collect()
}

/// What a gauge will read with the packs advised.
fn prediction(
    it: &Predicted,
    told: &SetUp,
    levels: &[(Check, Decimal)],
    influences: &[(Slot, Check, Influence)],
    shown: Shown,
) -> Option<Why> {
    let (_, level) = levels.iter().find(|(check, _)| *check == it.check)?;
    let reading = |value| with_unit(value, Figure::Reading, shown);
    let mut inputs =
        vec![Input { name: t("level on the last packs").to_owned(), value: reading(*level) }];
    for pack in told.advice.packs.iter().filter(|pack| pack.act == PackAct::Fit) {
        let mut slopes = influences.iter();
        let slope = slopes.find(|(slot, check, _)| (*slot, *check) == (pack.slot, it.check));
        if let Some((.., influence)) = slope {
            let change = with_unit(pack.total - pack.now, Figure::Shim, shown);
            let value = format!("{} · {change}", number(influence.slope, 3, shown));
            inputs.push(Input {
                name: say!("slope · change at {pack}", pack = pack.slot.tag()),
                value,
            });
        }
    }
    Some(Why {
        what: say!("{check} at the next build", check = it.check.name()),
        value: format!("{} ± {}", figure(it.mean, Figure::Reading, shown), reading(it.expanded)),
        formula: t(
            "μ = level + sum of slope · change; ± is 2 σ, the next reading's own scatter inside",
        ),
        inputs,
        source: t(MODEL).to_owned(),
    })
}

/// How thick an advised pack is.
fn thickness(pack: &PackView, tin: &Tin, shown: Shown) -> Option<Why> {
    if pack.act != PackAct::Fit {
        return None;
    }
    let of_shim = |view: &ShimView| {
        let net = with_unit(view.net, Figure::Shim, shown);
        let value = match &view.shim {
            FittedShim::FromTin { shim, .. } => tin.shim(shim).map_or(net.clone(), |shim| {
                let [one, other] = &shim.places;
                say!("{net}: {one} and {other}, zero {zero}", zero = shim.zero)
            }),
            FittedShim::Measured(typed) => say!("{net}: {typed}, net"),
        };
        Input { name: view.count.clone(), value }
    };
    let expanded = with_unit(pack.expanded, Figure::Shim, shown);
    Some(Why {
        what: say!("Pack {pack}", pack = pack.slot.tag()),
        value: format!("{} ± {expanded}", figure(pack.total, Figure::Shim, shown)),
        formula: t("sum over the shims of (mean of two places − zero of the micrometer)"),
        inputs: pack.shims.iter().map(of_shim).collect(),
        source: t("± from the steps of the micrometer; its zero is the same in every shim.")
            .to_owned(),
    })
}

fn minutes(told: &SetUp) -> Option<Why> {
    let changed: Vec<Input> = told
        .advice
        .packs
        .iter()
        .filter(|pack| pack.act == PackAct::Fit)
        .map(|pack| Input {
            name: pack.slot.tag().to_owned(),
            value: format!("{} min, {}", pack.position.open_minutes, pack.position.open_how()),
        })
        .collect();
    (!changed.is_empty()).then(|| Why {
        what: t("Labour").to_owned(),
        value: say!("about {minutes} min", minutes = told.advice.minutes),
        formula: t("each pack's own minutes once, with the packs that come apart on the way"),
        inputs: changed,
        source: t("Common practice, no source.").to_owned(),
    })
}

/// How a backlash band comes to the arm it is read on.
fn conversion(check: Check, sheet: &Sheet, shown: Shown) -> Option<Why> {
    let (radius, shaft) = field::band_at(check)?;
    let (from, at) = (sheet.band(check)?, sheet.band_at_arm(check)?);
    let range = |band: &measure::Band| {
        let [low, high] = [band.low(), band.high()].map(|it| figure(it, Figure::Reading, shown));
        say!("{low} to {high} {unit}", unit = shown.units.length)
    };
    let on = |radius, shaft| {
        let radius = with_unit(sheet.millimetres(radius)?, Figure::Radius, shown);
        let shaft = sheet.shaft(ArmShaft::named(sheet.word(shaft)?)?);
        Some(say!("{radius} on the {shaft}"))
    };
    let input = |name: &str, value| Input { name: name.to_owned(), value };
    Some(Why {
        what: say!("{check} at your arm", check = check.name()),
        value: range(&at),
        formula: t("band · (R/r) / (R₀/r₀); r is the pitch radius of the gear on that shaft"),
        inputs: vec![
            input(t("band"), range(&from)),
            input("R₀", on(radius, shaft)?),
            input("R", on(crate::Field::ArmRadius, crate::Field::ArmShaft)?),
            input(t("teeth, gear to pinion"), show(sheet.ratio(check)?, 3, shown.mark)),
        ],
        source: t("The same angle read at another radius: arithmetic.").to_owned(),
    })
}

/// What one pack is worth for one reading.
fn slope(
    (slot, check, it): (Slot, Check, &Influence),
    sheet: &Sheet,
    trials: usize,
    shown: Shown,
) -> Why {
    let input = |name: &str, value: String| Input { name: name.to_owned(), value };
    let sign = |sign: i8| if sign > 0 { "+1" } else { "−1" }.to_owned();
    let (formula, inputs, source) = match it.source {
        Source::Depth { sign: s, from_behind } => {
            (if from_behind { "+s" } else { "−s" }, vec![input("s", sign(s))], t(SWELLING))
        }
        Source::EndPlay { sign: p } => ("−p", vec![input("p", sign(p))], t(SWELLING)),
        Source::FaceSide => (
            t("0 while there is play; half of what the preload changes"),
            Vec::new(),
            t("The gear lies on the race behind it; both sides give alike under preload."),
        ),
        Source::Backlash { sign: s, pitch_angle, tangent, tangent_sigma, lever } => {
            let spread = if tangent_sigma > 0.0 {
                say!(
                    " ± {spread}, angles not on the sheet",
                    spread = number(2.0 * tangent_sigma, 2, shown)
                )
            } else {
                String::new()
            };
            let inputs = vec![
                input("s", sign(s)),
                input("δ", format!("{}°", number(pitch_angle, 2, shown))),
                input("tan α / cos β", format!("{}{spread}", number(tangent, 3, shown))),
                input("R/r", number(lever, 3, shown)),
            ];
            ("−s · 2 · sin δ · tan α / cos β · R/r", inputs, t(GEOMETRY))
        }
    };
    let by_formula = with_spread(it.formula, it.formula_sigma, shown);
    let (value, source) = match known(it) {
        Known::Exact => (number(it.formula, 2, shown), source.to_owned()),
        Known::Formula | Known::Guess => (by_formula, source.to_owned()),
        Known::Learnt => (
            with_spread(it.slope, it.sigma, shown),
            say!("{source} By the formula {by_formula}; learnt from {trials} trials."),
        ),
    };
    let turned = sheet.position(slot).and_then(|position| {
        let reason = sheet.turned_because(&position)?;
        Some(say!(" Sign turned: {reason}."))
    });
    Why {
        what: say!("{check} per mm at {pack}", check = check.name(), pack = slot.tag()),
        value: say!("{value} mm per mm"),
        formula,
        inputs,
        source: source + &turned.unwrap_or_default(),
    }
}

/// The first guess after new parts.
pub(crate) fn first_guess_why(
    position: &Position,
    mesh_sign: i8,
    old: Decimal,
    [height, mounting, case]: [Decimal; 3],
    guess: Decimal,
    shown: Shown,
) -> Why {
    let thick = |value| with_unit(value, Figure::Shim, shown);
    let input = |name: &str, value| Input { name: name.to_owned(), value };
    Why {
        what: say!("First guess at {pack}", pack = position.slot.tag()),
        value: thick(guess),
        formula: "t = t old − h · dH − s · dM + s · dD",
        inputs: vec![
            input(t("t old"), thick(old)),
            input("h", position.facts.height_sign.to_string()),
            input(t("dH, bearing taller by"), thick(height)),
            input("s", mesh_sign.to_string()),
            input(t("dM, mounting distance larger by"), thick(mounting)),
            input(t("dD, case distance larger by"), thick(case)),
        ],
        source: t("Lengths in one line; the spread of 0.10 is common practice, no source.")
            .to_owned(),
    }
}

fn with_spread(value: f64, sigma: f64, shown: Shown) -> String {
    format!("{} ± {}", number(value, 2, shown), number(2.0 * sigma, 2, shown))
}

fn number(value: f64, places: u32, shown: Shown) -> String {
    let value = real::to_decimal(value, 6).unwrap_or_else(|| length(value));
    show(value, places, shown.mark)
}
