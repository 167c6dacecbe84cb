//! A backup as it is written: a first line, entries, photos, a last line.

use sha2::{Digest, Sha256};

use super::picture::hex;
use crate::files::Picture;
use crate::json::{Json, Keys};

/// How a backup's first line begins.
pub(super) const HEAD: &str = "{\"shimwright\":";
/// How its last line begins.
pub(super) const END: &str = "{\"end\":";
/// The format that is written, and the latest that is read.
pub(super) const FORMAT: i64 = 1;

/// The most bytes of one file. What is larger is written as several, each of which stands alone.
pub const MOST_BYTES: u64 = 192 * 1024 * 1024;
/// Where the photos of one file end: base64 and the lines around it make four thirds and a little.
const MOST_PHOTO_BYTES: u64 = 96 * 1024 * 1024;

/// What a backup's first line says of it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Head {
    /// When it was made, milliseconds since 1970 began, UTC.
    pub at: i64,
    /// The device that made it.
    pub device: String,
    /// The version of the app that made it.
    pub app: String,
    /// `everything`, or the one book it is of.
    pub holds: String,
    /// How many entries follow.
    pub entries: u32,
    /// How many photos follow.
    pub photos: u32,
    /// Which of several files it is, from 1, and of how many.
    pub part: (u32, u32),
}

impl Head {
    fn to_line(&self) -> String {
        let line = Json::map(&[
            ("shimwright", Json::text("backup")),
            ("format", Json::Number(FORMAT)),
            ("at", Json::Number(self.at)),
            ("device", Json::text(&self.device)),
            ("app", Json::text(&self.app)),
            ("holds", Json::text(&self.holds)),
            ("entries", Json::number(self.entries)),
            ("photos", Json::number(self.photos)),
            ("part", Json::number(self.part.0)),
            ("of", Json::number(self.part.1)),
        ]);
        serde_json::to_string(&line).unwrap_or_default()
    }

    /// The head and its format; keys that a later version adds are passed over.
    pub(super) fn from_line(line: &str) -> Option<(i64, Head)> {
        let Json::Map(mut keys) = serde_json::from_str(line).ok()? else { return None };
        if keys.text("shimwright")? != "backup" {
            return None;
        }
        let number = |keys: &mut Keys, key| match keys.take(key) {
            Some(Json::Number(number)) => Some(number),
            _ => None,
        };
        let format = number(&mut keys, "format")?;
        let head = Head {
            at: number(&mut keys, "at").unwrap_or_default(),
            device: keys.text("device").unwrap_or_default(),
            app: keys.text("app").unwrap_or_default(),
            holds: keys.text("holds").unwrap_or_default(),
            entries: keys.count("entries").unwrap_or_default(),
            photos: keys.count("photos").unwrap_or_default(),
            part: (keys.count("part").unwrap_or(1), keys.count("of").unwrap_or(1)),
        };
        Some((format, head))
    }
}

/// Writes a backup line by line; each comes with its line end.
#[derive(Clone, Debug)]
pub struct Backup {
    hash: Sha256,
    lines: u64,
}

impl Backup {
    /// Begins one. Returns it with its first line.
    pub fn begin(head: &Head) -> (Backup, String) {
        let mut backup = Backup { hash: Sha256::new(), lines: 0 };
        let first = backup.hashed(&head.to_line());
        (backup, first)
    }

    /// An entry's line, or one that is not understood: as it lies.
    pub fn entry(&mut self, line: &str) -> String {
        self.hashed(line)
    }

    /// A photo's line.
    pub fn photo(&mut self, picture: &Picture) -> String {
        self.lines += 1;
        picture.to_line() + "\n"
    }

    /// The last line: how many there were, and the hash of all that are no photos.
    pub fn end(self) -> String {
        format!("{}\n", ended(self.lines, &self.hash))
    }

    fn hashed(&mut self, line: &str) -> String {
        self.lines += 1;
        // A line end inside would make two lines of one; JSON never holds one, but what lies in a
        // store unread may.
        let line = line.replace(['\n', '\r'], " ") + "\n";
        self.hash.update(line.as_bytes());
        line
    }
}

/// The last line of a file whose lines so far were `lines`, hashed to `hash`.
pub(super) fn ended(lines: u64, hash: &Sha256) -> String {
    let digits = hex(&hash.clone().finalize());
    format!("{END}{{\"lines\":{lines},\"sha256\":\"{digits}\"}}}}")
}

/// Which photos go into which file, by their sizes in bytes: how many into each, in order.
///
/// The first file holds all entries too, so it is there even where there is no photo.
pub fn parts(sizes: &[u64]) -> Vec<usize> {
    let mut parts = vec![0];
    let mut filled = 0;
    for size in sizes {
        if filled > 0 && filled + size > MOST_PHOTO_BYTES {
            parts.push(0);
            filled = 0;
        }
        filled += size;
        if let Some(last) = parts.last_mut() {
            *last += 1;
        }
    }
    parts
}
