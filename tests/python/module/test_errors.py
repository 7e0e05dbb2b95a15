"""Everything that is refused is refused by an exception of ours, with its kind and what to do."""

import datetime
import pickle

import numpy as np
import pandas as pd
import pytest

import tussock

LINE = {"time_s": np.arange(3.0), "east_m": np.arange(3.0), "north_m": np.zeros(3)}


@pytest.mark.parametrize(
    ("call", "error", "kind", "words"),
    [
        (lambda: tussock.read(b""), tussock.LogError, "empty", "expected a log (GPX"),
        (lambda: tussock.read(b"hello"), tussock.LogError, "not_a_log", "expected GPX"),
        (lambda: tussock.read("nowhere.gpx"), tussock.LogError, "read", "does not exist"),
        (lambda: tussock.read([]), tussock.LogError, "no_log", "at least one"),
        (lambda: tussock.Plan(b"{}"), tussock.PlanError, "not_a_feature_collection", "FeatureCollection"),
        (lambda: tussock.Plan(b"{"), tussock.PlanError, "not_json", "line 1"),
        (lambda: tussock.Settings(machine={"cut_width": 0.2}), tussock.SettingsError, "faults", "machine.cut_width_m"),
        (lambda: tussock.Settings(machine=3), tussock.SettingsError, "not_a_table", "expected a table"),
        (
            lambda: tussock.analyse(tussock.Trace.from_arrays(**LINE), cut_width_m=9.0),
            tussock.SettingsError, "faults", "cut_width_m",
        ),
        (
            lambda: tussock.analyse([tussock.Trace.from_arrays(**LINE)] * 2),
            tussock.AnalyseError, "same_machine_twice", "one trace for each machine",
        ),
        (lambda: tussock.read_findings(b"{}"), tussock.ReportError, "schema_version", "expected 2"),
        (lambda: tussock.invent_garden("maze"), tussock.SimulateError, "unknown_kind", "two_rooms"),
        (
            lambda: tussock.simulate(tussock.invent_garden(), hours=-1.0),
            tussock.SimulateError, "out_of_range", "hours is -1",
        ),
        (lambda: tussock.compare_patterns({}), tussock.CompareError, "too_few", "at least 2"),
        (lambda: tussock.Trace.from_arrays(**LINE)["lat_deg"], tussock.LogError, "no_column", "east_m"),
        (lambda: tussock.Trace.from_arrays(**LINE).to_log("gpx"), tussock.LogError, "no_place_on_earth", "csv"),
        (
            lambda: tussock.Trace.from_arrays(**{**LINE, "time_s": [0.0, 2.0, 2.0]}),
            tussock.LogError, "time_reversed", "time_s[2] is 2 after 2",
        ),
        (
            lambda: tussock.Trace.from_arrays(**{**LINE, "east_m": [0.0, np.inf, 2.0]}),
            tussock.LogError, "out_of_range", "fix 1",
        ),
        (
            lambda: tussock.Trace.from_arrays(**{**LINE, "north_m": [0.0]}),
            tussock.LogError, "uneven_columns", "expected 3",
        ),
        (lambda: tussock.Trace.from_arrays(**LINE, quality=[0, 1, 99]), tussock.LogError, "out_of_range", "quality[2]"),
        (lambda: tussock.Trace.from_arrays(**LINE, hdop=["a", "b", "c"]), tussock.LogError, "columns", "hdop"),
        (lambda: tussock.Trace.from_arrays(time_s=[0.0]), tussock.LogError, "columns", "lat_deg and lon_deg"),
    ],
)  # fmt: skip
def test_it_says_what_is_wrong_and_what_was_expected(call, error, kind, words):
    with pytest.raises(error) as caught:
        call()
    assert caught.value.kind == kind, caught.value
    assert words in str(caught.value)
    assert isinstance(caught.value, tussock.TussockError)
    again = pickle.loads(pickle.dumps(caught.value))
    assert (type(again), again.kind, again.hint) == (error, kind, caught.value.hint)


def test_faults_of_a_plan_come_all_at_once(demo):
    text = (demo / "plan.geojson").read_text().replace('"station"', '"statoin"').replace('"guide"', '"giude"')
    with pytest.raises(tussock.PlanError) as caught:
        tussock.Plan(text.encode())
    assert len(caught.value.faults) >= 1
    looked_at = tussock.plan_check(text.encode())
    assert not looked_at.is_sound and len(looked_at.faults) == len(caught.value.faults)


def test_strict_reading_raises_at_the_first_fault():
    log = b"time,lat,lon\n2026-05-01T12:00:00Z,52.00001,5.00001\n2026-05-01T12:00:01Z,oops,5.00001\n"
    assert len(tussock.read(log)) == 1
    with pytest.raises(tussock.LogError, match="line 3") as caught:
        tussock.read(log, strict=True)
    assert caught.value.kind == "strict" and caught.value.hint


def test_a_missing_folder_or_a_file_in_its_place_is_told(findings, tmp_path):
    (tmp_path / "file").write_text("of somebody")
    for folder in (tmp_path / "file", tmp_path / "file" / "below"):
        with pytest.raises(tussock.OutputError):
            findings.report(folder)


#: None of them is what any argument wants, apart from a few that take some.
STRANGE = [
    None, object(), -1, 1.5, float("nan"), float("inf"), 2**70, True, "", "no such thing", "a\0b", "\ud800", b"\xff",
    [], [None], [[1.0], [2.0]], {}, {"a": None}, {1: 2}, (1, 2, 3), np.array([[1.0]]), np.array(["a"]), np.ma.masked,
    datetime.date(2026, 5, 1), datetime.datetime(2026, 5, 1), pd.DataFrame({"a": [1]}), pd.NaT, iter([3]),
]  # fmt: skip


def sound_calls():
    plan = tussock.invent_garden("convex", seed=1)
    trace = tussock.Trace.from_arrays(
        time_s=np.arange(100.0), east_m=np.arange(100) % 10 * 0.4, north_m=np.arange(100) // 10 * 0.4, hdop=np.ones(100),
    )  # fmt: skip
    found = tussock.analyse(trace, cut_width_m=0.22, suggestions=False)
    compared = {"a": ([0.6, 0.7], [0.8, 0.9]), "b": ([0.5, 0.6], [0.7, 0.8])}
    spread = {"position_sd": 0.01, "night_sd": 0.04, "garden_sd": 0.02}
    some = {"settings": None, "plan": None}
    line = {"time_s": [0.0, 1.0], "quality": [1, 1], "hdop": [1.0, 1.0], "segment": [0, 0], "satellites": [9, 9]}
    return [
        (tussock.read, {"logs": b"time,x_m,y_m\n0,0,0\n", "settings": None, "date": None, "columns": None, "strict": False}),
        (tussock.Plan, {"source": plan.to_geojson().encode(), "settings": None}),
        (tussock.plan_check, {"plan": plan, "settings": None}),
        (tussock.Settings, {"machine": {}}),
        (tussock.Settings, {"machine": {"cut_width_m": 0.22}, "limits": {}}),
        (tussock.Settings().changed, {"machine": {}}),
        (tussock.Settings.read, {"source": "nowhere"}),
        (tussock.Trace, {"inner": trace._inner}),
        (tussock.Trace.from_arrays, {**line, "east_m": [0.0, 1.0], "north_m": [0.0, 0.0], "machine": "m"}),
        (tussock.Trace.from_arrays, {**line, "lat_deg": [50.0, 50.0], "lon_deg": [5.0, 5.1]}),
        (tussock.Trace.from_arrow, {"table": trace, "machine": None}),
        (trace.__getitem__, {"name": "hdop"}),
        (trace.to_log, {"format": "csv"}),
        (tussock.Reference, {"source": b"east_m,north_m\n0,0\n20,0\n", "settings": None}),
        (tussock.Reference.from_trace, {"trace": trace, "timed": True}),
        (tussock.analyse, {"logs": trace, **some, "cut_width_m": 0.22, "seed": 0, "suggestions": False, "reference": None}),
        (tussock.inspect, {"logs": trace, **some}),
        (tussock.plan_from_trace, {"logs": trace, "settings": None}),
        (tussock.mended_plan, {"logs": trace, "plan": plan, "settings": None}),
        (tussock.measures, {"logs": trace, **some, "cut_width_m": 0.22}),
        (tussock.guess_pattern, {"logs": trace, **some}),
        (tussock.against_reference, {"logs": trace, "reference": b"east_m,north_m\n0,0\n20,0\n", **some}),
        (tussock.compare, {"before": found, "after": found, "seed": 0, "names": (["a"], ["b"])}),
        (
            tussock.count_on_grid,
            {"logs": trace, "corners": [(0, 0), (9, 0), (0, 9)], "columns": 3, "rows": 3, "cell_m": None, "rule": "fix_inside",
             "axes": "local", "cut_width_m": None, "path": "as_logged", "new_pass_after_s": 30.0, **some},
        ),
        (tussock.compare_patterns, {"gardens": compared, "paired_nights": False, "draws": 10, "seed": 0}),
        (tussock.spread_of, {"gardens": [[0.1, 0.14], [0.02, 0.06]], "position_sd": 0.0}),
        (tussock.nights_needed, {"spread": spread, "difference": 0.05, "gardens": 6, "level": 0.05, "power": 0.8}),
        (tussock.gardens_needed, {"spread": spread, "difference": 0.05, "nights": 6, "level": 0.05, "power": 0.8}),
        (tussock.power_of, {"spread": spread, "difference": 0.05, "gardens": 6, "nights": 2, "level": 0.05}),
        (
            tussock.simulate,
            {"plan": plan, "hours": 0.01, "seed": 0, "pattern": "roaming", "turn_law": "from_heading", "speed_mps": 0.4,
             "cut_width_m": 0.22, "past_boundary_m": 0.0, "turning_s": (1, 2), "outing_s": (900, 999), "charging_s": (900, 999),
             "lane_spacing_m": 0.2, "lane_direction_deg": 0.0, "lane_jitter_m": 0.0, "lane_turn_each_round_deg": 90.0,
             "noise": "none", "period_s": 1.0, "start": "2026-05-01T20:00:00Z", "truth_cell_m": 0.1, "settings": None},
        ),
        (tussock.invent_garden, {"kind": "convex", "seed": 1, "area_m2": (300.0, 400.0), "passage_m": 1.6}),
        (tussock.laws.coverage_factor, {"cut_width_m": 0.2, "speed_mps": 0.4, "driving_s": 9.0, "lawn_m2": 9.0}),
        (tussock.laws.random_search_factor, {"visited_fraction": 0.5}),
        (tussock.laws.gini_of_poisson, {"mean_visits": 1.0}),
        (tussock.Findings, {"inner": found._inner}),
        (found.to_json, {"private": False}),
        (found.to_geodataframe, {"kind": None}),
        (found.report, {"folder": "/dev/null/x", "private": False, "map_width_px": 300}),
        (found.left_out, {"private": False}),
        (tussock.read_findings, {"source": found.to_json().encode()}),
        (tussock.read_comparison, {"source": b"{}"}),
        (tussock.tidy, {"findings": [found]}),
        (tussock.tidy_row, {"findings": found}),
        (
            tussock.spark.run,
            {"spark": None, "gardens": "g", "store": "s", "time_limit_s": 1.0, "memory_limit_mib": 9, "partitions": None},
        ),
    ]  # fmt: skip


def test_no_strange_argument_leaves_by_an_exception_that_is_not_ours(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    wrong = []
    for call, sound in sound_calls():
        for name in sound:
            for value in STRANGE:
                try:
                    call(**{**sound, name: value})
                except tussock.InternalError as error:
                    wrong.append((call.__qualname__, name, value, error))
                except tussock.TussockError:
                    pass
                except BaseException as error:
                    wrong.append((call.__qualname__, name, value, type(error), error))
    assert not wrong, "\n".join(map(str, wrong))
