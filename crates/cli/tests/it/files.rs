//! Backups read by the command.

use std::process::{Command, Output};

fn run(arguments: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_shimwright")).args(arguments).output().unwrap()
}

fn golden(name: &str) -> String {
    format!("{}/../../tests/wire/{name}", env!("CARGO_MANIFEST_DIR"))
}

fn said(output: &Output) -> &str {
    std::str::from_utf8(&output.stdout).unwrap()
}

#[test]
fn a_backup_is_told_book_by_book() {
    let output = run(&["check", &golden("backup-v1.jsonl")]);
    assert_eq!(
        said(&output),
        "Backup of everything, made 12 May 2026 by version 0.1.0.\n\
         Job 27, Grey Heron: 3 entries.\n\
         Invented unit: 1 entry.\n\
         1 photo.\n\
         Not understood, kept as it is: {\"v\":99,\"book\":\"job:j\",\"id\":\"z.0\",\"n\":27,\
         \"device\":\"newer\",\"at\":1778580000000,\"fact\":{\"thing-done\":{}}}\n\
         The file is all there.\n"
    );
    // Something in it is not understood by this version.
    assert_eq!(output.status.code(), Some(1));
}

#[test]
fn a_bare_list_is_read_and_missing_photos_are_named() {
    let output = run(&["check", &golden("entries-v2.jsonl")]);
    assert_eq!(output.status.code(), Some(0));
    assert!(said(&output).contains("Photo p4 is named by an entry and is not in the file.\n"));
    assert!(said(&output).ends_with("nothing in it says whether it is all there.\n"));
}

#[test]
fn readings_come_out_as_a_table_and_as_text() {
    let file = golden("entries-v1.jsonl");
    let table = run(&["export", &file, "--csv"]);
    assert!(table.status.success());
    assert!(said(&table).starts_with("job,boat,unit,written,device,what,kind,place,value,"));
    assert!(said(&table).contains(",Pinion depth gap,reading,1,0.0280,in,0.7112"));
    let page = run(&["export", &file, "--text"]);
    assert!(said(&page).contains("Owner rang."));
}

#[test]
fn what_is_no_backup_is_refused_with_a_sentence() {
    let output = run(&["check", &golden("../golden/g1.json")]);
    assert_eq!(output.status.code(), Some(2));
    let said = String::from_utf8(output.stderr).unwrap();
    assert!(said.starts_with("shimwright: The file begins with “{”"), "{said}");
    for wrong in [&["check"][..], &["export", "x"], &["export", "x", "--pdf"]] {
        let output = run(wrong);
        assert_eq!(output.status.code(), Some(2));
        assert!(String::from_utf8(output.stderr).unwrap().contains("shimwright export FILE --csv"));
    }
}
