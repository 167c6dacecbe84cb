//! Files that outlive the app.

mod backup;
mod bring_in;
mod cards;
mod hostile;
mod schema;
mod soak;
mod union;
mod views;

use std::collections::BTreeMap;

use job::files::*;
use job::*;

use crate::bench::{Bench, TEN};

/// A file taken in whole: what it holds, and its photos.
pub fn taken(file: &[u8]) -> Result<(Parcel, Vec<Picture>), Refused> {
    let mut incoming = Incoming::new();
    let mut photos = Vec::new();
    for piece in file.chunks(1000) {
        photos.extend(incoming.push(piece)?);
    }
    let (parcel, last) = incoming.finish()?;
    photos.extend(last);
    Ok((parcel, photos))
}

/// A backup of books and photos.
pub fn backup<'a>(books: impl IntoIterator<Item = &'a Book>, photos: &[Picture]) -> String {
    let lines: Vec<&str> = books.into_iter().flat_map(Book::lines).collect();
    let head = Head {
        at: TEN,
        device: "phone".into(),
        app: "0.1.0".into(),
        holds: "everything".into(),
        entries: lines.len() as u32,
        photos: photos.len() as u32,
        part: (1, 1),
    };
    let (mut backup, mut file) = Backup::begin(&head);
    for line in lines {
        file += &backup.entry(line);
    }
    for photo in photos {
        file += &backup.photo(photo);
    }
    file + &backup.end()
}

/// What is here, as a comparison wants it.
pub fn here<'a>(books: impl IntoIterator<Item = &'a Book>) -> BTreeMap<String, Vec<String>> {
    let lines = |book: &Book| book.lines().map(str::to_owned).collect();
    books.into_iter().map(|book| (book.id().to_string(), lines(book))).collect()
}

/// The smallest thing that passes for a JPEG.
pub fn photo(id: &str) -> Picture {
    Picture { id: id.into(), bytes: [&[0xFF, 0xD8, 0xFF, 0xE0][..], id.as_bytes()].concat() }
}

pub fn demo() -> [Book; 3] {
    let Bench { sheet, tin, job, .. } = Bench::demo();
    [sheet, tin, job]
}
