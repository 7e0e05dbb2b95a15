//! Which files does an analysis leave behind?

use crate::messages::Voice;
use crate::{Privacy, ReportError, geojson, html, pockets_gpx, redact, to_json};
use rayon::prelude::*;
use std::borrow::Cow;
use tussock_types::Findings;

/// Width of `map.png` if no other is requested.
pub const MAP_WIDTH_PX: u32 = 1_600;

/// One file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Output {
    /// Its name.
    pub name: &'static str,
    /// What is in it.
    pub bytes: Vec<u8>,
}

/// Makes a file.
type Make<'a> = Box<dyn Fn() -> Result<Vec<u8>, ReportError> + Send + Sync + 'a>;

/// Every file that these findings allow, in a fixed order: `findings.json`, `findings.geojson`, `report.html`, `map.png`,
/// `cells.parquet`, `legs.parquet`, `pockets.gpx`. Those that need geographic coordinates or squares are left out if there
/// are none; [`left_out`] says why. Made in parallel if there are several cores.
///
/// # Errors
/// If one of the files cannot be made; then none is returned.
pub fn outputs(findings: &Findings, privacy: Privacy, voice: Voice) -> Result<Vec<Output>, ReportError> {
    outputs_sized(findings, privacy, MAP_WIDTH_PX, voice)
}

/// The same with `map.png` this many pixels wide.
///
/// # Errors
/// As [`outputs`], and for a width that is not allowed.
pub fn outputs_sized(
    findings: &Findings,
    privacy: Privacy,
    map_width_px: u32,
    voice: Voice,
) -> Result<Vec<Output>, ReportError> {
    let findings = shown(findings, privacy)?;
    made(&wanted(&findings, privacy, map_width_px, voice))
}

/// Names of the files that [`outputs`] makes, and that [`output`] makes one at a time.
pub fn output_names(findings: &Findings, privacy: Privacy) -> Vec<&'static str> {
    wanted(findings, privacy, MAP_WIDTH_PX, Voice::default())
        .into_iter()
        .map(|(name, _)| name)
        .collect()
}

/// One file of [`outputs`]; `None` if these findings do not allow it.
///
/// # Errors
/// If the file cannot be made.
pub fn output(
    findings: &Findings,
    privacy: Privacy,
    name: &str,
    voice: Voice,
) -> Result<Option<Output>, ReportError> {
    let findings = shown(findings, privacy)?;
    let mut files = wanted(&findings, privacy, MAP_WIDTH_PX, voice);
    files.retain(|(known, _)| *known == name);
    Ok(made(&files)?.pop())
}

/// What may be shown of them.
fn shown(findings: &Findings, privacy: Privacy) -> Result<Cow<'_, Findings>, ReportError> {
    Ok(match privacy {
        Privacy::Full => Cow::Borrowed(findings),
        Privacy::Private => Cow::Owned(redact(findings)?),
    })
}

fn made(wanted: &[(&'static str, Make<'_>)]) -> Result<Vec<Output>, ReportError> {
    wanted
        .par_iter()
        .with_max_len(1)
        .map(|(name, make)| Ok(Output { name, bytes: make()? }))
        .collect()
}

#[cfg_attr(not(feature = "picture"), expect(unused_variables, reason = "for map.png"))]
fn wanted(
    findings: &Findings,
    privacy: Privacy,
    map_width_px: u32,
    voice: Voice,
) -> Vec<(&'static str, Make<'_>)> {
    let has_place = has_place(findings, privacy);
    let mut wanted: Vec<(&'static str, Make<'_>)> = Vec::new();
    wanted.push(("findings.json", Box::new(|| Ok(to_json(findings)?.into_bytes()))));
    if has_place {
        wanted.push((
            "findings.geojson",
            Box::new(|| Ok(geojson(findings)?.into_bytes())),
        ));
    }
    wanted.push((
        "report.html",
        Box::new(move || Ok(html(findings, voice)?.into_bytes())),
    ));
    #[cfg(feature = "picture")]
    wanted.push((
        "map.png",
        Box::new(move || crate::map_png(findings, map_width_px, voice)),
    ));
    #[cfg(feature = "parquet")]
    if findings.cells.is_some() {
        wanted.push(("cells.parquet", Box::new(|| crate::cells_parquet(findings))));
    }
    #[cfg(feature = "parquet")]
    if has_lines(findings) {
        wanted.push(("legs.parquet", Box::new(|| crate::legs_parquet(findings))));
    }
    if has_place {
        wanted.push(("pockets.gpx", Box::new(move || pockets_gpx(findings, voice))));
    }
    wanted
}

fn has_place(findings: &Findings, privacy: Privacy) -> bool {
    privacy == Privacy::Full && findings.frame.origin().is_some()
}

/// The message that says why a build without a feature leaves a file out.
const ELSEWHERE: &str = "file-elsewhere";

fn has_lines(findings: &Findings) -> bool {
    findings.driven_lines.iter().any(|line| line.len() > 1)
}

/// Files that [`outputs`] leaves out, each with the reason, as a sentence without a full stop.
pub fn left_out(findings: &Findings, privacy: Privacy, voice: Voice) -> Vec<(&'static str, String)> {
    let place = match (privacy, findings.frame.origin()) {
        (Privacy::Private, _) => Some("file-tells-where"),
        (Privacy::Full, None) => Some("file-local-metres"),
        (Privacy::Full, Some(_)) => None,
    };
    let elsewhere = |is_made_here: bool| (!is_made_here).then_some(ELSEWHERE);
    let uncounted = (findings.cells.is_none()).then_some("file-not-counted");
    let undriven = (!has_lines(findings)).then_some("file-not-driven");
    let parquet = elsewhere(cfg!(feature = "parquet"));
    [
        ("findings.geojson", place),
        ("map.png", elsewhere(cfg!(feature = "picture"))),
        ("cells.parquet", uncounted.or(parquet)),
        ("legs.parquet", undriven.or(parquet)),
        ("pockets.gpx", place),
    ]
    .into_iter()
    .filter_map(|(name, reason)| Some((name, crate::messages::message(voice, reason?, &[]))))
    .collect()
}
