//! The catalogues as they stand: nothing is missing, nothing is left over.

use std::fs;
use std::path::{Path, PathBuf};

use catalogue::{LANGUAGES, Part, gather, known, lacks, write};

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../..")
}

#[test]
fn every_text_has_a_translation_with_all_its_places() {
    let gathered = gather(&root()).unwrap();
    for language in LANGUAGES {
        let known = known(&root(), language).unwrap();
        let faulty = lacks(&gathered.keys, &known);
        assert!(faulty.is_empty(), "{language}:\n{}\nType: cargo xtask words", faulty.join("\n"));
    }
}

#[test]
fn the_files_are_as_they_are_written_from_the_sources() {
    let gathered = gather(&root()).unwrap();
    for language in LANGUAGES {
        let known = known(&root(), language).unwrap();
        for part in Part::ALL {
            let path = root().join("crates/words/po").join(part.file(language));
            let found = fs::read_to_string(&path).unwrap();
            let written = write(language, part, &gathered.keys, &known);
            assert!(found == written, "{} is not up to date: cargo xtask words", path.display());
        }
    }
}

#[test]
fn what_is_said_to_be_no_words_is_still_there() {
    let gathered = gather(&root()).unwrap();
    assert!(gathered.idle.is_empty(), "not-words.txt: {:?}", gathered.idle);
}
