//! What is unknown at any moment?

/// Where the machine is: east, north.
pub const PLACE: usize = 0;
/// How fast it drives: east, north.
pub const SPEED: usize = 2;
/// Slow part of the position error: east, north.
pub const DRIFT: usize = 4;
/// Offset of the logged world from the drawn one: east, north.
pub const OFFSET: usize = 6;
/// Its rotation, radians, anticlockwise about the middle of the plan.
pub const TURNED: usize = 8;
/// How far inside the drawn edge the machine turns.
pub const INSET: usize = 9;
/// Number of components.
pub const SIZE: usize = 10;
