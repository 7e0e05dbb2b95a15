//! The ground: local metric frame, guarded polygon work, index of legs.
