//! The trials at the chosen pack: why the advice is what it is.

use job::{Figure, SetUp, Shown, TrialsView};
use leptos::prelude::*;
use measure::Decimal;
use words::say;

use super::Fitting;
use crate::parts::live;
use crate::pictures::Picture;
use crate::pictures::drawing::Drawing;
use crate::pictures::trials::{Trial, Trials};
use crate::shown::{drawn, gauged, writing};

/// The trials at the pack chosen in the sketch; of the first pack that has some otherwise.
#[component]
pub fn AtPack(fitting: Fitting) -> impl IntoView {
    live(move || {
        let slot = fitting.thought.slot();
        let shown = fitting.of.shown();
        let sheet = |told: &SetUp| {
            let chosen = told.trials.iter().find(|trials| Some(trials.slot) == slot);
            chosen.or(told.trials.first()).map(|trials| sheet(trials, shown))
        };
        fitting.look(sheet).flatten().into_any()
    })
}

fn sheet(trials: &TrialsView, shown: Shown) -> AnyView {
    let drawing = drawing(trials, shown);
    view! {
        <div class="sheet">
            <h2>{say!("Trials at {}", trials.slot.tag())}</h2>
            {drawing.map(|drawing| view! { <Picture drawing/> })}
            <p>{trials.says.clone()}</p>
        </div>
    }
    .into_any()
}

fn drawing(trials: &TrialsView, shown: Shown) -> Option<Drawing> {
    let draw = |value: Decimal| drawn(value, shown);
    let read = |value: Decimal| gauged(value, trials.check, shown);
    let band = trials.band?;
    let built = trials.points.iter().map(|point| Trial {
        pack: draw(point.pack),
        reading: read(point.reading),
        left_out: false,
    });
    let last = trials.points.last().map(|last| (draw(last.pack), read(last.reading)));
    let picture = Trials {
        across: say!("{} pack, {}", trials.slot.tag(), shown.units.length),
        up: format!("{}, {}", trials.check.short(), trials.check.shown_unit(shown)),
        low: read(band.low()),
        high: read(band.high()),
        built: built.collect(),
        learnt: last.map(|last| (last, trials.slope)),
        next: trials.next.map(|(pack, mean, more)| (draw(pack), read(mean), read(more))),
    };
    Some(picture.draw(writing(Figure::Shim, shown), writing(trials.check.figure(), shown)))
}
