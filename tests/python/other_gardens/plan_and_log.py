"""Is it seen how a plan lies beside a log, and that it belongs to another garden?

Drives the five shapes of this folder and has each log analysed with its plan as it is, shifted by 0.2 to 3 m, turned by 0.3 to 3 degrees,
with one side 0.4 m too far out, and with the plan of another shape. What is found is laid over the truth: the distance of the corners of
the lawn, laid as the answer says, from where they are.

    TUSSOCK=target/debug/tussock python3 tests/python/other_gardens/plan_and_log.py [--grades cm,dm,m] [--seeds 4] [--first-seed 0]
        [--what right,shifted,turned,side,another] [--json FILE]
"""

import argparse
import json
import math
import pathlib
import statistics
import subprocess
import sys
import zlib
from dataclasses import replace

import numpy as np
from files import SETTINGS, in_metres, write_log, write_plan
from gardens import SHAPES
from judge import FIRST_SEED, LONGEST_ANALYSIS_S, TUSSOCK, _folder
from machines import Machine, drive
from receivers import GRADES, Sky, logged
from shapely import affinity
from shapely.geometry import Polygon

WHAT = ("right", "shifted", "turned", "side", "another")
HOURS = 8.0
SIDE_M = 0.4
FITTING = {"right": ("fits",), "shifted": ("moved", "edges_differ"), "turned": ("moved", "edges_differ"), "side": ("edges_differ",)}


def wide(lawn, rng):
    """The lawn with one of its sides drawn too far out."""
    corners = list(lawn.exterior.coords)[:-1]
    sides = [math.dist(corners[at], corners[(at + 1) % len(corners)]) for at in range(len(corners))]
    at = rng.choice([number for number, side_m in enumerate(sides) if side_m > 8])
    one, two = np.array(corners[at]), np.array(corners[(at + 1) % len(corners)])
    along = (two - one) / math.dist(one, two)
    out = np.array([along[1], -along[0]]) * (SIDE_M if lawn.exterior.is_ccw else -SIDE_M)
    corners[at], corners[(at + 1) % len(corners)] = one + out, two + out
    return Polygon(corners)


def drawn_as(what, name, site, rng):
    """The site as drawn, how it is moved, and by how much (m, degrees)."""
    if what == "shifted":
        by_m, bearing = 0.2 * 15 ** rng.random(), rng.uniform(0, 2 * math.pi)
        return site, (by_m * math.cos(bearing), by_m * math.sin(bearing), 0.0), by_m
    if what == "turned":
        turn_deg = rng.choice([-1, 1]) * 0.3 * 10 ** rng.random()
        return site, (0.0, 0.0, turn_deg), abs(turn_deg)
    if what == "side":
        return replace(site, lawn=wide(site.lawn, rng)), (0.0, 0.0, 0.0), SIDE_M
    if what == "another":
        other = SHAPES[rng.choice([each for each in SHAPES if each != name])]()
        east_m, north_m = np.subtract(site.lawn.centroid.coords[0], other.lawn.centroid.coords[0])
        return other, (east_m, north_m, 0.0), 0.0
    return site, (0.0, 0.0, 0.0), 0.0


def judged(name, seed, what, grades):
    site = SHAPES[name]()
    root = [FIRST_SEED + seed, zlib.crc32(f"plan and log/{name}".encode())]
    (station,) = site.stations
    driven = drive(site.ground(station), station, Machine(), np.random.default_rng([*root, 0]), HOURS, 1, site.guide, None)
    for grade in grades:
        times, places = logged(driven, Sky(), grade, np.random.default_rng([*root, 100, list(GRADES).index(grade)]), station)
        for one in what:
            rng = np.random.default_rng([*root, 200, WHAT.index(one)])
            drawn, moved, by = drawn_as(one, name, site, rng)
            with _folder(None, "") as folder:
                write_log(folder / "log.csv", times, places)
                write_plan(folder / "plan.geojson", drawn, moved)
                (folder / "settings.toml").write_text(SETTINGS)
                row = {"garden": name, "seed": seed, "grade": grade, "what": one, "by": by}
                yield row | _answer(folder, drawn, moved, site)


def _answer(folder, drawn, moved, site):
    files = ["--plan", folder / "plan.geojson", "--settings", folder / "settings.toml", "--no-suggestions", "--threads", "1"]
    run = subprocess.run(
        [TUSSOCK, "analyse", folder / "log.csv", *files, "--format", "json"],
        capture_output=True, text=True, timeout=LONGEST_ANALYSIS_S, check=False,
    )  # fmt: skip
    if run.returncode != 0:
        return {"verdict": "another_garden" if "another garden" in run.stderr else "failed", "said": run.stderr[-300:]}
    findings = json.loads(run.stdout)
    fit = findings["plan_fit"]
    return {"verdict": (fit or {}).get("verdict", "unknown"), "off_m": _off_m(findings, fit, drawn, moved, site)}


def _off_m(findings, fit, drawn, moved, site):
    """Root mean square distance of the lawn's corners, laid as found, from the true ones; of those the drawer did not misplace."""
    offset = (fit or {}).get("offset") or {"east_m": 0, "north_m": 0, "rotation_deg": 0, "about_east_m": 0, "about_north_m": 0}
    origin = in_metres({"type": "Point", "coordinates": [findings["frame"]["origin_lon"], findings["frame"]["origin_lat"]]})
    laid = affinity.translate(affinity.rotate(drawn.lawn, moved[2], origin=drawn.lawn.centroid), moved[0], moved[1])
    about = (offset["about_east_m"] + origin.x, offset["about_north_m"] + origin.y)
    laid = affinity.translate(affinity.rotate(laid, offset["rotation_deg"], origin=about), offset["east_m"], offset["north_m"])
    pairs = zip(laid.exterior.coords, drawn.lawn.exterior.coords, strict=True)
    true = set(site.lawn.exterior.coords)
    off = [math.dist(one, two) for one, two in pairs if two in true]
    return math.sqrt(statistics.mean(each**2 for each in off)) if off else None


def table(rows, what):
    print("| plan | grade | runs | judged right | refused | unknown | off, median m | ninth tenth m |")
    print("|---|---|--:|--:|--:|--:|--:|--:|")
    for one in what:
        for grade in GRADES:
            group = [row for row in rows if (row["what"], row["grade"]) == (one, grade)]
            if not group:
                continue
            verdicts = [row["verdict"] for row in group]
            right = sum(verdict in FITTING.get(one, ("another_garden",)) for verdict in verdicts)
            off = sorted(row["off_m"] for row in group if row.get("off_m") is not None and row["verdict"] != "unknown")
            size = ["–", "–"] if not off or one == "another" else [f"{statistics.median(off):.2f}", f"{off[round(0.9 * (len(off) - 1))]:.2f}"]
            cells = [one, grade, len(group), right, verdicts.count("another_garden"), verdicts.count("unknown"), *size]
            print("| " + " | ".join(map(str, cells)) + " |")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--grades", default=",".join(GRADES))
    parser.add_argument("--seeds", type=int, default=4)
    parser.add_argument("--first-seed", type=int, default=0)
    parser.add_argument("--what", default=",".join(WHAT))
    parser.add_argument("--json", type=pathlib.Path)
    asked = parser.parse_args()
    rows, what = [], asked.what.split(",")
    for name in SHAPES:
        for seed in range(asked.first_seed, asked.first_seed + asked.seeds):
            for row in judged(name, seed, what, asked.grades.split(",")):
                rows.append(row)
                print(row, file=sys.stderr, flush=True)
    if asked.json:
        asked.json.write_text(json.dumps(rows, indent=1))
    table(rows, what)


if __name__ == "__main__":
    main()
