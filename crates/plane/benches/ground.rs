//! Benches of the ground.
fn main() {}
