//! How the garden is laid out, and how the machine coped with it: room, necks, turns, stuck spots.

use crate::causes::Scene;
use crate::clearance::{Clearance, Reach};
use crate::passages::{self, Neck, Traffic};
use crate::{stuck, turns};
use tussock_coverage::luck;
use tussock_locate::Track;
use tussock_locate::turns::{SetbackSource, Turn};
use tussock_plane::{Leg, LegIndex, Named, Region};
use tussock_survey::{AnalyseError, Survey};
use tussock_types::{OutlineSource, Place};

/// A crossing counts from this depth on, plus twice the position error.
const HYSTERESIS_M: f64 = 0.5;

/// Room, necks, turns and stuck spots of one garden.
pub struct SiteAnalysis {
    /// Where the edges came from.
    pub outline: OutlineSource,
    /// Ground on which the machine may drive.
    pub region: Region,
    /// Room to drive, cell by cell.
    pub clearance: Clearance,
    /// What the machine can reach.
    pub reach: Reach,
    /// Narrow connections, and the traffic through them.
    pub necks: Vec<(Neck, Traffic)>,
    /// Where it turned.
    pub turns: Vec<Turn>,
    /// Turns that no edge of the plan explains.
    pub inner: Vec<Turn>,
    /// Places where it lost time.
    pub spots: Vec<stuck::Spot>,
    /// How far inside the edge the machine's middle turns.
    pub setback_m: f64,
    /// Whether it was read from the log (rather than from the settings).
    pub setback_is_measured: bool,
    /// Position error that is left, per axis.
    pub error_m: f64,
    lines: Vec<Vec<Place>>,
    zones: Vec<Named<Region>>,
}

impl SiteAnalysis {
    /// Reads the site and the drive on it.
    ///
    /// # Errors
    /// As [`Survey::lawn`].
    pub fn of(survey: &Survey<'_>) -> Result<Self, AnalyseError> {
        let region = survey.drivable()?.clone();
        let settings = survey.settings();
        let clearance = Clearance::of(&region);
        let error_m = survey.position_error_m();
        let guides = survey.guides();
        let turns: Vec<Turn> = survey.turns()?.iter().flatten().copied().collect();
        let setback = survey.setback()?;
        let setback_m = setback.inside_m;
        let stations = survey.tracks.iter().filter_map(|track| track.station);
        let station = survey
            .site
            .as_ref()
            .and_then(|site| site.station)
            .or(stations.clone().next());
        let home = station.and_then(|place| clearance.nearest_cell(place));
        // A machine can start wherever its station, or the end of a guide run, is.
        let starts: Vec<usize> = guides
            .iter()
            .flat_map(|guide| guide.iter())
            .chain(&station)
            .filter_map(|place| clearance.nearest_cell(*place))
            .chain(if home.is_none() {
                clearance.roomiest(0..clearance.clear_m.len())
            } else {
                None
            })
            .collect();
        let half_m = 0.5 * survey.swath_m() + settings.machine.cutter_forward_m.abs();
        let reach = Reach::of(&clearance, &starts, setback_m, half_m);
        let lines: Vec<Vec<Place>> = survey
            .tracks
            .iter()
            .flat_map(|track| &track.pieces)
            .map(|piece| piece.vertices.iter().map(|vertex| vertex.place).collect())
            .collect();
        let necks = passages::necks(&clearance, &region, home)
            .into_iter()
            .map(|neck| {
                let traffic = neck.traffic(
                    &clearance,
                    lines.iter().map(Vec::as_slice),
                    HYSTERESIS_M + 2.0 * error_m,
                    6.0 * error_m,
                );
                (neck, traffic)
            })
            .collect();
        Ok(Self {
            outline: survey.lawn()?.source,
            inner: turns::inner(&turns, setback_m, error_m),
            spots: stuck::stuck_spots(
                &survey.tracks,
                &legs(&survey.tracks),
                settings.pockets.stuck_after_s,
            ),
            setback_is_measured: setback.source == SetbackSource::Measured,
            zones: survey
                .site
                .as_ref()
                .map(|site| site.exclusions.clone())
                .unwrap_or_default(),
            turns,
            region,
            clearance,
            reach,
            necks,
            setback_m,
            error_m,
            lines,
        })
    }

    /// Driven lines.
    pub fn lines(&self) -> Vec<&[Place]> {
        self.lines.iter().map(Vec::as_slice).collect()
    }

    /// Everything from which a cause is read.
    pub fn scene<'a>(&'a self, lines: &'a [&'a [Place]], drive: &luck::Drive) -> Scene<'a> {
        Scene {
            outline: self.outline,
            ground: &self.region,
            clearance: &self.clearance,
            reach: &self.reach,
            necks: &self.necks,
            turns: &self.turns,
            inner: &self.inner,
            spots: &self.spots,
            zones: &self.zones,
            lines,
            path_m: drive.path_m,
            lawn_m2: drive.lawn_m2,
            driving_h: drive.path_m / drive.speed_mps.max(1e-9) / 3600.0,
            setback_m: self.setback_m,
            error_m: self.error_m,
        }
    }

    /// Middle of a zone as drawn.
    pub fn zone_middle(&self, zone: usize) -> Option<Place> {
        self.zones.get(zone)?.shape.centroid()
    }

    /// Name of a zone by number.
    pub fn zone_name(&self, zone: usize) -> &str {
        self.zones.get(zone).map_or("", |zone| zone.name.as_str())
    }
}

/// Legs of all machines in time order, for finding those that pass near a place.
fn legs(tracks: &[Track]) -> LegIndex {
    let mut legs: Vec<Leg> = tracks.iter().flat_map(Track::straight_legs).collect();
    legs.sort_by(|a, b| a.start_s.total_cmp(&b.start_s));
    LegIndex::build(legs)
}
