//! How guided facts are written: one table for reading, one for writing. See WIRE.md.

use serde::de::Error;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use words::t;

use super::{Agreement, Answered, Capture, Guided, PartVerdict, Readied};
use crate::json::{Json, Keys};
use crate::procedure::Scope;

/// The version of the wire note that brought these kinds.
pub(crate) const VERSION: u32 = 2;

/// A guided fact as it stands in a line: an object with one key, its kind.
pub(crate) struct GuidedLine<T>(pub T);

impl Serialize for GuidedLine<&Guided> {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let (kind, keys) = written(self.0);
        Json::map(&[(kind, Json::map(&keys))]).serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for GuidedLine<Guided> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let unknown = || D::Error::custom(t("not a guided fact"));
        let Json::Map(keys) = Json::deserialize(deserializer)? else { return Err(unknown()) };
        let Some((kind, Json::Map(mut keys))) = keys.only() else { return Err(unknown()) };
        let fact = read(&kind, &mut keys).filter(|_| keys.is_empty());
        fact.map(GuidedLine).ok_or_else(unknown)
    }
}

fn read(kind: &str, keys: &mut Keys) -> Option<Guided> {
    Some(match kind {
        "procedure-pinned" => Guided::ProcedurePinned {
            layout: keys.text("layout")?,
            revision: keys.count("revision")?,
        },
        "scope-chosen" => Guided::ScopeChosen {
            scope: Scope::named(&keys.text("scope")?)?,
            reason: keys.text("reason")?,
        },
        "step-done" => Guided::StepDone { step: keys.text("step")? },
        "step-skipped" => {
            Guided::StepSkipped { step: keys.text("step")?, reason: keys.text("reason")? }
        }
        "step-reopened" => {
            Guided::StepReopened { step: keys.text("step")?, reason: keys.text("reason")? }
        }
        "gate-judged" => Guided::GateJudged {
            step: keys.text("step")?,
            passed: keys.take("passed").and_then(flag)?,
            by: keys.text("by")?,
            reason: keys.text("reason")?,
        },
        "captured" => Guided::Captured {
            step: keys.text("step")?,
            label: keys.text("label")?,
            value: Capture::from_json(keys.take("value")?)?,
        },
        "clock-started" => Guided::ClockStarted {
            clock: keys.text("clock")?,
            step: keys.text("step")?,
            label: keys.text("label")?,
            marks: keys.take("marks")?.into_list(Json::into_count)?,
        },
        "clock-stopped" => {
            Guided::ClockStopped { clock: keys.text("clock")?, reason: keys.text("reason")? }
        }
        "part-bagged" => Guided::PartBagged {
            number: keys.count("number")?,
            part: keys.text("part")?,
            step: keys.text("step")?,
            place: keys.text("place")?,
            facing: keys.text("facing")?,
            photo: keys.maybe("photo", Json::into_text)?,
        },
        "part-fitted" => Guided::PartFitted { number: keys.count("number")? },
        "part-judged" => Guided::PartJudged {
            part: keys.text("part")?,
            verdict: named(&PartVerdict::ALL, &keys.text("verdict")?)?,
            signs: keys.texts("signs")?,
            reason: keys.text("reason")?,
            photo: keys.maybe("photo", Json::into_text)?,
        },
        "consent-given" => Guided::ConsentGiven {
            by: keys.text("by")?,
            what: keys.text("what")?,
            limit: keys.text("limit")?,
        },
        "consent-signed" => Guided::ConsentSigned(Box::new(Agreement::read(keys)?)),
        // A no without a reason keeps the kind it had before reasons were kept.
        "consent-refused" => refused(String::new(), keys)?,
        "consent-refused-because" => {
            let reason = keys.text("reason")?;
            if reason.is_empty() {
                return None;
            }
            refused(reason, keys)?
        }
        "tool-readied" => Guided::ToolReadied {
            tool: keys.text("tool")?,
            how: named(&Readied::ALL, &keys.text("how")?)?,
            from: keys.text("from")?,
        },
        "bench-checked" => Guided::BenchChecked {
            step: keys.text("step")?,
            place: keys.text("place")?,
            kind: keys.text("kind")?,
            values: keys.take("values")?.into_map(|texts| texts.into_list(Json::into_text))?,
        },
        "step-added" => Guided::StepAdded {
            step: keys.text("step")?,
            after: keys.text("after")?,
            title: keys.text("title")?,
            why: keys.text("why")?,
            caution: keys.text("caution")?,
            records: keys.texts("records")?,
        },
        "step-dropped" => {
            Guided::StepDropped { step: keys.text("step")?, reason: keys.text("reason")? }
        }
        "step-moved" => Guided::StepMoved { step: keys.text("step")?, after: keys.text("after")? },
        "tool-kept" => Guided::ToolKept {
            tool: keys.text("tool")?,
            name: keys.text("name")?,
            number: keys.text("number")?,
        },
        "tool-named" => Guided::ToolNamed { tool: keys.text("tool")?, other: keys.text("other")? },
        "tool-corrected" => Guided::ToolCorrected {
            tool: keys.text("tool")?,
            wrong: keys.text("wrong")?,
            note: keys.text("note")?,
        },
        "tool-gone" => Guided::ToolGone { tool: keys.text("tool")?, why: keys.text("why")? },
        _ => return None,
    })
}

fn refused(reason: String, keys: &mut Keys) -> Option<Guided> {
    Some(Guided::ConsentRefused {
        step: keys.text("step")?,
        by: keys.text("by")?,
        how: Answered::named(&keys.text("how")?)?,
        work: keys.texts("work")?,
        reason,
        initials: keys.text("initials")?,
    })
}

fn flag(json: Json) -> Option<bool> {
    if let Json::Flag(flag) = json { Some(flag) } else { None }
}

fn named<T: Copy>(rows: &[(T, &str)], word: &str) -> Option<T> {
    rows.iter().find(|row| row.1 == word).map(|row| row.0)
}

type Written = (&'static str, Vec<(&'static str, Json)>);

fn written(fact: &Guided) -> Written {
    let text = |text: &String| Json::text(text);
    let maybe = |text: &Option<String>| Json::or_null(text.as_deref().map(Json::text));
    match fact {
        Guided::ProcedurePinned { layout, revision } => (
            "procedure-pinned",
            vec![("layout", text(layout)), ("revision", Json::number(*revision))],
        ),
        Guided::ScopeChosen { scope, reason } => {
            ("scope-chosen", vec![("scope", Json::text(scope.name())), ("reason", text(reason))])
        }
        Guided::StepDone { step } => ("step-done", vec![("step", text(step))]),
        Guided::StepSkipped { step, reason } => {
            ("step-skipped", vec![("step", text(step)), ("reason", text(reason))])
        }
        Guided::StepReopened { step, reason } => {
            ("step-reopened", vec![("step", text(step)), ("reason", text(reason))])
        }
        Guided::GateJudged { step, passed, by, reason } => (
            "gate-judged",
            vec![
                ("step", text(step)),
                ("passed", Json::Flag(*passed)),
                ("by", text(by)),
                ("reason", text(reason)),
            ],
        ),
        Guided::Captured { step, label, value } => (
            "captured",
            vec![("step", text(step)), ("label", text(label)), ("value", value.to_json())],
        ),
        Guided::ClockStarted { clock, step, label, marks } => (
            "clock-started",
            vec![
                ("clock", text(clock)),
                ("step", text(step)),
                ("label", text(label)),
                ("marks", Json::List(marks.iter().map(|mark| Json::number(*mark)).collect())),
            ],
        ),
        Guided::ClockStopped { clock, reason } => {
            ("clock-stopped", vec![("clock", text(clock)), ("reason", text(reason))])
        }
        Guided::PartBagged { number, part, step, place, facing, photo } => (
            "part-bagged",
            vec![
                ("number", Json::number(*number)),
                ("part", text(part)),
                ("step", text(step)),
                ("place", text(place)),
                ("facing", text(facing)),
                ("photo", maybe(photo)),
            ],
        ),
        Guided::PartFitted { number } => ("part-fitted", vec![("number", Json::number(*number))]),
        Guided::PartJudged { part, verdict, signs, reason, photo } => (
            "part-judged",
            vec![
                ("part", text(part)),
                ("verdict", Json::text(verdict.word())),
                ("signs", Json::texts(signs)),
                ("reason", text(reason)),
                ("photo", maybe(photo)),
            ],
        ),
        Guided::ConsentGiven { by, what, limit } => {
            ("consent-given", vec![("by", text(by)), ("what", text(what)), ("limit", text(limit))])
        }
        Guided::ConsentSigned(agreement) => ("consent-signed", agreement.written()),
        Guided::ConsentRefused { step, by, how, work, reason, initials } => {
            let mut keys = vec![
                ("step", text(step)),
                ("by", text(by)),
                ("how", Json::text(how.word())),
                ("work", Json::texts(work)),
            ];
            let kind = if reason.is_empty() {
                "consent-refused"
            } else {
                keys.push(("reason", text(reason)));
                "consent-refused-because"
            };
            keys.push(("initials", text(initials)));
            (kind, keys)
        }
        Guided::ToolReadied { tool, how, from } => (
            "tool-readied",
            vec![("tool", text(tool)), ("how", Json::text(how.word())), ("from", text(from))],
        ),
        Guided::BenchChecked { step, place, kind, values } => {
            let values: Vec<(&str, Json)> =
                values.iter().map(|(field, texts)| (field.as_str(), Json::texts(texts))).collect();
            (
                "bench-checked",
                vec![
                    ("step", text(step)),
                    ("place", text(place)),
                    ("kind", text(kind)),
                    ("values", Json::map(&values)),
                ],
            )
        }
        Guided::StepAdded { step, after, title, why, caution, records } => (
            "step-added",
            vec![
                ("step", text(step)),
                ("after", text(after)),
                ("title", text(title)),
                ("why", text(why)),
                ("caution", text(caution)),
                ("records", Json::texts(records)),
            ],
        ),
        Guided::StepDropped { step, reason } => {
            ("step-dropped", vec![("step", text(step)), ("reason", text(reason))])
        }
        Guided::StepMoved { step, after } => {
            ("step-moved", vec![("step", text(step)), ("after", text(after))])
        }
        Guided::ToolKept { tool, name, number } => (
            "tool-kept",
            vec![("tool", text(tool)), ("name", text(name)), ("number", text(number))],
        ),
        Guided::ToolNamed { tool, other } => {
            ("tool-named", vec![("tool", text(tool)), ("other", text(other))])
        }
        Guided::ToolCorrected { tool, wrong, note } => (
            "tool-corrected",
            vec![("tool", text(tool)), ("wrong", text(wrong)), ("note", text(note))],
        ),
        Guided::ToolGone { tool, why } => {
            ("tool-gone", vec![("tool", text(tool)), ("why", text(why))])
        }
    }
}
