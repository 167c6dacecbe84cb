//! Seg: choose one of two to five short words.

use leptos::prelude::*;

use super::live::whether;

/// One of the words of a [`Seg`].
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Pick {
    /// The word.
    pub words: String,
    /// A second line; may be empty.
    pub note: String,
    /// Whether it cannot be chosen here.
    pub shut: bool,
}

impl<T: Into<String>> From<T> for Pick {
    fn from(words: T) -> Self {
        Self { words: words.into(), ..Self::default() }
    }
}

/// A radio group: arrow keys move, a tap chooses.
#[component]
pub fn Seg(
    /// Its name among all groups of the page.
    #[prop(into)]
    id: String,
    /// What is chosen here, spoken.
    #[prop(into)]
    label: Signal<String>,
    /// The words.
    picks: Vec<Pick>,
    /// The place of the chosen one, if any.
    #[prop(into)]
    chosen: Signal<Option<usize>>,
    /// Chooses the one at this place.
    on_choose: Callback<usize>,
) -> impl IntoView {
    let pick = |(at, pick): (usize, Pick)| {
        view! {
            <label>
                <input
                    type="radio"
                    name=id.clone()
                    disabled=pick.shut
                    prop:checked=whether(move || chosen.get() == Some(at))
                    on:change=move |_| on_choose.run(at)
                />
                <span>
                    {pick.words}
                    {(!pick.note.is_empty()).then(|| view! { <small>{pick.note}</small> })}
                </span>
            </label>
        }
    };
    let picks = picks.into_iter().enumerate().map(pick).collect_view();
    view! {
        <div class="seg" role="radiogroup" aria-label=label>
            {picks}
        </div>
    }
}
