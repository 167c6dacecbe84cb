//! What can be done next, in a mechanic's words.

use gearing::advice::CauseKind;
use words::{say, t};

/// What can be done next.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Decision {
    /// "Try the feeler behind the race at B2".
    pub title: String,
    /// Why one would.
    pub note: String,
    /// Part in a hundred of all causes tried that the readings give to what this looks for; `None`
    /// for taking the readings for what they seem.
    pub share: Option<u32>,
}

impl Decision {
    /// Takes the readings for what they seem.
    pub(crate) fn as_they_seem(all_in_band: bool) -> Decision {
        let (title, note) = match all_in_band {
            true => (t("Go on"), t("every mean is in band")),
            false => (t("Fit other packs by these readings"), t("brings every mean in band")),
        };
        Decision { title: title.to_owned(), note: note.to_owned(), share: None }
    }

    /// Looks for a cause; `None` for those that nobody looks for.
    pub(crate) fn look(
        kind: &CauseKind,
        share: f64,
        position: &dyn Fn(usize) -> String,
        check: &dyn Fn(usize) -> String,
    ) -> Option<Decision> {
        let (title, note) = match kind {
            CauseKind::AsPlanned => return None,
            CauseKind::OtherSign { position: at } => (
                say!("Look which way {} pushes", position(*at)),
                t("its pack may lie on the other side of the race"),
            ),
            CauseKind::Swapped { first, second } => (
                say!("Measure the packs of {} and {}", position(*first), position(*second)),
                t("they may have changed places"),
            ),
            CauseKind::NotChanged { position: at } => (
                say!("Take the pack out at {} and measure it", position(*at)),
                t("the old one may still be in"),
            ),
            CauseKind::ShimMissing { position: at, .. } => (
                say!("Look for a shim on the old race at {}", position(*at)),
                t("one may have stuck there"),
            ),
            CauseKind::NotSeated { position: at } => (
                say!("Try the feeler behind the race at {}", position(*at)),
                t("it may not be on its seat"),
            ),
            CauseKind::Slip { check: of, .. } => (
                say!("Read {} again", check(*of).to_lowercase()),
                t("the decimal mark or the unit may have slipped"),
            ),
            CauseKind::OtherShaft { .. } => {
                (t("Look which shaft the arm is on").to_owned(), t("all lash would be scaled"))
            }
        };
        let share = Some((share * 100.0).round() as u32);
        Some(Decision { title, note: note.to_owned(), share })
    }
}
