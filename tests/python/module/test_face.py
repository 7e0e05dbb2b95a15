"""What is documented is there: stubs, examples, names."""

import doctest
import importlib
import inspect
import subprocess
import sys
from pathlib import Path

import pytest

import tussock

MODULES = ["tussock", *(f"tussock.{name}" for name in ("_errors", "_inputs", "_record", "_results", "_work", "laws", "spark"))]


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
    allowed = [r"tussock\.(_inputs|_results|spark)\.(geopandas|numpy|pandas|pyarrow|pyspark)", r"tussock\._tussock\.__all__"]
    (tmp_path / "allowed").write_text("\n".join(allowed) + "\n")
    done = subprocess.run(
        [sys.executable, "-m", "mypy.stubtest", "tussock", "--ignore-disjoint-bases", "--mypy-config-file", "mypy.ini",
         "--allowlist", "allowed"],
        cwd=tmp_path, capture_output=True, text=True,
    )  # fmt: skip
    assert done.returncode == 0, done.stdout + done.stderr


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
        "print([m for m in ('numpy', 'pandas', 'pyarrow', 'geopandas', 'matplotlib', 'pyspark') if m in sys.modules])"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.splitlines() == [tussock.__version__, "[]"]


def test_the_documented_columns_are_those_of_the_tidy_table():
    page = (Path(__file__).resolve().parents[3] / "docs" / "python.md").read_text()
    for column in tussock.TIDY_COLUMNS:
        assert f"| `{column.name}` | {column.unit} | {column.meaning} |" in page, column
