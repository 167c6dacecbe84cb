//! The stages of the unit sheet in a leak test: what choosing one fills in, and where that is from.

use measure::Typed;
use words::{key, say, t};

use super::{Asked, Given, Instrument, Values, leak};
use crate::{Field, LeakPart, LeakStage, Sheet, Shown};

const STAGE: &str = "stage";
const BECAUSE: &str = "because";
/// Where the numbers of the plan are from.
pub(super) const SOURCE: &str = "source";

/// The numbers of the plan, and what of a stage fills each.
const NUMBERS: [(&str, LeakPart); 4] = [
    ("limit", LeakPart::Limit),
    ("pressure", LeakPart::Pressure),
    ("time", LeakPart::Time),
    ("most-lost", LeakPart::MostLost),
];

/// The words of the stages in the check.
const STAGES: [(&str, LeakStage); 3] = [
    (key!("low"), LeakStage::Low),
    (key!("working"), LeakStage::Working),
    (key!("vacuum"), LeakStage::Vacuum),
];

impl Instrument {
    /// What else changes in the form when a field does, field and text: a stage takes what the unit
    /// sheet asks of it, but where something else was typed; and the numbers are said to be from there
    /// as long as they are.
    pub fn follows(
        &self,
        changed: &str,
        before: &Values,
        after: &Values,
        sheet: &Sheet,
        shown: Shown,
    ) -> Vec<(&'static str, String)> {
        if self.kind != leak::LEAK.kind {
            return Vec::new();
        }
        let asks = Asks::of(sheet, text(after, STAGE));
        let agrees = |(id, asked): &(&str, Typed)| {
            self.typed(id, after, shown).is_some_and(|typed| agree(&typed, asked))
        };
        if changed == STAGE {
            let before = Asks::of(sheet, text(before, STAGE));
            let is_free = |id: &str| {
                let typed = text(after, id);
                typed.is_empty() || typed == before.text(id)
            };
            let are_theirs = asks.numbers.iter().all(|number| is_free(number.0) || agrees(number));
            let filled =
                |id| (id, if id == SOURCE && !are_theirs { String::new() } else { asks.text(id) });
            let fields = NUMBERS.iter().map(|(id, _)| *id).chain([BECAUSE, SOURCE]);
            return fields.filter(|id| is_free(id)).map(filled).collect();
        }
        let is_number = NUMBERS.iter().any(|(id, _)| *id == changed);
        let (source, now) = (asks.text(SOURCE), text(after, SOURCE));
        match asks.numbers.iter().all(agrees) {
            true if is_number && now.is_empty() => vec![(SOURCE, source)],
            false if is_number && now == source => vec![(SOURCE, String::new())],
            _ => Vec::new(),
        }
    }

    /// What the unit sheet says where something else is typed; `None` where they agree.
    pub fn otherwise(
        &self,
        asked: &Asked,
        values: &Values,
        sheet: &Sheet,
        shown: Shown,
    ) -> Option<String> {
        let stage = stage(text(values, STAGE)).filter(|_| self.kind == leak::LEAK.kind)?;
        if asked.id == STAGE {
            let because = sheet.no_leak_stage(stage)?.trim_end_matches('.');
            return Some(say!("The unit sheet says that this unit has no such stage: {because}."));
        }
        let (_, part) = NUMBERS.iter().find(|(id, _)| *id == asked.id)?;
        let theirs = sheet.number(stage.field(*part))?;
        let typed = self.typed(asked.id, values, shown)?;
        (!agree(&typed, theirs)).then(|| say!("The unit sheet says {theirs}."))
    }

    fn typed(&self, id: &str, values: &Values, shown: Shown) -> Option<Typed> {
        Given::of(self.fields, values, shown).there(id).into_iter().flatten().next()
    }
}

/// What stands under the word of a stage from the unit sheet: "84 kPa"; empty where it says nothing.
pub(super) fn note(sheet: &Sheet, word: &str) -> String {
    let Some(stage) = stage(word) else { return String::new() };
    if sheet.no_leak_stage(stage).is_some() {
        return t("not on this unit").to_owned();
    }
    sheet.number(stage.field(LeakPart::Pressure)).map(Typed::to_string).unwrap_or_default()
}

/// Whether two numbers are the same amount, whatever their units.
fn agree(one: &Typed, other: &Typed) -> bool {
    let unit = other.unit();
    one.unit().quantity() == unit.quantity() && one.in_unit(unit) == other.in_unit(unit)
}

fn stage(word: &str) -> Option<LeakStage> {
    STAGES.iter().find(|(own, _)| *own == word).map(|(_, stage)| *stage)
}

fn text<'a>(values: &'a Values, id: &str) -> &'a str {
    values.get(id).and_then(|texts| texts.first()).map(|text| text.trim()).unwrap_or_default()
}

/// What the unit sheet asks of a stage.
#[derive(Default)]
struct Asks {
    numbers: Vec<(&'static str, Typed)>,
    /// Why there is none, for the word that says so.
    because: String,
    source: String,
}

impl Asks {
    fn of(sheet: &Sheet, word: &str) -> Asks {
        if word == leak::NOT_APPLICABLE {
            return Asks { because: reasons(sheet), ..Asks::default() };
        }
        let Some(stage) = stage(word) else { return Asks::default() };
        let number = |(id, part): &(&'static str, LeakPart)| {
            Some((*id, sheet.number(stage.field(*part))?.clone()))
        };
        let numbers: Vec<_> = NUMBERS.iter().filter_map(number).collect();
        let source = match sheet.word(Field::LeakSource) {
            _ if numbers.is_empty() => String::new(),
            Some(source) => say!("unit sheet, {source}"),
            None => t("unit sheet").to_owned(),
        };
        Asks { numbers, source, ..Asks::default() }
    }

    fn text(&self, id: &str) -> String {
        match id {
            BECAUSE => self.because.clone(),
            SOURCE => self.source.clone(),
            _ => {
                let number = self.numbers.iter().find(|(own, _)| *own == id);
                number.map(|(_, typed)| typed.to_string()).unwrap_or_default()
            }
        }
    }
}

/// Every stage that the unit has not, with its reason.
fn reasons(sheet: &Sheet) -> String {
    let of_stage = |(word, stage): &(&'static str, LeakStage)| {
        let because = sheet.no_leak_stage(*stage)?;
        Some(say!("{stage}: {because}", stage = t(word)))
    };
    STAGES.iter().filter_map(of_stage).collect::<Vec<_>>().join("; ")
}
