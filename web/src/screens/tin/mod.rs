//! The shim tin: what is in it, a shim measured in, and the packs it can make.

mod measure_in;
mod measured;
mod rows;

use std::sync::Arc;
use words::{say, t};

use job::{Family, Figure, Tin, families};
use leptos::prelude::*;

use super::bench::Invented;
use super::frame::Here;
use super::shop::ShopScreen;
use crate::bench::use_bench;
use crate::parts::{Pick, Seg, live};
use crate::pictures::Picture;
use crate::pictures::tin::Comb;
use crate::shown::{drawn, use_shown, writing};
use measure_in::{MeasureIn, PutIn};
use measured::Measuring;

/// Shim tin.
#[component]
pub fn TinScreen() -> impl IntoView {
    let bench = use_bench();
    let tin = bench.tin();
    let kinds = Memo::new(move |_| {
        let sheets = bench.sheets();
        tin.with(|tin| families(sheets.iter().map(AsRef::as_ref), tin))
    });
    let chosen = RwSignal::new(None::<&'static str>);
    let family = Memo::new(move |_| {
        kinds.with(|kinds| {
            let is_chosen = |kind: &&Family| Some(kind.name) == chosen.get();
            kinds.iter().find(is_chosen).or(kinds.first()).cloned()
        })
    });
    let measuring = Measuring::here(tin, family);
    let preview = Memo::new(move |_| measuring.preview());
    let subtitle = Signal::derive(move || match tin.with(|tin| tin.count()) {
        0 => t("Empty").to_owned(),
        1 => t("1 shim").to_owned(),
        count => say!("{count} shims"),
    });
    let back = match untrack(|| bench.current_job()) {
        Some(job) => (format!("/job/{}/setup", job.id), t("Set-up")),
        None => ("/".to_owned(), t("Bench")),
    };
    let act = view! { <PutIn measuring preview/> }.into_any();
    view! {
        <ShopScreen title=t("Shim tin") subtitle here=Here::Tin back act>
            <h1 class="vh">{t("Shim tin")}</h1>
            <div class="cols">
                <section class="col">
                    <Invented/>
                    {kinds_to_choose(kinds, family, chosen)}
                    {of_family(family, move |family| rows::rows(tin, family))}
                </section>
                <section class="col">
                    <MeasureIn measuring preview/>
                    {of_family(family, move |family| can_make(tin, family))}
                </section>
            </div>
        </ShopScreen>
    }
}

/// The kinds of shim.
fn kinds_to_choose(
    kinds: Memo<Vec<Family>>,
    family: Memo<Option<Family>>,
    chosen: RwSignal<Option<&'static str>>,
) -> AnyView {
    let choose = Callback::new(move |at: usize| {
        chosen.set(kinds.with_untracked(|kinds| kinds.get(at).map(|kind| kind.name)));
    });
    let pick = |kind: &Family| Pick {
        words: kind.tag().to_owned(),
        note: kind.words().to_owned(),
        shut: false,
    };
    let at = Signal::derive(move || {
        kinds.with(|kinds| kinds.iter().position(|kind| Some(kind) == family.get().as_ref()))
    });
    live(move || {
        let picks: Vec<Pick> = kinds.with(|kinds| kinds.iter().map(pick).collect());
        view! {
            <div class="families">
                <Seg id="family" label=t("Family") picks chosen=at on_choose=choose/>
            </div>
        }
        .into_any()
    })
}

/// A part of the screen that is built anew for each family.
fn of_family(
    family: Memo<Option<Family>>,
    view: impl Fn(Family) -> AnyView + Send + 'static,
) -> AnyView {
    live(move || family.get().map(&view).into_any())
}

/// The packs that the tin can make of a family.
fn can_make(tin: Memo<Arc<Tin>>, family: Family) -> AnyView {
    let shown = use_shown();
    let tag = family.tag();
    let drawing = Signal::derive(move || {
        let shown = shown.get();
        let packs = tin.with(|tin| tin.can_make(family.name));
        let packs = packs.into_iter().map(|pack| drawn(pack, shown)).collect();
        let comb = Comb { name: tag.to_owned(), packs, ..Comb::default() };
        comb.draw(shown.units.length.symbol(), writing(Figure::Shim, shown))
    });
    view! {
        <div class="sheet sheet--quiet">
            <h2>{say!("What {tag} can make")}</h2>
            <Picture drawing/>
            <p>{t("Each brass line is a pack you can build from the tin.")}</p>
        </div>
    }
    .into_any()
}
