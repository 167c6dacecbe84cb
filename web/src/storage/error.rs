//! Why the store did not take or give something, in a sentence.

use std::fmt;
use words::{say, t};

use wasm_bindgen::{JsCast, JsValue};
use web_sys::DomException;

/// Why the store did not take or give something. Nothing acknowledged before is lost by it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StoreError {
    /// The browser keeps nothing for this page: a private window, or a setting.
    Refused {
        /// The browser's name for it.
        seen: String,
    },
    /// The device has no room left.
    Full,
    /// The key is in use: another tab kept an entry under the same number first.
    Taken,
    /// A newer version of the app has changed the store.
    Newer,
    /// The store is still in the form of an older version, and could not be copied or changed.
    Older,
    /// The browser has cleared the store while this page was open.
    Cleared,
    /// Another tab keeps the store open in an older form.
    Blocked,
    /// The connection to the store ended, as phones do to pages in the background.
    Lost,
    /// Anything else.
    Other {
        /// The browser's name for it.
        seen: String,
    },
}

impl StoreError {
    /// Reads what the browser threw, by its name; engines agree on names, not on texts.
    pub(crate) fn from_thrown(thrown: &JsValue) -> StoreError {
        let name = match thrown.dyn_ref::<DomException>() {
            Some(exception) => exception.name(),
            None => thrown.as_string().unwrap_or_else(|| "no reason given".to_owned()),
        };
        match name.as_str() {
            "QuotaExceededError" | "NS_ERROR_DOM_INDEXEDDB_QUOTA_ERR" => StoreError::Full,
            "ConstraintError" => StoreError::Taken,
            "VersionError" => StoreError::Newer,
            "InvalidStateError" | "UnknownError" | "TransactionInactiveError" | "AbortError" => {
                StoreError::Lost
            }
            "SecurityError" | "NotAllowedError" => StoreError::Refused { seen: name },
            _ => StoreError::Other { seen: name },
        }
    }
}

impl fmt::Display for StoreError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            StoreError::Refused { seen } => f.write_str(&say!("This browser keeps nothing for this page ({seen}). \
                 Private windows do that: open Shimwright in a normal one."
            )),
            StoreError::Full => f.write_str(
                t("The device has no room left, so this was not saved. \
                 Free some room, such as the photos of a finished job, then press again."),
            ),
            StoreError::Taken => f.write_str(
                t("Another tab saved at the same moment, so this was not saved. Press again."),
            ),
            StoreError::Newer => f.write_str(
                t("A newer version of the app has been at work in another tab, \
                 so this tab saves nothing more. Reload this page."),
            ),
            StoreError::Older => f.write_str(
                t("The store is still in its older form, because the copy that comes before a change \
                 could not be made. So nothing is saved. Free some room on the device, then reload."),
            ),
            StoreError::Cleared => f.write_str(
                t("The browser has cleared the store while this page was open, \
                 so this was not saved. Reload this page, then write it again."),
            ),
            StoreError::Blocked => f.write_str(
                t("Another tab holds the store in its older form. \
                 Close the other tabs of this app, then reload."),
            ),
            StoreError::Lost => f.write_str(
                t("The connection to the store ended, so this was not saved. \
                 Press again; if that fails, free some room on the device and reload."),
            ),
            StoreError::Other { seen } => f.write_str(&say!("The store did not take this ({seen}), so it was not saved. \
                 Free some room on the device and press again; \
                 if that fails, export everything and reload."
            )),
        }
    }
}

impl std::error::Error for StoreError {}
