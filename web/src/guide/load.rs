//! The data files of the guided job: fetched once, then kept for every screen of this visit.

use std::cell::RefCell;
use std::sync::Arc;

use job::procedure::Procedure;

use crate::device::fetched::{NotHere, text};

thread_local! {
    static KEPT: RefCell<Vec<Arc<Procedure>>> = const { RefCell::new(Vec::new()) };
}

/// A procedure that has come already.
pub fn kept(layout: &str, revision: u32) -> Option<Arc<Procedure>> {
    let is_it = |it: &&Arc<Procedure>| it.layout == layout && it.revision == revision;
    KEPT.with_borrow(|kept| kept.iter().find(is_it).cloned())
}

/// A procedure, from its file.
///
/// # Errors
/// Where the file does not come or does not follow the grammar.
pub async fn procedure(layout: &str, revision: u32) -> Result<Arc<Procedure>, NotHere> {
    if let Some(kept) = kept(layout, revision) {
        return Ok(kept);
    }
    let text = text(&Procedure::address(layout, revision)).await?;
    let read = Procedure::parse(layout, revision, &text).map_err(|_| NotHere)?;
    let read = Arc::new(read);
    KEPT.with_borrow_mut(|kept| kept.push(read.clone()));
    Ok(read)
}
