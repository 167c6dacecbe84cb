//! The same advice as a WebAssembly module of its own, for `tests/e2e/advice.mjs` to time in a
//! browser: `prepare` makes a case, `advise` answers it, so that only the answer is timed.

#![allow(unsafe_code, reason = "a name that is exported is one that must not be taken twice")]
// A measurement may stop at the first thing that is not as it should be.
#![allow(missing_docs, clippy::unwrap_used, clippy::indexing_slicing)]

mod instances;

use std::cell::RefCell;

use gearing::advice::Status;
use gearing::case::Case;

thread_local! {
    static CASE: RefCell<Option<Case>> = const { RefCell::new(None) };
}

/// How many kinds of case there are.
#[unsafe(no_mangle)]
pub extern "C" fn kinds() -> usize {
    instances::KINDS.len()
}

/// How many cases of each kind.
#[unsafe(no_mangle)]
pub extern "C" fn cases() -> u32 {
    instances::CASES as u32
}

/// Makes a case of a kind.
#[unsafe(no_mangle)]
pub extern "C" fn prepare(kind: usize, seed: u32) {
    let (_, shared, step) = instances::KINDS[kind];
    CASE.set(Some(instances::case(u64::from(seed), shared, step)));
}

/// Answers the case made last; 0 where it fits, 1 where the tin is short, 2 otherwise.
#[unsafe(no_mangle)]
pub extern "C" fn advise() -> u32 {
    CASE.with_borrow(|case| match gearing::advise(case.as_ref().unwrap()).unwrap().status {
        Status::Fit => 0,
        Status::StockShort => 1,
        _ => 2,
    })
}
