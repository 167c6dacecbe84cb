//! From sources to `dist/`.

use crate::run::{self, Outcome};
use crate::setup::{Tools, rust};
use crate::{code, finish, paths, styles, words};

/// How much trouble is taken over the size of the app.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Make {
    /// Small and compressed, as people get it.
    Release,
    /// Quick to build, for looking at while a screen is made.
    Draft,
}

impl Make {
    /// The Cargo profile, which also names its folder.
    pub fn profile(self) -> &'static str {
        match self {
            Make::Release => "release",
            Make::Draft => "draft",
        }
    }
}

/// Builds the app and finishes it.
pub fn build(tools: &Tools, make: Make) -> Outcome {
    styles::join(&paths::root().join("web"))?;
    words::fill_boot()?;
    rust::compile_app(make.profile())?;
    // A NO_COLOR that is set but not `true` or `false` stops this version of Trunk.
    run::succeed(tools.command("trunk", &["--log", "error", "build"]).env_remove("NO_COLOR"))?;
    let code = code::pack(tools, &paths::dist(), make)?;
    finish::finish(tools, &paths::dist(), &code, make)
}
