//! Undo: the last act is taken back, in every book it wrote to.

use words::key;

use crate::{Book, BookId, Fact};

/// The facts that take back the last act written in `book`, for each book it touched.
///
/// Record them in one transaction. Empty where there is nothing to take back: the entry that opened
/// a book stays, and so does one that no entry can undo.
pub fn undo<'a>(book: &Book, others: impl IntoIterator<Item = &'a Book>) -> Vec<(BookId, Fact)> {
    let Some(act) = last_act(book) else { return Vec::new() };
    let mut facts = retractions(book, &act);
    for other in others.into_iter().filter(|other| other.id() != book.id()) {
        facts.extend(retractions(other, &act));
    }
    facts
}

fn last_act(book: &Book) -> Option<String> {
    book.live().into_iter().rfind(|entry| entry.fact.can_go()).map(|entry| entry.act().to_owned())
}

fn retractions(book: &Book, act: &str) -> Vec<(BookId, Fact)> {
    book.live()
        .into_iter()
        .filter(|entry| entry.act() == act && entry.fact.can_go())
        .map(|entry| {
            let fact =
                Fact::EntryRetracted { entry: entry.id.clone(), why: key!("undo").to_owned() };
            (book.id().clone(), fact)
        })
        .collect()
}
