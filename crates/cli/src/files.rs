//! Backups without a browser: what one holds, and its readings for other programs.

use std::collections::{BTreeMap, BTreeSet};
use std::io::Read;

use job::files::{Changes, Incoming, Parcel, Picture, Whole, csv, photos_named, text};
use job::{Book, BookId, Entry, Kept, Sheet};

/// What the two commands say of themselves.
pub const FILES_HELP: &str = "\
shimwright check FILE          says what a backup holds and what of it cannot be
                               read; exit status 1 where it is not all there
shimwright export FILE --csv   writes its readings as a table for a spreadsheet
shimwright export FILE --text  writes its jobs as plain text

FILE is a backup of the app (see WIRE.md), or - for standard input. Times are UTC.
";

/// Pieces in which a file is read, bytes.
const PIECE: usize = 64 * 1024;

/// The readings of a backup in a form for other programs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum View {
    /// A table, RFC 4180.
    Csv,
    /// Plain text.
    Text,
}

/// What a backup holds, in sentences; and whether it is all there and all read.
///
/// # Errors
/// In a sentence, why the file is no backup or could not be read.
pub fn check(file: impl Read) -> Result<(String, bool), String> {
    let Taken { parcel, photos } = taken(file)?;
    let photos: BTreeSet<String> = photos.into_iter().map(|photo| photo.id).collect();
    let changes = Changes::of(&parcel.coming, &BTreeMap::new());
    let mut said = String::new();
    if let Some(head) = &parcel.head {
        let when = job::date(head.at, 0);
        said += &format!("Backup of {}, made {when} by version {}.\n", head.holds, head.app);
        if head.part != (1, 1) {
            said += &format!("File {} of {}.\n", head.part.0, head.part.1);
        }
    }
    for change in &changes.books {
        let entries = counted(change.adds, "entry", "entries");
        said += &match change.number {
            Some(number) => format!("Job {number}, {}: {entries}.\n", plain(&change.title)),
            None => format!("{}: {entries}.\n", plain(&change.title)),
        };
    }
    said += &format!("{}.\n", counted(photos.len(), "photo", "photos"));
    for id in &missing(&parcel, &photos) {
        said += &format!("Photo {} is named by an entry and is not in the file.\n", plain(id));
    }
    if parcel.damaged > 0 {
        said += &format!("Damaged: {}.\n", counted(parcel.damaged, "photo", "photos"));
    }
    for coming in parcel.coming.iter().filter(|coming| known(&coming.line).is_none()) {
        let start: String = coming.line.chars().take(120).collect();
        said += &format!("Not understood, kept as it is: {}\n", plain(&start));
    }
    said += match parcel.whole {
        Whole::Yes => "The file is all there.\n",
        Whole::Unsaid => "A bare list of entries: nothing in it says whether it is all there.\n",
        Whole::CutOff => "The file was cut off: its last line is missing.\n",
        Whole::Changed => "The file was changed: its last line does not fit what is before it.\n",
    };
    let is_sound = matches!(parcel.whole, Whole::Yes | Whole::Unsaid)
        && parcel.damaged == 0
        && changes.unread == 0;
    Ok((said, is_sound))
}

/// The readings of a backup.
///
/// # Errors
/// In a sentence, why the file is no backup or could not be read.
pub fn export(file: impl Read, view: View) -> Result<String, String> {
    let books = taken(file)?.books();
    let sheets: BTreeMap<&BookId, Sheet> = books
        .iter()
        .filter(|book| matches!(book.id(), BookId::Sheet(_)))
        .map(|book| (book.id(), Sheet::fold(book)))
        .collect();
    let unknown = Sheet::default();
    let jobs: Vec<(&Book, &Sheet)> = books
        .iter()
        .filter(|book| matches!(book.id(), BookId::Job(_)))
        .map(|book| {
            let sheet = BookId::Sheet(job::Job::fold(book).sheet);
            (book, sheets.get(&sheet).unwrap_or(&unknown))
        })
        .collect();
    Ok(match view {
        View::Csv => csv(jobs, 0),
        View::Text => text(jobs, 0),
    })
}

/// What came in from a file.
pub struct Taken {
    /// Its entries.
    pub parcel: Parcel,
    /// Its photos.
    pub photos: Vec<Picture>,
}

impl Taken {
    /// Its books, in their order; those of kinds that this version does not know are left out.
    pub fn books(&self) -> Vec<Book> {
        let mut lines: BTreeMap<BookId, Vec<&str>> = BTreeMap::new();
        for coming in &self.parcel.coming {
            if let Some(id) = BookId::parse(&coming.book) {
                lines.entry(id).or_default().push(&coming.line);
            }
        }
        lines.into_iter().map(|(id, lines)| Book::from_lines(id, lines)).collect()
    }
}

/// Reads a file piece by piece.
///
/// # Errors
/// In a sentence, why it is no backup or could not be read.
pub fn taken(mut file: impl Read) -> Result<Taken, String> {
    let (mut incoming, mut photos) = (Incoming::new(), Vec::new());
    let mut piece = vec![0; PIECE];
    loop {
        let length = file.read(&mut piece).map_err(|why| format!("could not read: {why}"))?;
        if length == 0 {
            break;
        }
        let bytes = piece.get(..length).unwrap_or_default();
        let complete = incoming.push(bytes).map_err(|why| why.to_string())?;
        photos.extend(complete);
    }
    let (parcel, last) = incoming.finish().map_err(|why| why.to_string())?;
    photos.extend(last);
    Ok(Taken { parcel, photos })
}

/// Photos that entries name and the file does not hold, each once.
fn missing(parcel: &Parcel, photos: &BTreeSet<String>) -> BTreeSet<String> {
    let entries = parcel.coming.iter().filter_map(|coming| known(&coming.line));
    let named = entries
        .flat_map(|entry| photos_named(&entry).into_iter().map(str::to_owned).collect::<Vec<_>>());
    named.filter(|id| !photos.contains(id)).collect()
}

fn known(line: &str) -> Option<Entry> {
    match Kept::from_line(line) {
        Kept::Known(entry) => Some(entry),
        Kept::Unread { .. } => None,
    }
}

fn counted(count: usize, one: &str, more: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { more })
}

/// For a terminal, which takes control characters for commands.
fn plain(text: &str) -> String {
    let shown = |letter: char| if letter.is_control() { '\u{fffd}' } else { letter };
    text.chars().map(shown).collect()
}
