"""Ways out to other libraries and back, many jobs at once, distances of ways, what a paper has to name."""

import json
import subprocess
import sys

import numpy as np
import pytest
import shapely

import tussock

#: A frame for a drive in metres.
GRID = {"corners": [(0.0, 0.0), (4.0, 1.0), (-0.5, 2.0)], "columns": 8, "rows": 4, "axes": "local"}


def way(corners_m, step_m=0.2):
    line = shapely.LineString(corners_m)
    places = shapely.get_coordinates(shapely.line_interpolate_point(line, np.arange(0.0, line.length, step_m)))
    return tussock.Trace.from_arrays(time_s=np.arange(len(places), dtype=float), east_m=places[:, 0], north_m=places[:, 1])


def test_squares_of_findings_become_frames_and_arrays(findings):
    cells = findings.cells
    frame, data = cells.to_geodataframe(), cells.to_xarray()
    assert len(frame) == np.count_nonzero(cells.lawn_fraction > 0)
    assert (frame.area * frame.lawn_fraction).sum() == pytest.approx(findings.coverage.lawn_m2, rel=0.01)
    # The plane is that of PROJ: missed pockets lie where their latitudes say.
    degrees = frame.to_crs("EPSG:4326")
    for pocket in findings.missed_pockets:
        here = frame.index[frame.contains(shapely.Point(pocket.east_m, pocket.north_m))]
        assert degrees.loc[here].contains(shapely.Point(pocket.lon, pocket.lat)).all()
    assert data.sizes == {"north_m": cells.shape[0], "east_m": cells.shape[1]}
    assert data.visits_expected.attrs["units"] == "1" and data.east_m.attrs["units"] == "m"
    row, column = np.unravel_index(np.argmax(cells.visits_expected), cells.shape)
    most = data.visits_expected.sel(east_m=cells.east_m[column], north_m=cells.north_m[row])
    assert float(most) == cells.visits_expected[row, column]


def test_cells_of_a_grid_of_ones_own_lie_where_its_corners_say():
    drive = way([(0.0, 0.1), (3.0, 0.8)])
    counted = tussock.count_on_grid(drive, rule="fix_inside", **GRID)
    frame = counted.to_geodataframe()
    fixes = shapely.MultiPoint(np.column_stack([drive.east_m, drive.north_m]))
    np.testing.assert_array_equal(frame.visits > 0, shapely.intersects(frame.geometry, fixes))
    np.testing.assert_array_equal(counted.to_xarray().visits.values, counted.visits)
    assert counted.to_xarray().attrs["cells_visited"] == counted.cells_visited > 3


def test_a_moving_point_comes_back_as_it_went(trace):
    text = trace.to_mf_json()
    assert json.loads(text)["temporalGeometry"]["type"] == "MovingPoint"
    again = tussock.read(text.encode())
    assert len(again) == len(trace)
    np.testing.assert_allclose(again.time_s, trace.time_s, atol=1e-6)
    np.testing.assert_array_equal(again.lat_deg, trace.lat_deg)
    np.testing.assert_array_equal(again.lon_deg, trace.lon_deg)
    with pytest.raises(tussock.LogError, match="local metres"):
        way([(0.0, 0.0), (1.0, 0.0)]).to_mf_json()


def test_ways_are_as_far_apart_as_theory_and_shapely_say():
    one, other = way([(0.0, 0.0), (10.0, 0.0)]), way([(0.0, 1.0), (10.0, 1.0)])
    for kind in ("hausdorff", "frechet", "dynamic_time_warping"):
        assert tussock.way_distance_m(one, other, kind=kind) == pytest.approx(1.0, abs=1e-9)
        assert tussock.way_distance_m(one, one, kind=kind) == 0.0
    # The same line driven backwards: no ground apart, but no common walk.
    back = way([(10.0, 0.0), (0.0, 0.0)])
    assert tussock.way_distance_m(one, back, kind="hausdorff") < 0.2
    assert tussock.way_distance_m(one, back, kind="frechet") > 9.0
    random = np.random.default_rng(3)
    for _ in range(20):
        a, b = (np.cumsum(random.normal(size=(12, 2)), axis=0) for _ in range(2))
        found = tussock.way_distance_m(way(a, 0.05), way(b, 0.05), kind="dynamic_time_warping", step_m=0.1)
        lines = [shapely.LineString(np.column_stack([one.east_m, one.north_m])) for one in (way(a, 0.05), way(b, 0.05))]
        assert tussock.way_distance_m(way(a, 0.05), way(b, 0.05), step_m=0.1) == pytest.approx(
            shapely.frechet_distance(*(shapely.segmentize(line, 0.1) for line in lines)), abs=0.1
        )
        # Between the nearest approach and the leash.
        assert shapely.distance(*lines) <= found <= tussock.way_distance_m(way(a, 0.05), way(b, 0.05), step_m=0.1)
    with pytest.raises(tussock.AnalyseError, match="frechet"):
        tussock.way_distance_m(one, other, kind="frechett")


def test_alignments_are_those_of_every_path():
    """All ways through small tables, one by one."""

    def least(apart_m, row=0, column=0):
        here = apart_m[row, column]
        if (row + 1, column + 1) == apart_m.shape:
            return here, 1
        steps = [(1, 1), (1, 0), (0, 1)]
        inside = [(row + down, column + right) for down, right in steps if row + down < len(apart_m) and column + right < apart_m.shape[1]]
        sum_m, pairs = min(least(apart_m, *after) for after in inside)
        return sum_m + here, pairs + 1

    random = np.random.default_rng(4)
    for _ in range(20):
        a, b = (np.cumsum(random.normal(size=(2, 2)), axis=0) for _ in range(2))
        lines = [shapely.LineString(one) for one in (a, b)]
        step_m = max(line.length for line in lines) / 5
        places = [
            shapely.get_coordinates(line.interpolate(np.linspace(0, line.length, max(2, round(line.length / step_m) + 1)))) for line in lines
        ]
        sum_m, pairs = least(np.hypot(*(places[0][:, None] - places[1]).transpose(2, 0, 1)))
        traces = [tussock.Trace.from_arrays(time_s=[0.0, 1.0], east_m=one[:, 0], north_m=one[:, 1]) for one in (a, b)]
        found = tussock.way_distance_m(*traces, kind="dynamic_time_warping", step_m=step_m)
        assert found == pytest.approx(sum_m / pairs, rel=1e-9)


MANY = """
import tussock

if __name__ == "__main__":
    # As it is saved: an invented plan has more digits.
    plan = tussock.Plan(tussock.invent_garden("convex", seed=1).to_geojson().encode())
    nights = [tussock.simulate(plan, hours=0.3, seed=seed).trace for seed in (1, 2, 3)]
    jobs = [{"logs": night, "plan": plan, "cut_width_m": 0.22, "suggestions": False} for night in nights]
    told = []
    found = tussock.analyse_many([*jobs, {"logs": b"no log"}], processes=2, progress=lambda done, of: told.append((done, of)))
    here = [tussock.analyse(**job).to_json() for job in jobs]
    assert [one.to_json() for one in found[:3]] == here
    assert isinstance(found[3], tussock.LogError) and found[3].kind, found[3]
    assert told == [(1, 4), (2, 4), (3, 4), (4, 4)]
    print("all alike")
"""


def test_many_jobs_give_what_each_gives_alone(tmp_path):
    script = tmp_path / "many.py"
    script.write_text(MANY)
    done = subprocess.run([sys.executable, script], capture_output=True, text=True, timeout=240)
    assert (done.returncode, done.stdout) == (0, "all alike\n"), done.stderr


def test_a_paper_is_told_what_to_name(trace, plan, settings, findings):
    found = tussock.measures(trace, plan=plan, settings=settings)
    told = tussock.about(findings)
    assert told.version == told.result_version == tussock.__version__
    assert told.settings == findings.settings and told.libraries["numpy"] == np.__version__
    named = {one.field for one in tussock.about(found).measures}
    # Nothing is said of wheels without a track width.
    assert "visits.gini" in named and not any(name.startswith("wheels") for name in named)
    frame = tussock.tidy([findings], [found])
    assert frame.field_work_area_per_h_m2[0] == found.field_work.area_per_h_m2
    assert frame.attrs["columns"]["field_work_area_per_h_m2"][0] == "m2/h"
    assert frame.attrs["settings"] == [findings.to_dict()["settings"]]
    assert frame.wheels_mean_passes[0] is None


def test_a_missing_library_is_named_with_what_to_install(findings, monkeypatch):
    monkeypatch.setitem(sys.modules, "xarray", None)
    with pytest.raises(ImportError, match=r"xarray.*tussock\[frames\]"):
        findings.cells.to_xarray()
