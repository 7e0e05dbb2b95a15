//! Does the receiver know how wrong it is?
//!
//! Receivers claim an accuracy: a standard deviation (NMEA 0183 GST, accuracy fields), or the quality of a fix. The
//! positions show it too, by their scatter while the machine stands and by the roughness of straight drives. If the scatter
//! is several times the claim, the claim is worthless, and anyone who chooses receivers by it should know: a recorded log
//! whose fixes are all called RTK fixed scatters by 0.75 m. The analysis relies on the scatter in any case.
//!
//! Approximate: drift shows only while the machine stands; without such time, only the white part is compared with the
//! claim.

use tussock_locate::Track;
use tussock_locate::noise::Claims;
use tussock_types::math;
use tussock_types::{FixQuality, NoiseSource, Said, Trace};

/// A scatter this many times the claim is not chance.
const LEAST_RATIO: f64 = 3.0;
/// Smaller differences do not matter on any lawn.
const LEAST_DIFFERENCE_M: f64 = 0.05;
/// What RTK fixed stands for, per axis and unit of HDOP (common practice, no source).
const RTK_FIXED_M: f64 = 0.015;

/// One remark for each log whose receiver claims too much.
pub(crate) fn remarks(tracks: &[Track], traces: &[Trace]) -> Vec<Said> {
    tracks
        .iter()
        .zip(traces)
        .filter_map(|(track, trace)| remark(track, &Claims::of(trace)))
        .collect()
}

fn remark(track: &Track, claims: &Claims) -> Option<Said> {
    let scatter_m = scatter_m(track)?;
    let is_too_good =
        |claimed_m: &f64| scatter_m > LEAST_RATIO * claimed_m && scatter_m - claimed_m > LEAST_DIFFERENCE_M;
    if let Some(claimed_m) = claims.claimed_sd_m {
        return Some(claimed_m)
            .filter(is_too_good)
            .map(|claimed_m| Said::ClaimTooGood { claimed_m, scatter_m });
    }
    claims
        .quality
        .filter(|quality| *quality == FixQuality::RtkFixed)
        .map(|_| RTK_FIXED_M * claims.hdop.unwrap_or(1.0))
        .filter(is_too_good)
        .map(|usual_m| Said::RtkFixedTooGood { usual_m, scatter_m })
}

/// Scatter per axis as shown by the positions themselves.
fn scatter_m(track: &Track) -> Option<f64> {
    match track.noise.source {
        NoiseSource::StationScatter | NoiseSource::RestScatter => Some(math::hypot(
            track.noise.white_m,
            track.noise.drift_m.unwrap_or(0.0),
        )),
        NoiseSource::DrivingRoughness => Some(track.noise.white_m),
        _ => None,
    }
}
