//! What stands around every screen of a guided job: plate, running clocks, places, undo, dock.

use job::guide::{ClockView, titled};
use leptos::context::Provider;
use leptos::prelude::*;
use words::t;

use super::ended::Ended;
use super::open::Lacks;
use super::{Guide, Here};
use crate::parts::{Act, Empty, Glyph, Notice, live};
use crate::screens::frame::{JobScreen, Reword};

/// A screen of a guided job that needs its steps; while they are not there, it says what is lacking.
#[component]
pub fn GuideScreen(
    /// The job.
    guide: Guide,
    /// Which screen it is.
    here: Here,
    /// Where back goes, and the name of that place.
    back: (String, &'static str),
    /// The one next act, an [`Act`](crate::parts::Act).
    #[prop(into)]
    act: ViewFn,
    /// What the screen shows.
    children: ChildrenFn,
) -> impl IntoView {
    let lacks = Memo::new(move |_| guide.lacks());
    let children = StoredValue::new(children);
    let act = move || {
        let act = act.clone();
        live(move || match lacks.get() {
            None => act.run(),
            Some(Lacks::Scope) => {
                view! { <Act words=t("Choose the scope") href=guide.of.at_job()/> }.into_any()
            }
            Some(Lacks::Coming | Lacks::Procedure) => ().into_any(),
        })
    };
    view! {
        <Frame guide here back act>
            {live(move || match lacks.get() {
                None => children.with_value(|children| children()).into_any(),
                Some(lacks) => lacking(guide, lacks),
            })}
        </Frame>
    }
}

/// The same for a screen that says itself what is lacking.
#[component]
pub fn Frame(
    /// The job.
    guide: Guide,
    /// Which screen it is.
    here: Here,
    /// Where back goes, and the name of that place.
    back: (String, &'static str),
    /// The one next act.
    #[prop(into)]
    act: ViewFn,
    /// What the screen shows.
    children: ChildrenFn,
) -> impl IntoView {
    let notes = Signal::derive(move || notes(guide));
    let reword = Reword(Callback::new(move |sentence: String| {
        guide.look(|plan, _, _| titled(&sentence, plan)).unwrap_or(sentence)
    }));
    let under = move || view! { <Running guide/> }.into_any();
    let children = StoredValue::new(children);
    view! {
        <Provider value=reword>
            <JobScreen of=guide.of here back act under notes>
                {children.with_value(|children| children())}
                <Ended guide/>
            </JobScreen>
        </Provider>
    }
}

/// What stands in place of the steps.
pub fn lacking(guide: Guide, lacks: Lacks) -> AnyView {
    match lacks {
        Lacks::Coming => ().into_any(),
        Lacks::Scope => view! {
            <Empty title=t("No scope yet.") words=t("Say on the job how much of the unit is done; its steps follow from that.")>
                <a class="btn" href=guide.of.at_job()>{t("Job")}</a>
            </Empty>
        }
        .into_any(),
        Lacks::Procedure => view! {
            <Notice
                glyph=Glyph::Warn
                title=t("The steps have not come.")
                words=t("This device has no file of this layout’s steps. Find a signal once, then try \
                       again. Set-up and readings work without it.")
                due=true
            >
                <button class="btn" type="button" on:click=move |_| guide.fetch()>
                    {t("Try again")}
                </button>
            </Notice>
        }
        .into_any(),
    }
}

/// Every wait of the job, also on its other screens.
#[component]
fn Running(guide: Guide) -> impl IntoView {
    live(move || {
        let clocks = guide.clocks();
        let warning = clocks.warning.clone().map(|words| {
            view! {
                <aside aria-label=t("Clock")>
                    <Notice glyph=Glyph::Clock title=t("Look at the clock.") words due=true/>
                </aside>
            }
        });
        if clocks.views.is_empty() {
            return warning.into_any();
        }
        let href = format!("{}#clocks", guide.of.at_job());
        let clock = |view: &ClockView| clock(view, href.clone());
        let clocks: Vec<AnyView> = clocks.views.iter().map(clock).collect();
        view! {
            {warning}
            <nav class="clocks" aria-label=t("Running clocks")>
                {clocks}
            </nav>
        }
        .into_any()
    })
}

fn clock(view: &ClockView, href: String) -> AnyView {
    let class = if view.done { "clock clock--done" } else { "clock" };
    let left = if view.done { t("done").to_owned() } else { format!("{} min", view.left) };
    view! {
        <a class=class href=href>
            <span class="dial" style:--p=view.percent.to_string()></span>
            <span>{view.name.clone()}</span>
            " "
            <b>{left}</b>
        </a>
    }
    .into_any()
}

/// What matters now at the places of the job.
fn notes(guide: Guide) -> Vec<(Here, String)> {
    let told = guide.look(|plan, log, course| {
        let next = course.next.and_then(|next| course.steps.get(next));
        let step = next.map(|step| (Here::Step, step.number.to_string()));
        let bagged = (!log.bagged.is_empty()).then(|| (Here::Ladder, log.bagged.len().to_string()));
        let percent = course.percent(plan);
        [Some((Here::Job, format!("{percent} %"))), step, bagged]
    });
    told.into_iter().flatten().flatten().collect()
}
