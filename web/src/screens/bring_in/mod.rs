//! Bring in: what a file would change, before it is kept; and out again.

mod beside;
mod changes;
mod read;

use std::sync::Arc;
use words::{say, t};

use job::files::{Changes, Parcel, Stands};
use job::{BookId, Fact};
use leptos::prelude::*;
use wasm_bindgen_futures::spawn_local;

use crate::bench::{Bench, use_bench};
use crate::lock::{Lock, use_lock};
use crate::page;
use crate::parts::{Act, Back, Dock, DockedPad, Glyph, Message, Notice, Plate, Says, live, words};
use crate::storage::{Photo, StoreError};

/// A file that was read, and what it would change.
pub struct Looked {
    /// Its name.
    pub name: String,
    /// What it holds.
    pub parcel: Parcel,
    /// What it would change.
    pub changes: Changes,
    /// How many photos are new.
    pub photos: usize,
}

/// What this screen is at.
#[derive(Clone, Copy)]
pub struct BringIn {
    bench: Bench,
    lock: Lock,
    looked: RwSignal<Option<Arc<Looked>>>,
    photos: StoredValue<Vec<Photo>, LocalStorage>,
    /// Which side stands, for each pair that is to be judged, in order; the inner `None`: as it is.
    judged: RwSignal<Vec<Option<Option<Stands>>>>,
    kept: RwSignal<bool>,
    busy: RwSignal<bool>,
    says: RwSignal<Option<Says>>,
}

impl BringIn {
    fn new() -> BringIn {
        BringIn {
            bench: use_bench(),
            lock: use_lock(),
            looked: RwSignal::new(None),
            photos: StoredValue::new_local(Vec::new()),
            judged: RwSignal::new(Vec::new()),
            kept: RwSignal::new(false),
            busy: RwSignal::new(false),
            says: RwSignal::new(None),
        }
    }

    fn refuse(self, why: String) {
        // The screen may have been left meanwhile.
        self.says.try_set(Some(Says::Refused(why)));
        self.busy.try_set(false);
    }

    /// Shows what a file that was read would change.
    async fn look(self, name: String, parcel: Parcel, photos: Vec<Photo>) {
        let compared = async {
            let changes = self.bench.compare(&parcel.coming).await?;
            Ok::<_, StoreError>((changes, self.bench.new_photos(photos).await?))
        };
        match compared.await {
            Ok((changes, photos)) => {
                self.judged.try_set(vec![None; changes.to_judge()]);
                let looked = Looked { name, parcel, changes, photos: photos.len() };
                self.photos.try_set_value(photos);
                self.looked.try_set(Some(Arc::new(looked)));
                self.kept.try_set(false);
                self.says.try_set(None);
                self.busy.try_set(false);
            }
            Err(why) => self.refuse(why.to_string()),
        }
    }

    fn keep(self) {
        let Some(looked) = self.looked.get_untracked() else { return };
        self.busy.set(true);
        let facts = judgements(&looked.changes, &self.judged.get_untracked());
        let photos = self.photos.get_value();
        spawn_local(async move {
            match self.bench.bring(&looked.parcel.coming, &facts, photos).await {
                Ok(_) => {
                    self.kept.try_set(true);
                    self.says.try_set(None);
                    self.busy.try_set(false);
                }
                Err(why) => self.refuse(why.to_string()),
            }
        });
    }

    fn lift_out(self) {
        self.busy.set(true);
        spawn_local(async move {
            match self.bench.lift_out().await {
                Ok(()) => {
                    self.kept.try_set(false);
                    self.busy.try_set(false);
                }
                Err(StoreError::Taken) => self.refuse(WRITTEN_SINCE.to_owned()),
                Err(why) => self.refuse(why.to_string()),
            }
        });
    }
}

const WRITTEN_SINCE: &str = "Something was written on top of it since, so it stays in. \
                             Take single entries back where they stand.";

/// What the chosen sides write down.
fn judgements(changes: &Changes, judged: &[Option<Option<Stands>>]) -> Vec<(BookId, Fact)> {
    let pairs = changes.books.iter().flat_map(|book| &book.beside).filter(|pair| !pair.agree());
    let chosen = pairs.zip(judged).filter_map(|(pair, stands)| Some((pair, (*stands)??)));
    chosen.flat_map(|(pair, stands)| pair.judged(stands)).collect()
}

/// Bring in a file.
#[component]
pub fn BringInScreen() -> impl IntoView {
    let at = BringIn::new();
    page::title(Signal::stored(t("Bring in").to_owned()));
    read::card_of_address(at);
    let subtitle = words(move || match at.looked.get() {
        Some(looked) => looked.name.clone(),
        None => t("No file chosen").to_owned(),
    });
    let body = live(move || match at.looked.get() {
        Some(looked) => changes::changes(at, &looked),
        None => choose(at),
    });
    view! {
        <Plate title=t("Bring in") subtitle/>
        <main class="main" id="main" tabindex="-1">
            <Message id="bring-in-says" says=at.says/>
            {body}
        </main>
        <DockedPad/>
        <Dock>
            <Back href="/" words=t("Bench")/>
            {live(move || next(at))}
        </Dock>
    }
}

/// Nothing was chosen yet.
fn choose(at: BringIn) -> AnyView {
    view! {
        <div class="sheet">
            <h1>{t("Bring in a file")}</h1>
            <p>
                {t("A backup of this app, from another device or an older self. You see what it changes before anything is kept.")}
            </p>
            <read::Chooser at words=t("Choose a file")/>
        </div>
        <Notice
            glyph=Glyph::In
            title=t("Nothing is overwritten.")
            words=t("Entries are added to what you have. The same file twice changes nothing.")
        />
    }
    .into_any()
}

/// The one next act.
fn next(at: BringIn) -> AnyView {
    let Some(looked) = at.looked.get() else { return ().into_any() };
    let fresh = looked.changes.fresh.len();
    if at.kept.get() || fresh + looked.photos == 0 {
        return view! { <Act words=t("Go to the bench") href="/"/> }.into_any();
    }
    let open = at.judged.with(|judged| judged.iter().filter(|it| it.is_none()).count());
    let keep = Callback::new(move |()| at.keep());
    let words = match open {
        0 => say!("Keep {}", changes::entries(fresh)),
        open => say!("Judge {open} first"),
    };
    view! { <Act words waits=Signal::stored(open > 0) busy=at.busy on_press=keep/> }.into_any()
}
