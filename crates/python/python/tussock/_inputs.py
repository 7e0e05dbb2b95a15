"""Logs, plans and settings: what comes in."""

from __future__ import annotations

import datetime
import json
import os
from collections.abc import Iterable, Mapping, Sequence
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any, Union

from . import _asked, _tables, _tussock, fields
from ._errors import LogError, PlanError, SettingsError, TussockError
from ._record import Record, told

if TYPE_CHECKING:
    import geopandas
    import numpy
    import pandas
    import pyarrow

PathLike = Union[str, "os.PathLike[str]"]
#: A log or a plan: a path, or its bytes, or a data frame that holds one.
Source = Union[PathLike, bytes, bytearray, memoryview, "pandas.DataFrame"]

#: Words of the codes in :attr:`Trace.quality` (NMEA 0183 GGA quality; GPX ``fix``).
QUALITIES = (
    "unknown",
    "autonomous",
    "differential",
    "precise",
    "rtk_fixed",
    "rtk_float",
    "estimated",
    "manual",
    "simulated",
    "other",
)
_FLOATS = ("hdop", "claimed_sd_m", "speed_mps", "course_deg", "height_msl_m")


def is_source(source: Any) -> bool:
    """Whether it is one log or plan, and not a list of some."""
    return isinstance(source, (str, os.PathLike, bytes, bytearray, memoryview)) or _tables.is_frame(source)


def fetched(source: Any, error: type[TussockError], name: str) -> tuple[str, bytes]:
    """Name and bytes of a log, a plan, settings or findings."""
    if isinstance(source, (bytes, bytearray, memoryview)):
        return name, bytes(source)
    if error is LogError and _tables.is_frame(source):
        return name, _tables.log_of(source)
    path = _asked.path(error, name, source, "a path, or its content as bytes")
    # Names of files need not be text.
    told = path.encode("utf-8", "backslashreplace").decode()
    try:
        return told, Path(path).read_bytes()
    except FileNotFoundError:
        raise error(f"{told}: does not exist", "read") from None
    except OSError as failed:
        raise error(f"{told}: cannot be read: {failed.strerror}", "read") from failed


class Settings(fields.SettingsFields):
    """What the user wants, with a default for every key (see ``docs/formats.md``).

    Takes the tables of a settings file as keywords; unknown keys and values that cannot be used raise
    :class:`SettingsError`, all of them at once.

    >>> import tussock
    >>> settings = tussock.Settings(machine={"cut_width_m": 0.22})
    >>> settings.machine.cut_width_m, settings.pockets.min_width_m
    (0.22, 0.8)
    >>> tussock.Settings(machine={"cut_width": 0.22})
    Traceback (most recent call last):
    tussock._errors.SettingsError: settings: line 2: machine.cut_width is not known, expected machine.cut_width_m
    """

    def __init__(self, **tables: Mapping[str, Any] | Sequence[Mapping[str, Any]]) -> None:
        self._take(_tussock.Settings("settings", _toml(tables)), "")

    @classmethod
    def read(cls, source: PathLike) -> Settings:
        """Reads a settings file (TOML)."""
        name, content = fetched(source, SettingsError, "settings")
        try:
            text = content.decode("utf-8")
        except UnicodeDecodeError as error:
            raise SettingsError(
                f"{name}: is not UTF-8 text from byte {error.start} on, expected settings in TOML", "not_text"
            ) from None
        settings = cls.__new__(cls)
        is_file = isinstance(source, (str, os.PathLike))
        settings._take(_tussock.Settings(name, text), os.path.dirname(name) if is_file else "")
        return settings

    def _take(self, inner: _tussock.Settings, folder: str) -> None:
        """Reads the device card too, where there is one: its name is seen from the folder of the settings."""
        self._folder = folder
        card = inner.card
        self._inner = inner if card is None else inner.with_card(*fetched(os.path.join(folder, card), SettingsError, "card"))

    @cached_property
    def _record(self) -> Record:
        return Record(json.loads(self._inner.to_json()))

    if not TYPE_CHECKING:

        def __getattr__(self, name: str) -> Any:
            if name.startswith("_"):
                raise AttributeError(name)
            return getattr(self._record, name)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Settings) and self.to_dict() == other.to_dict()

    __hash__ = None  # type: ignore[assignment]

    def __repr__(self) -> str:
        return f"Settings(**{self.to_dict()!r})"

    def __reduce__(self) -> tuple[object, ...]:
        return (_settings_again, (self.to_dict(), self._folder))

    def to_dict(self) -> dict[str, Any]:
        """All tables and keys, defaults included; what has no default is ``None``."""
        return self._record.to_dict()

    def changed(self, **tables: Mapping[str, Any] | Sequence[Mapping[str, Any]]) -> Settings:
        """The same with some keys changed: ``settings.changed(machine={"cut_width_m": 0.24})``."""
        all_tables = self.to_dict()
        for table, keys in tables.items():
            of_it = all_tables.get(table)
            all_tables[table] = {**of_it, **keys} if isinstance(keys, Mapping) and isinstance(of_it, Mapping) else keys
        return _settings_again(all_tables, self._folder)


def _settings_again(tables: Mapping[str, Any], folder: str) -> Settings:
    settings = Settings.__new__(Settings)
    settings._take(_tussock.Settings("settings", _toml(tables)), folder)
    return settings


def _toml(tables: Mapping[str, Any]) -> str:
    lines: list[str] = []
    for table, given in tables.items():
        # A table that there may be several of comes as a list.
        is_list = isinstance(given, (list, tuple))
        heads: tuple[str, str] = ("[[", "]]") if is_list else ("[", "]")
        each: Sequence[Any] = given if is_list else [given]
        for keys in each:
            if not isinstance(keys, Mapping):
                raise SettingsError(f"settings: {table} is {keys!r}, expected a table of keys", "not_a_table")
            lines.append(table.join(heads))
            lines += [f"{key} = {_toml_value(table, key, value)}" for key, value in keys.items() if value is not None]
    return "\n".join(lines) + "\n"


def _toml_value(table: str, key: str, value: Any) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=True)
    if isinstance(value, int):
        return str(value)
    if isinstance(value, float):
        # Floats of NumPy show their type.
        return repr(float(value))
    if hasattr(value, "item") and getattr(value, "ndim", 1) == 0:
        return _toml_value(table, key, value.item())
    if isinstance(value, (list, tuple)):
        return "[" + ", ".join(_toml_value(table, key, item) for item in value) + "]"
    raise SettingsError(
        f"settings: {table}.{key} is a {type(value).__name__}, expected a number, a text, a list or None", "value"
    )


def as_settings(settings: Settings | PathLike | None) -> Settings:
    """Settings, a path of some, or the defaults."""
    if settings is None:
        return Settings()
    return settings if isinstance(settings, Settings) else Settings.read(settings)


class Plan:
    """What was installed in one garden, as drawn (RFC 7946 with ``properties.role``, see ``docs/formats.md``).

    A GeoDataFrame with a column ``role`` is turned into WGS 84. A plan that is not sound raises :class:`PlanError` with every
    fault. :func:`plan_check` looks at one without raising.
    """

    def __init__(self, source: Source | Mapping[str, Any], *, settings: Settings | PathLike | None = None) -> None:
        if isinstance(source, Mapping):
            try:
                source = json.dumps(source).encode()
            except (TypeError, ValueError) as failed:
                raise PlanError(f"plan: {failed}, expected GeoJSON", "not_json") from None
        if _tables.is_frame(source):
            source = _tables.plan_of(source)
        name, content = fetched(source, PlanError, "plan")
        self._inner = _tussock.Plan(name, content, as_settings(settings)._inner)

    @classmethod
    def _of(cls, inner: _tussock.Plan) -> Plan:
        plan = cls.__new__(cls)
        plan._inner = inner
        return plan

    @property
    def remarks(self) -> list[str]:
        """Things to look at that do not stop an analysis."""
        return self._inner.remarks

    def to_geojson(self) -> str:
        """The plan as GeoJSON text: longitude first, degrees, 8 decimals (1 mm)."""
        return self._inner.to_geojson()

    @property
    def __geo_interface__(self) -> dict[str, Any]:
        told: dict[str, Any] = json.loads(self.to_geojson())
        return told

    def to_geodataframe(self) -> geopandas.GeoDataFrame:
        """One row a feature (``role``, ``name``, ``radius_m``, ``outing_share_fraction``), WGS 84."""
        return _frame_of(self.__geo_interface__["features"])

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Plan) and self.to_geojson() == other.to_geojson()

    __hash__ = None  # type: ignore[assignment]

    def __reduce__(self) -> tuple[object, ...]:
        return (Plan, (self.to_geojson().encode(),))

    def __repr__(self) -> str:
        roles = [feature["properties"]["role"] for feature in self.__geo_interface__["features"]]
        return f"<Plan: {', '.join(roles)}>"


def as_plan(plan: Plan | Source | None, settings: Settings) -> Plan | None:
    """A plan, a path of one, or none."""
    return plan if plan is None or isinstance(plan, Plan) else Plan(plan, settings=settings)


def _frame_of(features: Sequence[Mapping[str, Any]]) -> geopandas.GeoDataFrame:
    import geopandas

    if not features:
        return geopandas.GeoDataFrame({"geometry": []}, geometry="geometry", crs="EPSG:4326")
    return geopandas.GeoDataFrame.from_features(features, crs="EPSG:4326")


def plan_check(plan: Plan | Source, *, settings: Settings | PathLike | None = None) -> fields.PlanChecked:
    """Is this plan sound, and how large is everything in it?

    Returns ``is_sound``, ``lawn_m2``, ``edge_m``, ``rows`` (role, name, ``area_m2``, ``length_m`` of each feature) and
    ``faults``. Areas are on the tangent plane (EPSG method 9837): within 1 part in 10 million of the ellipsoid.
    """
    if isinstance(plan, Plan):
        plan = plan.to_geojson().encode()
    name, content = fetched(plan, PlanError, "plan")
    checked: fields.PlanChecked = told(_tussock.plan_check(name, content, as_settings(settings)._inner))
    return checked


class Trace:
    """Fixes of one machine in strictly rising time order.

    Columns are read-only NumPy arrays over the memory of the trace: no copy is made, except of :attr:`quality`.
    What was not logged is NaN; satellites not logged are 255.

    >>> import numpy as np, tussock
    >>> trace = tussock.Trace.from_arrays(
    ...     time_s=np.arange(3.0), east_m=np.array([0.0, 0.4, 0.8]), north_m=np.zeros(3))
    >>> len(trace), trace.east_m[2], trace.machine
    (3, np.float64(0.8), 'machine-1')
    """

    def __init__(self, inner: _tussock.Trace) -> None:
        self._inner: _tussock.Trace = _asked.instance(LogError, "trace", inner, _tussock.Trace, "tussock.read and Trace.from_arrays make traces")

    @classmethod
    def from_arrays(
        cls,
        *,
        time_s: Any,
        lat_deg: Any = None,
        lon_deg: Any = None,
        east_m: Any = None,
        north_m: Any = None,
        machine: str = "machine-1",
        segment: Any = None,
        quality: Any = None,
        hdop: Any = None,
        claimed_sd_m: Any = None,
        speed_mps: Any = None,
        course_deg: Any = None,
        height_msl_m: Any = None,
        satellites: Any = None,
    ) -> Trace:
        """A trace from columns of equal length, copied once.

        ``time_s`` is seconds since 1970 in UTC, strictly rising, or times that say their zone: datetimes, and columns of pandas,
        polars or pyarrow. Give ``lat_deg`` and ``lon_deg`` (WGS 84), or ``east_m`` and ``north_m`` on a plane of your own.
        ``quality`` takes codes or words of :data:`QUALITIES`. Values that are masked, NaN or null were not logged; rows without a
        time or a position are counted in :attr:`left_out`.

        >>> import numpy as np, tussock
        >>> east_m = np.ma.masked_greater([0.0, 0.4, 99.0, 1.2], 50.0)
        >>> trace = tussock.Trace.from_arrays(time_s=range(4), east_m=east_m, north_m=np.zeros(4))
        >>> len(trace), trace.left_out
        (3, (2,))
        """
        pairs = {"lat_deg": lat_deg, "lon_deg": lon_deg, "east_m": east_m, "north_m": north_m}
        given = [name for name, column in pairs.items() if column is not None]
        if given not in (["lat_deg", "lon_deg"], ["east_m", "north_m"]):
            raise LogError(
                f"positions in {' and '.join(given) or 'no column'}, expected lat_deg and lon_deg, or east_m and north_m",
                "columns",
            )
        others: dict[str, Any] = {}
        for name, values in zip(_FLOATS, (hdop, claimed_sd_m, speed_mps, course_deg, height_msl_m)):
            if values is not None:
                others[name] = _tables.short(_tables.column(name, values))
        if segment is not None:
            others["segment"] = _tables.whole("segment", segment, 2**32 - 1, None).astype("u4")
        if satellites is not None:
            others["satellites"] = _tables.whole("satellites", satellites, 255, 255).astype("u1")
        if quality is not None:
            known = _tables.codes("quality", quality, QUALITIES)
            others["quality"] = _tables.whole("quality", known, len(QUALITIES) - 1, 0).astype("u1")
        inner = _tussock.Trace(
            _asked.text(LogError, "machine", machine),
            _tables.column("time_s", time_s),
            _tables.column(given[0], pairs[given[0]]),
            _tables.column(given[1], pairs[given[1]]),
            given[0] == "lat_deg",
            others,
        )
        return cls(inner)

    @classmethod
    def from_arrow(cls, table: Any, *, machine: str | None = None) -> Trace:
        """A trace from anything with ``__arrow_c_stream__`` or ``__arrow_c_array__`` whose columns have the names of
        :attr:`columns`; others are left alone. Nulls become what stands for "not logged"."""
        import pyarrow as pa

        try:
            if hasattr(table, "__arrow_c_stream__"):
                table = pa.table(table)
            else:
                table = pa.Table.from_batches([pa.record_batch(table)])
        except Exception as failed:
            raise LogError(f"table is {_asked.shown(table)}, expected Arrow data: {failed}", "columns") from None
        if "time_s" not in table.column_names:
            raise LogError(f"no column time_s among {', '.join(table.column_names)}", "columns")
        columns: dict[str, Any] = {}
        for name in _ALL_COLUMNS.intersection(table.column_names):
            if table.column_names.count(name) > 1:
                raise LogError(f"column {name} is there twice, expected it once", "columns")
            values = table[name].combine_chunks()
            columns[name] = values.to_pylist() if name == "quality" else values
        told = (table.schema.metadata or {}).get(b"machine", b"machine-1").decode("utf-8", "replace")
        return cls.from_arrays(machine=told if machine is None else machine, **columns)

    def __len__(self) -> int:
        return len(self._inner)

    @property
    def machine(self) -> str:
        """Name of the machine."""
        return self._inner.machine

    @property
    def is_geographic(self) -> bool:
        """Whether positions are latitudes and longitudes, else metres on a plane of the logger's own."""
        return self._inner.is_geographic

    @property
    def columns(self) -> tuple[str, ...]:
        """Names of the columns, in order."""
        places = ("lat_deg", "lon_deg") if self.is_geographic else ("east_m", "north_m")
        return ("time_s", *places, "segment", "quality", *_FLOATS, "satellites")

    @property
    def facts(self) -> tuple[fields.InputFindings, ...]:
        """What each file held, what was skipped and where; empty for a trace from arrays."""
        return tuple(told(self._inner.facts_json()))

    @property
    def left_out(self) -> tuple[int, ...]:
        """Rows of the arrays that had no time or no position, and gave no fix; those of logs stand in :attr:`facts`."""
        return tuple(self._inner.left_out)

    def __getitem__(self, name: str) -> numpy.ndarray[Any, Any]:
        """A column by name."""
        return self._inner.column(_asked.word(LogError, "column", name, self.columns, "no_column"))

    @property
    def time_s(self) -> numpy.ndarray[Any, Any]:
        """Seconds since 1970-01-01T00:00:00 UTC, float64."""
        return self["time_s"]

    @property
    def lat_deg(self) -> numpy.ndarray[Any, Any]:
        """Latitudes, degrees, WGS 84, float64."""
        return self["lat_deg"]

    @property
    def lon_deg(self) -> numpy.ndarray[Any, Any]:
        """Longitudes, degrees, WGS 84, float64."""
        return self["lon_deg"]

    @property
    def east_m(self) -> numpy.ndarray[Any, Any]:
        """Metres east, float64; for a log in local metres."""
        return self["east_m"]

    @property
    def north_m(self) -> numpy.ndarray[Any, Any]:
        """Metres north, float64; for a log in local metres."""
        return self["north_m"]

    @property
    def segment(self) -> numpy.ndarray[Any, Any]:
        """Counts up where the log says that reception was lost or a file ended, uint32."""
        return self["segment"]

    @property
    def quality(self) -> numpy.ndarray[Any, Any]:
        """Codes of :data:`QUALITIES`, uint8 (a copy)."""
        return self["quality"]

    @property
    def hdop(self) -> numpy.ndarray[Any, Any]:
        """Horizontal dilution of precision, float32."""
        return self["hdop"]

    @property
    def claimed_sd_m(self) -> numpy.ndarray[Any, Any]:
        """Standard deviation per axis that the receiver claims, metres, float32."""
        return self["claimed_sd_m"]

    @property
    def speed_mps(self) -> numpy.ndarray[Any, Any]:
        """Speed over ground that the receiver reports, metres a second, float32."""
        return self["speed_mps"]

    @property
    def course_deg(self) -> numpy.ndarray[Any, Any]:
        """Course over ground, degrees clockwise from true north, float32."""
        return self["course_deg"]

    @property
    def height_msl_m(self) -> numpy.ndarray[Any, Any]:
        """Height above mean sea level, metres, float32."""
        return self["height_msl_m"]

    @property
    def satellites(self) -> numpy.ndarray[Any, Any]:
        """Satellites used, uint8; 255 where not logged."""
        return self["satellites"]

    def to_arrow(self) -> pyarrow.Table:
        """The columns as an Arrow table over the same memory; NaN and 255 become nulls, ``quality`` a dictionary of words."""
        import numpy as np
        import pyarrow as pa

        arrays = []
        for name in self.columns:
            values = self[name]
            if name == "quality":
                arrays.append(
                    pa.DictionaryArray.from_arrays(pa.array(values.view("i1")), pa.array(QUALITIES, pa.string()))
                )
                continue
            if name in _FLOATS:
                logged = ~np.isnan(values)
            elif name == "satellites":
                logged = values != 255
            else:
                logged = None
            validity = None
            if logged is not None and not logged.all():
                validity = pa.py_buffer(np.packbits(logged, bitorder="little"))
            kind = pa.from_numpy_dtype(values.dtype)
            arrays.append(pa.Array.from_buffers(kind, len(values), [validity, pa.py_buffer(values)]))
        return pa.table(arrays, names=list(self.columns), metadata={"machine": self.machine})

    def __arrow_c_stream__(self, requested_schema: object | None = None) -> object:
        """The Arrow PyCapsule interface: polars, DuckDB and others take a trace as it is."""
        return self.to_arrow().__arrow_c_stream__(requested_schema)

    def to_geodataframe(self) -> geopandas.GeoDataFrame:
        """One row a fix with a point in WGS 84, and the time in UTC as index."""
        import geopandas
        import pandas as pd

        if not self.is_geographic:
            raise LogError("positions in local metres have no place on Earth, expected a log with latitudes", "no_place_on_earth")
        frame = self.to_arrow().drop_columns(["lat_deg", "lon_deg"]).to_pandas()
        times = pd.to_datetime(frame.pop("time_s"), unit="s", utc=True)
        frame.index = pd.DatetimeIndex(times, name="time")
        points = geopandas.points_from_xy(self.lon_deg, self.lat_deg)
        return geopandas.GeoDataFrame(frame, geometry=points, crs="EPSG:4326")

    def to_mf_json(self) -> str:
        """The trace as a moving point of OGC Moving Features JSON (19-045r3), times to the microsecond; :func:`read` takes it back."""
        import numpy as np

        if not self.is_geographic:
            raise LogError("positions in local metres have no place on Earth, expected a log with latitudes", "no_place_on_earth")
        times = np.round(self.time_s * 1e6).astype("M8[us]")
        way = {
            "type": "MovingPoint",
            "coordinates": np.column_stack([self.lon_deg, self.lat_deg]).tolist(),
            "datetimes": [f"{time}Z" for time in np.datetime_as_string(times)],
            "interpolation": "Linear",
        }
        # Line by line: one line would be longer than readers take.
        return json.dumps({"type": "Feature", "temporalGeometry": way, "properties": {"name": self.machine}}, indent=0)

    def to_log(self, format: str = "csv") -> bytes:
        """The trace as a log: ``"gpx"``, ``"nmea"`` or ``"csv"``."""
        return self._inner.log_bytes(_asked.word(LogError, "log format", format, ("gpx", "nmea", "csv"), "not_a_log"))

    def __reduce__(self) -> tuple[object, ...]:
        return (_trace_again, (self.machine, {name: self[name].copy() for name in self.columns}))

    def __repr__(self) -> str:
        return f"<Trace: {self.machine}, {len(self)} fixes>"


_ALL_COLUMNS = {"time_s", "lat_deg", "lon_deg", "east_m", "north_m", "segment", "quality", *_FLOATS, "satellites"}


def _trace_again(machine: str, columns: Mapping[str, Any]) -> Trace:
    return Trace.from_arrays(machine=machine, **columns)


def read_all(
    logs: Source | Iterable[Source],
    *,
    settings: Settings | PathLike | None = None,
    date: str | datetime.date | None = None,
    columns: str | Mapping[str, str] | None = None,
    strict: bool = False,
) -> list[Trace]:
    """Reads logs (GPX, NMEA 0183, CSV, KML, RTKLIB .pos, MF-JSON, gpsd JSON, packed or not; told by content) and sorts them out: one trace for each machine.

    What cannot be used is skipped, counted and located in :attr:`Trace.facts`; ``strict=True`` raises at the first such place.
    ``date`` is the first day of logs that hold times of day only; ``columns`` names the columns of a CSV, as in
    ``{"time": "t", "lat": "y", "lon": "x"}``. A DataFrame of pandas is read as the CSV that it would be; its times may stand in the
    index, and the points of a GeoDataFrame are turned into WGS 84.
    """
    listed = [logs] if is_source(logs) else _asked.items(LogError, "logs", logs, "paths, bytes or data frames")
    read = [fetched(log, LogError, f"log {number}") for number, log in enumerate(listed, 1)]
    if not read:
        raise LogError("no log is given, expected at least one", "no_log")
    if isinstance(columns, Mapping):
        columns = ",".join(f"{field}={name}" for field, name in columns.items())
    if date is not None and not isinstance(date, datetime.date):
        date = _asked.text(LogError, "date", date)
    inner = _tussock.read(
        [name for name, _ in read],
        [content for _, content in read],
        as_settings(settings)._inner,
        None if date is None else str(date),
        None if columns is None else _asked.text(LogError, "columns", columns),
        _asked.truth(LogError, "strict", strict),
    )
    return [Trace(trace) for trace in inner]


def read(
    logs: Source | Iterable[Source],
    *,
    settings: Settings | PathLike | None = None,
    date: str | datetime.date | None = None,
    columns: str | Mapping[str, str] | None = None,
    strict: bool = False,
) -> Trace:
    """Reads the logs of one machine as one trace. See :func:`read_all`.

    >>> import tussock
    >>> log = b"time,lat,lon\\n2026-05-01T12:00:00Z,52.00001,5.00001\\n2026-05-01T12:00:01Z,oops,5.00001\\n"
    >>> trace = tussock.read(log)
    >>> len(trace), trace.facts[0].skipped
    (1, Record({'malformed': 1}))
    """
    traces = read_all(logs, settings=settings, date=date, columns=columns, strict=strict)
    if len(traces) != 1:
        raise LogError(
            f"these logs are of {len(traces)} machines, expected one",
            "several_machines",
            "tussock.read_all gives one trace for each machine",
        )
    return traces[0]


class Reference:
    """A path that somebody surveyed, in the order in which it is driven: GPX, or a table with a header, or a :class:`Trace` that is
    taken for the truth. Where every position has a time, the path is timed.

    >>> import tussock
    >>> path = tussock.Reference(b"east_m,north_m\\n0,0\\n20,0\\n20,0.2\\n0,0.2\\n")
    >>> path.corners, path.is_timed
    (4, False)
    """

    def __init__(self, source: Source, *, settings: Settings | PathLike | None = None) -> None:
        name, content = fetched(source, LogError, "reference")
        self._inner = _tussock.Reference(name, content, as_settings(settings)._inner)

    @classmethod
    def from_trace(cls, trace: Trace, *, timed: bool = True) -> Reference:
        """The fixes of a trace as corners, with their times unless ``timed`` is false."""
        reference = cls.__new__(cls)
        _asked.instance(LogError, "trace", trace, Trace, "tussock.read gives one")
        reference._inner = _tussock.Reference.of_trace(trace._inner, _asked.truth(LogError, "timed", timed))
        return reference

    @property
    def name(self) -> str:
        """Name of the file, or of the machine."""
        return self._inner.name

    @property
    def corners(self) -> int:
        """Number of corners."""
        return len(self._inner)

    @property
    def is_timed(self) -> bool:
        """Whether it carries times; without them only the cross-track error can be told."""
        return self._inner.is_timed

    def __repr__(self) -> str:
        return f"<Reference: {self.name}, {self.corners} corners{', timed' if self.is_timed else ''}>"


def as_reference(reference: Reference | Trace | Source, settings: Settings) -> Reference:
    """A surveyed path, a trace that stands in for one, or a path or bytes of one."""
    if isinstance(reference, Reference):
        return reference
    if isinstance(reference, Trace):
        return Reference.from_trace(reference)
    return Reference(reference, settings=settings)
