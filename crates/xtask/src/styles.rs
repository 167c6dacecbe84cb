//! Joins the many small style sheets into the one that the page links.

use std::fs;
use std::path::Path;

use crate::run::Outcome;

/// These come first, in this order; the rest follows by name.
const FIRST: [&str; 2] = ["tokens.css", "base.css"];

/// What the record as a file is drawn with too: it stands beside what draws it, and comes before
/// what is the app's alone.
const SHARED: [&str; 7] = [
    "crates/job/src/report/styles/tokens.css",
    "crates/pictures/src/inks.css",
    "crates/job/src/report/styles/base.css",
    "crates/job/src/report/styles/table.css",
    "crates/job/src/report/styles/state.css",
    "crates/job/src/report/styles/tag.css",
    "crates/job/src/report/styles/leaf.css",
];

/// Writes `web/page/app.css` from the shared styles and `web/styles/*.css`.
pub fn join(web: &Path) -> Outcome {
    let folder = web.join("styles");
    let unreadable = |cause| format!("web/styles is not readable: {cause}.");
    let mut names: Vec<String> = fs::read_dir(&folder)
        .map_err(unreadable)?
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| name.ends_with(".css"))
        .collect();
    names.sort_by_key(|name| {
        (FIRST.iter().position(|first| first == name).unwrap_or(FIRST.len()), name.clone())
    });
    let shared = SHARED.iter().map(|path| web.join("..").join(path));
    let mut joined = String::new();
    for path in shared.chain(names.iter().map(|name| folder.join(name))) {
        let text = fs::read_to_string(&path)
            .map_err(|cause| format!("{} is not readable: {cause}.", path.display()))?;
        joined.push_str(&without_comments(&text));
    }
    fs::write(web.join("page/app.css"), joined)
        .map_err(|cause| format!("web/page/app.css is not writable: {cause}."))
}

/// Comments and indents are for people; no string of ours holds `/*`.
fn without_comments(text: &str) -> String {
    let mut kept = String::new();
    let mut rest = text;
    while let Some((before, after)) = rest.split_once("/*") {
        kept.push_str(before);
        rest = after.split_once("*/").map_or("", |(_, after)| after);
    }
    kept.push_str(rest);
    let lines = kept.lines().map(str::trim).filter(|line| !line.is_empty());
    lines.flat_map(|line| [line, "\n"]).collect()
}

#[cfg(test)]
mod tests {
    use super::without_comments;

    #[test]
    fn comments_and_indents_go() {
        let text = "/* one */\na { /* two\n lines */ color: red; }\n\n  b { margin: 0; }\n";
        assert_eq!(without_comments(text), "a {  color: red; }\nb { margin: 0; }\n");
    }
}
