//! Typing numbers: the pad, a keyboard, and a gauge that types digits and Enter.

use leptos::mount::mount_to;
use leptos::prelude::*;
use measure::Mark;
use shimwright_web::parts::{Field, Keys, Pad, Says, Slot, Slots};
use wasm_bindgen::JsCast;
use wasm_bindgen_test::wasm_bindgen_test;
use web_sys::{HtmlElement, HtmlInputElement, KeyboardEvent};

const PLACES: [&str; 3] = ["0", "90", "180"];

/// A page with one reading series, one field that takes a minus, and the pad.
struct Page {
    section: HtmlElement,
    own_pad: ArcRwSignal<bool>,
    series: [ArcRwSignal<String>; 3],
}

impl Page {
    fn open(mark: Mark) -> Page {
        if let Some(before) = document().get_element_by_id("page") {
            before.remove();
        }
        let section: HtmlElement = document().create_element("section").unwrap().unchecked_into();
        section.set_id("page");
        document().body().unwrap().append_child(&section).unwrap();
        let own_pad = ArcRwSignal::new(true);
        let series = PLACES.map(|_| ArcRwSignal::new(String::new()));
        let (own, values) = (own_pad.clone(), series.clone());
        mount_to(section.clone(), move || {
            Keys::provide(RwSignal::from(own).into(), mark.into());
            let slots = PLACES.into_iter().zip(values).map(slot).collect::<Vec<_>>();
            let zero = RwSignal::new(String::new());
            let refused = Says::Refused("Two decimal marks in 0.3.8. Type one.".to_owned());
            view! {
                <Slots slots/>
                <Field id="zero" label="Zero" value=zero signed=true says=Some(refused)/>
                <Pad/>
            }
        })
        .forget();
        Page { section, own_pad, series }
    }

    fn input(&self, id: &str) -> HtmlInputElement {
        self.one(&format!("#{id}")).unchecked_into()
    }

    fn one(&self, what: &str) -> HtmlElement {
        self.section.query_selector(what).unwrap().unwrap().unchecked_into()
    }

    fn press(&self, keys: &[&str]) {
        for key in keys {
            self.one(&format!(".pad [aria-label='{key}']")).click();
        }
    }

    fn typed(&self) -> Vec<String> {
        self.series.iter().map(|it| it.get_untracked()).collect()
    }
}

fn slot((place, value): (&str, ArcRwSignal<String>)) -> Slot {
    Slot {
        id: format!("slot-{place}"),
        place: format!("{place}°"),
        spoken: format!("Reading at {place}°"),
        value: RwSignal::from(value).into(),
        says: Signal::stored(None),
        unit: Signal::stored(None),
    }
}

fn has_focus(id: &str) -> bool {
    document().active_element().is_some_and(|it| it.id() == id)
}

/// Types as a person or a gauge does: each digit is an input event, Enter is a key.
fn type_in(text: &str) {
    for letter in text.chars() {
        let input: HtmlInputElement = document().active_element().unwrap().unchecked_into();
        if letter == '\n' {
            let init = web_sys::KeyboardEventInit::new();
            init.set_key("Enter");
            init.set_bubbles(true);
            init.set_cancelable(true);
            let enter = KeyboardEvent::new_with_keyboard_event_init_dict("keydown", &init).unwrap();
            input.dispatch_event(&enter).unwrap();
        } else {
            let (start, end) = (input.selection_start(), input.selection_end());
            let (start, end) = (start.unwrap().unwrap(), end.unwrap().unwrap());
            let mode = web_sys::SelectionMode::End;
            input
                .set_range_text_with_start_and_end_and_selection_mode(
                    &letter.to_string(),
                    start,
                    end,
                    mode,
                )
                .unwrap();
            let init = web_sys::EventInit::new();
            init.set_bubbles(true);
            let event = web_sys::Event::new_with_event_init_dict("input", &init).unwrap();
            input.dispatch_event(&event).unwrap();
        }
    }
}

#[wasm_bindgen_test]
async fn the_pad_types_where_the_caret_is_and_moves_on() {
    let page = Page::open(Mark::Comma);
    page.press(&["0", "decimal mark", "3", "9"]);
    assert!(has_focus("slot-0"), "without an open field the first empty one is typed in");
    assert_eq!(page.typed(), ["0,39", "", ""]);
    page.press(&["decimal mark", "Delete last digit", "8", "Next", "4", "Clear", "5"]);
    assert_eq!(page.typed(), ["0,38", "5", ""], "a second mark is not taken");
    page.input("slot-0").set_selection_range(0, 1).unwrap();
    page.input("slot-0").focus().unwrap();
    page.press(&["1"]);
    assert_eq!(page.typed(), ["1,38", "5", ""], "what is selected is replaced");
}

#[wasm_bindgen_test]
async fn a_gauge_that_types_digits_and_enter_fills_the_series_and_stays_at_its_end() {
    let page = Page::open(Mark::Point);
    page.input("slot-0").focus().unwrap();
    type_in("0.38\n0.40\n0.37\n");
    assert_eq!(page.typed(), ["0.38", "0.40", "0.37"]);
    assert!(has_focus("slot-180"));
    type_in("0.41");
    assert_eq!(page.typed(), ["0.38", "0.40", "0.41"], "sent once more, it is read once more");
}

#[wasm_bindgen_test]
async fn minus_is_offered_only_where_a_field_takes_one() {
    let page = Page::open(Mark::Point);
    let minus = || page.section.query_selector(".pad [aria-label='minus']").unwrap();
    page.input("slot-0").focus().unwrap();
    leptos::task::tick().await;
    assert!(minus().is_none());
    page.input("zero").focus().unwrap();
    leptos::task::tick().await;
    page.press(&["2", "minus"]);
    assert_eq!(page.input("zero").value(), "-2");
    page.press(&["minus"]);
    assert_eq!(page.input("zero").value(), "2");
}

#[wasm_bindgen_test]
async fn a_field_says_its_word_and_keeps_the_devices_keyboard_away_unless_it_is_wanted() {
    let page = Page::open(Mark::Point);
    let zero = page.input("zero");
    assert_eq!(zero.get_attribute("aria-invalid").as_deref(), Some("true"));
    let says = zero.get_attribute("aria-describedby").unwrap();
    let says = page.one(&format!("#{says}")).text_content();
    assert_eq!(says.as_deref(), Some("Two decimal marks in 0.3.8. Type one."));

    let mode = |id: &str| page.input(id).get_attribute("inputmode");
    assert_eq!(mode("slot-0").as_deref(), Some("none"));
    page.own_pad.set(false);
    leptos::task::tick().await;
    assert_eq!(mode("slot-0").as_deref(), Some("decimal"));
    assert_eq!(mode("zero").as_deref(), Some("text"), "decimal keyboards have no minus");
    assert!(page.section.query_selector(".pad").unwrap().is_none());
}
