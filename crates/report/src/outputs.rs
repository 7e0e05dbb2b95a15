//! Which files does an analysis leave behind?

use crate::{ReportError, cells_parquet, geojson, html, legs_parquet, map_png, pockets_gpx, redact, to_json};
use rayon::prelude::*;
use tussock_types::Findings;

/// Width of `map.png` where nothing else is asked for.
pub const MAP_WIDTH_PX: u32 = 1_600;

/// One file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Output {
    /// Its name.
    pub name: &'static str,
    /// What is in it.
    pub bytes: Vec<u8>,
}

/// Whether the files may tell where and when.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Privacy {
    /// Everything.
    Full,
    /// Only files that can live without a place on Earth, names, dates and digests; see [`redact`].
    Private,
}

impl From<bool> for Privacy {
    fn from(is_private: bool) -> Self {
        if is_private { Self::Private } else { Self::Full }
    }
}

/// Every file that these findings allow, in a fixed order: `findings.json`, `findings.geojson`, `report.html`,
/// `map.png`, `cells.parquet`, `legs.parquet`, `pockets.gpx`. Those that need a place on Earth or squares are left out where there
/// is none; [`left_out`] says why. Made side by side where there are several cores.
///
/// # Errors
/// When one of the files cannot be made; none is returned then.
pub fn outputs(findings: &Findings, privacy: Privacy) -> Result<Vec<Output>, ReportError> {
    outputs_sized(findings, privacy, MAP_WIDTH_PX)
}

/// The same with `map.png` so many pixels wide.
///
/// # Errors
/// As [`outputs`], and for a width that makes no picture.
pub fn outputs_sized(
    findings: &Findings,
    privacy: Privacy,
    map_width_px: u32,
) -> Result<Vec<Output>, ReportError> {
    let redacted;
    let findings = match privacy {
        Privacy::Full => findings,
        Privacy::Private => {
            redacted = redact(findings)?;
            &redacted
        }
    };
    let has_place = privacy == Privacy::Full && findings.frame.origin().is_some();
    type Make<'a> = Box<dyn Fn() -> Result<Vec<u8>, ReportError> + Send + Sync + 'a>;
    let mut wanted: Vec<(&'static str, Make<'_>)> = Vec::new();
    wanted.push(("findings.json", Box::new(|| Ok(to_json(findings)?.into_bytes()))));
    if has_place {
        wanted.push((
            "findings.geojson",
            Box::new(|| Ok(geojson(findings)?.into_bytes())),
        ));
    }
    wanted.push(("report.html", Box::new(|| Ok(html(findings)?.into_bytes()))));
    wanted.push(("map.png", Box::new(move || map_png(findings, map_width_px))));
    if findings.cells.is_some() {
        wanted.push(("cells.parquet", Box::new(|| cells_parquet(findings))));
    }
    if has_lines(findings) {
        wanted.push(("legs.parquet", Box::new(|| legs_parquet(findings))));
    }
    if has_place {
        wanted.push(("pockets.gpx", Box::new(|| pockets_gpx(findings))));
    }
    wanted
        .par_iter()
        .with_max_len(1)
        .map(|(name, make)| Ok(Output { name, bytes: make()? }))
        .collect()
}

fn has_lines(findings: &Findings) -> bool {
    findings.driven_lines.iter().any(|line| line.len() > 1)
}

/// Files that [`outputs`] leaves out, each with the reason, as a sentence without full stop.
pub fn left_out(findings: &Findings, privacy: Privacy) -> Vec<(&'static str, &'static str)> {
    let place = match (privacy, findings.frame.origin()) {
        (Privacy::Private, _) => Some("it would tell where the garden is"),
        (Privacy::Full, None) => Some("positions are in local metres, without geographic coordinates"),
        (Privacy::Full, Some(_)) => None,
    };
    let mut list = Vec::new();
    if let Some(reason) = place {
        list.push(("findings.geojson", reason));
    }
    if findings.cells.is_none() {
        list.push(("cells.parquet", "nothing was counted without a cutting width"));
    }
    if !has_lines(findings) {
        list.push(("legs.parquet", "nothing was driven"));
    }
    if let Some(reason) = place {
        list.push(("pockets.gpx", reason));
    }
    list
}
