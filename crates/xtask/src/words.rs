//! The words of other languages, laid beside the app.

use std::fs;
use std::path::Path;
use std::process::Command;

use crate::paths;
use crate::run::{self, Outcome};

/// Their folder in `dist/`.
pub const FOLDER: &str = "words";

/// Writes every catalogue into `dist/`, without what is only for translators.
pub fn lay(dist: &Path) -> Outcome {
    let (from, to) = (paths::root().join("crates/words/po"), dist.join(FOLDER));
    let unreadable = |cause| format!("crates/words/po is not readable: {cause}.");
    fs::create_dir_all(&to).map_err(|cause| format!("dist/{FOLDER} is not there: {cause}."))?;
    for entry in fs::read_dir(from).map_err(unreadable)? {
        let path = entry.map_err(unreadable)?.path();
        let text = fs::read_to_string(&path).map_err(unreadable)?;
        let name = path.with_extension("txt");
        let Some(name) = name.file_name() else { continue };
        fs::write(to.join(name), bare(&text))
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
    use super::bare;

    #[test]
    fn comments_and_empty_lines_stay_behind() {
        let text = "# who\nmsgid \"\"\nmsgstr \"\"\n\n#: a.rs\nmsgid \"#1\"\nmsgstr \"n.º 1\"\n";
        let laid = "msgid \"\"\nmsgstr \"\"\nmsgid \"#1\"\nmsgstr \"n.º 1\"\n";
        assert_eq!(bare(text), laid);
    }
}
