//! The service worker's list of files.

use super::files::Precached;
use crate::digest;
use crate::run::Outcome;

/// One name for exactly this set of files.
pub fn version(list: &[Precached]) -> String {
    digest::short(lines(list).as_bytes())
}

/// The worker with its version and list filled in.
pub fn with_list(script: &str, list: &[Precached], version: &str) -> Outcome<String> {
    let script =
        replaced(script, "const VERSION = \"dev\";", &format!("const VERSION = \"{version}\";"))?;
    replaced(&script, "const FILES = [];", &format!("const FILES = [\n{}];", lines(list)))
}

fn lines(list: &[Precached]) -> String {
    let line = |file: &Precached| {
        format!("  [\"{}\", \"{}\", {}],\n", file.address, file.integrity, file.hashed)
    };
    list.iter().map(line).collect()
}

fn replaced(script: &str, from: &str, to: &str) -> Outcome<String> {
    if script.matches(from).count() == 1 {
        Ok(script.replace(from, to))
    } else {
        Err(format!("public/sw.js must hold `{from}` exactly once."))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn file(address: &str, integrity: &str) -> Precached {
        Precached { address: address.into(), integrity: integrity.into(), hashed: false }
    }

    #[test]
    fn another_content_is_another_version() {
        assert_ne!(version(&[file("/", "sha256-a")]), version(&[file("/", "sha256-b")]));
        assert_eq!(version(&[file("/", "sha256-a")]), version(&[file("/", "sha256-a")]));
    }

    #[test]
    fn the_shipped_worker_takes_its_list() {
        let script = include_str!("../../../../public/sw.js");
        let filled = with_list(script, &[file("/", "sha256-a")], "v1").unwrap();
        assert!(filled.contains("const VERSION = \"v1\";"));
        assert!(filled.contains("[\"/\", \"sha256-a\", false],"));
    }
}
