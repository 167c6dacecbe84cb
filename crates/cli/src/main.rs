//! The `shimwright` command.

use std::ffi::OsString;
use std::fs::File;
use std::io::{self, BufReader, BufWriter, Write};
use std::process::ExitCode;

const HELP: &str = "\
shimwright: which shims to fit, without a screen

Usage: shimwright advise [FILE]

  advise     reads cases, one JSON object a line, from FILE or standard input,
             and writes one line of advice for each; a line that cannot be
             answered says why, and the next one is still answered
  --help     shows this
  --version  shows the version
";

fn main() -> ExitCode {
    let arguments: Vec<OsString> = std::env::args_os().skip(1).collect();
    let words: Vec<&str> = arguments.iter().filter_map(|word| word.to_str()).collect();
    let done = match words.as_slice() {
        ["--help" | "-h" | "help"] => say(HELP),
        ["--version" | "-V"] => say(&format!("shimwright {}\n", env!("CARGO_PKG_VERSION"))),
        ["advise"] => shimwright_cli::advise_lines(io::stdin().lock(), writer()),
        ["advise", file] => match File::open(file) {
            Ok(open) => shimwright_cli::advise_lines(BufReader::new(open), writer()),
            Err(reason) => return refuse(&format!("cannot open {file}: {reason}")),
        },
        [] => return refuse("no command was given, expected: shimwright advise [FILE]"),
        ["advise", ..] => {
            return refuse(&format!("found {} files, expected at most one", words.len() - 1));
        }
        [other, ..] => {
            return refuse(&format!("found {other:?}, expected advise, --help or --version"));
        }
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        // Whoever reads the output has seen enough.
        Err(reason) if reason.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(reason) => refuse(&format!("could not read or write: {reason}")),
    }
}

fn writer() -> impl Write {
    BufWriter::new(io::stdout().lock())
}

fn say(text: &str) -> io::Result<()> {
    io::stdout().lock().write_all(text.as_bytes())
}

fn refuse(sentence: &str) -> ExitCode {
    eprintln!("shimwright: {sentence}");
    ExitCode::from(2)
}
