//! Everything the README promises, run and counted.

mod counted;
mod module;
mod python;

use std::fs;
use std::path::{Path, PathBuf};
use std::time::Instant;

use crate::bundle::Make;
use crate::report::Report;
use crate::run::{self, Outcome};
use crate::setup::rust::WASM;
use crate::setup::{self, Tools};
use crate::{budget, bundle, paths};
use counted::{Dialect, counted};
use python::Needed;

const WARNINGS: [&str; 3] = ["--", "-D", "warnings"];
const WEB: [&str; 4] = ["--package", "shimwright-web", "--target", WASM];

/// `cargo xtask test`, with the checks against libraries from outside where they are asked for: then
/// they must run.
pub fn test(with_libraries: bool) -> Outcome {
    let tools = setup::for_testing()?;
    let mut report = tests(&tools);
    if with_libraries {
        libraries(&tools, &mut report, Needed::Always);
    }
    report.finish()
}

/// `cargo xtask ci`: the tests, then documentation, checks against other programs, benchmark.
pub fn ci() -> Outcome {
    let tools = setup::for_testing()?;
    let mut report = tests(&tools);
    let mut doc = |name: &str, arguments: &[&str]| {
        heading(name);
        let mut command = cargo(&tools, &["doc", "--no-deps"], arguments);
        report.check(name, run::succeed(command.env("RUSTDOCFLAGS", "-D warnings")));
    };
    doc("documentation", &[]);
    doc("documentation, web", &WEB);
    solver(&tools, &mut report);
    libraries(&tools, &mut report, Needed::IfThere);
    plain_host(&tools, &mut report);
    first_visit(&tools, &mut report);
    if paths::root().join("tests/e2e/bench.mjs").exists() {
        heading("benchmark");
        let bench =
            |module| run::succeed(node(&tools, &["tests/e2e/bench.mjs"]).env("SPEED_WASM", module));
        report.check("benchmark", module::build(&tools).and_then(bench));
    }
    report.finish()
}

/// The advice against an integer-programming solver.
fn solver(tools: &Tools, report: &mut Report) {
    if let Some(command) = command(tools, report, &["--release"], "release/shimwright") {
        let check = ("advice against an integer-programming solver", "solver");
        python::check(tools, report, check, &command, Needed::IfThere);
    }
}

/// The bench checks against libraries of physics and statistics.
fn libraries(tools: &Tools, report: &mut Report, needed: Needed) {
    if let Some(command) = command(tools, report, &[], "debug/shimwright") {
        let check = ("bench checks against general-purpose libraries", "external");
        python::check(tools, report, check, &command, needed);
    }
}

/// The command built for the checks from outside; where it is, or nothing if it does not build.
fn command(tools: &Tools, report: &mut Report, profile: &[&str], at: &str) -> Option<PathBuf> {
    let target = paths::target();
    let name = "the command, for the checks from outside";
    heading(name);
    let folder = target.to_string_lossy();
    let package = ["--package", "shimwright-cli", "--target-dir", &folder];
    let built = run::succeed(&mut cargo(tools, &["build"], &[&package[..], profile].concat()));
    let stands = built.is_ok();
    report.check(name, built);
    stands.then(|| target.join(at))
}

/// The settings that the README gives for a plain host, in Debian's nginx.
fn plain_host(tools: &Tools, report: &mut Report) {
    const NGINX: &str = "/usr/sbin/nginx";
    let name = "the app on nginx";
    heading(name);
    if Path::new(NGINX).exists() {
        let mut command = node(tools, &["tests/nginx/check.mjs", NGINX]);
        report.add(counted(name, &mut command, Dialect::Tap));
    } else {
        println!("Not run: it needs nginx. To run it from now on, type: apt-get install nginx");
        report.not_run(name);
    }
}

/// A first visit as Lighthouse sees it; its packages are large, so only here.
fn first_visit(tools: &Tools, report: &mut Report) {
    let name = "a first visit, by Lighthouse";
    heading(name);
    match setup::npm::ensure_packages(&paths::tests().join("lighthouse")) {
        Ok(()) => {
            let mut command = node(tools, &["tests/lighthouse/check.mjs"]);
            report.add(counted(name, &mut command, Dialect::Tap));
        }
        Err(why) => report.check(name, Err(why)),
    }
}

/// `cargo xtask soak`: what takes too long for every day, on the app as it is in dist/.
pub fn soak() -> Outcome {
    const SECONDS: &str = "600";
    let tools = setup::for_testing()?;
    let mut report = Report::default();
    let name = "changed files, lines and numbers; files too large or too deep; the union of books";
    heading(name);
    let test = ["--package", "job", "--test", "it", "--", "soak", "is_a_union", "--nocapture"];
    let mut command = cargo(&tools, &["test"], &test);
    let done = run::succeed(command.arg("--test-threads=1").env("SOAK_SECONDS", SECONDS));
    report.check(name, done);
    for (name, script) in [
        ("killed browsers, two tabs, a full store, a full disk", "tests/e2e/soak.test.mjs"),
        ("a bench of 1,000 jobs", "tests/e2e/many.test.mjs"),
    ] {
        heading(name);
        let arguments = ["--test", "--test-reporter=spec", script];
        report.check(name, run::succeed(node(&tools, &arguments).env("SOAK", "1")));
    }
    report.finish()
}

/// One script of `tests/e2e`, by its name without the ending.
pub fn script(name: &str) -> Outcome {
    let tools = setup::for_testing()?;
    run::succeed(&mut node(&tools, &[&format!("tests/e2e/{name}.mjs")]))
}

fn tests(tools: &Tools) -> Report {
    let started = Instant::now();
    let mut report = Report::default();
    let mut check = |name: &str, command: &mut std::process::Command| {
        heading(name);
        report.check(name, run::succeed(command));
    };
    check("formatting", &mut cargo(tools, &["fmt", "--all", "--check"], &[]));
    check("lints", &mut cargo(tools, &["clippy", "--all-targets"], &WARNINGS));
    let web = [&WEB[..], &WARNINGS[..]].concat();
    check("lints, web", &mut cargo(tools, &["clippy", "--all-targets"], &web));

    heading("unit, property and documentation tests");
    let mut command = cargo(tools, &["test", "--no-fail-fast"], &[]);
    report.add(counted("unit, property and documentation tests", &mut command, Dialect::Cargo));

    if mentions(&paths::root().join("web"), "wasm_bindgen_test") {
        heading("component tests in the browser");
        let mut command = cargo(tools, &["test", "--no-fail-fast"], &WEB);
        command.env("CHROMEDRIVER", which(tools, "chromedriver"));
        report.add(counted("component tests in the browser", &mut command, Dialect::Cargo));
    }

    heading("release build");
    let built = bundle::build(tools, Make::Release);
    let stands = built.is_ok();
    report.check("release build", built);
    if stands {
        report.check("size of the first load", budget::report());
        browser_tests(tools, &mut report);
    }
    println!("\nTook {} s.", started.elapsed().as_secs());
    report
}

/// Real-browser tests: `tests/e2e/*.test.mjs`, one file after the other on two cores.
fn browser_tests(tools: &Tools, report: &mut Report) {
    let files: Vec<String> = fs::read_dir(paths::tests().join("e2e"))
        .into_iter()
        .flatten()
        .filter_map(|entry| entry.ok()?.file_name().into_string().ok())
        .filter(|name| name.ends_with(".test.mjs"))
        .map(|name| format!("tests/e2e/{name}"))
        .collect();
    if files.is_empty() {
        return;
    }
    heading("tests in a real browser");
    let mut command = node(tools, &["--test", "--test-reporter=tap", "--test-concurrency=1"]);
    report.add(counted("tests in a real browser", command.args(files), Dialect::Tap));
}

/// A Node script that may start the site for itself: see `tests/e2e/site.mjs`.
fn node(tools: &Tools, arguments: &[&str]) -> std::process::Command {
    let mut command = tools.command("node", arguments);
    command.env("CHROMIUM", which(tools, "chromium"));
    if let Ok(this) = std::env::current_exe() {
        command.env("SHIMWRIGHT_XTASK", this);
    }
    command
}

fn cargo(tools: &Tools, subcommand: &[&str], arguments: &[&str]) -> std::process::Command {
    tools.command("cargo", &[subcommand, arguments].concat())
}

fn which(tools: &Tools, program: &str) -> String {
    run::answer(&mut tools.command("sh", &["-c", &format!("command -v {program}")]))
        .unwrap_or_else(|| program.to_owned())
}

fn heading(name: &str) {
    println!("\n— {name} —");
}

/// Whether any Rust file below `folder` holds `word`.
fn mentions(folder: &Path, word: &str) -> bool {
    fs::read_dir(folder).into_iter().flatten().filter_map(|entry| Some(entry.ok()?.path())).any(
        |path| {
            let is_rust = path.extension().is_some_and(|ending| ending == "rs");
            let holds = || fs::read_to_string(&path).is_ok_and(|text| text.contains(word));
            (is_rust && holds()) || (path.is_dir() && mentions(&path, word))
        },
    )
}
