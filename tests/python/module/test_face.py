"""What is documented is there: stubs, examples, names; and type checkers know the fields of results."""

import collections.abc
import doctest
import importlib
import importlib.util
import inspect
import json
import re
import subprocess
import sys
import types
import typing
from pathlib import Path

import pytest

import tussock

MODULES = ["tussock", *(f"tussock.{name}" for name in ("_errors", "_inputs", "_many", "_record", "_results", "_work", "laws", "spark"))]


@pytest.mark.parametrize("name", MODULES)
def test_examples_in_docstrings_run(name):
    module = importlib.import_module(name)
    result = doctest.testmod(module, optionflags=doctest.ELLIPSIS | doctest.IGNORE_EXCEPTION_DETAIL)
    assert result.failed == 0


def test_there_are_examples():
    finder = doctest.DocTestFinder(exclude_empty=True)
    examples = sum(len(test.examples) for name in MODULES for test in finder.find(importlib.import_module(name)))
    assert examples > 15


def test_stubs_agree_with_the_module(tmp_path):
    # Not every library that is imported on demand has types.
    (tmp_path / "mypy.ini").write_text("[mypy]\nignore_missing_imports = True\n")
    # Imported for types alone: the module works without these libraries. PyO3 lists what it exports by itself.
    allowed = [r"tussock\.(_inputs|_results|_work|_many|spark)\.(geopandas|numpy|pandas|pyarrow|pyspark|xarray)", r"tussock\._tussock\.__all__"]
    (tmp_path / "allowed").write_text("\n".join(allowed) + "\n")
    done = subprocess.run(
        [sys.executable, "-m", "mypy.stubtest", "tussock", "--ignore-disjoint-bases", "--mypy-config-file", "mypy.ini",
         "--allowlist", "allowed"],
        cwd=tmp_path, capture_output=True, text=True,
    )  # fmt: skip
    assert done.returncode == 0, done.stdout + done.stderr


ROOT = Path(__file__).resolve().parents[3]


def test_the_types_of_results_are_written_from_schemas_and_structs():
    spec = importlib.util.spec_from_file_location("fields", ROOT / "crates/python/fields.py")
    writer = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(writer)
    assert writer.OUT.read_text() == writer.written(), "run python crates/python/fields.py"


def mypy_lines(folder):
    checked = subprocess.run(
        [sys.executable, "-m", "mypy", "--strict", "--no-error-summary", "--hide-error-context", "slips.py"],
        cwd=folder, capture_output=True, text=True,
    )  # fmt: skip
    return {int(line) for line in re.findall(r"^slips\.py:(\d+): error", checked.stdout, re.M)}


def pyright_lines(folder):
    (folder / "pyrightconfig.json").write_text('{"typeCheckingMode": "standard"}')
    checked = subprocess.run(
        [sys.executable, "-m", "basedpyright", "--outputjson", "--pythonpath", sys.executable, "-p", "."],
        cwd=folder, capture_output=True, text=True,
    )  # fmt: skip
    return {one["range"]["start"]["line"] + 1 for one in json.loads(checked.stdout)["generalDiagnostics"]}


@pytest.mark.parametrize("lines_of", [mypy_lines, pyright_lines])
def test_type_checkers_catch_slips_and_nothing_else(lines_of, tmp_path):
    text = Path(__file__).with_name("slips.py").read_text()
    (tmp_path / "slips.py").write_text(text)
    slips = {number for number, line in enumerate(text.splitlines(), 1) if line.endswith("# slip")}
    if lines_of is pyright_lines:
        # It lets any two texts be compared.
        slips -= {number for number, line in enumerate(text.splitlines(), 1) if '== "boustrophedon"' in line}
    assert len(slips) > 10 and lines_of(tmp_path) == slips


def unlike(value, hint, path):
    """Where a result is not what its types say."""
    origin, inner = typing.get_origin(hint), typing.get_args(hint)
    if origin in (typing.Union, types.UnionType):
        return [] if any(not unlike(value, one, path) for one in inner) else [f"{path}: {value!r} for {hint}"]
    if origin is typing.Literal:
        return [] if value in inner else [f"{path}: {value!r} for {hint}"]
    if origin in (tuple, collections.abc.Mapping) and not isinstance(value, origin):
        return [f"{path}: {value!r} for {hint}"]
    if origin is tuple:
        kinds = [inner[0]] * len(value) if inner[-1] is ... else inner
        return [fault for at, (one, kind) in enumerate(zip(value, kinds, strict=True)) for fault in unlike(one, kind, f"{path}[{at}]")]
    if origin is collections.abc.Mapping:
        return [fault for key, one in value.items() for fault in unlike(one, inner[1], f"{path}.{key}")]
    known = typing.get_type_hints(hint) if hint.__module__ == "tussock.fields" else {}
    if known and isinstance(value, tussock.Record):
        reached = {*known, "values", "from"}
        extra = [f"{path}.{key} has no type" for key in value if key not in reached]
        return extra + [fault for key, kind in known.items() if key[0] != "_" for fault in unlike(value[key], kind, f"{path}.{key}")]
    kind = (int, float) if hint is float else hint
    return [] if isinstance(value, kind) else [f"{path}: {value!r} for {hint}"]


def test_results_have_the_fields_that_their_types_name(trace, plan, settings, findings):
    fields = tussock.fields
    night = tussock.simulate(plan, hours=0.5, seed=1)
    nights = {"a": ([0.6, 0.7], [0.8, 0.9]), "b": ([0.5, 0.6], [0.7, 0.8])}
    results = [
        (findings._record, fields.FindingsFields),
        (tussock.compare(findings, findings)._record, fields.ComparisonFields),
        (settings._record, fields.SettingsFields),
        (tussock.inspect(trace, plan=plan), fields.Inspection),
        (tussock.measures(trace, plan=plan, settings=settings.changed(machine={"track_width_m": 0.3})), fields.Measures),
        (tussock.guess_pattern(trace, plan=plan), fields.PatternGuess),
        (tussock.against_reference(trace, trace), fields.ReferenceFindings),
        (tussock.plan_check(plan), fields.PlanChecked),
        (tussock.spread_of([[0.1, 0.2], [0.2, 0.3]]), fields.Spread),
        (tussock.compare_patterns(nights), fields.Compared),
        (findings.at_m(0.0, 0.0), fields.ComplaintFindings),
        (night.truth, fields.Truth),
        (trace.facts[0], fields.InputFindings),
    ]
    for result, kind in results:
        assert unlike(result, kind, kind.__name__) == []


@pytest.mark.parametrize("name", tussock.__all__)
def test_everything_public_is_documented(name):
    thing = getattr(tussock, name)
    if inspect.isfunction(thing) or inspect.isclass(thing):
        assert inspect.getdoc(thing), name
    if inspect.isclass(thing):
        for member, value in vars(thing).items():
            if not member.startswith("_") and (inspect.isfunction(value) or isinstance(value, property)):
                assert inspect.getdoc(value), f"{name}.{member}"


def test_the_module_comes_without_the_libraries_of_others():
    code = (
        "import sys, tussock; print(tussock.__version__);"
        "print([m for m in ('numpy', 'pandas', 'pyarrow', 'geopandas', 'matplotlib', 'pyspark', 'xarray') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines() == [tussock.__version__, "[]"]


def test_the_documented_columns_are_those_of_the_tidy_table():
    page = (ROOT / "docs" / "python.md").read_text()
    for column in tussock.TIDY_COLUMNS:
        assert f"| `{column.name}` | {column.unit} | {column.meaning} |" in page, column
