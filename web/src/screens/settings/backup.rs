//! The backup: one file with everything in it; the readings for other programs.

use job::files::since_backup;
use job::{date, hour_minute};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use words::{say, t};

use crate::bench::export::{View, last_backup};
use crate::bench::use_bench;
use crate::device::file::{Handed, shares_files};
use crate::device::now::{use_now, utc_offset_minutes};
use crate::lock::use_lock;
use crate::parts::{
    Facts, Glyph, Icon, Message, Notice, Row, Says, Sign, State, live, press, words,
};

/// When the last backup was made, and what has been written since.
#[component]
pub fn Backup(
    /// What came of the last press, if there was one.
    says: RwSignal<Option<Says>>,
    /// Makes one, for the share sheet.
    share: Callback<()>,
) -> impl IntoView {
    let (bench, now, lock) = (use_bench(), use_now(), use_lock());
    let told = Memo::new(move |_| {
        says.track();
        let last = last_backup().map(|last| (last.at, last.entries));
        since_backup(last, bench.entries(), now.get())
    });
    let badge = live(move || match told.with(|told| told.due) {
        true => view! { <State sign=Sign::Near words=t("Backup due")/> }.into_any(),
        false => view! { <State sign=Sign::In words=t("Backed up")/> }.into_any(),
    });
    let facts = live(move || {
        says.track();
        let (when, held) = match last_backup() {
            Some(last) => (moment(last.at), last.entries.to_string()),
            None => (t("none known").to_owned(), "0".to_owned()),
        };
        let here = bench.entries().to_string();
        let facts =
            vec![(t("Last backup"), when), (t("Entries in it"), held), (t("Entries here"), here)];
        view! { <Facts facts/> }.into_any()
    });
    let unread = Memo::new(move |_| bench.unread());
    let newer = live(move || {
        let words = say!("{} cannot be shown here. They are kept and backed up.", unread.get());
        let title = t("Some entries are from a newer version.");
        (unread.get() != 0).then(|| view! { <Notice glyph=Glyph::New title words/> }).into_any()
    });
    let shares = shares_files();
    let share = live(move || {
        let button = || {
            view! {
                <button class="btn" type="button" on:click=press(share)>
                    {t("Share a backup")}
                </button>
            }
        };
        (shares && lock.is_open()).then(button).into_any()
    });
    view! {
        <div class="sheet">
            <div class="h">
                <h2>{t("Backup")}</h2>
                {badge}
            </div>
            <Notice
                glyph=Glyph::Clock
                title=words(move || told.get().when)
                words=words(move || told.get().since)
                due=Signal::derive(move || told.with(|told| told.due))
            />
            <Message id="backup-says" says=says/>
            {facts}
            {newer}
            {share}
            <Row title=t("Bring in a file") note=t("A backup, a job or a unit sheet.") href="/bring-in">
                <Icon glyph=Glyph::Go/>
            </Row>
            <p class="small">
                {t("A backup is one file with everything in it. Keep one off this device.")}
            </p>
        </div>
    }
}

/// The readings for other programs.
#[component]
pub fn Readings() -> impl IntoView {
    let (bench, says) = (use_bench(), RwSignal::new(None::<Says>));
    let write = move |view| {
        Callback::new(move |()| {
            spawn_local(async move {
                let told = match bench.readings(view, false).await {
                    Ok((_, Handed::NotTaken)) => return,
                    Ok((name, _)) => Says::Told(say!("Saved: {name}.")),
                    Err(why) => Says::Refused(why.to_string()),
                };
                says.try_set(Some(told));
            });
        })
    };
    view! {
        <div class="sheet">
            <h2>{t("Readings for other programs")}</h2>
            <div class="btns">
                <button class="btn" type="button" on:click=press(write(View::Csv))>
                    {t("Table (CSV)")}
                </button>
                <button class="btn" type="button" on:click=press(write(View::Text))>
                    {t("Plain text")}
                </button>
            </div>
            <Message id="readings-says" says=says/>
            <p class="small">
                {t("In the table a text that a spreadsheet would take for a formula has an apostrophe before it.")}
            </p>
        </div>
    }
}

fn moment(at: i64) -> String {
    let offset = utc_offset_minutes(at);
    format!("{}, {}", date(at, offset), hour_minute(at, offset))
}
