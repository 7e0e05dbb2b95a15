"""The researcher's bench, held to libraries that nobody here wrote."""

import csv
import io

import numpy as np
import pytest
import shapely
from scipy import stats

import tussock

SPREAD = {"position_sd": 0.01, "night_sd": 0.03, "garden_sd": 0.02}


def lanes(spacing_m, count, length_m):
    """Corners of lanes driven to and fro."""
    corners = []
    for lane in range(count):
        ends = [(0.0, lane * spacing_m), (length_m, lane * spacing_m)]
        corners += ends if lane % 2 == 0 else ends[::-1]
    return np.array(corners)


def driven(corners, speed_mps, period_s):
    """Times and places of a drive along corners at a steady speed."""
    way_m = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(corners, axis=0).T))])
    time_s = np.arange(0.0, way_m[-1] / speed_mps, period_s)
    at_m = time_s * speed_mps
    return time_s, np.interp(at_m, way_m, corners[:, 0]), np.interp(at_m, way_m, corners[:, 1])


def as_csv(corners, time_s=None):
    out = io.StringIO()
    table = csv.writer(out)
    table.writerow(["east_m", "north_m"] if time_s is None else ["time_s", "east_m", "north_m"])
    table.writerows(corners if time_s is None else np.column_stack([time_s, corners]))
    return out.getvalue().encode()


@pytest.fixture(scope="module")
def drive():
    """A drive with an error of centimetres beside a surveyed path with lanes two metres apart."""
    rng = np.random.default_rng(5)
    corners = lanes(2.0, 6, 30.0)
    time_s, east_m, north_m = driven(corners, 0.5, 1.0)
    off_m = 0.1 + 0.03 * rng.standard_normal((2, len(time_s)))
    log = tussock.Trace.from_arrays(time_s=time_s, east_m=east_m + off_m[0], north_m=north_m + off_m[1])
    return corners, log


def test_cross_track_errors_are_the_distances_of_shapely(drive):
    corners, log = drive
    found = tussock.against_reference(log, as_csv(corners))
    assert not found.is_timed and found.beside_fixes == 0
    assert found.logged.along_track is None and found.logged.timing is None
    cross = found.logged.cross_track
    # Nothing halts here, so every fix that the gates keep counts.
    assert cross["values"] == found.compared_fixes == len(log) - found.halted_fixes
    path = shapely.LineString(corners)
    assert found.length_m == pytest.approx(path.length)
    sizes_m = shapely.distance(shapely.points(log.east_m, log.north_m), path)
    if found.halted_fixes == 0:
        assert cross.rms_m == pytest.approx(np.sqrt(np.mean(sizes_m**2)), rel=1e-9)
        assert cross.max_m == pytest.approx(sizes_m.max(), rel=1e-9)
        # By the nearest rank.
        assert cross.p95_m == pytest.approx(np.quantile(sizes_m, 0.95, method="inverted_cdf"), rel=1e-9)
    else:
        assert cross.rms_m == pytest.approx(np.sqrt(np.mean(sizes_m**2)), rel=0.02)


def test_a_log_that_is_late_and_beside_is_told_to_be(drive):
    corners = np.array([(0.0, 0.0), (60.0, 0.0)])
    time_s, east_m, north_m = driven(corners, 0.5, 1.0)
    path = tussock.Reference(as_csv(np.column_stack([east_m, north_m]), time_s))
    assert path.is_timed and path.corners == len(time_s)
    late = tussock.Trace.from_arrays(time_s=time_s + 2.0, east_m=east_m, north_m=north_m - 0.25)
    found = tussock.against_reference(late, path).logged
    # Right of the path is negative; 2 s late at 0.5 m/s is 1 m behind.
    assert found.cross_track.mean_m == pytest.approx(-0.25, abs=1e-9)
    assert found.timing.mean_s == pytest.approx(2.0, abs=1e-6)
    assert found.along_track.mean_m == pytest.approx(-1.0, abs=1e-6)


def test_the_errors_stand_in_the_findings_too(drive):
    corners, log = drive
    wanted = {"reference": as_csv(corners), "suggestions": False}
    found = tussock.analyse(log, **wanted)
    assert found.reference == tussock.against_reference(log, as_csv(corners))
    assert tussock.read_findings(found.to_json().encode()).reference == found.reference
    assert "cross-track" in str(found)
    # A trace of better positions can stand in for the survey.
    time_s, east_m, north_m = driven(corners, 0.5, 1.0)
    truth = tussock.Trace.from_arrays(time_s=time_s, east_m=east_m, north_m=north_m)
    timed = tussock.against_reference(log, truth)
    assert timed.is_timed and timed.logged.timing is not None
    untimed = tussock.against_reference(log, tussock.Reference.from_trace(truth, timed=False))
    assert untimed.logged.timing is None


def test_so_many_gardens_and_nights_show_a_difference_as_often_as_asked():
    """scipy draws the gardens and tests them; the normal theory of ours has to foretell how often it sees something."""
    difference, nights = 0.03, 3
    gardens = tussock.gardens_needed(SPREAD, difference, nights=nights, power=0.8)
    rng = np.random.default_rng(2)
    of_garden = np.sqrt(SPREAD["garden_sd"] ** 2 + (SPREAD["night_sd"] ** 2 + SPREAD["position_sd"] ** 2) / nights)
    drawn = difference + of_garden * rng.standard_normal((20_000, gardens))
    seen = stats.ttest_1samp(drawn, 0.0, axis=1).pvalue < 0.05
    # One garden fewer would not do.
    fewer = stats.ttest_1samp(drawn[:, :-1], 0.0, axis=1).pvalue < 0.05
    assert np.mean(seen) >= 0.8 - 0.02 and np.mean(fewer) < 0.8 + 0.01, (gardens, seen.mean(), fewer.mean())
    assert tussock.nights_needed(SPREAD, difference, gardens=gardens, power=0.8) <= nights


def test_power_is_that_of_the_normal_law():
    sd = np.sqrt((SPREAD["garden_sd"] ** 2 + (SPREAD["night_sd"] ** 2 + SPREAD["position_sd"] ** 2) / 4) / 5)
    for difference in (0.0, 0.01, 0.03, -0.05):
        shift, critical = difference / sd, stats.norm.ppf(0.975)
        expected = stats.norm.sf(critical - shift) + stats.norm.cdf(-critical - shift)
        assert tussock.power_of(SPREAD, difference, gardens=5, nights=4) == pytest.approx(expected, abs=1e-9)


def test_spreads_are_found_again_in_drawn_nights():
    rng = np.random.default_rng(11)
    gardens, nights = 400, 6
    drawn = (
        0.1
        + SPREAD["garden_sd"] * rng.standard_normal((gardens, 1))
        + np.hypot(SPREAD["night_sd"], SPREAD["position_sd"]) * rng.standard_normal((gardens, nights))
    )
    found = tussock.spread_of(list(drawn), position_sd=SPREAD["position_sd"])
    # Four standard deviations of these estimates.
    assert found.night_sd == pytest.approx(SPREAD["night_sd"], rel=4 / np.sqrt(2 * gardens * (nights - 1)))
    assert found.garden_sd == pytest.approx(SPREAD["garden_sd"], rel=0.25)
    assert found.mean == pytest.approx(drawn.mean()) and (found.gardens, found.nights) == (gardens, gardens * nights)


@pytest.mark.parametrize(
    ("call", "kind", "words"),
    [
        (lambda: tussock.spread_of({"a": [0.1, 0.2]}), "too_few", "at least 2"),
        (lambda: tussock.spread_of({"a": [0.1], "b": [0.2]}, position_sd={"a": [0.0], "b": []}), "uneven", "garden b"),
        (lambda: tussock.nights_needed(SPREAD, 0.0, gardens=5), "out_of_range", "not 0"),
        (lambda: tussock.gardens_needed({**SPREAD, "night_sd": -1.0}, 0.1, nights=3), "out_of_range", "night_sd is -1"),
        (lambda: tussock.power_of(SPREAD, 0.1, gardens=0, nights=3), "out_of_range", "1 or more"),
    ],
)
def test_what_cannot_be_said_is_refused(call, kind, words):
    with pytest.raises(tussock.CompareError, match=words) as caught:
        call()
    assert caught.value.kind == kind


def test_an_area_counted_on_a_turned_grid_is_that_of_shapely():
    """All four rules on one drive, against cells as polygons."""
    corners = lanes(0.9, 4, 12.0)
    time_s, east_m, north_m = driven(corners, 0.5, 1.0)
    log = tussock.Trace.from_arrays(time_s=time_s, east_m=east_m, north_m=north_m)
    # Along (4, 1) and (-1, 4): turned by 14 degrees, cells of 0.52 by 0.41 m; no fix lies on a border.
    origin, along, up = np.array([-1.013, -2.507]), np.array([4.0, 1.0]) * 3.5, np.array([-1.0, 4.0]) * 1.6
    columns, rows = 28, 16
    grid = {"columns": columns, "rows": rows, "axes": "local"}
    spanned = [tuple(origin), tuple(origin + along), tuple(origin + up)]
    path = shapely.LineString(np.column_stack([east_m, north_m]))
    swath = path.buffer(0.3, quad_segs=64)
    steps = np.array([(0, 0), (1, 0), (1, 1), (0, 1)])
    cells = [
        [
            shapely.Polygon(origin + (column + steps[:, :1]) * along / columns + (row + steps[:, 1:]) * up / rows)
            for column in range(columns)
        ]
        for row in range(rows)
    ]
    cells = np.array(cells)
    counted = {rule: tussock.count_on_grid(log, spanned, rule=rule, **grid) for rule in ("fix_inside", "path_crosses")}
    for rule in ("swath_covers_centre", "area_weighted"):
        counted[rule] = tussock.count_on_grid(log, spanned, rule=rule, cut_width_m=0.6, **grid)
    fixes = shapely.MultiPoint(np.column_stack([east_m, north_m]))
    np.testing.assert_array_equal(counted["fix_inside"].visits > 0, shapely.intersects(cells, fixes))
    np.testing.assert_array_equal(counted["path_crosses"].visits > 0, shapely.intersects(cells, path))
    np.testing.assert_array_equal(counted["swath_covers_centre"].visits > 0, shapely.intersects(shapely.centroid(cells), swath))
    parts = shapely.area(shapely.intersection(cells, swath)) / shapely.area(cells)
    np.testing.assert_allclose(counted["area_weighted"].visited_fraction, parts, atol=0.02)
    assert counted["area_weighted"].visited_m2 == pytest.approx(shapely.area(shapely.intersection(cells, swath)).sum(), rel=2e-3)
