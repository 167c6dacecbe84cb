//! Which files one version of the app consists of.

use std::fs;
use std::path::Path;

use crate::digest;
use crate::run::Outcome;

/// A file the worker keeps on the device.
#[derive(Debug)]
pub struct Precached {
    /// Its path on the site, starting with `/`.
    pub address: String,
    /// Its digest, as an integrity attribute has it.
    pub integrity: String,
    /// Whether its name changes with its content.
    pub hashed: bool,
}

/// Fixed names that the app needs without a signal; the page itself is `/`.
const FIXED: [(&str, &str); 4] = [
    ("/", "index.html"),
    ("/manifest.webmanifest", "manifest.webmanifest"),
    ("/icons/icon.svg", "icons/icon.svg"),
    ("/icons/icon-192.png", "icons/icon-192.png"),
];

/// The fixed files and every file with a hashed name.
///
/// The other icons stay out: a system takes its own copy when the app is installed. This one is
/// asked for again at every visit.
pub fn precached(dist: &Path) -> Outcome<Vec<Precached>> {
    let unreadable = |cause| format!("dist is not readable: {cause}.");
    let mut names: Vec<(String, String)> =
        FIXED.map(|(address, name)| (address.to_owned(), name.to_owned())).into();
    let mut hashed: Vec<String> = fs::read_dir(dist)
        .map_err(unreadable)?
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| is_hashed(name))
        .collect();
    hashed.sort();
    names.extend(hashed.into_iter().map(|name| (format!("/{name}"), name)));
    names
        .into_iter()
        .map(|(address, name)| {
            let bytes = fs::read(dist.join(&name))
                .map_err(|cause| format!("dist/{name} is not readable: {cause}."))?;
            let integrity = digest::integrity(&bytes);
            Ok(Precached { address, integrity, hashed: is_hashed(&name) })
        })
        .collect()
}

/// Trunk writes `name-HASH.ending`, up to 16 hexadecimal digits, with `_bg` before the ending for wasm.
fn is_hashed(name: &str) -> bool {
    let Some((stem, ending)) = name.rsplit_once('.') else { return false };
    let stem = stem.strip_suffix("_bg").unwrap_or(stem);
    let hash = stem.rsplit_once('-').map_or("", |(_, hash)| hash);
    matches!(ending, "js" | "css" | "wasm")
        && (12..=16).contains(&hash.len())
        && hash.bytes().all(|byte| byte.is_ascii_hexdigit())
}

#[cfg(test)]
mod tests {
    use super::is_hashed;

    #[test]
    fn hashed_names_are_told_from_fixed_ones() {
        assert!(is_hashed("app-0a1b2c3d4e5f6071.css"));
        assert!(is_hashed("shimwright-web-0a1b2c3d4e5f6071_bg.wasm"));
        for fixed in ["sw.js", "index.html", "shimwright-web.js", "app-0a1b2c3d4e5f6071.css.br"] {
            assert!(!is_hashed(fixed), "{fixed}");
        }
    }
}
