//! The words of other languages, laid beside the app.

use std::fs;
use std::path::Path;
use std::process::Command;

use words::Entry;

use crate::paths;
use crate::run::{self, Outcome};

/// How the name of a catalogue ends whose words stand in the page itself.
const PAGE: &str = "-page";

const EMPTY: &str = "const WORDS = {};";

/// Their folder in `dist/`.
pub const FOLDER: &str = "words";

/// Writes `web/page/boot.js` from `public/boot.js`, with the words of the page itself in it: they are
/// needed before the app, and without it.
pub fn fill_boot() -> Outcome {
    let root = paths::root();
    let unreadable = |cause| format!("public/boot.js is not readable: {cause}.");
    let script = fs::read_to_string(root.join("public/boot.js")).map_err(unreadable)?;
    let mut languages = String::new();
    for (name, text) in catalogues()? {
        let Some(language) = name.strip_suffix(PAGE) else { continue };
        let entries = words::read(&text).map_err(|torn| format!("{name}.po: {torn}"))?;
        languages.push_str(&format!("{}: {},", quoted(language), object(&entries)));
    }
    let filled = script.replacen(EMPTY, &format!("const WORDS = {{{languages}}};"), 1);
    if filled == script {
        return Err(format!("public/boot.js has no line `{EMPTY}`."));
    }
    fs::write(root.join("web/page/boot.js"), filled)
        .map_err(|cause| format!("web/page/boot.js is not writable: {cause}."))
}

/// Every catalogue: its name without the ending, and its text; by name.
fn catalogues() -> Outcome<Vec<(String, String)>> {
    let unreadable = |cause| format!("crates/words/po is not readable: {cause}.");
    let mut found = Vec::new();
    for entry in fs::read_dir(paths::root().join("crates/words/po")).map_err(unreadable)? {
        let path = entry.map_err(unreadable)?.path();
        let name = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
        found.push((name, fs::read_to_string(&path).map_err(unreadable)?));
    }
    found.sort();
    Ok(found)
}

fn object(entries: &[Entry]) -> String {
    let known = entries.iter().filter(|it| !it.english.is_empty() && !it.turned.is_empty());
    let pairs = known.map(|it| format!("{}: {}", quoted(&it.english), quoted(&it.turned)));
    format!("{{{}}}", pairs.collect::<Vec<_>>().join(","))
}

/// A text as JavaScript has it; ours have no control characters but the end of a line.
fn quoted(text: &str) -> String {
    let escaped = text.replace('\\', "\\\\").replace('"', "\\\"").replace('\n', "\\n");
    format!("\"{escaped}\"")
}

/// Writes every catalogue into `dist/`, without what is only for translators.
pub fn lay(dist: &Path) -> Outcome {
    let to = dist.join(FOLDER);
    fs::create_dir_all(&to).map_err(|cause| format!("dist/{FOLDER} is not there: {cause}."))?;
    for (name, text) in catalogues()?.iter().filter(|(name, _)| !name.ends_with(PAGE)) {
        fs::write(to.join(format!("{name}.txt")), bare(text))
            .map_err(|cause| format!("dist/{FOLDER} is not writable: {cause}."))?;
    }
    Ok(())
}

/// Writes the catalogues anew from the sources, and says what they lack.
pub fn gather() -> Outcome {
    let mut cargo = Command::new("cargo");
    run::succeed(cargo.current_dir(paths::root()).args([
        "run",
        "--quiet",
        "--package",
        "catalogue",
    ]))
}

fn bare(catalogue: &str) -> String {
    let lines = catalogue.lines().filter(|line| !line.is_empty() && !line.starts_with('#'));
    lines.flat_map(|line| [line, "\n"]).collect()
}

#[cfg(test)]
mod tests {
    use words::Entry;

    use super::{bare, object};

    #[test]
    fn only_what_is_turned_stands_in_the_script() {
        let entry = |english: &str, turned: &str| Entry {
            english: english.to_owned(),
            turned: turned.to_owned(),
        };
        let entries =
            [entry("", "Language: es"), entry("Later", "Más \"tarde\""), entry("Now", "")];
        assert_eq!(object(&entries), r#"{"Later": "Más \"tarde\""}"#);
    }

    #[test]
    fn comments_and_empty_lines_stay_behind() {
        let text = "# who\nmsgid \"\"\nmsgstr \"\"\n\n#: a.rs\nmsgid \"#1\"\nmsgstr \"n.º 1\"\n";
        let laid = "msgid \"\"\nmsgstr \"\"\nmsgid \"#1\"\nmsgstr \"n.º 1\"\n";
        assert_eq!(bare(text), laid);
    }
}
