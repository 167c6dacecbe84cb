//! Reading: a series at the places of one check, judged while it is typed.

mod act;
mod band;
mod series;

use job::{Check, Field, Figure, Preview, Sheet, figure};
use leptos::prelude::*;
use words::{say, t};

use super::frame::{Here, JobScreen, OpenJob};
use crate::parts::{Empty, Keys, Pad, Slots, live, words};
use crate::pictures::Picture;
use crate::pictures::gauge::Gauge;
use series::Series;

/// Reading.
#[component]
pub fn ReadingScreen(
    /// The job.
    job: String,
    /// The check that is read.
    check: String,
) -> impl IntoView {
    let of = OpenJob::of(&job);
    match Check::named(&check) {
        Some(check) => view! { <Reading series=Series::of(of, check)/> }.into_any(),
        None => view! { <NoSuchCheck of/> }.into_any(),
    }
}

#[component]
fn Reading(series: Series) -> impl IntoView {
    let of = series.of;
    let act = move || view! { <act::Keep series/> }.into_any();
    view! {
        <JobScreen of here=Here::Reading back=(of.at("setup"), t("Set-up")) act>
            <div class="cols read">
                <section class="col">
                    <Head series/>
                    <band::Live series/>
                </section>
                <section class="col">
                    <Typed series/>
                </section>
                <section class="col">
                    <SetTheGauge series/>
                </section>
            </div>
        </JobScreen>
    }
}

/// What is read, and the arm it is read on.
#[component]
fn Head(series: Series) -> impl IntoView {
    let arm = move |preview: &Preview| {
        let radius = preview.arm.as_ref().map(|arm| arm.in_unit(measure::Unit::Millimetre));
        let shown = series.of.shown();
        match radius {
            Some(radius) => figure(radius, Figure::Radius, shown),
            None => t("not typed").to_owned(),
        }
    };
    let chip = move || {
        let radius = series.look(arm).unwrap_or_default();
        view! {
            <a class="chip nowrap" href=series.of.at_field(Field::ArmRadius)>
                {t("Arm ")}
                <b>{radius}</b>
            </a>
        }
    };
    view! {
        <div class="line line--tight">
            <h1 class="grow t-2">{series.check.name()}</h1>
            {live(move || series.check.has_arm().then(chip).into_any())}
        </div>
        {live(move || is_preload(series).then(|| view! { <p class="small">{t("A preload: read the play, the app works it out.")}</p> }).into_any())}
    }
}

/// The slots and the pad, and what is said about them.
#[component]
fn Typed(series: Series) -> impl IntoView {
    let keys = Keys::here();
    request_animation_frame(move || keys.open_first_empty());
    let unit = Memo::new(move |_| series.unit());
    let slots = live(move || {
        unit.track();
        // Drawn anew while it is typed in, the pad would lose the field.
        view! { <Slots slots=untrack(|| series.slots())/> }.into_any()
    });
    view! {
        {slots}
        <series::Said series/>
        <Pad unit=Signal::derive(move || unit.get().0)/>
        <p class="small">
            {words(move || series.look(|preview| note(series, preview)).unwrap_or_default())}
        </p>
    }
}

/// What is said under the pad: the prediction once it cannot lead the eye, and the band's ground.
fn note(series: Series, preview: &Preview) -> String {
    let shown = series.of.shown();
    let length = |value| figure(value, series.check.figure(), shown);
    let unit = series.check.shown_unit(shown);
    let prediction = match (&preview.predicted, &preview.fact) {
        (Some(it), _) => {
            say!("Predicted {} ± {} {unit}. ", length(it.mean), length(it.expanded))
        }
        (None, None) if series.check == Check::Torque => String::new(),
        (None, None) => say!(
            "A prediction stays hidden until all {} are in, so it cannot lead your eye. ",
            series.check.stops().len(),
        ),
        (None, Some(_)) => String::new(),
    };
    say!(
        "{prediction}{} Digital gauge plugged in? Press its send button: the value lands here \
         and moves on.",
        preview.band_says
    )
}

/// The picture of the gauge, and how to hold what.
#[component]
fn SetTheGauge(series: Series) -> impl IntoView {
    let picture = live(move || {
        let drawing = series.look(|preview| gauge(series, preview).map(|gauge| gauge.draw()));
        drawing.flatten().map(|drawing| view! { <Picture drawing/> }).into_any()
    });
    let how = words(move || series.look(|preview| preview.how.clone()).unwrap_or_default());
    view! {
        <div class="sheet sheet--quiet">
            <h2>{t("Set the gauge")}</h2>
            {picture}
            <p>{how}</p>
        </div>
    }
}

fn is_preload(series: Series) -> bool {
    let is = |(_, sheet, _): (&_, &Sheet, &_), _| sheet.is_preload(series.check);
    series.of.look(is) == Some(true)
}

/// The picture of the gauge; a torque has none.
fn gauge(series: Series, preview: &Preview) -> Option<Gauge> {
    let shown = series.of.shown();
    Some(match series.check {
        Check::Depth => {
            let limit = |value| figure(value, Figure::Reading, shown);
            let gap =
                preview.band.map(|band| say!("{} to {}", limit(band.low()), limit(band.high())));
            Gauge::Depth { gap: gap.unwrap_or_default() }
        }
        Check::Torque => return None,
        Check::Setting(_) => Gauge::EndPlay,
        Check::Lash(_) => {
            let radius = preview.arm.as_ref().map(|arm| {
                let radius = arm.in_unit(measure::Unit::Millimetre);
                format!("{} {}", figure(radius, Figure::Radius, shown), shown.units.length)
            });
            let on = |on| series.of.look(|(_, sheet, _), _| sheet.shaft(on));
            let on = preview.on.and_then(on).unwrap_or_else(|| "shaft".to_owned());
            Gauge::Lash { radius: radius.unwrap_or_default(), on }
        }
    })
}

#[component]
fn NoSuchCheck(of: OpenJob) -> impl IntoView {
    let act = || ().into_any();
    view! {
        <JobScreen of here=Here::Reading back=(of.at("setup"), t("Set-up")) act>
            <h1 class="vh">{t("No such check")}</h1>
            <Empty title=t("No such check here.") words=t("Choose one on the set-up.")>
                <a class="btn" href=of.at("setup")>{t("Set-up")}</a>
            </Empty>
        </JobScreen>
    }
}
