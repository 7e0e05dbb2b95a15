"""Measures of twenty drawn drives beside numpy and shapely, which see the same fixes and none of our code."""

import numpy as np
import pytest
import shapely

import tussock

WIDTH_M, TRACK_M, AWAY_S = 0.22, 0.3, 30.0
SETTINGS = tussock.Settings(machine={"cut_width_m": WIDTH_M, "track_width_m": TRACK_M})
DRIVES = [(seed, pattern) for seed in range(10) for pattern in ("roaming", "lanes")]


def plane(plan, trace):
    """Lawn and fixes in metres, by PROJ on the ellipsoid (EPSG method 9840)."""
    crs = f"+proj=ortho +lat_0={trace.lat_deg.mean()} +lon_0={trace.lon_deg.mean()} +ellps=WGS84"
    parts = plan.to_geodataframe().to_crs(crs)
    holes = parts[parts.role.isin(["exclusion", "obstacle"])].geometry
    lawn = parts[parts.role == "lawn"].geometry.union_all().difference(holes.union_all())
    return lawn, shapely.get_coordinates(trace.to_geodataframe().geometry.to_crs(crs))


def gini(values):
    values = np.sort(values)
    return 2 * np.sum(np.arange(1, len(values) + 1) * values) / (len(values) * values.sum()) - (len(values) + 1) / len(values)


def legs_of(places):
    """Middle and direction of straight drives at full speed, as complex numbers; the machine stands to turn."""
    at = places @ [1, 1j]
    moves = np.concatenate([[False], np.abs(np.diff(at)) > 0.36, [False]])
    bounds = np.flatnonzero(np.diff(moves.astype(int)))
    found = []
    for first, last in bounds.reshape(-1, 2):
        run = at[first : last + 1]
        if abs(run[-1] - run[0]) >= 0.8:
            axis = np.sqrt(np.mean((run - run.mean()) ** 2))
            along = axis / abs(axis)
            found.append((run.mean(), along if (along.conjugate() * (run[-1] - run[0])).real > 0 else -along))
    return found


@pytest.fixture(scope="module", params=DRIVES, ids=lambda one: f"{one[1]}-{one[0]}")
def drive(request):
    seed, pattern = request.param
    plan = tussock.invent_garden("convex", seed=seed, area_m2=(150.0, 200.0))
    # One outing, so that nothing breaks the way.
    night = tussock.simulate(
        plan, hours=1.2, seed=seed, pattern=pattern, noise="none", outing_s=(36_000.0, 36_000.0), cut_width_m=WIDTH_M,
        lane_spacing_m=0.17, lane_jitter_m=0.01, past_boundary_m=0.0,
    )  # fmt: skip
    lawn, places = plane(plan, night.trace)
    found = tussock.measures(night.trace, plan=plan, settings=SETTINGS)
    time_s = night.trace.time_s
    return pattern, lawn, places, time_s, found, time_s[-1] - time_s[0] - night.truth.at_station_s


def test_the_pace_of_the_work_is_that_of_shapely(drive):
    _, lawn, places, _, found, field_s = drive
    line = shapely.LineString(places)
    visited_m2 = line.buffer(WIDTH_M / 2).intersection(lawn).area
    field_h = field_s / 3600
    assert found.field_work.area_per_h_m2 == pytest.approx(visited_m2 / field_h, rel=0.01)
    assert found.field_work.path_per_area_m_per_m2 == pytest.approx(line.length / visited_m2, rel=0.01)
    # The way is driven at one speed, so that of the fixes between turns.
    steps_m = np.hypot(*np.diff(places, axis=0).T)
    allowed_m2_per_h = WIDTH_M * np.quantile(steps_m, 0.9) * 3600
    assert found.field_work.field_efficiency_fraction == pytest.approx(visited_m2 / field_h / allowed_m2_per_h, rel=0.03)
    swept_m2 = WIDTH_M * line.intersection(lawn).length
    assert found.swept_again_fraction == pytest.approx(1 - visited_m2 / swept_m2, abs=0.01)


def test_straightness_and_turn_angles_are_those_of_the_fixes(drive):
    _, _, places, _, found, _ = drive
    line = shapely.LineString(places)
    ends = shapely.get_coordinates(shapely.line_interpolate_point(line, np.arange(0.0, line.length, 10.0)))
    assert found.way.straightness_fraction == pytest.approx(np.hypot(*np.diff(ends, axis=0).T).mean() / 10, abs=0.02)
    legs = legs_of(places)
    angles = np.angle([after[1] / before[1] for before, after in zip(legs, legs[1:])])
    ours = np.radians(found.way.turn_angles_deg)
    assert len(ours) == pytest.approx(len(angles), abs=0.05 * len(angles) + 1)
    assert found.way.turn_agreement == pytest.approx(np.abs(np.exp(1j * ours).mean()), abs=1e-12)
    # A half turn may go either way round.
    assert np.mean(np.cos(ours)) == pytest.approx(np.mean(np.cos(angles)), abs=0.03)
    sizes = [np.quantile(np.degrees(np.abs(one)), [0.25, 0.5, 0.75]) for one in (ours, angles)]
    np.testing.assert_allclose(*sizes, atol=4.0)


def test_lanes_lie_as_far_apart_as_those_of_shapely(drive):
    pattern, _, places, _, found, _ = drive
    if pattern == "roaming":
        assert found.lane_spacing is None
        return
    legs = legs_of(places)
    gaps_m = [abs(((after[0] - before[0]) * np.conj(before[1])).imag) for before, after in zip(legs, legs[1:])]
    assert found.lane_spacing.spacing_m == pytest.approx(np.median(gaps_m), abs=0.005)
    assert found.lane_spacing.overlap_m == pytest.approx(WIDTH_M - found.lane_spacing.spacing_m, abs=1e-12)


def test_wheels_go_over_the_ground_of_shapely(drive):
    _, lawn, places, _, found, _ = drive
    steps = np.diff(places, axis=0)
    size_m = np.hypot(*steps.T)
    moves = size_m > 0.02
    aside = steps[moves][:, ::-1] * [-1, 1] / size_m[moves, None] * TRACK_M / 2
    wheels = [np.stack([places[:-1][moves] + side * aside, places[1:][moves] + side * aside], axis=1) for side in (-1, 1)]
    ground = shapely.union_all(shapely.buffer(shapely.linestrings(np.concatenate(wheels)), 0.05)).intersection(lawn)
    assert found.wheels.trafficked_fraction == pytest.approx(ground.area / lawn.area, abs=0.015)
    assert found.wheels.repeatedly_fraction < found.wheels.trafficked_fraction
    mean_passes = 2 * 0.1 * shapely.LineString(places).intersection(lawn).length / lawn.area
    assert found.wheels.mean_passes == pytest.approx(mean_passes, rel=0.12)


def test_evenness_and_bursts_are_those_of_points_on_the_lawn(drive):
    """Visits of drawn points, counted by numpy from their distances to the way."""
    _, lawn, places, time_s, found, _ = drive
    random = np.random.default_rng(1)
    west, south, east, north = lawn.bounds
    points = random.uniform((west, south), (east, north), size=(800, 2))
    points = points[shapely.contains_xy(lawn, *points.T)]
    start, step = places[:-1], np.diff(places, axis=0)
    along_m = np.hypot(*step.T)
    squared = np.maximum((step**2).sum(axis=1), 1e-12)
    way_m = np.cumsum(along_m)
    ends = [np.searchsorted(way_m, part * way_m[-1]) for part in (0.25, 0.5, 0.75, 1.0)]
    visits, intervals = np.zeros((4, len(points))), []
    for number, point in enumerate(points):
        share = np.clip(((point - start) * step).sum(axis=1) / squared, 0, 1)
        near = np.hypot(*(start + share[:, None] * step - point).T) <= WIDTH_M / 2
        at = time_s[:-1][near]
        new = np.diff(at, prepend=-np.inf) > AWAY_S
        firsts = np.flatnonzero(near)[new]
        visits[:, number] = [np.sum(firsts < end) for end in ends]
        lasts = at[np.append(np.flatnonzero(new)[1:] - 1, len(at) - 1)] if len(at) else at
        intervals.extend(at[new][1:] - lasts[:-1])
    for told, counted in zip(found.evenness, visits, strict=True):
        assert told.gini == pytest.approx(gini(counted), abs=0.04)
    assert found.evenness[-1].gini == found.visits.gini
    mean, sd = np.mean(intervals), np.std(intervals)
    assert found.revisits.burstiness == pytest.approx((sd - mean) / (sd + mean), abs=0.06)
