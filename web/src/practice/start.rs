//! Before a lesson: what it is, and the fault where an instructor chooses one.

use leptos::prelude::*;
use practice::{FAULTS, ROUNDS};
use words::{say, t};

use super::Unit;
use crate::parts::{Glyph, Icon, press};

/// What a lesson is.
pub fn sheet(unit: Unit) -> AnyView {
    let kinds = FAULTS.iter().enumerate().map(|(at, (_, name))| {
        view! {
            <button
                class="choice choice--go"
                type="button"
                on:click=press(Callback::new(move |()| unit.begin(Some(at))))
            >
                <Icon glyph=Glyph::Cap/>
                <span>
                    <b>{t(name)}</b>
                    <br/>
                    <span class="dim">{say!("{ROUNDS} units, each with this fault")}</span>
                </span>
                <Icon glyph=Glyph::Go/>
            </button>
        }
    });
    view! {
        <div class="cols">
            <section class="col">
                <div class="head">
                    <h1>{t("Find what is wrong")}</h1>
                    <p>{say!("{ROUNDS} invented units. In each one thing went wrong in the last build.")}</p>
                </div>
                <div class="sheet">
                    <p>
                        {t("You see what was predicted and what the gauges read. You say what you do next, and why. \
                        Then you are told the clue, what the fault does, and what each way costs. No points.")}
                    </p>
                </div>
            </section>
            <section class="col">
                <h2>{t("Instructor: one fault only")}</h2>
                {kinds.collect_view()}
            </section>
        </div>
    }
    .into_any()
}
