"""Columns go in and out without loss, and without copies where that is said."""

import numpy as np
import pyarrow as pa
import pytest
from hypothesis import given, settings as effort, strategies as st
from hypothesis.extra import numpy as hnp

import tussock

FLOATS = ("hdop", "claimed_sd_m", "speed_mps", "course_deg", "height_msl_m")


@st.composite
def traces(draw):
    count = draw(st.integers(1, 30))
    steps = draw(hnp.arrays(np.float64, count, elements=st.floats(0.01, 1e4)))
    columns = {"time_s": 1.6e9 + np.cumsum(steps)}
    if draw(st.booleans()):
        columns["lat_deg"] = draw(hnp.arrays(np.float64, count, elements=st.floats(-90, 90)))
        columns["lon_deg"] = draw(hnp.arrays(np.float64, count, elements=st.floats(-180, 180)))
    else:
        columns["east_m"] = draw(hnp.arrays(np.float64, count, elements=st.floats(-1e6, 1e6)))
        columns["north_m"] = draw(hnp.arrays(np.float64, count, elements=st.floats(-1e6, 1e6)))
    for name in FLOATS:
        values = st.one_of(st.just(float("nan")), st.floats(0, 1e3, width=32))
        columns[name] = draw(hnp.arrays(np.float32, count, elements=values))
    columns["quality"] = draw(hnp.arrays(np.uint8, count, elements=st.integers(0, 9)))
    columns["satellites"] = draw(hnp.arrays(np.uint8, count, elements=st.integers(0, 255)))
    columns["segment"] = np.sort(draw(hnp.arrays(np.uint32, count, elements=st.integers(0, 5))))
    return columns


def same(trace, columns):
    for name, values in columns.items():
        np.testing.assert_array_equal(trace[name], values, err_msg=name)


@given(traces())
@effort(max_examples=60, deadline=None)
def test_arrays_come_back_as_they_went_in(columns):
    trace = tussock.Trace.from_arrays(machine="north", **columns)
    assert (len(trace), trace.machine) == (len(columns["time_s"]), "north")
    assert set(trace.columns) == set(columns)
    same(trace, columns)


@given(traces())
@effort(max_examples=60, deadline=None)
def test_arrow_comes_back_as_it_went_out(columns):
    trace = tussock.Trace.from_arrays(machine="north", **columns)
    again = tussock.Trace.from_arrow(trace.to_arrow())
    assert again.machine == "north"
    same(again, columns)
    # The stream interface, as any other library takes it.
    same(tussock.Trace.from_arrow(pa.table(trace)), columns)
    # One batch by the array interface.
    batch = trace.to_arrow().to_batches()[0]
    same(tussock.Trace.from_arrow(OnlyArray(batch)), columns)


class OnlyArray:
    def __init__(self, batch):
        self.batch = batch

    def __arrow_c_array__(self, requested_schema=None):
        return self.batch.__arrow_c_array__(requested_schema)


def test_what_was_not_logged_is_null_in_arrow():
    trace = tussock.Trace.from_arrays(
        time_s=[0.0, 1.0], east_m=[0.0, 1.0], north_m=[0.0, 0.0], hdop=[0.9, np.nan], satellites=[255, 12]
    )
    table = trace.to_arrow()
    assert table["hdop"].null_count == 1 and table["satellites"].to_pylist() == [None, 12]
    assert table["course_deg"].null_count == 2 and table["quality"].to_pylist() == ["unknown"] * 2


def test_columns_share_memory_and_are_read_only(trace):
    for name in trace.columns:
        column = trace[name]
        if name == "quality":
            continue
        assert np.shares_memory(column, trace[name]), name
        assert not column.flags.owndata and not column.flags.writeable, name
        with pytest.raises(ValueError):
            column[0] = 0


def test_arrow_shares_memory_with_the_columns(trace):
    table = trace.to_arrow()
    for name in ("time_s", "lat_deg", "lon_deg", "hdop", "segment"):
        values = table[name].chunk(0).buffers()[1]
        assert values.address == trace[name].ctypes.data, name


def test_a_column_outlives_its_trace():
    columns = tussock.Trace.from_arrays(time_s=np.arange(50.0), east_m=np.arange(50.0), north_m=np.zeros(50))
    east_m = columns.east_m
    del columns
    [bytearray(400) for _ in range(200)]
    np.testing.assert_array_equal(east_m, np.arange(50.0))


def test_cells_share_memory_and_lie_where_they_say(findings):
    cells = findings.cells
    fresh = findings._inner.cells("visits_expected")
    assert np.shares_memory(cells.visits_expected, fresh) and not cells.visits_expected.flags.writeable
    lawn_m2 = cells.lawn_fraction.sum(dtype=np.float64) * cells.cell_m**2
    assert lawn_m2 == pytest.approx(findings.coverage.lawn_m2, rel=1e-4)
    assert len(cells.east_m) == cells.shape[1] and len(cells.north_m) == cells.shape[0]


@pytest.mark.parametrize("kind", ["csv", "gpx", "nmea"])
def test_a_trace_written_as_a_log_reads_back(trace, kind):
    again = tussock.read(trace.to_log(kind))
    assert len(again) == len(trace)
    np.testing.assert_allclose(again.time_s, trace.time_s, atol=0.0051)
    np.testing.assert_allclose(again.lat_deg, trace.lat_deg, atol=2e-8)
