//! Whether a book admits a fact.

use measure::{Band, Decimal, Quantity, Typed};

use crate::{
    Book, BookId, Check, Counted, Fact, Field, FieldValue, FittedShim, Kind, Position, Refusal,
    Sheet, Tin, field,
};

/// Whether the book admits the fact as its next.
pub(crate) fn admit(book: &Book, fact: &Fact) -> Result<(), Refusal> {
    if let Fact::EntryRetracted { entry, .. } = fact {
        return retractable(book, entry);
    }
    match book.id() {
        BookId::Sheet(_) => sheet(book, fact),
        BookId::Tin => tin(book, fact),
        BookId::Job(_) => job(book, fact),
    }
}

/// Whether the book as it was may become the book as it is.
pub(crate) fn admit_together(before: &Book, after: &Book) -> Result<(), Refusal> {
    match after.id() {
        BookId::Tin => shims_are_there(&Tin::fold(before), &Tin::fold(after)),
        BookId::Sheet(_) => bands_are_bands(&Sheet::fold(before), &Sheet::fold(after)),
        BookId::Job(_) => Ok(()),
    }
}

/// No shim is taken that is not in the tin, and none vanishes while it is in a case.
fn shims_are_there(before: &Tin, after: &Tin) -> Result<(), Refusal> {
    if before.shims().any(|shim| shim.in_cases() > 0 && after.shim(&shim.id).is_none()) {
        return Err(Refusal::InUse);
    }
    for shim in after.shims().filter(|shim| shim.count < 0) {
        let had = before.shim(&shim.id).map_or(0, |shim| shim.count);
        if shim.count < had {
            let left = u32::try_from(had.max(0)).unwrap_or(u32::MAX);
            let asked = u32::try_from(had.saturating_sub(shim.count)).unwrap_or(u32::MAX);
            let shim = measure::show(shim.net(), 3, measure::Mark::Point);
            return Err(Refusal::TooFew { shim, left, asked });
        }
    }
    Ok(())
}

/// Low, high and aim of each check that changed still make a band.
fn bands_are_bands(before: &Sheet, after: &Sheet) -> Result<(), Refusal> {
    for check in Check::ALL {
        let (low, high, aim) = field::limits(check);
        let fields = [Some(low), Some(high), aim];
        let changed =
            fields.into_iter().flatten().any(|field| before.value(field) != after.value(field));
        let limits = (after.millimetres(low), after.millimetres(high));
        if let (true, (Some(low), Some(high))) = (changed, limits) {
            let band = Band::new(low, high).map_err(Refusal::Band)?;
            if let Some(aim) = aim.and_then(|aim| after.millimetres(aim)) {
                band.with_aim(aim).map_err(Refusal::Band)?;
            }
        }
    }
    Ok(())
}

fn retractable(book: &Book, id: &str) -> Result<(), Refusal> {
    let opening = |fact: &Fact| matches!(fact, Fact::SheetOpened { .. } | Fact::JobOpened { .. });
    let found = book.live().into_iter().any(|entry| entry.id == id && !opening(&entry.fact));
    found.then_some(()).ok_or(Refusal::NotRetractable)
}

fn opened(book: &Book) -> Result<(), Refusal> {
    if book.live().is_empty() { Err(Refusal::NotOpened) } else { Ok(()) }
}

fn opening(book: &Book, what: &'static str, name: &str) -> Result<(), Refusal> {
    written(what, name)?;
    if book.live().is_empty() { Ok(()) } else { Err(Refusal::OpenedBefore) }
}

fn written(what: &'static str, text: &str) -> Result<(), Refusal> {
    if text.trim().is_empty() { Err(Refusal::Nothing { what }) } else { Ok(()) }
}

fn sheet(book: &Book, fact: &Fact) -> Result<(), Refusal> {
    match fact {
        Fact::SheetOpened { name, layout } => {
            opening(book, "the unit's name", name)?;
            known(layout == "b", layout)
        }
        Fact::FieldTyped { field, value } => {
            opened(book)?;
            fits(*field, value)
        }
        Fact::FieldCleared { .. } => opened(book),
        Fact::VariantChosen { slot, position: None } => {
            opened(book)?;
            known(slot.may_be_absent(), slot.tag())
        }
        Fact::VariantChosen { slot, position: Some(id) } => {
            opened(book)?;
            known(Position::named(id).is_some_and(|position| position.slot == *slot), id)
        }
        Fact::SignConfirmed { position } => {
            opened(book)?;
            known(Position::named(position).is_some(), position)
        }
        Fact::SignOverridden { position, reason } => {
            opened(book)?;
            known(Position::named(position).is_some(), position)?;
            written("the reason", reason)
        }
        _ => Err(Refusal::WrongBook { book: book.id().clone() }),
    }
}

fn known(is: bool, found: &str) -> Result<(), Refusal> {
    if is { Ok(()) } else { Err(Refusal::Unknown { found: found.to_owned() }) }
}

/// Whether a field takes the value at all.
fn fits(field: Field, value: &FieldValue) -> Result<(), Refusal> {
    let facts = field.facts();
    let fits = match (facts.kind, value) {
        (Kind::Length { .. }, FieldValue::Number(typed)) => {
            typed.unit().quantity() == Quantity::Length && above_zero(typed)
        }
        (Kind::Angle, FieldValue::Number(typed)) => {
            typed.unit().quantity() == Quantity::Angle && typed.amount().value >= Decimal::ZERO
        }
        (Kind::Teeth, FieldValue::Count(count)) => *count > 0,
        (Kind::Choice(choices), FieldValue::Word(word)) => choices.iter().any(|(id, _)| id == word),
        (Kind::Text, FieldValue::Word(word)) => !word.trim().is_empty(),
        _ => false,
    };
    if fits { Ok(()) } else { Err(Refusal::WrongValue { field: facts.name }) }
}

fn tin(book: &Book, fact: &Fact) -> Result<(), Refusal> {
    let tin = Tin::fold(book);
    match fact {
        Fact::ShimsAdded { shim, family, places, zero, marked, count } => {
            written("the shim's name", shim)?;
            written("the kind of shim", family)?;
            if tin.shim(shim).is_some() {
                return Err(Refusal::ShimNameTaken);
            }
            let [one, other] = places;
            let lengths = [Some(one), Some(other), Some(zero), marked.as_ref()];
            let are_lengths = lengths.into_iter().flatten().all(is_length);
            let fits = are_lengths && above_zero(one) && above_zero(other) && *count > 0;
            if fits { Ok(()) } else { Err(Refusal::WrongValue { field: "shim" }) }
        }
        Fact::ShimCameOut { shim, family, net, .. } => {
            written("the shim's name", shim)?;
            written("the kind of shim", family)?;
            if tin.shim(shim).is_some() {
                return Err(Refusal::ShimNameTaken);
            }
            let fits = is_length(net) && above_zero(net);
            if fits { Ok(()) } else { Err(Refusal::WrongValue { field: "shim" }) }
        }
        Fact::ShimsCounted { shim, change, why } => {
            tin.shim(shim).ok_or(Refusal::NoSuchShim)?;
            let fits = match why {
                Counted::Found | Counted::PutBack { .. } => *change > 0,
                Counted::Lost | Counted::Taken { .. } => *change < 0,
            };
            if fits { Ok(()) } else { Err(Refusal::WrongValue { field: "number of shims" }) }
        }
        Fact::ShimRejected { shim, .. } => tin.shim(shim).map(|_| ()).ok_or(Refusal::NoSuchShim),
        _ => Err(Refusal::WrongBook { book: book.id().clone() }),
    }
}

fn job(book: &Book, fact: &Fact) -> Result<(), Refusal> {
    match fact {
        Fact::JobOpened { boat, sheet, .. } => {
            opening(book, "the boat", boat)?;
            written("the unit sheet", sheet)
        }
        Fact::PackFitted { shims, .. } => {
            opened(book)?;
            if shims.is_empty() {
                return Err(Refusal::Nothing { what: "the pack" });
            }
            let fits = shims.iter().all(|shim| {
                let is_thick = shim.net() > Decimal::ZERO;
                is_thick && !matches!(shim, FittedShim::Measured(typed) if !is_length(typed))
            });
            if fits { Ok(()) } else { Err(Refusal::WrongValue { field: "pack" }) }
        }
        Fact::ReadingTaken { check, values, arm, on } => {
            opened(book)?;
            let found = values.len();
            if found != check.stops().len() {
                return Err(Refusal::Count { check: *check, found });
            }
            if !values.iter().all(|value| is_length(value) && !below_zero(value)) {
                return Err(Refusal::WrongValue { field: "reading" });
            }
            let has_arm =
                on.is_some() && arm.as_ref().is_some_and(|arm| is_length(arm) && above_zero(arm));
            if check.has_arm() && !has_arm {
                return Err(Refusal::NoArm { check: *check });
            }
            Ok(())
        }
        Fact::NoteWritten { text } => {
            opened(book)?;
            written("the note", text)
        }
        _ => Err(Refusal::WrongBook { book: book.id().clone() }),
    }
}

fn is_length(typed: &Typed) -> bool {
    typed.unit().quantity() == Quantity::Length
}

fn above_zero(typed: &Typed) -> bool {
    typed.amount().value > Decimal::ZERO
}

fn below_zero(typed: &Typed) -> bool {
    typed.amount().value < Decimal::ZERO
}
