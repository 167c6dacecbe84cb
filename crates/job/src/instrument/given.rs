//! What was typed into an instrument, read field by field; what cannot be read is noted at its field.

use measure::{Amount, Decimal, EntryError, Series, Sign, Typed, Unit};
use words::t;
use workshop::{Reading, Refusal};

use super::shown::Writing;
use super::{Alarm, Asked, RefusedAt, Takes, Values};
use crate::{Shown, Units};

/// What was typed.
pub(super) struct Given<'a> {
    fields: &'static [Asked],
    values: &'a Values,
    shown: Shown,
    /// The units of whoever reads the answer on paper.
    pub reader: Option<Units>,
    /// Texts that are not taken.
    pub refused: Vec<RefusedAt>,
    /// Labels of what is still wanted.
    pub wanted: Vec<&'static str>,
    /// What can hurt a person now.
    pub alarm: Option<Alarm>,
}

impl<'a> Given<'a> {
    pub fn of(fields: &'static [Asked], values: &'a Values, shown: Shown) -> Given<'a> {
        Given {
            fields,
            values,
            shown,
            reader: None,
            refused: Vec::new(),
            wanted: Vec::new(),
            alarm: None,
        }
    }

    /// How figures are written: in the unit typed at that field, unless a reader has units of their
    /// own.
    pub fn writing(&mut self, id: &str) -> Writing {
        let typed = self.there(id).into_iter().flatten().next();
        let unit = typed.map(|typed| typed.unit());
        Writing { unit, reader: self.reader, mark: self.shown.mark }
    }

    /// The number of a field; where there is none, it is noted as wanted.
    pub fn number(&mut self, id: &str) -> Option<Typed> {
        self.numbers(id).into_iter().next().flatten()
    }

    /// The same as a reading.
    pub fn reading(&mut self, id: &str) -> Option<Reading> {
        self.number(id).map(|typed| Reading::typed(&typed))
    }

    /// The same as an amount without doubt: a limit.
    pub fn amount(&mut self, id: &str) -> Option<Amount> {
        self.number(id).map(|typed| typed.amount())
    }

    /// The number at each place of a field, empty places too; where there is none, it is noted as wanted.
    pub fn numbers(&mut self, id: &str) -> Vec<Option<Typed>> {
        let read = self.there(id);
        let is_asked = self.fields.iter().any(|asked| asked.id == id && !asked.optional);
        if is_asked && read.iter().all(Option::is_none) {
            self.want_field(id);
        }
        read
    }

    /// The same of a field that need not be typed yet.
    pub fn there(&mut self, id: &str) -> Vec<Option<Typed>> {
        let Some(asked) = self.fields.iter().find(|asked| asked.id == id) else {
            return Vec::new();
        };
        let sign = match asked.takes {
            Takes::Number(_, sign) | Takes::Numbers(_, sign, _) | Takes::Usual(_, sign, _) => sign,
            Takes::Times(_) | Takes::Acts(_) => Sign::NotNegative,
            _ => return Vec::new(),
        };
        let Some(unit) = self.unit_of(asked) else { return Vec::new() };
        let texts = self.values.get(id).map(Vec::as_slice).unwrap_or_default();
        let mut read = Vec::new();
        for text in texts {
            read.push(if text.trim().is_empty() {
                None
            } else {
                self.read(asked, text, unit, sign)
            });
        }
        read
    }

    /// The unit a number of a field is typed in; `None` for words.
    ///
    /// That chosen in this form; else that this person reads; else the one the table names.
    pub fn unit_of(&self, asked: &Asked) -> Option<Unit> {
        let unit = match asked.takes {
            Takes::Number(unit, _) | Takes::Numbers(unit, ..) | Takes::Usual(unit, ..) => unit,
            Takes::Times(_) | Takes::Acts(_) => Unit::Minute,
            Takes::One(_)
            | Takes::Cards(_)
            | Takes::Unit(_)
            | Takes::Words
            | Takes::Ticks
            | Takes::Fold => return None,
        };
        let chosen = self.fields.iter().filter(|it| matches!(it.takes, Takes::Unit(_)));
        let texts = chosen.filter_map(|it| self.values.get(it.id)?.first());
        let mut chosen = texts.filter_map(|text| Unit::parse(text));
        let chosen = chosen.find(|it| it.quantity() == unit.quantity());
        Some(chosen.unwrap_or_else(|| self.shown.units.of(unit)))
    }

    /// How many were counted.
    pub fn count(&mut self, id: &str) -> Option<u32> {
        self.number(id).and_then(|typed| typed.amount().value.try_into().ok())
    }

    /// The mean of the numbers of a field: their scatter, or their own step where that is more, is
    /// its doubt.
    pub fn mean(&mut self, id: &str) -> Option<Reading> {
        let typed: Vec<Typed> = self.numbers(id).into_iter().flatten().collect();
        let unit = typed.first()?.unit();
        let step = typed.iter().map(|it| Reading::typed(it).standard).fold(0.0, f64::max);
        let series = Series::new(typed.iter().map(|it| it.in_unit(unit)).collect()).ok()?;
        let scatter = series.deviation().map(|it| it / (typed.len() as f64).sqrt());
        Some(Reading::exact(series.mean(), unit).within(scatter.unwrap_or_default().max(step)))
    }

    /// The word chosen or typed; one that is no choice of its field is as good as none.
    pub fn word(&mut self, id: &str) -> Option<&'a str> {
        let asked = self.fields.iter().find(|asked| asked.id == id)?;
        let text = self.values.get(id).and_then(|texts| texts.first()).map(|text| text.trim());
        let text = text.filter(|text| match asked.takes {
            Takes::One(words) | Takes::Cards(words) => words.contains(text),
            _ => !text.is_empty(),
        });
        if text.is_none() && !asked.optional {
            self.want(asked.label);
        }
        text
    }

    /// What the stages of a sequence were ticked at.
    pub fn ticks(&self, id: &str) -> &'a [String] {
        self.values.get(id).map(Vec::as_slice).unwrap_or_default()
    }

    /// Takes a result, or notes why not at a field.
    pub fn at<T>(&mut self, field: &'static str, found: Result<T, Refusal>) -> Option<T> {
        found.map_err(|why| self.refuse(field, why.to_string())).ok()
    }

    /// Notes why a field's text is not taken; the first word at a field stands.
    pub fn refuse(&mut self, field: &'static str, says: String) {
        if self.refused.iter().all(|refused| refused.field != field) {
            self.refused.push(RefusedAt { field, says });
        }
    }

    /// The texts of a field as they are kept.
    pub fn texts(&mut self, asked: &Asked) -> Vec<String> {
        match asked.takes {
            Takes::Number(..)
            | Takes::Numbers(..)
            | Takes::Usual(..)
            | Takes::Times(_)
            | Takes::Acts(_) => {
                let text =
                    |typed: Option<Typed>| typed.map(|it| it.to_string()).unwrap_or_default();
                self.numbers(asked.id).into_iter().map(text).collect()
            }
            Takes::Ticks => self.ticks(asked.id).to_vec(),
            Takes::Fold => Vec::new(),
            Takes::One(_) | Takes::Cards(_) | Takes::Unit(_) | Takes::Words => {
                self.word(asked.id).map(str::to_owned).into_iter().collect()
            }
        }
    }

    fn read(&mut self, asked: &Asked, text: &str, unit: Unit, sign: Sign) -> Option<Typed> {
        let read = Typed::parse(text, unit, sign);
        read.map_err(|why: EntryError| self.refuse(asked.id, why.to_string())).ok()
    }

    /// Notes that a field is wanted after all.
    pub fn want_field(&mut self, id: &str) {
        if let Some(asked) = self.fields.iter().find(|asked| asked.id == id) {
            self.want(asked.label);
        }
    }

    fn want(&mut self, label: &'static str) {
        let label = t(label);
        if !self.wanted.contains(&label) {
            self.wanted.push(label);
        }
    }
}

/// A whole number as a decimal.
pub(super) fn whole(number: usize) -> Decimal {
    Decimal::from(number)
}
