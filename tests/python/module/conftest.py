"""What every test of the module shares."""

import os
from pathlib import Path

import matplotlib
import pytest

import tussock

matplotlib.use("Agg")
ROOT = Path(__file__).resolve().parents[3]


@pytest.fixture(scope="session")
def demo():
    return ROOT / "fixtures" / "demo"


@pytest.fixture(scope="session")
def command():
    """The command, built by the same run."""
    return os.environ["TUSSOCK"]


@pytest.fixture(scope="session")
def plan(demo):
    return tussock.Plan(demo / "plan.geojson")


@pytest.fixture(scope="session")
def settings(demo):
    return tussock.Settings.read(demo / "settings.toml")


@pytest.fixture(scope="session")
def nights(demo):
    return sorted((demo / "before").glob("*.gpx.gz"))


@pytest.fixture(scope="session")
def trace(nights):
    return tussock.read(nights)


@pytest.fixture(scope="session")
def findings(trace, plan, settings):
    return tussock.analyse(trace, plan=plan, settings=settings, suggestions=False)
