//! The record as HTML: what the record screen shows, and one file that opens anywhere.
//!
//! The file holds everything it shows: style, pictures, photos. It runs nothing and asks for
//! nothing, and says so to the browser. All that was typed goes through one escaping.

mod checks;
mod done;
mod html;
mod icon;
mod leaf;
mod owner;
mod work;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use pictures::svg::{HATCHES, INKS};
use sha2::{Digest, Sha256};
use words::say;

use crate::{InvoiceLine, Owner, Record, Shown, clock};
use html::typed;

/// The style of the file. All but the last is the app's style too.
const STYLES: [&str; 8] = [
    include_str!("report/styles/tokens.css"),
    INKS,
    include_str!("report/styles/base.css"),
    include_str!("report/styles/table.css"),
    include_str!("report/styles/state.css"),
    include_str!("report/styles/tag.css"),
    include_str!("report/styles/leaf.css"),
    include_str!("report/styles/file.css"),
];

/// What a record is made of on paper.
#[derive(Clone, Copy, Debug)]
pub struct Paper<'a> {
    /// The record.
    pub record: &'a Record,
    /// The same for the owner.
    pub owner: &'a Owner,
    /// Lines for the invoice.
    pub invoice: &'a [InvoiceLine],
    /// Units, decimal mark and distance from UTC.
    pub shown: Shown,
    /// The day it was made: milliseconds since 1970, UTC.
    pub at: i64,
}

/// Where the picture of a photo is, by its id; `None` where it is not at hand.
pub type Photos<'a> = &'a dyn Fn(&str) -> Option<String>;

/// The leaves, as they stand in a page that has the style.
pub fn body(paper: &Paper, photos: Photos) -> String {
    let measured = owner::boxes(paper) + &checks::table(paper) + &checks::packs(paper);
    let first = leaf::first(paper, &measured);
    if !paper.record.not_recorded.is_empty() {
        // A set-up alone: what was done fits above cautions and signatures.
        let rest = leaf::further(paper) + &done::history(paper) + &done::end(paper);
        return first + &leaf::next(paper, &rest);
    }
    let leaves = [
        first,
        leaf::next(paper, &(leaf::further(paper) + &work::leaf(paper, photos) + &done::end(paper))),
    ];
    leaves.concat() + &done::leaves(paper)
}

/// One file with everything in it. `photos` gives each photo as a `data:` address.
pub fn file(paper: &Paper, photos: Photos) -> String {
    let record = paper.record;
    let title = typed(&say!(
        "Job {number} · {boat} · gearcase record",
        number = record.number,
        boat = record.boat
    ));
    let style = STYLES.concat();
    let hash = STANDARD.encode(Sha256::digest(style.as_bytes()));
    let (body, language) = (body(paper, photos), words::language());
    format!(
        "<!doctype html>\n<html lang=\"{language}\">\n<head>\n<meta charset=\"utf-8\">\n\
         <meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'; \
         style-src 'sha256-{hash}'; img-src data:; base-uri 'none'; form-action 'none'\">\n\
         <meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n\
         <meta name=\"referrer\" content=\"no-referrer\">\n\
         <title>{title}</title>\n<style>{style}</style>\n</head>\n<body>\n{HATCHES}\n\
         <main class=\"paper\">\n{body}</main>\n</body>\n</html>\n"
    )
}

/// The name of the file: `job-27-grey-heron-2026-05-12.html`. Letters of any language stay; what a
/// file system may not take is left out.
pub fn file_name(record: &Record, shown: Shown, at: i64) -> String {
    let kept = |letter: char| if letter.is_alphanumeric() { letter } else { ' ' };
    let boat: String = record.boat.chars().take(40).map(kept).collect();
    let words: Vec<String> = boat.split_whitespace().map(str::to_lowercase).collect();
    let day = clock::iso_minute(at, shown.utc_offset);
    let day = day.split(' ').next().unwrap_or_default();
    format!("job-{}-{}-{day}.html", record.number, words.join("-"))
}
