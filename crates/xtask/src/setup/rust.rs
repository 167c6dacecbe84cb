//! The compiler's own parts, and the one version that must agree with `Cargo.lock`.

use std::fs;
use std::path::Path;
use std::process::Command;

use crate::paths;
use crate::run::{self, Outcome};

pub const WASM: &str = "wasm32-unknown-unknown";

/// The standard library for wasm.
pub fn ensure_target() -> Outcome {
    let folder =
        run::answer(Command::new("rustc").args(["--print", "target-libdir", "--target", WASM]));
    if folder.is_some_and(|folder| Path::new(&folder).is_dir()) {
        return Ok(());
    }
    println!("Adding the {WASM} target …");
    run::succeed(Command::new("rustup").args(["target", "add", WASM])).map_err(|sentence| {
        format!("{sentence}\nRust comes from rustup.rs here. Type: rustup target add {WASM}")
    })
}

/// `rustfmt` or `clippy`, which a minimal toolchain leaves out.
pub fn ensure_component(name: &str) -> Outcome {
    let program = if name == "clippy" { "cargo-clippy" } else { name };
    if run::answer(Command::new(program).arg("--version")).is_some() {
        return Ok(());
    }
    run::succeed(Command::new("rustup").args(["component", "add", name]))
        .map_err(|sentence| format!("{sentence}\nType: rustup component add {name}"))
}

/// The locked version of wasm-bindgen: the command-line tool must equal it to the patch.
pub fn wasm_bindgen_version() -> Outcome<String> {
    let lock = fs::read_to_string(paths::root().join("Cargo.lock"))
        .map_err(|cause| format!("Cargo.lock is not readable: {cause}."))?;
    locked_version(&lock, "wasm-bindgen")
        .ok_or_else(|| "Cargo.lock names no wasm-bindgen. Type: cargo update -w".to_owned())
}

fn locked_version(lock: &str, package: &str) -> Option<String> {
    let name = format!("name = \"{package}\"");
    let mut lines = lock.lines().skip_while(|line| *line != name).skip(1);
    let version = lines.next()?.strip_prefix("version = \"")?.strip_suffix('"')?;
    Some(version.to_owned())
}

/// Compiles the app.
pub fn compile_app(profile: &str) -> Outcome {
    run::succeed(Command::new("cargo").current_dir(paths::root()).args([
        "build",
        "--profile",
        profile,
        "--package",
        "shimwright-web",
        "--target",
        WASM,
    ]))
}

#[cfg(test)]
mod tests {
    use super::locked_version;

    #[test]
    fn the_locked_version_is_the_one_of_the_whole_name() {
        let lock = "[[package]]\nname = \"wasm-bindgen-futures\"\nversion = \"0.4.1\"\n\n\
                    [[package]]\nname = \"wasm-bindgen\"\nversion = \"0.2.130\"\n";
        assert_eq!(locked_version(lock, "wasm-bindgen").as_deref(), Some("0.2.130"));
        assert_eq!(locked_version(lock, "wasm"), None);
    }
}
