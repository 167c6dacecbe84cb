//! The steps of this unit as the shop has them: own ones added, others left out or moved.

mod form;
mod list;
mod state;

use leptos::prelude::*;
use words::t;

use super::{Guide, GuideScreen, Here};
use crate::parts::{Act, live, whether, words};
use state::{Changing, Way};

/// The steps of this unit.
pub fn screen(guide: Guide) -> AnyView {
    let changing = Changing::of(guide);
    let act = move || live(move || act(changing));
    view! {
        <GuideScreen guide here=Here::Job back=(guide.of.at_job(), t("Job")) act>
            <div class="head">
                <h1>{t("Steps of this unit")}</h1>
                <p>{t("For every job on this unit sheet. The sheet takes them along when it is sent.")}</p>
            </div>
            <div class="cols">
                <section class="col">{form::sheet(changing)}</section>
                <section class="col">
                    {live(move || list::changes(changing))}
                    {live(move || list::steps(changing))}
                </section>
            </div>
        </GuideScreen>
    }
    .into_any()
}

/// The one next act.
fn act(changing: Changing) -> AnyView {
    let words = words(move || match (changing.chosen(), changing.way()) {
        (None, _) => t("Choose a step").to_owned(),
        (Some(_), Way::Add) => t("Add the step").to_owned(),
        (Some(_), Way::Drop) => t("Leave it out").to_owned(),
        (Some(_), Way::Move) => t("Move it").to_owned(),
    });
    let waits = whether(move || changing.chosen().is_none());
    let keep = Callback::new(move |()| changing.keep());
    view! { <Act words waits busy=changing.acting.busy on_press=keep/> }.into_any()
}
