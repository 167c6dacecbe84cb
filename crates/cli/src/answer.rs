//! One line out: the advice, or what is wrong with the line.

use gearing::advice::{Advice, Alarm, Cause, CauseKind, Prediction, Status};
use gearing::case::Case;
use measure::{Decimal, real};
use serde::ser::SerializeMap;
use serde::{Serialize, Serializer};
use serde_json::{Value, json};

/// Decimals of a prediction.
const PLACES: u32 = 9;

/// An answer as it is written.
#[derive(Debug, Serialize)]
#[serde(untagged)]
pub enum Answer {
    /// Advice.
    Advice(Box<AdviceLine>),
    /// What is wrong with the line.
    Refusal {
        /// The line's name, or null.
        case: Value,
        /// The field's path, what was found and what was expected.
        error: String,
    },
}

/// Advice as it is written.
#[derive(Debug, Serialize)]
pub struct AdviceLine {
    case: Value,
    status: &'static str,
    packs: Named<Vec<Decimal>>,
    opens: Vec<String>,
    minutes: u32,
    predicted: Named<Predicted>,
    probability_all_in_band: Option<f64>,
    alarms: Vec<Value>,
    buy: Vec<Value>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    conflicts: Vec<Value>,
    #[serde(skip_serializing_if = "Vec::is_empty")]
    need: Vec<String>,
}

/// An object whose names keep their order.
#[derive(Debug)]
struct Named<T>(Vec<(String, T)>);

impl<T: Serialize> Serialize for Named<T> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(Some(self.0.len()))?;
        for (name, value) in &self.0 {
            map.serialize_entry(name, value)?;
        }
        map.end()
    }
}

#[derive(Debug, Serialize)]
struct Predicted {
    mean: Option<Decimal>,
    sigma: Option<Decimal>,
}

impl From<Prediction> for Predicted {
    fn from(prediction: Prediction) -> Predicted {
        Predicted { mean: decimal(prediction.mean), sigma: decimal(prediction.sigma) }
    }
}

/// Writes advice in the names of its case.
pub fn advice_line(name: Value, case: &Case, advice: Advice) -> AdviceLine {
    let check = |index: usize| case.checks.get(index).map_or_else(String::new, |c| c.id.clone());
    let position =
        |index: usize| case.positions.get(index).map_or_else(String::new, |p| p.id.clone());
    let packs = advice.packs.into_iter().enumerate().map(|(index, pack)| (position(index), pack));
    let predicted = advice
        .predicted
        .into_iter()
        .enumerate()
        .filter_map(|(index, prediction)| Some((check(index), Predicted::from(prediction?))));
    let conflicts = advice.conflicts.iter().map(|conflict| {
        let checks: Vec<String> = conflict.checks.iter().map(|&index| check(index)).collect();
        json!({ "checks": checks, "excess_mm": decimal(conflict.excess) })
    });
    let buy = advice.buy.iter().map(
        |line| json!({ "family": line.family, "thickness": line.thickness, "count": line.count }),
    );
    AdviceLine {
        case: name,
        status: status(advice.status),
        packs: Named(packs.collect()),
        opens: advice.opens.iter().map(|&index| position(index)).collect(),
        minutes: advice.minutes,
        predicted: Named(predicted.collect()),
        probability_all_in_band: (advice.status != Status::NeedReading)
            .then_some(advice.probability),
        alarms: advice.alarms.iter().map(|one| alarm(one, &check, &position)).collect(),
        buy: buy.collect(),
        conflicts: conflicts.collect(),
        need: advice.need.iter().map(|&index| check(index)).collect(),
    }
}

fn status(status: Status) -> &'static str {
    match status {
        Status::NeedReading => "need_reading",
        Status::Done => "done",
        Status::Conflict => "conflict",
        Status::StockShort => "stock_short",
        Status::Fit => "fit",
    }
}

fn alarm(
    alarm: &Alarm,
    check: &impl Fn(usize) -> String,
    position: &impl Fn(usize) -> String,
) -> Value {
    match alarm {
        Alarm::ReadAgain { check: index } => json!({
            "alarm": "read again",
            "check": check(*index),
            "why": "in band, but too near the limit to be sure",
        }),
        Alarm::TightSpot { check: index } => json!({
            "alarm": "tight spot",
            "check": check(*index),
            "why": "the smallest reading of the series is below the band: runout or a cocked race",
        }),
        Alarm::Surprise { off, causes } => {
            let off = off
                .iter()
                .enumerate()
                .filter_map(|(index, off)| Some((check(index), decimal((*off)?))));
            let causes: Vec<Value> = causes.iter().map(|one| cause(one, check, position)).collect();
            json!({
                "alarm": "not as predicted",
                "sigmas_off": off.collect::<std::collections::BTreeMap<_, _>>(),
                "causes": causes,
            })
        }
        Alarm::NotLoaded { check: index, play } => json!({
            "alarm": "perhaps not loaded the running way",
            "check": check(*index),
            "why": format!(
                "off by about what {} lets the member move: load it the running way and read again",
                check(*play)
            ),
        }),
        Alarm::Doubtful => json!({
            "alarm": "doubtful",
            "why": "more likely to miss than to land: read again first, or find other sizes",
        }),
    }
}

fn cause(
    cause: &Cause,
    check: &impl Fn(usize) -> String,
    position: &impl Fn(usize) -> String,
) -> Value {
    let mut value = match &cause.kind {
        CauseKind::AsPlanned => json!({ "cause": "chance: built as planned" }),
        CauseKind::OtherSign { position: index } => {
            json!({ "cause": "sign the other way", "position": position(*index) })
        }
        CauseKind::Swapped { first, second } => {
            json!({ "cause": "packs swapped", "positions": [position(*first), position(*second)] })
        }
        CauseKind::NotChanged { position: index } => {
            json!({ "cause": "pack not changed", "position": position(*index) })
        }
        CauseKind::ShimMissing { position: index, thickness } => json!({
            "cause": "shim missing", "position": position(*index), "thickness": thickness,
        }),
        CauseKind::NotSeated { position: index } => {
            json!({ "cause": "not seated or dirt", "position": position(*index) })
        }
        CauseKind::Slip { check: index, factor } => json!({
            "cause": "slip of unit or decimal", "check": check(*index), "times": factor,
        }),
        CauseKind::OtherShaft { factor } => {
            json!({ "cause": "arm on the other shaft", "times": factor })
        }
    };
    if let Some(fields) = value.as_object_mut() {
        fields.insert("share".to_owned(), json!(cause.share));
    }
    value
}

/// A number as a decimal string.
fn decimal(real: f64) -> Option<Decimal> {
    real::to_decimal(real, PLACES).map(|decimal| decimal.normalize())
}
