//! The short guide: the whole job on a few pages, to read on the screen or to print.

use leptos::prelude::*;
use measure::Mark;
use words::t;

use super::picture::{Shows, draw};
use crate::page;
use crate::parts::{Act, Back, Dock, Glyph, PaperChoice, Plate, paper_class};
use crate::pictures::Picture;

/// A part of the guide: its title, its picture, what to do, and what to take care of.
struct Part {
    title: &'static str,
    shows: Shows,
    steps: &'static [&'static str],
    caution: Option<(&'static str, &'static str)>,
}

/// The leaves, each with its parts.
const LEAVES: [&[Part]; 3] = [
    &[
        Part {
            title: "1. Before the case is opened",
            shows: Shows::Layout,
            steps: &[
                "Put the app on the device first, then keep a backup off it now and again: Settings, Back up now.",
                "Start a job: the layout that looks like the unit, its unit sheet, the boat, what is wrong with it.",
                "Type the limits on the unit sheet from the unit’s own manual. It is done once for each kind of unit.",
                "Choose the scope, agree work, limit and stop rules with who may decide, and have it signed.",
                "Look for what the case tells while it is shut: oil, leaks, play, noise.",
            ],
            caution: Some((
                "Before you reach in:",
                "engine stopped and its start made impossible, propeller off or blocked, the unit held so that it cannot fall. Old oil may be hot and a case may hold pressure.",
            )),
        },
        Part {
            title: "2. Strip, bag and judge",
            shows: Shows::Packs,
            steps: &[
                "Measure each pack as it comes out and write it down as found, before it is cleaned away.",
                "Everything that comes off gets the next number, its place, the way it faced, and a photo where it helps.",
                "Judge each part by its signs. What is rejected changes the scope, the orders and the price: ask the owner again.",
            ],
            caution: Some((
                "Springs, presses, pullers and heat:",
                "eye protection always, nobody in the line of the force, gloves for hot races, cleaning fluid away from flames.",
            )),
        },
    ],
    &[
        Part {
            title: "3. Fill the tin",
            shows: Shows::Shims,
            steps: &[
                "Close the micrometer and type what it reads: its zero is taken off every shim.",
                "Measure each shim at two places. Only what lies in the tin is advised.",
            ],
            caution: None,
        },
        Part {
            title: "4. Measure",
            shows: Shows::Gauge,
            steps: &[
                "Set the gauge as the screen draws it: the plunger square to the arm, at the radius that is typed.",
                "Rock the gear gently and read at several places round it. Type each value as the gauge shows it.",
                "A band answers: in, out, or too near a limit for this gauge to say. Then read again, or with a better gauge.",
            ],
            caution: Some((
                "Never turn gears by power while a gauge or a hand is at them.",
                "Turn by hand, in the running way.",
            )),
        },
        Part {
            title: "5. Fit what it says, read again",
            shows: Shows::Thicker,
            steps: &[
                "The set-up names the shims for every position together, and what each gauge will then read.",
                "Fit them, build dry, read again. What you read teaches the next advice.",
                "A reading that was not expected is a question: the likeliest causes stand beside it. Look before you fit more.",
                "In band everywhere: two people look at the tags and sign, and the packs are frozen.",
            ],
            caution: None,
        },
    ],
    &[
        Part {
            title: "6. Close and prove",
            shows: Shows::Seals,
            steps: &[
                "Seals, rings, torques and fits have bench checks of their own. The value to tighten to is your manual’s.",
                "Wait for what has to cure: the clock runs on while the app is closed.",
                "Leak test, then oil: the amount that went in, and that it came out at the level hole where the unit has one.",
            ],
            caution: Some((
                "Air in a case is stored force:",
                "a gauge and a relief set no higher than the manual allows, never from a shop line without a regulator, nobody in front of a seal.",
            )),
        },
        Part {
            title: "7. Hand over",
            shows: Shows::Band,
            steps: &[
                "The record is a draft while a step is open, a reading stale or a gate shut. It says which.",
                "Print it, save it as a PDF, or hand it over as one file; the owner’s words say the same without trade terms.",
                "Say when the unit is to be looked at next, and keep a backup.",
            ],
            caution: None,
        },
    ],
];

const WINS: &str = "Your unit’s own manual, the maker’s safety notes and local rules win, always. \
                    This guide and the app hold no limits of their own, and replace no training, \
                    no licence and no manual.";

/// The guide.
pub fn screen() -> AnyView {
    let paper = RwSignal::new(0);
    page::title(Signal::stored(t("Short guide").to_owned()));
    let print = Callback::new(|()| {
        // A browser that cannot print says so itself.
        window().print().ok();
    });
    let (last, mark) = (LEAVES.len() - 1, super::mark());
    let leaves =
        LEAVES.iter().enumerate().map(|(at, parts)| leaf(parts, at == 0, at == last, mark));
    let leaves: Vec<AnyView> = leaves.collect();
    view! {
        <Plate title=t("Short guide") subtitle=t("The whole job in a few pages")/>
        <main class="main" id="main" tabindex="-1">
            <PaperChoice paper/>
            <article class=move || paper_class(paper.get())>{leaves}</article>
        </main>
        <Dock>
            <Back href="/" words=t("Bench")/>
            <Act words=t("Print or save PDF") glyph=Glyph::Print on_press=print/>
        </Dock>
    }
    .into_any()
}

fn leaf(parts: &'static [Part], first: bool, last: bool, mark: Mark) -> AnyView {
    let head = first.then(|| {
        view! {
            <header class="rec">
                <div>
                    <h1>{t("Re-shimming a gearcase, in short")}</h1>
                    <p>{t("Which shims from this tin bring this gearcase into its own limits.")}</p>
                </div>
            </header>
            <p class="box box--c">
                <b>{t("First of all: ")}</b>
                {t(WINS)}
            </p>
        }
    });
    let end = last.then(|| {
        view! {
            <p class="small">
                {t("Shimwright, version ")} {env!("CARGO_PKG_VERSION")}
                {t(". Pictures and their numbers are invented. Works with no signal; nothing leaves the device but by your hand.")}
            </p>
        }
    });
    let parts: Vec<AnyView> = parts.iter().map(|it| part(it, mark)).collect();
    view! {
        <section class="leaf">
            {head}
            {parts}
            {end}
        </section>
    }
    .into_any()
}

fn part(part: &'static Part, mark: Mark) -> AnyView {
    let steps: Vec<AnyView> =
        part.steps.iter().map(|step| view! { <li>{t(step)}</li> }.into_any()).collect();
    let caution = part.caution.map(|(title, words)| {
        view! {
            <p class="box box--c">
                <b>{t(title)}</b>
                " "
                {t(words)}
            </p>
        }
    });
    view! {
        <section class="guide">
            <h2>{t(part.title)}</h2>
            <div class="guide__pic">
                <Picture drawing=Signal::stored(draw(part.shows, mark))/>
            </div>
            <div class="guide__do">
                <ul class="ticks">{steps}</ul>
                {caution}
            </div>
        </section>
    }
    .into_any()
}
