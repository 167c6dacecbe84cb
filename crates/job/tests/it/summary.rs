//! What is known of a book without opening it.

use job::*;

use crate::bench::Bench;

fn of(book: &Book) -> Summary {
    Summary::of(book, &Folded::of(book))
}

#[test]
fn a_job_says_what_stands_on_its_back() {
    let bench = Bench::demo();
    let (summary, job) = (of(&bench.job), Job::fold(&bench.job));
    assert_eq!(summary.entries, bench.job.lines().count());
    let back = summary.job.unwrap();
    assert_eq!((&back.id, &back.boat, &back.sheet), (&job.id, &job.boat, &job.sheet));
    assert_eq!(
        (back.number, back.opened_at, back.last_at),
        (job.number, job.opened_at, job.last_at)
    );
}

#[test]
fn a_book_that_is_no_job_has_a_count_and_a_sheet_its_name() {
    let bench = Bench::demo();
    for book in [&bench.tin, &bench.sheet] {
        let summary = of(book);
        assert_eq!((summary.job, summary.unread), (None, 0));
        assert_eq!(summary.unit.is_some(), book.id() == bench.sheet.id());
        assert_eq!(summary.entries, book.lines().count());
    }
}

#[test]
fn what_cannot_be_read_is_counted_among_the_entries() {
    let bench = Bench::demo();
    let lines = bench.job.lines().chain(["{\"v\":99}", "no line at all"]);
    let book = Book::from_lines(bench.job.id().clone(), lines);
    let summary = of(&book);
    assert_eq!((summary.entries, summary.unread), (bench.job.lines().count() + 2, 2));
    assert_eq!((Summary::of_foreign(3).entries, Summary::of_foreign(3).unread), (3, 3));
}

#[test]
fn it_is_read_as_it_was_written_and_not_in_another_form() {
    let bench = Bench::demo();
    for book in [&bench.job, &bench.tin, &bench.sheet] {
        assert_eq!(Summary::from_text(&of(book).to_text()), Some(of(book)));
    }
    for other in ["", "{}", r#"{"entries":-1}"#, r#"{"entries":1,"of":"a later form"}"#] {
        assert_eq!(Summary::from_text(other), None, "{other}");
    }
}
