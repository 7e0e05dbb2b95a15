"""The store of the night shift, asked in SQL by software that nobody here wrote: the questions of docs/store.md."""

import json
import os
import pathlib
import re
import shutil
import subprocess

import duckdb
import polars
import pyarrow.parquet
import pytest

TUSSOCK = os.environ["TUSSOCK"]
PAPER = pathlib.Path(__file__).parents[2] / "docs" / "store.md"
QUESTIONS = dict(
    zip(
        ["last night", "persisting pockets", "stuck spots", "failures", "silent", "alarms"],
        re.findall(r"```sql\n(.*?)```", PAPER.read_text(), re.S),
        strict=True,
    )
)


def run(folder, *words, code=0):
    done = subprocess.run([TUSSOCK, *words], cwd=folder, capture_output=True, text=True)
    assert done.returncode == code, done.stderr
    return done.stdout


@pytest.fixture(scope="module")
def night(tmp_path_factory):
    """Four gardens, four nights; one log is no log, one garden falls silent after the first night."""
    folder = tmp_path_factory.mktemp("night")
    run(folder, *"simulate gardens --count 4 --nights 4 --hours 0.4 --period 2s --area 120-200 --troubled 0 --faulty 0 --out load".split())
    silent = folder / "load" / "gardens" / "garden-0003" / "logs"
    for log in sorted(silent.iterdir())[1:]:
        log.unlink()
    (folder / "load" / "gardens" / "garden-0002" / "logs" / "night-009.gpx").write_bytes(b"%PDF-1.7 no log")
    run(folder, *"batch run load/gardens --store store --no-suggestions".split(), code=3)
    return folder


def ask(night, question):
    connection = duckdb.connect()
    connection.execute(f"SET file_search_path = '{night / 'store'}'")
    return connection.execute(QUESTIONS[question]).fetchall()


def test_who_was_heard_of_last_night(night):
    rows = ask(night, "last night")
    assert sorted(garden for garden, _ in rows) == ["garden-0001", "garden-0002", "garden-0004"]
    assert all(5 < percent <= 100 for _, percent in rows)
    # The same figure as an analysis of that night by itself.
    place = night / "load" / "gardens" / "garden-0001"
    alone = json.loads(
        run(place, *"analyse logs/night-003.gpx --plan plan.geojson --settings settings.toml --no-suggestions --format json".split())
    )
    percent = dict(rows)["garden-0001"]
    assert abs(percent - 100 * alone["coverage"]["visited_fraction"]["estimate"]) < 0.051


def test_persisting_pockets_are_those_of_the_table(night):
    rows = ask(night, "persisting pockets")
    table = pyarrow.parquet.ParquetDataset(night / "store" / "pockets").read().to_pylist()
    seen = {}
    for row in table:
        if row["verdict"] == "missed":
            seen.setdefault((row["garden"], row["id"]), set()).add(row["night"])
    assert {(garden, name): nights for garden, name, _, nights, _ in rows} == {
        key: len(nights) for key, nights in seen.items() if len(nights) >= 2
    }


def test_polars_reads_the_same_nights(night):
    store = night / "store"
    table = polars.scan_parquet(store / "nights", hive_partitioning=True).sort("garden", "night").collect()
    rows = duckdb.sql(
        f"SELECT * FROM read_parquet('{store}/nights/*/*.parquet', hive_partitioning = true) ORDER BY garden, night"
    )
    assert table.height == len(rows.fetchall()) == 13
    assert table["visited_fraction"].to_list() == [value for (value,) in rows.project("visited_fraction").fetchall()]
    states = polars.read_parquet(next((store / "gardens").glob("*.parquet")))
    assert states["last_visits"].dtype == polars.Binary and states["garden"].to_list() == sorted(states["garden"])


def test_stuck_spots_can_be_asked_for(night):
    if not (night / "store" / "stuck_spots").exists():
        # A table without a row has no folder yet: then no analysis has one either.
        place = night / "load" / "gardens" / "garden-0001"
        alone = run(place, *"analyse logs/night-001.gpx --plan plan.geojson --settings settings.toml --no-suggestions --format json".split())
        assert json.loads(alone)["stuck_spots"] == []
        return
    for garden, _, _, nights, _ in ask(night, "stuck spots"):
        assert garden.startswith("garden-") and nights >= 1


def test_what_failed_is_named_with_its_digest(night):
    rows = ask(night, "failures")
    assert [(garden, what, reason, len(sha256)) for _, garden, what, reason, sha256 in rows] == [
        ("garden-0002", "garden-0002/logs/night-009.gpx", "damaged", 64)
    ]


def test_the_snapshot_has_the_files_of_the_tables_and_alarms_can_be_asked_for(night):
    store = night / "store"
    files = lambda folder: sorted(str(path.relative_to(folder)) for path in folder.glob("*/**/*.parquet"))
    whole = (store / "snapshot").resolve()
    tables = [name for name in files(store) if not name.startswith("snapshot")]
    assert files(whole) == tables and len(tables) > 10
    # A table without a row has no folder yet.
    if (whole / "alarms").exists():
        for garden, kind, since, nights, _ in ask(night, "alarms"):
            assert garden.startswith("garden-") and "_" in kind and since >= "2026-05-01" and nights >= 1


def test_who_has_fallen_silent_comes_first(night):
    rows = ask(night, "silent")
    assert rows[0][0] == "garden-0003"
    assert str(rows[0][1]) == "2026-05-01"
    assert {str(last) for _, last in rows[1:]} == {"2026-05-04"}


def test_the_morning_names_the_silent_garden_and_a_second_run_changes_nothing(night):
    before = sorted(str(path) for path in (night / "store").rglob("*.parquet"))
    run(night, *"batch run load/gardens --store store --no-suggestions".split())
    assert sorted(str(path) for path in (night / "store").rglob("*.parquet")) == before
    found = json.loads(run(night, *"batch report store --date 2026-05-04 --fail-on-visit --format json --out page.html".split(), code=1))
    absent = [(g["garden"], r["since"]) for g in found["gardens"] for r in g["reasons"] if r["alarm"] == "absent"]
    assert absent == [("garden-0003", "2026-05-02")]
    page = (night / "page.html").read_text()
    assert "garden-0003" in page and "default-src 'none'" in page
    copy = shutil.copytree(night / "store", night / "copy", symlinks=True)
    run(night, "batch", "forget", "copy", "garden-0003")
    assert not any(b"garden-0003" in path.read_bytes() for path in copy.rglob("*") if path.is_file())
