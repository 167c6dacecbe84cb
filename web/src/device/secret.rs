//! Slow salted hashes and chance, from the browser.

use js_sys::{Array, Promise, Uint8Array};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{Crypto, CryptoKey, Pbkdf2Params};

const METHOD: &str = "PBKDF2";
const SALT_BYTES: usize = 16;
const HASH_BITS: u32 = 256;

/// Random bytes for one hash.
///
/// # Errors
/// What the browser threw.
pub fn fresh_salt() -> Result<Vec<u8>, JsValue> {
    let mut salt = vec![0; SALT_BYTES];
    crypto()?.get_random_values_with_u8_array(&mut salt)?;
    Ok(salt)
}

/// 32 bytes of PBKDF2-HMAC-SHA-256 (RFC 8018, section 5.2) over a text.
///
/// # Errors
/// What the browser threw, such as where the page is not secure.
pub async fn stretched(text: &str, salt: &[u8], rounds: u32) -> Result<Vec<u8>, JsValue> {
    let subtle = crypto()?.subtle();
    let bytes = Uint8Array::from(text.as_bytes());
    let uses = Array::of1(&"deriveBits".into());
    let key = subtle.import_key_with_str("raw", &bytes, METHOD, false, &uses)?;
    let key: CryptoKey = come(key).await?.unchecked_into();
    let salt = Uint8Array::from(salt);
    let how = Pbkdf2Params::new(METHOD, &"SHA-256".into(), rounds, &salt);
    let bits = come(subtle.derive_bits_with_object(&how, &key, HASH_BITS)?).await?;
    Ok(Uint8Array::new(&bits).to_vec())
}

async fn come(promise: Promise) -> Result<JsValue, JsValue> {
    JsFuture::from(promise).await
}

fn crypto() -> Result<Crypto, JsValue> {
    web_sys::window().ok_or(JsValue::NULL)?.crypto()
}
