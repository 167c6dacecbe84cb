//! What to do where the rolling torque is out: no formula, so a small step and another reading.

use crate::{Check, CheckState, CheckView, Position, Sheet, sheet::listed};

/// What to do where the rolling torque is out of its band.
///
/// It is not proportional to preload and is never predicted. The step is common practice, no
/// source.
pub(crate) fn look(checks: &[CheckView], sheet: &Sheet) -> Option<String> {
    let view = checks.iter().find(|view| view.check == Check::Torque)?;
    let (judged, band) = (view.judged.as_ref()?, view.band?);
    if view.state != CheckState::Out {
        return None;
    }
    let is_high = judged.mean > band.high();
    let positions = sheet.positions();
    let thicker_tightens = |position: &Position| sheet.signs(position).1 > 0;
    let tags = |thicker: bool| -> Vec<&str> {
        positions
            .iter()
            .filter(|position| position.setting_sign != 0)
            .filter(|position| (thicker_tightens(position) != is_high) == thicker)
            .map(|position| position.slot.tag())
            .collect()
    };
    let ways = [(tags(true), "thicker"), (tags(false), "thinner")];
    let ways: Vec<String> = ways
        .iter()
        .filter(|(tags, _)| !tags.is_empty())
        .map(|(tags, way)| format!("{} {way}", tags.join(" or ")))
        .collect();
    let over = if is_high { "over" } else { "under" };
    Some(format!(
        "Rolling torque is {over} its band. No formula says by how much: make {} by about 0.02 mm, \
         then read every setting again.",
        listed(&ways).replace(" and ", ", or ")
    ))
}
