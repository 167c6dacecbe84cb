//! Verdicts, gates and rows.

use leptos::prelude::*;

use super::Samples;
use crate::parts::{Bar, Gate, Glyph, Icon, Row, Sign, Spec, Stage, State, Strip, Tag};
use crate::pictures::Picture;
use crate::pictures::band::Band;

fn band() -> Band {
    Band { name: "Lash, mm".to_owned(), low: 0.273, high: 0.477, near: 0.03, ..Band::default() }
}

fn read(value: f64) -> Band {
    Band { readings: vec![value], ..band() }
}

/// Two places, as the pictures want them; the samples need no rounding rule.
fn two_places(value: f64) -> String {
    let hundredths = (value * 100.0).round() as i64;
    format!("{}.{:02}", hundredths / 100, hundredths % 100)
}

#[component]
pub fn Verdicts() -> impl IntoView {
    let coarse = Band { low: 0.36, high: 0.38, near: 0.03, ..read(0.37) };
    let rows = [
        (read(0.38), Sign::In, None, "0.38, limits 0.27 to 0.48"),
        (read(0.46), Sign::Near, None, "within its ± of 0.48: read again"),
        (read(0.53), Sign::Out, None, "0.53, limit 0.48"),
        (Band { stale: true, ..read(0.38) }, Sign::Stale, None, "read 10:05, B1 changed 10:22"),
        (
            Band { predicted: Some((0.376, 0.03)), ..band() },
            Sign::Open,
            None,
            "not read; diamond is the prediction",
        ),
        (coarse, Sign::Near, Some("Too coarse"), "the band is narrower than this gauge can tell"),
    ];
    let row = |(band, sign, words, note): (Band, Sign, Option<&str>, &'static str)| {
        let words = words.unwrap_or(sign.word()).to_owned();
        view! {
            <div class="row">
                <Picture drawing=band.narrow(two_places)/>
                <State sign words/>
                <p class="dim span">{note}</p>
            </div>
        }
    };
    view! {
        <Samples title="Verdicts">
            {rows.map(row).collect_view()}
            <Row title="End play" note="Opens when reverse is in band.">
                <State sign=Sign::Lock/>
            </Row>
        </Samples>
    }
}

#[component]
pub fn Gates() -> impl IntoView {
    view! {
        <Samples title="Gates">
            <Gate bar=Bar::Shut title="Shut." words="Says what is still missing.">
                <State sign=Sign::Lock words="2 to do"/>
            </Gate>
            <Gate bar=Bar::Open title="Open." words="Signed JO and SA, 11:42.">
                <State sign=Sign::In words="Open"/>
            </Gate>
            <Gate bar=Bar::Stale title="Broken." words="It was open; B1 changed since.">
                <State sign=Sign::Stale words="1 of 4 stale"/>
            </Gate>
            <Gate bar=Bar::Shut title="Skipped by hand." words="Reason stands on the record.">
                <State sign=Sign::Near words="Skipped"/>
            </Gate>
        </Samples>
    }
}

#[component]
pub fn Rows() -> impl IntoView {
    let stages =
        vec![Stage::Done, Stage::Done, Stage::Stale, Stage::Here, Stage::ToDo, Stage::ToDo];
    view! {
        <Samples title="Rows, tags, stages">
            <div class="line">
                <Tag words="B2"/>
                <Tag words="B2" big=true/>
            </div>
            <Strip
                stages
                label="Stages: Look done, Strip done, Judge stale, Shim here, Close to do, Prove to do"
            />
            <Row title="Settings and backup" note="last backup 3 days ago" href="/settings">
                <Icon glyph=Glyph::Go/>
            </Row>
            <Spec id="sample-spec" title="Pinion depth gap" sign=Sign::In words="Typed">
                <p class="small">"Source: own manual, p. 118"</p>
            </Spec>
            <div class="fit">
                <div class="fit__top">
                    <span>"Fit next: B2"</span>
                    <span class="nowrap">"trial 3"</span>
                </div>
                <div class="fit__body">
                    <p>
                        <b>"You will read"</b>
                        " "
                        <span class="dim">"at your 30 mm arm"</span>
                    </p>
                    <p>
                        <span class="fig fig--5">"0.38"</span>
                        " "
                        <b class="t-2">"± 0.03 mm"</b>
                    </p>
                </div>
            </div>
        </Samples>
    }
}
