//! The project's own commands: `cargo xtask serve`, `build`, `test`, `ci` and a few small ones.
//!
//! What a command needs is installed first, each thing once, into a place of its own.
//! Everything is reported in sentences; a command that fails says what to type next.

mod budget;
mod bundle;
mod checks;
mod code;
mod digest;
mod finish;
mod headers;
mod join;
mod licences;
mod options;
mod paths;
mod report;
mod run;
mod server;
mod setup;
mod styles;
#[cfg(test)]
mod tidy;
mod words;

use std::process::ExitCode;
use std::time::Instant;

use bundle::Make;
use options::Command;
use run::Outcome;

fn main() -> ExitCode {
    let words: Vec<String> = std::env::args().skip(1).collect();
    match options::parse(&words).and_then(carry_out) {
        Ok(()) => ExitCode::SUCCESS,
        Err(sentence) => {
            if !sentence.is_empty() {
                eprintln!("\n{sentence}");
            }
            ExitCode::FAILURE
        }
    }
}

fn carry_out(command: Command) -> Outcome {
    let started = Instant::now();
    match command {
        Command::Help => {
            println!("{}", options::HELP);
            Ok(())
        }
        Command::Serve { port, built, from } => {
            // A taken port is said before the build, not after it.
            let listener = server::listen(port)?;
            if !built {
                let tools = setup::for_building(Make::Release)?;
                bundle::build(&tools, Make::Release)?;
                budget::report()?;
            }
            server::announce(&listener, started.elapsed(), built)?;
            server::run(&listener, &from)
        }
        Command::Build => {
            let tools = setup::for_building(Make::Release)?;
            bundle::build(&tools, Make::Release)?;
            budget::report()?;
            println!("Built dist/ in {} s.", started.elapsed().as_secs());
            Ok(())
        }
        Command::Draft => {
            let tools = setup::for_building(Make::Draft)?;
            bundle::build(&tools, Make::Draft)?;
            println!("Drafted dist/ in {} s; it is large.", started.elapsed().as_secs());
            Ok(())
        }
        Command::Test { with_libraries } => checks::test(with_libraries),
        Command::Ci => checks::ci(),
        Command::Soak => checks::soak(),
        Command::Budget => budget::report(),
        Command::Words => words::gather(),
        Command::Node(script) => checks::script(script),
    }
}
