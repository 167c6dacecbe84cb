//! The record: on the screen as it prints, as a file, in the owner's words, and lines for the
//! invoice.
//!
//! What is shown is what the file holds: both are written by `job::report`. All of it is a piece of
//! code of its own: nothing here may be named by the rest of the app but [`screen()`].

mod hand_over;
mod photos;

use job::report::{Paper, body};
use job::{InvoiceLine, Owner, Record, Shown, invoice, owner, record};
use leptos::prelude::*;
use words::{say, t};

use crate::address::Screen;
use crate::device::now::now;
use crate::guide::{Guide, Lacks};
use crate::page;
use crate::parts::{Act, Glyph, Icon, PaperChoice, Row, live, paper_class};
use crate::screens::frame::{Here, JobScreen};
use hand_over::HandOver;
use photos::Shots;

/// Everything that stands on the record of a job.
#[derive(Clone, Debug, PartialEq)]
struct Told {
    record: Record,
    owner: Owner,
    invoice: Vec<InvoiceLine>,
    shown: Shown,
}

impl Told {
    /// As it is now; `None` while the steps of the job are on their way.
    fn of(guide: Guide) -> Option<Told> {
        let plan = guide.look(|plan, _, _| plan.clone());
        let coming = plan.is_none() && guide.lacks() == Some(Lacks::Coming);
        let told = guide.of.look(|(job, sheet, _), shown| {
            if coming && job.guide.scope.is_some() {
                return None;
            }
            let plan = plan.as_ref();
            let record = record(job, sheet, plan, shown);
            let (owner, invoice) =
                (owner(job, &record, plan, shown), invoice(job, &record, plan, shown));
            Some(Told { record, owner, invoice, shown })
        });
        told.flatten()
    }

    /// The same on paper, made at this moment.
    fn paper(&self) -> Paper<'_> {
        let Told { record, owner, invoice, shown } = self;
        Paper { record, owner, invoice, shown: *shown, at: now() }
    }
}

/// The record of a job.
pub fn screen(screen: Screen) -> AnyView {
    let Screen::Record { job } = screen else { return ().into_any() };
    let guide = Guide::of(&job);
    let (of, paper) = (guide.of, RwSignal::new(0));
    let told = Memo::new(move |_| Told::of(guide));
    page::name(Signal::derive(move || {
        told.with(|told| told.as_ref().map(|told| file_name(&told.record)))
    }));
    let (send, archive) = (Signal::stored(of.at("send")), Signal::stored(of.at("archive")));
    let print = Callback::new(|()| {
        // A browser that cannot print says so itself.
        window().print().ok();
    });
    let act =
        move || view! { <Act words=t("Print or save PDF") glyph=Glyph::Print on_press=print/> };
    view! {
        <JobScreen of here=Here::Record back=(of.at_job(), t("Job")) act=move || act().into_any()>
            <PaperChoice paper>
                <a class="btn" href="#hand-over">
                    {t("Hand over")}
                </a>
            </PaperChoice>
            {live(move || leaves(told.get(), paper))}
            <div class="screen">
                <HandOver told/>
                <Row title=t("Send this job") note=t("A file with its readings and photos.") href=send>
                    <Icon glyph=Glyph::Go/>
                </Row>
                <Row title=t("Tags and archive") note=t("Put the job away, make room.") href=archive>
                    <Icon glyph=Glyph::Go/>
                </Row>
            </div>
        </JobScreen>
    }
    .into_any()
}

/// What the browser proposes as the name of the printed file.
fn file_name(told: &Record) -> String {
    say!("Job {} · {} · gearcase record", told.number, told.boat)
}

/// The leaves. The text of `job::report` is safe to put in: all that was typed is escaped there.
fn leaves(told: Option<Told>, paper: RwSignal<usize>) -> AnyView {
    let Some(told) = told else {
        return view! { <p role="status">{t("One moment")}</p> }.into_any();
    };
    let shots = Shots::of(&told.record.photos);
    let class = move || paper_class(paper.get());
    let html = move || body(&told.paper(), &|id| shots.address(id));
    view! { <article class=class inner_html=html></article> }.into_any()
}
