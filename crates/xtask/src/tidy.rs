//! Tests over the repository itself.

use std::fs;
use std::path::{Path, PathBuf};

use crate::paths;

const LONGEST_FILE: usize = 400;

/// Every text file a person writes, outside of build outputs and installed packages.
fn texts() -> Vec<(PathBuf, String)> {
    let mut found = Vec::new();
    for folder in ["crates", "web", "public", "tests"] {
        walk(&paths::root().join(folder), &mut found);
    }
    for name in ["README.md", "DEVELOPERS.md", "CHANGELOG.md", "Cargo.toml", "Trunk.toml"] {
        let path = paths::root().join(name);
        found.extend(fs::read_to_string(&path).ok().map(|text| (path, text)));
    }
    found
}

fn walk(folder: &Path, found: &mut Vec<(PathBuf, String)>) {
    for path in fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()) {
        let name = path.file_name().unwrap().to_string_lossy();
        if path.is_dir() && name != "node_modules" && name != "out" {
            walk(&path, found);
        }
        let ending = path.extension().unwrap_or_default().to_string_lossy();
        let written = ["rs", "md", "toml", "html", "css", "js", "mjs", "json", "webmanifest"];
        if written.contains(&&*ending) && name != "app.css" {
            found.extend(fs::read_to_string(&path).ok().map(|text| (path.clone(), text)));
        }
    }
}

/// Fails with every offender, each as `path: what`.
fn none_offends(offence: impl Fn(&Path, &str) -> Option<String>) {
    let texts = texts();
    assert!(texts.len() > 20, "the walk found too little to mean anything");
    let offenders: Vec<String> = texts
        .iter()
        .filter_map(|(path, text)| Some(format!("{}: {}", path.display(), offence(path, text)?)))
        .collect();
    assert!(offenders.is_empty(), "\n{}\n", offenders.join("\n"));
}

fn is_rust(path: &Path) -> bool {
    path.extension().is_some_and(|ending| ending == "rs")
}

#[test]
fn every_crate_opens_with_what_it_is_for() {
    none_offends(|path, text| {
        let is_root = path.ends_with("src/lib.rs") || path.ends_with("src/main.rs");
        (is_root && !text.starts_with("//! ")).then(|| "does not open with `//! `".into())
    });
}

#[test]
fn rust_files_stay_short() {
    none_offends(|path, text| {
        let count = text.lines().count();
        (is_rust(path) && count > LONGEST_FILE)
            .then(|| format!("{count} lines, at most {LONGEST_FILE}"))
    });
}

#[test]
fn no_line_ends_with_blanks() {
    none_offends(|_, text| {
        let (number, _) = text.lines().enumerate().find(|(_, line)| line.ends_with([' ', '\t']))?;
        Some(format!("line {} ends with blanks", number + 1))
    });
}

#[test]
fn nothing_is_left_for_later_in_a_comment() {
    let words = [concat!("TO", "DO"), concat!("FIX", "ME")];
    none_offends(|_, text| {
        words.iter().find(|word| text.contains(**word)).map(|word| format!("holds {word}"))
    });
}

#[test]
fn the_pure_crates_know_no_browser() {
    for name in ["measure", "gearing", "simulator", "workshop", "job"] {
        let manifest = paths::root().join("crates").join(name).join("Cargo.toml");
        let text = fs::read_to_string(manifest).unwrap();
        for stranger in ["web-sys", "js-sys", "wasm-bindgen", "leptos", "gloo"] {
            assert!(!text.contains(stranger), "{name} depends on {stranger}");
        }
    }
}

#[test]
fn the_npm_lock_names_no_host() {
    let lock = fs::read_to_string(paths::tests().join("package-lock.json")).unwrap();
    assert!(!lock.contains("\"resolved\""), "run npm install with the .npmrc in tests/");
}
