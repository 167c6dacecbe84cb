//! The files of a language, written anew.

use std::collections::BTreeMap;
use std::fmt::Write;
use std::path::Path;

use crate::gather::{Key, Part, Unread, read};

/// What a language has: translations by their English text.
pub type Catalogue = BTreeMap<String, String>;

/// The catalogue of a language, all its files together.
///
/// # Errors
/// Where a file is there and cannot be read.
pub fn known(root: &Path, language: &str) -> Result<Catalogue, Unread> {
    let mut known = Catalogue::new();
    for part in Part::ALL {
        let path = root.join("crates/words/po").join(part.file(language));
        if !path.exists() {
            continue;
        }
        let entries =
            words::read(&read(&path)?).map_err(|torn| Unread(path.clone(), torn.to_string()))?;
        let turned = entries.into_iter().filter(|it| !it.english.is_empty());
        known.extend(turned.map(|entry| (entry.english, entry.turned)));
    }
    Ok(known)
}

/// The text of one file of a language: its keys in their order, with what is known of them.
pub fn write(language: &str, part: Part, keys: &[Key], known: &Catalogue) -> String {
    let mut file = format!(
        "# Shimwright: its words in another language.\n\
         # `cargo xtask words` writes this file anew from the sources; only msgstr is yours.\n\
         msgid \"\"\nmsgstr \"\"\n\"Language: {language}\\n\"\n\
         \"Content-Type: text/plain; charset=UTF-8\\n\"\n",
    );
    let mut last = "";
    for key in keys.iter().filter(|key| key.part == part) {
        let turned = known.get(&key.text).map_or("", String::as_str);
        let at = if key.at == last { String::new() } else { format!("#: {}\n", key.at) };
        last = &key.at;
        // A `String` takes whatever it is given.
        write!(file, "\n{at}msgid {}\nmsgstr {}\n", quoted(&key.text), quoted(turned)).ok();
    }
    file
}

fn quoted(text: &str) -> String {
    let escaped = text.replace('\\', "\\\\").replace('"', "\\\"");
    format!("\"{}\"", escaped.replace('\n', "\\n").replace('\t', "\\t"))
}
