//! Running other programs.

use std::fs::File;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{Command, Stdio};

/// Success, or sentences for the person at the terminal; none when everything is said already.
pub type Outcome<T = ()> = Result<T, String>;

/// The command as a person would type it.
pub fn typed(command: &Command) -> String {
    let mut words = vec![command.get_program().to_string_lossy().into_owned()];
    words.extend(command.get_args().map(|word| word.to_string_lossy().into_owned()));
    words.join(" ")
}

fn could_not_start(command: &Command, cause: &std::io::Error) -> String {
    format!("`{}` did not start: {cause}.", typed(command))
}

/// Runs to the end with the terminal attached.
pub fn succeed(command: &mut Command) -> Outcome {
    let status = command.status().map_err(|cause| could_not_start(command, &cause))?;
    if status.success() {
        Ok(())
    } else {
        Err(format!("`{}` ended with {status}.", typed(command)))
    }
}

/// Runs quietly with everything it says in `log`; on failure the end of the log is shown.
pub fn succeed_logged(command: &mut Command, log: &Path) -> Outcome {
    let unwritable = |cause| format!("{} is not writable: {cause}.", log.display());
    let out = File::create(log).map_err(unwritable)?;
    let err = out.try_clone().map_err(unwritable)?;
    command.stdin(Stdio::null()).stdout(out).stderr(err);
    succeed(command).map_err(|sentence| {
        let text = std::fs::read_to_string(log).unwrap_or_default();
        let lines: Vec<&str> = text.lines().collect();
        let tail = lines.get(lines.len().saturating_sub(20)..).unwrap_or_default().join("\n");
        format!("{tail}\n\n{sentence} The whole log is in {}.", log.display())
    })
}

/// What the command prints, or `None` when it is missing or fails.
pub fn answer(command: &mut Command) -> Option<String> {
    let output = command.stderr(Stdio::null()).output().ok()?;
    output.status.success().then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

/// Runs with each line of output shown and handed to `see`; answers whether it succeeded.
pub fn watched(command: &mut Command, mut see: impl FnMut(&str)) -> Outcome<bool> {
    let mut child =
        command.stdout(Stdio::piped()).spawn().map_err(|cause| could_not_start(command, &cause))?;
    if let Some(out) = child.stdout.take() {
        for line in BufReader::new(out).lines().map_while(Result::ok) {
            println!("{line}");
            see(&line);
        }
    }
    child.wait().map(|status| status.success()).map_err(|cause| could_not_start(command, &cause))
}
