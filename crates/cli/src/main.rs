//! Shimwright without a screen.
fn main() {}
