//! What is done to `dist/` after Trunk: policy, precache list, version, licences, compression.

mod files;
mod page;
mod worker;

use std::fs;
use std::path::Path;

use crate::bundle::Make;
use crate::run::{self, Outcome};
use crate::setup::Tools;
use crate::{headers, licences, words};

/// Finishes a fresh `dist/` whose pieces of code are in the folder `code`. The order matters: the worker's list holds the finished page's digest.
pub fn finish(tools: &Tools, dist: &Path, code: &str, make: Make) -> Outcome {
    write(dist, "licences.txt", &licences::collect(tools)?)?;

    let page = page::with_code(&read(dist, "index.html")?, code)?;
    page::forbid_inline(&page)?;
    write(dist, "index.html", &page::with_policy(&page, env!("CARGO_PKG_VERSION"))?)?;

    words::lay(dist)?;
    let list = files::precached(dist, code)?;
    let build = worker::version(&list);
    write(dist, "sw.js", &worker::with_list(&read(dist, "sw.js")?, &list, &build)?)?;
    let version = env!("CARGO_PKG_VERSION");
    write(dist, "version.json", &format!("{{\"version\":\"{version}\",\"build\":\"{build}\"}}\n"))?;

    let hashed = list.iter().filter(|file| file.hashed).map(|file| file.address.as_str());
    write(dist, headers::FILE, &headers::write(page::POLICY, hashed))?;
    if make == Make::Draft {
        return Ok(());
    }
    compress(tools, dist)
}

/// Node brings brotli and gzip along, so no compressor has to be compiled.
fn compress(tools: &Tools, dist: &Path) -> Outcome {
    let folder = dist.to_string_lossy().into_owned();
    run::succeed(&mut tools.command("node", &["crates/xtask/compress.mjs", &folder]))
}

fn read(dist: &Path, name: &str) -> Outcome<String> {
    fs::read_to_string(dist.join(name))
        .map_err(|cause| format!("dist/{name} is not readable: {cause}."))
}

fn write(dist: &Path, name: &str, text: &str) -> Outcome {
    fs::write(dist.join(name), text)
        .map_err(|cause| format!("dist/{name} is not writable: {cause}."))
}
