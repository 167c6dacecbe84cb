//! Photos with their captions, and the parts judged.

use words::{say, t};

use super::{Look, captured};
use crate::date;
use crate::guide::placed;
use crate::guided::{PartVerdict, capitalised, labelled, spaced};

/// A photo that was kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RecordPhoto {
    /// Its name in the store.
    pub id: String,
    /// What it shows.
    pub caption: String,
    /// The day of the backup that has it, where it left a device.
    pub backup: Option<String>,
}

/// A part that was judged.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RecordPart {
    /// Its id: `taper-bearings`.
    pub part: String,
    /// The part.
    pub name: String,
    /// The verdict.
    pub verdict: PartVerdict,
    /// "Rejected", "Used again, to watch", "Used again".
    pub words: &'static str,
    /// The signs seen: "etched lines, spall"; may be empty.
    pub signs: String,
    /// Why; may be empty.
    pub reason: String,
}

impl RecordPart {
    /// Signs and reason: "etched lines, spall. owner asked"; may be empty.
    pub fn why(&self) -> String {
        let why = [self.signs.as_str(), self.reason.as_str()];
        let why: Vec<&str> = why.into_iter().filter(|why| !why.is_empty()).collect();
        why.join(". ")
    }
}

/// Every photo that counts, each once: of steps, of parts that came off, of parts judged.
pub(super) fn photos(look: &Look) -> Vec<RecordPhoto> {
    let of_steps = captured::in_order(look).into_iter().filter_map(|(step, label, kept)| {
        let more = match kept.value.beside_photo().as_str() {
            "" => String::new(),
            said => format!(": {said}"),
        };
        let caption = format!("{}. {}{more}", look.title(step), labelled(label));
        Some((kept.value.photo()?, caption))
    });
    let off = look.log.bagged.iter().filter_map(|(number, bagged)| {
        let (part, place) = (spaced(&bagged.part), placed(&bagged.place));
        let caption = say!("{number}: {part}, as it came off, in {place}");
        Some((bagged.photo.as_deref()?, caption))
    });
    let judged = look.log.judged.iter().filter_map(|(part, judged)| {
        let caption = format!("{}: {}", capitalised(&spaced(part)), judged.verdict.words());
        Some((judged.photo.as_deref()?, caption))
    });
    let mut photos: Vec<RecordPhoto> = Vec::new();
    for (id, caption) in of_steps.chain(off).chain(judged) {
        if photos.iter().all(|photo| photo.id != id) {
            let backup = look.job.freed.get(id).map(|at| date(*at, look.shown.utc_offset));
            photos.push(RecordPhoto { id: id.to_owned(), caption, backup });
        }
    }
    photos
}

/// The parts in the order judged.
pub(super) fn parts(look: &Look) -> Vec<RecordPart> {
    let mut judged: Vec<_> = look.log.judged.iter().collect();
    judged.sort_by_key(|(_, judged)| judged.mark);
    let part = |(part, judged): (&String, &crate::guide::Judged)| RecordPart {
        part: part.clone(),
        name: capitalised(&spaced(part)),
        verdict: judged.verdict,
        words: match judged.verdict {
            PartVerdict::Reject => t("Rejected"),
            PartVerdict::Watch => t("Used again, to watch"),
            PartVerdict::Reuse => t("Used again"),
        },
        signs: judged.signs.iter().map(|sign| t(sign)).collect::<Vec<_>>().join(", "),
        reason: judged.reason.clone(),
    };
    judged.into_iter().map(part).collect()
}
