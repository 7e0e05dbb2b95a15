//! The survey: where everything lies and what is derived from it, each worked out once.
//!
//! Plan and logs are placed on one plane, the path behind each log is found, and anyone who needs the lawn, the ground that
//! the machine may drive on, the swept path or the machine asks here. Whatever takes time is worked out when it is first
//! asked for.

use crate::fitted::{self, Fitted, NoFit};
use crate::outline::{self, DrawnLawn};
use crate::plan_offset::PlanShift;
use crate::{AnalyseError, Job, pattern};
use std::sync::OnceLock;
use tussock_coverage::swath::Sweep;
use tussock_coverage::{luck, swath, visits};
use tussock_locate::activities::{self, Lines};
use tussock_locate::left_out;
use tussock_locate::outlier_filter::silence_s;
use tussock_locate::plan_fit::TurnsFit;
use tussock_locate::turns::{self, Setback, SetbackSource, Turn};
use tussock_locate::{PathMethod, Piece, ReceiverLaw, Surroundings, Track, locate};
use tussock_plane::{BitGrid, Frame, Region, Site, rasterise};
use tussock_simulate::TurnPair;
use tussock_types::math;
use tussock_types::{
    FrameFindings, GeoPoint, LimitSettings, OutlineSource, Place, Plan, PlanFault, PositionSettings,
    Positions, Settings, Trace, plural,
};

/// Logs of one garden, measured once.
pub struct Survey<'a> {
    job: Job<'a>,
    /// The local frame; `None` for a log in metres without an origin.
    pub frame: Option<Frame>,
    /// The plan on it.
    pub site: Option<Site>,
    /// Faults of the plan that do not prevent the work.
    pub plan_faults: Vec<PlanFault>,
    /// Where each machine was.
    pub tracks: Vec<Track>,
    /// How the plan lies in logs whose path was found without it, and the plan moved there.
    pub laid: Option<PlacedPlan>,
    /// The same, whether or not it is trusted.
    tried_fit: Option<TurnsFit>,
    receiver: Option<ReceiverLaw>,
    drivable: Option<Region>,
    lawn: OnceLock<Result<Lawn, AnalyseError>>,
    sweeps: OnceLock<Vec<Sweep>>,
    drive: OnceLock<luck::Drive>,
    machine: OnceLock<Result<Fitted, NoFit>>,
    transits: OnceLock<Vec<Vec<(f64, f64)>>>,
    turns: OnceLock<Vec<Vec<Turn>>>,
    setback: OnceLock<Setback>,
}

/// How a plan lies in a log.
#[derive(Clone, Debug)]
pub struct PlacedPlan {
    /// Where the turns say that it lies.
    pub fit: TurnsFit,
    /// The plan moved there, if it is displaced by more than chance.
    pub moved: Option<Plan>,
}

/// The lawn that is counted.
#[derive(Clone, Debug)]
pub struct Lawn {
    /// Its outline.
    pub region: Region,
    /// Whether it comes from the plan or was drawn from the drive.
    pub source: OutlineSource,
    /// The lawn drawn from the drive, if there is one.
    pub drawn: Option<DrawnLawn>,
    /// Its cells, as fine as the cutting width requires.
    pub cells: BitGrid,
}

/// If the middle of a log is farther from the lawn than this, it was made in another garden, or the plan is wrong.
const FAR_APART_M: f64 = 60.0;
/// Plans that are displaced by less than this from a drive in lanes are used as drawn.
const LANES_OFF_M: f64 = 0.5;
/// Sparser logs show nothing of a lawn. Turns are put back at up to 30 s; of 40 logs at 45 to 120 s the interval missed the
/// truth in 27, by up to 90 points.
const MOST_PERIOD_S: f64 = 40.0;
/// Swept cells allowed for each cell of the grid: half a year of driving by default, a minute's work.
const SWEPT_PER_CELL: u64 = 100;
/// Positions within a circle of this size are not a drive.
const LEAST_EXTENT_M: f64 = 1.5;

/// Width for drawing an outline and a map if the user gives none: the middle of the usual widths.
const STAND_IN_WIDTH_M: f64 = 0.26;
/// Side of the largest cells that can be counted, as a fraction of a swath.
const COARSEST_OF_SWATH: f64 = 0.5;
/// Walking pace, between slow and usual (Bohannon 1997, Age and Ageing 26, table 2: comfortable gait of adults 1.27 to 1.46
/// m/s); faster machines state their speed.
const WALK_MPS: f64 = 1.1;
/// The same if the path has no straight legs.
const STROLL_MPS: f64 = 0.7;

impl<'a> Survey<'a> {
    /// Places plan and logs on one plane and finds the path behind each log.
    ///
    /// # Errors
    /// [`AnalyseError`] if plan and logs cannot be brought together.
    pub fn of(job: &Job<'a>) -> Result<Self, AnalyseError> {
        let fixes: u64 = job.traces.iter().map(|trace| trace.len() as u64).sum();
        if fixes > job.settings.limits.fixes {
            return Err(AnalyseError::TooManyFixes {
                fixes,
                limit: job.settings.limits.fixes,
            });
        }
        let is_local = |trace: &Trace| matches!(trace.positions, Positions::Local { .. });
        let locals = job.traces.iter().filter(|trace| is_local(trace)).count();
        if locals != 0 && locals != job.traces.len() {
            return Err(AnalyseError::MixedFrames);
        }
        let settings = &job.settings.positions;
        let origin = settings
            .origin_lat_deg
            .zip(settings.origin_lon_deg)
            .map(|(lat_deg, lon_deg)| GeoPoint { lat_deg, lon_deg });
        let on_earth = locals == 0;
        let (site, plan_faults) = match (job.plan, on_earth, origin) {
            (None, ..) => (None, Vec::new()),
            (Some(_), false, None) => return Err(AnalyseError::LocalLogWithPlan),
            (Some(plan), false, Some(origin)) => built(Site::build_in(plan, Frame::at(origin)))?,
            (Some(plan), true, _) => built(Site::build(plan))?,
        };
        let frame = match (&site, on_earth) {
            (Some(site), _) => Some(site.frame),
            (None, true) => middle(job.traces).map(Frame::at),
            (None, false) => origin.map(Frame::at),
        };
        if let (Some(site), Some(plan), true) = (&site, job.plan, on_earth) {
            same_garden(site, plan, job)?;
        } else if site.is_none() {
            one_garden(job)?;
        }
        let receiver = receiver(&job.settings.positions)?;
        Self::located(*job, frame, site, plan_faults, receiver).laid()
    }

    /// Moves the plan to where the turns of precise logs show it, and surveys the garden again there.
    fn laid(self) -> Result<Self, AnalyseError> {
        let (Some(plan), Some(frame), Some(ground)) = (self.job.plan, self.frame, &self.drivable) else {
            return Ok(self);
        };
        let expected = Setback::expected(&self.settings().machine);
        let fit = turns::plan_fit(&self.tracks, ground, &expected);
        if let Some(fit) = fit
            .as_ref()
            .or(self.held_fit())
            .filter(|fit| fit.is_another_garden())
            .filter(|_| pattern::rounds_fraction(&self.tracks) < pattern::GOES_ROUND)
            // Positions that err by more than they show make turns anywhere.
            .filter(|_| !self.tracks.iter().any(left_out::errs_more))
        {
            return Err(AnalyseError::PlanOfAnotherGarden {
                turns: fit.turns,
                explained_fraction: fit.explained_fraction,
                outside_fraction: fit.outside_fraction,
            });
        }
        let tried_fit = fit.clone();
        let Some(fit) = fit.filter(TurnsFit::is_trusted) else {
            return Ok(Self { tried_fit, ..self });
        };
        // Lanes end where the machine's own map says, and on two sides only.
        let least_m = match pattern::pattern(&self.tracks) {
            luck::Pattern::Lanes => LANES_OFF_M,
            luck::Pattern::Roaming => 0.0,
        };
        let offset = fit.offset;
        if !offset.is_beside() || math::hypot(offset.east_m, offset.north_m) < least_m {
            let laid = Some(PlacedPlan { fit, moved: None });
            return Ok(Self {
                laid,
                tried_fit,
                ..self
            });
        }
        let mut moved = plan.clone();
        PlanShift::from(&offset).plan(&mut moved, &frame);
        let (site, plan_faults) = built(Site::build_in(&moved, frame))?;
        let laid = Some(PlacedPlan {
            fit,
            moved: Some(moved),
        });
        let survey = Self::located(self.job, Some(frame), site, plan_faults, self.receiver);
        Ok(Self {
            laid,
            tried_fit,
            ..survey
        })
    }

    /// The machine with the poorest positions, which stands for all.
    pub fn poorest(&self) -> Option<&Track> {
        let tracks = self.tracks.iter();
        tracks.max_by(|a, b| a.noise.white_m.total_cmp(&b.noise.white_m))
    }

    /// How the plan lies according to the turns of the log with the poorest positions, if these are so poor that its edges
    /// hold the path.
    fn held_fit(&self) -> Option<&TurnsFit> {
        self.poorest()?.anchored.as_ref()?.fit.as_ref()
    }

    /// How the plan lies according to the turns: of logs whose path was found without it, or else of the log with the
    /// poorest positions; `None` if they do not gather at its edges.
    pub fn plan_fit(&self) -> Option<&TurnsFit> {
        self.turns_fit().filter(|fit| fit.is_trusted())
    }

    /// The same, whether or not the turns gather there; `None` if there are too few.
    pub fn turns_fit(&self) -> Option<&TurnsFit> {
        self.tried_fit.as_ref().or_else(|| self.held_fit())
    }

    /// The plan, where the log shows it.
    pub fn plan(&self) -> Option<&Plan> {
        let moved = self.laid.as_ref().and_then(|laid| laid.moved.as_ref());
        moved.or(self.job.plan)
    }

    /// The same garden with other logs, in metres on its plane.
    pub fn simulated<'b>(&self, traces: &'b [Trace], seed: u64) -> Survey<'b>
    where
        'a: 'b,
    {
        let job = Job {
            traces,
            seed,
            progress: None,
            ..self.job
        };
        Survey::located(job, self.frame, self.site.clone(), Vec::new(), self.receiver)
    }

    /// Finds the path behind each trace.
    fn located(
        job: Job<'a>,
        frame: Option<Frame>,
        site: Option<Site>,
        plan_faults: Vec<PlanFault>,
        receiver: Option<ReceiverLaw>,
    ) -> Self {
        let stations = site.as_ref().map_or(&[][..], |site| &site.stations);
        let drivable = site.as_ref().and_then(Site::drivable);
        let path = |trace: &Trace| {
            let (east_m, north_m) = places(trace, frame.as_ref());
            let known = Surroundings {
                station: station_of(stations, &east_m, &north_m),
                ground: drivable.as_ref(),
                settings: job.settings,
                receiver: receiver.as_ref(),
            };
            locate(trace, &east_m, &north_m, known)
        };
        Self {
            tracks: job.traces.iter().map(path).collect(),
            laid: None,
            tried_fit: None,
            receiver,
            job,
            frame,
            site,
            plan_faults,
            drivable,
            lawn: OnceLock::new(),
            sweeps: OnceLock::new(),
            drive: OnceLock::new(),
            machine: OnceLock::new(),
            transits: OnceLock::new(),
            turns: OnceLock::new(),
            setback: OnceLock::new(),
        }
    }

    /// What was asked.
    pub fn job(&self) -> &Job<'a> {
        &self.job
    }

    /// What the user wants.
    pub fn settings(&self) -> &'a Settings {
        self.job.settings
    }

    /// The width that the machine cuts, or its stand-in if none is given.
    pub fn swath_m(&self) -> f64 {
        self.settings().machine.cut_width_m.unwrap_or(STAND_IN_WIDTH_M)
    }

    /// Guide runs of the plan.
    pub fn guides(&self) -> Vec<&[Place]> {
        let guides = self.site.iter().flat_map(|site| &site.guides);
        guides.map(|guide| guide.shape.as_slice()).collect()
    }

    /// Lines that a machine can follow out of the station and home.
    pub fn lines<'b>(&'b self, guides: &'b [&'b [Place]]) -> Lines<'b> {
        let boundary = self
            .site
            .as_ref()
            .map(|site| site.boundary.as_ref().unwrap_or(&site.drawn_lawn));
        Lines { guides, boundary }
    }

    /// Times along guide runs and edges, for each track.
    pub fn transits(&self) -> &[Vec<(f64, f64)>] {
        self.transits.get_or_init(|| {
            let guides = self.guides();
            let transits = |track| activities::transits(track, self.lines(&guides));
            self.tracks.iter().map(transits).collect()
        })
    }

    /// Pieces of path that were swept by the machine with this number; without transit, if it does not cut there.
    pub fn swept(&self, number: usize, pieces: Vec<Piece>) -> Vec<Piece> {
        if self.settings().machine.cuts_in_transit {
            return pieces;
        }
        activities::without(&pieces, &self.transits()[number])
    }

    /// Pieces of path that were swept by all machines, as located.
    pub fn swept_as_located(&self) -> Vec<Piece> {
        let tracks = self.tracks.iter().enumerate();
        tracks
            .flat_map(|(number, track)| self.swept(number, track.pieces.clone()))
            .collect()
    }

    /// Position error that is left in the path, per axis: that of the poorest track.
    pub fn position_error_m(&self) -> f64 {
        self.tracks
            .iter()
            .map(Track::position_error_m)
            .fold(0.0, f64::max)
    }

    /// Turns of each track on the ground that it may drive on.
    ///
    /// # Errors
    /// As [`Survey::lawn`].
    pub fn turns(&self) -> Result<&[Vec<Turn>], AnalyseError> {
        let ground = self.drivable()?;
        Ok(self.turns.get_or_init(|| {
            let tracks = self.tracks.iter().zip(self.transits());
            tracks
                .map(|(track, transits)| turns::turns(track, ground, transits))
                .collect()
        }))
    }

    /// How far inside its edges the machine turns: what the settings state, else what the log shows, else the usual value.
    ///
    /// # Errors
    /// As [`Survey::lawn`].
    pub fn setback(&self) -> Result<Setback, AnalyseError> {
        let turns = self.turns()?;
        Ok(*self.setback.get_or_init(|| {
            let expected = Setback::expected(&self.settings().machine);
            let mut tracks = self.tracks.iter().zip(turns);
            match expected.source {
                SetbackSource::Stated => expected,
                _ => tracks
                    .find_map(|(track, turns)| Setback::measured(track, turns))
                    .unwrap_or(expected),
            }
        }))
    }

    /// The sweeps of every machine, as located.
    pub fn sweeps(&self) -> &[Sweep] {
        self.sweeps
            .get_or_init(|| swath::sweeps_of(self.swept_as_located().iter(), self.settings()))
    }

    /// The lawn: from the plan, or else drawn from the drive.
    ///
    /// # Errors
    /// If it cannot be drawn, or cannot be counted in reasonable time and memory.
    pub fn lawn(&self) -> Result<&Lawn, AnalyseError> {
        let lawn = self.lawn.get_or_init(|| {
            let (swath_m, limits) = (self.swath_m(), &self.settings().limits);
            let (region, source, drawn) = match &self.site {
                Some(site) => (site.lawn.clone(), OutlineSource::Plan, None),
                None => {
                    let machine = &self.settings().machine;
                    let drawn = outline::drawn_lawn(&self.tracks, machine, swath_m, limits.cells)?;
                    (drawn.region.clone(), OutlineSource::Trace, Some(drawn))
                }
            };
            self.must_be_countable(region.bounds().unwrap_or_default(), swath_m, limits)?;
            // An outline drawn from a walk or a car is not a lawn, and may be as large as a town: a sketch of it is enough.
            let cell_m = match (source, self.walking_pace_mps()) {
                (OutlineSource::Trace, Some(_)) => swath_m,
                _ => visits::cell_for_width_m(swath_m),
            };
            let (low, high) = region.bounds().unwrap_or_default();
            let cells = rasterise(&region, &visits::grid_over(low, high, cell_m, limits.cells));
            Ok(Lawn {
                region,
                source,
                drawn,
                cells,
            })
        });
        lawn.as_ref().map_err(Clone::clone)
    }

    /// Ground on which the machine may drive: from the plan, or else the lawn.
    ///
    /// # Errors
    /// As [`Survey::lawn`].
    pub fn drivable(&self) -> Result<&Region, AnalyseError> {
        match &self.drivable {
            Some(region) => Ok(region),
            None => self.lawn().map(|lawn| &lawn.region),
        }
    }

    /// Path on the lawn and the pace of the machine.
    ///
    /// # Errors
    /// As [`Survey::lawn`].
    pub fn drive(&self) -> Result<&luck::Drive, AnalyseError> {
        let lawn = self.lawn()?;
        Ok(self.drive.get_or_init(|| {
            let is_on_lawn = |sweep: &&Sweep| {
                let middle = sweep.from.middle(sweep.to);
                let cell = lawn.cells.grid.cell_at(middle);
                sweep.driving_s > 0.0 && cell.is_some_and(|(column, row)| lawn.cells.get(column, row))
            };
            let on_lawn = self.sweeps().iter().filter(is_on_lawn);
            let driving_s: f64 = self.tracks.iter().map(Track::driving_s).sum();
            let all_m: f64 = self.tracks.iter().map(Track::path_m).sum();
            luck::Drive {
                lawn_m2: lawn.region.area_m2(),
                path_m: on_lawn.map(|sweep| sweep.from.distance_m(sweep.to)).sum(),
                cut_width_m: self.swath_m(),
                pattern: pattern::pattern(&self.tracks),
                place_share: luck::MIDDLE_SHARE,
                speed_mps: if driving_s > 0.0 { all_m / driving_s } else { 0.0 },
            }
        }))
    }

    /// The machine as the log shows it.
    ///
    /// # Errors
    /// [`NoFit`] if chance does not govern the drive, or too little of it is seen.
    pub fn machine(&self) -> Result<&Fitted, NoFit> {
        let machine = self.machine.get_or_init(|| {
            let (Some(site), Ok(ground), Ok(turns)) = (&self.site, self.drivable(), self.turns()) else {
                return Err(NoFit::NoGround);
            };
            fitted::fit(site, ground, &self.tracks, turns, self.settings())
        });
        machine.as_ref().map_err(|why| *why)
    }

    /// Angles of all machines' turns that were made at an edge at the usual distance, including those on the way home.
    pub fn turn_pairs(&self) -> Vec<TurnPair> {
        let turns = self.turns().unwrap_or_default();
        let tracks = self.tracks.iter().zip(turns);
        tracks
            .flat_map(|(track, turns)| fitted::turn_pairs_of(track, turns))
            .collect()
    }

    /// Refuses logs from which no lawn can be counted.
    ///
    /// # Errors
    /// [`AnalyseError`] if there are no fixes, no drive, or fixes too far apart in place or time.
    pub fn must_be_a_garden(&self) -> Result<(), AnalyseError> {
        let job = &self.job;
        let cut_width_m = job.settings.machine.cut_width_m;
        if let Some(cut_width_m) = cut_width_m.filter(|width_m| !(0.05..=2.0).contains(width_m)) {
            return Err(AnalyseError::CutWidthOutOfRange { cut_width_m });
        }
        let read: usize = job.traces.iter().map(Trace::len).sum();
        let used = self.fixes_used();
        if used < 2 {
            return Err(AnalyseError::NoFixes {
                read,
                gated: read - used,
            });
        }
        let (width_m, height_m) = self.extent_m();
        let extent_m = width_m.max(height_m);
        let limit_m = job.settings.limits.extent_m;
        if extent_m > limit_m {
            return Err(AnalyseError::ExtentTooLarge { extent_m, limit_m });
        }
        if math::hypot(width_m, height_m) < LEAST_EXTENT_M {
            return Err(AnalyseError::NoMovement {
                extent_m: math::hypot(width_m, height_m),
                least_m: LEAST_EXTENT_M,
            });
        }
        if let Some((period_s, limit_s)) = self.too_coarse() {
            return Err(AnalyseError::TooCoarse { period_s, limit_s });
        }
        Ok(())
    }

    /// The usual time between two fixes and the longest at which a lawn can be counted, if every log exceeds it.
    pub fn too_coarse(&self) -> Option<(f64, f64)> {
        let driven = self.tracks.iter().filter(|track| track.fixes_used > 1);
        let period_s = driven.map(|track| track.period_s).reduce(f64::min)?;
        let limit_s = MOST_PERIOD_S.min(silence_s(&self.settings().positions, period_s));
        (period_s > limit_s).then_some((period_s, limit_s))
    }

    /// Speed of a track that was walked, not driven by a mower; `None` if the settings state the machine's speed.
    pub fn walking_pace_mps(&self) -> Option<f64> {
        if self.settings().machine.speed_mps.is_some() {
            return None;
        }
        self.tracks.iter().find_map(|track| {
            let is_straight = matches!(track.method, PathMethod::Legs | PathMethod::Anchored);
            let most_mps = if is_straight { WALK_MPS } else { STROLL_MPS };
            track.speed_mps.filter(|speed_mps| *speed_mps > most_mps)
        })
    }

    /// Refuses whatever cannot be counted in reasonable time and memory, before counting starts.
    fn must_be_countable(
        &self,
        (low, high): (Place, Place),
        swath_m: f64,
        limits: &LimitSettings,
    ) -> Result<(), AnalyseError> {
        let (width_m, height_m) = (high.east_m - low.east_m, high.north_m - low.north_m);
        let coarsest_m = COARSEST_OF_SWATH * swath_m;
        let cell_m = visits::grid_over(low, high, visits::cell_for_width_m(swath_m), limits.cells).cell_m;
        if cell_m > coarsest_m {
            return Err(AnalyseError::LawnTooLarge {
                width_m,
                height_m,
                cells: ((width_m / coarsest_m + 3.0) * (height_m / coarsest_m + 3.0)) as u64,
                limit: limits.cells,
            });
        }
        let path_m: f64 = self.tracks.iter().map(Track::path_m).sum();
        let cells = (path_m * swath_m / (cell_m * cell_m)) as u64;
        let limit = limits.cells.saturating_mul(SWEPT_PER_CELL);
        if cells > limit {
            return Err(AnalyseError::PathTooLong { path_m, cells, limit });
        }
        Ok(())
    }

    /// Fixes that passed the outlier filter, over all machines.
    pub fn fixes_used(&self) -> usize {
        self.tracks.iter().map(|track| track.fixes_used).sum()
    }

    /// Box around all used fixes, south-west and north-east; at the origin if there are none.
    pub fn bounds(&self) -> (Place, Place) {
        let fixes = (self.tracks.iter()).flat_map(|track| track.kept.east_m.iter().zip(&track.kept.north_m));
        Place::bounds(fixes.map(|(east_m, north_m)| Place::new(*east_m, *north_m))).unwrap_or_default()
    }

    /// Extent of all used fixes, east by north.
    pub fn extent_m(&self) -> (f64, f64) {
        let (low, high) = self.bounds();
        (high.east_m - low.east_m, high.north_m - low.north_m)
    }

    /// First and last fix over all machines; NaN if none can be used.
    pub fn span_s(&self) -> (f64, f64) {
        if self.fixes_used() == 0 {
            return (f64::NAN, f64::NAN);
        }
        self.tracks.iter().filter_map(|track| track.read_s).fold(
            (f64::INFINITY, f64::NEG_INFINITY),
            |(start_s, end_s), (first_s, last_s)| (start_s.min(first_s), end_s.max(last_s)),
        )
    }

    /// Position on Earth of a place; `None` for a log in metres without an origin.
    pub fn geo(&self, place: Place) -> Option<GeoPoint> {
        self.frame.map(|frame| frame.to_geo(place))
    }

    /// The frame as stated in the findings.
    pub fn frame_findings(&self) -> FrameFindings {
        let origin = self.frame.map(|frame| frame.origin());
        FrameFindings {
            origin_lat: origin.map(|origin| origin.lat_deg),
            origin_lon: origin.map(|origin| origin.lon_deg),
        }
    }
}

type Built = Result<(Site, Vec<PlanFault>), Vec<PlanFault>>;

/// How the receiver errs, where settings say so.
fn receiver(settings: &PositionSettings) -> Result<Option<ReceiverLaw>, AnalyseError> {
    let law = ReceiverLaw::of(settings);
    let Some(card) = settings.card.as_ref().filter(|_| law.is_none()) else {
        return Ok(law);
    };
    let file = card.file.clone();
    match &card.errors {
        None => Err(AnalyseError::CardNotRead { file }),
        Some(errors) => Err(AnalyseError::CardTellsNothing {
            file,
            lasts_s: errors.lasts_s(),
        }),
    }
}

fn built(result: Built) -> Result<(Option<Site>, Vec<PlanFault>), AnalyseError> {
    match result {
        Ok((site, faults)) => Ok((Some(site), faults)),
        Err(faults) => Err(AnalyseError::PlanFaults(faults)),
    }
}

/// Median position of all traces on Earth.
fn middle(traces: &[Trace]) -> Option<GeoPoint> {
    let (mut lat_deg, mut lon_deg) = (Vec::new(), Vec::new());
    for trace in traces {
        if let Positions::Geographic {
            lat_deg: lats,
            lon_deg: lons,
        } = &trace.positions
        {
            lat_deg.extend_from_slice(lats);
            lon_deg.extend_from_slice(lons);
        }
    }
    if lat_deg.is_empty() {
        return None;
    }
    // A garden on the antimeridian: count longitudes from there.
    let across = lon_deg.iter().any(|lon| *lon > 179.0) && lon_deg.iter().any(|lon| *lon < -179.0);
    if across {
        lon_deg
            .iter_mut()
            .filter(|lon| **lon < 0.0)
            .for_each(|lon| *lon += 360.0);
    }
    let half = lat_deg.len() / 2;
    lat_deg.select_nth_unstable_by(half, f64::total_cmp);
    lon_deg.select_nth_unstable_by(half, f64::total_cmp);
    let lon = if lon_deg[half] > 180.0 {
        lon_deg[half] - 360.0
    } else {
        lon_deg[half]
    };
    Some(GeoPoint {
        lat_deg: lat_deg[half],
        lon_deg: lon,
    })
}

/// The station that a machine uses: of several, the one where it spends the longest time.
fn station_of(stations: &[Place], east_m: &[f64], north_m: &[f64]) -> Option<Place> {
    const NEAR_M: f64 = 4.0;
    if stations.len() < 2 {
        return stations.first().copied();
    }
    let fixes_near = |station: &Place| {
        let places = east_m.iter().zip(north_m);
        places
            .filter(|(east_m, north_m)| Place::new(**east_m, **north_m).distance_m(*station) < NEAR_M)
            .count()
    };
    // The first of those that are equally good.
    stations
        .iter()
        .rev()
        .max_by_key(|station| fixes_near(station))
        .copied()
}

/// East and north of every fix.
pub fn places(trace: &Trace, frame: Option<&Frame>) -> (Vec<f64>, Vec<f64>) {
    match (&trace.positions, frame) {
        (Positions::Geographic { lat_deg, lon_deg }, Some(frame)) => frame.places(lat_deg, lon_deg),
        (Positions::Geographic { .. }, None) => (Vec::new(), Vec::new()),
        (Positions::Local { east_m, north_m }, _) => (east_m.clone(), north_m.clone()),
    }
}

/// Names of the files that hold a machine; its own where the files are not known.
fn files_of(job: &Job<'_>, machine: &str) -> String {
    let mut names = (job.inputs.iter())
        .filter(|facts| facts.machine.split(" and ").any(|name| name == machine))
        .map(|facts| facts.name.as_str());
    let first = names.next().unwrap_or(machine).to_owned();
    match names.count() {
        0 => first,
        more => format!("{first} and {}", plural(more, "more file", "more files")),
    }
}

/// Refuses logs of two gardens, where no plan says that both are lawns of one.
fn one_garden(job: &Job<'_>) -> Result<(), AnalyseError> {
    let Some((first, others)) = job.traces.split_first() else {
        return Ok(());
    };
    match others.iter().find(|other| first.is_far_from(other)) {
        None => Ok(()),
        Some(other) => Err(AnalyseError::TwoGardens {
            one: files_of(job, &first.machine),
            other: files_of(job, &other.machine),
            apart_m: first.apart_m(other).unwrap_or_default(),
        }),
    }
}

/// Refuses a log that was made in another garden.
fn same_garden(site: &Site, plan: &tussock_types::Plan, job: &Job<'_>) -> Result<(), AnalyseError> {
    let traces = job.traces;
    let (Some(log), Some((low, high))) = (middle(traces), site.drawn_lawn.bounds()) else {
        return Ok(());
    };
    let off = |value: f64, low: f64, high: f64| (low - value).max(value - high).max(0.0);
    let off_lawn_m = |log: GeoPoint| {
        let at = site.frame.to_place(log);
        math::hypot(
            off(at.east_m, low.east_m, high.east_m),
            off(at.north_m, low.north_m, high.north_m),
        )
    };
    let lies_m = |trace: &Trace| middle(std::slice::from_ref(trace)).map_or(0.0, off_lawn_m);
    let mut far = traces.iter().filter(|trace| lies_m(trace) > FAR_APART_M);
    let Some(first) = far.next() else { return Ok(()) };
    if far.count() + 1 < traces.len() {
        return Err(AnalyseError::LogOfAnotherGarden {
            files: files_of(job, &first.machine),
            distance_m: lies_m(first),
        });
    }
    let distance_m = off_lawn_m(log);
    let lawn = site.frame.origin();
    Err(AnalyseError::PlanAndLogFarApart {
        distance_m,
        log_lat_deg: log.lat_deg,
        log_lon_deg: log.lon_deg,
        plan_lat_deg: lawn.lat_deg,
        plan_lon_deg: lawn.lon_deg,
        is_swapped: looks_swapped(plan, log),
    })
}

/// Whether the plan would lie at the log if latitude and longitude were exchanged.
fn looks_swapped(plan: &tussock_types::Plan, log: GeoPoint) -> bool {
    let near =
        |point: &GeoPoint| math::hypot(point.lon_deg - log.lat_deg, point.lat_deg - log.lon_deg) < 0.05;
    let mut features = plan.features.iter();
    features.any(|feature| feature.shape.points().iter().any(near))
}
