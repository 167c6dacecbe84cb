//! One answer as JSON.

use measure::{Decimal, Judgement, Verdict, real};
use serde_json::{Value, json};
use workshop::{Basis, Caution, Explanation, Figure, Given};

/// Decimals of an uncertainty.
const PLACES: u32 = 12;

/// A figure with its unit and standard uncertainty.
pub fn figure(figure: &Figure) -> Value {
    json!({
        "value": figure.value.normalize(),
        "unit": figure.unit,
        "u": decimal(figure.standard()),
    })
}

/// A verdict and its probability.
pub fn judged(judgement: Option<Judgement>) -> Option<Value> {
    let Judgement { verdict, probability } = judgement?;
    let word = match verdict {
        Verdict::InBand => "in band",
        Verdict::NearLimit => "near limit",
        Verdict::Out => "out",
        Verdict::CannotProve => "cannot prove",
    };
    Some(json!({ "verdict": word, "probability": decimal(probability) }))
}

/// The whole answer.
pub fn answered(
    bench: &str,
    figures: Value,
    judged: Option<Value>,
    cautions: &[Caution],
    explanation: Option<&Explanation>,
) -> Value {
    let cautions: Vec<String> = cautions.iter().map(Caution::to_string).collect();
    json!({
        "bench": bench,
        "figures": figures,
        "judged": judged,
        "cautions": cautions,
        "reckoned": explanation.map(reckoned),
    })
}

fn reckoned(explanation: &Explanation) -> Value {
    let source = match explanation.basis {
        Basis::Published(source) | Basis::Derived(source) => source,
        Basis::CommonPractice => "common practice, no source",
    };
    let given: Vec<Value> = explanation.given.iter().map(given).collect();
    json!({ "formula": explanation.formula, "given": given, "source": source })
}

fn given(given: &Given) -> Value {
    json!({
        "name": given.name,
        "value": given.value.normalize(),
        "unit": given.unit,
        "u": decimal(given.standard),
    })
}

fn decimal(real: f64) -> Option<Decimal> {
    real::to_decimal(real, PLACES).map(|decimal| decimal.normalize())
}
