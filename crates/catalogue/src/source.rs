//! The texts of one Rust source.

use proc_macro2::{Delimiter, Group, LexError, TokenStream, TokenTree as Token};

use crate::literal::{is_words, text};

/// One text of a source.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    /// The text, as the program has it.
    pub text: String,
    /// It stands in `t`, `say!` or `key!`; otherwise it only looks like words.
    pub marked: bool,
}

/// What compares or takes apart: its literals are found in a text, not shown.
const COMPARING: &[&str] = &[
    "contains",
    "strip_prefix",
    "strip_suffix",
    "starts_with",
    "ends_with",
    "split",
    "split_once",
    "rsplit_once",
    "trim_end_matches",
    "trim_start_matches",
    "join",
    "replace",
];

/// What stops the program, compares, or makes an item: no text for a person.
const MACROS: &[&str] = &["assert", "debug_assert", "matches", "include_str", "env", "macro_rules"];

/// Attributes of HTML and names of properties whose values are for the browser.
const ATTRIBUTES: &[&str] =
    &["class", "id", "href", "type", "role", "name", "d", "points", "group"];

/// The texts of a source, in their order; tests and attributes are left out.
///
/// # Errors
/// Where the source is no Rust.
pub fn texts(source: &str) -> Result<Vec<Found>, LexError> {
    let mut found = Vec::new();
    walk(source.parse()?, "", &mut found);
    Ok(found)
}

fn walk(stream: TokenStream, called: &str, found: &mut Vec<Found>) {
    let tokens: Vec<Token> = stream.into_iter().collect();
    let mut at = 0;
    while let Some(token) = tokens.get(at) {
        at += skipped(&tokens, at).unwrap_or_else(|| {
            match token {
                Token::Group(group) if !is_pattern(&tokens, at) => {
                    within(group, &before(&tokens, at), found);
                }
                Token::Literal(literal)
                    if !is_pattern(&tokens, at)
                        && !is_compared(&tokens, at)
                        && !is_attribute(&tokens, at)
                        && !COMPARING.contains(&called) =>
                {
                    let marked = ["t", "say!", "key!"].contains(&called);
                    let text = text(&literal.to_string());
                    found.extend(
                        text.filter(|text| marked || is_words(text.as_str()))
                            .map(|text| Found { text, marked }),
                    );
                }
                _ => {}
            }
            1
        });
    }
}

/// The literals of a group, as those of what it is given to. Only the first of `say!` is a text.
fn within(group: &Group, called: &str, found: &mut Vec<Found>) {
    let name = called.trim_end_matches('!');
    if called.ends_with('!') && MACROS.iter().any(|skipped| name.starts_with(skipped)) {
        return;
    }
    if called != "say!" {
        return walk(group.stream(), called, found);
    }
    let mut tokens = group.stream().into_iter();
    walk(tokens.next().into_iter().collect(), called, found);
    walk(tokens.collect(), "", found);
}

/// How many tokens to leave out here: attributes, and the tests of a file.
fn skipped(tokens: &[Token], at: usize) -> Option<usize> {
    let next = tokens.get(at + 1);
    match tokens.get(at)? {
        Token::Punct(sign) if sign.as_char() == '#' => match next {
            Some(Token::Group(group)) if group.delimiter() == Delimiter::Bracket => Some(2),
            Some(Token::Punct(_)) => Some(3),
            _ => None,
        },
        Token::Ident(word) if word == "mod" => match next {
            Some(Token::Ident(name)) if name == "tests" => Some(3),
            _ => None,
        },
        _ => None,
    }
}

/// What a group is given to: the name of a function, or of a macro with its `!`.
fn before(tokens: &[Token], at: usize) -> String {
    match (at.checked_sub(2).and_then(|two| tokens.get(two)), at.checked_sub(1)) {
        (Some(Token::Ident(name)), Some(one)) if is_sign(tokens.get(one), '!') => {
            format!("{name}!")
        }
        (_, Some(one)) => match tokens.get(one) {
            Some(Token::Ident(name)) => name.to_string(),
            _ => String::new(),
        },
        _ => String::new(),
    }
}

fn is_sign(token: Option<&Token>, sign: char) -> bool {
    matches!(token, Some(Token::Punct(punct)) if punct.as_char() == sign)
}

/// Before `=>`, `|` or a guard: it is matched against.
fn is_pattern(tokens: &[Token], at: usize) -> bool {
    let next = tokens.get(at + 1);
    let arm = is_sign(next, '=') && is_sign(tokens.get(at + 2), '>');
    let guard = matches!(next, Some(Token::Ident(word)) if word == "if");
    arm || (guard
        && !matches!(tokens.get(at), Some(Token::Group(group)) if group.delimiter() == Delimiter::Brace))
        || (is_sign(next, '|') && !is_sign(tokens.get(at + 2), '|') && !is_block(tokens.get(at)))
}

fn is_block(token: Option<&Token>) -> bool {
    matches!(token, Some(Token::Group(group)) if group.delimiter() == Delimiter::Brace)
}

/// Beside `==` or `!=`.
fn is_compared(tokens: &[Token], at: usize) -> bool {
    let back = |by: usize| at.checked_sub(by).and_then(|at| tokens.get(at));
    let before = is_sign(back(1), '=') && (is_sign(back(2), '=') || is_sign(back(2), '!'));
    before || (is_sign(tokens.get(at + 1), '=') && is_sign(tokens.get(at + 2), '='))
}

/// `class="…"` and the like in a view.
fn is_attribute(tokens: &[Token], at: usize) -> bool {
    let back = |by: usize| at.checked_sub(by).and_then(|at| tokens.get(at));
    let name = |token: Option<&Token>| matches!(token, Some(Token::Ident(name)) if ATTRIBUTES.iter().any(|it| name == it));
    is_sign(back(1), '=') && name(back(2))
}
