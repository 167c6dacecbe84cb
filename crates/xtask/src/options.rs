//! What the command line asks for.

use std::path::PathBuf;

use crate::paths;
use crate::run::Outcome;

/// The address people are told; `--port` chooses another.
pub const DEFAULT_PORT: u16 = 8080;

pub const HELP: &str = "\
cargo xtask serve [--port N]   install what is missing, build the app, serve it on http://127.0.0.1:8080
cargo xtask build              the same without serving: the finished app is in dist/
cargo xtask draft              the same in a few seconds, neither optimised nor compressed: to look at
cargo xtask test [--libraries] run every check and test, and count them; with --libraries also the bench
                               checks against Python libraries, which are installed on the first run
cargo xtask ci                 test, then documentation, other programs' answers and the benchmark
cargo xtask soak               the long runs, about an hour: ten minutes each of changed files, lines and
                               numbers, then 100 killed browsers, two tabs, 20 steps of a full store,
                               20 small disks and a bench of 1,000 jobs
cargo xtask budget             sizes of the first visit, from dist/ as it is
cargo xtask words              gather every text into the catalogues of other languages, and say what they lack
cargo xtask icons              draw public/icons/*.png again from their SVG
cargo xtask shots              take the pictures of the screens for the README and the manifest

serve --built [--from FOLDER]  serve dist/, or a copy of it, as it is; with --port 0 the system picks a
                               free port. The line `listening on http://…` says when it is ready.";

/// One thing to do.
#[derive(Debug, PartialEq, Eq)]
pub enum Command {
    Help,
    Serve {
        port: u16,
        built: bool,
        from: PathBuf,
    },
    Build,
    Draft,
    Test {
        with_libraries: bool,
    },
    Ci,
    Soak,
    Budget,
    Words,
    /// A script of `tests/e2e`, by its name without the ending.
    Node(&'static str),
}

/// Reads the words after `cargo xtask`; the sentence says what was not understood.
pub fn parse(words: &[String]) -> Outcome<Command> {
    let mut words = words.iter().map(String::as_str);
    let command = match words.next() {
        None | Some("help" | "--help" | "-h") => Command::Help,
        Some("serve") => return parse_serve(words),
        Some("build") => Command::Build,
        Some("draft") => Command::Draft,
        Some("test") => return parse_test(words),
        Some("ci") => Command::Ci,
        Some("soak") => Command::Soak,
        Some("budget") => Command::Budget,
        Some("words") => Command::Words,
        Some("icons") => Command::Node("icons"),
        Some("shots") => Command::Node("shots"),
        Some(other) => return Err(format!("There is no command `{other}`.\n\n{HELP}")),
    };
    match words.next() {
        None => Ok(command),
        Some(extra) => Err(format!("`{extra}` is not known here.\n\n{HELP}")),
    }
}

fn parse_test<'a>(words: impl Iterator<Item = &'a str>) -> Outcome<Command> {
    let mut with_libraries = false;
    for word in words {
        match word {
            "--libraries" => with_libraries = true,
            other => return Err(format!("`{other}` is not known here.\n\n{HELP}")),
        }
    }
    Ok(Command::Test { with_libraries })
}

fn parse_serve<'a>(mut words: impl Iterator<Item = &'a str>) -> Outcome<Command> {
    let (mut port, mut built, mut from) = (DEFAULT_PORT, false, paths::dist());
    while let Some(word) = words.next() {
        match word {
            "--built" => built = true,
            "--from" if built => {
                let folder = words.next().ok_or("`--from` is followed by a folder.")?;
                from = PathBuf::from(folder);
            }
            "--port" => {
                let typed = words.next().unwrap_or_default();
                port = typed.parse().map_err(|_| {
                    format!("`--port` is followed by a number from 0 to 65535, found `{typed}`.")
                })?;
            }
            other => return Err(format!("`{other}` is not known here.\n\n{HELP}")),
        }
    }
    Ok(Command::Serve { port, built, from })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(line: &str) -> Outcome<Command> {
        let words: Vec<String> = line.split_whitespace().map(str::to_owned).collect();
        parse(&words)
    }

    #[test]
    fn serve_takes_its_flags_in_any_order() {
        let serve = |port, built, from| Ok(Command::Serve { port, built, from });
        assert_eq!(read("serve"), serve(8080, false, paths::dist()));
        assert_eq!(read("serve --built --port 0"), serve(0, true, paths::dist()));
        assert_eq!(read("serve --port 9000 --built --from a"), serve(9000, true, "a".into()));
    }

    #[test]
    fn test_runs_the_libraries_where_asked() {
        assert_eq!(read("test"), Ok(Command::Test { with_libraries: false }));
        assert_eq!(read("test --libraries"), Ok(Command::Test { with_libraries: true }));
    }

    #[test]
    fn what_is_not_understood_is_named() {
        for (line, named) in
            [("brew", "`brew`"), ("test twice", "`twice`"), ("serve --port 70000", "`70000`")]
        {
            let sentence = read(line).unwrap_err();
            assert!(sentence.contains(named), "{sentence}");
        }
    }
}
