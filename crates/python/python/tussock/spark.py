"""Many gardens on many machines, by Apache Spark: which of them need a visit?

>>> import tussock
>>> from pyspark.sql import SparkSession  # doctest: +SKIP
>>> spark = SparkSession.builder.getOrCreate()  # doctest: +SKIP
>>> tussock.spark.run(spark, "s3a://mowers/gardens", "/mnt/all/store").nights  # doctest: +SKIP
11874

The same gardens, the same code and the same tables as ``tussock batch run --no-suggestions``: the engine reads the files
(``binaryFile``), brings those of a garden together, works through the gardens on all its machines (``mapInArrow``) and writes the
tables, by night where they have nights, as Parquet. ``docs/store.md`` tells the folders of the gardens, the tables and what differs.

Exact: every cell of every table is that of ``batch run``; only how rows are spread over files differs. A log that hangs, wants too
much memory or ends its worker process is a row of ``failures``, and so is a garden that cannot be worked through; the job goes on.

Cost: each new log is read once and sent once from machine to machine. Known logs are not read, unless a night that has a new
piece needs them. The driver holds the list of files, and copies what was written into the store in one step.
"""

from __future__ import annotations

import os
import functools
import json
import posixpath
import re
import shutil
import sys
import tempfile
import time
import uuid
from collections.abc import Callable, Iterable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from . import _asked, _tussock, fields
from ._errors import BatchError
from ._inputs import PathLike
from ._record import wrapped

if TYPE_CHECKING:
    import pyarrow
    import pyspark.sql

__all__ = ["run"]

#: Tables with whether they are kept by night, and their columns with what they hold.
_TABLES: dict[str, tuple[bool, dict[str, str]]] = {
    name: (by_night, dict(columns)) for name, by_night, columns in _tussock.batch_tables()
}
#: What is looked up before a garden is worked through. Of nights these columns are enough.
_KNOWN: dict[str, Sequence[str]] = {
    "logs": (),
    "nights": ("garden", "key", "plan_sha256"),
    "pockets": (),
    "failures": (),
    "gardens": (),
}
_MANIFEST = "gardens.toml"
_STAGED = ".staged-"
#: Rows of a file, at most, and of one with rolling states: as in files that ``batch run`` joins.
_FILE_ROWS = 50_000
_STATE_FILE_ROWS = 2_000
#: A log of more bytes is not read, but told: Spark would give up the whole job over one of 2 GiB.
_LONGEST_BYTES = 1 << 30
#: Each worker is one of many: threads of its own would only push each other aside. It finds this module where we found it.
_WORKER = (
    "import os, sys; os.environ['RAYON_NUM_THREADS'] = '1'; sys.path[:] = {path!r}; "
    "from tussock import _tussock; _tussock.batch_worker({memory_limit_mib})"
)

_File = tuple[str, int, int]


def run(
    spark: pyspark.sql.SparkSession,
    gardens: PathLike,
    store: PathLike,
    *,
    time_limit_s: float = 120.0,
    memory_limit_mib: int = 1024,
    partitions: int | None = None,
    now_unix_s: float | None = None,
    expire_at_most_fraction: float = 1 / 3,
) -> fields.ShiftDone:
    """Works through all gardens that have something new, and writes what was found into the tables of the store.

    ``gardens`` is a folder or anything else that Spark reads (``s3a://``, ``hdfs://``), laid out as for ``tussock batch run``;
    ``store`` is a folder that the driver and all executors see under the same path, new or of an earlier run by ``batch`` or by this
    function. Suggestions are left to ``batch run``. A log or night may take ``time_limit_s``, a worker process ``memory_limit_mib``.
    Gardens are dealt into ``partitions``, by default as many as ``spark.sql.shuffle.partitions`` says. ``tussock`` needs to be installed on
    all machines.

    A night later than its file and than ``now_unix_s`` (by default the driver's clock) is set aside and named, and nights are old from the
    newest that this time allows. Where more than ``expire_at_most_fraction`` of the nights would be too old, none is taken away and
    :class:`BatchError` is raised (``kind`` is ``expires_too_much``); what was found is kept.

    Gives what was done: ``gardens``, ``with_news``, ``logs``, ``nights``, ``failures``, ``expired_rows``, ``files``. Raises
    :class:`BatchError` where the place or the store cannot be used, or a link leads out of a local place; the store is then as it was.
    """
    if not hasattr(spark, "createDataFrame"):
        raise _asked.refused(BatchError, "spark", spark, "a SparkSession", "value")
    _asked.number(BatchError, "time_limit_s", time_limit_s, 0.001)
    _asked.whole(BatchError, "memory_limit_mib", memory_limit_mib, 1, 1 << 30)
    if partitions is not None:
        _asked.whole(BatchError, "partitions", partitions, 1)
    path = _asked.path(BatchError, "store", store)
    if re.match(r"[A-Za-z][A-Za-z0-9+.-]*://", path):
        raise BatchError(f"{path}: expected a folder that all machines see", "no_folder", "mount it, and give its path")
    folder = Path(path).absolute()
    place = _asked.path(BatchError, "gardens", gardens)
    if not re.match(r"[A-Za-z][A-Za-z0-9+.-]*:", place):
        place = f"file://{Path(place).absolute()}"
    limits = (time_limit_s, memory_limit_mib)
    now_s = time.time() if now_unix_s is None else now_unix_s
    open_store = _tussock.Store(folder)
    try:
        _swept(folder)
        return _Shift(spark, place, folder, open_store, limits, partitions, now_s).run(expire_at_most_fraction)
    finally:
        _swept(folder)
        open_store.close()


def _swept(folder: Path) -> None:
    """Takes away what a killed run left lying; the store is ours meanwhile."""
    for name in _TABLES:
        for left in folder.glob(f"{name}/{_STAGED}*"):
            shutil.rmtree(left, ignore_errors=True)
        try:
            # A table that never had a row has no folder.
            (folder / name).rmdir()
        except OSError:
            pass


def _literal(path: str) -> str:
    """A path whose brackets and stars Spark takes as they are."""
    return re.sub(r"([\\*?{}\[\]^])", r"\\\1", path)


def _bare(path: str) -> str:
    """A path without what names the file system."""
    return re.sub(r"^[A-Za-z][A-Za-z0-9+.-]*:(//[^/]*)?", "", path)


def _inside(path: str, real: Callable[[str], str], root: str) -> bool:
    """Whether a local file lies below a folder; folders are looked up once."""
    folder, name = os.path.split(path)
    lies = os.path.join(real(folder), name)
    return (os.path.realpath(lies) if os.path.islink(lies) else lies).startswith(real(root).rstrip("/") + "/")


class _Shift:
    """One run, on the driver."""

    def __init__(
        self,
        spark: pyspark.sql.SparkSession,
        place: str,
        folder: Path,
        store: _tussock.Store,
        limits: tuple[float, int],
        partitions: int | None,
        now_unix_s: float,
    ) -> None:
        from pyspark.errors import AnalysisException

        self.spark = spark
        self.place = place
        self.folder = folder
        self.store = store
        self.limits = limits
        try:
            self.files = (
                spark.read.format("binaryFile")
                .option("recursiveFileLookup", True)
                .option("ignoreCorruptFiles", True)
                .option("ignoreMissingFiles", True)
                .load(_literal(place))
            )
        except AnalysisException as error:
            raise BatchError(f"{place}: cannot be listed: {error}", "bucket") from error
        found, names = self._listed()
        self.found: dict[str, _File] = {one[0]: one for one in found}
        #: Paths below the place to what Spark calls the file.
        self.names = names
        manifest = self._content(_MANIFEST) if _MANIFEST in self.found else None
        of_nights, self.retention_days, listed = _tussock.batch_lookout(found, manifest)
        self.clock = (now_unix_s, *of_nights)
        self.gardens = {name: (garden, setup, logs) for name, garden, setup, logs in listed}
        shuffled = int(str(spark.conf.get("spark.sql.shuffle.partitions")))
        self.partitions = max(1, min(len(self.gardens), partitions or shuffled))

    def _listed(self) -> tuple[list[_File], dict[str, str]]:
        from pyspark.sql import functions

        listed = self.files.select(
            functions.col("path"),
            functions.col("length"),
            functions.unix_millis("modificationTime").alias("modified_unix_ms"),
            functions.col("_metadata.file_path").alias("name"),
        ).toArrow().to_pydict()
        root = _bare(self.place).rstrip("/") + "/"
        is_local = self.place.startswith("file:")
        real = functools.cache(os.path.realpath)
        found: list[_File] = []
        names = {}
        for path, length, modified_unix_ms, name in zip(*listed.values()):
            below = _bare(path)
            if not below.startswith(root):
                raise BatchError(f"{path}: is listed in {self.place}, expected to lie below {root}", "place")
            # A file has to lie where it is listed, once all links are followed.
            if is_local and not _inside(below, real, root):
                raise BatchError(f"{below}: leads out of {root}, expected something inside", "place")
            below = below[len(root) :]
            found.append((below, length, modified_unix_ms))
            names[below] = name
        found.sort()
        return found, names

    def _content(self, below: str) -> bytes | None:
        from pyspark.sql import functions

        named = functions.col("_metadata.file_path") == self.names[below]
        row = self.files.where(named).select("content").first()
        return None if row is None else bytes(row[0])

    # What is in the store.

    def _stored(self, table: str, nights: set[str | None] | None = None) -> pyspark.sql.DataFrame | None:
        """Rows of a table, of some nights or all; with a column ``night``, null where the table has none."""
        from pyspark.sql import functions

        by_night, _ = _TABLES[table]
        files = [str(path) for night, path in self.store.files(table) if nights is None or night in nights]
        if not files:
            return None
        schema = _spark_struct(table)
        if by_night:
            schema = schema.add("night", "string")
        rows = (
            self.spark.read.schema(schema)
            .option("basePath", f"file://{self.folder}/{table}")
            .parquet(*(_literal(f"file://{file}") for file in files))
        )
        return rows if by_night else rows.withColumn("night", functions.lit(None).cast("string"))

    def _is_known(self) -> set[tuple[str, str, int, int]]:
        """Logs that are not read again: garden, path, bytes, last change."""
        from pyspark.sql import functions

        out: set[tuple[str, str, int, int]] = set()
        for table, name in (("logs", "log"), ("failures", "what")):
            rows = self._stored(table)
            if rows is None:
                continue
            if table == "failures":
                rows = rows.where(
                    (functions.col("reason") != "unreadable")
                    & (functions.col("tool_version") == _tussock.TOOL_VERSION)
                )
            columns = rows.select("garden", name, "bytes", "modified_unix_ms").toArrow().to_pydict().values()
            out.update(
                (garden, posixpath.normpath(log), length, modified)
                for garden, log, length, modified in zip(*columns)
            )
        return out

    # What is sent to the machines, and what comes back.

    def _sent(self, gardens: Iterable[str], wanted: set[tuple[str, str]]) -> pyspark.sql.DataFrame:
        """What each garden is, what is known of it, and the files of it that are wanted, one below the other."""
        import pyarrow
        from pyspark.sql import functions

        names = list(gardens)
        briefs = []
        for name in names:
            garden, setup, logs = self.gardens[name]
            paths = sorted({*setup, *(plain for _, plain in logs)})
            files = [self.found[one] for one in paths if one in self.found]
            briefs.append(json.dumps({"garden": garden, "files": files}))
        chosen = pyarrow.table({"garden": pyarrow.array(names, "string"), "text": pyarrow.array(briefs, "string")})
        sent = self.spark.createDataFrame(chosen).withColumn("step", functions.lit(0))
        pairs = sorted(pair for pair in wanted if self.found[pair[1]][1] <= _LONGEST_BYTES)
        if pairs:
            links = self.spark.createDataFrame(
                pyarrow.table(
                    {
                        "garden": pyarrow.array([garden for garden, _ in pairs], "string"),
                        "path": pyarrow.array([path for _, path in pairs], "string"),
                        "name": pyarrow.array([self.names[path] for _, path in pairs], "string"),
                    }
                )
            )
            contents, file = self.files, functions.col("_metadata.file_path")
            read = {self.names[path] for _, path in pairs}
            if len(read) < len(self.found):
                # So that the others are not opened.
                contents = contents.where(file.isin(sorted(read)))
            named = contents.select(file.alias("name"), functions.col("content"))
            brought = named.join(functions.broadcast(links), "name").drop("name")
            sent = sent.unionByName(brought.withColumn("step", functions.lit(2)), allowMissingColumns=True)
        few = None if len(names) == len(self.gardens) else names
        for table, columns in _KNOWN.items():
            rows = self._stored(table)
            if rows is None:
                continue
            if few is not None:
                rows = rows.where(functions.col("garden").isin(few))
            row = functions.struct(*(columns or _TABLES[table][1])).alias(table)
            known = rows.select("garden", "night", functions.lit(table).alias("table"), row)
            sent = sent.unionByName(known.withColumn("step", functions.lit(1)), allowMissingColumns=True)
        return sent

    def _worked(self, sent: pyspark.sql.DataFrame, is_last: bool) -> pyspark.sql.DataFrame:
        from pyspark import StorageLevel

        by_machine = sent.repartition(self.partitions, "garden").sortWithinPartitions("garden", "step")
        work = functools.partial(_work, clock=self.clock, limits=self.limits, is_last=is_last)
        return by_machine.mapInArrow(work, _spark_answer()).persist(StorageLevel.MEMORY_AND_DISK)

    def run(self, expire_at_most_fraction: float) -> fields.ShiftDone:
        from pyspark.sql import functions

        known = self._is_known()
        wanted: set[tuple[str, str]] = set()
        for name, (_, setup, logs) in self.gardens.items():
            wanted.update((name, path) for path in setup if path in self.found)
            for _, path in logs:
                if (name, *self.found[path]) not in known:
                    wanted.add((name, path))
        held = []
        try:
            answers = self._worked(self._sent(self.gardens, wanted), is_last=False)
            held.append(answers)
            told = answers.where(functions.col("change").isin("done", "absent")).select("garden", "change", "text").collect()
            again = sorted(row[0] for row in told if row[1] == "absent")
            if again:
                # Nights that have a new piece, or settings that are new: their other logs are needed as well.
                for name in again:
                    _, setup, logs = self.gardens[name]
                    wanted.update((name, path) for path in [*setup, *(plain for _, plain in logs)] if path in self.found)
                of_them = {pair for pair in wanted if pair[0] in set(again)}
                second = self._worked(self._sent(again, of_them), is_last=True)
                held.append(second)
                told += second.where(functions.col("change") == "done").select("garden", "change", "text").collect()
                answers = answers.unionByName(second)
            done = [json.loads(row[2]) for row in told if row[1] == "done"]
            self._write(answers, {tuple(part) for one in done for part in one["parts"]})
        finally:
            for one in held:
                one.unpersist()
        expired = self.store.expire(self.retention_days, self.clock, expire_at_most_fraction)
        sums = {key: sum(one[key] for one in done) for key in ("with_news", "logs", "nights", "failures")}
        count = {"gardens": len(self.gardens), **sums, "expired_rows": expired, "files": self.store.count()}
        shift: fields.ShiftDone = wrapped(count)
        return shift

    def _write(self, answers: pyspark.sql.DataFrame, parts: set[tuple[Any, ...]]) -> None:
        """Writes every part of every table that changes beside the store, then has the store take all of it in."""
        from pyspark.sql import functions

        renewed: list[tuple[str, str | None]] = []
        written: list[tuple[tuple[str, str | None], Path]] = []
        staged = f"{_STAGED}{uuid.uuid4().hex}"
        for table, (by_night, columns) in _TABLES.items():
            there = {night for night, _ in self.store.files(table)}
            renewing: set[str | None] = {
                night for name, night, change in parts if name == table and (change == "put" or night in there)
            }
            if not renewing:
                continue
            rows = answers.where(
                (functions.col("change") == "put") & (functions.col("table") == table)
            ).select(f"{table}.*", "night")
            stored = self._stored(table, renewing)
            if stored is not None:
                gone = answers.where(
                    (functions.col("change") == "drop") & (functions.col("table") == table)
                ).select(
                    functions.col("garden").alias("gone_garden"),
                    functions.col("night").alias("gone_night"),
                    functions.col("text").alias("gone_second"),
                )
                second = list(columns)[1]
                is_gone = (
                    (stored["garden"] == gone["gone_garden"])
                    & stored["night"].eqNullSafe(gone["gone_night"])
                    & (gone["gone_second"].isNull() | (stored[second] == gone["gone_second"]))
                )
                rows = rows.unionByName(stored.join(gone, is_gone, "left_anti"))
            order = [name for name in columns if name != "last_visits"]
            if by_night:
                count = max(1, min(len(renewing), self.partitions))
                rows = rows.repartition(count, "night").sortWithinPartitions("night", *order)
            else:
                rows = rows.drop("night").coalesce(1).sortWithinPartitions(*order)
            writer = rows.write.option("compression", "zstd").option(
                "maxRecordsPerFile", _FILE_ROWS if by_night else _STATE_FILE_ROWS
            )
            if by_night:
                writer = writer.partitionBy("night")
            target = self.folder / table / staged
            writer.parquet(f"file://{target}")
            for file in sorted(target.rglob("part-*.parquet")):
                night = file.parent.name.removeprefix("night=") if by_night else None
                written.append(((table, night), file))
            renewed += [(table, night) for night in renewing]
        if renewed:
            self.store.adopt(renewed, written)


# What is done on the machines.


def _work(
    batches: Iterable[pyarrow.RecordBatch], clock: tuple[float, int, int], limits: tuple[float, int], is_last: bool
) -> Iterator[pyarrow.RecordBatch]:
    """Works through the gardens of a partition. Rows come garden by garden: itself, what is known, its files."""
    time_limit_s, memory_limit_mib = limits
    if not sys.executable:
        raise BatchError("no program is known that runs this Python, expected one to start workers", "no_worker")
    program = _WORKER.format(path=sys.path, memory_limit_mib=memory_limit_mib)
    hand = _tussock.Hand(sys.executable, ["-c", program], time_limit_s)
    one: _Brought | None = None
    with tempfile.TemporaryDirectory(prefix="tussock-") as folder:
        for batch in batches:
            for row in batch.to_pylist():
                if one is None or one.name != row["garden"]:
                    if one is not None:
                        yield one.worked(hand, clock, is_last)
                    one = _Brought(row["garden"], Path(folder) / "garden")
                one.take(row)
        if one is not None:
            yield one.worked(hand, clock, is_last)


class _Brought:
    """One garden that was brought to a machine."""

    def __init__(self, name: str, folder: Path) -> None:
        self.name = name
        self.folder = folder
        self.garden = ""
        self.files: list[_File] = []
        self.known: list[tuple[str, str | None, dict[str, Any]]] = []
        shutil.rmtree(folder, ignore_errors=True)
        folder.mkdir()

    def take(self, row: dict[str, Any]) -> None:
        if row["step"] == 0:
            brief = json.loads(row["text"])
            self.garden = brief["garden"]
            self.files = [tuple(file) for file in brief["files"]]
        elif row["step"] == 1:
            self.known.append((row["table"], row["night"], row[row["table"]]))
        else:
            path = self.folder / row["path"]
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(row["content"])

    def worked(self, hand: _tussock.Hand, clock: tuple[float, int, int], is_last: bool) -> pyarrow.RecordBatch:
        import pyarrow

        try:
            found = hand.garden(str(self.folder), self.garden, clock, self.files, self.known, is_last)
        except Exception as error:
            if getattr(error, "kind", "") == "no_worker":
                raise
            # Whatever it was, it is this garden's alone.
            found = _tussock.batch_gave_up(
                self.garden, clock, self.files, self.known, f"{type(error).__name__}: {error}"
            )
        rows: list[dict[str, Any]] = []
        for table, night, row in found.pop("put"):
            rows.append({"change": "put", "table": table, "night": night, table: row})
        for table, night, second in found.pop("drop"):
            rows.append({"change": "drop", "table": table, "night": night, "text": second})
        found["parts"] = sorted(
            {(row["table"], row["night"], row["change"]) for row in rows}, key=lambda part: (part[0], part[1] or "", part[2])
        )
        absent = found.pop("absent")
        rows.append({"change": "absent" if absent else "done", "text": json.dumps(absent or found)})
        schema = _arrow_answer()
        return pyarrow.RecordBatch.from_pylist([{"garden": self.name, **row} for row in rows], schema=schema)


# Types, in the words of Spark and of Arrow.

_SPARK_TYPES = {"text": "string", "count": "long", "number": "double", "packed": "binary"}
_ARROW_TYPES = {"text": "string", "count": "int64", "number": "float64", "packed": "binary"}
_ANSWER = ("garden", "change", "table", "night", "text")


def _spark_struct(table: str) -> Any:
    from pyspark.sql.types import StructType

    schema = StructType()
    for name, kind in _TABLES[table][1].items():
        schema = schema.add(name, _SPARK_TYPES[kind])
    return schema


def _spark_answer() -> Any:
    from pyspark.sql.types import StructType

    schema = StructType()
    for name in _ANSWER:
        schema = schema.add(name, "string")
    for table in _TABLES:
        schema = schema.add(table, _spark_struct(table))
    return schema


def _arrow_answer() -> pyarrow.Schema:
    import pyarrow

    def struct(columns: dict[str, str]) -> pyarrow.DataType:
        return pyarrow.struct([(name, pyarrow.type_for_alias(_ARROW_TYPES[kind])) for name, kind in columns.items()])

    return pyarrow.schema(
        [(name, pyarrow.string()) for name in _ANSWER]
        + [(table, struct(columns)) for table, (_, columns) in _TABLES.items()]
    )
