//! x

use leptos::prelude::*;

use super::{Guide, GuideScreen, Here};

/// x
pub fn screen(guide: Guide, _step: Option<String>) -> AnyView {
    let act = || ().into_any();
    view! { <GuideScreen guide here=Here::Step back=(guide.of.at_job(), "Job") act><p/></GuideScreen> }.into_any()
}
