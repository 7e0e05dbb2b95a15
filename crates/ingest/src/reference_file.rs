//! What path was surveyed?
//!
//! GPX tracks and routes, or a table with a header. If every position has a time, the path is timed and read like a log, in
//! time order; if any has none, all positions form a path in the order of the file, track by track and segment by segment.
//!
//! Cost: the file is read twice if it has no times.

use crate::recognise::{Recognised, recognise};
use crate::walk::{self, WalkError};
use crate::{IngestError, RawLog, ReadOptions, csv};
use tussock_types::{LogFormat, Positions, Reference, SkipReason, file_name};

/// Reads a surveyed path from a GPX file or a table.
///
/// # Errors
/// [`IngestError`]; a path with fewer than two positions is an error, and so is any invalid row of a table without times.
///
/// # Panics
/// Never.
pub fn read_reference(
    name: &str,
    input: impl std::io::Read,
    options: &ReadOptions,
) -> Result<Reference, IngestError> {
    let raw = RawLog::fetch(name, input, &options.limits)?;
    let reference = match raw.read(options) {
        Ok(log) if !log.facts.skipped.contains_key(&SkipReason::NoTime) => Reference {
            name: log.facts.name,
            piece: log.trace.segment,
            time_s: Some(log.trace.time_s),
            positions: log.trace.positions,
        },
        Ok(_) | Err(IngestError::NoTimes { .. } | IngestError::NoPositions { .. }) => {
            timeless(name, &raw.source.text, options)?
        }
        Err(error) => return Err(error),
    };
    let corners = reference.positions.len();
    if corners < 2 {
        return Err(IngestError::NoPath {
            name: name.into(),
            corners: corners as u64,
        });
    }
    Ok(reference)
}

fn timeless(name: &str, text: &[u8], options: &ReadOptions) -> Result<Reference, IngestError> {
    let (positions, piece) = match recognise(text, options.columns.as_ref()) {
        Recognised::Log(LogFormat::Gpx) => {
            let lines = walk::lines(name, text).map_err(|error| IngestError::NotALog {
                name: name.into(),
                found: found(&error),
                byte: 0,
            })?;
            let (mut lat_deg, mut lon_deg, mut piece) = (Vec::new(), Vec::new(), Vec::new());
            for (number, points) in (0..).zip(lines) {
                for point in points {
                    lat_deg.push(point.lat_deg);
                    lon_deg.push(point.lon_deg);
                    piece.push(number);
                }
            }
            (Positions::Geographic { lat_deg, lon_deg }, piece)
        }
        Recognised::Log(format @ (LogFormat::Kml | LogFormat::MfJson | LogFormat::GpsdJson)) => {
            return Err(IngestError::NotALog {
                name: name.into(),
                found: format!("{} without a time for every position", format.words()),
                byte: 0,
            });
        }
        _ => {
            let positions = csv::corners(name, text)?;
            let piece = vec![0; positions.len()];
            (positions, piece)
        }
    };
    Ok(Reference {
        name: file_name(name).into(),
        positions,
        piece,
        time_s: None,
    })
}

fn found(error: &WalkError) -> String {
    match error {
        WalkError::FaultyXml { line, reason, .. } => format!("faulty XML at line {line} ({reason})"),
        _ => error.to_string(),
    }
}
