//! The copy that was made before the store of an older version was changed.

use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;
use words::t;

use crate::bench::Bench;
use crate::lock::use_lock;
use crate::parts::{Facts, Message, Says, Sign, State, live, press};
use crate::screens::send::told;

/// The copy, as long as there is one.
#[component]
pub fn OlderCopy(
    /// What came of the last backup, which removes it.
    backed_up: RwSignal<Option<Says>>,
) -> impl IntoView {
    let lock = use_lock();
    let (copy, says) = (RwSignal::new(None), RwSignal::new(None::<Says>));
    let look = move || {
        spawn_local(async move {
            let held = Bench::copy().await;
            // The screen may have been left meanwhile.
            copy.try_set(held);
        });
    };
    Effect::new(move |_| {
        backed_up.track();
        look();
    });
    let save = Callback::new(move |()| {
        spawn_local(async move {
            let saved = told(Bench::save_copy().await);
            says.try_set(Some(saved));
        });
    });
    let remove = Callback::new(move |()| {
        spawn_local(async move {
            match Bench::remove_copy().await {
                Ok(()) => look(),
                Err(why) => drop(says.try_set(Some(Says::Refused(why.to_string())))),
            }
        });
    });
    live(move || match copy.get().filter(|_| lock.is_open()) {
        Some(held) => view! { <Sheet held says save remove/> }.into_any(),
        None => ().into_any(),
    })
}

#[component]
fn Sheet(
    /// Entries and photos.
    held: (usize, usize),
    says: RwSignal<Option<Says>>,
    save: Callback<()>,
    remove: Callback<()>,
) -> impl IntoView {
    let facts =
        vec![(t("Entries in it"), held.0.to_string()), (t("Photos in it"), held.1.to_string())];
    view! {
        <div class="sheet">
            <div class="h">
                <h2>{t("Copy of the older store")}</h2>
                <State sign=Sign::In words=t("Kept")/>
            </div>
            <p class="long">
                {t("This version changed the form of the store, and copied it before. The copy goes with the next backup, or when you remove it.")}
            </p>
            <Facts facts/>
            <div class="btns">
                <button class="btn" type="button" on:click=press(save)>
                    {t("Save the copy")}
                </button>
                <button class="btn" type="button" on:click=press(remove)>
                    {t("Remove the copy")}
                </button>
            </div>
            <Message id="copy-says" says=says/>
        </div>
    }
}
