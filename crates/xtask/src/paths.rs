//! Where things are in the working tree and in the tool folder.

use std::env;
use std::path::PathBuf;

/// The top of the working tree.
pub fn root() -> PathBuf {
    let here = PathBuf::from(env!("CARGO_MANIFEST_DIR"));
    here.ancestors().nth(2).map(PathBuf::from).unwrap_or(here)
}

/// The finished app.
pub fn dist() -> PathBuf {
    root().join("dist")
}

/// The folder with `package.json` and `node_modules`.
pub fn tests() -> PathBuf {
    root().join("tests")
}

/// Build outputs and logs, never committed.
pub fn target() -> PathBuf {
    env::var_os("CARGO_TARGET_DIR").map_or_else(|| root().join("target"), PathBuf::from)
}

/// Cargo's own folder, which outlives any one clone.
pub fn cargo_home() -> PathBuf {
    env::var_os("CARGO_HOME").map_or_else(
        || env::var_os("HOME").map(PathBuf::from).unwrap_or_default().join(".cargo"),
        PathBuf::from,
    )
}

/// Where one version of one tool lives, apart from what the user has installed.
pub fn tool(name: &str, version: &str) -> PathBuf {
    cargo_home().join("shimwright-tools").join(format!("{name}-{version}"))
}
