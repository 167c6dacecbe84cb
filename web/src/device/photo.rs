//! A picture from the camera or a file, made anew: smaller, and without what a camera writes into
//! it, such as the place.

use std::fmt;
use words::{say, t};

use js_sys::{Function, Object, Promise, Reflect, Uint8Array};
use leptos::prelude::*;
use wasm_bindgen::prelude::*;
use wasm_bindgen_futures::JsFuture;
use web_sys::{Blob, CanvasRenderingContext2d, HtmlCanvasElement, ImageBitmap};

use super::picture_head::{Head, head};

/// The longer side of what is kept, pixels: a shim's printed number can still be read.
const LONGEST: u32 = 1600;
/// What a phone can take apart at once, in millions of pixels.
const MOST_MEGAPIXELS: u64 = 80;
/// A file of more bytes is no single photo.
const MOST_BYTES: f64 = 64.0 * 1024.0 * 1024.0;
/// How much of a file is read to see what it is.
const HEAD_BYTES: f64 = 256.0 * 1024.0;
/// Of JPEG's 0 to 1: a page of small print stays legible at some 300 kB.
const QUALITY: f64 = 0.82;

#[wasm_bindgen]
extern "C" {
    /// Takes a file's picture apart; turned the way the camera was held.
    #[wasm_bindgen(catch, js_name = createImageBitmap)]
    fn create_image_bitmap(file: &Blob, options: &JsValue) -> Result<Promise, JsValue>;
}

/// Why a file did not become a photo.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PhotoError {
    /// It is no picture of a kind that is taken.
    NoPicture,
    /// It is an SVG: a drawing, which can carry a program.
    Drawing,
    /// It has more pixels than a phone takes apart; in millions.
    TooLarge {
        /// How many.
        megapixels: u64,
    },
    /// It has more bytes than a photo has.
    TooHeavy,
    /// The browser did not take it apart.
    Unreadable,
    /// The browser did not put it together again.
    NotMade,
}

impl fmt::Display for PhotoError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            PhotoError::NoPicture => f.write_str(
                t("That file is no JPEG, PNG or WebP picture. Take a photo, or choose a picture file."),
            ),
            PhotoError::Drawing => f.write_str(
                t("That file is an SVG drawing, which can carry a program. Take a photo of it instead."),
            ),
            PhotoError::TooLarge { megapixels } => f.write_str(&say!("That picture has {megapixels} megapixels; up to {MOST_MEGAPIXELS} are taken. \
                 Set the camera to a smaller size, or choose another."
            )),
            PhotoError::TooHeavy => f.write_str(
                t("That file is over 64 MB, which is more than a photo has. Choose another."),
            ),
            PhotoError::Unreadable => f.write_str(
                t("That picture did not open: it is damaged, or more than this device can hold. \
                 Take it again in a smaller size."),
            ),
            PhotoError::NotMade => f.write_str(
                t("This device had no room to work on the picture. \
                 Close other apps, then take it again."),
            ),
        }
    }
}

impl std::error::Error for PhotoError {}

/// Makes a photo for the job out of a file: at most 1600 pixels on its longer side, as JPEG,
/// the way up the camera was held, with nothing of the camera's own data.
///
/// # Errors
/// What is wrong with the file, and what to do.
pub async fn remade(file: &Blob) -> Result<Blob, PhotoError> {
    look_at(file).await?;
    let options = Object::new();
    let from_image = Reflect::set(&options, &"imageOrientation".into(), &"from-image".into());
    let opened = from_image.and_then(|_| create_image_bitmap(file, &options));
    let opened = JsFuture::from(opened.map_err(|_| PhotoError::Unreadable)?).await;
    let picture: ImageBitmap =
        opened.ok().and_then(|it| it.dyn_into().ok()).ok_or(PhotoError::Unreadable)?;
    let made = drawn(&picture).ok_or(PhotoError::NotMade);
    picture.close();
    written(&made?).await.ok_or(PhotoError::NotMade)
}

/// Refuses what is no picture, or too much of one, before the browser takes it apart.
async fn look_at(file: &Blob) -> Result<(), PhotoError> {
    if file.size() > MOST_BYTES {
        return Err(PhotoError::TooHeavy);
    }
    let start = file.slice_with_f64_and_f64(0.0, HEAD_BYTES).map_err(|_| PhotoError::Unreadable)?;
    let bytes = JsFuture::from(start.array_buffer()).await.map_err(|_| PhotoError::Unreadable)?;
    match head(&Uint8Array::new(&bytes).to_vec()) {
        Head::Picture { pixels: Some(pixels) } if pixels > MOST_MEGAPIXELS * 1_000_000 => {
            Err(PhotoError::TooLarge { megapixels: pixels.div_ceil(1_000_000) })
        }
        Head::Picture { .. } => Ok(()),
        Head::Drawing => Err(PhotoError::Drawing),
        Head::Other => Err(PhotoError::NoPicture),
    }
}

/// The picture on a canvas of the size it is kept in.
fn drawn(picture: &ImageBitmap) -> Option<HtmlCanvasElement> {
    let (width, height) = (picture.width().max(1), picture.height().max(1));
    let scale = (f64::from(LONGEST) / f64::from(width.max(height))).min(1.0);
    let canvas: HtmlCanvasElement = document().create_element("canvas").ok()?.unchecked_into();
    canvas.set_width((f64::from(width) * scale) as u32);
    canvas.set_height((f64::from(height) * scale) as u32);
    let pen: CanvasRenderingContext2d = canvas.get_context("2d").ok()??.unchecked_into();
    let (wide, high) = (f64::from(canvas.width()), f64::from(canvas.height()));
    pen.draw_image_with_image_bitmap_and_dw_and_dh(picture, 0.0, 0.0, wide, high).ok()?;
    Some(canvas)
}

/// The canvas as JPEG; the browser hands over nothing where it has no room.
async fn written(canvas: &HtmlCanvasElement) -> Option<Blob> {
    let promise = Promise::new(&mut |done: Function, failed: Function| {
        let quality = JsValue::from_f64(QUALITY);
        let asked = canvas.to_blob_with_type_and_encoder_options(&done, "image/jpeg", &quality);
        if asked.is_err() {
            // The promise is the only one who listens.
            failed.call0(&JsValue::NULL).ok();
        }
    });
    JsFuture::from(promise).await.ok()?.dyn_into().ok()
}
