//! Catalogues in the PO form of gettext, as far as this app uses it: entries of one text each,
//! comments, and texts over several lines; no contexts and no plural forms.

use std::fmt;

/// One text of a catalogue.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Entry {
    /// The English text; empty for the header.
    pub english: String,
    /// Its translation; empty where there is none yet.
    pub turned: String,
}

/// A catalogue that cannot be read; `Display` is the sentence to show.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Torn {
    /// The line, from 1.
    pub line: usize,
}

impl fmt::Display for Torn {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "Line {} of the catalogue is no line of a PO file. Look there.", self.line)
    }
}

/// Reads a catalogue.
///
/// # Errors
/// At the first line that is neither a comment nor part of an entry.
pub fn read(text: &str) -> Result<Vec<Entry>, Torn> {
    let mut entries: Vec<Entry> = Vec::new();
    let mut in_turned = false;
    for (at, line) in text.lines().map(str::trim).enumerate() {
        let torn = Torn { line: at + 1 };
        if line.is_empty() || line.starts_with('#') {
            continue;
        }
        if let Some(quoted) = line.strip_prefix("msgid ") {
            let english = unquoted(quoted).ok_or(torn)?;
            entries.push(Entry { english, turned: String::new() });
            in_turned = false;
            continue;
        }
        let entry = entries.last_mut().ok_or(torn.clone())?;
        if let Some(quoted) = line.strip_prefix("msgstr ") {
            entry.turned = unquoted(quoted).ok_or(torn)?;
            in_turned = true;
        } else {
            let more = unquoted(line).ok_or(torn)?;
            if in_turned { &mut entry.turned } else { &mut entry.english }.push_str(&more);
        }
    }
    Ok(entries)
}

fn unquoted(quoted: &str) -> Option<String> {
    let inner = quoted.trim().strip_prefix('"')?.strip_suffix('"')?;
    let mut text = String::with_capacity(inner.len());
    let mut letters = inner.chars();
    while let Some(letter) = letters.next() {
        match letter {
            '\\' => text.push(match letters.next()? {
                'n' => '\n',
                't' => '\t',
                other => other,
            }),
            '"' => return None,
            _ => text.push(letter),
        }
    }
    Some(text)
}
