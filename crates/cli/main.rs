//! The command `tussock`.

fn main() {}
