//! The first page of a device with nothing on it: little code, while the rest is on its way.

use std::cell::RefCell;
use std::rc::Rc;

use leptos::mount::mount_to;
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use crate::address::{Address, Screen};
use crate::bench::Opened;
use crate::code::{Code, Pieces};
use crate::device::install::Installer;
use crate::language;
use crate::page;
use crate::parts::{HelpOf, Icons, Says, Skip};
use crate::pictures::PictureDefs;
use crate::prefs::Prefs;
use crate::screens::{FirstScreen, PracticeDoor};

const NOT_YET: &str =
    "The rest of the app has not come. It needs a signal once: find one, then press again.";

/// What is handed to the app when the door is left: the store, and the way to take the door down.
type Held = Rc<RefCell<Option<(Opened, Box<dyn FnOnce()>)>>>;

/// Shows the first page.
pub(crate) fn open(opened: Opened, pieces: Pieces) {
    let held: Held = Rc::default();
    let inside = held.clone();
    let Some(body) = document().body() else { return };
    let handle =
        mount_to(body, move || view! { <TheDoor pieces held=StoredValue::new_local(inside)/> });
    held.replace(Some((opened, Box::new(move || drop(handle)))));
}

#[component]
fn TheDoor(pieces: Pieces, held: StoredValue<Held, LocalStorage>) -> impl IntoView {
    let address = Address::follow();
    let prefs = Prefs::kept();
    provide_context(address);
    provide_context(Code::of(pieces));
    provide_context(HelpOf(Signal::stored(Screen::First)));
    provide_context(prefs);
    provide_context(Installer::look());
    page::follow_theme(prefs);
    let says = RwSignal::new(None::<Says>);
    let leave = move |practice| {
        let held = held.get_value();
        spawn_local(async move {
            match (pieces.work)().await {
                Ok(open) => {
                    language::learn_rest().await;
                    if let Some((opened, take_down)) = held.take() {
                        take_down();
                        open(opened, pieces, practice);
                    }
                }
                Err(_) => {
                    // Back at the door's own address, so that the same link can be pressed again.
                    address.go("/");
                    says.try_set(Some(Says::Refused(NOT_YET.to_owned())));
                }
            }
        });
    };
    Effect::new(move |_| {
        if !matches!(Screen::of(&address.path()), Screen::Bench | Screen::First) {
            leave(false);
        }
    });
    let practise = Callback::new(move |()| leave(true));
    view! {
        <Icons/>
        <PictureDefs/>
        <Skip/>
        <FirstScreen>
            <PracticeDoor on_press=practise says=says.into()/>
        </FirstScreen>
    }
}
