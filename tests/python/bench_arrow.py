"""What does turning a log of 28,800 fixes into Arrow cost, beside analysing it? A statement, not a test.

    python tests/python/bench_arrow.py
"""

import statistics
import time

import tussock


def seconds(work, times):
    taken = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        taken.append(time.perf_counter() - start)
    return statistics.median(taken)


plan = tussock.invent_garden("islands", seed=1, area_m2=(1300.0, 1500.0))
trace = tussock.simulate(plan, hours=8.0, seed=1, truth_cell_m=0.1).trace
arrow_s = seconds(trace.to_arrow, 50)
analysed_s = seconds(lambda: tussock.analyse(trace, plan=plan, cut_width_m=0.22, suggestions=False), 3)
print(f"{len(trace)} fixes: Arrow {arrow_s * 1e3:.2f} ms, analysis {analysed_s * 1e3:.0f} ms, {arrow_s / analysed_s:.2%}")
