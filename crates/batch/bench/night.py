#!/usr/bin/env python3
"""What does a night cost? Makes N gardens, runs the night shift twice, and prints one JSON object.

    crates/batch/bench/night.py TUSSOCK N HOURS FOLDER

TUSSOCK is a release build. Needs 0.6 MB a garden and hour below FOLDER, which must not exist yet.
"""

import json
import os
import pathlib
import resource
import subprocess
import sys
import threading
import time


def tree_bytes(pid):
    """Resident bytes of a process and of those that it started."""
    total = 0
    stack = [pid]
    while stack:
        one = stack.pop()
        try:
            status = pathlib.Path(f"/proc/{one}/status").read_text()
            total += next(int(line.split()[1]) * 1024 for line in status.splitlines() if line.startswith("VmRSS"))
            for task in pathlib.Path(f"/proc/{one}/task").iterdir():
                stack += [int(child) for child in (task / "children").read_text().split()]
        except (OSError, StopIteration):
            continue
    return total


def timed(words):
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    start = time.monotonic()
    child = subprocess.Popen(words, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL)
    peak = 0
    done = threading.Event()

    def watch():
        nonlocal peak
        while not done.wait(0.02):
            peak = max(peak, tree_bytes(child.pid))

    watcher = threading.Thread(target=watch)
    watcher.start()
    child.communicate()
    wall_s = time.monotonic() - start
    done.set()
    watcher.join()
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    cpu_s = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return {"code": child.returncode, "wall_s": wall_s, "core_s": cpu_s, "peak_mb": peak / 1e6}


def main():
    tussock, count, hours, folder = sys.argv[1], int(sys.argv[2]), sys.argv[3], pathlib.Path(sys.argv[4])
    subprocess.run(
        [tussock, "simulate", "gardens", "--count", str(count), "--hours", hours, "--troubled", "20", "--faulty", "0", "--out", folder / "load"],
        check=True,
    )
    words = [tussock, "batch", "run", folder / "load" / "gardens", "--store", folder / "store", "--no-suggestions", "--format", "json"]
    first, second = timed(words), timed(words)
    size = lambda path: sum(one.stat().st_size for one in path.rglob("*") if one.is_file())
    print(
        json.dumps(
            {
                "gardens": count,
                "hours": float(hours),
                "log_mb_a_garden": size(folder / "load" / "gardens") / 1e6 / count,
                "core_s_a_garden": first["core_s"] / count,
                "cores_busy_fraction": first["core_s"] / first["wall_s"] / os.cpu_count(),
                "peak_mb": first["peak_mb"],
                "second_run_fraction": second["core_s"] / first["core_s"],
                "store_kb_a_garden": size(folder / "store") / 1e3 / count,
                "store_files": sum(1 for one in (folder / "store").rglob("*.parquet")),
                "codes": [first["code"], second["code"]],
            },
            indent=1,
        )
    )


if __name__ == "__main__":
    main()
