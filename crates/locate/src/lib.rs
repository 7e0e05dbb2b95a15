//! Where the machine really was: gates, halts, legs, smoothing.
