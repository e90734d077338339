//! main
fn main() {}
