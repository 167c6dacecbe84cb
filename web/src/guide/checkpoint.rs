//! A gate over a whole screen: what is still missing, or that it is open.

use leptos::prelude::*;
use words::{say, t};

use crate::parts::{Bar, Gate, Sign, State};

/// The gate of that name. `words`: what it asks for; `missing`: one sentence each.
pub fn checkpoint(title: &'static str, words: &'static str, missing: &[String]) -> AnyView {
    let Some((first, more)) = missing.split_first() else {
        return view! {
            <Gate bar=Bar::Open title words>
                <State sign=Sign::In words=t("Open")/>
            </Gate>
        }
        .into_any();
    };
    let more = match more.len() {
        0 => String::new(),
        more => say!(" And {more} more."),
    };
    let (words, to_do) = (format!("{words} {first}{more}"), say!("{} to do", missing.len()));
    view! {
        <Gate bar=Bar::Shut title words>
            <State sign=Sign::Lock words=to_do/>
        </Gate>
    }
    .into_any()
}
