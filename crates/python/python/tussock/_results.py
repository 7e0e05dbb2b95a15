"""Findings and comparisons: what comes out."""

from __future__ import annotations

import base64
import html
import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import cached_property, partial
from pathlib import Path
from typing import TYPE_CHECKING, Any, Optional, get_args, get_type_hints

from . import _asked, _folder, _tables, _tussock, fields
from ._errors import OutputError, ReportError
from ._inputs import PathLike, Source, _frame_of, fetched
from ._record import Record, told

if TYPE_CHECKING:
    import geopandas
    import matplotlib.axes
    import numpy
    import pandas
    import xarray

#: Every name that an output can have.
OUTPUT_NAMES = (
    "findings.json",
    "findings.geojson",
    "report.html",
    "map.png",
    "cells.parquet",
    "legs.parquet",
    "pockets.gpx",
    "comparison.json",
    "comparison.html",
)

#: Kinds of features in ``findings.geojson``.
KINDS = ("missed_pocket", "not_yet", "unseen", "stuck_spot", "worn_line", "stray", "suggestion")

#: Languages of page, picture and waypoints (BCP 47).
LANGUAGES = ("en", "de", "fr", "es", "it", "nl", "sv", "pl")
#: Units of page, picture and waypoints.
UNITS = ("metric", "imperial")


@dataclass(frozen=True)
class Cells:
    """What is known of each square of ground. Arrays have the shape (rows, columns), row 0 in the south, column 0 in the
    west; they are read-only views of the findings, without copies."""

    #: East coordinate of the western edge, metres on the findings' plane.
    east_min_m: float
    #: North coordinate of the southern edge.
    north_min_m: float
    #: Side of a square, metres.
    cell_m: float
    #: Part of the square that is lawn, 0 to 1.
    lawn_fraction: numpy.ndarray[Any, Any]
    #: Probability that a point of its lawn was driven over.
    visited_probability: numpy.ndarray[Any, Any]
    #: Expected number of visits, mean over its lawn.
    visits_expected: numpy.ndarray[Any, Any]
    #: Seconds from the start of the span to the first visit; NaN when never.
    first_visit_s: numpy.ndarray[Any, Any]
    #: Seconds from the start of the span to the last visit; NaN when never.
    last_visit_s: numpy.ndarray[Any, Any]
    #: Coordinate system of the plane (EPSG method 9840, which is the tangent plane); ``None`` for a log in local metres.
    crs: str | None = None

    @property
    def shape(self) -> tuple[int, int]:
        """Rows and columns."""
        rows, columns = self.lawn_fraction.shape
        return rows, columns

    @property
    def east_m(self) -> numpy.ndarray[Any, Any]:
        """East coordinates of the middles of the columns."""
        import numpy as np

        return self.east_min_m + (np.arange(self.shape[1]) + 0.5) * self.cell_m

    @property
    def north_m(self) -> numpy.ndarray[Any, Any]:
        """North coordinates of the middles of the rows."""
        import numpy as np

        return self.north_min_m + (np.arange(self.shape[0]) + 0.5) * self.cell_m

    @property
    def extent_m(self) -> tuple[float, float, float, float]:
        """West, east, south, north: what ``imshow(..., origin="lower", extent=)`` takes."""
        rows, columns = self.shape
        east_max_m = self.east_min_m + columns * self.cell_m
        north_max_m = self.north_min_m + rows * self.cell_m
        return self.east_min_m, east_max_m, self.north_min_m, north_max_m

    def _arrays(self) -> dict[str, numpy.ndarray[Any, Any]]:
        return {name: getattr(self, name) for name in _CELL_UNITS}

    def to_geodataframe(self) -> geopandas.GeoDataFrame:
        """One row a square that has lawn, with its outline in metres on the plane; ``to_crs("EPSG:4326")`` turns it into degrees."""
        import numpy as np

        rows, columns = self.shape
        east_m = self.east_min_m + np.arange(columns + 1) * self.cell_m
        north_m = self.north_min_m + np.arange(rows + 1) * self.cell_m
        frame = _tables.squares(np.stack(np.meshgrid(east_m, north_m), axis=-1), self._arrays(), self.crs)
        return frame[frame.lawn_fraction > 0].reset_index(drop=True)

    def to_xarray(self) -> xarray.Dataset:
        """The arrays over ``north_m`` and ``east_m`` (middles of squares), each with its unit."""
        axes = {name: (name, getattr(self, name), {"units": "m"}) for name in ("north_m", "east_m")}
        arrays = {name: (("north_m", "east_m"), values, {"units": _CELL_UNITS[name]}) for name, values in self._arrays().items()}
        return _tables.library("xarray").Dataset(arrays, axes, {"crs": self.crs or "", "cell_m": self.cell_m})


_CELL_UNITS = {"lawn_fraction": "1", "visited_probability": "1", "visits_expected": "1", "first_visit_s": "s", "last_visit_s": "s"}


class Findings(fields.FindingsFields):
    """Everything that one analysis found.

    The fields of ``findings.json`` (``docs/findings.schema.json``) are attributes: ``findings.coverage.visited_fraction.estimate``.
    What a stage has not produced is ``None``. Positions are in the log's frame; metres east and north are on the tangent
    plane at ``findings.frame``.
    """

    def __init__(self, inner: _tussock.Findings) -> None:
        self._inner: _tussock.Findings = _asked.instance(ReportError, "findings", inner, _tussock.Findings, "read_findings reads saved ones")

    @cached_property
    def _record(self) -> Record:
        told = json.loads(self.to_json())
        del told["cells"]
        return Record(told)

    if not TYPE_CHECKING:

        def __getattr__(self, name: str) -> Any:
            if name.startswith("_"):
                raise AttributeError(name)
            return getattr(self._record, name)

    def __dir__(self) -> list[str]:
        return [*super().__dir__(), *self._record]

    def to_dict(self) -> dict[str, Any]:
        """The fields as plain dicts and lists; :attr:`cells` apart."""
        return self._record.to_dict()

    @_asked.held(ReportError, private=_asked.truth)
    def to_json(self, *, private: bool = False) -> str:
        """``findings.json``, byte for byte what the command writes. ``private`` leaves out places on Earth, dates, names and
        digests."""
        return self._inner.to_json(private)

    @cached_property
    def cells(self) -> Cells | None:
        """The ground in squares; ``None`` without a cutting width."""
        grid = self._inner.grid()
        if grid is None:
            return None
        east_min_m, north_min_m, cell_m, columns, rows = grid
        frame = self.frame

        def column(name: str) -> Any:
            values: Any = self._inner.cells(name)
            return values.reshape(rows, columns)

        return Cells(
            east_min_m,
            north_min_m,
            cell_m,
            column("lawn_fraction"),
            column("visited_probability"),
            column("visits_expected"),
            column("first_visit_s"),
            column("last_visit_s"),
            None if frame.origin_lat is None else f"+proj=ortho +lat_0={frame.origin_lat!r} +lon_0={frame.origin_lon!r} +ellps=WGS84 +units=m",
        )

    @_asked.held(
        ReportError,
        lat_deg=partial(_asked.number, low=-90.0, high=90.0),
        lon_deg=partial(_asked.number, low=-180.0, high=180.0),
        radius_m=partial(_asked.number, low=0.0),
        said=_asked.text,
    )
    def at(self, lat_deg: float, lon_deg: float, *, radius_m: float = 0.3, said: str | None = None) -> fields.ComplaintFindings:
        """What is known of the ground within ``radius_m`` of a place: how often it was driven over and when last, how that
        compares with the lawn, and what follows. The fields are those of ``findings.complaints``.

        Raises :class:`AnalyseError` for a log in local metres: see :meth:`at_m`.
        """
        found: fields.ComplaintFindings = told(self._inner.ask((lat_deg, lon_deg), None, radius_m, said))[0]
        return found

    @_asked.held(
        ReportError, east_m=_asked.number, north_m=_asked.number, radius_m=partial(_asked.number, low=0.0), said=_asked.text
    )
    def at_m(self, east_m: float, north_m: float, *, radius_m: float = 0.3, said: str | None = None) -> fields.ComplaintFindings:
        """The same of a place in metres on the findings' plane."""
        found: fields.ComplaintFindings = told(self._inner.ask(None, (east_m, north_m), radius_m, said))[0]
        return found

    @_asked.held(ReportError, kind=_asked.one_of(KINDS, "unknown_kind"))
    def to_geodataframe(self, kind: str | None = None) -> geopandas.GeoDataFrame:
        """Features of one of :data:`KINDS`, or all, in WGS 84; columns as in ``findings.geojson``."""
        features = json.loads(self._inner.geojson())["features"]
        return _frame_of([one for one in features if kind in (None, one["properties"]["kind"])])

    def to_geojson(self) -> str:
        """``findings.geojson``. Raises :class:`ReportError` for a log in local metres, without geographic coordinates."""
        return self._inner.geojson()

    @_asked.held(
        ReportError,
        private=_asked.truth,
        map_width_px=partial(_asked.count, high=2**32 - 1),
        language=_asked.one_of(LANGUAGES, "unknown_language"),
        units=_asked.one_of(UNITS, "unknown_units"),
    )
    def report(
        self,
        folder: PathLike,
        *,
        private: bool = False,
        map_width_px: int = 1600,
        language: str | None = None,
        units: str | None = None,
    ) -> list[Path]:
        """Writes all outputs into a folder: each complete or not there at all. Files that this tool did not write, or that were
        changed since, are never replaced (:class:`OutputError`).

        ``language`` is one of :data:`LANGUAGES` and ``units`` one of :data:`UNITS`, both of page, picture and waypoints; without them
        those of the garden's settings, else English and metric. Files for programs are the same in all."""
        place = Path(_asked.path(OutputError, "folder", folder))
        garden = self.settings.garden
        voice = (language or garden.language or "en", units or garden.units or "metric")
        outputs = self._inner.outputs(private, map_width_px, *voice)
        return _folder.write(place, outputs, OUTPUT_NAMES)

    @_asked.held(ReportError, private=_asked.truth)
    def left_out(self, *, private: bool = False) -> dict[str, str]:
        """Files that :meth:`report` leaves out, each with the reason."""
        return dict(self._inner.left_out(private))

    def __str__(self) -> str:
        return self._inner.answer()

    def __repr__(self) -> str:
        if self.coverage is None:
            return "<Findings: nothing counted without a cutting width>"
        visited = self.coverage.visited_fraction
        return f"<Findings: {visited.estimate:.2%} of {self.coverage.lawn_m2:.0f} m2 visited>"

    def __reduce__(self) -> tuple[object, ...]:
        return (_findings_again, (self.to_json().encode(),))

    def _repr_html_(self) -> str:
        rows = [("log", html.escape(self.log_verdict.advice.text))]
        if self.coverage is not None:
            visited = self.coverage.visited_fraction
            ends = ""
            if visited.low is not None:
                ends = f" (90 % interval {visited.low:.2%} to {visited.high:.2%})"
            rows.append(("visited", f"{visited.estimate:.2%} of {self.coverage.lawn_m2:.0f} m2{ends}"))
        rows += [
            (html.escape(pocket.id), f"{pocket.area_m2:.1f} m2 missed: {html.escape(pocket.why.text)}")
            for pocket in self.missed_pockets[:5]
        ]
        rows += [
            (html.escape(spot.id), f"stuck for {spot.minutes:.0f} min: {html.escape(spot.why.text)}")
            for spot in self.stuck_spots[:5]
        ]
        lines = "".join(
            f'<tr><th style="text-align:left">{name}</th><td style="text-align:left">{text}</td></tr>'
            for name, text in rows
        )
        picture = base64.b64encode(self._inner.map_png(640)).decode()
        alt = "Map of the lawn: visits, missed ground and stuck spots"
        return f'<table>{lines}</table><img alt="{alt}" width="640" src="data:image/png;base64,{picture}">'

    @_asked.held(ReportError, most_visits=_asked.some)
    def plot(self, ax: matplotlib.axes.Axes | None = None, *, most_visits: float | None = None) -> matplotlib.axes.Axes:
        """Draws visits in cividis and missed ground hatched, with metres on both axes.

        ``most_visits`` is the end of the scale (default: the 98 % quantile of the lawn's cells). Two plots with the same end can
        be compared.
        """
        import matplotlib.pyplot as plt
        import numpy as np
        from matplotlib.patches import PathPatch
        from matplotlib.path import Path as Outline

        if ax is None:
            ax = plt.subplots(figsize=(7, 6), layout="constrained")[1]

        def drawn(rings: Iterable[Iterable[Any]], **style: Any) -> None:
            corners, codes = [], []
            for ring in rings:
                places = [(place.east_m, place.north_m) for place in ring]
                if len(places) < 3:
                    continue
                corners += places
                codes += [Outline.MOVETO] + [Outline.LINETO] * (len(places) - 2) + [Outline.CLOSEPOLY]
            if corners:
                ax.add_patch(PathPatch(Outline(corners, codes), **style))

        cells = self.cells
        if cells is not None:
            visits = np.where(cells.lawn_fraction > 0, cells.visits_expected, np.nan)
            if most_visits is None:
                most_visits = max(1.0, float(np.nanquantile(visits, 0.98)))
            image = ax.imshow(
                visits, origin="lower", extent=cells.extent_m, cmap="cividis", vmin=0, vmax=most_visits,
                interpolation="nearest",
            )
            ax.figure.colorbar(image, ax=ax, label="visits", extend="max", shrink=0.8)
        for part in self.lawn_outline:
            drawn(part, facecolor="none", edgecolor="black", linewidth=1.0)
        for pocket in self.missed_pockets:
            drawn(pocket.outline, facecolor="none", edgecolor="white", linewidth=2.5)
            drawn(pocket.outline, facecolor="none", edgecolor="black", hatch="////", linewidth=1.0)
            ax.annotate(pocket.id, (pocket.east_m, pocket.north_m), ha="center", va="center",
                        bbox={"boxstyle": "round", "facecolor": "white", "edgecolor": "none"})
        for spot in self.stuck_spots:
            ax.plot(spot.east_m, spot.north_m, "D", color="white", markeredgecolor="black")
            ax.annotate(spot.id, (spot.east_m, spot.north_m), xytext=(6, 6), textcoords="offset points",
                        bbox={"boxstyle": "round", "facecolor": "white", "edgecolor": "none", "alpha": 0.8})
        ax.set_xlabel("east, m")
        ax.set_ylabel("north, m")
        ax.set_aspect("equal")
        ax.autoscale_view()
        west, east = ax.get_xlim()
        length_m = next(m for m in (50, 20, 10, 5, 2, 1) if m <= max(1.0, (east - west) / 3))
        south = ax.get_ylim()[0] - 0.04 * (east - west)
        ax.plot([west, west + length_m], [south, south], color="black", linewidth=3, solid_capstyle="butt")
        ax.annotate(f"{length_m} m", (west + length_m, south), xytext=(4, 0), textcoords="offset points", va="center")
        if self.coverage is not None:
            ax.set_title(f"{self.coverage.visited_fraction.estimate:.1%} of {self.coverage.lawn_m2:.0f} m$^2$ visited")
        return ax


def _findings_again(content: bytes) -> Findings:
    return Findings(_tussock.read_findings("findings", content))


def read_findings(source: Source) -> Findings:
    """Reads ``findings.json``: a path, or its bytes."""
    name, content = fetched(source, ReportError, "findings")
    return Findings(_tussock.read_findings(name, content))


class Comparison(fields.ComparisonFields):
    """What a change brought: the fields of ``comparison.json`` are attributes."""

    def __init__(self, inner: _tussock.Comparison) -> None:
        self._inner: _tussock.Comparison = _asked.instance(ReportError, "comparison", inner, _tussock.Comparison, "read_comparison reads saved ones")

    @cached_property
    def _record(self) -> Record:
        told = json.loads(self.to_json())
        for side in ("findings_before", "findings_after"):
            if told[side] is not None:
                del told[side]["cells"]
        return Record(told)

    if not TYPE_CHECKING:

        def __getattr__(self, name: str) -> Any:
            if name.startswith("_"):
                raise AttributeError(name)
            return getattr(self._record, name)

    def to_dict(self) -> dict[str, Any]:
        """The fields as plain dicts and lists, without squares."""
        return self._record.to_dict()

    def to_json(self) -> str:
        """``comparison.json``, byte for byte what the command writes."""
        return self._inner.to_json()

    @_asked.held(
        ReportError,
        language=_asked.one_of(LANGUAGES, "unknown_language"),
        units=_asked.one_of(UNITS, "unknown_units"),
    )
    def report(self, folder: PathLike, *, language: str | None = None, units: str | None = None) -> list[Path]:
        """Writes ``comparison.json`` and ``comparison.html`` by the rules of :meth:`Findings.report`."""
        outputs = [("comparison.json", self.to_json().encode()), ("comparison.html", self._inner.html(language or "en", units or "metric").encode())]
        return _folder.write(Path(_asked.path(OutputError, "folder", folder)), outputs, OUTPUT_NAMES)

    def __str__(self) -> str:
        return self._inner.answer()

    def __repr__(self) -> str:
        return f"<Comparison: {' '.join(one.text for one in self.said)}>"

    def __reduce__(self) -> tuple[object, ...]:
        return (read_comparison, (self.to_json().encode(),))

    def _repr_html_(self) -> str:
        return f"<pre>{html.escape(str(self))}</pre>"


def read_comparison(source: Source) -> Comparison:
    """Reads ``comparison.json``: a path, or its bytes."""
    name, content = fetched(source, ReportError, "comparison")
    return Comparison(_tussock.read_comparison(name, content))


@dataclass(frozen=True)
class Column:
    """A column of the tidy table."""

    #: Its name.
    name: str
    #: Its unit; ``""`` for texts, counts and fractions.
    unit: str
    #: What it says.
    meaning: str
    #: Where it stands in the findings.
    field: str


#: Columns of :func:`tidy_row`, in order. A field that a log does not give is ``None``.
TIDY_COLUMNS: tuple[Column, ...] = (
    Column("inputs", "", "names of the logs, joined by a blank", "inputs"),
    Column("machines", "", "machines whose visits are united", "machines"),
    Column("start", "UTC", "first fix, RFC 3339", "span.start"),
    Column("end", "UTC", "last fix, RFC 3339", "span.end"),
    Column("fixes", "", "fixes used for the path", "span.fixes_used"),
    Column("period_s", "s", "usual time between two fixes", "span.period_s"),
    Column("path_m", "m", "length of the driven path", "span.path_m"),
    Column("driving_s", "s", "time on the move", "span.driving_s"),
    Column("at_station_s", "s", "time at the station", "span.at_station_s"),
    Column("halted_s", "s", "time standing elsewhere, turning included", "span.halted_s"),
    Column("silent_s", "s", "time without usable fixes", "span.silent_s"),
    Column("speed_mps", "m/s", "usual driving speed", "span.speed_mps"),
    Column("outings", "", "trips from the station and back", "span.outings"),
    Column("white_m", "m", "white part of the position error, per axis", "positions.white_m"),
    Column("drift_m", "m", "drift part of the position error, per axis", "positions.drift_m"),
    Column("log_level", "", "good, limited or unusable: whether the log can find the pocket that was asked for", "log_verdict.level"),
    Column("cut_width_m", "m", "cutting width used", "coverage.cut_width_m"),
    Column("lawn_m2", "m2", "lawn, zones and obstacles taken out", "coverage.lawn_m2"),
    Column("visited_m2", "m2", "driven over", "coverage.visited_m2"),
    Column("missed_m2", "m2", "in missed pockets", "coverage.missed_m2"),
    Column("not_yet_m2", "m2", "in pockets that luck still explains", "coverage.not_yet_m2"),
    Column("unseen_m2", "m2", "without evidence", "coverage.unseen_m2"),
    Column("visited_fraction", "", "visited area over lawn area", "coverage.visited_fraction.estimate"),
    Column("visited_fraction_low", "", "lower end of its 90 % interval", "coverage.visited_fraction.low"),
    Column("visited_fraction_high", "", "upper end of its 90 % interval", "coverage.visited_fraction.high"),
    Column("as_logged_fraction", "", "the same from raw fixes joined by straight lines", "coverage.as_logged_fraction"),
    Column("mean_visits", "", "mean number of visits of a cell", "revisits.mean_per_cell"),
    Column("gini", "", "Gini coefficient of the visits: 0 when all alike", "revisits.gini"),
    Column("revisit_p50_h", "h", "median revisit interval (Kaplan-Meier)", "revisits.interval_h.p50"),
    Column("revisit_p90_h", "h", "90 % quantile of the revisit interval", "revisits.interval_h.p90"),
    Column("efficiency", "", "0 on the random search law, 1 on the exhaustive line", "over_time.efficiency"),
    Column("hours_to_95", "h", "driving hours to 95 %", "over_time.hours_to_95"),
    Column("hours_to_99", "h", "driving hours to 99 %", "over_time.hours_to_99"),
    Column("missed_pockets", "", "number of missed pockets", "missed_pockets"),
    Column("not_yet_pockets", "", "number of pockets that luck still explains", "not_yet"),
    Column("stuck_spots", "", "number of stuck spots", "stuck_spots"),
    Column("stuck_min", "min", "minutes lost at stuck spots", "stuck_spots"),
    Column("tool_version", "", "version of the tool", "tool_version"),
)


def _scalars() -> list[Column]:
    """A column for every measure that is one number."""
    found = []
    for name, unit, meaning, _ in _tussock.definitions():
        kind: Any = fields.Measures
        for step in name.split("."):
            kind = get_type_hints(next(one for one in get_args(kind) or [kind] if one is not type(None)))[step]
        if kind in (float, Optional[float]):
            found.append(Column(name.replace(".", "_"), unit, meaning, name))
    return found


def reached(record: Any, path: str) -> Any:
    """A field by its path; ``None`` where something on the way is."""
    for step in path.split("."):
        record = None if record is None else record[step]
    return record


def tidy_row(findings: Findings, measures: fields.Measures | None = None) -> dict[str, Any]:
    """One row for one trace: the columns of :data:`TIDY_COLUMNS`, then those of ``measures`` that are one number each, named like their
    fields with ``_`` for the dot."""
    _asked.instance(ReportError, "findings", findings, Findings, "tussock.analyse gives them")
    own = {
        "inputs": " ".join(one.name for one in findings.inputs),
        "machines": " ".join(machine.id for machine in findings.machines),
        "missed_pockets": len(findings.missed_pockets),
        "not_yet_pockets": len(findings.not_yet),
        "stuck_spots": len(findings.stuck_spots),
        "stuck_min": sum(spot.minutes for spot in findings.stuck_spots),
    }
    row: dict[str, Any] = {}
    for column in TIDY_COLUMNS:
        if column.name in own:
            row[column.name] = own[column.name]
            continue
        row[column.name] = reached(findings._record, column.field)
    for column in [] if measures is None else _scalars():
        row[column.name] = reached(measures, column.field)
    return row


def tidy(findings: Sequence[Findings], measures: Sequence[fields.Measures] | None = None) -> pandas.DataFrame:
    """A data frame with one row for each of the findings; columns as in :data:`TIDY_COLUMNS`, and with ``measures`` of the same logs those
    that are one number each. Units and meanings stand in ``frame.attrs["columns"]``, the settings of each row in ``frame.attrs["settings"]``
    (pandas writes both into Parquet)."""
    import pandas as pd

    listed = _asked.items(ReportError, "findings", findings, "a list of findings")
    beside = [None] * len(listed) if measures is None else _asked.items(ReportError, "measures", measures, "those of each", len(listed))
    columns = [*TIDY_COLUMNS, *([] if measures is None else _scalars())]
    frame = pd.DataFrame([tidy_row(*pair) for pair in zip(listed, beside)], columns=[column.name for column in columns])
    frame.attrs["columns"] = {column.name: [column.unit, column.meaning] for column in columns}
    frame.attrs["settings"] = [one.to_dict()["settings"] for one in listed]
    return frame
