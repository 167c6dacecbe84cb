//! Verdicts, gates and rows.

use leptos::prelude::*;
use words::t;

use super::Samples;
use crate::parts::{Bar, Gate, Glyph, Icon, Row, Sign, Spec, Stage, State, Strip, Tag};
use crate::pictures::Picture;
use crate::pictures::band::Band;

fn band() -> Band {
    Band { name: t("Lash, mm").to_owned(), low: 0.273, high: 0.477, near: 0.03, ..Band::default() }
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
        (read(0.38), Sign::In, None, t("0.38, limits 0.27 to 0.48")),
        (read(0.46), Sign::Near, None, t("within its ± of 0.48: read again")),
        (read(0.53), Sign::Out, None, t("0.53, limit 0.48")),
        (Band { stale: true, ..read(0.38) }, Sign::Stale, None, t("read 10:05, B1 changed 10:22")),
        (
            Band { predicted: Some((0.376, 0.03)), ..band() },
            Sign::Open,
            None,
            t("not read; diamond is the prediction"),
        ),
        (
            coarse,
            Sign::Near,
            Some(t("Too coarse")),
            t("the band is narrower than this gauge can tell"),
        ),
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
        <Samples title=t("Verdicts")>
            {rows.map(row).collect_view()}
            <Row title=t("End play") note=t("Opens when reverse is in band.")>
                <State sign=Sign::Lock/>
            </Row>
        </Samples>
    }
}

#[component]
pub fn Gates() -> impl IntoView {
    view! {
        <Samples title=t("Gates")>
            <Gate bar=Bar::Shut title=t("Shut.") words=t("Says what is still missing.")>
                <State sign=Sign::Lock words=t("2 to do")/>
            </Gate>
            <Gate bar=Bar::Open title=t("Open.") words=t("Signed JO and SA, 11:42.")>
                <State sign=Sign::In words=t("Open")/>
            </Gate>
            <Gate bar=Bar::Stale title=t("Broken.") words=t("It was open; B1 changed since.")>
                <State sign=Sign::Stale words=t("1 of 4 stale")/>
            </Gate>
            <Gate bar=Bar::Shut title=t("Skipped by hand.") words=t("Reason stands on the record.")>
                <State sign=Sign::Near words=t("Skipped")/>
            </Gate>
        </Samples>
    }
}

#[component]
pub fn Rows() -> impl IntoView {
    let stages =
        vec![Stage::Done, Stage::Done, Stage::Stale, Stage::Here, Stage::ToDo, Stage::ToDo];
    view! {
        <Samples title=t("Rows, tags, stages")>
            <div class="line">
                <Tag words="B2"/>
                <Tag words="B2" big=true/>
            </div>
            <Strip
                stages
                label=t("Stages: Look done, Strip done, Judge stale, Shim here, Close to do, Prove to do")
            />
            <Row title=t("Settings and backup") note=t("last backup 3 days ago") href="/settings">
                <Icon glyph=Glyph::Go/>
            </Row>
            <Spec id="sample-spec" title=t("Pinion depth gap") sign=Sign::In words=t("Typed")>
                <p class="small">{t("Source: own manual, p. 118")}</p>
            </Spec>
            <div class="fit">
                <div class="fit__top">
                    <span>{t("Fit next: B2")}</span>
                    <span class="nowrap">{t("trial 3")}</span>
                </div>
                <div class="fit__body">
                    <p>
                        <b>{t("You will read")}</b>
                        " "
                        <span class="dim">{t("at your 30 mm arm")}</span>
                    </p>
                    <p>
                        <span class="fig fig--5">"0.38"</span>
                        " "
                        <b class="t-2">{t("± 0.03 mm")}</b>
                    </p>
                </div>
            </div>
        </Samples>
    }
}
