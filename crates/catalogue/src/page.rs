//! The texts of the page itself: what stands in it before the app comes, and what `boot.js` says.

use std::path::Path;

use crate::gather::{Unread, read};
use crate::literal;

const PAGE: &str = "web/page/index.html";
const SCRIPT: &str = "public/boot.js";

/// Every text, with its file.
///
/// # Errors
/// Where a file cannot be read.
pub fn texts(root: &Path) -> Result<Vec<(String, &'static str)>, Unread> {
    let (page, script) = (read(&root.join(PAGE))?, read(&root.join(SCRIPT))?);
    let mut texts: Vec<(String, &'static str)> = Vec::new();
    let in_page = of_page(&page).into_iter().map(|text| (text, PAGE));
    for found in in_page.chain(of_script(&script).into_iter().map(|text| (text, SCRIPT))) {
        if !texts.iter().any(|(text, _)| *text == found.0) {
            texts.push(found);
        }
    }
    Ok(texts)
}

/// What stands between the tags of the body, and the names of its parts.
fn of_page(page: &str) -> Vec<String> {
    let body = page.split_once("<body>").map_or("", |(_, body)| body);
    let mut texts = Vec::new();
    for piece in body.split('<').filter(|piece| !piece.starts_with("!--")) {
        let (tag, text) = piece.split_once('>').unwrap_or(("", piece));
        let named = tag.split_once("aria-label=\"").and_then(|(_, rest)| rest.split_once('"'));
        texts.extend(named.map(|(name, _)| name.to_owned()));
        texts.push(text.trim().to_owned());
    }
    texts.retain(|text| text.chars().any(char::is_alphabetic));
    texts
}

/// What the script gives to its `t`.
fn of_script(script: &str) -> Vec<String> {
    let calls = script.split("t(\"").skip(1);
    let literals =
        calls.filter_map(|rest| rest.split_once('"').map(|(text, _)| format!("\"{text}\"")));
    let texts = literals.filter_map(|it| literal::text(&it)).filter(|text| literal::is_words(text));
    texts.collect()
}

#[cfg(test)]
mod tests {
    use super::{of_page, of_script};

    #[test]
    fn texts_and_names_of_the_page() {
        let page =
            "<title>x</title><body><!-- y --><p><b>1.</b> Reload <i aria-label=\"Dock\"></i></p>";
        assert_eq!(of_page(page), ["Reload", "Dock"]);
    }

    #[test]
    fn what_the_script_says() {
        let script = "get(\"theme\"); t(\"The app has stopped\"); t(\"Saved: {name}.\", { name })";
        assert_eq!(of_script(script), ["The app has stopped", "Saved: {name}."]);
    }
}
