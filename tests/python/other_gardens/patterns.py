"""How often is a pattern taken for another one? Drives of two generators whose pattern is known, each asked about by itself.

One generator is this folder's, the other `tussock simulate`. "False" is a guess that names another pattern than was driven; where the log
does not tell, "undetermined" is a right answer. "Luck" is the other question, on which chances of gaps and the fitted machine stand: does
it drive in lanes, or does chance rule? Of a spiral inwards neither is asked.

    cargo build --example pattern -p tussock; cargo build
    TUSSOCK=target/debug/tussock PATTERN=target/debug/examples/pattern python3 tests/python/other_gardens/patterns.py [--seeds 3]
        [--first-seed 1] [--grades cm,dm] [--jobs 1] [--only NAME] [--write docs/patterns.md]

Thresholds were set on seed 0, which the table leaves out.
"""

import argparse
import collections
import concurrent.futures
import json
import math
import os
import pathlib
import subprocess
import tempfile
import zlib
from dataclasses import replace

import numpy as np
from files import write_log, write_plan
from gardens import SHAPES, Site
from machines import Machine, Trail, drive, lanes_of
from receivers import GRADES, drifting
from shapely.geometry import Polygon, box

TUSSOCK, PATTERN = os.environ.get("TUSSOCK", "tussock"), os.environ.get("PATTERN", "pattern")
FIRST_SEED, HOURS, SPEED_MPS, NIGHT_S = 911, 6.0, 0.35, 6.0 * 3600
SPACINGS_M = {"lanes": 0.19, "lanes, 1.5 widths apart": 0.33, "lanes, two widths apart": 0.44, "lanes, three widths apart": 0.66}
NOISE = {"cm": "centimetre", "dm": "decimetre", "m": "metre"}
MARKS = "<!-- made by tests/python/other_gardens/patterns.py -->", "<!-- end -->"


def strips():
    """Strips and necks alone, where chance drives along the sides."""
    neck = Polygon([(0, 0), (8, 0), (8, 3), (20, 3), (20, 0), (28, 0), (28, 8), (20, 8), (20, 4.8), (8, 4.8), (8, 8), (0, 8)])
    yield "strip of 2 m", Site(box(0, 0, 30, 2), ((0.0, 1.0),))
    yield "strip of 3 m", Site(box(0, 0, 25, 3), ((0.0, 1.5),))
    yield "strip round a corner", Site(Polygon([(0, 0), (20, 0), (20, 20), (17.5, 20), (17.5, 2.5), (0, 2.5)]), ((0.0, 1.0),))
    yield "two rooms and a neck", Site(neck, ((0.0, 4.0),))


def ways_trail(site, ways):
    """Along given ways, one after the other, again from the start until the night is over."""
    ground = site.ground(site.stations[0])
    trail = Trail(ground.nearest(site.stations[0]))
    while trail.now_s < NIGHT_S:
        for way in ways:
            trail.go(ground.route(trail.places[-1], way[0]), SPEED_MPS)
            trail.wait(2.0)
            trail.go(way, SPEED_MPS)
            trail.wait(1.0)
    return trail


def every_third(site, rng):
    """Lanes 0.19 m apart, of which every third is driven, then those beside them, then the rest."""
    lanes = lanes_of(site.ground(site.stations[0]), Machine(pattern="lanes", lane_heading=0.3), rng)
    turned = [lane[:: (-1) ** number] for first in range(3) for number, lane in enumerate(lanes[first::3])]
    return ways_trail(site, turned)


def inwards(site, _rng):
    """Rings 0.2 m apart from the edge to the middle."""
    ring, ways = site.ground(site.stations[0]).polygon.buffer(-0.01), []
    while not ring.is_empty:
        parts = [part for part in getattr(ring, "geoms", [ring]) if part.area > 0.05]
        ways += [np.array(part.exterior.coords) for part in parts]
        ring = ring.buffer(-0.2, join_style="mitre")
    return ways_trail(site, ways)


def by_this_folder(rng):
    """(pattern, kind, site, trail): what was driven, in the words of the answer."""
    for name, make in SHAPES.items():
        for kind, machine in (("roaming", Machine()), ("roaming, legs curve", Machine(curvature_sd_per_m=0.03))):
            site = make()
            yield "roaming", f"{kind}", site, drive(site.ground(site.stations[0]), site.stations[0], machine, rng, HOURS).trail
    machine = Machine(turning_radius_m=0.4, slows_at_edge=True, rim_round_each_night=True)
    for name in ("rectangle", "ell"):
        site = SHAPES[name]()
        yield "roaming", "roaming on arcs, round the edge first", site, drive(site.ground(site.stations[0]), site.stations[0], machine, rng, HOURS).trail
    for _, site in strips():
        yield "roaming", "roaming in strips and necks", site, drive(site.ground(site.stations[0]), site.stations[0], Machine(), rng, HOURS).trail
    for kind, spacing_m in SPACINGS_M.items():
        for name, heading in (("rectangle", 0.1), ("ell", math.pi / 2), ("skew", 0.4)):
            site = replace(SHAPES[name](), setback_m=0.25)
            machine = Machine(pattern="lanes", lane_spacing_m=spacing_m, lane_heading=heading)
            yield "lanes", kind, site, drive(site.ground(site.stations[0]), site.stations[0], machine, rng, HOURS).trail
    for name, heading in (("rectangle", 0.1), ("ring", math.pi / 2)):
        site = replace(SHAPES[name](), setback_m=0.25)
        machine = Machine(pattern="lanes", lane_heading=heading, headland_rounds=2)
        yield "lanes", "lanes with headlands", site, drive(site.ground(site.stations[0]), site.stations[0], machine, rng, HOURS).trail
    for name in ("rectangle", "skew"):
        yield "lanes", "lanes, every third first", SHAPES[name](), every_third(SHAPES[name](), rng)
        yield "spiral", "spiral inwards, ring by ring", SHAPES[name](), inwards(SHAPES[name](), rng)
    tall = Site(Polygon([(0, 0), (14, 1), (19, 9), (11, 15), (2, 11)]), ((0.0, 0.0),))
    yield "spiral", "spiral inwards, ring by ring", tall, inwards(tall, rng)


SIMULATED = (
    ("roaming", "roaming", ""),
    ("roaming", "roaming on arcs, legs curve", "--turning-radius 0.4m --slowing 0.6m --curvature 0.02/m"),
    ("roaming", "roaming, heading wanders, on a slope", "--heading-walk 3deg --slope-pull 0.05/m --downhill 200deg --slip 5"),
    ("roaming", "roaming, round the edge each outing", "--edge-round outing"),
    ("lanes", "lanes", "--pattern lanes"),
    ("lanes", "lanes with headlands and pauses", "--pattern lanes --headland-rounds 2 --lane-pause 3s"),
    ("spiral", "spiral outwards", "--pattern spiral"),
    ("combined", "combined", "--pattern combined"),
)


def asked(plan, log):
    out = subprocess.run([PATTERN, plan, log], capture_output=True, text=True, timeout=300)
    if out.returncode:
        return {"luck": "refused", "guess": {"pattern": "refused", "error": out.stderr.strip()}}
    return json.loads(out.stdout)


def one_seed(seed, only, grade):
    """Rows (generator, kind, pattern, guess, luck) of one seed."""
    rng = np.random.default_rng([FIRST_SEED, seed])
    rows = []

    def note(generator, kind, pattern, answer):
        rows.append((generator, kind, pattern, answer["guess"]["pattern"], answer["luck"], answer["guess"]))

    with tempfile.TemporaryDirectory() as folder:
        folder = pathlib.Path(folder)
        for number, (pattern, kind, site, trail) in enumerate(by_this_folder(rng)):
            if only and only not in kind:
                continue
            plan, log = folder / f"plan-{number}.geojson", folder / f"log-{number}.csv"
            write_plan(plan, site)
            times = np.arange(0, min(trail.now_s, NIGHT_S))
            error = drifting(GRADES[grade], len(times), np.random.default_rng([FIRST_SEED, seed, number]))
            write_log(log, times, trail.at(times) + error)
            note("other", kind, pattern, asked(plan, log))
        sites = {**{name: make() for name, make in SHAPES.items()}, **dict(strips())}
        for name, site in sites.items():
            plan = folder / f"{zlib.crc32(name.encode())}.geojson"
            write_plan(plan, site)
            for number, (pattern, kind, options) in enumerate(SIMULATED):
                is_strip = name not in SHAPES
                kind = "roaming in strips and necks" if is_strip and not options else kind
                if (is_strip and pattern != "roaming") or (only and only not in kind):
                    continue
                log = folder / f"{name}-{number}.csv"
                call = f"simulate --hours {HOURS} --seed {FIRST_SEED + seed} --format csv --cut-width 22cm --noise {NOISE[grade]} {options}".split()
                subprocess.run([TUSSOCK, *call, "--plan", plan, "--out", log], check=True, capture_output=True)
                note("simulate", kind, pattern, asked(plan, log))
    return rows


def table(rows):
    lines = ["| generator | driven | drives | right | undetermined | false | luck right |", "|---|---|---|---|---|---|---|"]
    groups, sums = collections.defaultdict(list), collections.Counter()
    for row in rows:
        groups[row[0], row[2], row[1]].append(row)
    for (generator, pattern, kind), drives in groups.items():
        count = collections.Counter("right" if row[3] == pattern else "undetermined" if row[3] == "undetermined" else "false" for row in drives)
        # Lanes are lanes; chance rules roaming. Spirals and mixtures are neither.
        lucky = sum(row[4] == pattern for row in drives) if pattern in ("lanes", "roaming") else None
        told = "–" if lucky is None else f"{lucky} of {len(drives)}"
        lines.append(f"| {generator} | {kind} | {len(drives)} | {count['right']} | {count['undetermined']} | {count['false']} | {told} |")
        sums.update(count, drives=len(drives), lucky=lucky or 0, asked=0 if lucky is None else len(drives))
    lines.append(
        f"| both | all | {sums['drives']} | {sums['right']} | {sums['undetermined']} | {sums['false']} | {sums['lucky']} of {sums['asked']} |"
    )
    return lines


def told(rows):
    """The table; each drive that was taken for something else on stdout."""
    rows = list(rows)
    lines = table(rows)
    print("\n".join(lines))
    for row in rows:
        if row[3] not in (row[2], "undetermined") or (row[2] in ("lanes", "roaming") and row[4] != row[2]):
            print(row[:5], {key: round(value, 2) if isinstance(value, float) else value for key, value in row[5].items() if key != "evidence"})
    return lines


def main():
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--seeds", type=int, default=3)
    options.add_argument("--first-seed", type=int, default=1)
    options.add_argument("--grades", default="cm,dm")
    options.add_argument("--jobs", type=int, default=1)
    options.add_argument("--only")
    options.add_argument("--write", type=pathlib.Path)
    wish = options.parse_args()
    lines = []
    with concurrent.futures.ProcessPoolExecutor(wish.jobs) as pool:
        for grade in wish.grades.split(","):
            seeds = range(wish.first_seed, wish.first_seed + wish.seeds)
            parts = pool.map(one_seed, seeds, [wish.only] * wish.seeds, [grade] * wish.seeds)
            lines += ["", f"Positions at {NOISE[grade]}s:", "", *told(row for part in parts for row in part)]
    if wish.write:
        text = wish.write.read_text()
        begin, end = text.index(MARKS[0]) + len(MARKS[0]), text.index(MARKS[1])
        wish.write.write_text(text[:begin] + "\n" + "\n".join(lines) + "\n\n" + text[end:])


if __name__ == "__main__":
    main()
