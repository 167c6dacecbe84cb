//! Node and the packages of the lock files in `tests`.

use std::fs;
use std::path::Path;
use std::process::Command;

use crate::run::{self, Outcome};

const OLDEST_NODE: u32 = 20;

/// Node runs wasm-opt, the compression and the browser tests.
pub fn check_node() -> Outcome {
    let wanted = format!(
        "Node {OLDEST_NODE} or newer, with npm, is needed. On Debian 13: `apt-get install nodejs npm`. \
         On older systems take it from nodejs.org, then run the same command again."
    );
    let found = run::answer(Command::new("node").arg("--version"));
    let found = found.ok_or_else(|| format!("`node` was not found. {wanted}"))?;
    let major = found.trim_start_matches('v').split('.').next().and_then(|text| text.parse().ok());
    if major.is_none_or(|major: u32| major < OLDEST_NODE) {
        return Err(format!("`node` is {found}. {wanted}"));
    }
    run::answer(Command::new("npm").arg("--version"))
        .map(|_| ())
        .ok_or_else(|| format!("`npm` was not found. {wanted}"))
}

/// Installs the packages that a folder's lock file names, unless these very ones are there.
pub fn ensure_packages(folder: &Path) -> Outcome {
    let lock = folder.join("package-lock.json");
    let lock =
        fs::read(&lock).map_err(|cause| format!("{} is not readable: {cause}.", lock.display()))?;
    let installed = folder.join("node_modules/.installed-lock.json");
    if fs::read(&installed).is_ok_and(|earlier| earlier == lock) {
        return Ok(());
    }
    println!("Installing npm packages into {} …", folder.join("node_modules").display());
    run::succeed_logged(
        Command::new("npm").args(["ci", "--no-audit", "--no-fund"]).current_dir(folder),
        &super::tool::log("npm")?,
    )?;
    fs::write(&installed, lock)
        .map_err(|cause| format!("{} is not writable: {cause}.", installed.display()))
}
