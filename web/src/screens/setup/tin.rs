//! What the tin can make at the chosen pack.

use job::{Figure, PackFit};
use leptos::prelude::*;
use words::{say, t};

use super::Fitting;
use crate::parts::live;
use crate::pictures::Picture;
use crate::pictures::tin::Comb;
use crate::shown::{drawn, writing};

/// The packs that the tin can make where the sketch is looked at.
#[component]
pub fn CanMake(fitting: Fitting) -> impl IntoView {
    live(move || sheet(fitting).into_any())
}

fn sheet(fitting: Fitting) -> Option<AnyView> {
    let (slot, shown) = (fitting.thought.slot()?, fitting.of.shown());
    let wanted = fitting.thought.total();
    let packs = fitting.of.look(|(job, sheet, tin), _| {
        let family = sheet.position(slot)?.family;
        let lie = job.pack(slot).map(PackFit::nets).unwrap_or_default();
        Some(tin.side(sheet.is_invented()).can_make_with(family, &lie))
    });
    let packs = packs.flatten()?.into_iter().map(|pack| drawn(pack, shown)).collect();
    let name = slot.tag().to_owned();
    let wanted = wanted.map(|wanted| drawn(wanted, shown));
    let comb = Comb { name, packs, wanted, ..Comb::default() };
    let drawing = comb.draw(shown.units.length.symbol(), writing(Figure::Shim, shown));
    let view = view! {
        <div class="sheet sheet--quiet">
            <h2>{say!("What {} can make", slot.tag())}</h2>
            <Picture drawing/>
            <p>{t("Each brass line is a pack you can build from the tin and the shims that lie there now.")}</p>
        </div>
    };
    Some(view.into_any())
}
