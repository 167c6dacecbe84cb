//! What screens look at: the folded books, followed.

use std::sync::Arc;

use job::{Book, BookId, Drawer, Job, JobSummary, Sheet, Tin};
use leptos::prelude::*;
use web_sys::Blob;

use super::{Bench, Books, Last};
use crate::parts::{LastEntry, Standing};
use crate::storage::StoreError;

impl Bench {
    /// A photo; `None` where it is not on this device.
    ///
    /// # Errors
    /// Why the store did not give it.
    pub async fn photo(self, id: &str) -> Result<Option<Blob>, StoreError> {
        self.store.get_value().photo(id).await
    }

    /// The last act of this visit, for the bar that offers Undo.
    pub fn last(self) -> Option<LastEntry> {
        self.last.with(|last| last.as_ref().and_then(Last::shown))
    }

    /// True while something is on its way to the disk.
    pub fn is_saving(self) -> bool {
        self.last.with(|last| last.as_ref().is_some_and(|last| last.standing == Standing::Saving))
    }

    /// The job of that id; `None` where there is no such book, or it is not open yet.
    pub fn job(self, id: &str) -> Memo<Option<Arc<Job>>> {
        let id = id.to_owned();
        let job = move |_: Option<&_>| self.books.with(|books| books.job(&id));
        Memo::new_with_compare(job, is_another)
    }

    /// The unit sheet of that id; `None` where there is no such book, or it is not open yet.
    pub fn sheet(self, id: &str) -> Memo<Option<Arc<Sheet>>> {
        let id = id.to_owned();
        let sheet = move |_: Option<&_>| self.books.with(|books| books.sheet(&id));
        Memo::new_with_compare(sheet, is_another)
    }

    /// The unit sheet of a job.
    pub fn sheet_of(self, job: Memo<Option<Arc<Job>>>) -> Memo<Option<Arc<Sheet>>> {
        let sheet = move |_: Option<&_>| {
            let id = job.with(|job| job.as_ref().map(|job| job.sheet.clone()))?;
            self.books.with(|books| books.sheet(&id))
        };
        Memo::new_with_compare(sheet, is_another)
    }

    /// The shim tin; empty before the first shim, and until it is open.
    pub fn tin(self) -> Memo<Arc<Tin>> {
        let tin = move |_: Option<&_>| self.books.with(Books::tin);
        Memo::new_with_compare(tin, |old: Option<&Arc<Tin>>, new: Option<&Arc<Tin>>| {
            old.map(Arc::as_ptr) != new.map(Arc::as_ptr)
        })
    }

    /// The tool drawer; empty before the first tool, and until it is open. Folded anew only when
    /// something was written in it.
    pub fn drawer(self) -> Memo<Arc<Drawer>> {
        let drawer = move |_: Option<&_>| self.books.with(Books::drawer);
        Memo::new_with_compare(drawer, |old: Option<&Arc<Drawer>>, new: Option<&Arc<Drawer>>| {
            old.map(Arc::as_ptr) != new.map(Arc::as_ptr)
        })
    }

    /// Every job, also in the archive, the one written in last first.
    pub fn every_job(self) -> Vec<Arc<JobSummary>> {
        self.books.with(Books::jobs)
    }

    /// The jobs that are not in the archive, the one written in last first.
    pub fn jobs(self) -> Vec<Arc<JobSummary>> {
        self.books.with(Books::on_bench)
    }

    /// The job that was open last; before any was, the one written in last.
    pub fn current_job(self) -> Option<Arc<JobSummary>> {
        self.books.with(Books::current)
    }

    /// What a unit sheet is called, open or not.
    pub fn unit(self, sheet: &str) -> String {
        self.books.with(|books| books.unit(sheet))
    }

    /// Looks at an open book as it is written.
    pub fn with_book<T>(self, id: &BookId, look: impl FnOnce(&Book) -> T) -> T {
        look(&self.books.with_untracked(|books| books.book(id)))
    }

    /// Every unit sheet that is open.
    pub fn sheets(self) -> Vec<Arc<Sheet>> {
        self.books.with(|books| books.sheets().filter_map(|id| books.sheet(&id)).collect())
    }

    /// The first of the unit sheets, open or not.
    pub fn first_sheet(self) -> Option<String> {
        self.books.with(|books| books.sheets().next())
    }

    /// Whether there is such a unit sheet, open or not.
    pub fn has_sheet(self, id: &str) -> bool {
        self.books.with(|books| books.has(&BookId::Sheet(id.to_owned())))
    }

    /// True before anything was ever written down here.
    pub fn is_empty(self) -> bool {
        self.stands.get() && self.books.with(Books::is_empty)
    }

    /// How many entries there are, read or not.
    pub fn entries(self) -> usize {
        self.books.with(Books::entries)
    }

    /// How many entries this version cannot read. They are kept and exported.
    pub fn unread(self) -> usize {
        self.books.with(Books::unread)
    }

    /// When something was last saved in this visit, milliseconds since 1970, UTC.
    pub fn saved_at(self) -> Option<i64> {
        self.saved_at.get()
    }

    /// What is wrong with the store as a whole, in a sentence.
    pub fn trouble(self) -> Option<&'static str> {
        self.trouble.get()
    }
}

/// Folded states are shared and never changed, so another place in memory is another state.
fn is_another<T>(old: Option<&Option<Arc<T>>>, new: Option<&Option<Arc<T>>>) -> bool {
    let place = |state: Option<&Option<Arc<T>>>| state.map(|it| it.as_ref().map(Arc::as_ptr));
    place(old) != place(new)
}
