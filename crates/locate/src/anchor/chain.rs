//! From legs and halts to a chain of steps.

use super::filter::{Move, Sight, Step};
use super::state::{DRIFT, PLACE};
use crate::blocks::Blocks;
use crate::parts::{Piece, Vertex, in_order};
use crate::segment::{Part, PartKind};
use tussock_types::Place;
use tussock_types::math;

/// A leg or a stand with its times; they need not be those of fixes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Leg or halt.
    pub kind: PartKind,
    /// Begin.
    pub start_s: f64,
    /// End.
    pub end_s: f64,
    /// Direction of a leg.
    pub along: [f64; 2],
    /// How precise the times of its beginning and end are.
    pub timing_s: [f64; 2],
}

/// One run as spans that follow each other without a gap.
#[derive(Clone, Debug, Default)]
pub struct Drive {
    /// The fixes.
    pub blocks: Blocks,
    /// The spans.
    pub spans: Vec<Span>,
}

impl Drive {
    /// Spans of the parts that a run was divided into.
    pub fn new(blocks: Blocks, parts: &[Part], timing_s: f64) -> Self {
        let spans = parts
            .iter()
            .enumerate()
            .map(|(number, part)| Span {
                kind: part.kind,
                start_s: match number.checked_sub(1) {
                    None => blocks.time_s[part.first],
                    Some(before) => between_s(&blocks, parts[before], *part),
                },
                end_s: match parts.get(number + 1) {
                    None => blocks.time_s[part.last],
                    Some(next) => between_s(&blocks, *part, *next),
                },
                along: direction(&blocks, *part),
                timing_s: [timing_s; 2],
            })
            .collect();
        Self { blocks, spans }
    }

    /// Fixes between two times, ends out.
    pub fn fixes(&self, start_s: f64, end_s: f64) -> std::ops::Range<usize> {
        let first = self.blocks.time_s.partition_point(|time_s| *time_s <= start_s);
        let end = self.blocks.time_s.partition_point(|time_s| *time_s < end_s);
        first..end.max(first)
    }
}

/// One straight drive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ChainLeg {
    /// Step at which the machine sets out.
    pub from: usize,
    /// Step at which it arrives.
    pub to: usize,
    /// Time at which it sets out.
    pub start_s: f64,
    /// Time at which it arrives.
    pub end_s: f64,
    /// Expected direction.
    pub along: [f64; 2],
    /// How precise both times are.
    pub timing_s: [f64; 2],
    /// Drive that it belongs to.
    pub drive: usize,
    /// Span of that drive.
    pub span: usize,
}

impl ChainLeg {
    /// How long it drives.
    pub fn lapse_s(&self) -> f64 {
        self.end_s - self.start_s
    }
}

/// A corner: it arrives, may wait, and leaves.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Corner {
    /// Step at which it arrives.
    pub step: usize,
    /// Time of arrival.
    pub arrive_s: f64,
    /// Time of leaving.
    pub leave_s: f64,
    /// Drive that it belongs to.
    pub drive: usize,
}

/// A stand, for the station.
#[derive(Clone, Debug, PartialEq)]
pub struct Stand {
    /// Steps of it, each with a sight of the fixes.
    pub steps: std::ops::Range<usize>,
    /// Begin.
    pub start_s: f64,
    /// End.
    pub end_s: f64,
}

/// The whole trace as a chain.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Chain {
    /// Steps in time order.
    pub steps: Vec<Step>,
    /// Time of each step.
    pub time_s: Vec<f64>,
    /// Straight drives.
    pub legs: Vec<ChainLeg>,
    /// Corners in time order.
    pub corners: Vec<Corner>,
    /// Stands.
    pub stands: Vec<Stand>,
}

/// What is needed to build the chain.
#[derive(Clone, Copy, Debug)]
pub struct Build {
    /// White part per axis.
    pub white_m: f64,
    /// Random-walk rate of the slow part.
    pub drift_rate_m2_per_s: f64,
    /// Fixes of a leg are combined over this long.
    pub leg_block_s: f64,
    /// Fixes of a stand are combined over this long.
    pub stand_block_s: f64,
    /// How far off the first fix may be.
    pub lost_sd_m: f64,
}

impl Chain {
    /// Corners as unbroken pieces, one for each drive.
    pub fn pieces(&self, corners: &[Place]) -> Vec<Piece> {
        let mut pieces: Vec<Piece> = Vec::new();
        let mut drive = None;
        for (corner, place) in self.corners.iter().zip(corners) {
            if drive != Some(corner.drive) {
                drive = Some(corner.drive);
                pieces.push(Piece::default());
            }
            if let Some(piece) = pieces.last_mut() {
                piece.vertices.push(Vertex {
                    place: *place,
                    arrive_s: corner.arrive_s,
                    leave_s: corner.leave_s,
                });
            }
        }
        in_order(&mut pieces);
        pieces
    }

    fn push(&mut self, time_s: f64, moved: Move) -> usize {
        self.steps.push(Step {
            moved,
            sights: Vec::new(),
        });
        self.time_s.push(time_s);
        self.steps.len() - 1
    }

    /// Continues from the last step.
    fn go_on(&mut self, time_s: f64, moved: Move) -> usize {
        let dt_s = self.time_s.last().map_or(0.0, |last_s| time_s - last_s);
        self.push(time_s, Move { dt_s, ..moved })
    }

    /// Mean of several fixes as two sights.
    fn see(&mut self, step: usize, blocks: &Blocks, fixes: std::ops::Range<usize>, how: &Build) {
        let count = fixes.len() as f64;
        let mean = |column: &[f64]| column[fixes.clone()].iter().sum::<f64>() / count;
        let lapse_s = blocks.time_s[fixes.end - 1] - blocks.time_s[fixes.start];
        // Means of a random walk over neighbouring stretches differ by two thirds of the walk in that time: a sixth less on
        // each side.
        let white_m2 = how.white_m.powi(2) / count;
        // Both parts of the error grow where the receiver says so.
        let scale = fixes.clone().map(|at| blocks.error_factor_at(at)).sum::<f64>() / count;
        let variance =
            scale * scale * (white_m2 - how.drift_rate_m2_per_s * lapse_s / 6.0).max(0.1 * white_m2);
        for (axis, value) in [mean(&blocks.east_m), mean(&blocks.north_m)]
            .into_iter()
            .enumerate()
        {
            self.steps[step].sights.push(Sight {
                of: vec![(PLACE + axis, 1.0), (DRIFT + axis, scale)],
                value,
                variance,
                is_fix: true,
            });
        }
    }

    /// Builds the chain of several drives in time order.
    pub fn build(drives: &[Drive], how: &Build) -> Self {
        let mut chain = Self::default();
        for (number, drive) in drives.iter().enumerate() {
            chain.add(number, drive, how);
        }
        chain
    }

    fn add(&mut self, number: usize, drive: &Drive, how: &Build) {
        let blocks = &drive.blocks;
        let (Some(first), Some(last)) = (drive.spans.first(), drive.spans.last()) else {
            return;
        };
        let since_s = self
            .time_s
            .last()
            .map_or(0.0, |last_s| (first.start_s - last_s).max(0.0));
        let mut now = self.push(
            first.start_s,
            Move {
                dt_s: since_s,
                lost: Some(([blocks.east_m[0], blocks.north_m[0]], how.lost_sd_m)),
                ..Move::default()
            },
        );
        let mut arrive = (now, first.start_s);
        let driven = Move {
            drives: true,
            ..Move::default()
        };
        for (index, span) in drive.spans.iter().enumerate() {
            let inside = drive.fixes(span.start_s, span.end_s);
            match span.kind {
                PartKind::Leg => {
                    if span.start_s > self.time_s[now] {
                        now = self.go_on(span.start_s, Move::default());
                    }
                    let from = now;
                    self.corners.push(Corner {
                        step: arrive.0,
                        arrive_s: arrive.1,
                        leave_s: span.start_s,
                        drive: number,
                    });
                    for group in groups(blocks, inside, how.leg_block_s) {
                        let middle_s = mean_s(blocks, group.clone());
                        now = self.go_on(middle_s, driven);
                        self.see(now, blocks, group, how);
                    }
                    now = self.go_on(span.end_s, driven);
                    self.legs.push(ChainLeg {
                        from,
                        to: now,
                        start_s: span.start_s,
                        end_s: span.end_s,
                        along: span.along,
                        timing_s: span.timing_s,
                        drive: number,
                        span: index,
                    });
                    arrive = (now, span.end_s);
                }
                PartKind::Halt => {
                    let first_step = self.steps.len();
                    for group in groups(blocks, inside, how.stand_block_s) {
                        let middle_s = mean_s(blocks, group.clone());
                        now = self.go_on(middle_s, Move::default());
                        self.see(now, blocks, group, how);
                    }
                    self.stands.push(Stand {
                        steps: first_step..self.steps.len(),
                        start_s: span.start_s,
                        end_s: span.end_s,
                    });
                }
            }
        }
        self.corners.push(Corner {
            step: arrive.0,
            arrive_s: arrive.1,
            leave_s: last.end_s.max(arrive.1),
            drive: number,
        });
    }
}

/// Time at which one part ends and the next begins.
fn between_s(blocks: &Blocks, before: Part, after: Part) -> f64 {
    0.5 * (blocks.time_s[before.last] + blocks.time_s[after.first])
}

fn mean_s(blocks: &Blocks, fixes: std::ops::Range<usize>) -> f64 {
    let count = fixes.len() as f64;
    blocks.time_s[fixes].iter().sum::<f64>() / count
}

/// Even groups of at most about `most_s`.
fn groups(
    blocks: &Blocks,
    fixes: std::ops::Range<usize>,
    most_s: f64,
) -> impl Iterator<Item = std::ops::Range<usize>> {
    let lapse_s = if fixes.is_empty() {
        0.0
    } else {
        blocks.time_s[fixes.end - 1] - blocks.time_s[fixes.start]
    };
    let parts = (lapse_s / most_s).ceil().max(1.0) as usize;
    let stride = fixes.len().div_ceil(parts).max(1);
    let end = fixes.end;
    fixes
        .step_by(stride)
        .map(move |start| start..(start + stride).min(end))
}

/// Direction of a leg according to its fixes: slope of place over time.
fn direction(blocks: &Blocks, part: Part) -> [f64; 2] {
    let fixes = part.first..part.last + 1;
    let count = fixes.len() as f64;
    let mean = |column: &[f64]| column[fixes.clone()].iter().sum::<f64>() / count;
    let (middle_s, east_m, north_m) = (mean(&blocks.time_s), mean(&blocks.east_m), mean(&blocks.north_m));
    let mut slope = [0.0; 2];
    for at in fixes.clone() {
        let time_s = blocks.time_s[at] - middle_s;
        slope[0] += time_s * (blocks.east_m[at] - east_m);
        slope[1] += time_s * (blocks.north_m[at] - north_m);
    }
    let length = math::hypot(slope[0], slope[1]);
    if length > 0.0 {
        [slope[0] / length, slope[1] / length]
    } else {
        [1.0, 0.0]
    }
}
