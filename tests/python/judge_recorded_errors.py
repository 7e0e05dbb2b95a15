"""How right is the visited fraction under recorded errors of receivers?

Lays each series (CSV: t_s,east_m,north_m) of some folders on simulated drives whose truth is known and prints, series by series, the
error of the estimate, of the count as logged, and how often and how widely the interval holds. Not a test: it judges on series that are
not in this repository too.

    TUSSOCK=target/release/tussock python3 tests/python/judge_recorded_errors.py fixtures/errors [FOLDER ...]
"""

import gzip
import json
import math
import os
import pathlib
import statistics
import subprocess
import sys
import tempfile

TUSSOCK = os.environ.get("TUSSOCK", "tussock")
LAT_DEG, LON_DEG = 53.9, 12.3
SETTINGS = "[machine]\ncut_width_m = 0.22\nbody_width_m = 0.4\n"
HOURS, FIRST_SEED = 8, 11


def circle(east_m, north_m, radius_m):
    angles = [number * math.pi / 8 for number in range(16)]
    return [(east_m + radius_m * math.cos(angle), north_m + radius_m * math.sin(angle)) for angle in angles]


# Lawn, obstacles, station, in metres.
GARDENS = {
    "rectangle": ([(0, 0), (22, 0), (22, 16), (0, 16)], [], (10, 0)),
    "ell": ([(0, 0), (26, 0), (26, 9), (13, 9), (13, 24), (0, 24)], [circle(6, 14, 1.2)], (0, 6)),
    "neck": (
        [(0, 0), (15, 0), (15, 6), (19, 6), (19, 0), (32, 0), (32, 15), (19, 15), (19, 8.5), (15, 8.5), (15, 15), (0, 15)],
        [circle(25, 8, 1.0)],
        (5, 0),
    ),
    "skew": (
        [(0, 2), (12, -3), (27, 1), (30, 14), (18, 21), (4, 17)],
        [circle(20, 10, 1.5), circle(9, 8, 0.8)],
        (0, 2),
    ),
}


def degrees(place):
    east_m, north_m = place
    return [LON_DEG + east_m / (111_320 * math.cos(math.radians(LAT_DEG))), LAT_DEG + north_m / 111_200]


def plan(lawn, obstacles, station):
    def feature(role, kind, coordinates):
        return {
            "type": "Feature",
            "properties": {"role": role, "name": role},
            "geometry": {"type": kind, "coordinates": coordinates},
        }

    def ring(corners):
        return [[degrees(corner) for corner in [*corners, corners[0]]]]

    features = [feature("lawn", "Polygon", ring(lawn)), feature("station", "Point", degrees(station))]
    features += [feature("obstacle", "Polygon", ring(obstacle)) for obstacle in obstacles]
    return json.dumps({"type": "FeatureCollection", "features": features})


def run(*arguments):
    return subprocess.run([TUSSOCK, *map(str, arguments)], capture_output=True, text=True, check=True).stdout


def series_of(folder, target):
    for path in sorted(pathlib.Path(folder).glob("*.csv*")):
        name = path.name.split(".")[0]
        unpacked = target / f"{name}.csv"
        raw = path.read_bytes()
        unpacked.write_bytes(gzip.decompress(raw) if path.suffix == ".gz" else raw)
        yield name, unpacked


def judged(folder, name, series):
    rows = []
    for number, (garden, shape) in enumerate(GARDENS.items()):
        (folder / "settings.toml").write_text(SETTINGS)
        at = folder / f"{garden}.geojson"
        at.write_text(plan(*shape))
        log = folder / f"{name}-{garden}.gpx"
        site = ("--plan", at, "--settings", folder / "settings.toml")
        run("simulate", *site, "--hours", HOURS, "--seed", FIRST_SEED + 7 * number, "--error-from", series, "--out", log)
        true_fraction = json.loads(pathlib.Path(f"{log}.truth.json").read_text())["visited_fraction"]
        findings = json.loads(run("analyse", log, *site, "--no-suggestions", "--format", "json"))
        coverage = findings["coverage"]
        visited = coverage["visited_fraction"]
        rows.append(
            {
                "error": 100 * (visited["estimate"] - true_fraction),
                "as_logged": 100 * (coverage["as_logged_fraction"] - true_fraction),
                "width": 100 * (visited["high"] - visited["low"]),
                "holds": visited["low"] <= true_fraction <= visited["high"],
                "spots": len(findings["stuck_spots"]),
            }
        )
    return rows


def line(name, rows):
    def of(key):
        return sorted(abs(row[key]) for row in rows)

    def ninth(values):
        return values[round(0.9 * (len(values) - 1))]

    error, as_logged = of("error"), of("as_logged")
    print(
        f"| {name} | {len(rows)} | {statistics.median(error):.2f} | {ninth(error):.2f} | {statistics.median(as_logged):.2f} "
        f"| {ninth(as_logged):.2f} | {sum(row['holds'] for row in rows)} | {statistics.mean(of('width')):.1f} "
        f"| {sum(row['spots'] for row in rows)} |",
        flush=True,
    )


def main():
    everything = []
    print("| series | runs | error, median | ninth tenth | as logged, median | ninth tenth | interval holds | width | false spots |")
    print("|---|--:|--:|--:|--:|--:|--:|--:|--:|")
    with tempfile.TemporaryDirectory() as kept:
        folder = pathlib.Path(kept)
        for source in sys.argv[1:]:
            for name, series in series_of(source, folder):
                rows = judged(folder, name, series)
                everything += rows
                line(name, rows)
    line("all", everything)


if __name__ == "__main__":
    main()
