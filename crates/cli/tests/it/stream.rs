//! Thousands of lines in one run: every one is answered, in order, whatever stands between.

use std::io::{self, BufReader, Read};

use serde_json::{Value, json};

use crate::support::{demo, jsonl};

fn answers(input: impl Read) -> Vec<Value> {
    let mut output = Vec::new();
    shimwright_cli::advise_lines(BufReader::new(input), &mut output).unwrap();
    jsonl(&String::from_utf8(output).unwrap())
}

#[test]
fn five_thousand_lines_are_answered_in_order() {
    let mut input = Vec::new();
    for number in 0..5000 {
        let mut line = demo();
        line["case"] = json!(number);
        match number % 5 {
            1 => line["checks"][1]["low"] = json!("0.9"),
            2 => line["frozen"] = json!(["B7"]),
            _ => {}
        }
        match number % 5 {
            3 => input.extend(format!("not a case, {number}").bytes()),
            _ => input.extend(line.to_string().bytes()),
        }
        input.extend(if number % 7 == 0 { b"\r\n\n  \n".as_slice() } else { b"\n" });
    }
    let answers = answers(input.as_slice());
    assert_eq!(answers.len(), 5000);
    for (number, answer) in answers.iter().enumerate() {
        match number % 5 {
            3 => assert_eq!(answer["case"], Value::Null),
            _ => assert_eq!(answer["case"], number),
        }
        assert_eq!(answer["status"] == "fit", matches!(number % 5, 0 | 4), "{answer}");
        assert_eq!(answer["error"].is_string(), matches!(number % 5, 1..=3), "{answer}");
    }
}

#[test]
fn a_line_too_long_is_passed_over() {
    // Twice the longest line, made as it is read.
    let long = io::repeat(b'7').take(8 * 1024 * 1024);
    let input = long.chain(io::Cursor::new(format!("\n{}\n", demo())));
    let answers = answers(input);
    assert_eq!(answers.len(), 2);
    assert!(answers[0]["error"].as_str().unwrap().contains("expected a shorter one"));
    assert_eq!(answers[1]["status"], "fit");
}

#[test]
fn bytes_that_are_no_text_are_refused() {
    let mut input = b"{\"case\":\"caf\xe9\"}\n\xff\xfe\n".to_vec();
    input.extend(demo().to_string().bytes());
    let answers = answers(input.as_slice());
    assert_eq!(answers.len(), 3);
    assert!(answers[0]["error"].as_str().unwrap().contains("no text after byte 12"));
    assert!(answers[1]["error"].as_str().unwrap().contains("no text after byte 0"));
    assert_eq!(answers[2]["status"], "fit");
}

#[test]
fn a_byte_order_mark_and_blank_lines_are_passed_over() {
    let answers = answers(format!("\u{feff}{}\n\n \t\n", demo()).as_bytes());
    assert_eq!(answers.len(), 1);
    assert_eq!(answers[0]["status"], "fit");
}
