//! Inspection: what makes a part scrap, one to watch, or good, and what a verdict changes.

use words::{say, t};

use super::log::{GuideLog, Judged};
use crate::Guided;
use crate::guided::{PartVerdict, REJECTED};
use crate::json::{Json, Keys};
use crate::procedure::{Plan, ProcedureError, Scope};

/// What a part is judged by. Common practice, no source; the unit's own manual goes first.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Criteria {
    /// Its id: `taper-bearings`.
    pub part: String,
    /// "Tapered bearings and races".
    pub name: String,
    /// Layouts that have it.
    pub layouts: Vec<String>,
    /// Signs that reject it.
    pub reject: Vec<String>,
    /// Signs to watch.
    pub watch: Vec<String>,
    /// Signs that it is good.
    pub reuse: Vec<String>,
    /// The scope a rejection needs at least.
    pub widens: Option<Scope>,
    /// What a rejection orders.
    pub order: String,
    /// What to mind; may be empty.
    pub note: String,
}

/// A part with its verdict.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PartView {
    /// What it is judged by.
    pub criteria: Criteria,
    /// The verdict; `None` while it is open.
    pub judged: Option<Judged>,
    /// What is missing: "no photo of what was rejected"; empty where nothing is.
    pub missing: String,
}

/// What the verdicts change.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Effect {
    /// The scope they need, where it is wider than the plan's.
    pub widens_to: Option<Scope>,
    /// What to order, in the order judged.
    pub orders: Vec<String>,
    /// What to say: one sentence each.
    pub says: Vec<String>,
    /// Parts without a verdict.
    pub open: usize,
}

impl Criteria {
    /// Where the file lies on the site.
    pub const ADDRESS: &'static str = "/procedures/inspection-r1.jsonl";

    /// Reads the criteria from their file, one JSON object a line.
    ///
    /// # Errors
    /// [`ProcedureError`], whose `Display` says which line cannot be read.
    pub fn parse(text: &str) -> Result<Vec<Criteria>, ProcedureError> {
        (1usize..)
            .zip(text.lines())
            .map(|(line, text)| {
                let keys = match serde_json::from_str(text) {
                    Ok(Json::Map(keys)) => read(keys),
                    _ => None,
                };
                keys.ok_or(ProcedureError { line, what: t("the part").to_owned() })
            })
            .collect()
    }
}

fn read(mut keys: Keys) -> Option<Criteria> {
    let criteria = Criteria {
        part: keys.text("id")?,
        name: keys.text("name")?,
        layouts: keys.texts("layouts")?,
        reject: keys.texts("reject")?,
        watch: keys.texts("watch")?,
        reuse: keys.texts("reuse")?,
        widens: keys.maybe("widens", |name| Scope::named(&name.into_text()?))?,
        order: keys.text("order")?,
        note: keys.text("note")?,
    };
    keys.is_empty().then_some(criteria)
}

/// The parts of this plan's layout, each with its verdict.
pub fn inspection(criteria: &[Criteria], plan: &Plan, log: &GuideLog) -> Vec<PartView> {
    criteria
        .iter()
        .filter(|criteria| criteria.layouts.contains(&plan.layout))
        .map(|criteria| {
            let judged = log.judged.get(&criteria.part).cloned();
            let lacks_photo = judged.as_ref().is_some_and(|judged| {
                judged.verdict == PartVerdict::Reject && judged.photo.is_none()
            });
            PartView {
                criteria: criteria.clone(),
                judged,
                missing: if lacks_photo {
                    t("No photo of what was rejected.").to_owned()
                } else {
                    String::new()
                },
            }
        })
        .collect()
}

/// The verdict the ticked signs speak for: the worst of them; `None` without a sign.
pub fn suggest(criteria: &Criteria, ticked: &[String]) -> Option<PartVerdict> {
    let has = |signs: &[String]| signs.iter().any(|sign| ticked.contains(sign));
    if has(&criteria.reject) {
        Some(PartVerdict::Reject)
    } else if has(&criteria.watch) {
        Some(PartVerdict::Watch)
    } else {
        has(&criteria.reuse).then_some(PartVerdict::Reuse)
    }
}

/// What the verdicts change in scope and orders.
pub fn effects(parts: &[PartView], plan: &Plan) -> Effect {
    let mut effect = Effect {
        open: parts.iter().filter(|part| part.judged.is_none()).count(),
        ..Effect::default()
    };
    for part in parts {
        let rejected =
            part.judged.as_ref().is_some_and(|judged| judged.verdict == PartVerdict::Reject);
        if !rejected {
            continue;
        }
        let criteria = &part.criteria;
        effect.orders.push(criteria.order.clone());
        match criteria.widens {
            Some(Scope::Exchange) => effect.says.push(say!(
                "{part} rejected: repair with consent, or an exchange unit. Ask the owner.",
                part = t(&criteria.name)
            )),
            Some(scope) if scope > plan.scope => {
                effect.widens_to = effect.widens_to.max(Some(scope));
                effect.says.push(say!(
                    "{part} rejected: the scope becomes {scope}, and the packs are set up again.",
                    part = t(&criteria.name),
                    scope = scope.words().to_lowercase()
                ));
            }
            Some(_) => effect.says.push(say!(
                "{part} rejected: set up again the packs beside it.",
                part = t(&criteria.name)
            )),
            None => effect.says.push(say!(
                "{part} rejected: {order}.",
                part = t(&criteria.name),
                order = t(&criteria.order)
            )),
        }
    }
    effect
}

impl Effect {
    /// The fact that the scope becomes as wide as the verdicts need, for the parts they reject;
    /// `None`: it is wide enough.
    pub fn widening(&self, parts: &[PartView]) -> Option<Guided> {
        let rejected = parts.iter().filter(|part| {
            part.judged.as_ref().is_some_and(|judged| judged.verdict == PartVerdict::Reject)
        });
        let names: Vec<String> =
            rejected.map(|part| format!("{}{REJECTED}", part.criteria.name)).collect();
        Some(Guided::ScopeChosen { scope: self.widens_to?, reason: names.join(", ") })
    }

    /// The parts without a verdict and the rejects without a photo: one sentence each.
    pub fn to_judge(parts: &[PartView]) -> Vec<String> {
        let lacks = |part: &PartView| match &part.judged {
            None => Some(say!("{part}: no verdict.", part = t(&part.criteria.name))),
            Some(_) if part.missing.is_empty() => None,
            Some(_) => Some(format!("{}: {}", t(&part.criteria.name), part.missing)),
        };
        parts.iter().filter_map(lacks).collect()
    }
}
