//! Which paper is in the printer.

use leptos::prelude::*;
use words::t;

use super::seg::Seg;

/// The papers that the leaves fit, and the class of what is printed on each.
const PAPERS: [(&str, &str); 2] = [("A4", "paper"), ("US Letter", "paper paper--letter")];

/// Chooses the paper; it is not printed itself.
#[component]
pub fn PaperChoice(
    /// Its place among the papers.
    paper: RwSignal<usize>,
    /// What stands at the other end of the line.
    #[prop(optional)]
    children: Option<Children>,
) -> impl IntoView {
    let picks = PAPERS.map(|(words, _)| t(words).into()).to_vec();
    let choose = Callback::new(move |at| paper.set(at));
    view! {
        <div class="screen line line--ends">
            <Seg
                id="paper"
                label=t("Paper")
                picks
                chosen=Signal::derive(move || Some(paper.get()))
                on_choose=choose
            />
            {children.map(|it| it())}
        </div>
    }
}

/// The class of what is printed on a paper.
pub fn paper_class(at: usize) -> Option<&'static str> {
    PAPERS.get(at).map(|(_, class)| *class)
}
