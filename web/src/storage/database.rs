//! The browser's own database, as futures: the only file that speaks to IndexedDB.

use js_sys::{Array, Function, Object, Promise, Reflect};
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    Blob, IdbDatabase, IdbFactory, IdbKeyRange, IdbObjectStore, IdbOpenDbRequest, IdbRequest,
    IdbTransaction,
};

use super::{Batch, Row, StoreError, Summed};

/// The database's name; the crash card opens it by the same name.
const NAME: &str = "shimwright";
/// 1: entries. 2: photos beside them. 3: a summary of each book.
const VERSION: u32 = 3;
/// Object store of all entries: key `[book, counter, device]`, value the entry's line.
const ENTRIES: &str = "entries";
/// Object store of all photos: key their id, value the picture itself.
const PHOTOS: &str = "photos";
/// Object store of what is known of each book: key its name, value the summary's text. Derived from
/// the entries, and written with them.
const SUMMARIES: &str = "summaries";
/// Key of the form of the summaries, which stands among them: a number, so it sorts before the names
/// of all books, the empty one of unreadable lines too.
const FORM: f64 = 0.0;

#[wasm_bindgen]
extern "C" {
    /// `IDBDatabase` with the options that web-sys hides behind an unstable flag.
    #[wasm_bindgen(extends = IdbDatabase)]
    type DurableDatabase;

    #[wasm_bindgen(catch, method, js_name = transaction)]
    fn transaction_with(
        this: &DurableDatabase,
        stores: &Array,
        mode: &str,
        options: &JsValue,
    ) -> Result<IdbTransaction, JsValue>;
}

/// An open connection. Dropping it closes it.
pub(super) struct Database {
    base: DurableDatabase,
    /// The browser said that a broken store was replaced by an empty one.
    pub(super) replaced: bool,
    /// A newer version of the app made it: this one looks and does not touch.
    pub(super) newer: bool,
}

impl Drop for Database {
    fn drop(&mut self) {
        self.base.close();
    }
}

impl Database {
    /// Opens the database, making the object stores at first; one of a newer version to be looked
    /// at only.
    ///
    /// When another tab wants a newer version this connection closes and calls `outdated`.
    pub(super) async fn open(outdated: impl FnOnce() + 'static) -> Result<Database, StoreError> {
        let factory = factory()?;
        let request = factory.open_with_u32(NAME, VERSION).map_err(other)?;
        let made = request.clone();
        let upgrade = Closure::once_into_js(move |event: JsValue| make_stores(&made, &event));
        request.set_onupgradeneeded(upgrade.dyn_ref());
        match opened(&request).await {
            Ok(replaced) => Database::of(&request, replaced, false, outdated),
            Err(StoreError::Newer) => {
                let request = factory.open(NAME).map_err(other)?;
                opened(&request).await?;
                Database::of(&request, false, true, outdated)
            }
            Err(why) => Err(why),
        }
    }

    fn of(
        request: &IdbOpenDbRequest,
        replaced: bool,
        newer: bool,
        outdated: impl FnOnce() + 'static,
    ) -> Result<Database, StoreError> {
        let base: DurableDatabase = request.result().map_err(other)?.unchecked_into();
        let closing = base.clone();
        let changed = Closure::once_into_js(move || {
            closing.unchecked_ref::<IdbDatabase>().close();
            outdated();
        });
        base.set_onversionchange(changed.dyn_ref());
        Ok(Database { base, replaced, newer })
    }

    /// Adds rows and photos, all or none; returns when they are on the disk.
    pub(super) async fn add(&self, set: &Batch) -> Result<(), StoreError> {
        let transaction = self.writing(set)?;
        let put_in = || {
            let store = transaction.object_store(ENTRIES)?;
            let add = |row: &Row, key| store.add_with_key(&JsValue::from_str(&row.line), &key);
            set.rows.iter().try_for_each(|row| add(row, key(row)).map(drop))?;
            set.beside.iter().try_for_each(|row| add(row, key_beside(row)).map(drop))?;
            set.photos.iter().try_for_each(|photo| {
                let store = transaction.object_store(PHOTOS)?;
                store.add_with_key(&photo.picture, &JsValue::from_str(&photo.id)).map(drop)
            })?;
            sum_up(&transaction, &set.summaries)
        };
        ended(&transaction, put_in()).await
    }

    /// Takes rows and photos out again, all or none, as long as each book still has `counts` rows.
    pub(super) async fn take_out(
        &self,
        set: &Batch,
        counts: &[(String, usize)],
    ) -> Result<(), StoreError> {
        let transaction = self.writing(set)?;
        let store = transaction.object_store(ENTRIES).map_err(other)?;
        for (book, expected) in counts {
            let range = of_book(book).map_err(other)?;
            let count = store.count_with_key(&range).map_err(other)?;
            let found = succeeded(&count).await?.as_f64().unwrap_or_default() as usize;
            if found != *expected {
                transaction.abort().ok();
                return Err(StoreError::Taken);
            }
        }
        let take = || {
            set.rows.iter().try_for_each(|row| store.delete(&key(row)).map(drop))?;
            set.beside.iter().try_for_each(|row| store.delete(&key_beside(row)).map(drop))?;
            set.photos.iter().try_for_each(|photo| {
                let store = transaction.object_store(PHOTOS)?;
                store.delete(&JsValue::from_str(&photo.id)).map(drop)
            })?;
            sum_up(&transaction, &set.summaries)
        };
        ended(&transaction, take()).await
    }

    /// A strictly durable transaction over what a set touches.
    fn writing(&self, set: &Batch) -> Result<IdbTransaction, StoreError> {
        let stores = Array::of2(&ENTRIES.into(), &SUMMARIES.into());
        if !set.photos.is_empty() {
            stores.push(&PHOTOS.into());
        }
        self.durable(&stores)
    }

    fn durable(&self, stores: &Array) -> Result<IdbTransaction, StoreError> {
        if self.newer {
            return Err(StoreError::Newer);
        }
        let options = Object::new();
        Reflect::set(&options, &"durability".into(), &"strict".into()).map_err(other)?;
        self.base.transaction_with(stores, "readwrite", &options).map_err(other)
    }

    /// The summaries of all books by their names; `None` where they are not there in this form.
    pub(super) async fn summaries(&self, form: &str) -> Result<Option<Vec<Summed>>, StoreError> {
        if !self.base.object_store_names().contains(SUMMARIES) {
            return Ok(None);
        }
        let store = self.reading(SUMMARIES)?;
        let names = store.get_all_keys().map_err(other)?;
        let texts = store.get_all().map_err(other)?;
        let texts = Array::from(&succeeded(&texts).await?);
        let names = Array::from(&names.result().map_err(other)?);
        let is_form = names.get(0).as_f64() == Some(FORM)
            && texts.get(0).as_string().as_deref() == Some(form);
        let text = |value: JsValue| value.as_string().unwrap_or_default();
        let all = names.iter().zip(texts.iter()).skip(1);
        Ok(is_form.then(|| all.map(|(name, it)| (text(name), Some(text(it)))).collect()))
    }

    /// The summary of one book.
    pub(super) async fn summary(&self, book: &str) -> Result<Option<String>, StoreError> {
        let request = self.reading(SUMMARIES)?.get(&book.into()).map_err(other)?;
        Ok(succeeded(&request).await?.as_string())
    }

    /// Writes the summaries of all books anew, one book after the other, all or none.
    pub(super) async fn sum_all_up(
        &self,
        form: &str,
        sum: impl Fn(&str, &[Row]) -> String,
    ) -> Result<(), StoreError> {
        let transaction = self.durable(&Array::of2(&ENTRIES.into(), &SUMMARIES.into()))?;
        let entries = transaction.object_store(ENTRIES).map_err(other)?;
        let summaries = transaction.object_store(SUMMARIES).map_err(other)?;
        summaries.clear().map_err(other)?;
        let put = |text: &str, key: &JsValue| summaries.put_with_key(&text.into(), key);
        put(form, &FORM.into()).map_err(other)?;
        let mut from = Array::new();
        loop {
            let later = IdbKeyRange::lower_bound_with_open(&from, true).map_err(other)?;
            let first = entries.get_all_keys_with_key_and_limit(&later, 1).map_err(other)?;
            let first = Array::from(&succeeded(&first).await?).get(0).dyn_into::<Array>();
            let Some(book) = first.ok().and_then(|key| key.get(0).as_string()) else { break };
            let rows = rows_of(&entries, &of_book(&book).map_err(other)?).await?;
            put(&sum(&book, &rows), &book.as_str().into()).map_err(other)?;
            from = Array::of2(&book.into(), &Array::new());
        }
        completed(&transaction).await
    }

    /// How many rows there are.
    pub(super) async fn count(&self) -> Result<usize, StoreError> {
        let count = self.reading(ENTRIES)?.count().map_err(other)?;
        Ok(succeeded(&count).await?.as_f64().unwrap_or_default() as usize)
    }

    /// Reads the rows of one book, or of all, in the order of their keys.
    pub(super) async fn rows(&self, book: Option<&str>) -> Result<Vec<Row>, StoreError> {
        let range = match book {
            Some(book) => of_book(book).map_err(other)?,
            None => JsValue::UNDEFINED,
        };
        rows_of(&self.reading(ENTRIES)?, &range).await
    }

    /// Reads one photo; `None` where it is not here.
    pub(super) async fn photo(&self, id: &str) -> Result<Option<Blob>, StoreError> {
        let request = self.reading(PHOTOS)?.get(&id.into()).map_err(other)?;
        Ok(succeeded(&request).await?.dyn_into().ok())
    }

    /// The ids of all photos.
    pub(super) async fn photo_ids(&self) -> Result<Vec<String>, StoreError> {
        let request = self.reading(PHOTOS)?.get_all_keys().map_err(other)?;
        let keys = Array::from(&succeeded(&request).await?);
        Ok(keys.iter().filter_map(|key| key.as_string()).collect())
    }

    fn reading(&self, store: &str) -> Result<IdbObjectStore, StoreError> {
        let transaction = self.base.transaction_with_str(store).map_err(other)?;
        transaction.object_store(store).map_err(other)
    }
}

/// The rows in a range, in the order of their keys.
async fn rows_of(entries: &IdbObjectStore, range: &JsValue) -> Result<Vec<Row>, StoreError> {
    let keys = entries.get_all_keys_with_key(range).map_err(other)?;
    let lines = entries.get_all_with_key(range).map_err(other)?;
    let lines = Array::from(&succeeded(&lines).await?);
    // Requests of one transaction end in order, so the keys are there by now.
    let keys = Array::from(&keys.result().map_err(other)?);
    Ok(keys.iter().zip(lines.iter()).map(|(key, line)| row(&key, &line)).collect())
}

/// Puts summaries in the place of older ones; takes out those of books that are gone.
fn sum_up(transaction: &IdbTransaction, summaries: &[Summed]) -> Result<(), JsValue> {
    let store = transaction.object_store(SUMMARIES)?;
    summaries.iter().try_for_each(|(book, text)| {
        let request = match text {
            Some(text) => store.put_with_key(&text.into(), &book.into())?,
            None => store.delete(&book.into())?,
        };
        // A failed request ends the transaction, which says so.
        drop(request);
        Ok(())
    })
}

fn other(thrown: JsValue) -> StoreError {
    StoreError::from_thrown(&thrown)
}

fn key(row: &Row) -> JsValue {
    Array::of3(&(&row.book).into(), &(row.counter as f64).into(), &(&row.device).into()).into()
}

/// The key of a row whose place is taken by another line: the line itself completes it.
fn key_beside(row: &Row) -> JsValue {
    let key = Array::from(&key(row));
    key.push(&(&row.line).into());
    key.into()
}

/// The keys of one book. An array sorts after every number and text, so it closes the range.
fn of_book(book: &str) -> Result<JsValue, JsValue> {
    let (from, to) = (Array::of1(&book.into()), Array::of2(&book.into(), &Array::new()));
    IdbKeyRange::bound(&from, &to).map(JsValue::from)
}

fn factory() -> Result<IdbFactory, StoreError> {
    let refused = |seen: &str| StoreError::Refused { seen: seen.to_owned() };
    let window = web_sys::window().ok_or_else(|| refused("no window"))?;
    window.indexed_db().map_err(other)?.ok_or_else(|| refused("no IndexedDB"))
}

/// A row as it lies; anything unforeseen in it becomes text, so that it is kept and counted.
fn row(key: &JsValue, line: &JsValue) -> Row {
    let key = Array::from(key);
    let text = |value: JsValue| value.as_string().unwrap_or_default();
    Row {
        book: text(key.get(0)),
        counter: key.get(1).as_f64().unwrap_or_default() as u64,
        device: text(key.get(2)),
        line: line
            .as_string()
            .unwrap_or_else(|| js_sys::JSON::stringify(line).map(String::from).unwrap_or_default()),
    }
}

/// Makes what this version holds and an older one did not; the browser waits for it before the
/// connection opens. What is there stays as it lies.
fn make_stores(request: &IdbOpenDbRequest, event: &JsValue) {
    let base: IdbDatabase = match request.result() {
        Ok(base) => base.unchecked_into(),
        Err(_) => return,
    };
    let lost = Reflect::get(event, &"dataLoss".into()).ok().and_then(|loss| loss.as_string());
    // Remembered on the request, which `opened` looks at; a failure to note it costs a notice only.
    Reflect::set(request, &"replaced".into(), &(lost.as_deref() == Some("total")).into()).ok();
    let there = base.object_store_names();
    for store in [ENTRIES, PHOTOS, SUMMARIES] {
        if !there.contains(store) {
            // A store that could not be made shows as a failed open.
            base.create_object_store(store).ok();
        }
    }
}

/// Waits until the connection stands; true where a broken store was replaced by an empty one.
async fn opened(request: &IdbOpenDbRequest) -> Result<bool, StoreError> {
    let outcome = settled(|done, failed| {
        request.set_onsuccess(Some(done));
        request.set_onerror(Some(failed));
        request.set_onblocked(Some(failed));
    });
    match outcome.await {
        Ok(_) => Ok(Reflect::get(request, &"replaced".into()).is_ok_and(|seen| seen.is_truthy())),
        Err(event) if event.type_() == "blocked" => Err(StoreError::Blocked),
        Err(_) => Err(thrown_by(request)),
    }
}

async fn succeeded(request: &IdbRequest) -> Result<JsValue, StoreError> {
    let outcome = settled(|done, failed| {
        request.set_onsuccess(Some(done));
        request.set_onerror(Some(failed));
    });
    outcome.await.map_err(|_| thrown_by(request))?;
    request.result().map_err(other)
}

/// Waits for a transaction whose requests were made; half a set must not stay.
async fn ended(transaction: &IdbTransaction, made: Result<(), JsValue>) -> Result<(), StoreError> {
    if let Err(thrown) = made {
        // A transaction that cannot be ended has ended by itself.
        transaction.abort().ok();
        return Err(other(thrown));
    }
    completed(transaction).await
}

async fn completed(transaction: &IdbTransaction) -> Result<(), StoreError> {
    let outcome = settled(|done, failed| {
        transaction.set_oncomplete(Some(done));
        transaction.set_onabort(Some(failed));
    });
    outcome.await.map(drop).map_err(|_| match transaction.error() {
        Some(exception) => other(exception.into()),
        // An abort without a reason is the browser closing the connection.
        None => StoreError::Lost,
    })
}

fn thrown_by(request: &IdbRequest) -> StoreError {
    match request.error() {
        Ok(Some(exception)) => other(exception.into()),
        Ok(None) => StoreError::Lost,
        Err(thrown) => other(thrown),
    }
}

/// Waits for the first event of two handlers: the one that it went well, the one that it did not.
///
/// The promise's own functions are the handlers, so no closure has to be kept alive.
async fn settled(listen: impl Fn(&Function, &Function)) -> Result<(), web_sys::Event> {
    let promise = Promise::new(&mut |done, failed| listen(&done, &failed));
    JsFuture::from(promise).await.map(drop).map_err(JsCast::unchecked_into)
}
