//! How out and in stand, as a sign and its word.

use job::guide::CountState;
use leptos::prelude::*;
use words::t;

use crate::parts::{Sign, State};

/// The state of a count.
pub fn count_state(state: CountState) -> AnyView {
    let (sign, words) = match state {
        CountState::NotCounted => (Sign::Open, t("To count")),
        CountState::ToFit => (Sign::Open, t("To fit")),
        CountState::Agree => (Sign::In, t("Agree")),
        CountState::Differ => (Sign::Out, t("Differ")),
    };
    view! { <State sign words/> }.into_any()
}
