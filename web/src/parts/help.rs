//! Help: one same control on every screen, and where it opens: above the work, covering nothing.

use leptos::ev::keydown;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::{Element, HtmlElement, ScrollIntoViewOptions, ScrollLogicalPosition};
use words::t;

use super::live::{live, press};
use crate::address::Screen;
use crate::code::{Code, Piece};

/// The screen that stands, whose help it is; in context.
#[derive(Clone, Copy)]
pub struct HelpOf(pub Signal<Screen>);

/// Where the page was scrolled to when the help was opened; none while it is closed.
type Opened = RwSignal<Option<f64>>;

const BUTTON: &str = "help-button";
const PANEL: &str = "help";

/// The control, for the plate, and what it opens, for below it; nothing where no screen stands.
pub fn help() -> (AnyView, AnyView) {
    let (Some(HelpOf(screen)), Some(code)) = (use_context(), use_context()) else {
        return (().into_any(), ().into_any());
    };
    let opened = Opened::new(None);
    let turn = Callback::new(move |()| match opened.get_untracked() {
        Some(_) => close(opened),
        None => open(opened),
    });
    let expanded = move || opened.with(Option::is_some).to_string();
    let button = view! {
        <button
            class="help__open"
            id=BUTTON
            type="button"
            aria-expanded=expanded
            aria-controls=PANEL
            // The press leaves the focus in the field that is typed in.
            on:mousedown=|event| event.prevent_default()
            on:click=press(turn)
        >
            {t("Help")}
        </button>
    };
    let is_open = Memo::new(move |_| opened.with(Option::is_some));
    let panel = live(move || match is_open.get() {
        true => panel(opened, screen, code),
        false => ().into_any(),
    });
    (button.into_any(), panel)
}

fn panel(opened: Opened, screen: Signal<Screen>, code: Code) -> AnyView {
    let escape = window_event_listener(keydown, move |event| {
        if event.key() == "Escape" {
            close(opened);
        }
    });
    on_cleanup(move || escape.remove());
    let inside = live(move || match code.built(Piece::Help) {
        Some(build) => build(Screen::Help { of: Box::new(screen.get()) }),
        None if code.is_missing() => {
            t("The help has not come yet. It needs a signal once; find one, then reload.")
                .into_any()
        }
        None => t("One moment").into_any(),
    });
    view! {
        <aside class="help" id=PANEL aria-label=t("Help") aria-live="polite">
            {inside}
            <button class="btn btn--plain" type="button" on:click=press(Callback::new(move |()| close(opened)))>
                {t("Close help")}
            </button>
        </aside>
    }
    .into_any()
}

fn open(opened: Opened) {
    opened.set(Some(window().scroll_y().unwrap_or_default()));
    window().scroll_to_with_x_and_y(0.0, 0.0);
}

/// Closes it, and shows again what was seen before and what has the focus now.
fn close(opened: Opened) {
    let Some(before) = opened.get_untracked() else { return };
    let within = |it: &Element| it.closest(&format!("#{PANEL}")).ok().flatten().is_some();
    let active = document().active_element();
    let button = document().get_element_by_id(BUTTON).and_then(|it| it.dyn_into().ok());
    if let Some(button) = button.filter(|_: &HtmlElement| active.as_ref().is_some_and(within)) {
        button.focus().ok();
    }
    opened.set(None);
    window().scroll_to_with_x_and_y(0.0, before);
    let options = ScrollIntoViewOptions::new();
    options.set_block(ScrollLogicalPosition::Nearest);
    if let Some(active) = active.filter(|it| it.matches("input, textarea").unwrap_or_default()) {
        active.scroll_into_view_with_scroll_into_view_options(&options);
    }
}
