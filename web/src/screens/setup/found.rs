//! The packs as they were found: what came out of the case, each shim as measured.

use job::{BookId, Fact, PackPreview, Slot, pack_preview};
use leptos::prelude::*;
use words::{say, t};

use super::Fitting;
use crate::page::lead_to;
use crate::parts::{Field, Says, live, press, words};
use crate::screens::entries::Entries;
use crate::screens::frame::OpenJob;
use crate::screens::told::told;

/// What is typed for the packs that are not written down yet.
#[derive(Clone, Copy)]
pub struct Found {
    entries: Entries,
    slots: &'static [Slot],
    previews: Memo<Vec<(Slot, PackPreview)>>,
}

impl Found {
    /// What was left half typed for a job.
    pub fn of(of: OpenJob) -> Found {
        let slots = of.look(|(_, sheet, _), _| sheet.slots()).unwrap_or_default();
        let tags: Vec<&str> = slots.iter().map(|slot| slot.tag()).collect();
        let entries = Entries::at(&format!("job/{}/found", of.id()), &tags);
        let previews = Memo::new(move |_| {
            let (texts, unit) = (entries.texts(), entries.unit());
            let all = of.look(|(job, sheet, _), shown| {
                let preview = |(slot, text): (Slot, &String)| {
                    let shims: Vec<&str> = text.split('+').collect();
                    let is_open = sheet.position(slot).is_some() && job.pack(slot).is_none();
                    is_open.then(|| (slot, pack_preview(job, slot, &shims, unit, shown)))
                };
                sheet.slots().iter().copied().zip(&texts).filter_map(preview).collect()
            });
            all.unwrap_or_default()
        });
        Found { entries, slots, previews }
    }

    /// What the blue button says, and whether it must wait for something to be typed.
    pub fn act(self) -> Option<(String, bool)> {
        self.previews.with(|previews| {
            let said = |(_, preview): &(Slot, PackPreview)| preview.words.clone();
            let refused = previews.iter().find(|(_, preview)| is_refused(preview));
            let ready: Vec<_> =
                previews.iter().filter(|(_, preview)| preview.fact.is_some()).collect();
            match (refused, ready.as_slice()) {
                (Some((slot, _)), _) => Some((say!("Type {} again", slot.tag()), true)),
                (None, [one]) => Some((said(one), false)),
                (None, [first @ .., (last, _)]) if !first.is_empty() => {
                    let first: Vec<&str> = first.iter().map(|(slot, _)| slot.tag()).collect();
                    let words = say!("Write down {} and {}", first.join(", "), last.tag());
                    Some((words, false))
                }
                _ => previews.first().map(|first| (said(first), true)),
            }
        })
    }

    /// What to record: every pack that is typed.
    pub fn facts(self) -> Vec<(BookId, Fact)> {
        untrack(|| {
            self.previews.with(|all| all.iter().filter_map(|(_, it)| it.fact.clone()).collect())
        })
    }

    /// Forgets what was typed, once it is stored.
    pub fn clear(self) {
        (0..self.slots.len()).for_each(|at| self.entries.clear(at));
    }

    /// Leads to the field that holds things up.
    pub fn show(self) {
        let slot = untrack(|| {
            self.previews.with(|previews| {
                let refused = previews.iter().find(|(_, preview)| is_refused(preview));
                refused.or(previews.first()).map(|(slot, _)| *slot)
            })
        });
        if let Some(slot) = slot {
            lead_to(&id(slot));
        }
    }

    fn says(self, slot: Slot) -> Option<Says> {
        self.previews.with(|previews| {
            let (_, preview) = previews.iter().find(|(other, _)| *other == slot)?;
            preview.shims.iter().find_map(told)
        })
    }
}

fn is_refused(preview: &PackPreview) -> bool {
    preview.shims.iter().any(|shim| shim.refused.is_some())
}

fn id(slot: Slot) -> String {
    format!("found-{}", slot.tag())
}

/// The form; nothing once every pack is written down.
#[component]
pub fn FoundPacks(fitting: Fitting) -> impl IntoView {
    let found = fitting.found;
    let slots = Memo::new(move |_| {
        found.previews.with(|previews| previews.iter().map(|(slot, _)| *slot).collect::<Vec<_>>())
    });
    live(move || {
        let slots = slots.get();
        if slots.is_empty() {
            return ().into_any();
        }
        let fields =
            slots.into_iter().map(|slot| view! { <FoundPack found pack=slot/> }).collect_view();
        view! {
            <div class="sheet">
                <h2>{t("Packs as found")}</h2>
                <p>
                    {t("Measure each shim that lay in the case. Several in one pack: 0.50 + 0.10.")}
                </p>
                {fields}
            </div>
        }
        .into_any()
    })
}

/// One pack: its field, and a key for another shim, which the pad does not have.
#[component]
fn FoundPack(found: Found, pack: Slot) -> impl IntoView {
    let at = found.slots.iter().position(|other| *other == pack).unwrap_or_default();
    let text = found.entries.text(at);
    let label = words(move || say!("{} as found, {}", pack.tag(), found.entries.unit()));
    let says = Signal::derive(move || found.says(pack));
    let unit = Signal::derive(move || Some(found.entries.unit()));
    let another = Callback::new(move |()| {
        let typed = untrack(|| text.get());
        text.set(format!("{} + ", typed.trim_end_matches([' ', '+'])));
        lead_to(&id(pack));
    });
    let spoken = say!("Another shim in {}", pack.tag());
    view! {
        <div class="another">
            <Field id=id(pack) label value=text says unit placeholder="0.50 + 0.10"/>
            <button
                class="btn btn--plain"
                type="button"
                aria-label=spoken
                on:mousedown=|event| event.prevent_default()
                on:click=press(another)
            >
                "+"
            </button>
        </div>
    }
}
