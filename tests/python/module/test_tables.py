"""Times, masks and data frames of other libraries are taken for what they are, or refused."""

import datetime
import json

import geopandas
import numpy as np
import pandas as pd
import polars
import pyarrow as pa
import pytest

import tussock

PLACES = {"east_m": [0.0, 0.4, 0.8], "north_m": [0.0, 0.0, 0.0]}
#: 2026-05-01T12:00:00.5Z and the seconds after it.
SECONDS = [1777636800.5, 1777636801.5, 1777636802.5]
AWARE = [datetime.datetime.fromtimestamp(time_s, datetime.timezone.utc) for time_s in SECONDS]
NAIVE = [time.replace(tzinfo=None) for time in AWARE]
SERIES = pd.Series(pd.to_datetime(AWARE))


def trace_of(**columns):
    return tussock.Trace.from_arrays(**{**PLACES, **columns})


@pytest.mark.parametrize(
    "times",
    [
        AWARE,
        [pd.Timestamp(time) for time in AWARE],
        SERIES,
        SERIES.dt.tz_convert("Pacific/Auckland"),
        SERIES.astype("datetime64[ns, UTC]"),
        pd.DatetimeIndex(SERIES),
        pd.Series(SECONDS, dtype="Float64"),
        pa.array(AWARE, pa.timestamp("ms", "UTC")),
        pa.chunked_array([pa.array(AWARE, pa.timestamp("us", "Europe/Berlin"))]),
        polars.Series(AWARE),
        np.array(NAIVE, "M8[us]").astype("i8") / 1e6,
        np.repeat(SECONDS, 2)[::2],
    ],
    ids=lambda times: type(times).__name__,
)
def test_times_that_say_their_zone_become_seconds(times):
    np.testing.assert_array_equal(trace_of(time_s=times).time_s, SECONDS)


def test_arrow_timestamps_become_seconds():
    table = pa.table({"time_s": pa.array(AWARE, pa.timestamp("ns", "UTC")), **PLACES})
    np.testing.assert_array_equal(tussock.Trace.from_arrow(table).time_s, SECONDS)


@pytest.mark.parametrize(
    ("times", "kind"),
    [
        (NAIVE, "no_zone"),
        (np.array(NAIVE, "M8[ms]"), "no_zone"),
        (SERIES.dt.tz_localize(None), "no_zone"),
        (pa.array(NAIVE), "no_zone"),
        (np.array(SECONDS) * 1e3, "out_of_range"),
        (np.array(SECONDS) * 1e6, "out_of_range"),
        ((np.array(SECONDS) * 1e9).astype("i8"), "out_of_range"),
        (np.arange(3).astype("m8[s]"), "columns"),
        ([time.date() for time in AWARE], "columns"),
        (["a", "b", "c"], "columns"),
        ([True, False, True], "columns"),
        ([[0.0], [1.0], [2.0]], "columns"),
        ([[0.0], [1.0, 2.0], 3.0], "columns"),
        (None, "columns"),
        (np.array(SECONDS, "f4"), "time_reversed"),
    ],
)
def test_times_that_could_mean_something_else_are_refused(times, kind):
    with pytest.raises(tussock.LogError) as caught:
        trace_of(time_s=times)
    assert caught.value.kind == kind, caught.value
    assert caught.value.hint or kind not in ("no_zone", "out_of_range")


def test_numbers_that_do_not_fit_their_column_are_refused():
    for column in (
        {"segment": np.array([-1, 0, 0])},
        {"segment": [0, 0.5, 1]},
        {"satellites": [256, 0, 0]},
        {"quality": np.array([256, 0, 0])},
        {"hdop": [1e300, 1.0, 1.0]},
        {"speed_mps": [0.4, -0.4, 0.4]},
        {"course_deg": [0.0, -np.inf, 0.0]},
        {"time_s": [0.0, 1.0, np.inf]},
    ):
        with pytest.raises(tussock.LogError) as caught:
            trace_of(**{"time_s": SECONDS, **column})
        assert caught.value.kind == "out_of_range" and next(iter(column)) in str(caught.value)


@pytest.mark.parametrize("missing", ["mask", "nan", "none", "na", "nat"])
def test_rows_without_time_or_place_are_left_out_and_counted(missing):
    gone = {
        "mask": {"east_m": np.ma.masked_array([0.0, 9e9, 0.8], [False, True, False])},
        "nan": {"north_m": np.array([0.0, np.nan, 0.0])},
        "none": {"east_m": [0.0, None, 0.8]},
        "na": {"east_m": pd.array([0, None, 1], dtype="Int64")},
        "nat": {"time_s": SERIES.where([True, False, True])},
    }[missing]
    trace = trace_of(**{"time_s": SECONDS, "hdop": [0.7, 0.8, 0.9], "segment": [0, 0, 1], **gone})
    assert (len(trace), trace.left_out) == (2, (1,))
    np.testing.assert_array_equal(trace.time_s, [SECONDS[0], SECONDS[2]])
    np.testing.assert_array_equal(trace.hdop, np.array([0.7, 0.9], "f4"))
    np.testing.assert_array_equal(trace.segment, [0, 1])


def test_a_fault_behind_a_row_that_is_left_out_is_told_by_its_own_row():
    with pytest.raises(tussock.LogError, match=r"time_s\[2\]"):
        trace_of(time_s=[5.0, np.nan, 4.0])


def test_masked_values_of_a_receiver_were_not_logged():
    mask = [False, True, False]
    trace = trace_of(
        time_s=SECONDS,
        hdop=np.ma.masked_array([0.7, 99.0, 0.9], mask),
        satellites=np.ma.masked_array([12, 99, 13], mask),
        quality=np.ma.masked_array(["rtk_fixed", "autonomous", "rtk_float"], mask),
    )
    assert trace.left_out == () and np.isnan(trace.hdop[1]) and trace.satellites[1] == 255
    assert [tussock.QUALITIES[code] for code in trace.quality] == ["rtk_fixed", "unknown", "rtk_float"]


def test_arrays_of_the_user_stay_as_they_are():
    satellites = np.array([12.0, np.nan, 13.0])
    trace_of(time_s=SECONDS, satellites=satellites)
    assert np.isnan(satellites[1])


@pytest.fixture
def frame(trace):
    return trace.to_geodataframe().iloc[:500]


def same_fixes(read, trace, count=500):
    assert len(read) == count
    np.testing.assert_allclose(read.time_s, trace.time_s[:count], atol=1e-6)
    np.testing.assert_allclose(read.lat_deg, trace.lat_deg[:count], atol=1e-9)
    np.testing.assert_allclose(read.lon_deg, trace.lon_deg[:count], atol=1e-9)


def test_a_geodataframe_in_any_projection_is_read_as_a_log(frame, trace):
    for given in (frame, frame.to_crs(frame.estimate_utm_crs()), frame.reset_index()):
        read = tussock.read(given)
        same_fixes(read, trace)
        np.testing.assert_array_equal(read.hdop, trace.hdop[:500])
        np.testing.assert_array_equal(read.quality, trace.quality[:500])


def test_a_data_frame_is_read_by_known_names_or_by_those_given(frame, trace):
    plain = pd.DataFrame({"when": frame.index, "Latitude": frame.geometry.y, "x": frame.geometry.x})
    read = tussock.read(plain, columns={"time": "when", "lat": "Latitude", "lon": "x"})
    same_fixes(read, trace)
    plain.columns = ["timestamp", "Latitude", "lng"]
    same_fixes(tussock.read(plain), trace)
    in_ms = plain.assign(timestamp=(trace.time_s[:500] * 1000).round().astype("i8"))
    np.testing.assert_allclose(tussock.read(in_ms).time_s, trace.time_s[:500], atol=5e-4)
    assert tussock.inspect(plain)["log_verdict"] == tussock.inspect(tussock.read(plain))["log_verdict"]


def test_what_a_data_frame_lacks_is_skipped_and_counted(frame):
    plain = pd.DataFrame({"time": frame.index, "lat": frame.geometry.y, "lon": frame.geometry.x}).reset_index(drop=True)
    plain.loc[[3, 5], "lat"] = np.nan
    plain.loc[7, "time"] = pd.NaT
    read = tussock.read(plain)
    assert len(read) == 497 and sum(read.facts[0].skipped.values()) == 3


def test_times_of_a_data_frame_without_a_zone_are_utc_and_it_is_said(frame, trace):
    plain = pd.DataFrame({"time": frame.index.tz_localize(None), "lat": frame.geometry.y, "lon": frame.geometry.x})
    read = tussock.read(plain)
    same_fixes(read, trace)
    assert [notice.said.code for notice in read.facts[0].notices] == ["time_without_zone"]


def test_a_plan_comes_back_out_of_its_geodataframe(plan):
    given = plan.to_geodataframe()
    assert tussock.Plan(given) == plan
    again = tussock.Plan(given.to_crs(given.estimate_utm_crs()).assign(drawn_by="somebody"))
    assert tussock.plan_check(again).lawn_m2 == pytest.approx(tussock.plan_check(plan).lawn_m2, rel=1e-6)


@pytest.mark.parametrize(
    ("call", "kind"),
    [
        (lambda frame: tussock.read(frame.set_crs(None, allow_override=True)), "no_crs"),
        (lambda frame: tussock.read(frame.set_geometry(frame.buffer(0.001))), "geometry"),
        (lambda frame: tussock.read(geopandas.GeoDataFrame({"a": [1]})), "no_crs"),
        (lambda frame: tussock.read(pd.DataFrame({"a": [1], "b": [2]})), "not_a_log"),
        (lambda frame: tussock.Plan(frame), "faults"),
        (lambda frame: tussock.Plan(pd.DataFrame({"role": ["lawn"]})), "no_geometry"),
        (lambda frame: tussock.Plan(frame.set_crs(None, allow_override=True)), "no_crs"),
        (lambda frame: tussock.Settings.read(frame), "value"),
    ],
)
@pytest.mark.filterwarnings("ignore:Geometry is in a geographic CRS")
def test_data_frames_that_hold_something_else_are_refused(frame, call, kind):
    with pytest.raises(tussock.TussockError) as caught:
        call(frame)
    assert caught.value.kind == kind, caught.value


def test_a_plan_that_lies_beside_its_log_is_mended_and_a_drive_draws_one(plan, settings, nights):
    shifted = json.loads(plan.to_geojson())

    def east(coordinates):
        if isinstance(coordinates[0], (int, float)):
            return [coordinates[0] + 2e-5, *coordinates[1:]]
        return [east(each) for each in coordinates]

    for feature in shifted["features"]:
        feature["geometry"]["coordinates"] = east(feature["geometry"]["coordinates"])
    mended = tussock.mended_plan(nights[0], shifted, settings=settings)
    before, after = (each.to_geodataframe().geometry.union_all().centroid.x for each in (plan, mended))
    assert abs(after - before) < 2e-6
    drawn = tussock.plan_from_trace(nights[0], settings=settings)
    lawn_m2 = tussock.plan_check(plan).lawn_m2
    assert 0.5 * lawn_m2 < tussock.plan_check(drawn).lawn_m2 < 1.1 * lawn_m2
