"""Many analyses at once, each in a process of its own; and how alike two ways are."""

from __future__ import annotations

import multiprocessing
import os
from collections.abc import Callable, Iterable, Mapping
from concurrent.futures import ProcessPoolExecutor, as_completed
from typing import TYPE_CHECKING, Any

from . import _asked, _tables
from ._errors import AnalyseError, TussockError
from ._inputs import Trace
from ._results import Findings
from ._work import analyse

if TYPE_CHECKING:
    import numpy


def _one(job: Mapping[str, Any]) -> Findings | TussockError:
    try:
        return analyse(**job)
    except TussockError as refused:
        return refused


def analyse_many(
    jobs: Iterable[Mapping[str, Any]], *, processes: int | None = None, progress: Callable[[int, int], object] | None = None
) -> list[Findings | TussockError]:
    """Findings of many jobs, each a mapping of the arguments of :func:`analyse`, in the order of the jobs.

    Each of ``processes`` (by default one a core) starts fresh, so it does not matter what the calling one has done, and shares the
    cores: set ``RAYON_NUM_THREADS`` for another number of threads in each. A job that is refused gives its :class:`TussockError` in its
    place, and the others go on. ``progress`` is called with how many are done, and of how many. Where a script calls it, the call stands
    below ``if __name__ == "__main__":``, as for every pool of processes.
    """
    listed = [dict(job) for job in _asked.items(AnalyseError, "jobs", jobs, "mappings of arguments of analyse")]
    cores = os.cpu_count() or 1
    most = cores if processes is None else _asked.count(AnalyseError, "processes", processes)
    most = max(1, min(most, len(listed)))
    found: dict[int, Findings | TussockError] = {}
    start = multiprocessing.get_context("spawn")
    with ProcessPoolExecutor(most, start, _share, (max(1, cores // most),)) as pool:
        waiting = {pool.submit(_one, job): number for number, job in enumerate(listed)}
        for done in as_completed(waiting):
            found[waiting[done]] = done.result()
            if progress is not None:
                progress(len(found), len(listed))
    return [found[number] for number in range(len(listed))]


def _share(threads: int) -> None:
    os.environ.setdefault("RAYON_NUM_THREADS", str(threads))


@_asked.held(
    AnalyseError,
    kind=_asked.one_of(("hausdorff", "frechet", "dynamic_time_warping"), "unknown_kind"),
    step_m=_asked.some,
)
def way_distance_m(one: Trace, other: Trace, *, kind: str = "frechet", step_m: float = 0.5) -> float:
    """How far apart two ways are, whatever their times, in metres, read at places ``step_m`` apart along each.

    ``hausdorff``: the farthest that a place of one lies from the other (Hausdorff 1914, by shapely). ``frechet``: the shortest leash with
    which both can be walked without turning back (discrete; Eiter & Mannila 1994, by shapely). ``dynamic_time_warping``: the mean
    distance of the pairs of the alignment with the smallest sum (Sakoe & Chiba 1978). Time grows with the product of their lengths.
    """
    a, b = _places(one, other, step_m)
    shapely = _tables.library("shapely")
    if kind != "dynamic_time_warping":
        ways = [shapely.linestrings(places) for places in (a, b)]
        distance = shapely.hausdorff_distance if kind == "hausdorff" else shapely.frechet_distance
        return float(distance(*ways))
    import numpy as np

    # Sum and length of the best alignment that ends at each pair; a row of pairs at a time.
    before = [(0.0, 0)] + [(np.inf, 0)] * len(b)
    for place in a:
        row = [(np.inf, 0)]
        for column, apart_m in enumerate(np.hypot(*(b - place).T).tolist()):
            sum_m, pairs = min(before[column], before[column + 1], row[column])
            row.append((sum_m + apart_m, pairs + 1))
        before = row
    return float(before[-1][0] / before[-1][1])


def _places(one: Trace, other: Trace, step_m: float) -> list[numpy.ndarray[Any, Any]]:
    """Places in metres on one plane, at even steps along each way."""
    import numpy as np

    for name, trace in (("one", one), ("other", other)):
        _asked.instance(AnalyseError, name, trace, Trace, "tussock.read gives one")
    if one.is_geographic != other.is_geographic:
        raise AnalyseError("one way in degrees and one in local metres, expected both alike", "mixed")
    shapely = _tables.library("shapely")
    found = []
    for trace in (one, other):
        if trace.is_geographic:
            plane = f"+proj=ortho +lat_0={one.lat_deg[0]!r} +lon_0={one.lon_deg[0]!r} +ellps=WGS84"
            places = _tables.library("pyproj").Proj(plane)(trace.lon_deg, trace.lat_deg)
        else:
            places = trace.east_m, trace.north_m
        line = shapely.linestrings(np.column_stack(places))
        steps_m = np.linspace(0.0, line.length, max(2, round(line.length / step_m) + 1))
        found.append(shapely.get_coordinates(shapely.line_interpolate_point(line, steps_m)))
    return found
