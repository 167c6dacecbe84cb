//! Starting, routes and what stands around every screen.

/// Starts the app on the page.
pub fn start() {}
