"""Many machines say what one machine says: tables of ``tussock.spark`` beside those of ``tussock batch run``, cell by cell.

The engine is Apache Spark with two executor threads; workers are processes. Gardens are invented, with logs that come late,
twice, cut off, damaged or not at all.
"""

import json
import os
import shutil
import subprocess
import sys

import duckdb
import pyarrow
import pyarrow.parquet
import pytest
from pyspark.sql import SparkSession

import tussock
from tussock import _tussock

#: A name that is no pattern.
PLACE = "gardens [of 2026]"
#: 2026-06-30T20:00:00Z: after all nights that are invented here.
NOW_UNIX_S = 1_782_849_600.0
TABLES = ("logs", "nights", "pockets", "stuck_spots", "suggestions", "failures", "gardens")


@pytest.fixture(scope="module")
def spark(tmp_path_factory):
    # The engine's Python is ours.
    os.environ["PYSPARK_PYTHON"] = sys.executable
    session = (
        SparkSession.builder.master("local[2]")
        .appName("tussock")
        .config("spark.ui.enabled", "false")
        .config("spark.driver.memory", "1g")
        .config("spark.driver.bindAddress", "127.0.0.1")
        .config("spark.driver.host", "127.0.0.1")
        # Few rows: what makes many rows fast only takes time here.
        .config("spark.driver.extraJavaOptions", "-XX:TieredStopAtLevel=1")
        .config("spark.sql.codegen.wholeStage", "false")
        .config("spark.sql.adaptive.enabled", "false")
        .config("spark.sql.sources.parallelPartitionDiscovery.threshold", "1000")
        .config("spark.sql.shuffle.partitions", "2")
        .config("spark.ui.showConsoleProgress", "false")
        .config("spark.sql.warehouse.dir", str(tmp_path_factory.mktemp("warehouse")))
        .getOrCreate()
    )
    yield session
    session.stop()


def command(*words, codes=(0,)):
    done = subprocess.run([os.environ["TUSSOCK"], *map(str, words)], capture_output=True, text=True)
    assert done.returncode in codes, done.stderr
    return done.stdout


def batch(place, store):
    """What the command says that it did; failures of logs are told by its exit code too."""
    told = command("batch", "run", place, "--store", store, "--no-suggestions", "--format", "json", codes=(0, 3))
    return json.loads(told)


def alive(store):
    """The files that count."""
    return json.loads((store / "tussock-store.json").read_text())["tables"]


def table(store, name):
    """All rows of a table as the store's list has them, sorted by every cell; with their night."""
    rows = []
    for one in alive(store)[name]:
        for row in pyarrow.parquet.read_table(store / one["file"], partitioning=None).to_pylist():
            rows.append({"night": one["night"], **row})
    return sorted(rows, key=lambda row: [(cell is not None, cell if cell is not None else 0) for cell in row.values()])


def types(store, name):
    schema = pyarrow.parquet.read_schema(store / alive(store)[name][0]["file"])
    return [(field.name, field.type) for field in schema]


def different(one, other):
    """Every cell in which two stores differ: table, row, column and both values."""
    found = []
    for name in TABLES:
        rows, others = table(one, name), table(other, name)
        if len(rows) != len(others):
            found.append((name, len(rows), len(others)))
        for at, (row, beside) in enumerate(zip(rows, others)):
            assert list(row) == list(beside)
            # repr tells 0.0 from -0.0, and 1 from 1.0.
            found += [(name, at, key, row[key], beside[key]) for key in row if repr(row[key]) != repr(beside[key])]
    return found


def lay(source, place):
    """Logs from one folder into the gardens of another, with their times."""
    for log in sorted(source.rglob("*.gpx")):
        target = place / log.relative_to(source)
        target.parent.mkdir(parents=True, exist_ok=True)
        shutil.copy2(log, target)


@pytest.fixture(scope="module")
def load(tmp_path_factory):
    """A dozen gardens and three nights, some with troubles; more than every third log has something wrong with it."""
    folder = tmp_path_factory.mktemp("load") / "load"
    command(
        *"simulate gardens --count 12 --nights 3 --hours 0.3 --period 3s --area 100-160 --troubled 50 --faulty 40".split(),
        "--seed", 3, "--out", folder,
    )  # fmt: skip
    fates = [log["fate"] for garden in json.loads((folder / "truth.json").read_text())["gardens"] for log in garden["logs"]]
    assert {"late", "twice", "absent"} < set(fates), fates
    return folder


@pytest.fixture(scope="module")
def both(load, spark, tmp_path_factory):
    """The first two nights, then the rest with what was late: by batch, by Spark, and by Spark after batch."""
    folder = tmp_path_factory.mktemp("both")
    place = folder / PLACE
    shutil.copytree(load / "gardens", place)
    # One garden's logs stand in a folder of their machine, and their names are not plain.
    moved = place / "garden-0002" / "logs"
    (moved / "left one").mkdir()
    for log in sorted(moved.glob("*.gpx")):
        log.rename(moved / "left one" / f"{log.stem} 100%.gpx")
    (place / "garden-0001" / "logs" / "night-009.gpx").write_bytes(b"%PDF-1.7 no log")
    (place / "gardens.toml").write_text('expected = ["monday", "friday"]\nrests = ["2026-11-01/2027-03-15"]\n')
    later = folder / "later"
    for log in sorted(place.rglob("*.gpx")):
        if "night-002" in log.name:
            target = later / log.relative_to(place)
            target.parent.mkdir(parents=True, exist_ok=True)
            log.rename(target)
    told = {"batch": batch(place, folder / "batch"), "spark": tussock.spark.run(spark, place, folder / "spark")}
    shutil.copytree(folder / "batch", folder / "after batch")
    shutil.copytree(folder / "batch", folder / "batch, first")
    shutil.copytree(folder / "spark", folder / "spark, first")
    lay(later, place)
    for night in sorted((load / "late").iterdir()):
        lay(night, place)
    settings = place / "garden-0004" / "settings.toml"
    settings.write_text(settings.read_text() + "\n[promise]\nvisited_fraction = 0.9\n")
    told["batch, second"] = batch(place, folder / "batch")
    told["spark, second"] = tussock.spark.run(spark, place, folder / "spark")
    told["after batch"] = tussock.spark.run(spark, place, folder / "after batch")
    return folder, told


def test_a_first_run_gives_the_tables_of_batch(both):
    folder, told = both
    assert different(folder / "batch, first", folder / "spark, first") == []
    assert told["spark"].failures >= 1
    assert len(table(folder / "spark, first", "nights")) >= 15
    assert len(table(folder / "spark, first", "pockets")) >= 5
    assert table(folder / "spark, first", "failures")


@pytest.mark.parametrize("store", ["spark", "after batch"])
def test_a_second_run_goes_on_from_the_first_and_from_batch(both, store):
    folder, _ = both
    assert different(folder / "batch", folder / store) == []
    firsts = {(row["garden"], row["night"]): row["key"] for row in table(folder / "batch, first", "nights")}
    now = {(row["garden"], row["night"]): row["key"] for row in table(folder / store, "nights")}
    assert len(now) > len(firsts) + 5
    # Pieces that came late and settings that changed: nights of the first run that were analysed again.
    assert any(now[night] != key for night, key in firsts.items())


def test_it_says_of_itself_what_the_command_says(both):
    _, told = both
    for one, other in (("batch", "spark"), ("batch, second", "spark, second"), ("batch, second", "after batch")):
        ours = told[other].to_dict()
        # How rows are spread over files is the engine's.
        assert {**ours, "files": None} == {**told[one], "files": None}


def test_columns_and_types_are_those_of_batch(both):
    folder, _ = both
    for name in TABLES:
        if table(folder / "batch", name):
            assert types(folder / "batch", name) == types(folder / "spark", name)


def test_a_value_that_differs_is_found(both, tmp_path):
    folder, _ = both
    store = shutil.copytree(folder / "spark", tmp_path / "changed")
    file = store / alive(store)["nights"][0]["file"]
    rows = pyarrow.parquet.read_table(file, partitioning=None)
    at = rows.schema.get_field_index("missed_m2")
    values = rows.column(at).to_pylist()
    values[0] += 1e-12
    pyarrow.parquet.write_table(rows.set_column(at, "missed_m2", pyarrow.array(values)), file)
    assert [cell[2] for cell in different(folder / "batch", store)] == ["missed_m2"]


def test_a_third_run_finds_nothing_new_and_batch_reads_the_store(both, spark):
    folder, _ = both
    place = folder / PLACE
    before = {path: path.stat().st_mtime_ns for path in (folder / "spark").rglob("*.parquet")}
    # What a killed run left.
    left = folder / "spark" / "nights" / ".staged-0" / "night=2026-05-01" / "part-0.parquet"
    left.parent.mkdir(parents=True)
    left.write_bytes(b"half")
    again = tussock.spark.run(spark, place, folder / "spark")
    assert (again.with_news, again.logs, again.nights) == (0, 0, 0)
    assert not left.exists()
    assert {path: path.stat().st_mtime_ns for path in (folder / "spark").rglob("*.parquet")} == before
    mornings = [
        command("batch", "report", folder / store, "--date", "2026-05-03", "--format", "json") for store in ("batch", "spark")
    ]
    assert mornings[0] == mornings[1]
    told = batch(place, shutil.copytree(folder / "spark", folder / "spark, then batch"))
    assert (told["with_news"], told["failures"]) == (0, 0)


def test_the_questions_of_the_paper_are_answered(both):
    folder, _ = both
    connection = duckdb.connect()
    connection.execute(f"SET file_search_path = '{folder / 'spark'}'")
    found = connection.execute(
        "SELECT night, count(*) FROM read_parquet('nights/*/*.parquet', hive_partitioning = true) GROUP BY night ORDER BY night"
    ).fetchall()
    rows = table(folder / "batch", "nights")
    nights = sorted({row["night"] for row in rows})
    assert [(str(night), count) for night, count in found] == [
        (night, sum(row["night"] == night for row in rows)) for night in nights
    ]
    # Between runs there are no other files, and a snapshot holds what counts; the one before it stays for those who still read it.
    store = folder / "spark"
    listed = {one["file"] for files in alive(store).values() for one in files}

    def files_in(place):
        return {path.relative_to(place) for path in place.rglob("*") if path.is_file()}

    there = {str(path) for path in files_in(store) if path.parts[0] not in ("snapshot", "snapshots")}
    assert there == listed | {"tussock-store.json", ".tussock-lock"}
    assert {str(path) for path in files_in((store / "snapshot").resolve())} == listed
    assert len(list((store / "snapshots").iterdir())) <= 2


def test_one_damaged_log_is_a_row_of_failures_and_the_rest_stands(both):
    folder, _ = both
    rows = table(folder / "spark", "failures")
    found = {(row["garden"], row["what"]): (row["reason"], len(row["sha256"])) for row in rows}
    assert found["garden-0001", "garden-0001/logs/night-009.gpx"] == ("damaged", 64)
    assert [row for row in table(folder / "spark", "nights") if row["garden"] == "garden-0001"]


@pytest.fixture
def three(load, tmp_path):
    """Three gardens with a sound first night each."""
    truth = json.loads((load / "truth.json").read_text())["gardens"]
    sound = [garden["garden"] for garden in truth if garden["logs"][0]["fate"] == "whole"]
    place = tmp_path / "gardens"
    for source, name in zip(sound, ("garden-0001", "garden-0003", "garden-0005"), strict=False):
        shutil.copytree(load / "gardens" / source, place / name)
        for log in (place / name / "logs").iterdir():
            if log.name != "night-000.gpx":
                log.unlink()
    return place


def partition(gardens, time_limit_s=120.0, memory_limit_mib=1024):
    """What the engine hands to one machine."""
    from tussock import spark

    schema = pyarrow.schema([("garden", "string"), ("text", "string"), ("step", "int32"), ("path", "string"), ("content", "binary")])
    rows = []
    for garden in gardens:
        found = []
        for path in sorted(garden.rglob("*")):
            if path.is_file():
                about = path.stat()
                found.append([f"{garden.name}/{path.relative_to(garden)}", about.st_size, about.st_mtime_ns // 1_000_000])
        _, _, listed = _tussock.batch_lookout([tuple(one) for one in found], None)
        rows.append({"garden": garden.name, "step": 0, "text": json.dumps({"garden": listed[0][1], "files": found})})
        for path, _, _ in found:
            rows.append({"garden": garden.name, "step": 2, "path": path, "content": (garden.parent / path).read_bytes()})
    batches = [pyarrow.RecordBatch.from_pylist([row], schema=schema) for row in rows]
    limits = (time_limit_s, memory_limit_mib)
    answers = spark._work(iter(batches), clock=(NOW_UNIX_S, 12, 730), limits=limits, is_last=True)
    return pyarrow.Table.from_batches(answers).to_pylist()


def put(answers, name):
    return [row[name] for row in answers if row["change"] == "put" and row["table"] == name]


def test_a_worker_that_wants_too_much_memory_ends_that_log_alone(three):
    # As many fixes as the limits of a log let in.
    lines = (b"2026-05-01T%02d:%02d:%02dZ,47.0,8.%06d\n" % (n // 3600, n // 60 % 60, n % 60, n) for n in range(86_400))
    (three / "garden-0003" / "logs" / "large.csv").write_bytes(b"time,lat,lon\n" + b"".join(lines) * 16)
    answers = partition(sorted(three.iterdir()), memory_limit_mib=96)
    assert [(row["garden"], row["what"], row["reason"]) for row in put(answers, "failures")] == [
        ("garden-0003", "garden-0003/logs/large.csv", "memory")
    ]
    assert [row["garden"] for row in put(answers, "nights")] == ["garden-0001", "garden-0003", "garden-0005"]


def test_a_worker_that_takes_too_long_is_ended_and_the_next_begins(three):
    answers = partition(sorted(three.iterdir()), time_limit_s=0.001)
    assert {(row["garden"], row["reason"]) for row in put(answers, "failures")} == {
        (garden.name, "time") for garden in three.iterdir()
    }


def test_a_garden_whose_code_raises_does_not_end_the_others(three, monkeypatch):
    class Stumbling:
        def __init__(self, *words):
            self.hand = _tussock.Hand(*words)

        def garden(self, folder, garden, *others):
            if "garden-0003" in garden:
                raise RuntimeError("the grass is wet")
            return self.hand.garden(folder, garden, *others)

    class Fake:
        def __getattr__(self, name):
            return Stumbling if name == "Hand" else getattr(_tussock, name)

    monkeypatch.setattr("tussock.spark._tussock", Fake())
    answers = partition(sorted(three.iterdir()))
    failed = put(answers, "failures")
    assert [(row["garden"], row["what"], row["reason"], row["detail"]) for row in failed] == [
        ("garden-0003", "garden", "died", "RuntimeError: the grass is wet")
    ]
    assert [row["garden"] for row in put(answers, "nights")] == ["garden-0001", "garden-0005"]


def test_a_night_that_had_not_begun_is_set_apart_and_named(three):
    log = next((three / "garden-0005" / "logs").iterdir())
    ahead = log.parent / "ahead.gpx"
    ahead.write_text(log.read_text().replace("2026-05-0", "2027-05-0"))
    for path in (log, ahead):
        os.utime(path, (NOW_UNIX_S, NOW_UNIX_S))
    answers = partition([three / "garden-0005"])
    assert [(row["what"], row["reason"]) for row in put(answers, "failures")] == [("garden-0005/logs/ahead.gpx", "clock")]
    assert len(put(answers, "nights")) == 1
    assert sorted(row["nights"] == "" for row in put(answers, "logs")) == [False, True]


def test_a_link_that_leads_out_of_the_gardens_ends_the_run(spark, three, tmp_path):
    log = next((three / "garden-0005" / "logs").iterdir())
    log.rename(tmp_path / "elsewhere.gpx")
    log.symlink_to(tmp_path / "elsewhere.gpx")
    with pytest.raises(tussock.BatchError, match="leads out of"):
        tussock.spark.run(spark, three, tmp_path / "store")


def test_what_cannot_be_used_is_told(spark, tmp_path):
    with pytest.raises(tussock.BatchError, match="expected a folder that all machines see"):
        tussock.spark.run(spark, tmp_path, "s3a://bucket/store")
    with pytest.raises(tussock.BatchError, match="cannot be listed"):
        tussock.spark.run(spark, tmp_path / "nowhere", tmp_path / "store")
    foreign = tmp_path / "foreign"
    foreign.mkdir()
    (foreign / "letter.txt").write_text("dear")
    with pytest.raises(tussock.BatchError, match="is no store"):
        tussock.spark.run(spark, tmp_path, foreign)
    assert [path.name for path in foreign.iterdir()] == ["letter.txt"]
    (tmp_path / "gardens.toml").write_text("widht = 3")
    with pytest.raises(tussock.BatchError, match="unknown field `widht`"):
        tussock.spark.run(spark, tmp_path, tmp_path / "store")


def test_the_manifest_may_list_the_gardens_and_say_how_long_nights_are_kept(spark, three, tmp_path):
    """Plans and settings that are shared, logs elsewhere, a machine by name, old nights."""
    (three / "plans").mkdir()
    (three / "garden-0005" / "plan.geojson").rename(three / "plans" / "5.geojson")
    (three / "gardens.toml").write_text(
        "night_turns_at_h = 3\nretention_days = 15\n"
        '[[garden]]\nname = "Villa 17"\nplan = "plans/5.geojson"\nsettings = "garden-0001/settings.toml"\n'
        'logs = "garden-0005/logs/"\nmachine = "left"\nexpected = ["monday"]\n'
        '[[garden]]\nname = "twin"\nplan = "plans/5.geojson"\nlogs = "./garden-0005/logs"\n'
        '[[garden]]\nname = "without plan"\nlogs = "garden-0001/logs"\n[[garden]]\nname = "nowhere"\n'
    )
    log = next((three / "garden-0005" / "logs").iterdir())
    (log.parent / "old.gpx").write_text(log.read_text().replace("2026-05-0", "2026-03-0"))
    told = tussock.spark.run(spark, three, tmp_path / "spark")
    assert told.expired_rows == batch(three, tmp_path / "batch")["expired_rows"] > 0
    assert different(tmp_path / "batch", tmp_path / "spark") == []
    rows = table(tmp_path / "spark", "nights")
    assert [(row["garden"], row["night"]) for row in rows] == [("Villa 17", "2026-05-01"), ("twin", "2026-05-01")]
    # What is kept is known again, whatever its path looks like.
    (log.parent / "old.gpx").unlink()
    again, other = tussock.spark.run(spark, three, tmp_path / "spark"), batch(three, tmp_path / "batch")
    assert (again.with_news, again.logs, again.nights) == (other["with_news"], other["logs"], other["nights"]) == (1, 0, 0)
    assert different(tmp_path / "batch", tmp_path / "spark") == []
    assert [(row["garden"], row["what"]) for row in table(tmp_path / "spark", "failures")] == [("without plan", "plan")]


def test_two_runs_at_once_do_not_write_into_one_store(spark, three, tmp_path):
    held = _tussock.Store(tmp_path / "store")
    with pytest.raises(tussock.BatchError, match="another run is writing") as caught:
        tussock.spark.run(spark, three, tmp_path / "store")
    assert caught.value.kind == "in_use"
    held.close()
    # And one that is closed says so.
    with pytest.raises(tussock.BatchError, match="closed"):
        held.count()
