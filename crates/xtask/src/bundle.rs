//! From sources to `dist/`.

use crate::run::{self, Outcome};
use crate::setup::{Tools, rust};
use crate::{code, finish, paths, styles};

/// Builds the release app and finishes it.
pub fn build(tools: &Tools) -> Outcome {
    styles::join(&paths::root().join("web"))?;
    rust::compile_app()?;
    // A NO_COLOR that is set but not `true` or `false` stops this version of Trunk.
    run::succeed(tools.command("trunk", &["--log", "error", "build"]).env_remove("NO_COLOR"))?;
    let code = code::pack(tools, &paths::dist())?;
    finish::finish(tools, &paths::dist(), &code)
}
