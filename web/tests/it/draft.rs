//! Half-typed digits outlive the page; preferences too.

use leptos::prelude::*;
use measure::Unit;
use shimwright_web::draft::{Drafts, use_draft};
use shimwright_web::prefs::{NumberEntry, Prefs, Theme};
use wasm_bindgen_test::wasm_bindgen_test;

use crate::fresh;

#[wasm_bindgen_test]
async fn half_typed_digits_are_given_back_and_forgotten_once_stored() {
    fresh::start().await;
    let page = || {
        let owner = Owner::new();
        let (drafts, draft) = owner.with(|| {
            let drafts = Drafts::default();
            provide_context(drafts);
            (drafts, use_draft("job/a/read/lash", "3"))
        });
        (owner, drafts, draft)
    };
    let (_owner, drafts, draft) = page();
    assert!(!untrack(|| drafts.held()));
    draft.set("0,3");
    assert!(untrack(|| drafts.held()));

    let (_owner, drafts, draft) = page();
    assert_eq!(draft.text_untracked(), "0,3");
    assert!(untrack(|| drafts.held()), "a field that comes with text holds it");
    draft.clear();
    assert!(!untrack(|| drafts.held()));
    let (_owner, _, draft) = page();
    assert_eq!(draft.text_untracked(), "");
}

#[wasm_bindgen_test]
async fn a_field_that_leaves_the_screen_no_longer_holds_the_update_back() {
    fresh::start().await;
    let owner = Owner::new();
    let drafts = owner.with(|| {
        let drafts = Drafts::default();
        provide_context(drafts);
        drafts
    });
    let field = owner.child();
    field.with(|| use_draft("tin", "count")).set("12");
    assert!(untrack(|| drafts.held()));
    field.cleanup();
    assert!(!untrack(|| drafts.held()));
}

#[wasm_bindgen_test]
async fn preferences_are_kept_and_nonsense_is_passed_over() {
    fresh::start().await;
    let owner = Owner::new();
    owner.with(|| {
        let prefs = Prefs::kept();
        prefs.set_theme(Theme::Shed);
        prefs.set_unit(Unit::Inch);
        prefs.set_entry(NumberEntry::Phone);
    });
    let kept = || {
        let prefs = owner.with(Prefs::kept);
        untrack(|| (prefs.theme(), prefs.units().of(Unit::Millimetre), prefs.entry()))
    };
    assert_eq!(kept(), (Theme::Shed, Unit::Inch, NumberEntry::Phone));
    fresh::run("localStorage.setItem('shimwright.unit', '\"furlong\"'); localStorage.setItem('shimwright.theme', '{')").await;
    assert_eq!(kept(), (Theme::Auto, Unit::Millimetre, NumberEntry::Phone));
}
