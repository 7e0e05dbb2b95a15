//! Turns put back between sparse fixes.

use crate::drawn::{Drive, START_S, corner};
use proptest::prelude::*;
use tussock_locate::sparse_turns::{Outline, Rebuild, estimate, rebuild};
use tussock_locate::{Halt, HaltPlace, Kept, NoiseEstimate, PathMethod, Piece, Surroundings, Track, locate};
use tussock_plane::Region;
use tussock_simulate::gardens::{GardenKind, Wish, invent_as};
use tussock_simulate::{LogNoise, Machine, Run, Sampling, Spell, sample, simulate};
use tussock_types::{Fix, NoiseSource, Place, Positions, Settings, Trace};

const GARDEN_SEEDS: [u64; 3] = [61, 62, 63];

const KNOWN: Rebuild = Rebuild {
    speed_mps: 0.4,
    speed_sd_fraction: 0.004,
    wait_s: 2.0,
    wait_sd_s: 0.2,
    inset_m: 0.2,
    white_m: 0.004,
    outline_m: 0.01,
    lane_share_fraction: 0.0,
    lane_rad: None,
};

fn rectangle(east_m: f64, north_m: f64) -> Region {
    let corners = [(0.0, 0.0), (east_m, 0.0), (east_m, north_m), (0.0, north_m)];
    let ring = corners.map(|(east, north)| Place::new(east, north)).to_vec();
    Region::from_rings(vec![vec![ring]]).expect("a rectangle is ground")
}

fn kept_of(drive: &Drive, period_s: f64) -> Kept {
    let mut kept = Kept::default();
    let mut time_s = START_S;
    while time_s <= drive.end_s() {
        let place = drive.at(time_s);
        kept.time_s.push(time_s);
        kept.east_m.push(place.east_m);
        kept.north_m.push(place.north_m);
        kept.run.push(0);
        time_s += period_s;
    }
    kept
}

fn rebuilt(kept: &Kept, ground: &Region, halts: &[Halt], how: &Rebuild) -> Piece {
    let outline = Outline::of(ground, how.inset_m).expect("ground is left");
    rebuild(kept, 0..kept.len(), &outline, halts, how)
}

/// Distance from a place to the nearest corner of the path.
fn off_m(piece: &Piece, place: Place) -> f64 {
    let distances_m = piece.vertices.iter().map(|vertex| vertex.place.distance_m(place));
    distances_m.fold(f64::INFINITY, f64::min)
}

/// Turns of 2 s at a line 0.2 m inside a rectangle of 20 by 15 m.
fn turns() -> Drive {
    let corners = [
        (3.0, 0.2),
        (13.0, 14.8),
        (19.8, 6.0),
        (9.0, 0.2),
        (0.2, 10.0),
        (16.0, 14.8),
        (11.0, 0.2),
        (4.0, 14.8),
        (8.0, 7.0),
    ];
    let corners = corners.map(|(east_m, north_m)| corner(east_m, north_m, 2.0));
    Drive::new(&corners, 0.4)
}

#[test]
fn turns_between_fixes_come_back_to_where_they_were() {
    let (drive, ground) = (turns(), rectangle(20.0, 15.0));
    for period_s in [5.0, 10.0, 20.0] {
        let kept = kept_of(&drive, period_s);
        let piece = rebuilt(&kept, &ground, &[], &KNOWN);
        let (first, last) = (kept.time_s[0], kept.time_s[kept.len() - 1]);
        for stop in &drive.stops {
            if stop.arrive_s <= first || stop.leave_s >= last {
                continue;
            }
            let off_m = off_m(&piece, stop.place);
            assert!(
                off_m < 0.1,
                "{:?} is {off_m} m off, every {period_s} s",
                stop.place
            );
        }
        let length_m: f64 = piece
            .vertices
            .windows(2)
            .map(|pair| pair[0].place.distance_m(pair[1].place))
            .sum();
        let steps = ((last - first) / 0.05) as usize;
        let at = |step: usize| drive.at(first + (last - first) * step as f64 / steps as f64);
        let driven_m: f64 = (0..steps).map(|step| at(step).distance_m(at(step + 1))).sum();
        let off_fraction = length_m / driven_m - 1.0;
        assert!(
            off_fraction.abs() < 0.01,
            "{off_fraction} of the way, every {period_s} s"
        );
    }
}

#[test]
fn a_lane_end_is_driven_to_and_not_cut_off() {
    let ground = rectangle(20.0, 15.0);
    let corners: Vec<_> = (0..12)
        .flat_map(|lane| {
            let east_m = 2.0 + 0.2 * f64::from(lane);
            let ends = if lane % 2 == 0 { [0.2, 14.8] } else { [14.8, 0.2] };
            ends.map(|north_m| corner(east_m, north_m, 1.0))
        })
        .collect();
    let drive = Drive::new(&corners, 0.4);
    let how = Rebuild {
        wait_s: 1.0,
        lane_share_fraction: 0.9,
        lane_rad: Some(std::f64::consts::FRAC_PI_2),
        ..KNOWN
    };
    let kept = kept_of(&drive, 20.0);
    let piece = rebuilt(&kept, &ground, &[], &how);
    for stop in &drive.stops[1..drive.stops.len() - 2] {
        let off_m = off_m(&piece, stop.place);
        assert!(off_m < 0.15, "lane end {:?} is {off_m} m off", stop.place);
    }
}

#[test]
fn a_long_rest_stays_a_point_and_forgets_the_heading() {
    let ground = rectangle(20.0, 15.0);
    let corners = [
        corner(3.0, 3.0, 0.0),
        corner(10.0, 7.0, 400.0),
        corner(12.0, 14.8, 2.0),
        corner(16.0, 5.0, 0.0),
    ];
    let drive = Drive::new(&corners, 0.4);
    let (stop, kept) = (drive.stops[1], kept_of(&drive, 20.0));
    let inside: Vec<f64> = (kept.time_s.iter().copied())
        .filter(|time_s| (stop.arrive_s..=stop.leave_s).contains(time_s))
        .collect();
    let halt = Halt {
        place: stop.place,
        start_s: inside[0],
        end_s: inside[inside.len() - 1],
        at: HaltPlace::Elsewhere,
        radius_m: 0.0,
        came_from: None,
    };
    let piece = rebuilt(&kept, &ground, &[halt], &KNOWN);
    let stays: Vec<_> = (piece.vertices.iter())
        .filter(|vertex| vertex.leave_s - vertex.arrive_s > 60.0)
        .collect();
    assert_eq!(stays.len(), 1);
    assert_eq!(stays[0].place, stop.place);
    assert!(stays[0].arrive_s <= halt.start_s && stays[0].leave_s >= halt.end_s);
}

/// A log of a machine in an invented garden, with the ground that its plan lets it drive on.
fn logged(kind: GardenKind, seed: u64, machine: &Machine, period_s: f64) -> (Trace, Region) {
    let garden = invent_as(&Wish::new(kind), seed);
    let (site, _) = tussock_plane::Site::build(&garden.plan).expect("invented plans are sound");
    let run = simulate(&site, machine, &Run::new(8.0, 7 * seed)).expect("there is room to drive");
    let trace = sample(&run, &Sampling::local(period_s, LogNoise::CENTIMETRES, 11 * seed));
    let zones = site.exclusions.iter().chain(&site.obstacles);
    let kept_out = Region::union_of(zones.map(|zone| &zone.shape)).expect("zones are sound");
    let outline = site.boundary.as_ref().unwrap_or(&site.drawn_lawn);
    (trace, outline.minus(&kept_out).expect("zones are sound"))
}

fn located(trace: &Trace, ground: Option<&Region>) -> Track {
    let Positions::Local { east_m, north_m } = &trace.positions else {
        panic!("the trace lies on a plane");
    };
    locate(
        trace,
        east_m,
        north_m,
        Surroundings::of(&Settings::default()).on(ground),
    )
}

#[test]
fn speed_wait_and_inset_are_read_from_the_log() {
    for (kind, seed) in GardenKind::ALL.into_iter().zip(GARDEN_SEEDS.into_iter().cycle()) {
        let (speed_mps, inset_m) = (0.3 + 0.05 * (seed % 3) as f64, 0.1 * (seed % 4) as f64 - 0.1);
        let (min_s, max_s) = if seed % 2 == 0 { (1.0, 2.0) } else { (2.5, 4.0) };
        let machine = Machine {
            speed_mps,
            past_boundary_m: -inset_m,
            turning: Spell::Between { min_s, max_s },
            ..Machine::default()
        };
        for period_s in [10.0, 20.0, 30.0] {
            let (trace, ground) = logged(kind, seed, &machine, period_s);
            let track = located(&trace, Some(&ground));
            let how = estimate(&track.kept, &ground, &track.noise, None).unwrap();
            let what = format!("{kind:?} {seed}, every {period_s} s: {how:?}");
            assert!(
                (how.speed_mps / speed_mps - 1.0).abs() < 0.01,
                "speed {speed_mps}, {what}"
            );
            assert!((how.inset_m - inset_m).abs() < 0.05, "inset {inset_m}, {what}");
            assert!(
                (how.wait_s - 0.5 * (min_s + max_s)).abs() < 0.4,
                "wait {min_s} to {max_s}, {what}"
            );
            assert!(how.white_m < 0.03, "{what}");
        }
    }
}

#[test]
fn a_plan_of_another_garden_leaves_the_chords() {
    let (trace, ground) = logged(GardenKind::Convex, GARDEN_SEEDS[0], &Machine::default(), 20.0);
    let (low, high) = ground.bounds().unwrap();
    let across_m = (high.east_m - low.east_m).max(high.north_m - low.north_m);
    let parts = ground.rings().into_iter().map(|part| {
        let moved = |ring: Vec<Place>| {
            ring.into_iter()
                .map(|place| Place::new(place.east_m + 0.6 * across_m, place.north_m))
                .collect()
        };
        part.into_iter().map(moved).collect()
    });
    let elsewhere = Region::from_rings(parts.collect()).unwrap();
    assert_eq!(located(&trace, Some(&ground)).method, PathMethod::Rebuilt);
    assert_eq!(located(&trace, Some(&elsewhere)).method, PathMethod::Chords);
    assert_eq!(located(&trace, None).method, PathMethod::Chords);
}

#[test]
fn the_same_log_gives_the_same_path() {
    let (trace, ground) = logged(GardenKind::Islands, GARDEN_SEEDS[1], &Machine::default(), 20.0);
    assert_eq!(located(&trace, Some(&ground)), located(&trace, Some(&ground)));
}

/// Time step, place, and whether a new segment starts.
type Row = (f64, f64, f64, bool);

fn rows() -> impl Strategy<Value = Vec<Row>> {
    let step_s = prop_oneof![5 => Just(20.0), 3 => 4.5..40.0_f64, 1 => 0.01..4000.0_f64];
    let along_m = || prop_oneof![4 => 0.0..20.0_f64, 2 => Just(5.0), 1 => -60.0..60.0_f64, 1 => Just(0.0)];
    prop::collection::vec((step_s, along_m(), along_m(), prop::bool::weighted(0.03)), 0..70)
}

/// Rings that enclose next to nothing, cross themselves, repeat corners, or are a garden.
fn ground() -> impl Strategy<Value = Region> {
    let corner = || (-3.0..23.0_f64, -3.0..23.0_f64).prop_map(|(east, north)| Place::new(east, north));
    let any = prop::collection::vec(prop::collection::vec(corner(), 3..9), 1..4)
        .prop_map(|rings| Region::from_rings(vec![rings]).unwrap_or_else(|_| Region::empty()));
    let sliver = (0.001..0.6_f64).prop_map(|width_m| rectangle(20.0, width_m));
    prop_oneof![4 => any, 1 => sliver, 1 => Just(Region::empty()), 3 => Just(rectangle(20.0, 15.0))]
}

fn how() -> impl Strategy<Value = Rebuild> {
    (
        0.01..3.0_f64,
        0.0..9.0_f64,
        -1.0..1.0_f64,
        0.001..2.0_f64,
        prop::bool::ANY,
    )
        .prop_map(|(speed_mps, wait_s, inset_m, white_m, has_lanes)| Rebuild {
            speed_mps,
            wait_s,
            inset_m,
            white_m,
            lane_share_fraction: if has_lanes { 0.9 } else { 0.0 },
            lane_rad: has_lanes.then_some(1.0),
            ..KNOWN
        })
}

fn kept_rows(rows: &[Row]) -> Kept {
    let mut kept = Kept::default();
    let (mut time_s, mut run) = (START_S, 0);
    for (step_s, east_m, north_m, starts) in rows {
        time_s += step_s;
        run += u32::from(*starts);
        kept.time_s.push(time_s);
        kept.east_m.push(*east_m);
        kept.north_m.push(*north_m);
        kept.run.push(run);
    }
    kept
}

fn is_sound(piece: &Piece, first_s: f64, last_s: f64) -> Result<(), TestCaseError> {
    let mut now_s = first_s;
    for vertex in &piece.vertices {
        prop_assert!(vertex.place.east_m.is_finite() && vertex.place.north_m.is_finite());
        prop_assert!(
            now_s <= vertex.arrive_s && vertex.arrive_s <= vertex.leave_s,
            "{:?}",
            vertex
        );
        now_s = vertex.leave_s;
    }
    prop_assert!(now_s <= last_s);
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn whatever_the_fixes_and_the_ground_the_path_is_sound_and_passes_every_fix(
        rows in rows(), ground in ground(), how in how(),
    ) {
        let kept = kept_rows(&rows);
        let Some(outline) = Outline::of(&ground, how.inset_m) else { return Ok(()) };
        for run in kept.runs() {
            let piece = rebuild(&kept, run.clone(), &outline, &[], &how);
            is_sound(&piece, kept.time_s[run.start], kept.time_s[run.end - 1])?;
            for index in run {
                prop_assert!(off_m(&piece, kept.place(index)) == 0.0, "fix {} is not passed", index);
            }
        }
    }

    #[test]
    fn whatever_the_log_and_the_ground_locating_is_sound(rows in rows(), ground in ground()) {
        let mut trace = Trace::local("drawn");
        let (mut time_s, mut segment) = (START_S, 0);
        for (step_s, east_m, north_m, starts) in &rows {
            time_s += step_s;
            segment += u32::from(*starts);
            trace.push(Fix { segment, ..Fix::bare(time_s, *east_m, *north_m) });
        }
        let track = located(&trace, Some(&ground));
        for piece in &track.pieces {
            is_sound(piece, START_S, time_s)?;
        }
        let noise = NoiseEstimate {
            white_m: 0.01,
            drift_m: None,
            drift_time_s: None,
            drift_rate_m2_per_s: 1e-6,
            source: NoiseSource::Default,
        };
        if let Some(how) = estimate(&kept_rows(&rows), &ground, &noise, None) {
            prop_assert!(how.speed_mps > 0.0 && how.wait_s >= 0.0 && how.inset_m.is_finite());
        }
    }
}
