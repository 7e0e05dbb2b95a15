//! What do many nights of this machine leave uncut?
//!
//! Question: which part of the lawn, and of given pockets, does the fitted machine visit in a night, run by run, and how
//! often does it pass each place? Seeded runs are painted on a coarse grid, row by row into bit masks, on all cores.
//!
//! Exact: which cell centres are under the disc, for the simulated path. Approximate: areas by the cell, 0.1 m by default.
//! The numbers are the same on any number of threads: each run has its own seed, and sums are of whole numbers. Cost: about
//! 1 ms for a run of 8 h.

use rayon::prelude::*;
use tussock_coverage::swath;
use tussock_plane::{BitGrid, Site, rasterise};
use tussock_simulate::{Machine, Run, SimulateError, Yard};
use tussock_types::{Grid, Place};

/// Side of a cell.
pub const CELL_M: f64 = 0.1;
/// A free drive is put down at a new place after this much path.
pub const RESTART_M: f64 = 60.0;

/// How the machine gets to where it drives.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Access {
    /// From the station, outing by outing, through the real passages.
    AsIs,
    /// Put down anywhere, again and again: a well mixed drive of this much path.
    Free {
        /// Path of a run.
        path_m: f64,
    },
}

/// The ground that is examined.
#[derive(Clone, Debug)]
pub struct Scene {
    /// Lawn.
    pub lawn: BitGrid,
    /// Pockets in it.
    pub pockets: Vec<BitGrid>,
    /// Width of the cutting disc.
    pub cut_width_m: f64,
    windows: Vec<RowWindow>,
    lawn_cells: f64,
}

/// The rows of a mask that are not empty, and its number of cells.
#[derive(Clone, Copy, Debug)]
struct RowWindow {
    first: usize,
    end: usize,
    cells: f64,
}

impl Scene {
    /// A site's lawn on cells of `cell_m`, without pockets.
    pub fn of(site: &Site, cell_m: f64, cut_width_m: f64) -> Self {
        let (low, high) = site.lawn.bounds().unwrap_or_default();
        let margin_m = cell_m;
        let cells = |length_m: f64| ((length_m + 2.0 * margin_m) / cell_m).ceil().max(1.0) as usize;
        let grid = Grid {
            east_min_m: low.east_m - margin_m,
            north_min_m: low.north_m - margin_m,
            cell_m,
            columns: cells(high.east_m - low.east_m),
            rows: cells(high.north_m - low.north_m),
        };
        let lawn = rasterise(&site.lawn, &grid);
        let lawn_cells = lawn.count() as f64;
        Self {
            lawn,
            pockets: Vec::new(),
            cut_width_m,
            windows: Vec::new(),
            lawn_cells,
        }
    }

    /// Adds a pocket given on any grid: the lawn cells whose centres lie in it.
    #[must_use]
    pub fn with_pocket(mut self, pocket: &BitGrid) -> Self {
        let grid = self.lawn.grid;
        let mut mask = BitGrid::new(grid);
        for (column, row) in self.lawn.cells_on() {
            let inside = pocket
                .grid
                .cell_at(grid.centre(column, row))
                .is_some_and(|(x, y)| pocket.get(x, y));
            if inside {
                mask.set(column, row);
            }
        }
        self.add(mask);
        self
    }

    /// Adds a pocket given on the scene's own grid.
    pub fn add(&mut self, mask: BitGrid) {
        let held = |row: &usize| mask.row(*row).iter().any(|word| *word != 0);
        let first = (0..mask.grid.rows).find(held).unwrap_or(0);
        let end = (0..mask.grid.rows).rev().find(held).map_or(0, |row| row + 1);
        self.windows.push(RowWindow {
            first,
            end,
            cells: mask.count() as f64,
        });
        self.pockets.push(mask);
    }

    /// Paints legs onto a mask.
    pub fn paint(&self, legs: impl Iterator<Item = [Place; 2]>) -> BitGrid {
        let mut mask = BitGrid::new(self.lawn.grid);
        swath::mark(
            &mut mask,
            legs.map(|[from, to]| (from, to)),
            0.5 * self.cut_width_m,
        );
        mask
    }

    /// Visited fraction of the lawn and of each pocket.
    pub fn fractions(&self, painted: &BitGrid) -> Fractions {
        let both = |mask: &BitGrid, first: usize, end: usize| -> u64 {
            (first..end)
                .map(|row| {
                    let pairs = mask.row(row).iter().zip(painted.row(row));
                    pairs.map(|(a, b)| u64::from((a & b).count_ones())).sum::<u64>()
                })
                .sum()
        };
        let lawn = both(&self.lawn, 0, self.lawn.grid.rows) as f64 / self.lawn_cells.max(1.0);
        let pockets = self.pockets.iter().zip(&self.windows);
        Fractions {
            lawn,
            pockets: pockets
                .map(|(mask, window)| both(mask, window.first, window.end) as f64 / window.cells.max(1.0))
                .collect(),
        }
    }
}

/// Visited fractions of one run.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Fractions {
    /// Fraction of the lawn.
    pub lawn: f64,
    /// Fraction of each pocket.
    pub pockets: Vec<f64>,
}

/// A machine with a night's work to do in a yard.
#[derive(Clone, Debug)]
pub struct Cast {
    /// The yard.
    pub yard: Yard,
    /// The machine.
    pub machine: Machine,
    /// One run; its seed will be replaced.
    pub run: Run,
    /// How it reaches the places where it drives.
    pub access: Access,
}

/// Step of SplitMix64 (Steele, Lea & Flood 2014).
pub(crate) const GOLDEN: u64 = 0x9E37_79B9_7F4A_7C15;

/// Its bits, mixed.
pub(crate) const fn mixed(bits: u64) -> u64 {
    let z = (bits ^ (bits >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    let z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
    z ^ (z >> 31)
}

/// One run's seed; runs for different questions share none.
const fn seed_of(seed: u64, number: u64) -> u64 {
    let of_run = number.wrapping_add(1).wrapping_mul(0xBF58_476D_1CE4_E5B9);
    mixed(seed.wrapping_mul(GOLDEN).wrapping_add(of_run))
}

impl Cast {
    /// Legs of one run, transit included.
    ///
    /// # Errors
    /// [`SimulateError`].
    pub fn legs(&self, seed: u64, number: u64) -> Result<Vec<[Place; 2]>, SimulateError> {
        let seed = seed_of(seed, number);
        match self.access {
            Access::Free { path_m } => self.yard.wander(&self.machine, path_m, RESTART_M, seed),
            Access::AsIs => {
                let run = self.yard.drive(
                    &self.machine,
                    &Run {
                        seed,
                        ..self.run.clone()
                    },
                )?;
                Ok(run
                    .pieces()
                    .filter(|(from, _)| from.doing.is_under_way())
                    .map(|(from, to)| [from.place, to.place])
                    .collect())
            }
        }
    }

    /// Judges each of several runs by its legs and what they painted; in the order of their numbers.
    ///
    /// # Errors
    /// [`SimulateError`].
    pub fn judge<T: Send>(
        &self,
        scene: &Scene,
        seed: u64,
        numbers: std::ops::Range<u64>,
        judge: impl Fn(&[[Place; 2]], &BitGrid) -> T + Sync,
    ) -> Result<Vec<T>, SimulateError> {
        numbers
            .into_par_iter()
            .map(|number| {
                let legs = self.legs(seed, number)?;
                let painted = scene.paint(legs.iter().copied());
                Ok(judge(&legs, &painted))
            })
            .collect()
    }

    /// Visited fractions of several runs, in the order of their numbers.
    ///
    /// # Errors
    /// [`SimulateError`].
    pub fn play(
        &self,
        scene: &Scene,
        seed: u64,
        numbers: std::ops::Range<u64>,
    ) -> Result<Vec<Fractions>, SimulateError> {
        self.judge(scene, seed, numbers, |_, painted| scene.fractions(painted))
    }

    /// Metres of path per square metre at each cell, averaged over several runs.
    ///
    /// # Errors
    /// [`SimulateError`].
    pub fn density(
        &self,
        scene: &Scene,
        seed: u64,
        numbers: std::ops::Range<u64>,
    ) -> Result<Density, SimulateError> {
        let grid = scene.lawn.grid;
        let runs = numbers.end.saturating_sub(numbers.start).max(1);
        // Where each row's spans begin and end; a running sum turns these into counts.
        let columns = grid.columns + 1;
        let count = |mut steps: Vec<i32>, number: u64| -> Result<Vec<i32>, SimulateError> {
            for [from, to] in self.legs(seed, number)? {
                swath::for_each_span(&grid, from, to, 0.5 * scene.cut_width_m, |row, first, end| {
                    steps[row * columns + first] += 1;
                    steps[row * columns + end] -= 1;
                });
            }
            Ok(steps)
        };
        let blank = || vec![0_i32; columns * grid.rows];
        let steps = numbers
            .into_par_iter()
            .try_fold(blank, count)
            .try_reduce(blank, |mut sum, more| {
                sum.iter_mut().zip(&more).for_each(|(a, b)| *a += b);
                Ok(sum)
            })?;
        let per_visit = 1.0 / (scene.cut_width_m * runs as f64);
        let mut per_m = Vec::with_capacity(grid.cells());
        for row in steps.chunks_exact(columns) {
            let mut visits = 0;
            per_m.extend(row[..grid.columns].iter().map(|step| {
                visits += step;
                (f64::from(visits) * per_visit) as f32
            }));
        }
        Ok(Density { grid, per_m })
    }
}

/// Metres of path per square metre, cell by cell. A sweep counts where its disc passes over the cell's centre, so the value
/// is smoothed over one cutting width.
#[derive(Clone, Debug, PartialEq)]
pub struct Density {
    /// The cells.
    pub grid: Grid,
    /// Row by row.
    pub per_m: Vec<f32>,
}

impl Density {
    /// The value at a place; `None` off the grid.
    pub fn at(&self, place: Place) -> Option<f64> {
        let (column, row) = self.grid.cell_at(place)?;
        Some(f64::from(self.per_m[row * self.grid.columns + column]))
    }

    /// Mean over a mask on the same grid.
    pub fn mean(&self, mask: &BitGrid) -> f64 {
        let (mut sum, mut cells) = (0.0, 0.0);
        for (column, row) in mask.cells_on() {
            sum += f64::from(self.per_m[row * self.grid.columns + column]);
            cells += 1.0;
        }
        if cells > 0.0 { sum / cells } else { 0.0 }
    }
}
