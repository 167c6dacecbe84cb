//! A wait that has ended: said at once, heard and felt where the device can.

use job::guide::ClockView;
use leptos::prelude::*;
use words::t;

use super::Guide;
use crate::device::alert::{alert, badge};
use crate::parts::{Glyph, Notice, live, words};

/// Says what ends while one of the screens with running clocks is open.
#[component]
pub fn Ended(guide: Guide) -> impl IntoView {
    let done = done(guide);
    // Only what ends while one looks is new; what had ended before is on the bar.
    let before = done.get_untracked();
    let said = words(move || {
        let new = |says: &&String| !before.contains(says);
        done.with(|done| done.iter().filter(new).cloned().collect::<Vec<_>>().join(" "))
    });
    view! {
        <div role="alert" class="vh">
            {said}
        </div>
    }
}

/// The same on the other screens of the job, where no clocks stand: a notice.
pub fn elsewhere(guide: Guide) -> AnyView {
    let done = done(guide);
    live(move || {
        let words = done.get().join(" ");
        if words.is_empty() {
            return ().into_any();
        }
        let href = format!("{}#clocks", guide.of.at_job());
        view! {
            <Notice glyph=Glyph::Clock title=t("A wait is over.") words due=true>
                <a class="btn" href=href>
                    {t("Clocks")}
                </a>
            </Notice>
        }
        .into_any()
    })
}

/// What has ended and was not put away. When one more ends, the device makes itself noticed.
fn done(guide: Guide) -> Memo<Vec<String>> {
    let done = Memo::new(move |_| {
        let clocks = guide.clocks();
        let done = clocks.views.iter().filter(|view: &&ClockView| view.done);
        done.map(|view| view.says.clone()).collect::<Vec<_>>()
    });
    Effect::new(move |before: Option<usize>| {
        let now = done.with(Vec::len);
        if before.is_some_and(|before| now > before) {
            alert();
        }
        badge(now);
        now
    });
    done
}
