#!/usr/bin/env python3
"""Times the command beside scripts that do the plain part of the job, in turn, on the same inputs.

    python3 tests/bench/beside.py --tussock target/release/tussock --inputs DIR --scripts DIR [--rounds N] [--docs docs/speed.md]

DIR of the inputs holds `night.gpx`, `night.nmea`, `day10.gpx` (not each is needed) and `yard.json`: origin (`lat0`, `lon0`,
metres a degree as `ky`, `kx`), `outer` and `island` as corners in metres. DIR of the scripts holds `simple.py` and `opt.py`,
called with the input; each prints one line of JSON with `total_ms` and `stages_ms`, of which `imports` is taken off for the
second ratio. Run it with the Python that has what the scripts import.

Every round runs each program once (A B C A B C), so that a busy minute hits all. What is compared is the median; peak memory
is the largest resident set of the process. Ratios are to the first program: the plain part alone where `--counting` names the
example `count` (`cargo build --release -p tussock --example count`), else the command as a user would run it, which also judges
luck, causes and the promise; suggestions and pages are left out, as the scripts have none.
"""

import argparse
import json
import os
import pathlib
import platform
import statistics
import subprocess
import sys
import tempfile
import time

MARK = "<!-- measured -->"


def plan_of(yard):
    """The garden of `yard.json` as a plan."""

    def ring(corners):
        points = [[yard["lon0"] + east / yard["kx"], yard["lat0"] + north / yard["ky"]] for east, north in corners]
        return [points + points[:1]]

    def feature(role, name, corners):
        return {
            "type": "Feature",
            "properties": {"role": role, "name": name},
            "geometry": {"type": "Polygon", "coordinates": ring(corners)},
        }

    features = [feature("lawn", "lawn", yard["outer"]), feature("exclusion", "island", yard["island"])]
    return {"type": "FeatureCollection", "features": features}


def run(words):
    """Wall time, processor time and peak memory of one process, and what it printed."""
    with tempfile.TemporaryFile() as out:
        start = time.perf_counter()
        process = subprocess.Popen(words, stdout=out, stderr=subprocess.PIPE)
        errors = process.stderr.read()
        _, status, usage = os.wait4(process.pid, 0)
        wall_s = time.perf_counter() - start
        process.returncode = os.waitstatus_to_exitcode(status)
        if process.returncode != 0:
            sys.exit(f"{' '.join(map(str, words))}: exit {process.returncode}\n{errors.decode()}")
        out.seek(0)
        text = out.read().decode()
    return {
        "wall_ms": 1e3 * wall_s,
        "processor_ms": 1e3 * (usage.ru_utime + usage.ru_stime),
        "peak_mb": usage.ru_maxrss / 1024,
        "text": text,
    }


def work_ms(found):
    """Time of a script without its imports; that of the command is the whole process."""
    try:
        told = json.loads(found["text"].strip().splitlines()[-1])
        return told["total_ms"] - told["stages_ms"]["imports"]
    except (ValueError, KeyError, IndexError, TypeError):
        return found["wall_ms"]


def rows_of(name, programs, rounds):
    """Medians of every program on one input."""
    seen = {program: [] for program in programs}
    for program, words in programs.items():
        run(words)  # fills caches, compiles what is compiled at first use
    for _ in range(rounds):
        for program, words in programs.items():
            found = run(words)
            found["work_ms"] = work_ms(found)
            seen[program].append(found)
    middle = {
        program: {key: statistics.median(one[key] for one in found) for key in ("wall_ms", "work_ms", "processor_ms", "peak_mb")}
        for program, found in seen.items()
    }
    ours = next(iter(middle.values()))
    rows = []
    for program, found in middle.items():
        ratio = found["wall_ms"] / ours["wall_ms"]
        ratio_work = found["work_ms"] / ours["wall_ms"]
        rows.append(
            f"| {name} | {program} | {found['wall_ms']:.0f} | {found['work_ms']:.0f} | {found['processor_ms']:.0f} "
            f"| {found['peak_mb']:.0f} | {ratio:.1f} | {ratio_work:.1f} | {found['peak_mb'] / ours['peak_mb']:.1f} |"
        )
        print(rows[-1], flush=True)
    return rows


def main():
    reader = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    reader.add_argument("--tussock", type=pathlib.Path, required=True)
    reader.add_argument("--inputs", type=pathlib.Path, required=True)
    reader.add_argument("--scripts", type=pathlib.Path, required=True)
    reader.add_argument("--counting", type=pathlib.Path, help="the example count of the crate tussock: the plain part alone")
    reader.add_argument("--rounds", type=int, default=5)
    reader.add_argument("--docs", type=pathlib.Path)
    wanted = reader.parse_args()
    tussock = wanted.tussock.resolve()
    rows = []
    with tempfile.TemporaryDirectory() as folder:
        plan = pathlib.Path(folder) / "plan.geojson"
        plan.write_text(json.dumps(plan_of(json.loads((wanted.inputs / "yard.json").read_text()))))
        for name, with_simple in [("night.gpx", True), ("night.nmea", True), ("day10.gpx", False)]:
            log = wanted.inputs / name
            if not log.exists():
                print(f"{name}: not there, left out")
                continue
            programs = {
                "tussock": [tussock, "analyse", log, "--plan", plan, "--cut-width", "22cm", "--no-suggestions", "--format", "json"],
                "optimised Python": [sys.executable, wanted.scripts / "opt.py", log],
            }
            if wanted.counting:
                programs = {"tussock, the plain part": [wanted.counting.resolve(), log, plan], **programs}
            if with_simple:
                programs["straightforward Python"] = [sys.executable, wanted.scripts / "simple.py", log]
            rows += rows_of(name, programs, wanted.rounds)
        starts = [run([tussock, "--help"])["wall_ms"] for _ in range(20)]
    size_mb = tussock.stat().st_size / 1e6
    text = [
        f"{os.cpu_count()} cores ({platform.machine()}), Python {platform.python_version()}, medians of {wanted.rounds} rounds.",
        "",
        "| input | program | whole process ms | without imports ms | processor ms | peak MB | whole, of ours | without imports, of ours | memory, of ours |",
        "|---|---|--:|--:|--:|--:|--:|--:|--:|",
        *rows,
        "",
        f"`tussock --help` takes {statistics.median(starts):.1f} ms; the executable has {size_mb:.1f} MB.",
        "",
    ]
    print("\n".join(text))
    if wanted.docs:
        prose = wanted.docs.read_text().split(MARK)[0]
        wanted.docs.write_text(f"{prose}{MARK}\n\n" + "\n".join(text))


if __name__ == "__main__":
    main()
