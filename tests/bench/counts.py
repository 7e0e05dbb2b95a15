#!/usr/bin/env python3
"""Counts the instructions of every stage of a night with callgrind, and holds them to the counts on record.

    python3 tests/bench/counts.py           compares with tests/bench/counts.json
    python3 tests/bench/counts.py --record  writes that file anew

Counts repeat where times do not, but only with the same compiler, C library and processor features: elsewhere the comparison says so
and ends well. A stage that needs over 5 % more instructions than on record ends with exit code 1. Needs cargo and valgrind.
"""

import argparse
import json
import os
import pathlib
import platform
import re
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[2]
RECORD = pathlib.Path(__file__).with_name("counts.json")
STAGES = ["read_gpx", "read_nmea", "locate", "rasterise", "count", "pockets", "legs", "everything"]
# Libraries choose their code by these.
FEATURES = {"sse4_2", "avx", "avx2", "bmi1", "bmi2", "fma", "avx512f", "avx512bw", "avx512vl", "erms", "fsrm"}
MOST_GROWTH = 1.05


def surroundings():
    flags = set(re.search(r"^flags\s*:(.*)$", pathlib.Path("/proc/cpuinfo").read_text(), re.M).group(1).split())
    valgrind = subprocess.run(["valgrind", "--version"], capture_output=True, text=True, check=True).stdout.strip()
    rustc = subprocess.run(["rustc", "--version"], capture_output=True, text=True, check=True, cwd=ROOT).stdout.strip()
    return {"rustc": rustc, "libc": " ".join(platform.libc_ver()), "valgrind": valgrind, "features": sorted(flags & FEATURES)}


def built():
    target = pathlib.Path(os.environ.get("CARGO_TARGET_DIR", ROOT / "target"))
    subprocess.run(["cargo", "build", "--release", "--locked", "--quiet", "-p", "tussock", "--example", "stages"], cwd=ROOT, check=True)
    return target / "release/examples/stages"


def instructions(program, stage, times):
    with tempfile.TemporaryDirectory() as folder:
        run = subprocess.run(
            ["valgrind", "--tool=callgrind", f"--callgrind-out-file={folder}/out", program, stage, str(times)],
            capture_output=True,
            text=True,
            # One thread: how work is shared out differs from run to run.
            env={**os.environ, "RAYON_NUM_THREADS": "1"},
        )
        found = re.search(r"Collected : (\d+)", run.stderr)
        if run.returncode != 0 or not found:
            sys.exit(f"{stage}: exit {run.returncode}\n{run.stderr}")
        return int(found.group(1))


def main():
    reader = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    reader.add_argument("--record", action="store_true")
    wanted = reader.parse_args()
    here = surroundings()
    record = json.loads(RECORD.read_text()) if RECORD.exists() else {}
    if not wanted.record and record.get("surroundings") != here:
        print(f"not compared: recorded with {record.get('surroundings')}, here is {here}")
        return
    program = built()
    counts = {}
    grown = []
    for stage in STAGES:
        counts[stage] = instructions(program, stage, 2) - instructions(program, stage, 1)
        before = record.get("instructions", {}).get(stage)
        ratio = f", {counts[stage] / before:.3f} of the record" if before else ""
        print(f"{stage}: {counts[stage] / 1e6:.2f} million instructions{ratio}", flush=True)
        if before and counts[stage] > MOST_GROWTH * before:
            grown.append(stage)
    if wanted.record:
        RECORD.write_text(json.dumps({"surroundings": here, "instructions": counts}, indent=1) + "\n")
    elif grown:
        sys.exit(f"over 5 % more than on record: {', '.join(grown)}")


if __name__ == "__main__":
    main()
