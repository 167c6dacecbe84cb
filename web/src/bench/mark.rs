//! Remembers that there were entries here, apart from the store, so that a cleared store is told
//! from a new device. It may be lost: then a cleared store looks new.

use crate::scratch;

const KEY: &str = "entries-were-here";

pub(super) fn is_there() -> bool {
    scratch::read(KEY).is_some()
}

pub(super) fn set() {
    if !is_there() {
        scratch::write(KEY, "yes");
    }
}
