#!/usr/bin/env python3
"""How do time and memory grow with the length of the log and with the size of the lawn? Prints tables and exponents.

    python3 tests/bench/growth.py --tussock target/release/tussock --counting target/release/examples/count [--docs docs/speed.md]

Length: a machine that roams over 1,400 m2, a fix a second, 1 h to 240 h. Size: the same hour in one corner of a square lawn of 100 m2 to
100,000 m2. The exponent is the slope of a line through the logarithms (least squares). Start-up counts in and makes it smaller, so the slope
over the last decade stands beside it.
"""

import argparse
import json
import math
import os
import pathlib
import random
import statistics
import subprocess
import tempfile

LAT0_DEG, LON0_DEG = 40.0, -30.0
LAT_DEGREE_M, LON_DEGREE_M = 111_034.6, 85_393.7
SPEED_M_S = 0.35
SIDE_M = 37.4
CORNER_M = 9.8
SEED = 20260501
MARK = "<!-- growth -->"


def at(east_m, north_m):
    return LON0_DEG + east_m / LON_DEGREE_M, LAT0_DEG + north_m / LAT_DEGREE_M


def plan(side_m):
    ring = [at(*corner) for corner in [(0, 0), (side_m, 0), (side_m, side_m), (0, side_m), (0, 0)]]
    lawn = {"type": "Feature", "properties": {"role": "lawn", "name": "lawn"}, "geometry": {"type": "Polygon", "coordinates": [ring]}}
    return json.dumps({"type": "FeatureCollection", "features": [lawn]})


def log(path, hours, side_m):
    """Straight on to the edge, a turn, straight on; positions with 2 cm of noise."""
    rng = random.Random(SEED)
    east_m, north_m, heading = side_m / 2, side_m / 2, 1.0
    with open(path, "w", encoding="ascii") as out:
        out.write('<?xml version="1.0"?>\n<gpx xmlns="http://www.topografix.com/GPX/1/1" version="1.1" creator="growth">\n<trk><trkseg>\n')
        for second in range(round(hours * 3600)):
            for _ in range(50):
                east, north = east_m + SPEED_M_S * math.cos(heading), north_m + SPEED_M_S * math.sin(heading)
                if 0.2 < east < side_m - 0.2 and 0.2 < north < side_m - 0.2:
                    break
                heading = rng.uniform(0, 2 * math.pi)
            east_m, north_m = east, north
            lon, lat = at(east_m + rng.gauss(0, 0.02), north_m + rng.gauss(0, 0.02))
            day, left = divmod(second, 86_400)
            out.write(
                f'<trkpt lat="{lat:.8f}" lon="{lon:.8f}"><time>2026-05-{1 + day:02}T{left // 3600:02}:{left // 60 % 60:02}:{left % 60:02}Z</time></trkpt>\n'
            )
        out.write("</trkseg></trk>\n</gpx>\n")


def cost(words, rounds):
    seconds, peak_mb = [], []
    for _ in range(rounds):
        child = subprocess.Popen(words, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE)
        errors = child.stderr.read()
        _, status, usage = os.wait4(child.pid, 0)
        child.returncode = os.waitstatus_to_exitcode(status)
        if child.returncode != 0:
            raise SystemExit(f"{words}: {errors.decode()}")
        seconds.append(usage.ru_utime + usage.ru_stime)
        peak_mb.append(usage.ru_maxrss / 1024)
    return statistics.median(seconds), statistics.median(peak_mb)


def slope(sizes, values):
    x, y = [math.log(size) for size in sizes], [math.log(value) for value in values]
    mx, my = statistics.mean(x), statistics.mean(y)
    return sum((a - mx) * (b - my) for a, b in zip(x, y)) / sum((a - mx) ** 2 for a in x)


def main():
    reader = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    reader.add_argument("--tussock", type=pathlib.Path, required=True)
    reader.add_argument("--counting", type=pathlib.Path, required=True)
    reader.add_argument("--rounds", type=int, default=3)
    reader.add_argument("--docs", type=pathlib.Path)
    wanted = reader.parse_args()
    lines = []
    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)

        def table(title, unit, sizes, made):
            found = {"the plain part": [], "everything but suggestions": []}
            lines.extend(["", f"| {title} | plain part, core-seconds | MB | everything but suggestions, core-seconds | MB |", "|--:|--:|--:|--:|--:|"])
            for size in sizes:
                trace, garden = made(size)
                both = [
                    cost([wanted.counting, trace, garden], wanted.rounds),
                    cost(
                        [wanted.tussock, "analyse", trace, "--plan", garden, "--cut-width", "22cm", "--no-suggestions", "--format", "json"],
                        wanted.rounds,
                    ),
                ]
                for values, one in zip(found.values(), both):
                    values.append(one)
                lines.append(f"| {size:,} {unit} | " + " | ".join(f"{seconds:.3f} | {peak:.0f}" for seconds, peak in both) + " |")
                print(lines[-1], flush=True)
            last = [size for size in sizes if size >= sizes[-1] / 12]
            for name, values in found.items():
                words = []
                for what, index in [("time", 0), ("memory", 1)]:
                    all_ = [value[index] for value in values]
                    words.append(f"{what} {slope(sizes, all_):.2f} over all, {slope(last, all_[-len(last):]):.2f} over the last decade")
                lines.extend(["", f"Exponents, {name}: {'; '.join(words)}."])
                print(lines[-1], flush=True)

        def of_hours(hours):
            trace, garden = folder / "log.gpx", folder / "plan.geojson"
            log(trace, hours, SIDE_M)
            garden.write_text(plan(SIDE_M))
            return trace, garden

        def of_area(area_m2):
            trace, garden = folder / "log.gpx", folder / "plan.geojson"
            log(trace, 1, CORNER_M)
            garden.write_text(plan(math.sqrt(area_m2)))
            return trace, garden

        table("log", "h", [1, 3, 10, 24, 80, 240], of_hours)
        table("lawn", "m2", [100, 300, 1_000, 3_000, 10_000, 30_000, 100_000], of_area)
    text = "\n".join(lines).strip()
    if wanted.docs:
        before, _, after = wanted.docs.read_text().partition(MARK)
        _, _, after = after.partition(MARK)
        wanted.docs.write_text(f"{before}{MARK}\n\n{text}\n\n{MARK}{after}")


if __name__ == "__main__":
    main()
