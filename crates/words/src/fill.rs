//! Places of a sentence, filled.

use std::fmt::{Display, Write};

use crate::catalogue::t;

/// The sentence in the language that was chosen, its places filled. Written as [`crate::say!`].
///
/// A place is `{name}`, `{}` for the next argument without a name, or, in a translation, `{0}` for
/// the first of those. A place that was not given stays as it is, so that it is seen.
pub fn fill(sentence: &str, given: &[(&str, &dyn Display)]) -> String {
    let sentence = t(sentence);
    let mut filled = String::with_capacity(sentence.len() + 8 * given.len());
    let mut without_name = given.iter().filter(|(name, _)| name.is_empty());
    let mut rest = sentence;
    while let Some(at) = rest.find(['{', '}']) {
        let (before, from) = rest.split_at(at);
        filled.push_str(before);
        if let Some(after) = from.strip_prefix("{{") {
            filled.push('{');
            rest = after;
        } else if let Some(after) = from.strip_prefix("}}") {
            filled.push('}');
            rest = after;
        } else if let Some((name, after)) = from.strip_prefix('{').and_then(|it| it.split_once('}'))
        {
            let value = match name.parse::<usize>() {
                _ if name.is_empty() => without_name.next(),
                Ok(number) => given.iter().filter(|(name, _)| name.is_empty()).nth(number),
                Err(_) => given.iter().find(|(given, _)| *given == name),
            };
            match value {
                // A `String` takes whatever it is given.
                Some((_, value)) => write!(filled, "{value}").ok().unwrap_or_default(),
                None => filled.extend(["{", name, "}"]),
            }
            rest = after;
        } else {
            rest = from;
            break;
        }
    }
    filled.push_str(rest);
    filled
}
