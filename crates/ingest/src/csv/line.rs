//! The corners of a path in a table without times.

use super::columns::Field;
use super::table::{cells, find_header, is_remark, number};
use crate::error::IngestError;
use crate::ledger::{excerpt, line_of};
use crate::lines::TextLines;
use crate::reading;
use tussock_types::{Positions, SkipReason};

/// All rows as corners. A surveyed path is short and should be sound: the first invalid row is an error.
pub(crate) fn corners(name: &str, text: &[u8]) -> Result<Positions, IngestError> {
    let table = find_header(text).ok_or_else(|| IngestError::NotALog {
        name: name.into(),
        found: "rows without known column names".into(),
        byte: 0,
    })?;
    let layout = &table.layout;
    let on_earth = layout.get(Field::Lat).is_some();
    let (first_at, second_at) = if on_earth {
        (layout.get(Field::Lat), layout.get(Field::Lon))
    } else {
        (layout.get(Field::East), layout.get(Field::North))
    };
    let (mut firsts, mut seconds) = (Vec::new(), Vec::new());
    let mut row = Vec::new();
    for line in TextLines::new(text).skip_while(|line| line.start < table.body) {
        let content = line.content.trim_ascii();
        if content.is_empty() || is_remark(content) {
            continue;
        }
        cells(line.content, table.separator, &mut row);
        let value = |at: Option<usize>| {
            let cell = at.and_then(|at| row.get(at))?;
            Some(number(cell, table.separator)?.value)
        };
        let fault = match (value(first_at), value(second_at)) {
            (Some(first), Some(second)) => {
                let fault = if on_earth {
                    reading::geographic_fault(first, second)
                } else {
                    reading::local_fault(first, second)
                };
                firsts.push(first);
                seconds.push(second);
                fault
            }
            _ => Some(SkipReason::Malformed),
        };
        if let Some(reason) = fault {
            return Err(IngestError::Strict {
                name: name.into(),
                reason,
                line: line_of(text, line.start as u64),
                byte: line.start as u64,
                excerpt: excerpt(line.content),
            });
        }
    }
    Ok(if on_earth {
        Positions::Geographic {
            lat_deg: firsts,
            lon_deg: seconds,
        }
    } else {
        Positions::Local {
            east_m: firsts,
            north_m: seconds,
        }
    })
}
