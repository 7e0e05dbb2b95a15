"""Finds the grass that an autonomous mower leaves standing.

>>> import tussock
>>> plan = tussock.invent_garden("convex", seed=1)
>>> night = tussock.simulate(plan, hours=1.0, seed=1, noise="none", truth_cell_m=0.05)
>>> findings = tussock.analyse(night.trace, plan=plan, cut_width_m=0.22, suggestions=False)
>>> abs(findings.coverage.visited_fraction.estimate - night.truth.visited_fraction) < 0.01
True

Every bare number carries its unit in its name; ``_fraction`` runs from 0 to 1. Words and fields are those of ``findings.json``
(``docs/findings.schema.json``), methods and sources those of ``docs/methods.md`` and ``docs/bibliography.md``.

NumPy, pandas, pyarrow, geopandas, matplotlib and PySpark are imported when something is asked for that needs them:
``pip install tussock[frames,plot,spark]``.
"""

from . import fields, laws, spark
from ._errors import (
    AnalyseError,
    BatchError,
    CompareError,
    InternalError,
    LogError,
    OutputError,
    PlanError,
    ReportError,
    SettingsError,
    SimulateError,
    TussockError,
)
from ._inputs import QUALITIES, Plan, Reference, Settings, Trace, plan_check, read, read_all
from ._many import analyse_many, way_distance_m
from ._record import Record
from ._results import (
    KINDS,
    LANGUAGES,
    TIDY_COLUMNS,
    UNITS,
    Cells,
    Column,
    Comparison,
    Findings,
    read_comparison,
    read_findings,
    tidy,
    tidy_row,
)
from ._tussock import TOOL_VERSION as __version__
from ._work import (
    MEASURES,
    NOISES,
    GridCount,
    Measure,
    Simulated,
    about,
    against_reference,
    analyse,
    compare,
    compare_patterns,
    count_on_grid,
    gardens_needed,
    guess_pattern,
    inspect,
    invent_garden,
    measures,
    mended_plan,
    nights_needed,
    plan_from_trace,
    power_of,
    simulate,
    spread_of,
)

__all__ = [
    "KINDS",
    "LANGUAGES",
    "NOISES",
    "QUALITIES",
    "MEASURES",
    "TIDY_COLUMNS",
    "UNITS",
    "AnalyseError",
    "BatchError",
    "Cells",
    "Column",
    "CompareError",
    "Comparison",
    "Findings",
    "GridCount",
    "InternalError",
    "LogError",
    "Measure",
    "OutputError",
    "Plan",
    "PlanError",
    "Record",
    "Reference",
    "ReportError",
    "Settings",
    "SettingsError",
    "SimulateError",
    "Simulated",
    "Trace",
    "TussockError",
    "__version__",
    "against_reference",
    "about",
    "analyse",
    "analyse_many",
    "compare",
    "compare_patterns",
    "count_on_grid",
    "fields",
    "gardens_needed",
    "guess_pattern",
    "inspect",
    "invent_garden",
    "laws",
    "measures",
    "mended_plan",
    "nights_needed",
    "plan_check",
    "plan_from_trace",
    "power_of",
    "read",
    "read_all",
    "read_comparison",
    "read_findings",
    "simulate",
    "spark",
    "spread_of",
    "tidy",
    "tidy_row",
    "way_distance_m",
]
