//! Every text of the app, from its sources and procedures.

use std::collections::BTreeSet;
use std::fmt;
use std::fs;
use std::path::{Path, PathBuf};

use crate::source::{Found, texts};
use crate::{page, steps};

/// Where the texts of the app stand. The command line speaks English alone: it is for builders
/// and for scripts.
const SOURCES: [&str; 7] = [
    "crates/gearing/src",
    "crates/measure/src",
    "crates/workshop/src",
    "crates/pictures/src",
    "crates/practice/src",
    "crates/job/src",
    "web/src",
];

/// Not for the people at the bench: the pages of builders, and what the command line says of a
/// file of cases.
const LEFT_OUT: [&str; 4] = [
    "crates/gearing/src/case_error.rs",
    "web/src/screens/states",
    "web/src/pictures/gallery.rs",
    "web/src/pictures/gallery_checks.rs",
];

/// What the first page of a new device shows: its words come with it, the others behind it.
const DOOR: [&str; 9] = [
    "web/src/code.rs",
    "web/src/device",
    "web/src/door.rs",
    "web/src/start.rs",
    "web/src/page.rs",
    "web/src/parts",
    "web/src/screens/first.rs",
    "web/src/screens/shut.rs",
    "web/src/storage",
];

/// The file of a language that has a text.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// In the page itself, before any code of the app.
    Page,
    /// With the first page.
    Door,
    /// With the rest of the app.
    App,
    /// The procedures’ own texts.
    Steps,
}

impl Part {
    /// Every part, in the order they are learnt.
    pub const ALL: [Part; 4] = [Part::Page, Part::Door, Part::App, Part::Steps];

    /// The file of a language.
    pub fn file(self, language: &str) -> String {
        match self {
            Part::Page => format!("{language}-page.po"),
            Part::Door => format!("{language}-door.po"),
            Part::App => format!("{language}-app.po"),
            Part::Steps => format!("{language}-steps.po"),
        }
    }
}

/// One text to be translated.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Key {
    /// The English text.
    pub text: String,
    /// The file it was first found in; for a procedure’s text, its step.
    pub at: String,
    /// The file it goes to.
    pub part: Part,
}

/// A source or procedure that cannot be read: which, and why.
#[derive(Clone, Debug)]
pub struct Unread(pub PathBuf, pub String);

impl fmt::Display for Unread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} cannot be read: {}", self.0.display(), self.1)
    }
}

impl std::error::Error for Unread {}

/// What was gathered.
#[derive(Clone, Debug, Default)]
pub struct Gathered {
    /// The texts, in the order of their files.
    pub keys: Vec<Key>,
    /// What was said to be no words, and is in no source any more.
    pub idle: Vec<String>,
}

/// Gathers every text below the root of the project.
///
/// # Errors
/// Where a file cannot be read, or is not what its name says.
pub fn gather(root: &Path) -> Result<Gathered, Unread> {
    let not_words = not_words(root)?;
    let mut files = Vec::new();
    for folder in SOURCES {
        below(&root.join(folder), &mut files)?;
    }
    let (mut gathered, mut seen, mut named) =
        (Gathered::default(), BTreeSet::new(), BTreeSet::new());
    for (text, at) in page::texts(root)? {
        // The page has its words in itself: the app’s own catalogue has them again where it needs them.
        gathered.keys.push(Key { text, at: at.to_owned(), part: Part::Page });
    }
    files.sort_by_key(|path| (!is_in(root, path, &DOOR), path.clone()));
    for path in files.iter().filter(|path| !is_in(root, path, &LEFT_OUT)) {
        let part = if is_in(root, path, &DOOR) { Part::Door } else { Part::App };
        let at = path.strip_prefix(root).unwrap_or(path).display().to_string();
        let source = read(path)?;
        let found = texts(&source).map_err(|why| Unread(path.clone(), why.to_string()))?;
        for Found { text, marked } in found {
            if !marked && not_words.contains(&text) {
                named.insert(text);
                continue;
            }
            if seen.insert(text.clone()) {
                gathered.keys.push(Key { text, at: at.clone(), part });
            }
        }
    }
    for (text, step) in steps::texts(root)? {
        if seen.insert(text.clone()) {
            gathered.keys.push(Key { text, at: step, part: Part::Steps });
        }
    }
    gathered.idle = not_words.difference(&named).cloned().collect();
    Ok(gathered)
}

/// Literals that look like words and are none, one a line; comments say why.
fn not_words(root: &Path) -> Result<BTreeSet<String>, Unread> {
    let list = read(&root.join("crates/catalogue/not-words.txt"))?;
    let lines = list.lines().filter(|line| !line.is_empty() && !line.starts_with('#'));
    Ok(lines.map(|line| line.replace("\\n", "\n")).collect())
}

fn is_in(root: &Path, path: &Path, places: &[&str]) -> bool {
    places.iter().any(|place| path.starts_with(root.join(place)))
}

fn below(folder: &Path, files: &mut Vec<PathBuf>) -> Result<(), Unread> {
    let unread = |why: std::io::Error| Unread(folder.to_owned(), why.to_string());
    for entry in fs::read_dir(folder).map_err(unread)? {
        let path = entry.map_err(unread)?.path();
        let is_test = path.file_stem().is_some_and(|stem| stem == "tests");
        if path.is_dir() {
            below(&path, files)?;
        } else if path.extension().is_some_and(|ending| ending == "rs") && !is_test {
            files.push(path);
        }
    }
    Ok(())
}

/// The text of a file.
///
/// # Errors
/// Where it cannot be read.
pub(crate) fn read(path: &Path) -> Result<String, Unread> {
    fs::read_to_string(path).map_err(|why| Unread(path.to_owned(), why.to_string()))
}
