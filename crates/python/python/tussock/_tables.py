"""Tables and columns of other libraries: data frames as logs and plans, times, masks."""

from __future__ import annotations

import datetime
import importlib
import numbers
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from ._asked import shown
from ._errors import LogError, PlanError, TussockError

if TYPE_CHECKING:
    import numpy

_ZONE = (
    'say it: times.dt.tz_localize("UTC") in pandas, datetime(..., tzinfo=timezone.utc); for NumPy times in UTC '
    'times.astype("M8[us]").astype("i8") / 1e6'
)
_PLAN_COLUMNS = ("role", "name", "radius_m", "outing_share_fraction")


def library(name: str) -> Any:
    """A library that is imported only when it is needed, or a sentence on how to get it."""
    try:
        return importlib.import_module(name)
    except ImportError as failed:
        raise ImportError(f'{name} is not installed, expected it for this call: pip install "tussock[frames]"', name=name) from failed


def squares(corners: Any, columns: dict[str, Any], crs: str | None) -> Any:
    """A GeoDataFrame of squares: corners by rows and columns, each with an x and a y, and what is known of what lies between."""
    rings = [corners[:-1, :-1], corners[:-1, 1:], corners[1:, 1:], corners[1:, :-1]]
    shapes = library("shapely").polygons(library("numpy").stack(rings, axis=2).reshape(-1, 4, 2))
    return library("geopandas").GeoDataFrame({name: values.ravel() for name, values in columns.items()}, geometry=shapes, crs=crs)


def is_frame(source: Any) -> bool:
    """Whether it is a DataFrame of pandas or a GeoDataFrame."""
    return hasattr(type(source), "to_csv") and hasattr(source, "columns")


def has_places(frame: Any) -> bool:
    """Whether it is a GeoDataFrame."""
    return is_frame(frame) and hasattr(type(frame), "to_crs")


def _on_earth(frame: Any, error: type[TussockError]) -> Any:
    """The same in degrees of WGS 84."""
    if getattr(frame, "crs", None) is None:
        raise error(
            "a GeoDataFrame without a geometry or without its coordinate system, expected both",
            "no_crs",
            'frame.set_crs("EPSG:4326") where these are degrees of WGS 84',
        )
    try:
        return frame.to_crs("EPSG:4326")
    except Exception as failed:
        raise error(f"a GeoDataFrame in {frame.crs.name}, expected one that turns into EPSG:4326: {failed}", "no_crs") from None


def log_of(frame: Any) -> bytes:
    """A data frame as the CSV log that it would be, so that the rules for logs hold: names of columns, times, skipped rows."""
    import pandas as pd

    if has_places(frame):
        frame = _on_earth(frame, LogError)
        points = frame.geometry
        others = set(points.geom_type.dropna()) - {"Point"}
        if others:
            raise LogError(f"geometry holds a {min(others)}, expected points", "geometry")
        # In front, since the first column of a name counts.
        frame = pd.DataFrame(frame.drop(columns=[points.name, "lat", "lon"], errors="ignore"))
        frame.insert(0, "lat", points.y)
        frame.insert(1, "lon", points.x)
    if isinstance(frame.index, pd.DatetimeIndex) and "time" not in frame.columns:
        frame = frame.copy(deep=False)
        frame.insert(0, "time", frame.index)
    table: str = frame.to_csv(index=False, lineterminator="\n")
    return table.encode("utf-8", "replace")


def plan_of(frame: Any) -> bytes:
    """A GeoDataFrame with a column ``role`` as the GeoJSON of a plan."""
    if not has_places(frame):
        raise PlanError("a data frame without geometry, expected a GeoDataFrame", "no_geometry")
    frame = _on_earth(frame, PlanError)
    kept = [name for name in _PLAN_COLUMNS if name in frame.columns]
    told: str = frame[[*kept, frame.geometry.name]].to_json(na="drop", drop_id=True)
    return told.encode()


def instant(error: type[TussockError], name: str, value: Any) -> float:
    """Seconds since 1970 of one time; NaN where it is missing."""
    if isinstance(value, datetime.datetime) and value == value:
        if value.utcoffset() is None:
            raise error(f"{name} is {value}, expected a time with its zone", "no_zone", _ZONE)
        return value.timestamp()
    return _float(error, name, value, "seconds since 1970, or a time with its zone")


def _float(error: type[TussockError], name: str, value: Any, expected: str = "a number") -> float:
    if value is None or type(value).__name__ in ("NAType", "NaTType", "MaskedConstant"):
        return float("nan")
    if isinstance(value, numbers.Real) and not isinstance(value, bool):
        return float(value)
    raise error(f"{name} is {shown(value)}, expected {expected}", "columns")


def column(name: str, values: Any) -> numpy.ndarray[Any, Any]:
    """A column as float64: numbers, times as seconds since 1970; NaN where they are missing or masked."""
    import numpy as np

    is_time = name == "time_s"
    try:
        array = np.asarray(values)
        if is_time and _has_zone(values):
            # pandas, polars and pyarrow hand them out in UTC.
            known = np.asarray(values, dtype="M8[us]")
            array = np.where(np.isnat(known), np.nan, known.astype("i8") / 1e6)
        elif array.dtype.kind == "O" and array.ndim == 1:
            one = instant if is_time else _float
            array = np.array([one(LogError, f"{name}[{place}]", value) for place, value in enumerate(array)], "f8")
    except (TypeError, ValueError, OverflowError):
        array = np.asarray(0.0)
    if array.ndim == 0:
        raise LogError(f"column {name} is {shown(values)}, expected a number for each row", "columns")
    if array.ndim != 1:
        raise LogError(f"column {name} has {array.ndim} axes, expected 1", "columns")
    if is_time and array.dtype.kind == "M":
        raise LogError(f"column {name} holds {array.dtype} without a zone, expected times with one", "no_zone", _ZONE)
    if array.dtype.kind not in "iuf":
        raise LogError(f"column {name} holds {array.dtype}, expected numbers", "columns")
    return np.ascontiguousarray(np.ma.masked_array(array, np.ma.getmask(values), "f8").filled(np.nan))


def short(array: numpy.ndarray[Any, Any]) -> numpy.ndarray[Any, Any]:
    """The same in float32; what is too large becomes infinite, and is refused as such."""
    import numpy as np

    with np.errstate(over="ignore"):
        return array.astype("f4")


def whole(name: str, values: Any, most: int, missing: int | None) -> numpy.ndarray[Any, Any]:
    """A column of whole numbers from 0 on, as float64."""
    import numpy as np

    array = column(name, values)
    if missing is not None:
        array = np.where(np.isnan(array), missing, array)
    # Written so that NaN fails too.
    wrong = np.flatnonzero(~((array >= 0) & (array <= most) & (array == np.floor(array))))
    if wrong.size:
        place = int(wrong[0])
        raise LogError(f"{name}[{place}] is {array[place]:g}, expected a whole number from 0 to {most}", "out_of_range")
    return array


def codes(name: str, values: Any, words: Sequence[str]) -> Any:
    """Codes of words, or the codes themselves."""
    import numpy as np

    array = np.asarray(values)
    if array.dtype.kind not in "OUT" or array.ndim != 1:
        return values
    out = []
    for place, one in enumerate(array):
        if isinstance(one, str):
            if one not in words:
                raise LogError(f"{name}[{place}] is {shown(one)}, expected one of {', '.join(words)}", "out_of_range")
            one = words.index(one)
        out.append(one)
    return np.ma.masked_array(np.array(out, "O"), np.ma.getmask(values))


def _has_zone(values: Any) -> bool:
    kind = getattr(values, "dtype", None)
    zones = (getattr(kind, "tz", None), getattr(kind, "time_zone", None), getattr(getattr(values, "type", None), "tz", None))
    return any(zone is not None for zone in zones)
