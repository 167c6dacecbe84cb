//! The set-up engine alone as a WebAssembly module, built and made small as the app is, to be timed
//! in a browser.

use std::fs;
use std::path::PathBuf;

use crate::run::{self, Outcome};
use crate::setup::Tools;
use crate::setup::rust::WASM;
use crate::{code, paths};

const EXAMPLE: &str = "speed_wasm";

/// Builds the module; where it is.
pub fn build(tools: &Tools) -> Outcome<PathBuf> {
    let target = paths::target();
    let cargo = ["build", "--release", "--package", "gearing", "--example", EXAMPLE];
    let mut cargo = tools.command("cargo", &cargo);
    run::succeed(cargo.args(["--target", WASM, "--target-dir"]).arg(&target))?;

    let built = target.join(WASM).join("release/examples").join(EXAMPLE).with_extension("wasm");
    let small = target.join(EXAMPLE).with_extension("wasm");
    fs::copy(&built, &small)
        .map_err(|cause| format!("{} is not writable: {cause}.", small.display()))?;
    code::optimise_one(tools, &small)?;
    Ok(small)
}
