"""The questions that are asked of logs, gardens and comparisons."""

from __future__ import annotations

import datetime
import importlib.metadata
import json
import platform
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict, dataclass
from functools import partial
from typing import TYPE_CHECKING, Any, Union

from . import _asked, _tables, _tussock, fields
from ._errors import AnalyseError, CompareError, SimulateError
from ._inputs import PathLike, Plan, Reference, Settings, Source, Trace, as_plan, as_reference, as_settings, is_source, read_all
from ._record import told, wrapped
from ._results import Comparison, Findings, reached

if TYPE_CHECKING:
    import geopandas
    import numpy
    import xarray

#: Traces, or logs that are read first.
Logs = Union[Trace, Source, Iterable[Union[Trace, Source]]]


def _job(
    logs: Logs, plan: Plan | Source | None, settings: Settings | PathLike | None, cut_width_m: float | None
) -> _tussock._AskedOf:
    wanted = as_settings(settings)
    if cut_width_m is not None:
        wanted = wanted.changed(machine={"cut_width_m": cut_width_m})
    if isinstance(logs, Trace):
        traces = [logs]
    else:
        listed = [logs] if is_source(logs) else _asked.items(AnalyseError, "logs", logs, "traces, paths, bytes or data frames")
        ready = [one for one in listed if isinstance(one, Trace)]
        if ready and len(ready) != len(listed):
            raise AnalyseError("traces and logs in one list, expected one kind", "mixed")
        traces = ready or read_all(listed, settings=wanted)
    laid = as_plan(plan, wanted)
    return [trace._inner for trace in traces], None if laid is None else laid._inner, wanted._inner


@_asked.held(AnalyseError, seed=_asked.whole, suggestions=_asked.truth)
def analyse(
    logs: Logs,
    *,
    plan: Plan | Source | None = None,
    settings: Settings | PathLike | None = None,
    cut_width_m: float | None = None,
    seed: int = 0,
    suggestions: bool = True,
    reference: Reference | Trace | Source | None = None,
) -> Findings:
    """How much was visited, what was missed, where did it get stuck, and what to change?

    ``logs`` are traces (one for each machine), paths or bytes. Without a plan the outline is drawn from the trace. The same
    input, settings and seed give the findings of ``tussock analyse``, byte for byte. Suggestions take some seconds. With a surveyed
    path as ``reference`` the errors of :func:`against_reference` stand in ``findings.reference``. Other Python threads run
    meanwhile.
    """
    path = None if reference is None else as_reference(reference, as_settings(settings))._inner
    return Findings(_tussock.analyse(_job(logs, plan, settings, cut_width_m), seed, suggestions, path))


def against_reference(
    logs: Logs,
    reference: Reference | Trace | Source,
    *,
    plan: Plan | Source | None = None,
    settings: Settings | PathLike | None = None,
) -> fields.ReferenceFindings:
    """How far is the log from a surveyed path, and how far the path that Tussock finds behind it?

    ``logged`` and ``located`` each have ``cross_track`` (to the segment, not to the vertex; left of the path positive),
    ``along_track`` (ahead of where the machine should have been), ``timing`` (later than the path says) and ``pass_to_pass`` (change
    of the cross-track error to the next pass beside it within 15 minutes), with mean, root mean square, 95 % and largest
    value in metres or seconds. Definitions after ISO 12188-1:2010; without times only the cross-track errors can be told.

    >>> import numpy as np, tussock
    >>> east_m = np.arange(0.0, 20.0, 0.4)
    >>> log = tussock.Trace.from_arrays(time_s=np.arange(50.0), east_m=east_m, north_m=np.full(50, 0.3))
    >>> found = tussock.against_reference(log, b"east_m,north_m\\n0,0\\n20,0\\n")
    >>> round(found.logged.cross_track.mean_m, 9), found.logged.timing
    (0.3, None)
    """
    path = as_reference(reference, as_settings(settings))
    found: fields.ReferenceFindings = told(_tussock.against_reference(_job(logs, plan, settings, None), path._inner))
    return found


def inspect(
    logs: Logs, *, plan: Plan | Source | None = None, settings: Settings | PathLike | None = None
) -> fields.Inspection:
    """Is this log good enough? Verdict, rates, quality, silences; what was skipped and where stands in ``inputs``."""
    found: fields.Inspection = told(_tussock.inspect(_job(logs, plan, settings, None)))
    return found


def plan_from_trace(logs: Logs, *, settings: Settings | PathLike | None = None) -> Plan:
    """A plan drawn from the drive alone: the lawn where turns say that its edges are, what the machine went round as obstacles, and
    the station. Good to some 0.15 m with centimetre logs; names and zones are to be filled in."""
    return Plan._of(_tussock.plan_from_trace(_job(logs, None, settings, None)))


def mended_plan(logs: Logs, plan: Plan | Source, *, settings: Settings | PathLike | None = None) -> Plan:
    """The plan as the log shows the garden to be: moved as a whole, sides moved that lie elsewhere than drawn, zones left out that
    are driven over, things added that turned the machine. A log that does not tell how the plan lies raises :class:`AnalyseError`."""
    asked = _job(logs, plan, settings, None)
    if asked[1] is None:
        raise AnalyseError("no plan, expected the one to mend", "no_plan")
    return Plan._of(_tussock.mended_plan(asked))


@_asked.held(CompareError, seed=_asked.whole)
def compare(
    before: Findings, after: Findings, *, seed: int = 0, names: tuple[Sequence[str], Sequence[str]] | None = None
) -> Comparison:
    """What did a change bring?

    Findings of :func:`analyse` know the logs behind them, so that luck from night to night is better known than with saved
    ones. Position error and night-to-night variation are named apart in ``difference``.
    """
    for name, side in (("before", before), ("after", after)):
        _asked.instance(CompareError, name, side, Findings, "tussock.analyse and tussock.read_findings give them")
    earlier, later = ([one.name for one in side.inputs] for side in (before, after)) if names is None else _names(names)
    return Comparison(_tussock.compare(before._inner, after._inner, earlier, later, seed))


def _names(names: Any) -> list[list[str]]:
    sides = _asked.items(CompareError, "names", names, "lists of names", 2)
    return [[_asked.text(CompareError, "a name", one) for one in _asked.items(CompareError, "names", side, "texts")] for side in sides]


@dataclass(frozen=True)
class Measure:
    """One measure of a pattern."""

    #: Its field in what :func:`measures` gives.
    field: str
    #: Its unit; ``""`` for fractions, ratios and counts.
    unit: str
    #: Its definition.
    meaning: str
    #: Where it was published.
    source: str


#: Every measure with unit, definition and source: the table of ``docs/methods.md``.
MEASURES: tuple[Measure, ...] = tuple(Measure(*row) for row in _tussock.definitions())


def measures(
    logs: Logs,
    *,
    plan: Plan | Source | None = None,
    settings: Settings | PathLike | None = None,
    cut_width_m: float | None = None,
) -> fields.Measures:
    """Measures of a pattern as papers give them: visited fraction against path, time and outings; efficiency between the random
    law and the exhaustive line (Koopman 1946; Gage 1993); lane spacing and overlap of neighbouring passes; field efficiency; straightness
    and turn angles; passes of wheels (with ``machine.track_width_m``); Gini and dispersion of visits beside the Poisson baseline; revisit
    intervals (Kaplan & Meier 1958); turn and leg laws; lane direction; edge against interior. ``docs/methods.md`` defines each."""
    found: fields.Measures = told(_tussock.measures(_job(logs, plan, settings, cut_width_m)))
    return found


def about(result: Findings | fields.Measures | None = None) -> fields.About:
    """What a paper has to name: versions of the tool and of the libraries beside it, and where to cite; with ``result`` the settings as
    used (findings), or unit, definition and source of every measure that it holds (measures), else those of all.

    >>> import tussock
    >>> tussock.about().version == tussock.__version__, len(tussock.about().measures) == len(tussock.MEASURES)
    (True, True)
    """
    versions = {}
    for name in ("numpy", "pandas", "pyarrow", "geopandas", "shapely", "xarray", "matplotlib", "pyspark"):
        try:
            versions[name] = importlib.metadata.version(name)
        except importlib.metadata.PackageNotFoundError:
            continue
    held = [one for one in MEASURES if not isinstance(result, Mapping) or reached(result, one.field) is not None]
    told: fields.About = wrapped(
        {
            "version": _tussock.TOOL_VERSION,
            "result_version": result.tool_version if isinstance(result, Findings) else None,
            "python": platform.python_version(),
            "platform": platform.platform(),
            "libraries": versions,
            "settings": result.to_dict()["settings"] if isinstance(result, Findings) else None,
            "measures": [asdict(one) for one in held],
            "cite": "CITATION.cff, docs/methods.md, docs/bibliography.md",
        }
    )
    return told


def guess_pattern(
    logs: Logs, *, plan: Plan | Source | None = None, settings: Settings | PathLike | None = None
) -> fields.PatternGuess:
    """Which pattern was it? A guess with the evidence beside it."""
    found: fields.PatternGuess = told(_tussock.guess_pattern(_job(logs, plan, settings, None)))
    return found


@dataclass(frozen=True)
class GridCount:
    """What was counted on a grid. Arrays have the shape (rows, columns), cell (0, 0) at the grid's origin."""

    #: Number of visited cells; by area, cells of which at least half was visited.
    cells_visited: int
    #: Visited area, m2.
    visited_m2: float
    #: Visited part of each cell, 0 to 1.
    visited_fraction: numpy.ndarray[Any, Any]
    #: Visits of each cell.
    visits: numpy.ndarray[Any, Any]
    #: Fixes in each cell; by other rules than ``fix_inside`` pieces of path that met it.
    hits: numpy.ndarray[Any, Any]
    #: Origin, where the columns end and where the rows end, as asked for.
    corners: tuple[tuple[float, float], ...] = ()
    #: What the corners are: ``"earth"``, ``"degrees"`` or ``"local"``.
    axes: str = "local"

    def _arrays(self) -> dict[str, numpy.ndarray[Any, Any]]:
        return {"visited_fraction": self.visited_fraction, "visits": self.visits, "hits": self.hits}

    def to_geodataframe(self) -> geopandas.GeoDataFrame:
        """One row a cell, row by row, with its outline in WGS 84, or in the metres of a local grid."""
        import numpy as np

        rows, columns = self.visits.shape
        origin, along, up = (np.array(one[:: 1 if self.axes == "local" else -1]) for one in self.corners)
        column, row = np.meshgrid(np.arange(columns + 1) / columns, np.arange(rows + 1) / rows)
        corners = origin + column[..., None] * (along - origin) + row[..., None] * (up - origin)
        return _tables.squares(corners, self._arrays(), None if self.axes == "local" else "EPSG:4326")

    def to_xarray(self) -> xarray.Dataset:
        """The arrays over ``row`` and ``column``."""
        arrays = {name: (("row", "column"), values) for name, values in self._arrays().items()}
        about = {"visited_m2": self.visited_m2, "cells_visited": self.cells_visited, "axes": self.axes}
        return _tables.library("xarray").Dataset(arrays, attrs=about)


@_asked.held(
    AnalyseError,
    columns=_asked.count,
    rows=_asked.count,
    cell_m=_asked.some,
    rule=_asked.one_of(("fix_inside", "path_crosses", "swath_covers_centre", "area_weighted"), "grid"),
    axes=_asked.one_of(("earth", "degrees", "local"), "grid"),
    cut_width_m=_asked.some,
    path=_asked.one_of(("as_logged", "located"), "grid"),
    new_pass_after_s=_asked.some,
)
def count_on_grid(
    logs: Logs,
    corners: Sequence[tuple[float, float]],
    *,
    columns: int | None = None,
    rows: int | None = None,
    cell_m: float | None = None,
    rule: str = "fix_inside",
    axes: str = "earth",
    cut_width_m: float | None = None,
    path: str = "as_logged",
    new_pass_after_s: float = 30.0,
    plan: Plan | Source | None = None,
    settings: Settings | PathLike | None = None,
) -> GridCount:
    """How many cells of this grid were visited, by this rule?

    ``corners`` are the origin, where the columns end, and where the rows end: latitude and longitude in degrees (``axes``
    ``"earth"``, or ``"degrees"`` to take degrees as if they were a plane), or metres east and north (``"local"``). The grid may
    be turned. Give ``columns`` and ``rows``, or the side ``cell_m``. Rules: ``fix_inside``, ``path_crosses``,
    ``swath_covers_centre`` and ``area_weighted`` (both with ``cut_width_m``). ``path`` is ``as_logged`` or ``located``.
    """
    asked = _job(logs, plan, settings, None)
    places = enumerate(_asked.items(AnalyseError, "corners", corners, "places", 3))
    wish: dict[str, Any] = {
        "axes": axes,
        "corners": [_asked.pair(AnalyseError, f"corners[{number}]", one) for number, one in places],
        "columns": columns,
        "rows": rows,
        "cell_m": cell_m,
        "rule": rule,
        "cut_width_m": cut_width_m,
        "path": path,
        "new_pass_after_s": new_pass_after_s,
    }
    counted = _tussock.count_on_grid(asked, json.dumps(wish))
    shape = (counted[1], counted[0])
    return GridCount(
        counted[2], counted[3], counted[4].reshape(shape), counted[5].reshape(shape), counted[6].reshape(shape),
        tuple(wish["corners"]), axes,
    )  # fmt: skip


# More draws would take hours and tell nothing.
@_asked.held(CompareError, paired_nights=_asked.truth, draws=partial(_asked.count, high=1_000_000), seed=_asked.whole)
def compare_patterns(
    gardens: Mapping[str, tuple[Sequence[float], Sequence[float]]],
    *,
    paired_nights: bool = False,
    draws: int = 2000,
    seed: int = 0,
) -> fields.Compared:
    """Is one pattern ahead of another? A measure of each night under the first and the second pattern, for each garden.

    Gardens are drawn, then nights within each, since nights of one garden are not independent (Davison & Hinkley 1997, section
    3.8; Saravanan, Berman & Sober 2020). Gives the ``difference`` (second less first) with a 90 % BCa interval (Efron 1987),
    ``by_garden``, ``ahead_fraction``, ``cohen_d`` (Cohen 1988) and ``cliffs_delta`` (Cliff 1993).

    >>> import tussock
    >>> found = tussock.compare_patterns({"a": ([0.6, 0.7], [0.8, 0.9]), "b": ([0.5, 0.6], [0.7, 0.8])})
    >>> round(found.difference.estimate, 6), found.gardens, found.nights
    (0.2, 2, 8)
    """
    listed = []
    for name, nights in _asked.table(CompareError, "gardens", gardens, "nights of two patterns under the name of each").items():
        pair = _asked.items(CompareError, f"garden {name}", nights, "lists of nights", 2)
        first, second = (_asked.numbers_of(CompareError, f"garden {name}", one) for one in pair)
        listed.append((_asked.text(CompareError, "the name of a garden", name), first, second))
    found: fields.Compared = told(_tussock.compare_paired(listed, paired_nights, draws, seed))
    return found


def spread_of(
    gardens: Mapping[str, Sequence[float]] | Iterable[Sequence[float]], *, position_sd: float | Mapping[str, Sequence[float]] = 0.0
) -> fields.Spread:
    """How much of the spread of a measure is position error, how much nights, how much gardens?

    ``gardens`` are the nights of each garden: a measure, or the difference of two patterns on one night. ``position_sd`` is what position
    error is worth in one night, half the width of its 90 % interval over 1.645: one number, or one for each night of
    each garden. Gives ``position_sd``, ``night_sd`` and ``garden_sd`` in the unit of the measure. Moments of a random-effects analysis
    of variance (method 1 of Henderson 1953); estimates below zero are given as 0.

    >>> import tussock
    >>> found = tussock.spread_of({"a": [0.10, 0.14], "b": [0.02, 0.06], "c": [0.18, 0.22]}, position_sd=0.01)
    >>> found.gardens, found.nights, round(found.night_sd, 4), round(found.garden_sd, 4)
    (3, 6, 0.0265, 0.0775)
    """
    listed = gardens if isinstance(gardens, Mapping) else _asked.items(CompareError, "gardens", gardens, "the nights of each")
    named: dict[Any, Any] = dict(listed if isinstance(listed, Mapping) else enumerate(listed))
    nights = []
    for name, values in named.items():
        values = _asked.numbers_of(CompareError, f"garden {name}", values)
        if isinstance(position_sd, Mapping):
            deviations = _asked.numbers_of(CompareError, f"position_sd of {name}", position_sd.get(name))
            if len(deviations) != len(values):
                raise CompareError(
                    f"garden {name}: {len(deviations)} position errors for {len(values)} nights, expected one for each", "uneven"
                )
        else:
            deviations = [_asked.number(CompareError, "position_sd", position_sd, 0.0)] * len(values)
        nights.append(list(zip(values, deviations)))
    found: fields.Spread = told(_tussock.spread_of(nights))
    return found


def _three(spread: Mapping[str, Any]) -> tuple[float, float, float]:
    of = _asked.table(CompareError, "spread", spread, "what tussock.spread_of gives")
    names = ("position_sd", "night_sd", "garden_sd")
    position, night, garden = (_asked.some(CompareError, name, of.get(name)) for name in names)
    return position, night, garden


@_asked.held(CompareError, difference=_asked.number, gardens=_asked.count, level=_asked.share, power=_asked.share)
def nights_needed(
    spread: Mapping[str, Any], difference: float, *, gardens: int, level: float = 0.05, power: float = 0.8
) -> int | None:
    """How many nights of each pattern, in each of so many gardens, until a true difference is told apart?

    ``None`` where the gardens' own spread hides it however many nights there are: more nights never make up for too few gardens.
    ``spread`` is that of :func:`spread_of`, or any mapping of its three deviations. Two-level normal test (Snijders & Bosker 1993),
    with gardens added for an estimated spread (Guenther 1981).

    >>> import tussock
    >>> spread = {"position_sd": 0.01, "night_sd": 0.04, "garden_sd": 0.02}
    >>> tussock.nights_needed(spread, 0.05, gardens=6), tussock.nights_needed(spread, 0.005, gardens=6)
    (2, None)
    """
    return _tussock.nights_needed(_three(spread), difference, gardens, level, power)


@_asked.held(CompareError, difference=_asked.number, nights=_asked.count, level=_asked.share, power=_asked.share)
def gardens_needed(
    spread: Mapping[str, Any], difference: float, *, nights: int, level: float = 0.05, power: float = 0.8
) -> int:
    """How many gardens, with so many nights of each pattern in each? See :func:`nights_needed`."""
    return _tussock.gardens_needed(_three(spread), difference, nights, level, power)


@_asked.held(CompareError, difference=_asked.number, gardens=_asked.count, nights=_asked.count, level=_asked.share)
def power_of(spread: Mapping[str, Any], difference: float, *, gardens: int, nights: int, level: float = 0.05) -> float:
    """The probability that so many gardens and nights show a true difference. See :func:`nights_needed`.

    >>> import tussock
    >>> spread = {"position_sd": 0.0, "night_sd": 0.03, "garden_sd": 0.0}
    >>> round(tussock.power_of(spread, 0.0, gardens=4, nights=3), 6)
    0.05
    """
    return _tussock.power(_three(spread), difference, gardens, nights, level)


#: Position error of a log: white part, drift part (metres, per axis) and drift time (s).
NOISES = {
    "none": (0.0, 0.0, 600.0),
    "centimetre": (0.01, 0.015, 600.0),
    "decimetre": (0.08, 0.3, 600.0),
    "metre": (0.3, 2.0, 300.0),
}


@dataclass(frozen=True)
class Simulated:
    """An invented outing."""

    #: What a logger on the machine wrote down.
    trace: Trace
    #: What really happened: ``visited_fraction``, ``lawn_m2``, ``driving_s``, ``driven_m``, ``visits_histogram``, ``pockets``, ...
    truth: fields.Truth


_FIRST_START_S, _LAST_START_S = 347_155_200.0, 4_102_444_800.0


def _start_unix_s(start: Any) -> float:
    if isinstance(start, str):
        try:
            start = datetime.datetime.fromisoformat(start.replace("Z", "+00:00"))
        except ValueError:
            raise SimulateError(f"start is {start!r}, expected a time such as 2026-05-01T20:00:00Z", "start") from None
    start_s = _tables.instant(SimulateError, "start", start)
    # Written so that NaN fails too.
    if not _FIRST_START_S <= start_s < _LAST_START_S:
        raise _asked.refused(SimulateError, "start", start, "a time from 1981 to 2099, as logs have", "start")
    return start_s


@_asked.held(
    SimulateError,
    pattern=_asked.one_of(("roaming", "lanes", "spiral", "combined")),
    turn_law=_asked.one_of(("uniform_from_normal", "cosine_from_normal", "reflect_with_spread", "from_heading")),
    seed=_asked.whole,
    **dict.fromkeys(("turning_s", "outing_s", "charging_s"), _asked.pair),
    **dict.fromkeys(("hours", "speed_mps", "cut_width_m", "past_boundary_m", "lane_spacing_m", "period_s"), _asked.number),
    **dict.fromkeys(("lane_direction_deg", "lane_jitter_m", "lane_turn_each_round_deg", "truth_cell_m"), _asked.number),
)
def simulate(
    plan: Plan | Source,
    *,
    hours: float = 8.0,
    seed: int = 0,
    pattern: str = "roaming",
    turn_law: str = "uniform_from_normal",
    speed_mps: float | None = None,
    cut_width_m: float | None = None,
    past_boundary_m: float | None = None,
    turning_s: tuple[float, float] = (1.5, 2.5),
    outing_s: tuple[float, float] = (3300.0, 4500.0),
    charging_s: tuple[float, float] = (3000.0, 4200.0),
    lane_spacing_m: float | None = None,
    lane_direction_deg: float = 0.0,
    lane_jitter_m: float = 0.02,
    lane_turn_each_round_deg: float = 90.0,
    noise: str | tuple[float, float, float] = "centimetre",
    period_s: float = 1.0,
    start: str | datetime.datetime = "2026-05-01T20:00:00Z",
    truth_cell_m: float = 0.02,
    settings: Settings | PathLike | None = None,
) -> Simulated:
    """Drives an invented machine over a plan and logs it, with the truth beside it.

    ``pattern`` is ``roaming`` (with ``turn_law`` ``uniform_from_normal``, ``cosine_from_normal``, ``reflect_with_spread`` of 20
    degrees, or ``from_heading`` by 90 to 180 degrees), ``lanes``, ``spiral`` or ``combined``. ``noise`` is one of
    :data:`NOISES` or three numbers. Speed, width and setback come from the settings where they are not given, else 0.4 m/s, 0.22 m
    and -0.2 m; lanes lie 0.9 widths apart. Times of a turn, an outing and charging are drawn between two seconds each.
    The same arguments give the same fixes on every machine.
    """
    wanted = as_settings(settings)
    laid = plan if isinstance(plan, Plan) else Plan(plan, settings=wanted)
    known = wanted.machine

    def first(*values: float | None) -> float:
        return next(value for value in values if value is not None)

    if isinstance(noise, str):
        noise = NOISES[_asked.word(SimulateError, "noise", noise, NOISES, "noise")]
    white_m, drift_m, drift_time_s = _asked.numbers_of(SimulateError, "noise", noise, 3)
    width_m = first(cut_width_m, known.cut_width_m, 0.22)
    wish = {
        "hours": hours,
        "seed": seed,
        "pattern": pattern,
        "turn_law": turn_law,
        "speed_mps": first(speed_mps, known.speed_mps, 0.4),
        "cut_width_m": width_m,
        "past_boundary_m": first(past_boundary_m, known.past_boundary_m, -0.2),
        "turning_s": turning_s,
        "outing_s": outing_s,
        "charging_s": charging_s,
        "lane_spacing_m": first(lane_spacing_m, 0.9 * width_m),
        "lane_direction_deg": lane_direction_deg,
        "lane_jitter_m": lane_jitter_m,
        "lane_turn_each_round_deg": lane_turn_each_round_deg,
        "period_s": period_s,
        "white_m": white_m,
        "drift_m": drift_m,
        "drift_time_s": drift_time_s,
        "start_unix_s": _start_unix_s(start),
        "truth_cell_m": truth_cell_m,
    }
    trace, truth = _tussock.simulate(laid._inner, wanted._inner, json.dumps(wish))
    return Simulated(Trace(trace), told(truth))


@_asked.held(
    SimulateError,
    kind=_asked.one_of(("convex", "ell", "islands", "two_rooms", "you"), "unknown_kind"),
    seed=_asked.whole,
    area_m2=_asked.pair,
    passage_m=_asked.number,
)
def invent_garden(
    kind: str = "convex", *, seed: int = 0, area_m2: tuple[float, float] = (300.0, 900.0), passage_m: float = 1.6
) -> Plan:
    """The plan of a garden that does not exist: ``convex``, ``ell``, ``islands``, ``two_rooms`` (joined by a passage) or ``you``.

    >>> import tussock
    >>> plan = tussock.invent_garden("ell", seed=4)
    >>> tussock.plan_check(plan).is_sound
    True
    """
    return Plan._of(_tussock.invent_garden(kind, seed, (area_m2[0], area_m2[1]), passage_m))
