//! What a field holds, and how it is changed.

use leptos::prelude::*;

use crate::draft::Draft;

/// The text of a field: a [`Draft`] that outlives a reload, or a plain signal.
#[derive(Clone, Copy)]
pub struct Text {
    text: Signal<String>,
    set: Callback<String>,
}

impl Text {
    /// A text that is kept elsewhere.
    pub fn new(text: Signal<String>, set: Callback<String>) -> Self {
        Self { text, set }
    }

    /// The text as typed so far.
    pub fn get(self) -> String {
        self.text.get()
    }

    /// The same, as a field follows it.
    pub(super) fn followed(self) -> Signal<String> {
        self.text
    }

    /// Whether nothing is typed.
    pub fn is_empty(self) -> bool {
        self.text.with(String::is_empty)
    }

    /// Takes what the field holds now.
    pub fn set(self, text: String) {
        self.set.run(text);
    }
}

impl From<RwSignal<String>> for Text {
    fn from(text: RwSignal<String>) -> Self {
        Self { text: text.into(), set: Callback::new(move |it| text.set(it)) }
    }
}

impl From<Draft> for Text {
    fn from(draft: Draft) -> Self {
        let text = Signal::derive(move || draft.text());
        Self { text, set: Callback::new(move |it: String| draft.set(&it)) }
    }
}
