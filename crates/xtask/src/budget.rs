//! How much a first visit waits for, and how much the whole app is.

use std::fs;
use std::path::Path;

use crate::paths;
use crate::run::Outcome;

/// All that the first screen of a first visit waits for, compressed.
const FIRST_LOAD: u64 = 180_000;

/// All that the worker keeps on the device, compressed. It comes behind the first screen, so this
/// only notices what grows by accident.
const WHOLE: u64 = 1_500_000;

/// Prints both, file by file; over either limit it is a failure.
pub fn report() -> Outcome {
    let dist = paths::dist();
    let page = read(&dist, "index.html")?;
    let first = asked_by(&page);
    let kept = kept_by(&read(&dist, "sw.js")?);
    println!("\nFirst load, as sent (brotli where it helps):");
    let loaded = printed(&dist, &first)?;
    let rest: Vec<String> = kept.into_iter().filter(|name| !first.contains(name)).collect();
    println!("\nWhat follows behind it, and is then kept on the device:");
    let whole = loaded + printed(&dist, &rest)?;
    println!("\n{loaded:>9}  first load, of {FIRST_LOAD}\n{whole:>9}  the whole app, of {WHOLE}\n");
    within("first load", loaded, FIRST_LOAD)?;
    within("whole app", whole, WHOLE)
}

fn printed(dist: &Path, names: &[String]) -> Outcome<u64> {
    let mut rows = names
        .iter()
        .map(|name| Ok((sent(dist, name)?, name)))
        .collect::<Outcome<Vec<(u64, &String)>>>()?;
    rows.sort_by_key(|(bytes, _)| std::cmp::Reverse(*bytes));
    for (bytes, name) in &rows {
        println!("{bytes:>9}  {name}");
    }
    Ok(rows.iter().map(|(bytes, _)| bytes).sum())
}

fn within(what: &str, total: u64, most: u64) -> Outcome {
    if total <= most {
        return Ok(());
    }
    Err(format!(
        "The {what} is {} bytes over {most}. \
         Find what grew above and make it smaller, or let it come later.",
        total - most
    ))
}

/// The page itself, the worker, and every file of this site that the page names.
fn asked_by(page: &str) -> Vec<String> {
    let mut names = vec!["index.html".to_owned(), "sw.js".to_owned()];
    for attribute in ["href=\"/", "src=\"/"] {
        let named = page.split(attribute).skip(1).filter_map(|rest| rest.split('"').next());
        names.extend(named.filter(|name| !name.is_empty()).map(str::to_owned));
    }
    names.sort();
    names.dedup();
    names
}

/// The files the worker keeps.
fn kept_by(worker: &str) -> Vec<String> {
    let lines = worker.lines().filter(|line| line.starts_with("  [\"/"));
    lines
        .map(|line| match line.split('"').nth(1).unwrap_or_default() {
            "/" => "index.html".to_owned(),
            address => address.trim_start_matches('/').to_owned(),
        })
        .collect()
}

fn sent(dist: &Path, name: &str) -> Outcome<u64> {
    let size = |name: &str| fs::metadata(dist.join(name)).map(|file| file.len());
    size(&format!("{name}.br"))
        .or_else(|_| size(name))
        .map_err(|cause| format!("dist/{name} is not readable: {cause}."))
}

fn read(dist: &Path, name: &str) -> Outcome<String> {
    fs::read_to_string(dist.join(name))
        .map_err(|_| "There is no finished dist/ yet. Type: cargo xtask build".to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_page_asks_for_itself_the_worker_and_what_it_names_once() {
        let page = "<link href=\"/a.css\"><link href=\"/b.js\"><script src=\"/b.js\"></script>\
                    <a href=\"/\">home</a><link href=\"https://elsewhere/c.js\">";
        assert_eq!(asked_by(page), ["a.css", "b.js", "index.html", "sw.js"]);
    }

    #[test]
    fn the_worker_keeps_what_its_list_names() {
        let worker = "const FILES = [\n  [\"/\", \"s\", false],\n  [\"/a-1.js\", \"s\", true],\n];";
        assert_eq!(kept_by(worker), ["index.html", "a-1.js"]);
    }

    #[test]
    fn over_the_limit_is_a_failure_that_says_by_how_much() {
        assert_eq!(within("first load", 5, 5), Ok(()));
        assert!(within("first load", 7, 5).unwrap_err().contains("2 bytes over 5"));
    }
}
