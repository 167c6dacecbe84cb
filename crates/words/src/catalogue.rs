//! What has been learnt of the other language.

use std::sync::RwLock;

use crate::po::{Torn, read};

/// English and its translation, by English.
type Pairs = Vec<(String, &'static str)>;

struct Known {
    language: &'static str,
    pairs: Pairs,
}

static KNOWN: RwLock<Known> = RwLock::new(Known { language: "en", pairs: Vec::new() });

/// Learns a catalogue, besides those learnt before; the first names the language.
///
/// # Errors
/// Where the text is no catalogue: nothing of it is learnt.
pub fn learn(catalogue: &str) -> Result<(), Torn> {
    let entries = read(catalogue)?;
    let mut known = match KNOWN.write() {
        Ok(known) => known,
        Err(poisoned) => poisoned.into_inner(),
    };
    for entry in entries {
        // Kept as long as the app runs: what `t` gives back must live as long as the English.
        let turned: &'static str = Box::leak(entry.turned.into_boxed_str());
        if entry.english.is_empty() {
            known.language = header(turned, "Language").unwrap_or("en");
        } else if !turned.is_empty() {
            known.pairs.push((entry.english, turned));
        }
    }
    known.pairs.sort_unstable();
    Ok(())
}

/// The language of the texts, as HTML names it: `en` until another was learnt.
pub fn language() -> &'static str {
    KNOWN.read().map_or("en", |known| known.language)
}

/// The text in the language that was chosen; one that is not in the catalogue comes back.
pub fn t(english: &str) -> &str {
    let Ok(known) = KNOWN.read() else { return english };
    let at = known.pairs.binary_search_by(|(key, _)| key.as_str().cmp(english));
    at.ok().and_then(|at| known.pairs.get(at)).map_or(english, |(_, turned)| turned)
}

fn header(text: &'static str, name: &str) -> Option<&'static str> {
    let value = text.lines().find_map(|line| line.strip_prefix(name)?.strip_prefix(':'))?;
    Some(value.trim())
}
