//! A photo is made anew, and kept together with the entry that names it or not at all.

use js_sys::Uint8Array;
use shimwright_web::device::photo::{PhotoError, remade};
use shimwright_web::storage::{Batch, Photo, Row, Store, StoreError};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use wasm_bindgen_test::wasm_bindgen_test;
use web_sys::Blob;

use crate::fresh::{self, rows_of};

/// A JPEG of that size with a block of camera data in it that holds a place.
async fn taken(width: u32, height: u32) -> Blob {
    let script = format!(
        "const canvas = new OffscreenCanvas({width}, {height});
         const pen = canvas.getContext('2d');
         pen.fillStyle = '#c80'; pen.fillRect(0, 0, {width}, {height});
         const plain = new Uint8Array(await (await canvas.convertToBlob({{ type: 'image/jpeg' }})).arrayBuffer());
         const secret = new TextEncoder().encode('Exif\\0\\0 a place: 54.3 N 10.1 E');
         const block = new Uint8Array([0xFF, 0xE1, 0, secret.length + 2, ...secret]);
         return new Blob([plain.slice(0, 2), block, plain.slice(2)], {{ type: 'image/jpeg' }});"
    );
    fresh::give(&format!("return (async () => {{ {script} }})()")).await.unchecked_into()
}

async fn file(text: &str) -> Blob {
    fresh::give(&format!("return new Blob([{text:?}])")).await.unchecked_into()
}

async fn bytes(blob: &Blob) -> Vec<u8> {
    Uint8Array::new(&JsFuture::from(blob.array_buffer()).await.unwrap()).to_vec()
}

async fn size(blob: &Blob) -> String {
    let asked = js_sys::Function::new_with_args(
        "blob",
        "return createImageBitmap(blob).then((it) => `${it.width} × ${it.height}`)",
    );
    let promise = asked.call1(&JsValue::NULL, blob).unwrap();
    JsFuture::from(js_sys::Promise::from(promise)).await.unwrap().as_string().unwrap()
}

#[wasm_bindgen_test]
async fn what_the_camera_wrote_into_a_picture_is_gone() {
    let camera = taken(300, 200).await;
    let holds = |bytes: Vec<u8>| bytes.windows(7).any(|window| window == b"a place");
    assert!(holds(bytes(&camera).await));
    let photo = remade(&camera).await.unwrap();
    assert!(!holds(bytes(&photo).await));
    assert_eq!(photo.type_(), "image/jpeg");
    assert_eq!(size(&photo).await, "300 × 200");
}

#[wasm_bindgen_test]
async fn a_large_picture_is_made_smaller_in_its_own_shape() {
    assert_eq!(size(&remade(&taken(4000, 3000).await).await.unwrap()).await, "1600 × 1200");
}

#[wasm_bindgen_test]
async fn what_is_no_picture_is_refused_in_words() {
    let pdf = remade(&file("%PDF-1.7").await).await.unwrap_err();
    assert_eq!(
        pdf.to_string(),
        "That file is no JPEG, PNG or WebP picture. Take a photo, or choose a picture file."
    );
    let drawing = remade(&file("<svg xmlns='x'><script>alert(1)</script></svg>").await).await;
    assert_eq!(drawing.unwrap_err(), PhotoError::Drawing);
    let broken =
        fresh::give("return new Blob([new Uint8Array([0xFF, 0xD8, 0xFF, 0, 1, 2])])").await;
    assert_eq!(remade(broken.unchecked_ref()).await.unwrap_err(), PhotoError::Unreadable);
    // PNG says its size in its first bytes: 10 000 × 9000.
    let vast = fresh::give(
        "return new Blob([new Uint8Array([0x89, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0, 13, 73, 72, 68, 82, \
         0, 0, 0x27, 0x10, 0, 0, 0x23, 0x28])])",
    );
    assert_eq!(
        remade(vast.await.unchecked_ref()).await.unwrap_err().to_string(),
        "That picture has 90 megapixels; up to 80 are taken. \
         Set the camera to a smaller size, or choose another."
    );
}

fn both(row: Row, photo: Photo) -> Batch {
    Batch { photos: vec![photo], ..rows_of(&[row]) }
}

fn row(counter: u64) -> Row {
    Row { book: "job".to_owned(), counter, device: "a".to_owned(), line: "{}".to_owned() }
}

#[wasm_bindgen_test]
async fn a_photo_and_its_entry_are_kept_together_or_not_at_all() {
    fresh::start().await;
    let store = Store::open(|_| {}).await.unwrap();
    let photo = || async { Photo { id: "p1".to_owned(), picture: taken(30, 20).await } };
    store.add(&both(row(1), photo().await)).await.unwrap();
    let kept = store.photo("p1").await.unwrap().unwrap();
    assert_eq!(bytes(&kept).await, bytes(&photo().await.picture).await);
    assert!(store.photo("p2").await.unwrap().is_none());
    // The same name again is refused, and so is the entry that came with it.
    let again = store.add(&both(row(2), photo().await)).await;
    assert_eq!(again, Err(StoreError::Taken));
    assert_eq!(store.count().await.unwrap(), 1);
}

#[wasm_bindgen_test]
async fn a_store_of_the_version_before_photos_keeps_its_entries() {
    fresh::start().await;
    fresh::run(
        "return new Promise((done, failed) => {
            const open = indexedDB.open('shimwright', 1);
            open.onupgradeneeded = () => open.result.createObjectStore('entries').add('{}', ['job', 1, 'a']);
            open.onerror = () => failed(open.error);
            open.onsuccess = () => { open.result.close(); done(); };
        })",
    )
    .await;
    let store = Store::open(|_| {}).await.unwrap();
    assert_eq!(store.all().await.unwrap(), [row(1)]);
    store
        .add(&both(row(2), Photo { id: "p".to_owned(), picture: taken(3, 2).await }))
        .await
        .unwrap();
    assert_eq!(store.count().await.unwrap(), 2);
}
