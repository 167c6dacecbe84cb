//! Photos in a file: one line each, with a hash.

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};

use crate::json::{Json, Keys};
use crate::{Capture, Entry, Fact, Guided};

/// How a photo's line begins.
pub(super) const BEGINS: &str = "{\"photo\":";

/// A photo as it is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Picture {
    /// Its name, which entries say.
    pub id: String,
    /// The picture itself: JPEG, PNG or WebP.
    pub bytes: Vec<u8>,
}

impl Picture {
    /// What it is, by its first bytes; `None` where it is nothing that is kept.
    pub fn kind(&self) -> Option<&'static str> {
        let bytes = self.bytes.as_slice();
        if bytes.starts_with(&[0xFF, 0xD8, 0xFF]) {
            Some("image/jpeg")
        } else if bytes.starts_with(b"\x89PNG\r\n\x1a\n") {
            Some("image/png")
        } else if bytes.starts_with(b"RIFF") && bytes.get(8..12) == Some(b"WEBP") {
            Some("image/webp")
        } else {
            None
        }
    }

    /// The picture as an address that holds it: `data:image/jpeg;base64,…` (RFC 2397).
    pub fn address(&self) -> Option<String> {
        Some(format!("data:{};base64,{}", self.kind()?, STANDARD.encode(&self.bytes)))
    }

    /// Its line in a file, without a line end.
    pub fn to_line(&self) -> String {
        let line = Json::map(&[
            ("photo", Json::text(&self.id)),
            ("type", Json::text(self.kind().unwrap_or("application/octet-stream"))),
            ("bytes", Json::Number(i64::try_from(self.bytes.len()).unwrap_or(i64::MAX))),
            ("sha256", Json::text(&hex(&Sha256::digest(&self.bytes)))),
            ("data", Json::text(&STANDARD.encode(&self.bytes))),
        ]);
        // A map of texts and numbers cannot fail to be written.
        serde_json::to_string(&line).unwrap_or_default()
    }

    /// The photo of a line; `None` where it is damaged or no picture.
    pub(super) fn from_line(line: &str) -> Option<Picture> {
        let Json::Map(mut keys) = serde_json::from_str(line).ok()? else { return None };
        let (id, hash) = (keys.text("photo")?, keys.text("sha256")?);
        let bytes = STANDARD.decode(data(&mut keys)?).ok()?;
        let is_whole = !id.is_empty() && hex(&Sha256::digest(&bytes)) == hash;
        let picture = Picture { id, bytes };
        (is_whole && picture.kind().is_some()).then_some(picture)
    }
}

fn data(keys: &mut Keys) -> Option<String> {
    keys.text("data")
}

/// Bytes as hexadecimal digits.
pub(super) fn hex(bytes: &[u8]) -> String {
    const DIGITS: [char; 16] =
        ['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', 'a', 'b', 'c', 'd', 'e', 'f'];
    let digit = |value: u8| DIGITS.get(usize::from(value)).copied().unwrap_or('0');
    bytes.iter().flat_map(|byte| [digit(byte >> 4), digit(byte & 15)]).collect()
}

/// The photos that an entry names.
pub fn photos_named(entry: &Entry) -> Vec<&str> {
    let Fact::Guided(fact) = &entry.fact else { return Vec::new() };
    let named = match fact {
        Guided::Captured { value: Capture::Photo(id), .. } => Some(id.as_str()),
        Guided::Captured { value: Capture::Facing { photo, .. }, .. }
        | Guided::PartBagged { photo, .. }
        | Guided::PartJudged { photo, .. } => photo.as_deref(),
        _ => None,
    };
    named.into_iter().collect()
}
