//! How numbers are typed: which field is open, and what a key does to it.

use std::time::Duration;

use leptos::prelude::*;
use leptos::wasm_bindgen::JsCast;
use leptos::web_sys::{HtmlElement, HtmlInputElement};
use measure::{Mark, Unit};

use super::typing::{self, number_inputs};
use crate::scratch;

/// A key of the pad.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Key {
    /// A digit.
    Digit(&'static str),
    /// The decimal mark.
    Mark,
    /// Minus, on and off.
    Minus,
    /// Takes the last character away.
    Delete,
    /// Empties the field.
    Clear,
    /// The unit of the number.
    Unit(Unit),
    /// On to the next number.
    Next,
}

/// The number field that is being typed in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OpenField {
    /// Its id in the page.
    pub id: String,
    /// What the pad calls it.
    pub name: String,
    /// Whether it takes a minus.
    pub signed: bool,
    pub(super) unit: Signal<Option<Unit>>,
    pub(super) value: Signal<String>,
}

/// The field may have gone with its screen while the pad still stands.
impl OpenField {
    /// The unit that digits without one take, where a person may take another; followed.
    pub fn unit(&self) -> Option<Unit> {
        self.unit.try_get().flatten()
    }

    /// What is typed in it; followed.
    pub fn text(&self) -> String {
        self.value.try_get().unwrap_or_default()
    }
}

/// How numbers are typed here; one for the whole page, in context.
#[derive(Clone, Copy)]
pub struct Keys {
    /// The app's own pad; otherwise the device's keyboard.
    pub own: Signal<bool>,
    /// The decimal mark on the pad's key.
    pub mark: Signal<Mark>,
    open: RwSignal<Option<OpenField>>,
}

/// Long enough for a tap elsewhere to land before the pad goes and the page moves.
const STAYS: Duration = Duration::from_millis(250);

impl Keys {
    /// Puts the keys in context, for every number field below.
    pub fn provide(own: Signal<bool>, mark: Signal<Mark>) -> Self {
        let keys = Self { own, mark, open: RwSignal::new(None) };
        provide_context(keys);
        keys
    }

    /// The keys of this page.
    pub fn here() -> Self {
        expect_context()
    }

    /// The field that is being typed in.
    pub fn open(self) -> Signal<Option<OpenField>> {
        self.open.into()
    }

    /// What the device's own keyboard should show for a number field.
    pub fn input_mode(self, signed: bool) -> &'static str {
        match (self.own.get(), signed) {
            (true, _) => "none",
            (false, false) => "decimal",
            // Decimal keyboards of phones have no minus.
            (false, true) => "text",
        }
    }

    /// A field has the focus.
    pub fn entered(self, field: OpenField) {
        let id = field.id.clone();
        self.open.set(Some(field));
        // The pad may come up over the field; once it stands, the field moves clear of it.
        request_animation_frame(move || typing::show(&id));
    }

    /// A field has lost the focus.
    pub fn left(self, id: String) {
        let close = move || {
            let still = self.open.with_untracked(|it| it.as_ref().is_some_and(|it| it.id == id));
            if still && !typing::has_focus(&id) {
                self.open.set(None);
            }
        };
        set_timeout(close, STAYS);
    }

    /// Presses a key of the pad.
    pub fn press(self, key: Key) {
        let Some(input) = self.target() else { return };
        if !typing::has_focus(&input.id()) {
            input.focus().ok();
        }
        match key {
            Key::Digit(digit) => typing::insert(&input, digit),
            Key::Mark => typing::insert_mark(&input, self.mark.get_untracked()),
            Key::Minus => typing::toggle_minus(&input),
            Key::Delete => typing::delete(&input),
            Key::Clear => typing::replace(&input, ""),
            Key::Unit(unit) => typing::set_unit(&input, unit),
            Key::Next => self.next(&input),
        };
    }

    /// Moves on from `input` to the next number of the page; after the last one to the one next act.
    pub fn next(self, input: &HtmlInputElement) -> Option<()> {
        let series = |it: &HtmlInputElement| it.closest(".slots").ok().flatten();
        let own = series(input);
        let after = number_inputs().skip_while(|it| it != input).nth(1);
        // A reading series stays at its last slot: a gauge may send once more.
        match after.filter(|it| own.is_none() || series(it) == own) {
            Some(next) => {
                next.focus().ok()?;
                next.select();
            }
            None if own.is_some() => input.select(),
            None => next_act().map_or_else(|| input.blur(), |act| act.focus()).ok()?,
        }
        Some(())
    }

    /// Opens the first number of the page that is still empty.
    pub fn open_first_empty(self) {
        if let Some(input) = number_inputs().find(|it| it.value().is_empty()) {
            input.focus().ok();
        }
    }

    /// The open field; with none open, the first empty one.
    fn target(self) -> Option<HtmlInputElement> {
        let open = self.open.with_untracked(|it| it.as_ref().map(|it| it.id.clone()));
        open.and_then(|id| document().get_element_by_id(&id)?.dyn_into().ok())
            .or_else(|| number_inputs().find(|it| it.value().is_empty()))
            .or_else(|| number_inputs().next())
    }
}

/// The blue button of the dock.
fn next_act() -> Option<HtmlElement> {
    document().query_selector(".dock .btn--main").ok()??.dyn_into().ok()
}

/// The decimal mark of the device's language.
pub fn device_mark() -> Mark {
    let language = window().navigator().language().unwrap_or_default();
    // The browser takes a while to answer, and every opening asks: what it said is kept.
    let place = format!("mark {language}");
    let shown = scratch::read(&place).unwrap_or_else(|| {
        let shown = js_sys::Number::from(1.5).to_locale_string(&language);
        let shown = shown.as_string().unwrap_or_default();
        scratch::write(&place, &shown);
        shown
    });
    if shown.contains(',') { Mark::Comma } else { Mark::Point }
}

/// Ends typing: whatever field is open lets go of the focus.
pub fn put_down() {
    let active = document().active_element().and_then(|it| it.dyn_into::<HtmlElement>().ok());
    active.map(|it| it.blur().ok());
}
