//! Command-line tools compiled from crates, each version in a folder of its own.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;
use std::time::Instant;

use crate::paths;
use crate::run::{self, Outcome};

/// 0.22 asks for a newer compiler than this project does.
const TRUNK: &str = "0.21.14";

const WASM_SPLIT: &str = "wasm_split_cli_support";

/// Reads the marks that `wasm_split_helpers` leaves in the compiled app: of the same 0.2.
const WASM_SPLIT_VERSION: &str = "0.2.4";

/// The folder trunk is in, or `None` when the right one is on PATH already.
pub fn ensure_trunk() -> Outcome<Option<PathBuf>> {
    let recipe = ["--locked", "--debug", "--no-default-features", "--features", "rustls"];
    ensure("trunk", "trunk", TRUNK, &recipe, "0")
}

/// The folder wasm-bindgen is in, or `None` when the right one is on PATH already.
pub fn ensure_wasm_bindgen(version: &str) -> Outcome<Option<PathBuf>> {
    // Its own lock file has named packages that could not be fetched, so it is left out.
    ensure("wasm-bindgen-cli", "wasm-bindgen", version, &["--debug"], "1")
}

/// The folder the program that splits the app into pieces is in. It does not tell its version, so
/// only the one in the tool folder is trusted.
pub fn ensure_wasm_split() -> Outcome<Option<PathBuf>> {
    let folder = paths::tool(WASM_SPLIT, WASM_SPLIT_VERSION).join("bin");
    if !folder.join("wasm-split-cli").is_file() {
        install(WASM_SPLIT, WASM_SPLIT_VERSION, &["--debug", "--features", "build-binary"], "1")?;
    }
    Ok(Some(folder))
}

/// Tools run for seconds and compile for minutes: little optimising makes the first run shortest.
fn ensure(
    package: &str,
    program: &str,
    version: &str,
    recipe: &[&str],
    opt_level: &str,
) -> Outcome<Option<PathBuf>> {
    if has_version(Path::new(program), version) {
        return Ok(None);
    }
    let folder = paths::tool(package, version).join("bin");
    if has_version(&folder.join(program), version) {
        return Ok(Some(folder));
    }
    install(package, version, recipe, opt_level)?;
    Ok(Some(folder))
}

fn install(package: &str, version: &str, recipe: &[&str], opt_level: &str) -> Outcome {
    let log = log(package)?;
    println!("Installing {package} {version}, a few minutes, once (log: {}) …", log.display());
    let started = Instant::now();
    let mut install = Command::new("cargo");
    install
        .args(["install", &format!("{package}@{version}")])
        .args(recipe)
        .arg("--root")
        .arg(paths::tool(package, version))
        .env("CARGO_PROFILE_DEV_DEBUG", "0")
        .env("CARGO_PROFILE_DEV_OPT_LEVEL", opt_level)
        .env_remove("CARGO_TARGET_DIR");
    run::succeed_logged(&mut install, &log)
        .map_err(|sentence| format!("{package} {version} was not installed.\n{sentence}"))?;
    println!("Installed {package} {version} in {} s.", started.elapsed().as_secs());
    Ok(())
}

fn has_version(program: &Path, version: &str) -> bool {
    run::answer(Command::new(program).arg("--version"))
        .is_some_and(|answer| answer.split_whitespace().any(|word| word == version))
}

/// The log file of one installation.
pub fn log(name: &str) -> Outcome<PathBuf> {
    let folder = paths::target().join("setup");
    fs::create_dir_all(&folder)
        .map_err(|cause| format!("{} cannot be made: {cause}.", folder.display()))?;
    Ok(folder.join(format!("{name}.log")))
}
