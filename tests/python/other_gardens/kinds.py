"""Which gardens are judged? One function a kind, in the order of KINDS; each gives a few gardens of differing shape.

The docstring of a kind says what differs from a healthy garden. What a right answer names is in `Expected`.
"""

import math
from dataclasses import replace

from gardens import SHAPES, Expected, Garden, Site, disc, ell, neck, rectangle, ring, skew
from machines import Machine, Slope, Stall
from receivers import FAST_DRIFT, Sky
from shapely import affinity
from shapely.geometry import Polygon, box

FITS = Expected(plan_fit=("fits",))


def over(names, **differs):
    """Gardens of the named shapes that differ from healthy ones in the same way."""
    return [Garden(name, SHAPES[name](), **differs) for name in names]


def in_lanes(name, **differs):
    """A garden that is driven in lanes. They leave little but the rim, so it is broader: a quarter of a metre."""
    return Garden(name, replace(SHAPES[name](), setback_m=0.25), Machine(pattern="lanes", **differs))


def plain():
    """Straight legs, random turns on the spot: healthy."""
    return over(SHAPES, expected=FITS)


def curved_legs():
    """Every leg bends by a curvature of its own, 0.02 to the metre as a rule."""
    return over(["rectangle", "ell", "skew"], machine=Machine(curvature_sd_per_m=0.02))


def turning_radius():
    """A radius of 0.4 m, slower before the edge, pace varies by 15 % within a leg."""
    machine = Machine(turning_radius_m=0.4, slows_at_edge=True, pace_sd=0.15)
    return over(["rectangle", "ell", "ring"], machine=machine)


def lanes():
    """Lanes 0.19 m apart with a pause at each end, the lawn once."""
    headings = {"rectangle": 0.0, "ell": math.pi / 2, "skew": 0.4}
    return [in_lanes(name, lane_heading=heading) for name, heading in headings.items()]


def headland_lanes():
    """Two rounds along every edge, then lanes."""
    headings = {"rectangle": 0.1, "ring": math.pi / 2}
    return [in_lanes(name, lane_heading=heading, headland_rounds=2) for name, heading in headings.items()]


def strip():
    """A strip 2.5 m wide beside a normal lawn: as an arm, and between a bed and the edge."""
    arm = Polygon([(0, 0), (18, 0), (18, 3), (32, 3), (32, 5.5), (18, 5.5), (18, 16), (0, 16)])
    beside = Site(box(0, 0, 23, 17), ((12.0, 17.0),), {"bed": box(3, 2.5, 20, 4.5)})
    return [Garden("arm", Site(arm, ((0.0, 8.0),))), Garden("behind a bed", beside)]


def much_edge():
    """Necks and many corners."""
    comb = [(0, 0), (27, 0), (27, 14), (22, 14), (22, 6), (19, 6), (19, 15), (12, 15), (12, 7), (9, 7), (9, 17), (0, 17)]
    rooms = [(0, 0), (10, 0), (10, 4), (12, 4), (12, 0), (22, 0), (22, 9), (18, 9), (18, 11), (24, 11), (24, 21), (8, 21), (8, 11),
             (15.5, 11), (15.5, 9), (12, 9), (12, 6.5), (10, 6.5), (10, 9), (0, 9)]  # fmt: skip
    return [
        Garden("neck", neck()),
        Garden("comb", Site(Polygon(comb), ((0.0, 6.0),), {"post": disc(4, 12, 0.3), "tree": disc(15, 3, 0.7)})),
        Garden("rooms", Site(Polygon(rooms), ((3.0, 0.0),), {"bed": box(12, 14, 15, 16.5)}, setback_m=0.1)),
    ]


def silences():
    """An hour without fixes that begins while it drives; and no fixes under a tree."""
    return [
        *over(["rectangle", "skew"], sky=Sky(silent_s=3600.0)),
        Garden("ell, tree", ell(), sky=Sky(tree=(18.0, 5.0, 2.5))),
        Garden("ring, tree", ring(), sky=Sky(tree=(22.0, 18.0, 3.0))),
    ]


def plan_shifted():
    """The plan lies beside the garden by 0.3, 1.4 and 3 m."""
    shifts = {"rectangle": (0.3, 200.0), "ell": (1.4, 75.0), "skew": (3.0, 310.0)}
    return [
        Garden(
            f"{name}, {by_m} m",
            SHAPES[name](),
            moved=(by_m * math.cos(math.radians(bearing_deg)), by_m * math.sin(math.radians(bearing_deg)), 0.0),
            expected=Expected(plan_fit=("moved",)),
        )
        for name, (by_m, bearing_deg) in shifts.items()
    ]


def plan_turned():
    """The plan is turned by half a degree and by two."""
    return [
        Garden(f"{name}, {turn_deg} degrees", SHAPES[name](), moved=(0.0, 0.0, turn_deg), expected=Expected(plan_fit=("moved",)))
        for name, turn_deg in {"ell": 0.5, "ring": 2.0}.items()
    ]


def side_too_far_out():
    """One side of the plan is drawn 0.4 m too far out."""
    wide = Polygon([(0, 0), (25, 0), (25, 10), (12.4, 10), (12.4, 23), (0, 23)])
    expected = Expected(plan_fit=("edges_differ",))
    return [
        Garden("rectangle", rectangle(), drawn=replace(rectangle(), lawn=box(0, 0, 24.4, 15)), expected=expected),
        Garden("ell", ell(), drawn=replace(ell(), lawn=wide), expected=expected),
    ]


def another_garden():
    """The plan of another garden, of about the same size, at the same place."""
    expected = Expected(plan_fit=("another_garden",), comparable=False)
    return [
        Garden("ell for rectangle", rectangle(), drawn=ell(), expected=expected),
        Garden("skew for ell", ell(), drawn=skew(), moved=(-3.0, 2.0, 0.0), expected=expected),
        Garden("ring for neck", neck(), drawn=ring(), moved=(3.0, -4.0, 0.0), expected=expected),
    ]


def bent_sky():
    """An error fixed to a place, greatest at one wall: towards the middle, and outwards."""
    return [
        Garden("rectangle, inwards", rectangle(), sky=Sky(bend=((24.0, 7.0), (1.0, 0.0), -1))),
        Garden("ell, inwards", ell(), sky=Sky(bend=((6.0, 23.0), (0.0, 1.0), -1))),
        Garden("rectangle, outwards", rectangle(), sky=Sky(bend=((12.0, 15.0), (0.0, 1.0), 1))),
        Garden("ring, outwards", ring(), sky=Sky(bend=((0.0, 10.0), (-1.0, 0.0), 1))),
    ]


def poor_sky():
    """Six times the error over a quarter of the lawn."""
    return [
        Garden("rectangle", rectangle(), sky=Sky(poor=box(12, 7.5, 30, 20))),
        Garden("skew", skew(), sky=Sky(poor=box(-5, 7, 14, 30))),
        Garden("ring", ring(), sky=Sky(poor=box(13, -5, 30, 9))),
    ]


def rounded():
    """Coordinates rounded to 1e-5 degrees, and a tenth of the fixes missing."""
    return over(["rectangle", "ell"], sky=Sky(rounded_deg=1e-5, lost_share=0.1))


def driven_zone():
    """A zone that is drawn and driven over everywhere."""
    zones = {"rectangle": box(15, 5, 19, 9), "skew": Polygon([(12, 14), (17, 13), (18, 17), (13, 18)])}
    return [
        Garden(name, SHAPES[name](), drawn=replace(SHAPES[name](), zones={"old bed": zone}), expected=Expected(named="driven_zones"))
        for name, zone in zones.items()
    ]


def island_missing():
    """Something round that the machine never enters stands in no plan."""
    places = {"rectangle": (16.0, 8.0, 0.5), "ell": (18.0, 5.0, 1.0), "ring": (5.0, 17.0, 1.0)}
    gardens = []
    for name, place in places.items():
        drawn = SHAPES[name]()
        site = replace(drawn, obstacles={**drawn.obstacles, "new tree": disc(*place)})
        gardens.append(Garden(f"{name}, {place[2]} m", site, drawn=drawn, expected=Expected(named="unlisted_islands")))
    return gardens


def two_machines():
    """Two machines with a station each, on one lawn, in two logs."""
    wide = Site(box(0, 0, 31, 21), ((3.0, 0.0), (31.0, 16.0)), {"tree": disc(12, 12, 0.8)})
    skewed = replace(skew(), stations=((0.0, 1.0), (17.0, 22.0)))
    return [Garden("rectangle", wide), Garden("skew", skewed, hours=6.0)]


def sparse():
    """A fix every 2, 3 and 20 seconds."""
    return [
        Garden(f"{name}, {period_s} s", SHAPES[name](), sky=Sky(period_s=period_s))
        for name, period_s in {"rectangle": 2, "ell": 3, "ring": 20}.items()
    ]


def other_laws():
    """A drift that forgets within 10 s (1 m at metres), and heavy tails (t, 3 degrees of freedom)."""
    return [
        *(replace(garden, name=f"{garden.name}, fast drift") for garden in over(["rectangle", "ell"], sky=Sky(laws=FAST_DRIFT))),
        *(replace(garden, name=f"{garden.name}, heavy tails") for garden in over(["rectangle", "skew"], sky=Sky(heavy_tails=True))),
    ]


def closed_corner():
    """A corner that cannot be entered: behind something that the plan lacks, or behind a zone that was laid too large."""
    fence = affinity.rotate(box(11.95, 10.6, 31.95, 10.9), -45, origin=(21.95, 10.75))
    fenced = replace(rectangle(), obstacles={"fence": fence.intersection(box(0, 0, 24, 15))})
    hedge = replace(ell(), obstacles={**ell().obstacles, "hedge": box(0.1, 18.0, 12.0, 18.5)})
    bed = Polygon([(0.2, 5.5), (6, 5.5), (6, 0.2), (4.5, 0.2), (4.5, 4.2), (0.2, 4.2)])
    zoned = replace(rectangle(), zones={"bed": bed}, stations=((12.0, 0.0),))
    walled, misplaced = Expected(causes=("walled_off",)), Expected(causes=("walled_off", "zone_misplaced"))
    return [
        Garden("rectangle, fence", fenced, drawn=rectangle(), expected=replace(walled, named="unlisted_obstacles")),
        Garden("ell, hedge", hedge, drawn=ell(), expected=replace(walled, named="unlisted_obstacles")),
        Garden("rectangle, zone", zoned, expected=misplaced),
    ]


def rim_rounds():
    """A round along the boundary each night, then at random."""
    return [
        *over(["rectangle", "ell"], machine=Machine(rim_round_each_night=True)),
        Garden("skew, two nights", skew(), machine=Machine(rim_round_each_night=True), hours=5.0, nights=2),
    ]


def spirals():
    """Short spirals outwards now and then, else at random."""
    return over(["rectangle", "skew"], machine=Machine(spiral_share=0.06))


def stepped():
    """A jump of the receiver by 3 m, midway, that stays."""
    return over(["rectangle", "ring"], sky=Sky(step_m=3.0))


def slopes():
    """The nose is pulled downhill, over the whole lawn or a part of it."""
    south = -math.pi / 2
    return [
        Garden("rectangle", rectangle(), machine=Machine(slope=Slope(0.04, south, -5.0))),
        Garden("skew, eastern part", skew(), machine=Machine(slope=Slope(0.06, 0.3, 15.0))),
    ]


def no_station():
    """The plan lacks the station."""
    return [Garden(name, SHAPES[name](), drawn=replace(SHAPES[name](), stations=())) for name in ["rectangle", "ell", "neck"]]


def stuck_spot():
    """Something holds the machine fast, five times for three to ten minutes, away from the station."""
    places = {"rectangle": (15.0, 9.0), "ell": (20.0, 3.0), "skew": (12.0, 15.0)}
    return [Garden(name, SHAPES[name](), stall=Stall(place)) for name, place in places.items()]


def recorded_errors():
    """Recorded errors of receivers, each series of a folder, in place of a law; judged once, whatever the grade."""
    return over(["rectangle", "ell"], recorded=True)


KINDS = {
    kind.__name__: kind
    for kind in (
        plain, curved_legs, turning_radius, lanes, headland_lanes, strip, much_edge, silences, plan_shifted, plan_turned,
        side_too_far_out, another_garden, bent_sky, poor_sky, rounded, driven_zone, island_missing, two_machines, sparse,
        other_laws, closed_corner, rim_rounds, spirals, stepped, slopes, no_station, stuck_spot, recorded_errors,
    )
}  # fmt: skip
