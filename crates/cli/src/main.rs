//! The `shimwright` command.

use std::ffi::OsString;
use std::fs::File;
use std::io::{self, BufRead, BufReader, Read, Write};
use std::path::Path;
use std::process::ExitCode;

use shimwright_cli::{FILES_HELP, View};

const HELP: &str = "\
shimwright: which shims to fit, bench checks, and backups read, without a screen

Usage: shimwright advise [FILE]
       shimwright bench [FILE]
       shimwright simulate [OPTIONS]
       shimwright check FILE
       shimwright export FILE --csv|--text
       shimwright report FILE [OPTIONS]

  advise     reads cases, one JSON object a line, from FILE or standard input,
             and writes one line of advice for each; a line that cannot be
             answered says why, and the next one is still answered; a field
             that is not known is refused, with its place
  bench      reads bench checks, such as a leak, a runout or a torque, and
             writes one line for each; bench --help says more
  simulate   sets up virtual gearcases by advice and one position at a time,
             and writes how many dry builds each took, as one JSON object;
             simulate --help says more
  check      says what a backup of the app holds and what cannot be read of it
  export     writes the readings of a backup as a table or as plain text;
             check --help says more of both
  report     writes the record of a job as one HTML file, as the app saves it;
             report --help says more
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
        (Some("bench"), [word]) if word == "--help" => say(shimwright_cli::BENCH_HELP),
        (Some(command @ ("advise" | "bench")), files) => {
            let answers = |input: Box<dyn BufRead>| {
                let output = io::stdout().lock();
                if command == "advise" {
                    shimwright_cli::advise_lines(input, output)
                } else {
                    shimwright_cli::bench_lines(input, output)
                }
            };
            match files {
                [] => answers(Box::new(io::stdin().lock())),
                [file] => match File::open(file) {
                    Ok(open) => answers(Box::new(BufReader::new(open))),
                    Err(reason) => {
                        let file = Path::new(file).display();
                        return refuse(&format!(
                            "cannot open {file}: {reason}; give a file of lines"
                        ));
                    }
                },
                files => {
                    return refuse(&format!("found {} files, expected one at most", files.len()));
                }
            }
        }
        (Some("simulate"), [word]) if word == "--help" => say(shimwright_cli::SIMULATE_HELP),
        (Some("simulate"), options) => match shimwright_cli::simulate(options) {
            Ok(report) => say(&report),
            Err(sentence) => return refuse(&sentence),
        },
        (Some("check" | "export"), [word]) if word == "--help" => say(FILES_HELP),
        (Some("check"), [file]) => match opened(file).and_then(shimwright_cli::check) {
            Ok((said, true)) => say(&said),
            Ok((said, false)) => {
                return match say(&said) {
                    Ok(()) => ExitCode::FAILURE,
                    Err(reason) => refuse(&format!("could not write: {reason}")),
                };
            }
            Err(sentence) => return refuse(&sentence),
        },
        (Some("export"), [file, view]) if view == "--csv" || view == "--text" => {
            let view = if view == "--csv" { View::Csv } else { View::Text };
            match opened(file).and_then(|open| shimwright_cli::export(open, view)) {
                Ok(said) => say(&said),
                Err(sentence) => return refuse(&sentence),
            }
        }
        (Some("report"), [word]) if word == "--help" => say(shimwright_cli::REPORT_HELP),
        (Some("report"), [file, options @ ..]) => {
            let made = shimwright_cli::Asked::read(options)
                .and_then(|asked| shimwright_cli::report(opened(file)?, asked));
            match made {
                Ok(page) => say(&page),
                Err(sentence) => return refuse(&sentence),
            }
        }
        (Some("report"), []) => {
            return refuse(&format!(
                "shimwright report needs a file:\n\n{}",
                shimwright_cli::REPORT_HELP
            ));
        }
        (Some(command @ ("check" | "export")), _) => {
            return refuse(&format!("shimwright {command} needs other words:\n\n{FILES_HELP}"));
        }
        (Some(other), _) => {
            return refuse(&format!(
                "found {other:?}, expected advise, bench, simulate, check, export, report, --help or --version"
            ));
        }
        (None, _) => {
            return refuse(
                "found no command, expected shimwright advise, bench, simulate, check, export or report",
            );
        }
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        // Whoever reads the output has seen enough.
        Err(reason) if reason.kind() == io::ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(reason) => refuse(&format!("could not read or write: {reason}")),
    }
}

/// A file by its name, or standard input for `-`.
fn opened(file: &OsString) -> Result<Box<dyn Read>, String> {
    if file == "-" {
        return Ok(Box::new(io::stdin()));
    }
    let named = Path::new(file).display();
    let open = File::open(file).map_err(|why| format!("cannot open {named}: {why}"))?;
    Ok(Box::new(open))
}

fn say(text: &str) -> io::Result<()> {
    io::stdout().lock().write_all(text.as_bytes())
}

fn refuse(sentence: &str) -> ExitCode {
    eprintln!("shimwright: {sentence}");
    ExitCode::from(2)
}
