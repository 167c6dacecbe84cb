//! What is kept on this device, and how safely.

use leptos::prelude::*;
use measure::{Decimal, Mark, show};
use words::{say, t};

use crate::device::install::{Install, use_installer};
use crate::device::protection::{Promised, Protection, use_protection};
use crate::parts::{Facts, Glyph, Icon, Keys, Notice, Row, Sign, State, live};

#[component]
pub fn KeptSafe() -> impl IntoView {
    let (protection, installer) = (use_protection(), use_installer());
    let promised = move || match protection.promised() {
        Promised::Yes => "yes",
        Promised::No => "no",
        Promised::Unknown => t("not told"),
    };
    let installed = move || match installer.state() {
        Install::Done => "installed",
        Install::Offered | Install::ByShare | Install::ByMenu => t("in the browser"),
    };
    let mark = Keys::here().mark;
    let facts = live(move || {
        let (room, mark) = (protection.room(), mark.get());
        let size = |bytes: Option<f64>| match bytes {
            Some(bytes) => megabytes(bytes, mark),
            None => t("not told").to_owned(),
        };
        let facts = vec![
            (t("Device promised to keep it"), promised().to_owned()),
            (t("On this device"), installed().to_owned()),
            (t("Room used"), size(room.map(|it| it.used))),
            (t("Room left"), size(room.map(|it| it.left))),
        ];
        view! { <Facts facts/> }.into_any()
    });
    let badge = live(move || match protection.promised() {
        Promised::Yes => view! { <State sign=Sign::In words=t("Promised")/> }.into_any(),
        Promised::No => view! { <State sign=Sign::Near words=t("Not promised")/> }.into_any(),
        Promised::Unknown => ().into_any(),
    });
    let unsure = live(move || match protection.promised() {
        Promised::No => unsure(protection).into_any(),
        Promised::Yes | Promised::Unknown => ().into_any(),
    });
    view! {
        <div class="sheet">
            <div class="h">
                <h2>{t("Kept safe")}</h2>
                {badge}
            </div>
            {unsure}
            {facts}
            <Row
                title=t("Make room")
                note=t("Find a finished job, put it away, let its photos go.")
                href="/find"
            >
                <Icon glyph=Glyph::Go/>
            </Row>
        </div>
    }
}

fn unsure(protection: Protection) -> impl IntoView {
    view! {
        <Notice
            glyph=Glyph::Warn
            title=t("The browser may clear the jobs when room runs out.")
            words=t("Ask it to keep them, and keep a backup off this device.")
            due=true
        >
            <button class="btn" type="button" on:click=move |_| protection.ask()>
                {t("Ask it to keep them")}
            </button>
        </Notice>
    }
}

/// Bytes in words, to a tenth of a megabyte; from a gigabyte on in gigabytes.
pub fn megabytes(bytes: f64, mark: Mark) -> String {
    const TENTH_OF_MB: i64 = 100_000;
    let tenths = bytes as i64 / TENTH_OF_MB;
    let written = |tenths| show(Decimal::new(tenths, 1), 1, mark);
    match tenths {
        10_000.. => say!("{} GB", written(tenths / 1_000)),
        _ => say!("{} MB", written(tenths)),
    }
}

#[cfg(test)]
mod tests {
    use wasm_bindgen_test::wasm_bindgen_test as test;

    use super::{Mark, megabytes};

    #[test]
    fn room_is_told_in_the_larger_unit_that_fits() {
        assert_eq!(megabytes(0.0, Mark::Point), "0.0 MB");
        assert_eq!(megabytes(420_000.0, Mark::Point), "0.4 MB");
        assert_eq!(megabytes(31_000_000.0, Mark::Point), "31.0 MB");
        assert_eq!(megabytes(2_190_000_000.0, Mark::Comma), "2,1 GB");
    }
}
