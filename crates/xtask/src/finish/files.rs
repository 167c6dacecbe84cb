//! Which files one version of the app consists of.

use std::fs;
use std::path::Path;

use crate::digest;
use crate::run::Outcome;
use crate::words;

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

/// Procedures: a revision stands in each name and is never edited, so a name means one content.
const PROCEDURES: &str = "procedures";

/// The fixed files, the words of other languages, every file with a hashed name, the pieces of code
/// in the folder `code`, and the procedures.
///
/// The other icons stay out: a system takes its own copy when the app is installed. This one is
/// asked for again at every visit.
pub fn precached(dist: &Path, code: &str) -> Outcome<Vec<Precached>> {
    let mut names: Vec<(String, String)> =
        FIXED.map(|(address, name)| (address.to_owned(), name.to_owned())).into();
    let mut hashed = listed(dist)?;
    hashed.retain(|name| is_hashed(name));
    for folder in [code, PROCEDURES] {
        let names = listed(&dist.join(folder))?;
        hashed.extend(names.into_iter().map(|name| format!("{folder}/{name}")));
    }
    let mut words = listed(&dist.join(words::FOLDER))?;
    words.sort();
    names.extend(words.into_iter().map(|name| {
        let name = format!("{}/{name}", words::FOLDER);
        (format!("/{name}"), name)
    }));
    hashed.sort();
    names.extend(hashed.into_iter().map(|name| (format!("/{name}"), name)));
    names
        .into_iter()
        .map(|(address, name)| {
            let bytes = fs::read(dist.join(&name))
                .map_err(|cause| format!("dist/{name} is not readable: {cause}."))?;
            let integrity = digest::integrity(&bytes);
            let hashed = is_hashed(&name) || [code, PROCEDURES].iter().any(|f| name.starts_with(f));
            Ok(Precached { address, integrity, hashed })
        })
        .collect()
}

fn listed(folder: &Path) -> Outcome<Vec<String>> {
    let names = fs::read_dir(folder)
        .map_err(|cause| format!("{} is not readable: {cause}.", folder.display()))?
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok());
    Ok(names.collect())
}

/// Trunk writes `name-HASH.ending`, up to 16 hexadecimal digits.
fn is_hashed(name: &str) -> bool {
    let Some((stem, ending)) = name.rsplit_once('.') else { return false };
    let hash = stem.rsplit_once('-').map_or("", |(_, hash)| hash);
    matches!(ending, "js" | "css")
        && (12..=16).contains(&hash.len())
        && hash.bytes().all(|byte| byte.is_ascii_hexdigit())
}

#[cfg(test)]
mod tests {
    use super::is_hashed;

    #[test]
    fn hashed_names_are_told_from_fixed_ones() {
        assert!(is_hashed("app-0a1b2c3d4e5f6071.css"));
        assert!(is_hashed("boot-0a1b2c3d4e5f.js"));
        for fixed in ["sw.js", "index.html", "shimwright-web.js", "app-0a1b2c3d4e5f6071.css.br"] {
            assert!(!is_hashed(fixed), "{fixed}");
        }
    }
}
