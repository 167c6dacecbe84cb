//! The app on the screen.
mod pictures;

fn main() {}
