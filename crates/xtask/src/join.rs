//! From the many files of the splitter to a few.
//!
//! It writes one for every set of pieces that share code: some eighty, most of them tiny, each a
//! request of its own. But every other piece comes after `work`, so what `work` shares with any of
//! them belongs to it; what the others share among themselves is one file, `shared`.

use std::fs;
use std::path::Path;

use crate::code::{FEATURES, text, unwritable};
use crate::run::{self, Outcome};
use crate::setup::Tools;

/// Where the splitter says which file needs which.
const SCRIPT: &str = "__wasm_split.js";
/// The module that all of them import from.
const FROM: &str = "__wasm_split";
/// What a joined module imports from instead: the same, but `wasm-merge` must not take it for one of
/// the modules it joins.
const FIRST: &str = "__wasm_first";
const IMPORTS: &str = "sharedImports = { __wasm_split: {  } };";

/// What the splitter wrote.
#[derive(Debug, PartialEq, Eq)]
struct Split<'a> {
    /// The part of its script that loads modules.
    loader: &'a str,
    /// The files that belong to `work`.
    work: Vec<String>,
    /// The files that others share.
    shared: Vec<String>,
    /// The pieces, by name.
    pieces: Vec<&'a str>,
}

impl<'a> Split<'a> {
    fn of(script: &'a str) -> Option<Split<'a>> {
        let (loader, _) = script.split_once("/* ")?;
        let (mut work, mut shared) = (Vec::new(), Vec::new());
        for part in script.split("/* ").skip(1) {
            let (sharing, rest) = part.split_once(" */\nconst __")?;
            let file = format!("{}.wasm", rest.split_once(' ')?.0);
            let list =
                if sharing.split(", ").any(|it| it == "work") { &mut work } else { &mut shared };
            list.push(file);
        }
        let loads = script.split("export const __wasm_split_load_").skip(1);
        let pieces = loads.filter_map(|rest| Some(rest.split_once(' ')?.0)).collect();
        loader.contains(IMPORTS).then_some(Split { loader, work, shared, pieces })
    }

    /// The script for the files as they are joined.
    fn script(&self) -> String {
        let joined = format!("{IMPORTS}\n        sharedImports.{FIRST} = sharedImports.{FROM};");
        let mut script = self.loader.replace(IMPORTS, &joined);
        let load = |file: &str, after: &str| {
            format!(
                "makeLoad(() => {{\n    const src = fetch(new URL(\"./{file}.wasm\", import.meta.url));\n    \
                 src.catch(() => {{}});\n    return async (imports) => \
                 (WebAssembly.instantiateStreaming(src, imports));\n}}, [{after}])"
            )
        };
        script += &format!("const work = {};\n", load("split_work", ""));
        script += &format!("const shared = {};\n", load("shared", ""));
        for piece in &self.pieces {
            let of_it = match *piece {
                "work" => "work".to_owned(),
                other => load(&format!("split_{other}"), "work, shared"),
            };
            script += &format!("export const __wasm_split_load_{piece} = wrapAsyncCb({of_it});\n");
        }
        script
    }
}

/// Joins the files of a folder.
pub fn join(tools: &Tools, folder: &Path) -> Outcome {
    let at = folder.join(SCRIPT);
    let script = fs::read_to_string(&at)
        .map_err(|cause| format!("{} is not readable: {cause}.", at.display()))?;
    let split = Split::of(&script).ok_or_else(|| {
        format!("{} is not as this version of the splitter writes it.", at.display())
    })?;
    let passed_on = folder.join("first.wasm");
    pass_on(tools, folder, &passed_on)?;
    let work = [&["split_work.wasm".to_owned()], &split.work[..]].concat();
    for (files, to) in [(&work, "split_work.wasm"), (&split.shared, "shared.wasm")] {
        merge(tools, folder, &passed_on, files, to)?;
    }
    fs::remove_file(&passed_on).map_err(|cause| unwritable(&passed_on, &cause))?;
    fs::write(&at, split.script()).map_err(|cause| unwritable(&at, &cause))
}

/// Writes a module that passes on what all import from the first piece, so that the joined module
/// has each of these imports once.
fn pass_on(tools: &Tools, folder: &Path, to: &Path) -> Outcome {
    let listing = folder.join("first.wat");
    let (work, wat, to) = (text(&folder.join("split_work.wasm")), text(&listing), text(to));
    let words = [&FEATURES[..], &[&work, "-o", &wat]].concat();
    run::succeed(&mut tools.command("wasm-dis", &words))?;
    let module =
        fs::read_to_string(&listing).map_err(|cause| format!("{wat} is not readable: {cause}."))?;
    fs::write(&listing, passing(&module)).map_err(|cause| unwritable(&listing, &cause))?;
    let words = [&FEATURES[..], &[&wat, "-o", &to]].concat();
    run::succeed(&mut tools.command("wasm-as", &words))?;
    fs::remove_file(&listing).map_err(|cause| unwritable(&listing, &cause))
}

/// The module that imports what `module` does, from the first piece, and exports it again.
fn passing(module: &str) -> String {
    let mut lines = String::new();
    let begins = format!("(import \"{FROM}\" \"");
    for (number, import) in
        module.lines().filter_map(|it| it.trim().strip_prefix(&begins)).enumerate()
    {
        // `memory" (memory $mimport$0 21))`: name, kind, its name in there, its type.
        let mut words = import.splitn(4, ' ');
        let (Some(name), Some(kind), Some(_), Some(is)) =
            (words.next(), words.next(), words.next(), words.next())
        else {
            continue;
        };
        lines += &format!("(import \"{FIRST}\" \"{name} {kind} ${number} {is}\n");
        lines += &format!("(export \"{name} {kind} ${number}))\n");
    }
    format!("(module\n{lines})\n")
}

/// Joins modules into one, and takes away those that went into it.
fn merge(tools: &Tools, folder: &Path, first: &Path, files: &[String], to: &str) -> Outcome {
    let joined = folder.join("joined.wasm");
    let mut words: Vec<String> = FEATURES.map(str::to_owned).to_vec();
    // A draft keeps its names, for profiles; optimising drops them.
    words.push("-g".to_owned());
    words.extend([text(first), FROM.to_owned()]);
    for file in files {
        words.extend([text(&folder.join(file)), file.clone()]);
    }
    words.extend(["-o".to_owned(), text(&joined)]);
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    run::succeed(&mut tools.command("wasm-merge", &words))?;
    for file in files.iter().map(|file| folder.join(file)) {
        fs::remove_file(&file).map_err(|cause| unwritable(&file, &cause))?;
    }
    fs::rename(&joined, folder.join(to)).map_err(|cause| unwritable(&joined, &cause))
}

#[cfg(test)]
mod tests {
    use super::*;

    const WRITTEN: &str = "let sharedImports;\nsharedImports = { __wasm_split: {  } };\n\
        function makeLoad(fetcher, deps) {}\n\
        /* guide, paper */\nconst __chunk_8 = makeLoad(() => {}, []);\n\
        /* guide, work */\nconst __chunk_9 = makeLoad(() => {}, []);\n\
        export const __wasm_split_load_work = wrapAsyncCb(makeLoad(() => {}, [__chunk_9]));\n\
        export const __wasm_split_load_guide = wrapAsyncCb(makeLoad(() => {}, [__chunk_8]));\n";

    #[test]
    fn what_work_shares_is_its_own_and_the_rest_is_one_file() {
        let split = Split::of(WRITTEN).unwrap();
        assert_eq!(
            (split.work.as_slice(), split.shared.as_slice()),
            (&["chunk_9.wasm".to_owned()][..], &["chunk_8.wasm".to_owned()][..])
        );
        assert_eq!(split.pieces, ["work", "guide"]);
    }

    #[test]
    fn the_script_loads_work_before_any_other_and_names_no_file_that_is_gone() {
        let script = Split::of(WRITTEN).unwrap().script();
        assert!(script.contains("export const __wasm_split_load_work = wrapAsyncCb(work);"));
        assert!(script.contains("split_guide.wasm") && script.contains("[work, shared]"));
        assert!(script.contains("sharedImports.__wasm_first = sharedImports.__wasm_split;"));
        assert!(!script.contains("chunk_"));
    }

    #[test]
    fn another_form_of_the_script_is_told() {
        assert_eq!(Split::of("function makeLoad() {}"), None);
        assert_eq!(Split::of(&WRITTEN.replace("{  }", "{}")), None);
    }

    #[test]
    fn what_is_imported_is_passed_on() {
        let module = " (import \"__wasm_split\" \"memory\" (memory $mimport$0 21))\n (func $0)\n \
            (import \"__wasm_split\" \"__wasm_split_shared0\" (global $gimport$0 (mut i32)))\n";
        assert_eq!(
            passing(module),
            "(module\n(import \"__wasm_first\" \"memory\" (memory $0 21))\n(export \"memory\" (memory $0))\n\
             (import \"__wasm_first\" \"__wasm_split_shared0\" (global $1 (mut i32)))\n\
             (export \"__wasm_split_shared0\" (global $1))\n)\n"
        );
    }
}
