//! How the garden is laid out, and what the machine made of it: room, necks, turns, stuck spots.

use crate::ground::Ground;
use crate::interval;
use tussock_diagnose::causes::Scene;
use tussock_diagnose::clearance::{Clearance, Reach};
use tussock_diagnose::passages::{self, Neck, Traffic};
use tussock_diagnose::{luck, stuck, turns};
use tussock_locate::activities;
use tussock_plane::{LegIndex, Named, Region, Site};
use tussock_types::{Place, Settings};

/// Where nothing else is known, the machine's middle keeps so far inside (common practice, no source).
pub(crate) const USUAL_SETBACK_M: f64 = 0.15;
/// A change of side counts from this depth on, besides twice the position error.
const HYSTERESIS_M: f64 = 0.5;

/// Room, necks, turns and stuck spots of one garden.
pub(crate) struct SiteAnalysis {
    /// Ground on which the machine may drive.
    pub(crate) region: Region,
    pub(crate) clearance: Clearance,
    pub(crate) reach: Reach,
    pub(crate) necks: Vec<(Neck, Traffic)>,
    pub(crate) turns: Vec<turns::Turn>,
    pub(crate) inner: Vec<turns::Turn>,
    pub(crate) spots: Vec<stuck::Spot>,
    /// How far inside the edge the machine's middle turns.
    pub(crate) setback_m: f64,
    /// Whether the log told, or the settings.
    pub(crate) setback_is_measured: bool,
    /// Position error that is left, per axis.
    pub(crate) error_m: f64,
    lines: Vec<Vec<Place>>,
    zones: Vec<Named<Region>>,
}

impl SiteAnalysis {
    /// `lawn` is the outline that is counted; it stands in for the ground where there is no plan.
    pub(crate) fn of(
        ground: &Ground,
        lawn: &Region,
        index: &LegIndex,
        settings: &Settings,
        cut_width_m: f64,
    ) -> Self {
        let region = ground
            .site
            .as_ref()
            .and_then(Site::drivable)
            .unwrap_or_else(|| lawn.clone());
        let clearance = Clearance::of(&region);
        let error_m = ground
            .tracks
            .iter()
            .map(interval::position_error_m)
            .fold(0.0, f64::max);
        let guides = ground.guides();
        let all_turns: Vec<turns::Turn> = ground
            .tracks
            .iter()
            .flat_map(|track| {
                let transits = activities::transits(track, ground.lines(&guides));
                turns::turns(track, &region, &transits, error_m)
            })
            .collect();
        let set = settings.machine.past_boundary_m.map(|past_m| -past_m);
        let anchored = ground
            .tracks
            .iter()
            .filter_map(|track| track.anchored.as_ref())
            .map(|anchored| anchored.inset_m)
            .next();
        let measured = anchored.or_else(|| turns::setback_m(&all_turns, error_m));
        let setback_m = set.or(measured).unwrap_or(USUAL_SETBACK_M);
        let stations = ground.tracks.iter().filter_map(|track| track.station);
        let station = ground
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
        let half_m = 0.5 * cut_width_m + settings.machine.cutter_forward_m.abs();
        let reach = Reach::of(&clearance, &starts, setback_m, half_m);
        let lines: Vec<Vec<Place>> = ground
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
        Self {
            inner: turns::inner(&all_turns, setback_m, error_m),
            spots: stuck::stuck_spots(&ground.tracks, index, settings.pockets.stuck_after_s),
            setback_is_measured: set.is_none() && measured.is_some(),
            zones: ground
                .site
                .as_ref()
                .map(|site| site.exclusions.clone())
                .unwrap_or_default(),
            turns: all_turns,
            region,
            clearance,
            reach,
            necks,
            setback_m,
            error_m,
            lines,
        }
    }

    /// Driven lines.
    pub(crate) fn lines(&self) -> Vec<&[Place]> {
        self.lines.iter().map(Vec::as_slice).collect()
    }

    /// What a cause is read from.
    pub(crate) fn scene<'a>(&'a self, lines: &'a [&'a [Place]], drive: &luck::Drive) -> Scene<'a> {
        Scene {
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
    pub(crate) fn zone_middle(&self, zone: usize) -> Option<Place> {
        self.zones.get(zone)?.shape.centroid()
    }

    /// Name of a zone by number.
    pub(crate) fn zone_name(&self, zone: usize) -> &str {
        self.zones.get(zone).map_or("", |zone| zone.name.as_str())
    }
}
