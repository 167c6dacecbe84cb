//! An entry as a mechanic would write it.

use measure::{Decimal, Mark, Typed, Unit, show};
use words::{say, t};

use crate::{Counted, Fact, Field, FieldValue, FittedShim, Kind, PartMark, Plus, Position, guided};

/// The sentence of a fact; numbers as they were typed.
pub(crate) fn of(fact: &Fact) -> String {
    match fact {
        Fact::SheetOpened { name, .. } => say!("Unit sheet begun: {name}."),
        Fact::FieldTyped { field, value } => {
            say!("{} typed: {}.", heading(*field), shown(*field, value))
        }
        Fact::FieldCleared { field } => say!("{} taken out.", heading(*field)),
        Fact::ValueStands { field } => say!("{} looked at again: it stands.", heading(*field)),
        Fact::VariantChosen { slot, position: None } => {
            say!("The unit has no pack {}.", slot.tag())
        }
        Fact::VariantChosen { slot, position: Some(id) } => match Position::named(id) {
            Some(Position { between: [one, other], .. }) => {
                say!("{} lies between {one} and {other}.", slot.tag())
            }
            None => say!("{} lies at {id}.", slot.tag()),
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
        Fact::ShimsAdded { family, places: [one, other], zero, count, .. } => say!(
            "{count} {family} {} measured {} and {other}, zero {zero}.",
            plural(*count, "shim", "shims"),
            one.text(),
        ),
        Fact::ShimCameOut { family, net, .. } => {
            say!("1 {family} shim of {net} put in from a case.")
        }
        Fact::ShimsCounted { change, why, .. } => counted(*change, why),
        Fact::ShimRejected { why, .. } if why.trim().is_empty() => t("Shim rejected.").to_owned(),
        Fact::ShimRejected { why, .. } => say!("Shim rejected: {why}."),
        Fact::JobOpened { boat, number, .. } => say!("Job {number} opened: {boat}."),
        Fact::PackFitted { slot, shims, as_found } => {
            let how = if *as_found { "found" } else { "fitted" };
            let total: Decimal = shims.iter().map(FittedShim::net).sum();
            let each: Vec<String> = shims.iter().map(shim).collect();
            let total = show(total, 3, Mark::Point);
            say!("{} {how}: {} = {total} mm.", slot.tag(), each.join(" + "))
        }
        Fact::ReadingTaken { check, values, arm, .. } => {
            let arm = arm.as_ref().map(|arm| say!(" at the {arm} arm")).unwrap_or_default();
            say!("{} read {}{arm}.", check.name(), series(values))
        }
        Fact::PackHeld { slot, held: true } => say!("{} stays as it is.", slot.tag()),
        Fact::PackHeld { slot, held: false } => say!("{} may be changed again.", slot.tag()),
        Fact::PartsChanged { slot, marks } => {
            let each: Vec<String> = marks.iter().map(mark).collect();
            let told =
                if each.is_empty() { String::new() } else { format!(": {}", each.join(", ")) };
            say!("New parts at {}{told}.", slot.tag())
        }
        Fact::JobTagged { tag, tagged: true } => say!("Tag put on: {tag}."),
        Fact::JobTagged { tag, tagged: false } => say!("Tag taken off: {tag}."),
        Fact::JobArchived { archived: true } => t("Put away in the archive.").to_owned(),
        Fact::JobArchived { archived: false } => t("Back from the archive.").to_owned(),
        Fact::PhotosFreed { photos, .. } => {
            let count = photos.len();
            let photos = if count == 1 { "photo" } else { "photos" };
            say!("{count} {photos} taken off this device; a backup has them.")
        }
        Fact::NoteWritten { text } => text.clone(),
        Fact::EntryRetracted { why, .. } if why.trim().is_empty() => t("Taken back.").to_owned(),
        Fact::EntryRetracted { why, .. } => say!("Taken back: {why}."),
        Fact::Guided(fact) => guided::sentence(fact),
    }
}

fn heading(field: Field) -> String {
    let mut letters = field.facts().name().chars();
    let first = letters.next().map(|first| first.to_uppercase().collect::<String>());
    first.unwrap_or_default() + letters.as_str()
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
    let plus = if mark.plus == Plus::More { "more" } else { "less" };
    let (kind, unit) = (mark.kind.name().to_lowercase(), mark.unit.id());
    say!("{kind} {} to {} ({unit}, + is {plus})", mark.old.text(), mark.new.text())
}

fn counted(change: i32, why: &Counted) -> String {
    let count = change.unsigned_abs();
    let shims = plural(count, "shim", "shims");
    match why {
        Counted::Found => say!("{count} more {shims} found."),
        Counted::Lost => say!("{count} {shims} gone."),
        Counted::Taken { .. } => say!("{count} {shims} taken for a job."),
        Counted::PutBack { .. } => say!("{count} {shims} put back from a job."),
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

fn plural(count: u32, one: &'static str, more: &'static str) -> &'static str {
    if count == 1 { one } else { more }
}
