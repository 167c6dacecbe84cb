//! A field for a sentence or two, as high as what is typed in it.

use leptos::prelude::*;

use super::live::words;
use super::text::Text;

/// A field for a longer text. It is one paragraph: a line end typed or pasted becomes a blank.
#[component]
pub fn LongText(
    /// Its id in the page.
    #[prop(into)]
    id: String,
    /// What stands above it.
    #[prop(into)]
    label: Signal<String>,
    /// What is typed.
    #[prop(into)]
    value: Text,
) -> impl IntoView {
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            // What is typed stands below the field once more, unseen, and gives it its height.
            <div class="grows" data-text=words(move || value.get())>
                <textarea
                    id=id
                    class="inp"
                    rows="1"
                    autocomplete="off"
                    prop:value=value.followed()
                    on:input:target=move |event| value.set(event.target().value().replace('\n', " "))
                ></textarea>
            </div>
        </div>
    }
}
