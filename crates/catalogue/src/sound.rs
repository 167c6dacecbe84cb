//! What may be wrong with a translation without anybody knowing the language.

use crate::gather::Key;
use crate::po::Catalogue;

/// What is wrong with a translation, in words; nothing where it may stand.
fn faults(english: &str, turned: &str) -> Vec<&'static str> {
    let mut faults = Vec::new();
    if turned.is_empty() {
        return vec!["has no translation"];
    }
    if places(english) != places(turned) {
        faults.push("has other places in its translation");
    }
    if english.starts_with(' ') != turned.starts_with(' ')
        || english.ends_with(' ') != turned.ends_with(' ')
    {
        faults.push("has other blanks at its ends");
    }
    for end in ['.', ':'] {
        if english.ends_with(end) != turned.ends_with(end) {
            faults.push("ends otherwise");
        }
    }
    faults
}

/// What is wrong in a whole catalogue, a line each: the place of the text, the text, the fault.
pub fn lacks(keys: &[Key], known: &Catalogue) -> Vec<String> {
    let of_key = |key: &Key| {
        let turned = known.get(&key.text).map_or("", String::as_str);
        let said = |fault| format!("{}: {:?} {fault}", key.at, key.text);
        faults(&key.text, turned).into_iter().map(said).collect::<Vec<_>>()
    };
    keys.iter().flat_map(of_key).collect()
}

/// The places of a sentence, sorted; `{}` as its number.
fn places(text: &str) -> Vec<String> {
    let text = text.replace("{{", "").replace("}}", "");
    let mut next = 0;
    let mut places: Vec<String> = text
        .split('{')
        .skip(1)
        .filter_map(|rest| rest.split_once('}').map(|(name, _)| name))
        .map(|name| {
            if !name.is_empty() {
                return name.to_owned();
            }
            next += 1;
            (next - 1).to_string()
        })
        .collect();
    places.sort();
    places.dedup();
    places
}

#[cfg(test)]
mod tests {
    use super::faults;

    #[test]
    fn places_may_change_their_order_and_no_more() {
        assert!(faults("{} of {n}.", "De {n}, {0}.").is_empty());
        assert!(faults("{} of {}.", "{} de {}.").is_empty());
        assert_eq!(faults("{n} left.", "quedan."), ["has other places in its translation"]);
        assert_eq!(faults(" at ", "en "), ["has other blanks at its ends"]);
        assert_eq!(faults("Read.", "Lea"), ["ends otherwise"]);
        assert_eq!(faults("Read.", ""), ["has no translation"]);
    }
}
