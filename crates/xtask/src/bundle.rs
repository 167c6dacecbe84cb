//! From sources to `dist/`.

use crate::run::{self, Outcome};
use crate::setup::Tools;
use crate::{finish, paths, styles};

/// Builds the release app and finishes it.
pub fn build(tools: &Tools) -> Outcome {
    styles::join(&paths::root().join("web"))?;
    // A NO_COLOR that is set but not `true` or `false` stops this version of Trunk.
    run::succeed(tools.command("trunk", &["--log", "warn", "build"]).env_remove("NO_COLOR"))?;
    finish::finish(tools, &paths::dist())
}
