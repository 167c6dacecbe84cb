//! Other packs than the advised ones: fewer to open, or surer.

use words::{say, t};

use crate::advice::chance;
use crate::case::Bridge;
use crate::pack_view::{change, kept};
use crate::sheet::listed;
use crate::standing::asked;
use crate::{Job, PackAct, PackView, Sheet, Shown, Slot, Tin};

/// Packs that would do too. Lengths are mm.
#[derive(Clone, Debug, PartialEq)]
pub struct OtherPacks {
    /// Every pack the unit has, kept or changed, ready for [`crate::fit`].
    pub packs: Vec<PackView>,
    /// The packs that change.
    pub opens: Vec<Slot>,
    /// Labour, minutes (common practice, no source).
    pub minutes: u32,
    /// Probability that every check that was read lands in its band.
    pub probability: f64,
    /// "B3 only: 71 of 100, about 20 min."
    pub says: String,
}

/// Other packs worth knowing, the likeliest first. It takes a search for every set of packs to
/// open, so it is asked for, not shown with every reading.
pub fn other_packs((job, sheet, tin): (&Job, &Sheet, &Tin), shown: Shown) -> Vec<OtherPacks> {
    let tin = &tin.side(sheet.is_invented());
    let Ok(bridge) = Bridge::of(job, sheet, tin, &asked(job, sheet)) else { return Vec::new() };
    let others = gearing::others(&bridge.case).unwrap_or_default();
    let view = |choice: gearing::advice::Choice| {
        let mut packs = kept(job, sheet, tin, &[]);
        for pack in &mut packs {
            change(pack, job, tin, &bridge, (&choice.opens, &choice.packs), shown);
        }
        let changed = packs.iter().filter(|pack| pack.act == PackAct::Fit);
        let opens: Vec<Slot> = changed.map(|pack| pack.slot).collect();
        let tags: Vec<&str> = opens.iter().map(|slot| slot.tag()).collect();
        let what = match tags.as_slice() {
            [] => t("As they are").to_owned(),
            [one] => say!("{one} only"),
            tags => listed(tags),
        };
        let (chance, minutes) = (chance(choice.probability), choice.minutes);
        OtherPacks {
            packs,
            opens,
            minutes,
            probability: choice.probability,
            says: say!("{what}: {chance}, about {minutes} min."),
        }
    };
    others.into_iter().map(view).collect()
}
