//! The licences of everything that is compiled into the app, as their terms ask.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

use crate::paths;
use crate::run::{self, Outcome};
use crate::setup::Tools;
use crate::setup::rust::WASM;

/// One text: packages that share a licence text to the letter stand together above it.
pub fn collect(tools: &Tools) -> Outcome<String> {
    let tree = run::answer(&mut tools.command(
        "cargo",
        &[
            "tree",
            "--offline",
            "--package",
            "shimwright-web",
            "--target",
            WASM,
            "--edges",
            "normal",
            "--prefix",
            "none",
            "--no-dedupe",
            "--format",
            "{p}|{l}",
        ],
    ))
    .ok_or("`cargo tree` gave no answer, so the licences could not be collected.")?;

    let mut texts: BTreeMap<String, Vec<String>> = BTreeMap::new();
    for package in packages(&tree) {
        let text =
            licence_text(&package.folder()).unwrap_or_else(|| standard_text(package.licence));
        texts
            .entry(text)
            .or_default()
            .push(format!("{} ({})", package.name_version, package.licence));
    }
    let mut out = String::from(
        "Shimwright is under the MIT or the Apache 2.0 licence, as you choose.\n\
         It is compiled together with the packages below, which keep their own licences.\n",
    );
    for (text, packages) in texts {
        out.push_str(&format!(
            "\n{}\n{}\n\n{}\n",
            "=".repeat(72),
            packages.join("\n"),
            text.trim_end()
        ));
    }
    Ok(out)
}

struct Package<'a> {
    name_version: String,
    licence: &'a str,
}

/// Packages from elsewhere that end up in the app; macros run at build time only.
fn packages(tree: &str) -> Vec<Package<'_>> {
    let mut lines: Vec<&str> = tree
        .lines()
        .filter(|line| !line.contains("(proc-macro)") && !line.contains("(/"))
        .collect();
    lines.sort_unstable();
    lines.dedup();
    lines
        .into_iter()
        .filter_map(|line| {
            let (package, licence) = line.split_once('|')?;
            let (name, version) = package.trim().split_once(" v")?;
            Some(Package { name_version: format!("{name}-{}", version.trim()), licence })
        })
        .collect()
}

impl Package<'_> {
    fn folder(&self) -> PathBuf {
        let sources = fs::read_dir(paths::cargo_home().join("registry/src"));
        let mut folders = sources.into_iter().flatten().filter_map(|source| {
            let folder = source.ok()?.path().join(&self.name_version);
            folder.is_dir().then_some(folder)
        });
        folders.next().unwrap_or_default()
    }
}

/// The MIT text where there is a choice: it is the shortest that suffices.
fn licence_text(folder: &Path) -> Option<String> {
    let mut names: Vec<PathBuf> = fs::read_dir(folder)
        .into_iter()
        .flatten()
        .filter_map(|entry| Some(entry.ok()?.path()))
        .filter(|path| {
            let name = path.file_name().unwrap_or_default().to_string_lossy().to_uppercase();
            name.starts_with("LICEN")
                || name.starts_with("COPYING")
                || name.starts_with("UNLICENSE")
        })
        .collect();
    names
        .sort_by_key(|path| (!path.to_string_lossy().to_uppercase().contains("MIT"), path.clone()));
    names.first().and_then(|path| fs::read_to_string(path).ok())
}

/// For packages that name the MIT licence and leave its text out.
fn standard_text(licence: &str) -> String {
    let no_text = "The package carries no licence text; the name above is its licence.".to_owned();
    let terms = include_str!("../../../LICENSE-MIT").split_once("Permission is");
    match terms {
        Some((_, terms)) if licence.contains("MIT") => {
            format!("{no_text}\n\nPermission is{terms}")
        }
        _ => no_text,
    }
}

#[cfg(test)]
mod tests {
    use super::packages;

    #[test]
    fn own_packages_and_macros_are_left_out() {
        let tree = "shimwright-web v0.1.0 (/home/me/web)|MIT\nleptos v0.8.23|MIT\nleptos v0.8.23|MIT\n\
                    serde_derive v1.0.1 (proc-macro)|MIT OR Apache-2.0";
        let found = packages(tree);
        let names: Vec<&str> = found.iter().map(|package| package.name_version.as_str()).collect();
        assert_eq!(names, ["leptos-0.8.23"]);
    }
}
