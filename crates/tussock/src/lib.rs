//! The one call: traces, plan and settings in, findings out.
