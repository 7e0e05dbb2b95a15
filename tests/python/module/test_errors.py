"""Everything that is refused is refused by an exception of ours, with its kind and what to do."""

import pickle

import numpy as np
import pytest

import tussock

LINE = {"time_s": np.arange(3.0), "east_m": np.arange(3.0), "north_m": np.zeros(3)}


@pytest.mark.parametrize(
    ("call", "error", "kind", "words"),
    [
        (lambda: tussock.read(b""), tussock.LogError, "empty", "expected a GPX"),
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
        (lambda: tussock.read_findings(b"{}"), tussock.ReportError, "schema_version", "expected 1"),
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
