//! Fills the offline worker after the build.
fn main() {}
