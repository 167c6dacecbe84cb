//! Tests of the words.

use std::fmt::Display;

use words::{Entry, Torn, fill, language, learn, read, say, t};

const SPANISH: &str = r#"
msgid ""
msgstr ""
"Language: es\n"
"Content-Type: text/plain; charset=UTF-8\n"

#: crates/job/src/check.rs
msgid "Backlash"
msgstr "Juego entre dientes"

msgid "{} of {} read. Read {stop} too."
msgstr "Lea también {stop}: van {0} de {1}."

msgid "Not yet"
msgstr ""

msgid "A \"quoted\" text "
"in two lines"
msgstr "Un texto «citado» "
"en dos líneas"
"#;

/// The catalogue is one for the whole program, so this is one test.
#[test]
fn english_until_a_language_is_learnt() {
    assert_eq!(language(), "en");
    assert_eq!(t("Backlash"), "Backlash");
    let stop = "3";
    assert_eq!(say!("{} of {} read. Read {stop} too.", 2, 4), "2 of 4 read. Read 3 too.");
    assert_eq!(say!("{a} and {}", "c", a = "b"), "b and c");
    assert_eq!(say!("{1}, {0}, {1}", "a", "b"), "b, a, b");
    assert_eq!(say!("{{kept}}"), "{kept}");

    learn(SPANISH).unwrap();
    assert_eq!(language(), "es");
    assert_eq!(t("Backlash"), "Juego entre dientes");
    assert_eq!(t("A \"quoted\" text in two lines"), "Un texto «citado» en dos líneas");
    assert_eq!(t("Not yet"), "Not yet", "no translation yet");
    assert_eq!(t("Typed by a person"), "Typed by a person");
    assert_eq!(say!("{} of {} read. Read {stop} too.", 2, 4), "Lea también 3: van 2 de 4.");
}

#[test]
fn a_place_that_was_not_given_is_seen() {
    let one: &dyn Display = &1;
    assert_eq!(fill("{} and {name} and {", &[("", one)]), "1 and {name} and {");
}

#[test]
fn a_torn_catalogue_names_its_line() {
    assert_eq!(read("msgid \"a\"\nmsgstr \"b\"\n\nmsgid \"c"), Err(Torn { line: 4 }));
    assert_eq!(read("\"a text of nothing\""), Err(Torn { line: 1 }));
    assert_eq!(read("msgid \"a\"\nmsgstr \"b \" c\""), Err(Torn { line: 2 }));
    let entry = Entry { english: "a".to_owned(), turned: "b\n".to_owned() };
    assert_eq!(read("# who\nmsgid \"a\"\nmsgstr \"b\\n\"\n"), Ok(vec![entry]));
}
