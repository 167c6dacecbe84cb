//! Tools: what goes into the van for this job, and the drawer with what a person owns.

mod drawer;
mod drawing;
mod missing;
mod state;
mod van;

use leptos::prelude::*;
use words::t;

use super::{Guide, GuideScreen, Here};
use crate::draft::use_draft;
use crate::parts::{Pick, Seg, live};
use crate::screens::shop::ShopScreen;
use drawing::Drawing;
use state::Loading;

/// The van list of a job, with the drawer beside it.
pub fn van_screen(guide: Guide) -> AnyView {
    let list = use_draft(&format!("job/{}/tools", guide.of.id()), "list");
    let loading = Loading::of(guide);
    let drawing = Drawing::of(Some(guide));
    let in_drawer = Memo::new(move |_| !list.text().is_empty());
    let chosen = Signal::derive(move || Some(usize::from(in_drawer.get())));
    let choose = Callback::new(move |at| list.set(if at == 1 { "drawer" } else { "" }));
    let act = move || {
        live(move || if in_drawer.get() { drawer::act(drawing) } else { van::act(loading) })
    };
    let back = (guide.of.at_job(), t("Job"));
    view! {
        <GuideScreen guide here=Here::Tools back act>
            <Seg
                id="list"
                label=t("List")
                picks=vec![Pick::from(t("Van list")), Pick::from(t("Drawer"))]
                chosen
                on_choose=choose
            />
            {live(move || {
                if in_drawer.get() { drawer::cols(drawing) } else { van::cols(loading) }
            })}
        </GuideScreen>
    }
    .into_any()
}

/// The drawer alone.
pub fn drawer_screen() -> AnyView {
    let drawing = Drawing::of(None);
    let subtitle = Signal::derive(move || drawing.count());
    let act = live(move || drawer::act(drawing));
    view! {
        <ShopScreen title=t("Tool drawer") subtitle back=("/".to_owned(), t("Bench")) act>
            {drawer::cols(drawing)}
        </ShopScreen>
    }
    .into_any()
}
