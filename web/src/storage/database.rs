//! The browser's own database: object stores, keys, transactions.

use js_sys::{Array, Object, Reflect};
use wasm_bindgen::prelude::*;
use web_sys::{Blob, IdbDatabase, IdbKeyRange, IdbObjectStore, IdbRequest, IdbTransaction};

use super::asked::{completed, ended, other, succeeded};
use super::{Batch, Row, StoreError, Summed};

/// The database's name; the crash card opens it by the same name.
pub(super) const NAME: &str = "shimwright";
/// 1: entries. 2: photos beside them. 3: a summary of each book.
pub(super) const VERSION: u32 = 3;
/// Object store of all entries: key `[book, counter, device]`, value the entry's line.
pub(super) const ENTRIES: &str = "entries";
/// Object store of all photos: key their id, value the picture itself.
pub(super) const PHOTOS: &str = "photos";
/// Object store of what is known of each book: key its name, value the summary's text. Derived from
/// the entries, and written with them.
pub(super) const SUMMARIES: &str = "summaries";
/// Key of the form of the summaries, which stands among them: a number, so it sorts before the names
/// of all books, the empty one of unreadable lines too.
const FORM: f64 = 0.0;

#[wasm_bindgen]
extern "C" {
    /// `IDBDatabase` with the options that web-sys hides behind an unstable flag.
    #[wasm_bindgen(extends = IdbDatabase)]
    pub(super) type DurableDatabase;

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
    pub(super) base: DurableDatabase,
    /// It was not there before.
    pub(super) made: bool,
    /// The browser said that a broken store was replaced by an empty one.
    pub(super) replaced: bool,
    /// Why it is only looked at, where it is: another version of the app made it.
    pub(super) only_looks: Option<StoreError>,
}

impl Drop for Database {
    fn drop(&mut self) {
        self.base.close();
    }
}

impl Database {
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
            set.freed.iter().try_for_each(|id| {
                transaction.object_store(PHOTOS)?.delete(&JsValue::from_str(id)).map(drop)
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
        if !set.photos.is_empty() || !set.freed.is_empty() {
            stores.push(&PHOTOS.into());
        }
        self.durable(&stores)
    }

    fn durable(&self, stores: &Array) -> Result<IdbTransaction, StoreError> {
        if let Some(why) = &self.only_looks {
            return Err(why.clone());
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
            let range = of_book(&book).map_err(other)?;
            for rows in rows_of(&entries, &[range]).await? {
                put(&sum(&book, &rows), &book.as_str().into()).map_err(other)?;
            }
            from = Array::of2(&book.into(), &Array::new());
        }
        completed(&transaction).await
    }

    /// How many rows there are.
    pub(super) async fn count(&self) -> Result<usize, StoreError> {
        let count = self.reading(ENTRIES)?.count().map_err(other)?;
        Ok(succeeded(&count).await?.as_f64().unwrap_or_default() as usize)
    }

    /// Reads every row, in the order of their keys.
    pub(super) async fn rows(&self) -> Result<Vec<Row>, StoreError> {
        Ok(rows_of(&self.reading(ENTRIES)?, &[JsValue::UNDEFINED]).await?.concat())
    }

    /// Reads the rows of each of some books, in the order of their keys, all at once.
    pub(super) async fn books(&self, books: &[String]) -> Result<Vec<Vec<Row>>, StoreError> {
        let ranges: Result<Vec<JsValue>, JsValue> = books.iter().map(|it| of_book(it)).collect();
        rows_of(&self.reading(ENTRIES)?, &ranges.map_err(other)?).await
    }

    /// Reads one photo; `None` where it is not here.
    pub(super) async fn photo(&self, id: &str) -> Result<Option<Blob>, StoreError> {
        let request = self.reading(PHOTOS)?.get(&id.into()).map_err(other)?;
        Ok(succeeded(&request).await?.dyn_into().ok())
    }

    /// The ids of all photos.
    pub(super) async fn photo_ids(&self) -> Result<Vec<String>, StoreError> {
        // The first version had none.
        if !self.base.object_store_names().contains(PHOTOS) {
            return Ok(Vec::new());
        }
        let request = self.reading(PHOTOS)?.get_all_keys().map_err(other)?;
        let keys = Array::from(&succeeded(&request).await?);
        Ok(keys.iter().filter_map(|key| key.as_string()).collect())
    }

    fn reading(&self, store: &str) -> Result<IdbObjectStore, StoreError> {
        self.base.transaction_with_str(store).and_then(|it| it.object_store(store)).map_err(other)
    }
}

/// The rows in each of some ranges, in the order of their keys.
async fn rows_of(
    entries: &IdbObjectStore,
    ranges: &[JsValue],
) -> Result<Vec<Vec<Row>>, StoreError> {
    let ask = |range| Ok((entries.get_all_keys_with_key(range)?, entries.get_all_with_key(range)?));
    let asked: Result<Vec<(IdbRequest, IdbRequest)>, JsValue> = ranges.iter().map(ask).collect();
    let asked = asked.map_err(other)?;
    if let Some((_, last)) = asked.last() {
        // Requests of one transaction end in order, so all the others are answered by then.
        succeeded(last).await?;
    }
    let answer = |(keys, lines): &(IdbRequest, IdbRequest)| {
        let (keys, lines) = (Array::from(&keys.result()?), Array::from(&lines.result()?));
        Ok(keys.iter().zip(lines.iter()).map(|(key, line)| row(&key, &line)).collect())
    };
    asked.iter().map(answer).collect::<Result<_, JsValue>>().map_err(other)
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
