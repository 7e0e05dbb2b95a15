//! The door: GPX, NMEA 0183, CSV, plans, settings and walks from bytes.
