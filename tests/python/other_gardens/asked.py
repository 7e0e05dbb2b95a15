"""Is what is said of a place that somebody points at true of it?

Drives the gardens of some kinds, draws places at random on their grass, has findings asked for each of them, and counts at the true trail
how often the disc passed over. A visit is a pass more than 30 s after the last. A place lies in silence if it was driven over, and no fix
logged within 2 m of it: under a tree, say. "Cannot tell" are the answers that the log cannot tell, ground without evidence among them.

    TUSSOCK=target/debug/tussock python3 tests/python/other_gardens/asked.py [--grades cm,dm,m] [--seeds 1] [--first-seed 0]
        [--places 200] [--kinds plain,silences,closed_corner]
"""

import argparse
import json
import subprocess
import sys
import zlib

import numpy as np
import shapely
from files import SETTINGS, degrees, write_log, write_plan
from judge import FIRST_SEED, LONGEST_ANALYSIS_S, TUSSOCK, _folder, drives_of
from kinds import KINDS
from receivers import GRADES, logged
from truth import CUT_WIDTH_M, SAMPLE_S

NEW_PASS_AFTER_S = 30.0
SILENT_M = 2.0
CANNOT_TELL = ("place_cannot_tell", "place_unseen")
NOT_DRIVEN = ("place_never", "place_gap", "place_not_yet", "place_not_yet_open")


def places_on(grass, count, rng):
    """Places drawn evenly on the grass (n, 2)."""
    west, south, east, north = grass.bounds
    found = np.zeros((0, 2))
    while len(found) < count:
        drawn = rng.uniform((west, south), (east, north), (4 * count, 2))
        found = np.vstack([found, drawn[shapely.contains_xy(grass, drawn)]])
    return found[:count]


def visits(drives, places):
    """True number of visits of each place."""
    counts = np.zeros(len(places), int)
    for one in drives:
        times, trail = [], []
        for begin_s, end_s in one.nights:
            times.append(np.arange(begin_s, end_s, SAMPLE_S))
            trail.append(one.trail.at(times[-1]))
        times, trail = np.concatenate(times), np.vstack(trail)
        for number, place in enumerate(places):
            passes = times[np.hypot(*(trail - place).T) <= CUT_WIDTH_M / 2]
            counts[number] += 0 if len(passes) == 0 else 1 + int(np.sum(np.diff(passes) > NEW_PASS_AFTER_S))
    return counts


def asked_of(folder, places):
    """The findings' answer to each place."""
    rows = "".join(f'<wpt lat="{lat:.9f}" lon="{lon:.9f}"/>' for lon, lat in degrees(places).tolist())
    (folder / "places.gpx").write_text(f'<gpx version="1.1" creator="judge">{rows}</gpx>')
    command = [TUSSOCK, "ask", folder / "out" / "findings.json", "--waypoints", folder / "places.gpx", "--format", "json"]
    return json.loads(subprocess.run(command, capture_output=True, text=True, check=True).stdout)


def judged(kind, number, seed, grades, count):
    garden = KINDS[kind]()[number]
    root = [FIRST_SEED + seed, zlib.crc32(f"asked/{kind}/{garden.name}".encode())]
    site, drives = garden.site, drives_of(garden, root)
    places = places_on(site.grass, count, np.random.default_rng([*root, 50]))
    true = visits(drives, places)
    for grade in grades:
        rng = np.random.default_rng([*root, 100, list(GRADES).index(grade)])
        with _folder(None, "") as folder:
            logs, fixes = [], []
            for each, (one, station) in enumerate(zip(drives, site.stations, strict=True)):
                logs.append(folder / f"machine{each + 1}.csv")
                times, shown = logged(one, garden.sky, grade, rng, station, None)
                write_log(logs[-1], times, shown, garden.sky.rounded_deg)
                fixes.append(one.trail.at(np.asarray(times, float)))
            write_plan(folder / "plan.geojson", garden.plan, garden.moved)
            (folder / "settings.toml").write_text(SETTINGS)
            files = ["--plan", folder / "plan.geojson", "--settings", folder / "settings.toml", "--no-suggestions", "--threads", "1"]
            command = [TUSSOCK, "analyse", *logs, *files, "--out", folder / "out"]
            subprocess.run(command, capture_output=True, timeout=LONGEST_ANALYSIS_S, check=True)
            answers = asked_of(folder, places)
        fixes = np.vstack(fixes)
        for place, truth, answer in zip(places, true.tolist(), answers, strict=True):
            is_silent = truth > 0 and float(np.min(np.hypot(*(fixes - place).T))) > SILENT_M
            yield {"kind": kind, "grade": grade, "truth": truth, "is_silent": is_silent, "code": answer["answer"]["code"], "visits": answer["visits"]}


def table(rows):
    print("| grade | places | visits in the interval % | width, median | in silence, cannot tell | elsewhere, cannot tell % | called not driven over, were % | of those not driven over, called % |")
    print("|---|--:|--:|--:|--:|--:|--:|--:|")
    for grade in GRADES:
        of = [row for row in rows if row["grade"] == grade]
        if not of:
            continue
        told = [row for row in of if row["code"] not in CANNOT_TELL and row["visits"]]
        held = [row["visits"]["low"] <= row["truth"] <= row["visits"]["high"] for row in told]
        widths = [row["visits"]["high"] - row["visits"]["low"] for row in told]
        silent = [row["code"] in CANNOT_TELL for row in of if row["is_silent"]]
        elsewhere = [row["code"] in CANNOT_TELL for row in of if not row["is_silent"]]
        called = [row["truth"] == 0 for row in of if row["code"] in NOT_DRIVEN]
        bare = [row["code"] in NOT_DRIVEN for row in of if row["truth"] == 0]

        def share(of):
            return f"{100 * np.mean(of):.0f}" if of else "–"

        cells = [grade, len(of), share(held), f"{np.median(widths):.1f}", f"{sum(silent)} of {len(silent)}", share(elsewhere), share(called), share(bare)]
        print("| " + " | ".join(map(str, cells)) + " |")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--grades", default=",".join(GRADES))
    parser.add_argument("--kinds", default="plain,silences,closed_corner")
    parser.add_argument("--seeds", type=int, default=1)
    parser.add_argument("--first-seed", type=int, default=0)
    parser.add_argument("--places", type=int, default=200)
    asked = parser.parse_args()
    rows = []
    for kind in asked.kinds.split(","):
        for number in range(len(KINDS[kind]())):
            for seed in range(asked.first_seed, asked.first_seed + asked.seeds):
                rows += judged(kind, number, seed, asked.grades.split(","), asked.places)
                print(kind, number, seed, file=sys.stderr, flush=True)
    table(rows)


if __name__ == "__main__":
    main()
