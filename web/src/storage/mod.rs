//! The system of record: one small row for each entry, strictly durable.
//!
//! A row is acknowledged only when the browser has synced it to the disk. Rows that must agree go
//! into one transaction. Rows are only ever added: a key in use is refused, so two tabs cannot
//! overwrite each other.

mod asked;
mod database;
mod error;
mod fresh;
mod older;
mod opening;

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use database::Database;
pub use error::StoreError;
use web_sys::Blob;

use crate::device::protection::room;

/// One entry as it is kept.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Row {
    /// The book it belongs to.
    pub book: String,
    /// Its place in the order.
    pub counter: u64,
    /// The device that wrote it.
    pub device: String,
    /// The entry itself, one JSON line.
    pub line: String,
}

/// A picture that belongs to an entry, kept beside it.
#[derive(Clone, Debug)]
pub struct Photo {
    /// Its name, which the entry says.
    pub id: String,
    /// The picture, made anew by this app: nothing of the camera's own data is in it.
    pub picture: Blob,
}

/// What is written together, or taken out again together.
#[derive(Clone, Debug, Default)]
pub struct Batch {
    /// Rows.
    pub rows: Vec<Row>,
    /// Rows whose place is taken by another line: two devices of one name, or lines that tell no
    /// place.
    pub beside: Vec<Row>,
    /// Photos that belong to them.
    pub photos: Vec<Photo>,
    /// Ids of photos that make room, where the batch is added.
    pub freed: Vec<String>,
    /// What is known of their books from then on.
    pub summaries: Vec<Summed>,
}

/// A book's name and what is known of it; `None` where there is no such book any more.
pub type Summed = (String, Option<String>);

/// Whether a set is near what is left for this site, as the browser estimates it.
async fn no_room_for(set: &Batch) -> bool {
    /// What a store needs beside the bytes of its rows.
    const BESIDE: f64 = 16_384.0;
    let rows = set.rows.iter().chain(&set.beside).map(|row| row.line.len() as f64);
    let photos = set.photos.iter().map(|photo| photo.picture.size());
    let bytes = rows.chain(photos).sum::<f64>();
    room().await.is_some_and(|room| room.left < bytes + BESIDE)
}

/// The store of this device. Cloning gives another handle to the same connection.
#[derive(Clone)]
pub struct Store {
    connection: Rc<RefCell<Option<Rc<Database>>>>,
    /// It is the copy of an older version.
    is_copy: bool,
    /// A sound log was begun for what is written.
    is_fresh: Rc<Cell<bool>>,
    /// Why nothing is written any more.
    shut: Rc<RefCell<Option<StoreError>>>,
    tell_shut: Rc<dyn Fn(StoreError)>,
}

impl Store {
    /// Opens the store. `tell_shut` is called once this page may write no more: with
    /// [`StoreError::Newer`] where a newer version of the app needs it to let go of the store, with
    /// [`StoreError::Cleared`] where the browser has dropped what was in it. From then on the store
    /// gives what it holds and refuses to take with that reason, as one that is newer from the
    /// start does.
    ///
    /// # Errors
    /// Where the browser keeps nothing, or another tab is in the way.
    pub async fn open(tell_shut: impl Fn(StoreError) + 'static) -> Result<Store, StoreError> {
        let store = Store {
            connection: Rc::default(),
            is_copy: false,
            is_fresh: Rc::default(),
            shut: Rc::default(),
            tell_shut: Rc::new(tell_shut),
        };
        store.connect().await?;
        Ok(store)
    }

    /// The copy that was made before a store of an older version was changed, to be looked at.
    ///
    /// # Errors
    /// What the browser gave as its reason.
    pub async fn copy() -> Result<Option<Store>, StoreError> {
        let database = Database::open_copy().await?;
        Ok(database.map(|database| Store {
            connection: Rc::new(RefCell::new(Some(Rc::new(database)))),
            is_copy: true,
            is_fresh: Rc::default(),
            shut: Rc::default(),
            tell_shut: Rc::new(|_| ()),
        }))
    }

    /// Removes that copy, if there is one.
    ///
    /// # Errors
    /// What the browser gave as its reason.
    pub async fn remove_copy() -> Result<(), StoreError> {
        older::remove_copy().await
    }

    /// Why the store is shown and takes nothing, where that is so: a newer version of the app made
    /// it, or an older one did and it could not be changed.
    pub fn only_looks(&self) -> Option<StoreError> {
        self.connection.borrow().as_ref().and_then(|database| database.only_looks.clone())
    }

    /// True where the browser found the store broken and replaced it by an empty one.
    pub fn was_replaced(&self) -> bool {
        self.connection.borrow().as_ref().is_some_and(|database| database.replaced)
    }

    /// Adds a set, all or none; returns when it is on the disk.
    ///
    /// # Errors
    /// [`StoreError::Taken`] where one of the keys is in use; otherwise what the browser gave as
    /// its reason. Nothing was kept then.
    pub async fn add(&self, set: &Batch) -> Result<(), StoreError> {
        match self.write(async |database| database.add(set).await).await {
            // Out of room, a browser may end the connection, or name no reason.
            Err(StoreError::Lost | StoreError::Other { .. }) if no_room_for(set).await => {
                Err(StoreError::Full)
            }
            outcome => outcome,
        }
    }

    /// Takes a set that was just brought in out again, all or none.
    ///
    /// # Errors
    /// [`StoreError::Taken`] where a book has not the number of rows any more that `counts` says;
    /// otherwise what the browser gave as its reason. Nothing changed then.
    pub async fn take_out(
        &self,
        set: &Batch,
        counts: &[(String, usize)],
    ) -> Result<(), StoreError> {
        self.write(async |database| database.take_out(set, counts).await).await
    }

    /// The ids of all photos on this device.
    ///
    /// # Errors
    /// What the browser gave as its reason.
    pub async fn photo_ids(&self) -> Result<Vec<String>, StoreError> {
        self.ask(async |database| database.photo_ids().await).await
    }

    /// One photo; `None` where it is not on this device.
    ///
    /// # Errors
    /// What the browser gave as its reason.
    pub async fn photo(&self, id: &str) -> Result<Option<Blob>, StoreError> {
        self.ask(async |database| database.photo(id).await).await
    }

    /// What is known of all books; `None` where it has to be worked out anew in this form, by
    /// [`Store::sum_all_up`].
    ///
    /// # Errors
    /// What the browser gave as its reason.
    pub async fn summaries(&self, form: &str) -> Result<Option<Vec<Summed>>, StoreError> {
        self.ask(async |database| database.summaries(form).await).await
    }

    /// What is known of one book.
    ///
    /// # Errors
    /// What the browser gave as its reason.
    pub async fn summary(&self, book: &str) -> Result<Option<String>, StoreError> {
        self.ask(async |database| database.summary(book).await).await
    }

    /// Works out anew what is known of every book, by its name and rows.
    ///
    /// # Errors
    /// What the browser gave as its reason. Nothing changed then.
    pub async fn sum_all_up(
        &self,
        form: &str,
        sum: impl Fn(&str, &[Row]) -> String,
    ) -> Result<(), StoreError> {
        self.write(async |database| database.sum_all_up(form, &sum).await).await
    }

    /// How many rows there are.
    ///
    /// # Errors
    /// What the browser gave as its reason.
    pub async fn count(&self) -> Result<usize, StoreError> {
        self.ask(async |database| database.count().await).await
    }

    /// Every row, in the order of book, counter, device.
    ///
    /// # Errors
    /// What the browser gave as its reason.
    pub async fn all(&self) -> Result<Vec<Row>, StoreError> {
        self.ask(async |database| database.rows().await).await
    }

    /// The rows of one book, in the order of counter, device.
    ///
    /// # Errors
    /// What the browser gave as its reason.
    pub async fn book(&self, book: &str) -> Result<Vec<Row>, StoreError> {
        Ok(self.books(&[book.to_owned()]).await?.concat())
    }

    /// The rows of each of some books, read together.
    ///
    /// # Errors
    /// What the browser gave as its reason.
    pub async fn books(&self, books: &[String]) -> Result<Vec<Vec<Row>>, StoreError> {
        self.ask(async |database| database.books(books).await).await
    }

    /// Has a sound log begun where this visit has none yet; writing waits for it.
    ///
    /// # Errors
    /// [`StoreError::Full`] where the device has hardly any room left.
    pub async fn freshen(&self) -> Result<(), StoreError> {
        if self.is_fresh.get() || self.only_looks().is_some() {
            return Ok(());
        }
        match fresh::begin().await {
            Ok(()) => self.is_fresh.set(true),
            Err(StoreError::Full) => return Err(StoreError::Full),
            // A browser that has no such log refuses nothing for it; it is tried again.
            Err(_) => (),
        }
        Ok(())
    }

    /// Writes; once more over a new connection where the old one was lost. A write that failed may
    /// have left the log broken.
    async fn write<T>(
        &self,
        change: impl AsyncFn(&Database) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        for _ in 0..2 {
            self.freshen().await?;
            let database = self.connected().await?;
            if let Some(why) = self.shut.borrow().clone() {
                return Err(why);
            }
            match change(&database).await {
                Err(StoreError::Lost) => drop(self.connection.take()),
                Err(StoreError::Taken) => return Err(StoreError::Taken),
                Err(why) => {
                    self.is_fresh.set(false);
                    return Err(why);
                }
                done => return done,
            }
            self.is_fresh.set(false);
        }
        Err(StoreError::Lost)
    }

    /// Asks the database; once more over a new connection where the old one was lost.
    async fn ask<T>(
        &self,
        question: impl AsyncFn(&Database) -> Result<T, StoreError>,
    ) -> Result<T, StoreError> {
        match question(&*self.connected().await?).await {
            Err(StoreError::Lost) => {
                self.connection.take();
                question(&*self.connected().await?).await
            }
            answer => answer,
        }
    }

    /// The connection, opened again where it was lost: phones end it behind a page's back.
    async fn connected(&self) -> Result<Rc<Database>, StoreError> {
        if let Some(database) = self.connection.borrow().as_ref() {
            return Ok(database.clone());
        }
        if self.is_copy {
            let database = Database::open_copy().await?.ok_or(StoreError::Lost)?;
            return Ok(Rc::new(database));
        }
        let database = self.connect().await?;
        if database.made {
            // It stood before on this visit.
            self.shut.replace(Some(StoreError::Cleared));
            (self.tell_shut)(StoreError::Cleared);
        }
        Ok(database)
    }

    async fn connect(&self) -> Result<Rc<Database>, StoreError> {
        let (connection, tell) = (Rc::downgrade(&self.connection), self.tell_shut.clone());
        let shut = self.shut.clone();
        let database = Database::open(move || {
            shut.replace(Some(StoreError::Newer));
            if let Some(connection) = connection.upgrade() {
                // Opened again, it finds the newer store.
                connection.take();
            }
            tell(StoreError::Newer);
        });
        let database = Rc::new(database.await?);
        self.connection.replace(Some(database.clone()));
        Ok(database)
    }
}
