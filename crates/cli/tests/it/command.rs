//! The command itself.

use std::io::Write;
use std::process::{Command, Output, Stdio};

fn run(arguments: &[&str], input: &str) -> Output {
    let mut child = Command::new(env!("CARGO_BIN_EXE_shimwright"))
        .args(arguments)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    child.stdin.take().unwrap().write_all(input.as_bytes()).unwrap();
    child.wait_with_output().unwrap()
}

fn text(bytes: &[u8]) -> String {
    String::from_utf8(bytes.to_vec()).unwrap()
}

#[test]
fn help_and_version() {
    for argument in ["--help", "-h"] {
        let output = run(&[argument], "");
        assert!(output.status.success());
        assert!(text(&output.stdout).contains("Usage: shimwright advise [FILE]"));
    }
    let output = run(&["--version"], "");
    assert_eq!(text(&output.stdout), format!("shimwright {}\n", env!("CARGO_PKG_VERSION")));
}

#[test]
fn what_it_does_not_know_it_says() {
    for (arguments, sentence) in [
        (
            &["advice"][..],
            "shimwright: found \"advice\", expected advise, bench, simulate, check, export, report, --help or --version\n",
        ),
        (
            &[][..],
            "shimwright: found no command, expected shimwright advise, bench, simulate, check, export or report\n",
        ),
        (&["advise", "a", "b"][..], "shimwright: found 2 files, expected one at most\n"),
    ] {
        let output = run(arguments, "");
        assert_eq!(output.status.code(), Some(2));
        assert_eq!(text(&output.stderr), sentence);
        assert!(output.stdout.is_empty());
    }
    let output = run(&["advise", "no-such-file.jsonl"], "");
    assert_eq!(output.status.code(), Some(2));
    assert!(text(&output.stderr).starts_with("shimwright: cannot open no-such-file.jsonl: "));
}

#[test]
fn lines_from_standard_input_and_from_a_file() {
    let golden = format!("{}/../../tests/golden/jobs.jsonl", env!("CARGO_MANIFEST_DIR"));
    let lines = std::fs::read_to_string(golden).unwrap();
    let inputs: Vec<String> = lines
        .lines()
        .map(|line| serde_json::from_str::<serde_json::Value>(line).unwrap()["line"].to_string())
        .collect();
    let from_input = run(&["advise"], &inputs.join("\n"));
    assert!(from_input.status.success());
    assert_eq!(text(&from_input.stdout).lines().count(), 2);

    let path = format!("{}/jobs.jsonl", env!("CARGO_TARGET_TMPDIR"));
    std::fs::write(&path, inputs.join("\r\n")).unwrap();
    let from_file = run(&["advise", &path], "");
    assert_eq!(text(&from_file.stdout), text(&from_input.stdout));
}

#[test]
fn simulate_writes_one_report() {
    let output = run(&["simulate", "--cases", "5", "--seed", "3", "--geometry", "unknown"], "");
    assert!(output.status.success(), "{}", text(&output.stderr));
    let report: serde_json::Value = serde_json::from_slice(&output.stdout).unwrap();
    assert_eq!((&report["cases"], &report["geometry"]), (&5.into(), &"unknown".into()));
    let ratio = report["ratio_of_means"].as_f64().unwrap();
    let means = ["advice", "one_by_one"].map(|who| report[who]["mean_builds"].as_f64().unwrap());
    assert!((ratio - means[0] / means[1]).abs() < 1e-3);
    let help = run(&["simulate", "--help"], "");
    assert!(text(&help.stdout).contains("Usage: shimwright simulate [OPTIONS]"));
}

#[test]
fn simulate_says_which_option_it_does_not_know() {
    for (options, sentence) in [
        (
            &["--cases", "many"][..],
            "found \"many\" after --cases, expected a whole number from 1 to 1000000",
        ),
        (&["--cases", "0"], "found \"0\" after --cases, expected a whole number from 1 to 1000000"),
        (
            &["--seed"],
            "found nothing after --seed, expected a whole number from 0 to 18446744073709551615",
        ),
        (&["--layout", "z"], "found \"z\" after --layout, expected one of a, b, c, d, e"),
        (
            &["--geometry", "maybe"],
            "found \"maybe\" after --geometry, expected one of known, unknown",
        ),
        (
            &["--fault", "none"],
            "found \"none\" after --fault, expected one of wrong-sign, mislabelled, unseated, swapped",
        ),
        (
            &["--quick"],
            "found \"--quick\", expected --cases, --seed, --layout, --geometry, --fault or --help",
        ),
    ] {
        let output = run(&[&["simulate"], options].concat(), "");
        assert_eq!(output.status.code(), Some(2));
        assert_eq!(text(&output.stderr), format!("shimwright: {sentence}\n"));
        assert!(output.stdout.is_empty());
    }
}
