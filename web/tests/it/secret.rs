//! The slow hash of the browser, held against a published standard.

use shimwright_web::device::secret::{fresh_salt, stretched};
use wasm_bindgen_test::wasm_bindgen_test as test;

/// RFC 7914, section 11: test vectors for PBKDF2 with HMAC-SHA-256. The RFC gives 64 bytes; PBKDF2
/// makes them 32 at a time, so the first half is what 32 bytes are.
#[test]
async fn it_is_pbkdf2_with_hmac_sha_256() {
    let hex = |bytes: Vec<u8>| bytes.iter().map(|byte| format!("{byte:02x}")).collect::<String>();
    assert_eq!(
        hex(stretched("passwd", b"salt", 1).await.unwrap()),
        "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc"
    );
    assert_eq!(
        hex(stretched("Password", b"NaCl", 80_000).await.unwrap()),
        "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56"
    );
}

#[test]
fn a_salt_is_16_bytes_and_never_the_same() {
    let (one, other) = (fresh_salt().unwrap(), fresh_salt().unwrap());
    assert_eq!((one.len(), other.len()), (16, 16));
    assert_ne!(one, other);
}
