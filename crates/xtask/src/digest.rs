//! SHA-256 in the forms a browser asks for.

use sha2::{Digest, Sha256};

const DIGITS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";

/// `sha256-…`, as integrity attributes and content policies write it.
pub fn integrity(bytes: &[u8]) -> String {
    format!("sha256-{}", base64(&Sha256::digest(bytes)))
}

/// The first twelve hexadecimal digits: enough to tell two versions apart.
pub fn short(bytes: &[u8]) -> String {
    Sha256::digest(bytes).iter().take(6).map(|byte| format!("{byte:02x}")).collect()
}

fn base64(bytes: &[u8]) -> String {
    let mut text = String::new();
    for group in bytes.chunks(3) {
        let bits = group.iter().fold(0u32, |bits, byte| bits << 8 | u32::from(*byte))
            << (8 * (3 - group.len()));
        for place in 0..4 {
            let digit = (bits >> (18 - 6 * place)) as usize & 63;
            let shown = if place <= group.len() { DIGITS.get(digit).copied() } else { None };
            text.push(char::from(shown.unwrap_or(b'=')));
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    /// RFC 4648, section 10.
    #[test]
    fn base64_agrees_with_the_rfc() {
        let pairs =
            [("", ""), ("f", "Zg=="), ("fo", "Zm8="), ("foo", "Zm9v"), ("foobar", "Zm9vYmFy")];
        for (plain, coded) in pairs {
            assert_eq!(base64(plain.as_bytes()), coded);
        }
    }

    /// FIPS 180-4 example: the digest of "abc" begins ba7816bf 8f01.
    #[test]
    fn sha256_agrees_with_the_standard() {
        assert_eq!(short(b"abc"), "ba7816bf8f01");
        assert_eq!(integrity(b"abc"), "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=");
    }
}
