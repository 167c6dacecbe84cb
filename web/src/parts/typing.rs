//! What a key does to a text field, as if it had been typed there.
//! Each answers `None` where the browser refuses, which it does for no text field.

use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::{
    Event, EventInit, HtmlInputElement, ScrollIntoViewOptions, ScrollLogicalPosition, SelectionMode,
};
use measure::{Mark, Unit, with_unit};

/// The number fields of the page that can be typed in, in their order.
pub(super) fn number_inputs() -> impl Iterator<Item = HtmlInputElement> {
    let found = document().query_selector_all("input[data-number]:not(:disabled)").ok();
    let count = found.as_ref().map_or(0, |it| it.length());
    let all = (0..count).filter_map(move |at| found.as_ref()?.item(at)?.dyn_into().ok());
    // What is folded away or hidden takes no focus.
    let is_shown =
        |it: &HtmlInputElement| matches!(it.closest("[hidden], details:not([open])"), Ok(None));
    all.filter(is_shown)
}

/// Whether the element with this id has the focus.
pub(super) fn has_focus(id: &str) -> bool {
    document().active_element().is_some_and(|it| it.id() == id)
}

/// Scrolls so that the field, its label and its word are seen.
pub(super) fn show(id: &str) {
    let options = ScrollIntoViewOptions::new();
    options.set_block(ScrollLogicalPosition::Nearest);
    if let Some(input) = document().get_element_by_id(id) {
        // A field in a pair has no box of its own.
        let around = |what| input.closest(what).ok().flatten();
        let whole = around(".pair").or_else(|| around(".field")).unwrap_or_else(|| input.clone());
        whole.scroll_into_view_with_scroll_into_view_options(&options);
    }
}

/// Puts text where the caret is, in place of what is selected.
pub(super) fn insert(input: &HtmlInputElement, text: &str) -> Option<()> {
    let (start, end) = selection(input)?;
    change(input, start, end, text)
}

/// Puts the decimal mark in, unless the number being typed has one already; a sum has one in each.
pub(super) fn insert_mark(input: &HtmlInputElement, mark: Mark) -> Option<()> {
    let (start, end) = selection(input)?;
    let text: Vec<u16> = input.value().encode_utf16().collect();
    let part = |range: std::ops::Range<usize>| {
        String::from_utf16_lossy(text.get(range).unwrap_or_default())
    };
    let before = part(0..usize::try_from(start).ok()?);
    let after = part(usize::try_from(end).ok()?..text.len());
    let is_mark = |sign: char| ['.', ','].contains(&sign);
    let mut near = before.chars().rev().take_while(|sign| *sign != '+');
    if near.any(is_mark) || after.chars().take_while(|sign| *sign != '+').any(is_mark) {
        return None;
    }
    insert(input, mark_word(mark))
}

/// How the mark is written.
pub(super) fn mark_word(mark: Mark) -> &'static str {
    match mark {
        Mark::Point => ".",
        Mark::Comma => ",",
    }
}

/// Puts a minus before the number, or takes it away.
pub(super) fn toggle_minus(input: &HtmlInputElement) -> Option<()> {
    let text = input.value();
    let changed = text.strip_prefix(['-', '−']).map_or_else(|| format!("-{text}"), str::to_owned);
    replace(input, &changed)
}

/// Puts a unit behind the digits, in place of the one that was there; the caret stays at the digits
/// typed last.
pub(super) fn set_unit(input: &HtmlInputElement, unit: Unit) -> Option<()> {
    let text = with_unit(&input.value(), unit)?;
    replace(input, &text)?;
    let digits = text.strip_suffix(unit.symbol()).map_or(text.as_str(), str::trim_end);
    let place = u32::try_from(digits.encode_utf16().count()).ok()?;
    input.set_selection_range(place, place).ok()
}

/// Takes away what is selected, or the character before the caret.
pub(super) fn delete(input: &HtmlInputElement) -> Option<()> {
    let (start, end) = selection(input)?;
    let start = if start == end { start.saturating_sub(1) } else { start };
    change(input, start, end, "")
}

/// Puts `text` in place of everything.
pub(super) fn replace(input: &HtmlInputElement, text: &str) -> Option<()> {
    change(input, 0, length(input), text)
}

fn selection(input: &HtmlInputElement) -> Option<(u32, u32)> {
    Some((input.selection_start().ok()??, input.selection_end().ok()??))
}

/// In UTF-16 units, as the browser counts.
fn length(input: &HtmlInputElement) -> u32 {
    u32::try_from(input.value().encode_utf16().count()).unwrap_or(u32::MAX)
}

fn change(input: &HtmlInputElement, start: u32, end: u32, text: &str) -> Option<()> {
    let mode = SelectionMode::End;
    input.set_range_text_with_start_and_end_and_selection_mode(text, start, end, mode).ok()?;
    let bubbles = EventInit::new();
    bubbles.set_bubbles(true);
    let event = Event::new_with_event_init_dict("input", &bubbles).ok()?;
    input.dispatch_event(&event).ok()?;
    Some(())
}
