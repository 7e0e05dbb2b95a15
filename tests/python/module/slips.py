"""Ten slips and more that type checkers have to catch, each on a line that says so; all other lines are right. Never run."""

import tussock

plan = tussock.invent_garden("convex", seed=1)
night = tussock.simulate(plan, hours=1.0)
found = tussock.analyse(night.trace, plan=plan, cut_width_m=0.22)
assert found.coverage is not None
print(found.coverage.visited_fraction.estimate + 1.0)
print(found.coverage.visited_fracton)  # slip
print(found.coverage.visited_fraction.estimat)  # slip
print(found.missed_pocket)  # slip
for pocket in found.missed_pockets or ():
    print(pocket.area_m2, pocket.why.code, pocket.why["values"])
    print(pocket.area)  # slip
    print(pocket.why.codes)  # slip
measures = tussock.measures(night.trace, plan=plan)
print(measures.overlap_m)  # slip
print(measures.lane_spacing.overlap_m)  # slip
if measures.lane_spacing is not None:
    print(measures.lane_spacing.overlap_m + measures.visits.gini)
print(tussock.guess_pattern(night.trace).pattern == "boustrophedon")  # slip
print(night.truth.visited)  # slip
print(tussock.spread_of([[0.1], [0.2]]).night)  # slip
print(tussock.inspect(night.trace).log_verdict.advise)  # slip
print(tussock.analyse(night.trace, cut_width=0.22))  # slip
print(tussock.compare_patterns({"a": ([1.0], [2.0])}).difference + 1.0)  # slip
print(found.settings.machine.cut_width)  # slip
print(tussock.compare(found, found).diference)  # slip
print(tussock.compare(found, found).difference)
