//! The sandbox: seeded machines on a plan, with exact truth.
