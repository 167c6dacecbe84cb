//! What a string literal says, and whether that looks like words for a person.

/// The text of a plain string literal; `None` for any other literal.
pub fn text(literal: &str) -> Option<String> {
    let inner = literal.strip_prefix('"')?.strip_suffix('"')?;
    let mut text = String::with_capacity(inner.len());
    let mut letters = inner.chars().peekable();
    while let Some(letter) = letters.next() {
        if letter != '\\' {
            text.push(letter);
            continue;
        }
        match letters.next()? {
            'n' => text.push('\n'),
            't' => text.push('\t'),
            'u' => {
                let code: String = letters.by_ref().take_while(|letter| *letter != '}').collect();
                let code = u32::from_str_radix(code.trim_start_matches('{'), 16).ok()?;
                text.push(char::from_u32(code)?);
            }
            // The line goes on after its indent.
            '\n' => while letters.next_if(|letter| letter.is_whitespace()).is_some() {},
            other => text.push(other),
        }
    }
    Some(text)
}

/// Whether a text looks like words for a person, and not like a name, an address, a class or a
/// path: it has letters side by side, and a space between words, a capital at its head or a full
/// stop at its end.
pub fn is_words(text: &str) -> bool {
    let bare = without_places(text);
    let words = bare.trim();
    let mut letters = words.chars();
    let (first, second) = (letters.next().unwrap_or(' '), letters.next().unwrap_or(' '));
    let has_word = words
        .chars()
        .zip(words.chars().skip(1))
        .any(|(one, next)| one.is_alphabetic() && next.is_alphabetic());
    let one_name = !words.contains(' ') && words.chars().skip(1).any(char::is_uppercase);
    let is_code = text.starts_with(['/', '.', '#', '<', '@', '%', '&', '('])
        || ["://", "</", "--", "__", "=\"", "shimwright-", "\":"]
            .iter()
            .any(|it| text.contains(it));
    let looks = words.contains(' ')
        || (text != words && bare != words)
        || (first.is_uppercase() && second.is_lowercase())
        || words.ends_with(['.', '?', '…', ':', ',']);
    has_word && !one_name && !is_code && looks
}

/// The text without its `{places}`.
fn without_places(text: &str) -> String {
    let mut bare = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once('{') {
        bare.push_str(before);
        rest = after.split_once('}').map_or("", |(_, after)| after);
    }
    bare.push_str(rest);
    bare
}
