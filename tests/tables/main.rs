//! Published values.
fn main() {}
