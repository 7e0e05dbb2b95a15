//! Pockets told apart: missed, or not yet.

use crate::counted::Counted;
use crate::ground::Ground;
use crate::{interval, unseen};
use tussock_coverage::pockets;
use tussock_diagnose::luck;
use tussock_plane::{BitGrid, Landmark, Leg, LegIndex, Region, outlines, tape};
use tussock_types::{Cells, MissedPocket, NotYetPocket, Place, Settings, Tape, UnseenGround};

/// Pockets told apart.
pub(crate) struct Sorted {
    pub(crate) missed: Vec<MissedPocket>,
    pub(crate) not_yet: Vec<NotYetPocket>,
    pub(crate) unseen: Vec<UnseenGround>,
}

impl Sorted {
    pub(crate) fn of(
        counted: &Counted,
        ground: &Ground,
        drive: &luck::Drive,
        cells: &Cells,
        index: &LegIndex,
        landmarks: &[Landmark],
        settings: &Settings,
    ) -> Self {
        let mut unvisited = counted.count.lawn.clone();
        unvisited.and_not_in_place(&counted.count.visited);
        // No detail that the positions do not carry.
        let shown_m = interval::findable_width_m(ground);
        let found = pockets::pockets(
            &unvisited,
            settings.pockets.min_width_m.max(shown_m),
            settings.pockets.min_area_m2.max(0.25 * shown_m * shown_m),
        );
        let mut sorted = Self {
            missed: Vec::new(),
            not_yet: Vec::new(),
            unseen: Vec::new(),
        };
        let hidden = unseen::hidden(ground, drive.lawn_m2);
        let mean = mean_visits(cells);
        for pocket in found {
            // Judged by what is normal there: the passes over the ground round it.
            let nearby = nearby(&pocket, cells);
            let drive = drive.at_place(if mean > 0.0 { nearby / mean } else { 0.0 });
            let chance_fraction = drive.chance_fraction(pocket.widest_m);
            let geo = ground.geo(pocket.place);
            let outline = simplified(&pocket.cells);
            let tape = measured(
                tape(landmarks, pocket.place),
                ground,
                counted.count.lawn.grid.cell_m,
            );
            let area_m2 = pocket.area_m2 * counted.scale;
            let hidden_chance = unseen::chance(&hidden, pocket.place, pocket.widest_m, drive.cut_width_m);
            if hidden_chance >= unseen::UNSEEN_CHANCE {
                sorted.unseen.push(UnseenGround {
                    id: format!("U{}", sorted.unseen.len() + 1),
                    area_m2,
                    outline,
                    why: format!(
                        "The log is silent while the mower may have been there (chance {:.0} %).",
                        100.0 * hidden_chance
                    ),
                });
                continue;
            }
            if chance_fraction <= luck::MISSED_CHANCE_FRACTION {
                sorted.missed.push(MissedPocket {
                    id: format!("M{}", sorted.missed.len() + 1),
                    area_m2,
                    widest_m: pocket.widest_m,
                    lat: geo.map(|geo| geo.lat_deg),
                    lon: geo.map(|geo| geo.lon_deg),
                    east_m: pocket.place.east_m,
                    north_m: pocket.place.north_m,
                    outline,
                    certainty: Some(certainty(counted, &pocket)),
                    chance_fraction,
                    visited_fraction: 0.0,
                    causes: None,
                    why: why_missed(&pocket, chance_fraction, &drive, index),
                    tape,
                    suggestion_ids: Vec::new(),
                });
            } else {
                sorted.not_yet.push(NotYetPocket {
                    id: format!("N{}", sorted.not_yet.len() + 1),
                    area_m2,
                    widest_m: pocket.widest_m,
                    lat: geo.map(|geo| geo.lat_deg),
                    lon: geo.map(|geo| geo.lon_deg),
                    east_m: pocket.place.east_m,
                    north_m: pocket.place.north_m,
                    outline,
                    chance_fraction,
                    hours_to_decide: drive.hours_to_decide(pocket.widest_m),
                    tape,
                });
            }
        }
        sorted
    }
}

/// Certainty of a pocket in a log that shows one path only: of 123 that were found in simulated gardens with centimetre
/// logs all were there.
const ONE_PATH_CERTAINTY: f64 = 0.99;

/// How sure it is that a pocket's ground was not driven over: mean over its cells of the share of pasts that leave them out.
fn certainty(counted: &Counted, pocket: &pockets::Pocket) -> f64 {
    let Some(likely) = &counted.likely else {
        return ONE_PATH_CERTAINTY;
    };
    let (own, grid) = (pocket.cells.grid, counted.count.grid);
    let (mut left_out, mut cells) = (0.0, 0.0);
    for (column, row) in pocket.cells.cells_on() {
        if let Some((x, y)) = grid.cell_at(own.centre(column, row)) {
            cells += 1.0;
            left_out += 1.0 - f64::from(likely.times(x, y)) / (likely.pasts() as f64).max(1.0);
        }
    }
    if cells > 0.0 { left_out / cells } else { 0.0 }
}

/// Ground within this distance of a pocket tells how often that neighbourhood is visited.
const NEARBY_M: f64 = 4.0;

/// Tapes with their error: that of the positions round the pocket, how surely the plan lies in the log's frame, and half a
/// counting cell.
fn measured(mut tapes: Vec<Tape>, ground: &Ground, cell_m: f64) -> Vec<Tape> {
    let place_m = |track: &tussock_locate::Track| {
        let plan_m = track
            .anchored
            .as_ref()
            .map_or(0.0, |anchored| anchored.offset.sd_m);
        interval::position_error_m(track).hypot(plan_m)
    };
    let error_m = ground
        .tracks
        .iter()
        .map(place_m)
        .fold(0.0, f64::max)
        .hypot(0.5 * cell_m);
    for tape in &mut tapes {
        tape.sd_m = error_m.is_finite().then_some(error_m);
    }
    tapes
}

/// Mean visits over all lawn.
fn mean_visits(cells: &Cells) -> f64 {
    let (mut sum, mut lawn) = (0.0, 0.0);
    for (visits, part) in cells.visits_expected.iter().zip(&cells.lawn_fraction) {
        sum += f64::from(*visits) * f64::from(*part);
        lawn += f64::from(*part);
    }
    if lawn > 0.0 { sum / lawn } else { 0.0 }
}

/// Mean visits of the lawn round a pocket, the pocket itself left out.
fn nearby(pocket: &pockets::Pocket, cells: &Cells) -> f64 {
    let (own, grid) = (pocket.cells.grid, cells.grid);
    let at = |value_m: f64, min_m: f64, most: usize| {
        (((value_m - min_m) / grid.cell_m).floor().max(0.0) as usize).min(most.saturating_sub(1))
    };
    let columns = at(own.east_min_m - NEARBY_M, grid.east_min_m, grid.columns)
        ..=at(
            own.east_min_m + own.columns as f64 * own.cell_m + NEARBY_M,
            grid.east_min_m,
            grid.columns,
        );
    let rows = at(own.north_min_m - NEARBY_M, grid.north_min_m, grid.rows)
        ..=at(
            own.north_min_m + own.rows as f64 * own.cell_m + NEARBY_M,
            grid.north_min_m,
            grid.rows,
        );
    let (mut sum, mut lawn) = (0.0, 0.0);
    for row in rows {
        for column in columns.clone() {
            let square = row * grid.columns + column;
            let part = f64::from(cells.lawn_fraction[square]);
            let inside = own
                .cell_at(grid.centre(column, row))
                .is_some_and(|(x, y)| pocket.cells.get(x, y));
            if part > 0.0 && !inside {
                sum += f64::from(cells.visits_expected[square]) * part;
                lawn += part;
            }
        }
    }
    if lawn > 0.0 { sum / lawn } else { 0.0 }
}

/// What this log shows of a missed pocket: how unlikely luck is, and how often the machine came to its edge.
fn why_missed(
    pocket: &pockets::Pocket,
    chance_fraction: f64,
    drive: &luck::Drive,
    index: &LegIndex,
) -> String {
    let hours = drive.path_m / drive.speed_mps.max(1e-9) / 3600.0;
    let odds = match drive.pattern {
        luck::Pattern::Lanes => "a whole tour of lanes leaves no gap so wide to luck".to_owned(),
        luck::Pattern::Roaming if chance_fraction < 0.001 => {
            format!(
                "luck alone leaves a gap {:.1} m wide in less than 1 of 1,000 such lawns",
                pocket.widest_m
            )
        }
        luck::Pattern::Roaming => format!(
            "luck alone leaves a gap {:.1} m wide in about 1 of {:.0} such lawns",
            pocket.widest_m,
            1.0 / chance_fraction
        ),
    };
    // A drive that comes within half a width and a little of the pocket's ground has come to its edge.
    let reach_m = 0.5 * drive.cut_width_m + 0.15;
    let own = pocket.cells.grid;
    let radius_m = 0.5 * (own.columns as f64).hypot(own.rows as f64) * own.cell_m + reach_m;
    let middle = Place::new(
        own.east_min_m + 0.5 * own.columns as f64 * own.cell_m,
        own.north_min_m + 0.5 * own.rows as f64 * own.cell_m,
    );
    let rim = simplified(&pocket.cells);
    let mut turned = 0_usize;
    let mut last_s = f64::NEG_INFINITY;
    for leg in index
        .within(middle, radius_m)
        .into_iter()
        .map(|number| index.legs()[number])
    {
        if leg.end_s - last_s > 5.0 && rim.iter().any(|ring| near_ring(ring, leg.to, reach_m)) {
            turned += 1;
            last_s = leg.end_s;
        }
    }
    let edge = match turned {
        0 => "The mower never turned at its edge.".to_owned(),
        1 => "The mower turned at its edge once.".to_owned(),
        more => format!("The mower turned at its edge {more} times."),
    };
    format!("Not driven over in {hours:.1} h of driving; {odds}. {edge}")
}

fn near_ring(ring: &[Place], place: Place, reach_m: f64) -> bool {
    ring.windows(2).any(|pair| {
        Leg {
            from: pair[0],
            to: pair[1],
            start_s: 0.0,
            end_s: 0.0,
        }
        .distance_m(place)
            <= reach_m
    })
}

/// Outline of a mask without its steps.
fn simplified(cells: &BitGrid) -> Vec<Vec<Place>> {
    let stepped = outlines(cells);
    match Region::from_rings(stepped.clone()) {
        Ok(region) => region
            .outline_simplified(cells.grid.cell_m)
            .into_iter()
            .flatten()
            .collect(),
        Err(_) => stepped.into_iter().flatten().collect(),
    }
}
