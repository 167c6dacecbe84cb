//! An entry as a mechanic would write it.

use measure::{Decimal, Mark, Typed, Unit, show};
use words::{say, t};

use crate::{Counted, Fact, Field, FieldValue, FittedShim, Kind, PartMark, Plus, Position, guided};

/// The sentence of a fact; numbers as they were typed.
pub(crate) fn of(fact: &Fact) -> String {
    match fact {
        Fact::SheetOpened { name, .. } => say!("Unit sheet begun: {name}."),
        Fact::FieldTyped { field, value } => {
            say!("{field} typed: {value}.", field = heading(*field), value = shown(*field, value))
        }
        Fact::FieldCleared { field } => say!("{field} taken out.", field = heading(*field)),
        Fact::ValueStands { field } => {
            say!("{field} looked at again: it stands.", field = heading(*field))
        }
        Fact::VariantChosen { slot, position: None } => {
            say!("The unit has no pack {pack}.", pack = slot.tag())
        }
        Fact::VariantChosen { slot, position: Some(id) } => match Position::named(id) {
            Some(Position { between: [one, other], .. }) => {
                say!("{pack} lies between {one} and {other}.", pack = slot.tag())
            }
            None => say!("{pack} lies at {id}.", pack = slot.tag()),
        },
        Fact::SignConfirmed { position } => match Position::named(position) {
            Some(Position { thicker, .. }) => say!("{position} seen: thicker, {thicker}."),
            None => say!("{position} seen: it pushes the usual way."),
        },
        Fact::SignOverridden { position, reason } => {
            say!("{position} pushes the other way: {reason}.")
        }
        Fact::BuildChosen { position, build } => {
            let place = Position::named(position).zip(*build);
            let when = place.and_then(|(place, build)| place.builds().nth(build as usize));
            match when {
                Some(when) => format!("{position}: {when}."),
                None => say!("{position} is built the usual way."),
            }
        }
        Fact::ShimsAdded { family, places: [one, other], zero, count, .. } => {
            let (family, one) = (t(family), one.text());
            match count {
                1 => say!("1 {family} shim measured {one} and {other}, zero {zero}."),
                _ => say!("{count} {family} shims measured {one} and {other}, zero {zero}."),
            }
        }
        Fact::ShimCameOut { family, net, .. } => {
            say!("1 {family} shim of {net} put in from a case.", family = t(family))
        }
        Fact::ShimsCounted { change, why, .. } => counted(*change, why),
        Fact::ShimRejected { why, .. } if why.trim().is_empty() => t("Shim rejected.").to_owned(),
        Fact::ShimRejected { why, .. } => say!("Shim rejected: {why}."),
        Fact::JobOpened { boat, number, .. } => say!("Job {number} opened: {boat}."),
        Fact::PackFitted { slot, shims, as_found } => {
            let total: Decimal = shims.iter().map(FittedShim::net).sum();
            let each: Vec<String> = shims.iter().map(shim).collect();
            let (pack, shims, total) = (slot.tag(), each.join(" + "), show(total, 3, Mark::Point));
            match as_found {
                true => say!("{pack} found: {shims} = {total} mm."),
                false => say!("{pack} fitted: {shims} = {total} mm."),
            }
        }
        Fact::ReadingTaken { check, values, arm, .. } => {
            let (check, values) = (check.name(), series(values));
            match arm {
                Some(arm) => say!("{check} read {values} at the {arm} arm."),
                None => say!("{check} read {values}."),
            }
        }
        Fact::PackHeld { slot, held: true } => say!("{pack} stays as it is.", pack = slot.tag()),
        Fact::PackHeld { slot, held: false } => {
            say!("{pack} may be changed again.", pack = slot.tag())
        }
        Fact::PartsChanged { slot, marks } => {
            let marks: Vec<String> = marks.iter().map(mark).collect();
            let (pack, marks) = (slot.tag(), marks.join(", "));
            match marks.as_str() {
                "" => say!("New parts at {pack}."),
                marks => say!("New parts at {pack}: {marks}."),
            }
        }
        Fact::JobTagged { tag, tagged: true } => say!("Tag put on: {tag}."),
        Fact::JobTagged { tag, tagged: false } => say!("Tag taken off: {tag}."),
        Fact::JobArchived { archived: true } => t("Put away in the archive.").to_owned(),
        Fact::JobArchived { archived: false } => t("Back from the archive.").to_owned(),
        Fact::PhotosFreed { photos, .. } => match photos.len() {
            1 => t("1 photo taken off this device; a backup has it.").to_owned(),
            count => say!("{count} photos taken off this device; a backup has them."),
        },
        Fact::NoteWritten { text } => text.clone(),
        Fact::EntryRetracted { why, .. } if why.trim().is_empty() => t("Taken back.").to_owned(),
        Fact::EntryRetracted { why, .. } => say!("Taken back: {why}.", why = t(why)),
        Fact::Guided(fact) => guided::sentence(fact),
    }
}

fn heading(field: Field) -> String {
    guided::capitalised(field.facts().name())
}

fn shown(field: Field, value: &FieldValue) -> String {
    match value {
        FieldValue::Number(typed) if typed.unit() == Unit::Degree => format!("{}°", typed.text()),
        FieldValue::Number(typed) => typed.to_string(),
        FieldValue::Count(count) => count.to_string(),
        FieldValue::Word(word) => match field.facts().kind {
            Kind::Choice(choices) => {
                let choice = choices.iter().find(|(id, _)| id == word);
                choice.map_or(word.as_str(), |(_, shown)| t(shown)).to_lowercase()
            }
            _ => word.clone(),
        },
    }
}

fn shim(shim: &FittedShim) -> String {
    match shim {
        FittedShim::Measured(typed) if typed.unit() == Unit::Millimetre => typed.text().to_owned(),
        FittedShim::Measured(typed) => typed.to_string(),
        FittedShim::FromTin { net, .. } => show(*net, 3, Mark::Point),
    }
}

/// "mounting distance mark -2 to 3 (0.01 mm, + is more)".
fn mark(mark: &PartMark) -> String {
    let (kind, unit) = (mark.kind.name().to_lowercase(), mark.unit.id());
    let (old, new) = (mark.old.text(), mark.new.text());
    match mark.plus {
        Plus::More => say!("{kind} {old} to {new} ({unit}, + is more)"),
        Plus::Less => say!("{kind} {old} to {new} ({unit}, + is less)"),
    }
}

fn counted(change: i32, why: &Counted) -> String {
    match (why, change.unsigned_abs()) {
        (Counted::Found, 1) => t("1 more shim found.").to_owned(),
        (Counted::Found, count) => say!("{count} more shims found."),
        (Counted::Lost, 1) => t("1 shim gone.").to_owned(),
        (Counted::Lost, count) => say!("{count} shims gone."),
        (Counted::Taken { .. }, 1) => t("1 shim taken for a job.").to_owned(),
        (Counted::Taken { .. }, count) => say!("{count} shims taken for a job."),
        (Counted::PutBack { .. }, 1) => t("1 shim put back from a job.").to_owned(),
        (Counted::PutBack { .. }, count) => say!("{count} shims put back from a job."),
    }
}

/// "0.45 0.46 0.44 0.45 mm": the unit once where all have the same.
fn series(values: &[Typed]) -> String {
    let unit = values.first().map(Typed::unit);
    let same = values.iter().all(|value| Some(value.unit()) == unit);
    match unit {
        Some(unit) if same => {
            let texts: Vec<&str> = values.iter().map(Typed::text).collect();
            format!("{} {unit}", texts.join(" "))
        }
        _ => {
            let texts: Vec<String> = values.iter().map(Typed::to_string).collect();
            texts.join(" ")
        }
    }
}
