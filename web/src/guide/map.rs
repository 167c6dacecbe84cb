//! x

use leptos::prelude::*;

use super::{Guide, GuideScreen, Here};

/// x
pub fn screen(guide: Guide) -> AnyView {
    let act = || ().into_any();
    view! { <GuideScreen guide here=Here::Job back=("/".to_owned(), "Bench") act><p/></GuideScreen> }.into_any()
}
