"""How right are the answers about gardens that were made by another hand?

Drives each garden, writes log, plan and settings into a temporary folder, has them analysed, and holds the answer against the truth.
The lawn whose visited fraction is judged is the one of the plan, laid where it belongs; where the real lawn is another (an island that
the plan lacks), the error against that is printed too, and an interval is silent only if it misses both. Silent: it misses and the log
was called good; "positions good": it misses and the positions were called good, however short the night. Of another garden's plan no
figure is judged; there the miss is that the plan was not refused. A kind's ninth tenth is that of few runs.

    TUSSOCK=target/debug/tussock python3 tests/python/other_gardens/judge.py [--kinds plain,lanes] [--grades cm,dm,m] [--seeds 1]
        [--first-seed 0] [--jobs 1] [--json FILE] [--errors FOLDER] [--keep FOLDER]
"""

import argparse
import concurrent.futures
import contextlib
import json
import os
import pathlib
import statistics
import subprocess
import sys
import tempfile
import time
import zlib

import numpy as np
from files import SETTINGS, in_metres, write_log, write_plan
from kinds import KINDS
from machines import drive
from receivers import GRADES, logged
from shapely.ops import unary_union
from truth import swept

TUSSOCK = os.environ.get("TUSSOCK", "tussock")
ERRORS = pathlib.Path(__file__).parents[3] / "fixtures" / "errors"
FIRST_SEED = 4201
RECORDED = "recorded"
LONGEST_ANALYSIS_S = 300
DRIVEN_SHARE = 0.5  # a claimed pocket is false if more of it was driven over
FOUND_SHARE = 0.5  # a true pocket is found if so much of it is claimed
SPOT_REACH_M = {"cm": 0.6, "dm": 1.2, "m": 3.0, RECORDED: 3.0}


def drives_of(garden, root):
    """One drive for each station, each with a seed of its own."""
    site = garden.site
    return [
        drive(
            site.ground(station), station, garden.machine, np.random.default_rng([*root, each]), garden.hours, garden.nights, site.guide,
            garden.stall,
        )
        for each, station in enumerate(site.stations)
    ]  # fmt: skip


def judged(kind, number, seed, grades, series, keep):
    """All grades (or recorded series) of one garden and one seed: one drive, one truth, several logs."""
    garden = KINDS[kind]()[number]
    root = [FIRST_SEED + seed, zlib.crc32(f"{kind}/{garden.name}".encode())]
    site, drives = garden.site, drives_of(garden, root)
    raster = swept(drives, unary_union([site.lawn, garden.plan.lawn]).bounds)
    truth = {"drawn": raster.visited_fraction(garden.plan.grass), "real": raster.visited_fraction(site.grass)}
    rows = []
    skies = [(RECORDED, each) for each in series] if garden.recorded else [(grade, None) for grade in grades]
    for grade, recording in skies:
        name = f"{garden.name}, {recording.name.split('.')[0]}" if recording else garden.name
        rng = np.random.default_rng([*root, 100, [*GRADES, RECORDED].index(grade)])
        begin = time.monotonic()
        with _folder(keep, f"{kind}, {name}, {seed}, {grade}") as folder:
            findings, pockets = _analysed(folder, garden, drives, grade, rng, recording)
        row = {"kind": kind, "garden": name, "seed": seed, "grade": grade, "seconds": round(time.monotonic() - begin, 2)}
        if isinstance(findings, str):
            row["failed"] = findings
        else:
            row |= _compared(garden, drives, raster, truth, grade, findings, pockets)
        rows.append(row)
        print(_progress(row), file=sys.stderr, flush=True)
    return rows


@contextlib.contextmanager
def _folder(keep, name):
    """A folder for the files of one run: kept under its name, or temporary."""
    if keep is None:
        with tempfile.TemporaryDirectory() as folder:
            yield pathlib.Path(folder)
        return
    folder = keep / name.replace(", ", "-").replace(" ", "_")
    folder.mkdir(parents=True, exist_ok=True)
    yield folder


def _analysed(folder, garden, drives, grade, rng, recording):
    """The findings and the outlines of the missed pockets in metres; or what went wrong."""
    logs = []
    for number, (one, station) in enumerate(zip(drives, garden.site.stations, strict=True)):
        logs.append(folder / f"machine{number + 1}.csv")
        write_log(logs[-1], *logged(one, garden.sky, grade, rng, station, recording), garden.sky.rounded_deg)
    write_plan(folder / "plan.geojson", garden.plan, garden.moved)
    (folder / "settings.toml").write_text(SETTINGS)
    site = ["--plan", folder / "plan.geojson", "--settings", folder / "settings.toml"]
    command = [TUSSOCK, "analyse", *logs, *site, "--no-suggestions", "--threads", "1", "--out", folder / "out"]
    try:
        run = subprocess.run(command, capture_output=True, text=True, timeout=LONGEST_ANALYSIS_S, check=False)
    except subprocess.TimeoutExpired:
        return f"more than {LONGEST_ANALYSIS_S} s", []
    if run.returncode != 0:
        return run.stderr[-500:] or f"exit code {run.returncode}", []
    features = json.loads((folder / "out" / "findings.geojson").read_text())["features"]
    outlines = {
        feature["properties"]["id"]: in_metres(feature["geometry"]).buffer(0)
        for feature in features
        if feature["properties"].get("kind") == "missed_pocket"
    }
    findings = json.loads((folder / "out" / "findings.json").read_text())
    return findings, [(pocket, outlines[pocket["id"]]) for pocket in findings["missed_pockets"]]


def _compared(garden, drives, raster, truth, grade, findings, pockets):
    coverage, visited = findings["coverage"] or {}, (findings["coverage"] or {}).get("visited_fraction") or {}
    estimate, low, high = (visited.get(key) for key in ("estimate", "low", "high"))
    as_logged, expected = coverage.get("as_logged_fraction"), garden.expected
    verdict, fit = findings["log_verdict"]["level"], findings["plan_fit"] or {}

    def points(value, lawn):
        return None if value is None or not expected.comparable else 100 * (value - truth[lawn])

    holds = {lawn: None if low is None or not expected.comparable else low <= truth[lawn] <= high for lawn in truth}
    if expected.comparable:
        misses = low is not None and not any(holds.values())
    else:
        misses = fit.get("verdict") not in expected.plan_fit
    row = {
        "truth_fraction": truth["drawn"],
        "truth_of_real_lawn_fraction": truth["real"],
        "estimate": estimate,
        "low": low,
        "high": high,
        "as_logged": as_logged,
        "error_points": points(estimate, "drawn"),
        "error_of_real_lawn_points": points(estimate, "real"),
        "as_logged_error_points": points(as_logged, "drawn"),
        "width_points": None if low is None else 100 * (high - low),
        "holds": holds["drawn"],
        "holds_real_lawn": holds["real"],
        "level": verdict,
        "positions_level": findings["log_verdict"]["positions"],
        "silent": misses and verdict == "good",
        "silent_on_positions": misses and findings["log_verdict"]["positions"] == "good",
        "plan_fit": fit.get("verdict"),
        "plan_fit_right": fit.get("verdict") in expected.plan_fit if expected.plan_fit else None,
        "named": bool(fit.get(expected.named)) if expected.named else None,
        "failed_checks": [check["check"] for check in findings["checks"] or [] if not check["holds"]],
    }
    return row | _pockets(garden, raster, pockets) | _spots(garden, drives, grade, findings["stuck_spots"] or [])


def _pockets(garden, raster, pockets):
    """Claimed pockets that were driven over, true ones that were claimed, and whether the causes of these are right."""
    claimed, false = [], 0
    for pocket, outline in pockets:
        driven = raster.visited_m2(outline) / max(outline.area, 1e-9)
        false += driven > DRIVEN_SHARE
        first = (pocket["causes"] or [{}])[0].get("cause")
        claimed.append({"id": pocket["id"], "area_m2": pocket["area_m2"], "driven_share": round(driven, 3), "cause": first})
    everything = unary_union([outline for _, outline in pockets])
    found, right, causes = 0, 0, 0
    true_pockets = garden.site.walled_off()
    for true_pocket in true_pockets:
        found += bool(everything.intersection(true_pocket).area > FOUND_SHARE * true_pocket.area)
        shares = [outline.intersection(true_pocket).area for _, outline in pockets]
        if garden.expected.causes and shares and max(shares) > 0:
            causes += 1
            right += claimed[int(np.argmax(shares))]["cause"] in garden.expected.causes
    return {
        "pockets": claimed,
        "false_pockets": false,
        "true_pockets": len(true_pockets),
        "found_pockets": found,
        "causes": causes,
        "right_causes": right,
    }


def _spots(garden, drives, grade, spots):
    """Stuck spots that nothing held, and those that something did."""
    held = [place for one in drives for _, _, place in one.stalls]
    true_spot = np.mean(held, axis=0) if held else None
    near = [_place(spot) for spot in spots]
    hits = [true_spot is not None and bool(np.hypot(*(place - true_spot)) <= SPOT_REACH_M[grade]) for place in near]
    return {
        "stuck_spots": [{"at_m": place.round(2).tolist(), "minutes": spot["minutes"]} for place, spot in zip(near, spots, strict=True)],
        "false_spots": len(hits) - sum(hits),
        "true_spots": int(true_spot is not None),
        "found_spots": int(any(hits)),
    }


def _place(spot):
    point = in_metres({"type": "Point", "coordinates": [spot["lon"], spot["lat"]]})
    return np.array([point.x, point.y])


def _progress(row):
    if "failed" in row:
        return f"{row['kind']}, {row['garden']}, {row['grade']}: {row['failed']}"
    error = "no figure" if row["error_points"] is None else f"{row['error_points']:+.2f} points"
    return f"{row['kind']}, {row['garden']}, {row['grade']}: {error}, {row['level']}, {row['seconds']} s"


HEAD = (
    "runs", "error, median", "ninth tenth", "real lawn", "as logged, median", "ninth tenth", "holds %", "width", "silent", "positions good",
    "false pockets", "pockets found", "causes right", "false spots", "spots found", "plan judged right", "named", "failed",
)  # fmt: skip


def table(first, groups):
    """One row a group: figures in points, counts as x of y."""
    print("| " + " | ".join([*first, *HEAD]) + " |")
    print("|" + "---|" * len(first) + "--:|" * len(HEAD))
    for names, rows in groups:
        print("| " + " | ".join([*names, *_cells(rows)]) + " |")
    print(flush=True)


def _cells(rows):
    answered = [row for row in rows if "failed" not in row]

    def values(key):
        return [row[key] for row in answered if row.get(key) is not None]

    def size(key, share):
        of = sorted(abs(value) for value in values(key))
        if not of:
            return "–"
        return f"{statistics.median(of) if share == 0.5 else of[round(share * (len(of) - 1))]:.2f}"

    def count(key, among):
        total = sum(values(among))
        return f"{sum(values(key))} of {total}" if total else "–"

    def yes(key):
        return f"{sum(values(key))} of {len(values(key))}" if values(key) else "–"

    holds, widths = values("holds"), values("width_points")
    return [
        str(len(rows)),
        size("error_points", 0.5),
        size("error_points", 0.9),
        size("error_of_real_lawn_points", 0.5),
        size("as_logged_error_points", 0.5),
        size("as_logged_error_points", 0.9),
        f"{100 * sum(holds) / len(holds):.0f}" if holds else "–",
        f"{statistics.mean(widths):.2f}" if widths else "–",
        str(sum(values("silent"))),
        str(sum(values("silent_on_positions"))),
        str(sum(values("false_pockets"))),
        count("found_pockets", "true_pockets"),
        count("right_causes", "causes"),
        str(sum(values("false_spots"))),
        count("found_spots", "true_spots"),
        yes("plan_fit_right"),
        yes("named"),
        str(len(rows) - len(answered)),
    ]


def printed(rows):
    grades = [grade for grade in [*GRADES, RECORDED] if any(row["grade"] == grade for row in rows)]
    kinds = [kind for kind in KINDS if any(row["kind"] == kind for row in rows)]
    by_kind = [
        ((kind, grade), [row for row in rows if (row["kind"], row["grade"]) == (kind, grade)]) for kind in kinds for grade in grades
    ]
    table(("kind", "grade"), [(names, group) for names, group in by_kind if group])
    table(("grade",), [((grade,), [row for row in rows if row["grade"] == grade]) for grade in grades])


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--kinds", default=",".join(KINDS))
    parser.add_argument("--grades", default=",".join(GRADES))
    parser.add_argument("--seeds", type=int, default=1)
    parser.add_argument("--first-seed", type=int, default=0, help="seeds that nothing was chosen on")
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--json", type=pathlib.Path)
    parser.add_argument("--errors", type=pathlib.Path, default=ERRORS, help="folder of recorded errors (CSV: t_s,east_m,north_m)")
    parser.add_argument("--keep", type=pathlib.Path, help="folder for the logs, plans, settings and findings, to look into")
    asked = parser.parse_args()
    kinds, grades = asked.kinds.split(","), asked.grades.split(",")
    if unknown := [*(set(kinds) - set(KINDS)), *(set(grades) - set(GRADES))]:
        parser.error(f"unknown: {', '.join(unknown)}; kinds are {', '.join(KINDS)}")
    series = sorted(asked.errors.glob("*.csv*"))
    tasks = [
        (kind, number, seed, grades, series, asked.keep)
        for kind in kinds
        for number in range(len(KINDS[kind]()))
        for seed in range(asked.first_seed, asked.first_seed + asked.seeds)
    ]
    printed(gathered(judged, tasks, asked.jobs, asked.json))


def gathered(judge, tasks, jobs, file):
    """The rows of all tasks, a process a task; a file holds what is there so far."""
    rows = []
    with concurrent.futures.ProcessPoolExecutor(jobs) as pool:
        for each in pool.map(judge, *zip(*tasks, strict=True)):
            rows += each
            if file:
                file.write_text(json.dumps(rows, indent=1))
    return rows


if __name__ == "__main__":
    main()
