//! From the compiled app to the pieces a browser loads.
//!
//! The first page waits for one small piece; the others come behind it. The splitting reads the
//! relocations that `.cargo/config.toml` asks the linker to keep.

use std::fs;
use std::path::{Path, PathBuf};
use std::thread;

use crate::bundle::Make;
use crate::join::join;
use crate::run::{self, Outcome};
use crate::setup::Tools;
use crate::setup::rust::WASM;
use crate::{digest, paths};

/// Name of the app's package, and of its main piece.
const APP: &str = "shimwright-web";

/// What the page starts with; a file, so that the content policy needs no exception for it.
const START: &str = "import start from \"./shimwright-web.js\";\nawait start();\n";

/// Asked for by the page at once, in this order.
const FIRST: [&str; 4] =
    ["start.js", "shimwright-web.js", "__wasm_split.js", "shimwright-web_bg.wasm"];

/// Named one by one: with all of them on, binaryen writes a module that browsers refuse.
pub const FEATURES: [&str; 7] = [
    "--enable-bulk-memory",
    "--enable-bulk-memory-opt",
    "--enable-nontrapping-float-to-int",
    "--enable-sign-ext",
    "--enable-mutable-globals",
    "--enable-reference-types",
    "--enable-multivalue",
];

/// Splits the compiled app, binds, joins, optimises, and puts it into a folder of `dist` whose name
/// changes with its content. Returns that folder's name.
pub fn pack(tools: &Tools, dist: &Path, make: Make) -> Outcome<String> {
    let work = paths::target().join("pieces");
    let bound = work.join("bound");
    if work.exists() {
        fs::remove_dir_all(&work).map_err(|cause| unwritable(&work, &cause))?;
    }
    let compiled = paths::target().join(WASM).join(format!("{}/{APP}.wasm", make.profile()));
    let (from, split) = (text(&compiled), text(&work));
    run::succeed(&mut tools.command("wasm-split-cli", &[&from, &split, "--out-name", APP]))?;
    let (main, to) = (text(&work.join(format!("{APP}.wasm"))), text(&bound));
    let bind =
        ["--target", "web", "--no-typescript", "--keep-lld-exports", "--out-dir", &to, &main];
    run::succeed(&mut tools.command("wasm-bindgen", &bind))?;
    for name in names(&work)?.iter().filter(|name| *name != &format!("{APP}.wasm")) {
        fs::copy(work.join(name), bound.join(name)).map_err(|cause| unwritable(&bound, &cause))?;
    }
    join(tools, &bound)?;
    if make == Make::Release {
        optimise(tools, &bound)?;
    }
    fs::write(bound.join("start.js"), START).map_err(|cause| unwritable(&bound, &cause))?;
    settle(&bound, dist)
}

/// The lines of the page that ask for the first piece and start it.
pub fn asked_for(folder: &str) -> String {
    let mut lines = String::new();
    for name in FIRST {
        lines.push_str(&if name.ends_with(".js") {
            format!("<link rel=\"modulepreload\" href=\"/{folder}/{name}\">\n")
        } else {
            format!(
                "<link rel=\"preload\" href=\"/{folder}/{name}\" as=\"fetch\" \
                 type=\"application/wasm\" crossorigin>\n"
            )
        });
    }
    lines.push_str(&format!("<script type=\"module\" src=\"/{folder}/start.js\"></script>"));
    lines
}

/// Every piece on a thread of its own: there are few, and one is much the largest.
fn optimise(tools: &Tools, folder: &Path) -> Outcome {
    let pieces: Vec<PathBuf> = names(folder)?
        .iter()
        .filter(|name| name.ends_with(".wasm"))
        .map(|name| folder.join(name))
        .collect();
    thread::scope(|scope| {
        let running: Vec<_> =
            pieces.iter().map(|piece| scope.spawn(|| optimise_one(tools, piece))).collect();
        running.into_iter().try_for_each(|one| {
            one.join().map_err(|_| "Optimising a piece stopped half way.".to_owned())?
        })
    })
}

/// Makes one module small, in its place.
pub fn optimise_one(tools: &Tools, piece: &Path) -> Outcome {
    let file = text(piece);
    let mut words = vec!["-Oz", "--strip-debug", "--strip-producers"];
    words.extend(FEATURES);
    words.extend([file.as_str(), "-o", file.as_str()]);
    // It remarks on the name section, which is about to be dropped.
    run::succeed_logged(
        &mut tools.command("wasm-opt", &words),
        &piece.with_extension("optimise.log"),
    )?;
    fs::remove_file(piece.with_extension("optimise.log")).map_err(|cause| unwritable(piece, &cause))
}

/// Copies the pieces into `dist`, under a name made of all their contents.
fn settle(bound: &Path, dist: &Path) -> Outcome<String> {
    let mut contents = Vec::new();
    let names = names(bound)?;
    for name in &names {
        contents.extend_from_slice(name.as_bytes());
        contents.extend(fs::read(bound.join(name)).map_err(|cause| unwritable(bound, &cause))?);
    }
    let folder = format!("code-{}", digest::short(&contents));
    let to = dist.join(&folder);
    fs::create_dir_all(&to).map_err(|cause| unwritable(&to, &cause))?;
    for name in names {
        fs::copy(bound.join(&name), to.join(&name)).map_err(|cause| unwritable(&to, &cause))?;
    }
    Ok(folder)
}

/// The files of a folder, in order of name.
fn names(folder: &Path) -> Outcome<Vec<String>> {
    let mut names: Vec<String> = fs::read_dir(folder)
        .map_err(|cause| format!("{} is not readable: {cause}.", folder.display()))?
        .filter_map(Result::ok)
        .filter(|entry| entry.path().is_file())
        .filter_map(|entry| entry.file_name().into_string().ok())
        .collect();
    names.sort();
    Ok(names)
}

pub fn text(path: &Path) -> String {
    path.to_string_lossy().into_owned()
}

pub fn unwritable(path: &Path, cause: &std::io::Error) -> String {
    format!("{} is not writable: {cause}.", path.display())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_page_asks_for_every_first_file_and_runs_nothing_inline() {
        let lines = asked_for("code-0a1b2c3d4e5f");
        assert!(FIRST.iter().all(|name| lines.contains(&format!("\"/code-0a1b2c3d4e5f/{name}\""))));
        assert!(lines.contains("src=\"/code-0a1b2c3d4e5f/start.js\"></script>"));
    }
}
