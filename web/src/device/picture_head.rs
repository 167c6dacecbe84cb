//! What kind of file it is, by its first bytes: names and types that come with a file are only
//! what somebody says.

/// What the first bytes say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Head {
    /// JPEG, PNG or WebP; with how many pixels, where that stands in the first bytes.
    Picture {
        /// Width times height.
        pixels: Option<u64>,
    },
    /// SVG, or another text that begins like one.
    Drawing,
    /// Anything else.
    Other,
}

/// Looks at the first bytes of a file.
pub(super) fn head(bytes: &[u8]) -> Head {
    if bytes.starts_with(&[0xFF, 0xD8, 0xFF]) {
        return Head::Picture { pixels: jpeg(bytes) };
    }
    if bytes.starts_with(b"\x89PNG\r\n\x1a\n") {
        return Head::Picture { pixels: product(bytes, [16, 20], 4) };
    }
    if bytes.starts_with(b"RIFF") && bytes.get(8..12) == Some(b"WEBP") {
        return Head::Picture { pixels: None };
    }
    let start = bytes.trim_ascii_start();
    let start = start.strip_prefix(b"\xEF\xBB\xBF").unwrap_or(start);
    let is_text = start.starts_with(b"<?xml") || start.starts_with(b"<!");
    if start.starts_with(b"<svg") || (is_text && holds(bytes, b"<svg")) {
        return Head::Drawing;
    }
    Head::Other
}

/// Walks a JPEG's segments to the one that begins a frame (ITU-T T.81, B.2.2): length, precision,
/// then height and width.
fn jpeg(bytes: &[u8]) -> Option<u64> {
    let mut at = 2;
    loop {
        let [mark, kind] = *bytes.get(at..at + 2)? else { return None };
        if mark != 0xFF {
            return None;
        }
        match kind {
            0xC0..=0xC3 | 0xC5..=0xC7 | 0xC9..=0xCB | 0xCD..=0xCF => {
                return product(bytes, [at + 5, at + 7], 2);
            }
            // A fill byte before the next mark.
            0xFF => at += 1,
            _ => at += 2 + number(bytes, at + 2, 2)? as usize,
        }
    }
}

fn product(bytes: &[u8], places: [usize; 2], length: usize) -> Option<u64> {
    let [one, other] = places.map(|at| number(bytes, at, length));
    Some(one? * other?)
}

/// A whole number, its high byte first.
fn number(bytes: &[u8], at: usize, length: usize) -> Option<u64> {
    let bytes = bytes.get(at..at + length)?;
    Some(bytes.iter().fold(0, |sum, byte| sum << 8 | u64::from(*byte)))
}

fn holds(bytes: &[u8], part: &[u8]) -> bool {
    bytes.windows(part.len()).any(|window| window == part)
}

#[cfg(test)]
mod tests {
    use wasm_bindgen_test::wasm_bindgen_test as test;

    use super::*;

    #[test]
    fn a_picture_is_known_by_its_first_bytes_and_tells_its_pixels() {
        let mut png = b"\x89PNG\r\n\x1a\n\0\0\0\x0dIHDR".to_vec();
        png.extend([0, 0, 0x23, 0x28, 0, 0, 0x1A, 0x0A]);
        assert_eq!(head(&png), Head::Picture { pixels: Some(9000 * 6666) });
        // An application segment of 4 bytes, a fill byte, then a progressive frame of 8000 × 7500.
        let jpeg = [
            0xFF, 0xD8, 0xFF, 0xE0, 0, 4, 1, 2, 0xFF, 0xFF, 0xC2, 0, 17, 8, 0x1D, 0x4C, 0x1F, 0x40,
        ];
        assert_eq!(head(&jpeg), Head::Picture { pixels: Some(60_000_000) });
        assert_eq!(head(b"RIFF\0\0\0\0WEBPVP8 "), Head::Picture { pixels: None });
    }

    #[test]
    fn drawings_and_other_files_are_told_apart() {
        for drawing in
            ["<svg xmlns=''>", "\n <svg>", "<?xml version='1.0'?><svg>", "<!-- x --><svg>"]
        {
            assert_eq!(head(drawing.as_bytes()), Head::Drawing, "{drawing}");
        }
        for other in ["", "GIF89a", "%PDF-1.7", "<html><svg>", "plain words"] {
            assert_eq!(head(other.as_bytes()), Head::Other, "{other}");
        }
    }

    #[test]
    fn a_cut_off_picture_tells_no_size() {
        assert_eq!(head(&[0xFF, 0xD8, 0xFF, 0xC0, 0]), Head::Picture { pixels: None });
        assert_eq!(head(&[0xFF, 0xD8, 0xFF, 0xE1, 0xFF, 0xFF]), Head::Picture { pixels: None });
        assert_eq!(head(b"\x89PNG\r\n\x1a\n"), Head::Picture { pixels: None });
    }
}
