"""Our methods beside those of libraries that nobody here wrote, on inputs drawn at random with fixed seeds.

The Rust side answers through `crates/testkit/examples/reference.rs`; what is asked stands there.
"""

import csv
import json
import os
import pathlib
import subprocess

import networkx
import numpy
import pyproj
import pytest
import scipy.cluster.hierarchy
import scipy.linalg
import scipy.ndimage
import scipy.optimize
import scipy.stats
import shapely
import sklearn.cluster

REFERENCE = os.environ["REFERENCE"]
SEED = 20_260_501


def ask(questions):
    """Answers to many questions at once."""
    done = subprocess.run([REFERENCE], input=json.dumps(questions), capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    answers = json.loads(done.stdout)
    assert len(answers) == len(questions)
    return answers


def drawn(number):
    """A generator of its own for each test."""
    return numpy.random.default_rng([SEED, number])


def rows(mask):
    return ["".join("1" if cell else "0" for cell in row) for row in mask]


def masks(random, count, most=90):
    """Specks, blots and all shades between; some wider than the words that hold them."""
    found = []
    for number in range(count):
        shape = random.integers(1, most, size=2)
        noise = random.normal(size=shape)
        if number % 3:
            noise = scipy.ndimage.gaussian_filter(noise, sigma=number % 3 * 2)
        found.append(noise > numpy.quantile(noise, random.uniform(0.05, 0.95)))
    return found


def test_squared_distances_are_those_of_scipy():
    asked = [mask for mask in masks(drawn(1), 60) if not mask.all()]
    assert len(asked) > 50
    for mask, found in zip(asked, ask([{"ask": "distance", "rows": rows(mask)} for mask in asked])):
        expected = numpy.rint(scipy.ndimage.distance_transform_edt(mask) ** 2).astype(int)
        assert numpy.array_equal(numpy.reshape(found, mask.shape), expected)


@pytest.mark.parametrize("neighbours", [4, 8])
def test_connected_parts_are_those_of_scipy(neighbours):
    asked = masks(drawn(2), 60, most=150)
    structure = numpy.ones((3, 3)) if neighbours == 8 else None
    questions = [{"ask": "parts", "rows": rows(mask), "neighbours": neighbours} for mask in asked]
    for mask, found in zip(asked, ask(questions)):
        labels, count = scipy.ndimage.label(mask, structure=structure)
        assert sorted(found) == sorted(numpy.bincount(labels.ravel(), minlength=count + 1)[1:].tolist())


def test_pockets_are_those_of_an_opening_by_scipy():
    """A disc of half the width and a quarter of a cell; cells beyond the grid are foreign."""
    random = drawn(3)
    cell_m = 0.05
    asked = [numpy.pad(mask, 1) for mask in masks(random, 60)]
    widths_m = random.uniform(0.1, 0.8, size=len(asked))
    questions = [
        {"ask": "pockets", "rows": rows(mask), "cell_m": cell_m, "least_width_m": width_m}
        for mask, width_m in zip(asked, widths_m)
    ]
    seen = 0
    for mask, width_m, found in zip(asked, widths_m, ask(questions)):
        inside = scipy.ndimage.distance_transform_edt(mask)
        reach = 0.5 * (width_m / cell_m + 0.5)
        cores = inside >= reach
        opened = numpy.zeros_like(mask)
        if cores.any():
            opened = scipy.ndimage.distance_transform_edt(~cores) < reach
        labels, count = scipy.ndimage.label(opened)
        expected = sorted(
            (
                (labels == label).sum() * cell_m**2,
                (2 * inside[cores & (labels == label)].max() - 0.5) * cell_m,
            )
            for label in range(1, count + 1)
        )
        told = sorted((pocket["area_m2"], pocket["widest_m"]) for pocket in found)
        assert len(told) == len(expected)
        assert numpy.allclose(told, expected, rtol=0, atol=1e-9) if expected else not told
        seen += len(expected)
    assert seen > 100


def gathered(places, labels):
    """Count and middle of each group, in an order of their own."""
    groups = [places[labels == label] for label in set(labels.tolist())]
    return sorted((len(group), *group.mean(axis=0).round(9).tolist()) for group in groups)


def spots(found):
    return sorted((spot["episodes"], round(spot["east_m"], 9), round(spot["north_m"], 9)) for spot in found)


def test_stuck_spots_are_the_clusters_of_scikit_learn_and_of_scipy():
    """Single linkage within 1.5 m: DBSCAN where one point is enough for a core."""
    random = drawn(4)
    asked = [random.uniform(-8, 8, size=(random.integers(2, 70), 2)) for _ in range(30)]
    asked += [
        numpy.concatenate([random.normal(at, 0.7, size=(12, 2)) for at in random.uniform(-9, 9, size=(5, 2))])
        for _ in range(10)
    ]
    for places, found in zip(asked, ask([{"ask": "spots", "places_m": places.tolist()} for places in asked])):
        dense = sklearn.cluster.DBSCAN(eps=1.5, min_samples=1).fit_predict(places)
        linked = scipy.cluster.hierarchy.fcluster(
            scipy.cluster.hierarchy.linkage(places, method="single"), 1.5, criterion="distance"
        )
        assert gathered(places, dense) == gathered(places, linked), "the two libraries agree"
        told = spots(found)
        expected = gathered(places, dense)
        assert [spot[0] for spot in told] == [group[0] for group in expected]
        assert numpy.allclose(told, expected, rtol=0, atol=1e-8)


def test_stuck_spots_of_two_and_more_are_the_published_labels():
    """ALG-14b, by scikit-learn 1.9.1: reach 0.5, two points make a core. Drawn three times as large for our reach."""
    points = numpy.array(
        [[0.0, 0.0], [0.3, 0.0], [0.0, 0.3], [0.3, 0.3], [0.15, 0.15], [5.0, 5.0], [5.2, 5.0], [5.0, 5.2],
         [5.2, 5.2], [5.1, 5.1], [2.5, 2.5], [0.75, 0.15], [9.0, 9.0], [9.2, 9.0]]
    )  # fmt: skip
    labels = numpy.array([0, 0, 0, 0, 0, 1, 1, 1, 1, 1, -1, 0, 2, 2])
    assert sklearn.cluster.DBSCAN(eps=0.5, min_samples=2).fit_predict(points).tolist() == labels.tolist()
    (found,) = ask([{"ask": "spots", "places_m": (3 * points).tolist()}])
    told = [spot for spot in spots(found) if spot[0] >= 2]
    assert numpy.allclose(told, gathered(3 * points[labels >= 0], labels[labels >= 0]), rtol=0, atol=1e-8)
    assert len(found) == len(told) + (labels == -1).sum()


def rauch_tung_striebel(time_s, measured_m, first, acceleration, measurement):
    """The recursions as they stand in textbooks, with matrices and the Joseph form."""
    states, spreads, ahead, likelihood = [], [], [], 0.0
    x, p = numpy.array(first[:2]), numpy.array([[first[2], first[3]], [first[3], first[4]]])
    h = numpy.array([[1.0, 0.0]])
    for index, z in enumerate(measured_m):
        if index:
            dt = time_s[index] - time_s[index - 1]
            f = numpy.array([[1.0, dt], [0.0, 1.0]])
            g = numpy.array([dt * dt / 2, dt])
            x, p = f @ x, f @ p @ f.T + acceleration * numpy.outer(g, g)
        else:
            f = numpy.eye(2)
        ahead.append((x, p, f))
        s = (h @ p @ h.T)[0, 0] + measurement
        off = z - x[0]
        likelihood -= 0.5 * (off * off / s + numpy.log(2 * numpy.pi * s))
        k = (p @ h.T)[:, 0] / s
        left = numpy.eye(2) - numpy.outer(k, h)
        x, p = x + k * off, left @ p @ left.T + measurement * numpy.outer(k, k)
        states.append(x)
        spreads.append(p)
    smooth_x, smooth_p = list(states), list(spreads)
    for index in range(len(states) - 2, -1, -1):
        later_x, later_p, f = ahead[index + 1]
        c = numpy.linalg.solve(later_p.T, f @ spreads[index].T).T
        smooth_x[index] = states[index] + c @ (smooth_x[index + 1] - later_x)
        smooth_p[index] = spreads[index] + c @ (smooth_p[index + 1] - later_p) @ c.T
    return states, spreads, smooth_x, smooth_p, likelihood


def test_smoothing_is_that_of_the_textbook_recursions_with_matrices():
    random = drawn(5)
    questions = []
    for _ in range(25):
        count = int(random.integers(1, 80))
        a, b, c = random.uniform(0.2, 3.0), random.uniform(-0.1, 0.1), random.uniform(0.2, 3.0)
        questions.append(
            {
                "ask": "smooth",
                "time_s": numpy.cumsum(random.uniform(0.2, 4.0, size=count)).tolist(),
                "measured_m": random.normal(0, 3, size=count).cumsum().tolist(),
                "first": [*random.normal(size=2).tolist(), a, b, c],
                "acceleration_m2_per_s4": 10 ** random.uniform(-3, 0),
                "measurement_m2": 10 ** random.uniform(-4, 1),
            }
        )
    for question, found in zip(questions, ask(questions)):
        states, spreads, smooth_x, smooth_p, likelihood = rauch_tung_striebel(*list(question.values())[1:])
        for told, x, p in [(found["filtered"], states, spreads), (found["smoothed"], smooth_x, smooth_p)]:
            expected = [[*at, spread[0, 0], spread[0, 1], spread[1, 1]] for at, spread in zip(x, p)]
            told = [[position, velocity, *spread] for position, velocity, spread in told]
            assert numpy.allclose(told, expected, rtol=1e-7, atol=1e-8)
        assert found["log_likelihood"] == pytest.approx(likelihood, rel=1e-9)


def test_places_on_the_plane_are_those_of_proj():
    """EPSG method 9837 by PROJ, up to two kilometres from origins anywhere on Earth."""
    random = drawn(6)
    asked = []
    for _ in range(40):
        origin = numpy.array([numpy.degrees(numpy.arcsin(random.uniform(-0.999, 0.999))), random.uniform(-179, 179)])
        away = random.uniform(-0.009, 0.009, size=(20, 2)) / [1, numpy.cos(numpy.radians(origin[0]))]
        asked.append(numpy.vstack([origin, origin + away]))
    # Half way round the date line.
    asked.append(numpy.array([[-17.0, 179.9999], [-17.0005, -179.9998], [-16.9995, 179.9990]]))
    for points, found in zip(asked, ask([{"ask": "frame", "points_deg": points.tolist()} for points in asked])):
        lat_deg, lon_deg = points[0].tolist()
        pipeline = pyproj.Transformer.from_pipeline(
            "+proj=pipeline +step +proj=unitconvert +xy_in=deg +xy_out=rad +step +proj=cart +ellps=WGS84 "
            f"+step +proj=topocentric +ellps=WGS84 +lat_0={lat_deg!r} +lon_0={lon_deg!r} +h_0=0"
        )
        east_m, north_m, _ = pipeline.transform(points[:, 1], points[:, 0], numpy.zeros(len(points)))
        found = numpy.array(found)
        # PROJ works on coordinates from the centre of the Earth; a double carries them to about a nanometre.
        assert numpy.abs(found[:, 0] - east_m).max() < 2e-8
        assert numpy.abs(found[:, 1] - north_m).max() < 2e-8
        back_m = (found[:, 2:] - points) * [111_000, 111_000]
        back_m[:, 1] -= numpy.rint(back_m[:, 1] / 111_000 / 360) * 111_000 * 360
        assert numpy.abs(back_m).max() < 1e-5


def test_swaths_on_cells_have_the_area_of_buffers_of_shapely():
    random = drawn(7)
    asked = []
    for _ in range(40):
        legs = random.integers(1, 25)
        asked.append((random.uniform(-4, 4, size=(legs + 1, 2)), random.uniform(0.15, 0.5)))
    questions = [{"ask": "swath", "corners_m": corners.tolist(), "cut_width_m": width_m} for corners, width_m in asked]
    scores = []
    for (corners, width_m), found in zip(asked, ask(questions)):
        legs = shapely.linestrings(numpy.stack([corners[:-1], corners[1:]], axis=1))
        union = shapely.union_all(shapely.buffer(legs, width_m / 2, quad_segs=64))
        scores.append((found["visited_m2"] - union.area) / found["cell_error_m2"])
    # The stated error is a standard deviation: none beyond four, and their spread is about one or less.
    assert numpy.abs(scores).max() < 4, scores
    assert abs(numpy.mean(scores)) < 4 / numpy.sqrt(len(scores)), scores
    assert 0.1 < numpy.std(scores) < 1.5, scores


def test_parts_of_cells_under_a_swath_are_those_of_shapely():
    """Grids turned and leaning; a cell's part is summed along 64 lines to a width, at least."""
    random = drawn(11)
    asked = []
    for _ in range(12):
        origin = random.uniform(-1, 1, size=2)
        turn, lean = random.uniform(0, 2 * numpy.pi), random.uniform(-0.5, 0.5)
        along = 3.0 * numpy.array([numpy.cos(turn), numpy.sin(turn)])
        across = 2.5 * numpy.array([-numpy.sin(turn), numpy.cos(turn)]) + lean * along
        way = random.uniform(-3, 3, size=(random.integers(2, 12), 2))
        asked.append((numpy.array([origin, origin + along, origin + across]), way, random.uniform(0.2, 0.6)))
    cells = (9, 7)
    questions = [
        {"ask": "cell_areas", "corners_m": grid.tolist(), "cells": cells, "way_m": way.tolist(), "cut_width_m": width_m}
        for grid, way, width_m in asked
    ]
    for (grid, way, width_m), found in zip(asked, ask(questions)):
        legs = shapely.linestrings(numpy.stack([way[:-1], way[1:]], axis=1))
        union = shapely.union_all(shapely.buffer(legs, width_m / 2, quad_segs=64))
        origin, along, across = grid[0], grid[1] - grid[0], grid[2] - grid[0]
        expected = []
        for row in range(cells[1]):
            for column in range(cells[0]):
                corners = [(column, row), (column + 1, row), (column + 1, row + 1), (column, row + 1)]
                cell = shapely.Polygon([origin + along * x / cells[0] + across * y / cells[1] for x, y in corners])
                expected.append(cell.intersection(union).area / cell.area)
        assert numpy.abs(numpy.array(found) - expected).max() < 0.02
        assert abs(numpy.mean(found) - numpy.mean(expected)) < 5e-4


def test_survival_curves_and_their_intervals_are_those_of_scipy():
    random = drawn(12)
    questions, expected = [], []
    for _ in range(20):
        times = numpy.ceil(random.exponential(20, size=random.integers(5, 80)))
        is_event = random.uniform(size=times.size) < 0.7
        is_event[0] = True
        rows = [
            (float(time), int(((times == time) & is_event).sum()), int(((times == time) & ~is_event).sum()))
            for time in numpy.unique(times)
        ]
        questions.append({"ask": "survival", "rows": rows})
        sample = scipy.stats.CensoredData.right_censored(times, ~is_event)
        curve = scipy.stats.ecdf(sample).sf
        with numpy.errstate(divide="ignore", invalid="ignore"):
            ends = curve.confidence_interval(0.9, method="log-log")
        expected.append((curve, ends, numpy.unique(times[is_event])))
    for (curve, ends, times), found in zip(expected, ask(questions)):
        assert [row[0] for row in found] == times.tolist()
        assert [row[1] for row in found] == pytest.approx(curve.evaluate(times).tolist(), abs=1e-12)
        for row in found:
            if 0 < row[1] < 1:
                low, high = ends.low.evaluate(row[0]), ends.high.evaluate(row[0])
                assert row[2:] == pytest.approx([float(low), float(high)], abs=1e-9)


def test_distances_to_a_law_and_their_probabilities_are_those_of_scipy():
    random = drawn(13)
    asked = [random.uniform(size=size) ** random.uniform(0.7, 1.4) for size in [*range(1, 60, 3), 120, 140, 300, 2000]]
    for values, found in zip(asked, ask([{"ask": "uniform", "values": values.tolist()} for values in asked])):
        expected = scipy.stats.kstest(values, "uniform", method="exact" if values.size <= 140 else "auto")
        assert found[0] == pytest.approx(expected.statistic, abs=1e-12)
        assert found[1] == pytest.approx(expected.pvalue, abs=1e-6 if values.size <= 140 else 1e-3)


@pytest.mark.parametrize("bca", [False, True])
def test_intervals_of_a_mean_are_those_of_scipy_within_what_draws_differ_by(bca):
    random = drawn(14)
    draws = 20_000
    asked = [random.lognormal(0, 0.6, size=size) for size in (8, 15, 40)]
    questions = [
        {"ask": "mean_interval", "values": values.tolist(), "draws": draws, "interval_fraction": 0.9, "bca": bca}
        for values in asked
    ]
    for values, found in zip(asked, ask(questions)):
        method = "BCa" if bca else "percentile"
        expected = scipy.stats.bootstrap(
            (values,), numpy.mean, n_resamples=draws, confidence_level=0.9, method=method, rng=1
        )
        ends = [expected.confidence_interval.low, expected.confidence_interval.high]
        assert numpy.abs(numpy.array(found) - ends).max() < 0.05 * (ends[1] - ends[0])


def test_cliffs_delta_is_the_rank_sum_of_scipy():
    random = drawn(15)
    asked = [(random.integers(0, 9, size=random.integers(1, 30)), random.integers(0, 9, size=random.integers(1, 30))) for _ in range(30)]
    questions = [{"ask": "delta", "a": a.tolist(), "b": b.tolist()} for a, b in asked]
    for (a, b), found in zip(asked, ask(questions)):
        rank_sum = scipy.stats.mannwhitneyu(b, a, method="asymptotic").statistic
        assert found == pytest.approx(2 * rank_sum / (a.size * b.size) - 1, abs=1e-12)


def test_a_capsule_of_few_corners_is_as_small_as_published():
    """ALG-05: caps of 8, 16 and 64 segments a quarter, by GEOS, and the closed form that they approach."""
    line = shapely.LineString([(0, 0), (10, 0)])
    areas = [line.buffer(0.11, quad_segs=quarter).area for quarter in (8, 16, 64)]
    assert areas == pytest.approx([2.2377694863, 2.2379522367, 2.2380094547], abs=1e-9)
    corners = [(-5.0, -0.4), (4.7, 1.2)]
    length_m = float(numpy.hypot(9.7, 1.6))
    (found,) = ask([{"ask": "swath", "corners_m": corners, "cut_width_m": 0.22}])
    expected_m2 = 0.22 * length_m + numpy.pi * 0.11**2
    assert abs(found["visited_m2"] - expected_m2) < 4 * found["cell_error_m2"]


def star(random, corners):
    """A polygon that may have dents but never crosses itself."""
    angles = numpy.sort(random.uniform(0, 2 * numpy.pi, size=corners))
    radii = random.uniform(2, 10, size=corners)
    return numpy.column_stack([radii * numpy.cos(angles), radii * numpy.sin(angles)])


def test_ground_is_cut_joined_and_grown_as_by_shapely():
    random = drawn(8)
    asked = []
    while len(asked) < 40:
        one, other = star(random, random.integers(5, 30)), star(random, random.integers(5, 30)) + random.uniform(-8, 8, 2)
        # A turn of more than half a circle between two corners leaves the middle outside; a hole needs it inside.
        hole = 0.5 * star(random, 12) / 10
        if shapely.Polygon(one).contains(shapely.Polygon(hole).buffer(0.05)):
            asked.append((shapely.Polygon(one, [hole]), shapely.Polygon(other), random.uniform(0.05, 1.0)))
    rings = lambda polygon: [
        shapely.get_coordinates(ring)[:-1].tolist() for ring in (polygon.exterior, *polygon.interiors)
    ]
    questions = [
        {"ask": "ground", "rings_m": rings(one), "other_m": rings(other), "grown_m": grown_m}
        for one, other, grown_m in asked
    ]
    for (one, other, grown_m), found in zip(asked, ask(questions)):
        assert found["area_m2"] == pytest.approx(one.area, abs=1e-6)
        assert found["union_m2"] == pytest.approx(one.union(other).area, abs=1e-4)
        assert found["minus_m2"] == pytest.approx(one.difference(other).area, abs=1e-4)
        assert found["intersect_m2"] == pytest.approx(one.intersection(other).area, abs=1e-4)
        # Round corners are polygons in both; a turn of a few degrees loses parts of a thousand of the rim.
        rim_m2 = grown_m * (one.length + 2 * numpy.pi * grown_m)
        assert found["grown_round_m2"] == pytest.approx(one.buffer(grown_m, quad_segs=64).area, abs=2e-3 * rim_m2)
        assert found["shrunk_m2"] == pytest.approx(one.buffer(-grown_m, quad_segs=64).area, abs=2e-3 * rim_m2)


def test_a_lawn_of_two_rooms_falls_apart_when_the_body_is_too_wide():
    """ALG-11 and ALG-12, by shapely: 40 x 25 m eroded by 0.3 m; two rooms joined by a passage of one metre."""
    lawn = [[[0, 0], [40, 0], [40, 25], [0, 25]]]
    rooms = [[[0, 0], [10, 0], [10, 4.5], [15, 4.5], [15, 0], [25, 0], [25, 10], [15, 10], [15, 5.5], [10, 5.5], [10, 10], [0, 10]]]
    other = [[[100, 100], [101, 100], [101, 101]]]
    ground = lambda rings, grown_m: {"ask": "ground", "rings_m": rings, "other_m": other, "grown_m": grown_m}
    whole, narrow, wide = ask([ground(lawn, 0.3), ground(rooms, 0.49), ground(rooms, 0.51)])
    assert whole["shrunk_m2"] == pytest.approx(961.36, abs=1e-4)
    assert (narrow["shrunk_parts"], wide["shrunk_parts"]) == (1, 2)
    assert narrow["shrunk_m2"] == pytest.approx(163.047715, abs=0.02)
    assert wide["shrunk_m2"] == pytest.approx(161.487505, abs=0.02)


def test_the_cheapest_way_costs_what_it_costs_in_networkx():
    random = drawn(9)
    sides = [(1, 0), (0, 1), (-1, 0), (0, -1)]
    corners = [(1, 1), (-1, 1), (-1, -1), (1, -1)]
    asked = []
    for number in range(60):
        rows_, columns = random.integers(2, 16, size=2)
        prices = numpy.where(random.random((rows_, columns)) < 0.25, numpy.nan, random.uniform(1, 4, (rows_, columns)))
        cell = lambda: [int(random.integers(columns)), int(random.integers(rows_))]
        asked.append((prices, 0.1 + random.random(), cell(), cell(), ["four", "eight", "eight_cutting_corners"][number % 3]))
    questions = [
        {
            "ask": "way",
            "prices": [[None if numpy.isnan(price) else price for price in row] for row in prices],
            "cell_m": cell_m,
            "from": start,
            "to": goal,
            "steps": steps,
        }
        for prices, cell_m, start, goal, steps in asked
    ]
    ways = 0
    for (prices, cell_m, start, goal, steps), found in zip(asked, ask(questions)):
        free = {(x, y) for y, row in enumerate(prices) for x, price in enumerate(row) if not numpy.isnan(price)}
        graph = networkx.Graph()
        graph.add_nodes_from(free)
        for x, y in free:
            for dx, dy in sides + (corners if steps != "four" else []):
                there = (x + dx, y + dy)
                is_open = steps != "eight" or 0 in (dx, dy) or {(x + dx, y), (x, y + dy)} <= free
                if there in free and is_open:
                    mean = 0.5 * (prices[y][x] + prices[there[1]][there[0]])
                    graph.add_edge((x, y), there, weight=cell_m * numpy.hypot(dx, dy) * mean)
        start, goal = tuple(start), tuple(goal)
        if start not in free or goal not in free or not networkx.has_path(graph, start, goal):
            assert found is None
            continue
        ways += 1
        assert found["cost"] == pytest.approx(networkx.dijkstra_path_length(graph, start, goal), rel=1e-12)
        walked = [tuple(cell) for cell in found["cells"]]
        assert walked[0] == start and walked[-1] == goal
        assert found["cost"] == pytest.approx(networkx.path_weight(graph, walked, "weight"), rel=1e-12)
    assert ways > 20

def drift_nats(time_s, columns_m, white_m, drift_m, drift_time_s):
    """Cost of white noise and a Gauss-Markov drift by dense matrices, the mean estimated by generalised least squares."""
    lag_s = numpy.abs(time_s[:, None] - time_s[None, :])
    spread = drift_m**2 * numpy.exp(-lag_s / drift_time_s) + white_m**2 * numpy.eye(len(time_s))
    root = scipy.linalg.cholesky(spread, lower=True)
    ones = scipy.linalg.solve_triangular(root, numpy.ones(len(time_s)), lower=True)
    nats = 0.0
    for column_m in columns_m:
        bare = scipy.linalg.solve_triangular(root, column_m, lower=True)
        bare = bare - ones * (ones @ bare) / (ones @ ones)
        nats += numpy.log(numpy.diag(root)).sum() + 0.5 * bare @ bare
    return nats


def drift_by_scipy(time_s, columns_m):
    """The same two parts and the time by a search over dense likelihoods; the prior on the time is that of the method."""

    def cost(logs):
        prior = 0.5 * ((logs[2] - numpy.log(400.0)) / 0.8) ** 2
        return drift_nats(time_s, columns_m, *numpy.exp(logs)) + prior

    scatter_m = numpy.std(columns_m)
    starts = [numpy.log([0.2 * scatter_m, scatter_m, time]) for time in (60.0, 600.0)]
    best = min((scipy.optimize.minimize(cost, start, method="Nelder-Mead") for start in starts), key=lambda one: one.fun)
    return numpy.exp(best.x), best.fun, cost


def assert_drift_agrees(time_s, columns_m):
    stand = {"time_s": list(time_s), "east_m": list(columns_m[0]), "north_m": list(columns_m[1])}
    found = ask([{"ask": "drift", "stands": [stand]}])[0]
    (white_m, drift_m, drift_time_s), least, cost = drift_by_scipy(time_s, columns_m)
    ours = numpy.log([found["white_m"], found["drift_m"], found["drift_time_s"]])
    # A search over a grid stops a little before the bottom.
    assert cost(ours) - least < 0.5, (found, (white_m, drift_m, drift_time_s))
    # Where the receiver smooths its own positions next to nothing is white.
    assert found["white_m"] == pytest.approx(white_m, rel=0.05, abs=0.005)
    assert found["drift_m"] == pytest.approx(drift_m, rel=0.15)


def test_drift_of_drawn_stands_is_that_of_dense_likelihoods():
    random = drawn(9)
    for white_m, drift_m, drift_time_s in [(0.3, 2.0, 600.0), (0.1, 0.3, 300.0), (0.01, 0.02, 120.0)]:
        time_s = numpy.arange(0.0, 3600.0, 10.0)
        keeps = numpy.exp(-10.0 / drift_time_s)
        columns_m = []
        for _ in range(2):
            steps = random.normal(size=len(time_s))
            walk = [drift_m * steps[0]]
            for step in steps[1:]:
                walk.append(keeps * walk[-1] + drift_m * numpy.sqrt(1.0 - keeps**2) * step)
            columns_m.append(numpy.array(walk) + white_m * random.normal(size=len(time_s)))
        assert_drift_agrees(time_s, columns_m)


def test_drift_of_a_recorded_reference_station_is_that_of_dense_likelihoods():
    """A receiver at rest for hours; source and licence on the card beside the recording."""
    with open("fixtures/recordings/static/adsb-grid/north_gold_converted.csv", encoding="ascii") as file:
        table = list(csv.DictReader(file))
    clock = numpy.array([float(row["timestamp"]) for row in table])
    time_s = (clock // 10_000) * 3600 + (clock // 100 % 100) * 60 + clock % 100
    lat_deg, lon_deg = (numpy.array([float(row[name]) for row in table]) for name in ("lat", "lon"))
    breaks = numpy.flatnonzero(numpy.abs(numpy.diff(time_s)) > 60.0) + 1
    sessions = [session for session in numpy.split(numpy.arange(len(time_s)), breaks) if len(session) > 700]
    assert sessions
    for session in sessions[:2]:
        # One fix in so many, so that dense matrices stay small.
        session = session[:: max(1, len(session) // 350)]
        east_m = numpy.radians(lon_deg[session] - lon_deg[session[0]]) * 6_378_137.0 * numpy.cos(numpy.radians(60.3))
        north_m = numpy.radians(lat_deg[session] - lat_deg[session[0]]) * 6_378_137.0
        assert_drift_agrees(time_s[session], [east_m, north_m])


def test_values_gather_as_dense_weights_in_numpy_say():
    """Moran's I, squares of which some are unknown, neighbours by the distance of their middles."""
    random = drawn(40)
    asked = []
    for _ in range(20):
        rows, columns = random.integers(2, 14, size=2)
        values = scipy.ndimage.gaussian_filter(random.normal(size=(rows, columns)), sigma=random.uniform(0, 1.5))
        asked.append(numpy.where(random.uniform(size=values.shape) < 0.8, values, numpy.nan))
    questions = [
        {"ask": "moran", "columns": one.shape[1], "values": [None if numpy.isnan(value) else value for value in one.ravel()]}
        for one in asked
    ]
    for one, found in zip(asked, ask(questions)):
        places, values = numpy.argwhere(~numpy.isnan(one)), one[~numpy.isnan(one)]
        weights = numpy.abs(places[:, None] - places[None]).sum(axis=2) == 1
        off = values - values.mean()
        assert found == pytest.approx(off @ weights @ off / weights.sum() / numpy.mean(off**2), abs=1e-12)
