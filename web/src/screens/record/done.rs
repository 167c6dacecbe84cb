//! What was done, in order; then what to mind, and who signs.

use job::{Record, Shown, apart};
use leptos::prelude::*;

use crate::device::now::now;
use crate::parts::{Glyph, Icon};

/// Lines of history that fit on a leaf above cautions and signatures.
const LINES: usize = 20;

/// The history in parts of one leaf each; one part, if an empty one, at least.
pub fn parts(history: &[(String, String)]) -> Vec<&[(String, String)]> {
    if history.is_empty() { vec![history] } else { history.chunks(LINES).collect() }
}

/// Times and sentences.
pub fn history(part: &[(String, String)], is_first: bool) -> AnyView {
    let row = |(at, sentence): &(String, String)| {
        view! {
            <tr>
                <td class="nowrap">{at.clone()}</td>
                <td>{sentence.clone()}</td>
            </tr>
        }
    };
    let title = if is_first { "What was done" } else { "What was done, further" };
    view! {
        <h2>{title}</h2>
        <table class="tbl tbl--done">
            <thead class="vh">
                <tr>
                    <th scope="col">"When"</th>
                    <th scope="col">"What"</th>
                </tr>
            </thead>
            <tbody>{part.iter().map(row).collect_view()}</tbody>
        </table>
    }
    .into_any()
}

/// The end of the last leaf.
pub fn end(told: &Record, shown: Shown) -> AnyView {
    let stands = match told.draft.is_empty() {
        true => "Nothing on this record was stale, out or missing when it was printed.",
        false => "Draft. The reasons stand on page 1.",
    };
    let when = apart(now(), 0, shown.utc_offset);
    view! {
        <div class="box box--c">
            <h2>
                <Icon glyph=Glyph::Warn/>
                " Cautions"
            </h2>
            <ul class="ticks">
                <li>
                    "The unit’s own manual and local rules come first. This record is no permit: who signs, answers for the work."
                </li>
                <li>
                    "The limits were typed by the user from the sources named beside them. The app holds none of its own."
                </li>
                <li>{told.not_recorded.clone()}</li>
                {told.notes.iter().map(|note| view! { <li>{note.clone()}</li> }).collect_view()}
            </ul>
        </div>
        <div class="sign">
            <p><span></span>"Rebuilt by"</p>
            <p><span></span>"Packs and readings seen by"</p>
            <p><span></span>"Received by owner"</p>
        </div>
        <p class="small">{format!("{stands} Job {}, shown {when}.", told.number)}</p>
    }
    .into_any()
}
