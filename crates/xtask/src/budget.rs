//! How much a first visit downloads, and the most it may.

use std::fs;
use std::path::Path;

use crate::paths;
use crate::run::Outcome;

/// What the whole first visit may be, compressed: 180 kB. `cargo xtask ci` fails over it.
const LIMIT: u64 = 180_000;

/// What it is allowed until that is reached. It only ever goes down.
const CEILING: u64 = 500_000;

/// Prints what a first visit downloads; over the ceiling it is a failure.
pub fn report() -> Outcome {
    let total = printed()?;
    if total > LIMIT {
        println!("The first visit is {} bytes over its target of {LIMIT}.", total - LIMIT);
    }
    within(total, CEILING)
}

/// Prints what a first visit downloads; over the target it is a failure.
pub fn target() -> Outcome {
    within(printed()?, LIMIT)
}

fn printed() -> Outcome<u64> {
    let rows = first_visit(&paths::dist())?;
    println!("\nFirst visit, as sent (brotli where it helps):");
    for (name, bytes) in &rows {
        println!("{bytes:>9}  {name}");
    }
    let total: u64 = rows.iter().map(|(_, bytes)| bytes).sum();
    println!("{total:>9}  in all\n");
    Ok(total)
}

fn within(total: u64, most: u64) -> Outcome {
    if total <= most {
        return Ok(());
    }
    Err(format!(
        "The first visit is {} bytes over {most}. \
         Find what grew above and make it smaller, or load it later.",
        total - most
    ))
}

/// Everything the page, the browser's install check and the worker ask for.
///
/// Files with fixed names count twice where the worker fetches its own fresh copy.
fn first_visit(dist: &Path) -> Outcome<Vec<(String, u64)>> {
    let worker = fs::read_to_string(dist.join("sw.js"))
        .map_err(|_| "There is no finished dist/ yet. Type: cargo xtask build".to_owned())?;
    let mut rows = vec![row(dist, "sw.js", "")?];
    for line in worker.lines().filter(|line| line.starts_with("  [\"/")) {
        let address = line.split('"').nth(1).unwrap_or_default();
        let name = if address == "/" { "index.html" } else { address.trim_start_matches('/') };
        rows.push(row(dist, name, "")?);
        if line.ends_with("false],") {
            rows.push(row(dist, name, " (again, kept by the worker)")?);
        }
    }
    rows.sort_by_key(|(_, bytes)| std::cmp::Reverse(*bytes));
    Ok(rows)
}

fn row(dist: &Path, name: &str, note: &str) -> Outcome<(String, u64)> {
    let size = |name: &str| fs::metadata(dist.join(name)).map(|file| file.len());
    size(&format!("{name}.br"))
        .or_else(|_| size(name))
        .map(|bytes| (format!("{name}{note}"), bytes))
        .map_err(|cause| format!("dist/{name} is not readable: {cause}."))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_compressed_file_counts_as_it_is_sent_and_fixed_names_count_twice() {
        let dist = std::env::temp_dir().join(format!("budget-{}", std::process::id()));
        fs::create_dir_all(&dist).unwrap();
        let worker = "const FILES = [\n  [\"/\", \"s\", false],\n  [\"/a-1.js\", \"s\", true],\n];";
        for (name, text) in [
            ("sw.js", worker),
            ("index.html", "0123456789"),
            ("index.html.br", "012"),
            ("a-1.js", "0123456"),
        ] {
            fs::write(dist.join(name), text).unwrap();
        }
        let rows = first_visit(&dist).unwrap();
        let total: u64 = rows.iter().map(|(_, bytes)| bytes).sum();
        fs::remove_dir_all(&dist).unwrap();
        assert_eq!(total, worker.len() as u64 + 3 + 3 + 7);
    }
}
