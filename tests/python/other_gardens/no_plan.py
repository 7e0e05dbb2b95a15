"""What does the first day show, before anybody has drawn a plan?

Drives gardens of this folder, has their logs analysed without a plan, and holds the outline, its islands, the station and the visited
fraction against the truth. Outline: share of the true edge, islands included, that has a drawn edge within REACH_M of the grade. A
fraction is given where it has both ends; it holds where the true lawn's lies between them.

    TUSSOCK=target/debug/tussock python3 tests/python/other_gardens/no_plan.py [--grades cm,dm,m] [--nights 1,3] [--seeds 1]
        [--first-seed 0] [--gardens ell,ring] [--json FILE] [--keep FOLDER]
"""

import argparse
import json
import pathlib
import statistics
import subprocess
import sys
import time
import zlib

import numpy as np
from files import SETTINGS, in_metres, write_log
from gardens import SHAPES, Site, disc
from judge import FIRST_SEED, LONGEST_ANALYSIS_S, TUSSOCK, _folder
from machines import Machine, drive
from receivers import GRADES, Sky, logged
from shapely.geometry import LineString, Point, Polygon, box
from shapely.ops import unary_union
from truth import swept

REACH_M = {"cm": 0.15, "dm": 0.3, "m": 0.8}
FOUND_SHARE = 0.5


def beds():
    """Six beds, from 0.6 to 3 m across."""
    places = [(4, 4, 0.3), (11, 4.5, 0.5), (18, 4, 0.75), (4.5, 11, 1.0), (11.5, 11.5, 1.25), (18.5, 11, 1.5)]
    return Site(box(0, 0, 23, 16), ((11.5, 0.0),), {f"bed {number}": disc(*place) for number, place in enumerate(places)}, setback_m=0.2)


def strip():
    """A strip 2.5 m wide beside a lawn."""
    return Site(Polygon([(0, 0), (18, 0), (18, 3), (32, 3), (32, 5.5), (18, 5.5), (18, 16), (0, 16)]), ((0.0, 8.0),))


def park():
    """Round corners, trees and a pond."""
    corners = [(3, 0), (14, -3), (27, -1), (34, 5), (33, 15), (25, 21), (12, 22), (2, 17), (-2, 8)]
    trees = {f"tree {number}": disc(east_m, north_m, 0.4) for number, (east_m, north_m) in enumerate([(6, 5), (24, 4), (9, 16), (28, 12)])}
    return Site(Polygon(corners), ((3.0, 0.0),), {**trees, "pond": disc(17, 11, 2.2)}, setback_m=0.12)


GARDENS = {**SHAPES, "beds": beds, "strip": strip, "park": park}


def judged(name, nights, seed, grades, keep):
    """All grades of one garden."""
    site = GARDENS[name]()
    root = [FIRST_SEED + seed, zlib.crc32(f"no plan/{name}/{nights}".encode())]
    (station,) = site.stations
    driven = drive(site.ground(station), station, Machine(), np.random.default_rng([*root, 0]), 8.0, nights, site.guide, None)
    raster = swept([driven], site.lawn.bounds)
    truth = raster.visited_fraction(site.grass)
    for grade in grades:
        rng = np.random.default_rng([*root, 100, list(GRADES).index(grade)])
        times, places = logged(driven, Sky(), grade, rng, station)
        row = {"garden": name, "nights": nights, "seed": seed, "grade": grade, "truth_fraction": truth}
        with _folder(keep, f"no_plan, {name}, {nights}, {seed}, {grade}") as folder:
            begin = time.monotonic()
            findings = _analysed(folder, times, places)
            row["seconds"] = round(time.monotonic() - begin, 2)
        row |= {"failed": findings} if isinstance(findings, str) else _compared(site, findings, truth, grade, station, raster)
        yield row


def _analysed(folder, times, places):
    write_log(folder / "log.csv", times, places)
    (folder / "settings.toml").write_text(SETTINGS)
    command = [TUSSOCK, "analyse", folder / "log.csv", "--settings", folder / "settings.toml", "--threads", "1", "--out", folder / "out"]
    run = subprocess.run(command, capture_output=True, text=True, timeout=LONGEST_ANALYSIS_S, check=False)
    (folder / "screen.txt").write_text(run.stdout + run.stderr)
    if run.returncode != 0:
        return run.stderr[-500:] or f"exit code {run.returncode}"
    findings = json.loads((folder / "out" / "findings.json").read_text())
    origin = in_metres({"type": "Point", "coordinates": [findings["frame"]["origin_lon"], findings["frame"]["origin_lat"]]})
    findings["drawn"] = [
        Polygon(rings[0], rings[1:]) for rings in ([_placed(ring, origin) for ring in part] for part in findings["lawn_outline"])
    ]
    return findings


def _placed(ring, origin):
    return [(place["east_m"] + origin.x, place["north_m"] + origin.y) for place in ring]


def _rings(polygon):
    return [LineString(polygon.exterior.coords), *(LineString(ring.coords) for ring in polygon.interiors)]


def _compared(site, findings, truth, grade, station, raster):
    drawn = unary_union([part.buffer(0) for part in findings["drawn"]])
    drawn_edge = unary_union([line for part in findings["drawn"] for line in _rings(part)])
    islands = list(site.obstacles.values())
    edge = unary_union([*_rings(site.lawn), *(_rings(island)[0] for island in islands)])
    holes = [Polygon(ring) for part in findings["drawn"] for ring in part.interiors]
    visited = (findings["coverage"] or {}).get("visited_fraction") or {}
    low, high, estimate = (visited.get(key) for key in ("low", "high", "estimate"))
    stations = [in_metres({"type": "Point", "coordinates": [each["lon"], each["lat"]]}) for each in findings.get("stations") or []]
    false = 0
    for pocket in findings["missed_pockets"]:
        causes = [cause["cause"] for cause in pocket["causes"] or []]
        false += "walled_off" in causes[:1]
    given = low is not None and high is not None and high - low < 0.5
    return {
        "edge_share": edge.intersection(drawn_edge.buffer(REACH_M[grade])).length / edge.length,
        "lawn_points": 100 * (drawn.area / site.grass.area - 1),
        "islands": [round(2 * np.sqrt(island.area / np.pi), 2) for island in islands],
        "islands_found": [any(hole.intersection(island).area > FOUND_SHARE * island.area for hole in holes) for island in islands],
        "false_islands": sum(not any(hole.intersects(island) for island in islands) for hole in holes),
        "given": given,
        "holds": low <= truth <= high if given else None,
        "width_points": 100 * (high - low) if given else None,
        "error_points": 100 * (estimate - truth) if given else None,
        "level": findings["log_verdict"]["level"],
        "pockets": len(findings["missed_pockets"]),
        "walled_off": false,
        "promise": ((findings["over_time"] or {}).get("promise") or {}).get("verdict"),
        "suggestions": len(findings["suggestions"] or []),
        "stations": len(stations),
    }


def table(rows):
    print("| grade | nights | runs | edge within reach % | lawn too large, points | islands found | false islands | given | holds | width | error |")
    print("|---|--:|--:|--:|--:|--:|--:|--:|--:|--:|--:|")
    for grade, nights in sorted({(row["grade"], row["nights"]) for row in rows}):
        group = [row for row in rows if (row["grade"], row["nights"]) == (grade, nights) and "failed" not in row]
        if not group:
            continue
        given = [row for row in group if row["given"]]
        found = [each for row in group for each in row["islands_found"]]
        cells = [
            len(group),
            f"{100 * statistics.mean(row['edge_share'] for row in group):.0f}",
            f"{statistics.median(row['lawn_points'] for row in group):+.1f}",
            f"{sum(found)} of {len(found)}",
            sum(row["false_islands"] for row in group),
            len(given),
            f"{sum(row['holds'] for row in given)} of {len(given)}",
            f"{statistics.mean(row['width_points'] for row in given):.2f}" if given else "–",
            f"{statistics.median(abs(row['error_points']) for row in given):.2f}" if given else "–",
        ]
        print(f"| {grade} | {nights} | " + " | ".join(map(str, cells)) + " |")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--gardens", default=",".join(GARDENS))
    parser.add_argument("--grades", default=",".join(GRADES))
    parser.add_argument("--nights", default="1,3")
    parser.add_argument("--seeds", type=int, default=1)
    parser.add_argument("--first-seed", type=int, default=0)
    parser.add_argument("--json", type=pathlib.Path)
    parser.add_argument("--keep", type=pathlib.Path)
    asked = parser.parse_args()
    rows = []
    for name in asked.gardens.split(","):
        for nights in map(int, asked.nights.split(",")):
            for seed in range(asked.first_seed, asked.first_seed + asked.seeds):
                for row in judged(name, nights, seed, asked.grades.split(","), asked.keep):
                    rows.append(row)
                    print({key: round(value, 3) if isinstance(value, float) else value for key, value in row.items()}, file=sys.stderr, flush=True)
    if asked.json:
        asked.json.write_text(json.dumps(rows, indent=1))
    table(rows)


if __name__ == "__main__":
    main()
