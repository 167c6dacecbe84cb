//! What the app asks of the device and the browser, apart from storage.

pub mod alert;
pub mod awake;
pub mod clipboard;
pub mod fetched;
pub mod file;
pub mod idle;
pub mod install;
pub mod now;
pub mod photo;
mod picture_head;
pub mod protection;
pub mod secret;
pub mod turn;
