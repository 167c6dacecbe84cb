//! The `shimwright` command.

use std::ffi::OsString;
use std::fs::File;
use std::io::{self, BufReader, Write};
use std::path::Path;
use std::process::ExitCode;

const HELP: &str = "\
shimwright: which shims to fit, without a screen

Usage: shimwright advise [FILE]
       shimwright simulate [OPTIONS]

  advise     reads cases, one JSON object a line, from FILE or standard input,
             and writes one line of advice for each; a line that cannot be
             answered says why, and the next one is still answered; a field
             that is not known is refused, with its place
  simulate   sets up virtual gearcases by advice and one position at a time,
             and writes how many dry builds each took, as one JSON object;
             simulate --help says more
  --help     shows this
  --version  shows the version
";

fn main() -> ExitCode {
    let arguments: Vec<OsString> = std::env::args_os().skip(1).collect();
    let command = arguments.first().map(|word| word.to_string_lossy());
    let done = match (command.as_deref(), arguments.get(1..).unwrap_or_default()) {
        (Some("--help" | "-h" | "help"), _) => say(HELP),
        (Some("advise"), [word]) if word == "--help" => say(HELP),
        (Some("--version" | "-V"), _) => {
            say(&format!("shimwright {}\n", env!("CARGO_PKG_VERSION")))
        }
        (Some("advise"), []) => {
            shimwright_cli::advise_lines(io::stdin().lock(), io::stdout().lock())
        }
        (Some("advise"), [file]) => match File::open(file) {
            Ok(open) => shimwright_cli::advise_lines(BufReader::new(open), io::stdout().lock()),
            Err(reason) => {
                let file = Path::new(file).display();
                return refuse(&format!("cannot open {file}: {reason}; give a file of cases"));
            }
        },
        (Some("advise"), files) => {
            return refuse(&format!("found {} files, expected one at most", files.len()));
        }
        (Some("simulate"), [word]) if word == "--help" => say(shimwright_cli::SIMULATE_HELP),
        (Some("simulate"), options) => match shimwright_cli::simulate(options) {
            Ok(report) => say(&report),
            Err(sentence) => return refuse(&sentence),
        },
        (Some(other), _) => {
            return refuse(&format!(
                "found {other:?}, expected advise, simulate, --help or --version"
            ));
        }
        (None, _) => {
            return refuse("found no command, expected shimwright advise or shimwright simulate");
        }
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        // Whoever reads the output has seen enough.
        Err(reason) if reason.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(reason) => refuse(&format!("could not read or write: {reason}")),
    }
}

fn say(text: &str) -> io::Result<()> {
    io::stdout().lock().write_all(text.as_bytes())
}

fn refuse(sentence: &str) -> ExitCode {
    eprintln!("shimwright: {sentence}");
    ExitCode::from(2)
}
