//! Record: what was found, what was done and what was left, on the screen as it prints.

mod checks;
mod done;
mod leaf;
mod packs;

use job::{Record, Shown, record};
use leptos::prelude::*;

use super::frame::{Here, JobScreen, OpenJob};
use crate::page;
use crate::parts::{Act, Glyph, Icon, Row, Seg, live};
use leaf::{Leaf, Leaves};

/// The papers a record may be printed on; the leaves fit both.
const PAPERS: [&str; 2] = ["A4", "US Letter"];
const CLASSES: [&str; 2] = ["paper", "paper paper--letter"];

/// Record.
#[component]
pub fn RecordScreen(
    /// The job.
    job: String,
) -> impl IntoView {
    let of = OpenJob::of(&job);
    let paper = RwSignal::new(0);
    let send = Signal::stored(of.at("send"));
    let told =
        Memo::new(move |_| of.look(|(job, sheet, _), shown| (record(job, sheet, shown), shown)));
    page::name(Signal::derive(move || {
        told.with(|told| told.as_ref().map(|(told, _)| file_name(told)))
    }));
    let print = Callback::new(|()| {
        // A browser that cannot print says so itself.
        window().print().ok();
    });
    let act = move || view! { <Act words="Print or save PDF" glyph=Glyph::Print on_press=print/> };
    view! {
        <JobScreen of here=Here::Record back=(of.at("setup"), "Set-up") act=move || act().into_any()>
            <div class="screen">
                <Row title="Send this job" note="A file with its readings and photos." href=send>
                    <Icon glyph=Glyph::Go/>
                </Row>
            </div>
            <PaperChoice paper/>
            {live(move || {
                let class = CLASSES.get(paper.get()).copied();
                let sheets = told.get().map(|(told, shown)| leaves(&told, shown));
                view! { <article class=class>{sheets}</article> }.into_any()
            })}
        </JobScreen>
    }
}

/// Which paper is in the printer.
#[component]
fn PaperChoice(paper: RwSignal<usize>) -> impl IntoView {
    let picks = PAPERS.map(Into::into).to_vec();
    let choose = Callback::new(move |at| paper.set(at));
    view! {
        <div class="screen">
            <Seg
                id="paper"
                label="Paper"
                picks
                chosen=Signal::derive(move || Some(paper.get()))
                on_choose=choose
            />
        </div>
    }
}

/// What the browser proposes as the name of the file.
fn file_name(told: &Record) -> String {
    format!("Job {} · {} · gearcase record", told.number, told.boat)
}

/// The measured leaf, then what was done, as many leaves as that takes.
fn leaves(told: &Record, shown: Shown) -> AnyView {
    let parts = done::parts(&told.history);
    let of = Leaves { title: leaf::title(told), count: parts.len() + 1 };
    let last = parts.len();
    let done = (1..).zip(parts).map(|(number, part)| {
        let end = (number == last).then(|| done::end(told, shown));
        let history = done::history(part, number == 1);
        view! {
            <Leaf of=of.clone() number=number + 1>
                {history}
                {end}
            </Leaf>
        }
        .into_any()
    });
    let done: Vec<AnyView> = done.collect();
    let measured =
        (leaf::draft(told), checks::table(told, shown), packs::packs(told, shown)).into_any();
    view! {
        <Leaf of number=1 first=leaf::first(told)>
            {measured}
        </Leaf>
        {done}
    }
    .into_any()
}
