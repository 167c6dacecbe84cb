//! What must be on the machine before a build or a test, checked and installed.

mod chromium;
pub mod npm;
pub mod rust;
mod tool;

use std::env;
use std::ffi::OsString;
use std::path::PathBuf;
use std::process::Command;
use std::thread;

use crate::bundle::Make;
use crate::paths;
use crate::run::Outcome;

/// Folders that go in front of PATH, so that exactly the pinned tools are found.
pub struct Tools {
    path: OsString,
}

impl Tools {
    fn new(mut folders: Vec<PathBuf>) -> Outcome<Self> {
        folders.push(paths::tests().join("node_modules/.bin"));
        folders.extend(env::var_os("PATH").iter().flat_map(env::split_paths));
        let path = env::join_paths(folders)
            .map_err(|_| "A folder on PATH has a colon in its name; rename it.".to_owned())?;
        Ok(Self { path })
    }

    /// A command at the top of the working tree that finds the pinned tools.
    pub fn command(&self, program: &str, arguments: &[&str]) -> Command {
        let mut command = Command::new(program);
        command.current_dir(paths::root()).env("PATH", &self.path).args(arguments);
        command
    }
}

/// Everything `cargo xtask build` needs; the app is compiled in the meantime.
pub fn for_building(make: Make) -> Outcome<Tools> {
    install(|| rust::compile_app(make.profile()))
}

/// Everything the tests need besides: a browser and its driver, formatting and lints.
pub fn for_testing() -> Outcome<Tools> {
    chromium::ensure()?;
    rust::ensure_component("rustfmt")?;
    rust::ensure_component("clippy")?;
    // An app that does not compile is for the report to count, not for the setup to stop at.
    install(|| Ok(()))
}

/// Trunk is compiled on one side, wasm-bindgen and then `meanwhile` on the other: two cores stay
/// busy through the parts that only use one.
fn install(meanwhile: impl FnOnce() -> Outcome) -> Outcome<Tools> {
    npm::check_node()?;
    rust::ensure_target()?;
    let version = rust::wasm_bindgen_version()?;
    let folders = thread::scope(|scope| {
        let trunk = scope.spawn(tool::ensure_trunk);
        npm::ensure_packages(&paths::tests())?;
        let bindgen = tool::ensure_wasm_bindgen(&version)?;
        let split = tool::ensure_wasm_split()?;
        meanwhile()?;
        let trunk = trunk.join().map_err(|_| "Installing trunk stopped half way.".to_owned())??;
        Ok::<_, String>([trunk, bindgen, split].into_iter().flatten().collect())
    })?;
    Tools::new(folders)
}
