"""What does a receiver make of where the machine really is?

Errors are metres east and north, a fix every second. A law is white noise plus a first-order drift (exact discretisation); a garden's
sky changes that in place or time: bent beside a wall, poor over a part, silent under a tree, a step that stays.
"""

import pathlib
from dataclasses import dataclass

import numpy as np
import shapely
from scipy.signal import lfilter


@dataclass(frozen=True)
class Law:
    """Standard deviations per axis (m) and the time (s) over which the drift forgets."""

    white_m: float
    drift_m: float
    drift_s: float


GRADES = {"cm": Law(0.01, 0.02, 300.0), "dm": Law(0.05, 0.3, 300.0), "m": Law(0.3, 2.0, 600.0)}
FAST_DRIFT = {"cm": Law(0.01, 0.02, 10.0), "dm": Law(0.05, 0.3, 10.0), "m": Law(0.3, 1.0, 10.0)}
TAIL_FREEDOM = 3
BEND_M = {"cm": 0.1, "dm": 0.5, "m": 1.5}
BEND_REACH_M = 3.0


@dataclass(frozen=True)
class Sky:
    """How a garden's sky differs from an open one; None and 0 stand for "not at all"."""

    laws: dict = None  # by grade, in place of GRADES
    heavy_tails: bool = False
    bend: tuple = None  # (place on a wall, direction out of the garden, +1 outwards or -1 towards the middle)
    poor: object = None  # a polygon over which the error is six times as large
    poor_factor: float = 6.0
    step_m: float = 0.0  # a jump midway through the log that stays
    silent_s: float = 0.0  # a silence that begins while it drives
    tree: tuple = None  # (east, north, radius) of a disc without fixes
    period_s: int = 1
    rounded_deg: float = 0.0
    lost_share: float = 0.0


def drifting(law, count, rng, heavy_tails=False):
    """`count` errors, one a second (n, 2)."""
    keep = np.exp(-1.0 / law.drift_s)
    pushes = rng.normal(0, law.drift_m * np.sqrt(1 - keep * keep), (count, 2))
    pushes[0] = rng.normal(0, law.drift_m, 2)
    drift = lfilter([1.0], [1.0, -keep], pushes, axis=0)
    if heavy_tails:
        white = rng.standard_t(TAIL_FREEDOM, (count, 2)) / np.sqrt(TAIL_FREEDOM)
    else:
        white = rng.normal(size=(count, 2))
    return drift + law.white_m * white


def recorded(path, count, rng):
    """A recorded series (CSV: t_s, east_m, north_m), mirrored as often as the night needs, begun at a random place."""
    series = np.loadtxt(pathlib.Path(path), delimiter=",", skiprows=1)
    seconds = np.arange(np.ceil(series[0, 0]), np.floor(series[-1, 0]) + 1)
    each = np.column_stack([np.interp(seconds, series[:, 0], series[:, axis]) for axis in (1, 2)])
    there_and_back = np.vstack([each, each[-2:0:-1]])
    first = rng.integers(len(there_and_back))
    return there_and_back[(first + np.arange(count)) % len(there_and_back)]


def logged(drive, sky, grade, rng, station, series=None):
    """The log of a drive: times (s) and places (m) of the fixes that were written. `series` is a recorded error in place of a law."""
    law = (sky.laws or GRADES).get(grade)
    times = np.concatenate([np.arange(np.ceil(begin_s), end_s) for begin_s, end_s in drive.nights])
    true = drive.trail.at(times)
    if series is None:
        errors = np.vstack([
            drifting(law, int(np.ceil(end_s) - np.ceil(begin_s)), rng, sky.heavy_tails) for begin_s, end_s in drive.nights
        ])[: len(times)]  # fmt: skip
    else:
        errors = recorded(series, len(times), rng)
    if sky.poor is not None:
        beyond_m = shapely.distance(shapely.points(true), sky.poor)
        errors *= (1 + (sky.poor_factor - 1) * np.clip(1 - beyond_m / 0.5, 0, 1))[:, None]
    if sky.bend is not None:
        wall, out, sign = (np.asarray(part, float) for part in sky.bend)
        from_wall_m = np.maximum(0, (wall - true) @ out)
        errors = errors + sign * BEND_M[grade] * np.exp(-from_wall_m / BEND_REACH_M)[:, None] * out
    if sky.step_m:
        bearing = rng.uniform(0, 2 * np.pi)
        errors[len(times) // 2 :] += sky.step_m * np.array([np.cos(bearing), np.sin(bearing)])
    kept = np.ones(len(times), bool)
    if sky.silent_s:
        kept &= ~_silence(times, true, sky.silent_s, station, rng)
    if sky.tree is not None:
        kept &= np.hypot(*(true - sky.tree[:2]).T) > sky.tree[2]
    if sky.lost_share:
        kept &= rng.random(len(times)) >= sky.lost_share
    kept &= times % sky.period_s == 0
    return times[kept], (true + errors)[kept]


def _silence(times, true, silent_s, station, rng):
    """A silence that begins in the first ten minutes of an outing, so that most of it is driving."""
    away = np.hypot(*(true - station).T) > 0.5
    begins = times[1:][away[1:] & ~away[:-1]]
    begins = begins[begins + silent_s < times[-1]]
    begin_s = rng.choice(begins) + rng.uniform(60, 600)
    return (times >= begin_s) & (times < begin_s + silent_s)
