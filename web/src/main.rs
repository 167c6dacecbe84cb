//! The app on the screen.
fn main() {}
