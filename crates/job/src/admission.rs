//! Whether a book admits a fact.

use gearing::layout::Layout;
use measure::{Band, Decimal, Quantity, Typed};
use words::{say, t};

use crate::{
    Book, BookId, Counted, Fact, Field, FieldValue, FittedShim, Kind, PartMark, Position, Refusal,
    Sheet, Slot, Tin, field, guided, type_in,
};

/// Whether the book admits the fact as its next.
pub(crate) fn admit(book: &Book, fact: &Fact) -> Result<(), Refusal> {
    if let Fact::EntryRetracted { entry, .. } = fact {
        return retractable(book, entry);
    }
    if let Fact::Guided(fact) = fact {
        guided::admit(book.id(), fact)?;
        // The drawer needs no opening: like the tin, a device has one.
        return if *book.id() == BookId::Drawer { Ok(()) } else { opened(book) };
    }
    match book.id() {
        BookId::Sheet(_) => sheet(book, fact),
        BookId::Tin => tin(book, fact),
        BookId::Drawer => Err(Refusal::WrongBook { book: BookId::Drawer }),
        BookId::Job(_) => job(book, fact),
    }
}

/// Whether the book as it was may become the book as it is.
pub(crate) fn admit_together(before: &Book, after: &Book) -> Result<(), Refusal> {
    match after.id() {
        BookId::Tin => shims_are_there(&Tin::fold(before), &Tin::fold(after)),
        BookId::Sheet(_) => bands_are_bands(&Sheet::fold(before), &Sheet::fold(after)),
        BookId::Job(_) | BookId::Drawer => Ok(()),
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
    for check in after.limits() {
        let (low, high, aim) = field::limits(check);
        let fields = [Some(low), Some(high), aim];
        let changed =
            fields.into_iter().flatten().any(|field| before.value(field) != after.value(field));
        let in_unit = |field| after.number(field).map(|typed| typed.in_unit(check.unit()));
        if let (true, Some(low), Some(high)) = (changed, in_unit(low), in_unit(high)) {
            let band = Band::new(low, high).map_err(Refusal::Band)?;
            if type_in::spans_zero(check, &band) {
                return Err(Refusal::PlayAndPreload);
            }
            if let Some(aim) = aim.and_then(in_unit) {
                band.with_aim(aim).map_err(Refusal::Band)?;
            }
        }
    }
    Ok(())
}

fn retractable(book: &Book, id: &str) -> Result<(), Refusal> {
    let found = book.live().into_iter().any(|entry| entry.id == id && entry.fact.can_go());
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
            opening(book, t("the unit's name"), name)?;
            known(Layout::find(layout).is_some(), layout)
        }
        Fact::FieldTyped { field, value } => {
            opened(book)?;
            let is_here = Sheet::fold(book).fields().any(|facts| facts.field == *field);
            if !is_here {
                return Err(Refusal::NotOfLayout { what: field.facts().name().to_owned() });
            }
            fits(*field, value)
        }
        Fact::FieldCleared { .. } | Fact::ValueStands { .. } => opened(book),
        Fact::VariantChosen { slot, position: None } => {
            of_layout(book, *slot)?;
            known(slot.may_be_absent(), slot.tag())
        }
        Fact::VariantChosen { slot, position: Some(id) } => {
            let position = position(book, id)?;
            known(position.slot == *slot, id)
        }
        Fact::SignConfirmed { position: id } => position(book, id).map(drop),
        Fact::SignOverridden { position: id, reason } => {
            position(book, id)?;
            written(t("the reason"), reason)
        }
        Fact::BuildChosen { position: id, build } => {
            let builds = position(book, id)?.builds().count();
            let is_known = build.is_none_or(|build| (build as usize) < builds);
            known(is_known, t("Another build of this position"))
        }
        _ => Err(Refusal::WrongBook { book: book.id().clone() }),
    }
}

/// The position of that id, in a book whose layout has it.
fn position(book: &Book, id: &str) -> Result<Position, Refusal> {
    opened(book)?;
    let unknown = || Refusal::Unknown { found: id.to_owned() };
    let position = Position::named(id).ok_or_else(unknown)?;
    of_layout(book, position.slot)?;
    Ok(position)
}

fn of_layout(book: &Book, slot: Slot) -> Result<(), Refusal> {
    opened(book)?;
    let what = || say!("pack {tag}", tag = slot.tag());
    let is_here = Sheet::fold(book).slots().contains(&slot);
    if is_here { Ok(()) } else { Err(Refusal::NotOfLayout { what: what() }) }
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
        (Kind::Play, FieldValue::Number(typed)) => is_length(typed),
        (Kind::Torque, FieldValue::Number(typed)) => {
            typed.unit().quantity() == Quantity::Torque && above_zero(typed)
        }
        (Kind::Pressure, FieldValue::Number(typed)) => {
            typed.unit().quantity() == Quantity::Pressure && above_zero(typed)
        }
        (Kind::Time, FieldValue::Number(typed)) => {
            typed.unit().quantity() == Quantity::Time && above_zero(typed)
        }
        (Kind::Angle, FieldValue::Number(typed)) => {
            typed.unit().quantity() == Quantity::Angle && typed.amount().value >= Decimal::ZERO
        }
        (Kind::Teeth, FieldValue::Count(count)) => *count > 0,
        (Kind::Choice(choices), FieldValue::Word(word)) => choices.iter().any(|(id, _)| id == word),
        (Kind::Text, FieldValue::Word(word)) => !word.trim().is_empty(),
        _ => false,
    };
    if fits { Ok(()) } else { Err(Refusal::WrongValue { field: facts.name() }) }
}

fn tin(book: &Book, fact: &Fact) -> Result<(), Refusal> {
    let tin = Tin::fold(book);
    match fact {
        Fact::ShimsAdded { shim, family, places, zero, marked, count } => {
            written(t("the shim's name"), shim)?;
            written(t("the kind of shim"), family)?;
            if tin.shim(shim).is_some() {
                return Err(Refusal::ShimNameTaken);
            }
            let [one, other] = places;
            let lengths = [Some(one), Some(other), Some(zero), marked.as_ref()];
            let are_lengths = lengths.into_iter().flatten().all(is_length);
            let fits = are_lengths && above_zero(one) && above_zero(other) && *count > 0;
            if fits { Ok(()) } else { Err(Refusal::WrongValue { field: t("shim") }) }
        }
        Fact::ShimCameOut { shim, family, net, .. } => {
            written(t("the shim's name"), shim)?;
            written(t("the kind of shim"), family)?;
            if tin.shim(shim).is_some() {
                return Err(Refusal::ShimNameTaken);
            }
            let fits = is_length(net) && above_zero(net);
            if fits { Ok(()) } else { Err(Refusal::WrongValue { field: t("shim") }) }
        }
        Fact::ShimsCounted { shim, change, why } => {
            tin.shim(shim).ok_or(Refusal::NoSuchShim)?;
            let fits = match why {
                Counted::Found | Counted::PutBack { .. } => *change > 0,
                Counted::Lost | Counted::Taken { .. } => *change < 0,
            };
            if fits { Ok(()) } else { Err(Refusal::WrongValue { field: t("number of shims") }) }
        }
        Fact::ShimRejected { shim, .. } => tin.shim(shim).map(|_| ()).ok_or(Refusal::NoSuchShim),
        _ => Err(Refusal::WrongBook { book: book.id().clone() }),
    }
}

fn job(book: &Book, fact: &Fact) -> Result<(), Refusal> {
    match fact {
        Fact::JobOpened { boat, sheet, .. } => {
            opening(book, t("the boat"), boat)?;
            written(t("the unit sheet"), sheet)
        }
        Fact::PackFitted { shims, .. } => {
            opened(book)?;
            if shims.is_empty() {
                return Err(Refusal::Nothing { what: t("the pack") });
            }
            let fits = shims.iter().all(|shim| {
                let is_thick = shim.net() > Decimal::ZERO;
                is_thick && !matches!(shim, FittedShim::Measured(typed) if !is_length(typed))
            });
            if fits { Ok(()) } else { Err(Refusal::WrongValue { field: t("pack") }) }
        }
        Fact::ReadingTaken { check, values, arm, on } => {
            opened(book)?;
            let found = values.len();
            if found != check.stops().len() {
                return Err(Refusal::Count { check: *check, found });
            }
            let fits = |value: &Typed| {
                value.unit().quantity() == check.unit().quantity()
                    && (check.may_be_below_zero() || !below_zero(value))
            };
            if !values.iter().all(fits) {
                return Err(Refusal::WrongValue { field: t("reading") });
            }
            let has_arm =
                on.is_some() && arm.as_ref().is_some_and(|arm| is_length(arm) && above_zero(arm));
            if check.has_arm() && !has_arm {
                return Err(Refusal::NoArm { check: *check });
            }
            Ok(())
        }
        Fact::PackHeld { .. } | Fact::JobArchived { .. } => opened(book),
        Fact::JobTagged { tag, .. } => {
            opened(book)?;
            written(t("the tag"), tag)
        }
        Fact::PhotosFreed { photos, .. } => {
            opened(book)?;
            if photos.is_empty() { Err(Refusal::Nothing { what: t("the photos") }) } else { Ok(()) }
        }
        Fact::PartsChanged { marks, .. } => {
            opened(book)?;
            let fits = marks.iter().all(PartMark::is_sound);
            if fits { Ok(()) } else { Err(Refusal::WrongValue { field: t("mark") }) }
        }
        Fact::NoteWritten { text } => {
            opened(book)?;
            written(t("the note"), text)
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
