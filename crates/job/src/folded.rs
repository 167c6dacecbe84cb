//! A book and what it amounts to.

use std::sync::Arc;

use crate::{Book, BookId, Drawer, Job, Sheet, Tin};

/// What a book amounts to.
#[derive(Clone, Debug)]
pub enum Folded {
    /// The shim tin.
    Tin(Arc<Tin>),
    /// The tool drawer.
    Drawer(Arc<Drawer>),
    /// A unit sheet.
    Sheet(Arc<Sheet>),
    /// A job.
    Job(Arc<Job>),
}

impl Folded {
    /// Folds a book.
    pub fn of(book: &Book) -> Folded {
        match book.id() {
            BookId::Tin => Folded::Tin(Arc::new(Tin::fold(book))),
            BookId::Drawer => Folded::Drawer(Arc::new(Drawer::fold(book))),
            BookId::Sheet(_) => Folded::Sheet(Arc::new(Sheet::fold(book))),
            BookId::Job(_) => Folded::Job(Arc::new(Job::fold(book))),
        }
    }
}
