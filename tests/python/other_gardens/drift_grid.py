"""Do the intervals hold whatever the drift of the receiver is?

Plain gardens of another hand, logged under drifts of 3 s to 1000 s and 0.1 m to 3 m, of the first order (Gauss-Markov) and of the second
(Matern 3/2: the receiver's own filter), each on top of a white part of a tenth. One row a law: what the judge prints of them.

    TUSSOCK=target/release/tussock python3 tests/python/other_gardens/drift_grid.py [--seeds 1] [--first-seed 0] [--jobs 1] [--json FILE]
"""

import argparse
import pathlib
import statistics
from dataclasses import replace

import judge
import numpy as np
import receivers
from kinds import KINDS
from receivers import Law, Sky
from scipy.signal import lfilter

TIMES_S = (3, 10, 30, 100, 300, 1000)
SIZES_M = (0.1, 0.3, 1.0, 2.0, 3.0)
WHITE_SHARE = 0.1
GRADE = "m"  # where the judge looks for reaches; the law comes from here
BURN_IN = 20  # drift times until a filter has forgotten its start


def second_order(law, count, rng):
    """Matern 3/2: two equal first-order filters one after the other, scaled to the size of the law."""
    keep = np.exp(-np.sqrt(3) / law.drift_s)
    burnt = int(BURN_IN * law.drift_s) + 1
    pushes = rng.normal(size=(count + burnt, 2))
    drift = lfilter([1.0], [1.0, -2 * keep, keep * keep], pushes, axis=0)[burnt:]
    # Variance of the discrete filter with a double pole.
    variance = (1 + keep**2) / (1 - keep**2) ** 3
    return drift * law.drift_m / np.sqrt(variance) + law.white_m * rng.normal(size=(count, 2))


def judged(order, drift_s, drift_m, number, seed):
    """One plain garden under one law."""
    law = Law(WHITE_SHARE * drift_m, drift_m, float(drift_s))
    garden = KINDS["plain"]()[number]
    sky = Sky(laws={GRADE: law})
    KINDS["drift_grid"] = lambda: [replace(garden, sky=sky)]
    first_order = receivers.drifting
    if order == 2:
        receivers.drifting = lambda law, count, rng, heavy_tails=False: second_order(law, count, rng)
    try:
        rows = judge.judged("drift_grid", 0, seed, [GRADE], [], None)
    finally:
        receivers.drifting = first_order
    return [row | {"order": order, "drift_s": drift_s, "drift_m": drift_m} for row in rows]


def printed(rows):
    """A row for each law, and one for each order."""
    print("| order | drift time s | drift m | runs | error, median | ninth tenth | as logged, median | holds | width |")
    print("|--:|--:|--:|--:|--:|--:|--:|--:|--:|")
    for order in (1, 2):
        of_order = [row for row in rows if row["order"] == order]
        for drift_s in TIMES_S:
            for drift_m in SIZES_M:
                chosen = [row for row in of_order if (row["drift_s"], row["drift_m"]) == (drift_s, drift_m)]
                if chosen:
                    line([order, drift_s, drift_m], chosen)
        if of_order:
            line([order, "all", "all"], of_order)


def line(names, rows):
    answered = [row for row in rows if "failed" not in row and row["error_points"] is not None]
    if not answered:
        print("| " + " | ".join([*map(str, names), str(len(rows)), *["–"] * 5]) + " |")
        return
    errors = sorted(abs(row["error_points"]) for row in answered)
    cells = [
        str(len(rows)),
        f"{statistics.median(errors):.2f}",
        f"{errors[round(0.9 * (len(errors) - 1))]:.2f}",
        f"{statistics.median(abs(row['as_logged_error_points']) for row in answered):.2f}",
        f"{sum(row['holds'] for row in answered)} of {len(answered)}",
        f"{statistics.mean(row['width_points'] for row in answered):.1f}",
    ]
    print("| " + " | ".join([*map(str, names), *cells]) + " |")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--seeds", type=int, default=1)
    parser.add_argument("--first-seed", type=int, default=0)
    parser.add_argument("--gardens", type=int, default=2, help="of the five plain shapes")
    parser.add_argument("--jobs", type=int, default=1)
    parser.add_argument("--json", type=pathlib.Path)
    asked = parser.parse_args()
    tasks = [
        (order, drift_s, drift_m, number, seed)
        for order in (1, 2)
        for drift_s in TIMES_S
        for drift_m in SIZES_M
        for number in range(asked.gardens)
        for seed in range(asked.first_seed, asked.first_seed + asked.seeds)
    ]
    printed(judge.gathered(judged, tasks, asked.jobs, asked.json))


if __name__ == "__main__":
    main()
