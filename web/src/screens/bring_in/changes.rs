//! What will change, row by row.

use job::files::{BookChange, Whole};
use job::{BookId, date, hour_minute};
use leptos::prelude::*;
use words::{say, t};

use super::{BringIn, Looked, beside, read};
use crate::device::now::utc_offset_minutes;
use crate::parts::{Glyph, Icon, Notice, Sign, State, live, press};
use crate::screens::pin::Giving;

/// All that a file changes.
pub fn changes(at: BringIn, looked: &Looked) -> AnyView {
    let heading = live(move || match at.kept.get() {
        true => view! { <h1>{t("Brought in")}</h1> }.into_any(),
        false => view! { <h1>{t("Before it is kept")}</h1> }.into_any(),
    });
    let pairs = beside::pairs(at, looked);
    view! {
        <div class="cols">
            <section class="col">
                <div class="head">
                    {heading}
                    <p>{made(looked)}</p>
                </div>
                {whole(looked)}
                {list(at, looked)}
                {not_read(looked)}
            </section>
            <section class="col">
                {pairs}
                {live(move || take_back(at))}
                <read::Chooser at words=t("Choose another file")/>
            </section>
        </div>
    }
    .into_any()
}

/// When and where the file was made.
fn made(looked: &Looked) -> String {
    match &looked.parcel.head {
        Some(head) => {
            let offset = utc_offset_minutes(head.at);
            let (day, time) = (date(head.at, offset), hour_minute(head.at, offset));
            let part = match head.part {
                (_, 1) => String::new(),
                (part, of) => say!(" File {part} of {of}."),
            };
            say!("Made {day} {time} by version {}.{part}", head.app)
        }
        None => t("Nothing in it says when it was made.").to_owned(),
    }
}

/// Whether the file is all there.
fn whole(looked: &Looked) -> Option<AnyView> {
    let words = match looked.parcel.whole {
        Whole::Yes | Whole::Unsaid => None,
        Whole::CutOff => Some((
            t("The file was cut off."),
            t("What came whole is below. Take a complete copy if there is one."),
        )),
        Whole::Changed => Some((
            t("The file was changed after it was made."),
            t(
                "A digit may be another one now. Take another copy if there is one; if not, hold every reading against its note.",
            ),
        )),
    };
    let damaged = looked.parcel.damaged;
    let photos = (damaged > 0).then(|| {
        let title = match damaged {
            1 => t("1 photo came damaged.").to_owned(),
            damaged => say!("{damaged} photos came damaged."),
        };
        view! { <Notice glyph=Glyph::Warn title words=t("They are left out.") due=true/> }
    });
    let notice = words.map(|(title, words)| {
        view! { <Notice glyph=Glyph::Warn title words due=true/> }
    });
    Some((notice, photos).into_any())
}

fn list(at: BringIn, looked: &Looked) -> AnyView {
    let rows: Vec<AnyView> = looked.changes.books.iter().map(|change| row(at, change)).collect();
    let photos = (looked.photos > 0).then(|| {
        let state = view! { <State sign=Sign::In words=t("Adds")/> }.into_any();
        of_three(looked.photos, t("photos").to_owned(), String::new(), state)
    });
    let state = live(move || match at.kept.get() {
        true => view! { <State sign=Sign::In words=t("Kept")/> }.into_any(),
        false => view! { <State sign=Sign::Open words=t("Not kept yet")/> }.into_any(),
    });
    view! {
        <div class="sheet">
            <div class="h">
                <h2>{t("What changes")}</h2>
                {state}
            </div>
            {rows}
            {photos}
            <p>
                <b>{t("Nothing here is overwritten.")}</b>
                {t(" Entries are added to what you have.")}
            </p>
        </div>
    }
    .into_any()
}

fn row(at: BringIn, change: &BookChange) -> AnyView {
    let (adds, had) = (change.adds, change.had);
    let noun = if adds == 1 { t("entry") } else { t("entries") };
    let place = match (&change.book, change.number, had) {
        (BookId::Job(_), Some(number), 0) => say!("as a new job, number {number}"),
        (BookId::Job(_), Some(number), _) => say!("into job number {number}"),
        (BookId::Sheet(_), _, 0) => t("as a new unit sheet").to_owned(),
        (BookId::Sheet(_), ..) => t("into a unit sheet you have").to_owned(),
        _ => say!("into {book}", book = change.title),
    };
    let what = format!("{noun} {place}");
    let note = match had {
        0 => change.title.clone(),
        had => say!("{}, you have {had}", change.title),
    };
    let to_judge = change.beside.iter().filter(|pair| !pair.agree()).count();
    let state = live(move || {
        let (sign, words) = match (to_judge, adds, at.kept.get()) {
            (0, 0, _) => (Sign::In, t("Same").to_owned()),
            (0, ..) => (Sign::In, t("Adds").to_owned()),
            (_, _, true) => (Sign::In, t("Judged").to_owned()),
            (count, ..) => (Sign::Near, say!("{count} to judge")),
        };
        view! { <State sign words/> }.into_any()
    });
    of_three(adds, what, note, state)
}

fn of_three(count: usize, what: String, note: String, state: AnyView) -> AnyView {
    view! {
        <div class="row row--3">
            <b class="count">{count}</b>
            <p>
                <b>{what}</b>
                <br/>
                <bdi class="dim long">{note}</bdi>
            </p>
            {state}
        </div>
    }
    .into_any()
}

fn not_read(looked: &Looked) -> Option<AnyView> {
    let unread = looked.changes.unread;
    (unread > 0).then(|| {
        let entries = entries(unread);
        view! {
            <div class="sheet sheet--quiet">
                <h2>{t("Not read")}</h2>
                <p>
                    {say!(
                        "{entries} could not be read by this version. Kept and exported as it came. Update to read what a newer one wrote.",
                    )}
                </p>
            </div>
        }
        .into_any()
    })
}

/// After it was kept: out again.
fn take_back(at: BringIn) -> AnyView {
    let Some(brought) = at.bench.brought().filter(|_| at.kept.get()) else { return ().into_any() };
    if !at.lock.is_open() {
        return view! {
            <div class="sheet">
                <h2>{t("Take it all back?")}</h2>
                <p>{t("The shop’s PIN comes before what was brought in goes out again.")}</p>
                {Giving::here().form()}
            </div>
        }
        .into_any();
    }
    let entries = entries(brought.entries());
    let undo = Callback::new(move |()| at.lift_out());
    view! {
        <Notice
            glyph=Glyph::Undo
            title=t("Take it all back?")
            words=say!("Undo lifts {entries} out again, as long as nothing was written on top and this screen stands.")
        >
            <button class="btn" type="button" on:click=press(undo)>
                <Icon glyph=Glyph::Undo/>
                {t("Undo all")}
            </button>
        </Notice>
    }
    .into_any()
}

/// "1 entry", "14 entries".
pub fn entries(count: usize) -> String {
    match count {
        1 => t("1 entry").to_owned(),
        count => say!("{count} entries"),
    }
}
