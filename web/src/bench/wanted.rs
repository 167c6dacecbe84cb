//! Which books a screen needs opened before it is shown.

use job::BookId;

use super::books::Books;
use crate::address::Screen;

/// Jobs that the bench shows at first, and the board at all: what is worked on.
pub const AT_FIRST: usize = 8;

/// The books that a screen shows.
pub(super) fn wanted(screen: &Screen, books: &Books) -> Vec<BookId> {
    let mut wanted = Vec::new();
    let mut job = |id: &str, sheet: &str| {
        wanted.push(BookId::Job(id.to_owned()));
        wanted.push(BookId::Sheet(sheet.to_owned()));
    };
    match screen {
        Screen::Bench | Screen::First | Screen::Board => {
            let jobs = books.on_bench();
            let current = books.current();
            jobs.iter().take(AT_FIRST).chain(&current).for_each(|it| job(&it.id, &it.sheet));
            if jobs.is_empty() {
                wanted.push(BookId::Tin);
            }
        }
        Screen::NewJob | Screen::Tin => {
            wanted.extend(books.sheets().map(BookId::Sheet));
            wanted.push(BookId::Tin);
        }
        Screen::Sheet { sheet } | Screen::SendSheet { sheet } => {
            wanted.extend([BookId::Sheet(sheet.clone()), BookId::Tin]);
        }
        Screen::Tools { job: None } => wanted.push(BookId::Drawer),
        other => {
            let id = other.job();
            if let Some(it) = books.jobs().iter().find(|it| id == Some(&it.id)) {
                job(&it.id, &it.sheet);
                wanted.extend([BookId::Tin, BookId::Drawer]);
            }
        }
    }
    wanted
}
