//! The order of work, and why it is that one.

use job::InfluenceView;
use leptos::prelude::*;
use words::t;

use super::Map;
use crate::parts::Tag;

/// The packs in the order of work.
pub fn order(map: Map) -> Option<AnyView> {
    map.look(|told| sheet(map, told))
}

fn sheet(map: Map, told: &InfluenceView) -> AnyView {
    let tags = told.rows.iter().enumerate().map(|(at, row)| {
        view! {
            {(at != 0).then_some(" → ")}
            <Tag words=row.slot.tag()/>
        }
    });
    let tags = tags.collect_view();
    let says = (!told.says.is_empty()).then(|| view! { <p class="small">{told.says.clone()}</p> });
    view! {
        <div class="sheet">
            <h2>{t("So the order is")}</h2>
            <p class="line">{tags}</p>
            <p>{told.order_says()}</p>
            {says}
            <a class="btn" href=format!("{}#why", map.of.at("setup"))>
                {t("Where the numbers come from")}
            </a>
        </div>
    }
    .into_any()
}
