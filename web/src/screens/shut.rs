//! What stands where the store did not open: why, and what to do.

use leptos::prelude::*;
use words::t;

use crate::parts::{Act, Dock, Glyph, Notice, Plate};
use crate::storage::StoreError;

/// Why the bench is shut, and what to do.
#[component]
pub fn ShutScreen(
    /// Why the store did not open.
    why: StoreError,
) -> impl IntoView {
    let reload = Callback::new(|()| {
        // A page that may not reload itself still shows the words.
        window().location().reload().ok();
    });
    view! {
        <Plate title=t("Shimwright") subtitle=t("Bench · shut")/>
        <main class="main" id="main" tabindex="-1">
            <div class="sheet">
                <h1>{t("The bench is shut")}</h1>
                <Notice glyph=Glyph::Lock title=t("Nothing was cleared.") words=why.to_string() due=true/>
            </div>
        </main>
        <Dock>
            <Act words=t("Reload") on_press=reload/>
        </Dock>
    }
}
