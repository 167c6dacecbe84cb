//! `say!`: a sentence with places in it, written as for `format!`.
//!
//! The English sentence is the key of its translation, so it must reach `words::fill` whole, with
//! its places still in it; `format!` would fill them first.

use proc_macro::{Delimiter, Group, Ident, Literal, Punct, Spacing, Span, TokenStream, TokenTree};

/// A sentence in the language that was chosen, its places filled: `say!("Read {place} first.")`.
///
/// A place is the name of a variable, the name of an argument (`say!("{n} left", n = count)`), or
/// `{}` for the next argument without a name, `{0}` for the first of those. A translation may put them in another order.
#[proc_macro]
pub fn say(input: TokenStream) -> TokenStream {
    match sentence(input) {
        Ok(tokens) => tokens,
        Err(why) => refused(&why),
    }
}

/// One argument: its name, if it has one, and what fills the place.
type Argument = (Option<String>, TokenStream);

fn sentence(input: TokenStream) -> Result<TokenStream, String> {
    let mut tokens = input.into_iter();
    let first = tokens.next().ok_or("say! needs a sentence")?;
    let (key, span) = (TokenStream::from(first.clone()), first.span());
    let text = first.to_string();
    if !text.starts_with('"') {
        return Err(format!("say! needs its sentence as a literal, found {text}"));
    }
    let given = arguments(tokens.collect())?;
    let places = places(&text)?;
    let without_name: Vec<_> = given.iter().filter(|(name, _)| name.is_none()).collect();
    let (next, numbered) = (
        places.iter().filter(|place| place.is_empty()).count(),
        places.iter().filter_map(|place| place.parse::<usize>().ok()).max(),
    );
    if numbered.map_or(next, |most| most + 1) != without_name.len() {
        return Err("as many places without a name as arguments without a name".to_owned());
    }
    let mut filled: TokenStream =
        without_name.iter().flat_map(|(_, value)| pair("", value.clone())).collect();
    let mut names: Vec<&String> = places.iter().filter(|place| is_name(place)).collect();
    names.sort();
    names.dedup();
    for place in names {
        let named = given.iter().find(|(name, _)| name.as_ref() == Some(place));
        let value = match named {
            Some((_, value)) => value.clone(),
            None => TokenTree::Ident(Ident::new(place, span)).into(),
        };
        filled.extend(pair(place, value));
    }
    Ok(call(key, filled))
}

/// The arguments after the sentence, split at their commas.
fn arguments(tokens: Vec<TokenTree>) -> Result<Vec<Argument>, String> {
    let mut all = Vec::new();
    for part in tokens.split(is_comma).filter(|part| !part.is_empty()) {
        all.push(match part {
            [TokenTree::Ident(name), TokenTree::Punct(equals), value @ ..]
                if equals.as_char() == '=' && equals.spacing() == Spacing::Alone =>
            {
                (Some(name.to_string()), value.iter().cloned().collect())
            }
            _ => (None, part.iter().cloned().collect()),
        });
    }
    Ok(all)
}

fn is_name(place: &str) -> bool {
    place.starts_with(|first: char| first.is_alphabetic() || first == '_')
}

fn is_comma(token: &TokenTree) -> bool {
    matches!(token, TokenTree::Punct(punct) if punct.as_char() == ',')
}

/// The names of the places, in order; empty for `{}`.
fn places(text: &str) -> Result<Vec<String>, String> {
    let mut names = Vec::new();
    let mut rest = text;
    while let Some(at) = rest.find(['{', '}']) {
        let (_, from) = rest.split_at(at);
        if let Some(after) = from.strip_prefix("{{").or_else(|| from.strip_prefix("}}")) {
            rest = after;
            continue;
        }
        let inner = from.strip_prefix('{').and_then(|inner| inner.split_once('}'));
        let (name, after) = inner.ok_or("a brace without its other half")?;
        if !name.chars().all(|letter| letter.is_alphanumeric() || letter == '_') {
            return Err(format!("{{{name}}}: a place has a name and no format"));
        }
        names.push(name.to_owned());
        rest = after;
    }
    Ok(names)
}

/// `("place", &(value) as &dyn ::core::fmt::Display),`
fn pair(place: &str, value: TokenStream) -> TokenStream {
    let mut inner = TokenStream::from(TokenTree::Literal(Literal::string(place)));
    inner.extend(punct(","));
    inner.extend(punct("&"));
    inner.extend(grouped(Delimiter::Parenthesis, value));
    inner.extend("as &dyn ::core::fmt::Display".parse::<TokenStream>().unwrap_or_default());
    let mut all = grouped(Delimiter::Parenthesis, inner);
    all.extend(punct(","));
    all
}

/// `::words::fill(key, &[…])`
fn call(key: TokenStream, filled: TokenStream) -> TokenStream {
    let mut given = key;
    given.extend(punct(","));
    given.extend(punct("&"));
    given.extend(grouped(Delimiter::Bracket, filled));
    let mut all: TokenStream = "::words::fill".parse().unwrap_or_default();
    all.extend(grouped(Delimiter::Parenthesis, given));
    all
}

fn refused(why: &str) -> TokenStream {
    let mut all: TokenStream = "::core::compile_error!".parse().unwrap_or_default();
    let words = TokenTree::Literal(Literal::string(why));
    all.extend(grouped(Delimiter::Parenthesis, words.into()));
    all
}

fn grouped(delimiter: Delimiter, inner: TokenStream) -> TokenStream {
    TokenTree::Group(Group::new(delimiter, inner)).into()
}

fn punct(sign: &str) -> TokenStream {
    let signs = sign.chars().map(|sign| {
        let mut punct = Punct::new(sign, Spacing::Alone);
        punct.set_span(Span::call_site());
        TokenTree::Punct(punct)
    });
    signs.collect()
}
