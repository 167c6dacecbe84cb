//! A file as it comes in: read piece by piece, within bounds, nothing kept yet.

use sha2::{Digest, Sha256};

use super::backup::{END, FORMAT, HEAD, Head, MOST_BYTES, ended};
use super::picture::{BEGINS, Picture};
use super::{Coming, Refused};

/// An entry's line: a note of 100 kB fits many times over.
const LONGEST_LINE: usize = 1024 * 1024;
/// A photo's line: 12 MB of picture.
const LONGEST_PHOTO: usize = 16 * 1024 * 1024;
/// An entry nests to eight; the decoder goes one call deeper for each level.
const DEEPEST: usize = 32;
/// A bench that writes an entry a second, day and night, comes there in thirty years.
const MOST_COUNTER: u64 = 1_000_000_000;

/// Whether a file is all there.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Whole {
    /// Its last line says so.
    Yes,
    /// It has no first line, so nothing says how it ends.
    #[default]
    Unsaid,
    /// Its last line is missing.
    CutOff,
    /// Its last line does not fit what came before it.
    Changed,
}

/// What came in.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Parcel {
    /// What its first line says; `None` for a bare list of entries.
    pub head: Option<Head>,
    /// Entries and lines not understood, in the order they came.
    pub coming: Vec<Coming>,
    /// Photos that came damaged or are no pictures; they are left out.
    pub damaged: usize,
    /// Whether it is all there.
    pub whole: Whole,
}

/// Reads a file piece by piece.
///
/// Memory is bounded by the entries and one line, time by the bytes; anything past the bounds is
/// refused as soon as it is seen.
#[derive(Clone, Debug, Default)]
pub struct Incoming {
    parcel: Parcel,
    part_line: Vec<u8>,
    bytes: u64,
    /// Lines of the whole file, for the sentences.
    line: usize,
    /// Lines of this backup, for its last line.
    lines: u64,
    hash: Sha256,
}

impl Incoming {
    /// Nothing has come yet.
    pub fn new() -> Incoming {
        Incoming::default()
    }

    /// Takes the next bytes. Returns the photos that are complete with them.
    ///
    /// # Errors
    /// [`Refused`]; the file is to be let go of then.
    pub fn push(&mut self, bytes: &[u8]) -> Result<Vec<Picture>, Refused> {
        self.bytes = self.bytes.saturating_add(bytes.len() as u64);
        if self.bytes > MOST_BYTES {
            return Err(Refused::TooLarge);
        }
        let mut photos = Vec::new();
        let mut pieces = bytes.split(|byte| *byte == b'\n').peekable();
        while let Some(piece) = pieces.next() {
            self.part_line.extend_from_slice(piece);
            self.in_bounds()?;
            if pieces.peek().is_some() {
                photos.extend(self.take_line()?);
            }
        }
        Ok(photos)
    }

    /// The file is at its end. The last photo can come with it, where no line end follows it.
    ///
    /// # Errors
    /// [`Refused`].
    pub fn finish(mut self) -> Result<(Parcel, Option<Picture>), Refused> {
        let last = self.take_line()?;
        let parcel = self.parcel;
        if parcel.head.is_none() && parcel.coming.is_empty() {
            return Err(Refused::Empty);
        }
        Ok((parcel, last))
    }

    /// Refuses a line as soon as it is too long; only a photo's may be longer than an entry's.
    fn in_bounds(&self) -> Result<(), Refused> {
        let is_photo = self.part_line.starts_with(BEGINS.as_bytes());
        let most = if is_photo { LONGEST_PHOTO } else { LONGEST_LINE };
        let line = self.line + 1;
        if self.part_line.len() > most { Err(Refused::LongLine { line }) } else { Ok(()) }
    }

    fn take_line(&mut self) -> Result<Option<Picture>, Refused> {
        self.line += 1;
        let taken = std::mem::take(&mut self.part_line);
        let not_text = Refused::NotText { line: self.line };
        let line = std::str::from_utf8(&taken).map_err(|_| not_text)?;
        let line = if self.line == 1 { line.trim_start_matches('\u{feff}') } else { line };
        let line = line.trim_end_matches('\r');
        if line.trim().is_empty() {
            return Ok(None);
        }
        if line.starts_with(BEGINS) {
            self.ours(line, self.parcel.head.is_some())?;
            self.lines += 1;
            let picture = Picture::from_line(line);
            self.parcel.damaged += usize::from(picture.is_none());
            return Ok(picture);
        }
        if is_deeper(line, DEEPEST) {
            return Err(Refused::Deep { line: self.line });
        }
        if line.starts_with(HEAD) {
            self.take_head(line)?;
        } else if line.starts_with(END) && self.parcel.head.is_some() {
            let fits = line == ended(self.lines, &self.hash) && self.parcel.whole != Whole::Changed;
            self.parcel.whole = if fits { Whole::Yes } else { Whole::Changed };
        } else {
            self.take_entry(line)?;
        }
        Ok(None)
    }

    /// A further first line begins another backup behind the first: its lines are more of the same.
    fn take_head(&mut self, line: &str) -> Result<(), Refused> {
        let head = Head::from_line(line);
        self.ours(line, head.is_some())?;
        let Some((format, head)) = head else { return self.take_entry(line) };
        if format > FORMAT {
            return Err(Refused::Newer { format });
        }
        let before_is_short = self.parcel.head.is_some() && self.parcel.whole != Whole::Yes;
        self.parcel.whole = if before_is_short { Whole::Changed } else { Whole::CutOff };
        self.parcel.head.get_or_insert(head);
        (self.lines, self.hash) = (0, Sha256::new());
        self.count(line);
        Ok(())
    }

    fn take_entry(&mut self, line: &str) -> Result<(), Refused> {
        let coming = Coming::from_line(line);
        self.ours(line, coming.is_entry())?;
        if coming.counter > MOST_COUNTER {
            return Err(Refused::Counter { line: self.line, found: coming.counter });
        }
        if self.parcel.whole == Whole::Yes {
            self.parcel.whole = Whole::Changed;
        }
        self.count(line);
        self.parcel.coming.push(coming);
        Ok(())
    }

    /// The first line tells whose file it is; later ones may be anything.
    fn ours(&self, line: &str, is: bool) -> Result<(), Refused> {
        let is_first = self.parcel.head.is_none() && self.parcel.coming.is_empty();
        if is || !is_first {
            return Ok(());
        }
        let found = line.chars().filter(|letter| !letter.is_control()).take(24).collect();
        Err(Refused::NotOurs { found })
    }

    fn count(&mut self, line: &str) {
        self.lines += 1;
        self.hash.update(line.as_bytes());
        self.hash.update(b"\n");
    }
}

/// Whether lists and objects of a line lie more than `most` deep; text is passed over.
fn is_deeper(line: &str, most: usize) -> bool {
    let (mut deep, mut in_text, mut escaped) = (0usize, false, false);
    line.bytes().any(|byte| {
        match byte {
            _ if escaped => escaped = false,
            b'\\' if in_text => escaped = true,
            b'"' => in_text = !in_text,
            b'[' | b'{' if !in_text => deep += 1,
            b']' | b'}' if !in_text => deep = deep.saturating_sub(1),
            _ => {}
        }
        deep > most
    })
}
