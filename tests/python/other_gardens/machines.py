"""How does a mower drive for a night? A simulator that shares nothing with the one that is judged.

A drive is a trail: places (m, east and north) of the antenna with their times (s), between which the machine moves straight and
evenly. That is exact for straight legs; arcs and bends are straight pieces of 0.1 m at most. The cutting disc lies under the antenna.
"""

import math
from dataclasses import dataclass

import numpy as np
from ground import unit
from shapely import affinity
from shapely.geometry import LineString, Point, Polygon

MINUTE_S, HOUR_S, DAY_S = 60.0, 3600.0, 86_400.0
TURN_RATE_RAD_PER_S = math.radians(70.0)
BEFORE_TURN_S = 0.8
STOP_SD_M = 0.015
LEAST_LEG_M = 0.4
PIECE_M = 0.35
SLOW_ZONE_M, SLOW_SPEED_MPS = 0.6, 0.12
MOST_LEGS_HOME = 80
GAP_TO_EDGE_M = 0.01


@dataclass(frozen=True)
class Slope:
    """Ground that pulls the machine's nose downhill: curvature = pull x sine of the angle to downhill, on one side of a line."""

    pull_per_m: float
    downhill: float
    from_east_m: float


@dataclass(frozen=True)
class Stall:
    """A place that holds the machine fast: so many times, for so many seconds, when it comes within reach."""

    place: tuple
    times: int = 5
    reach_m: float = 0.5
    shortest_s: float = 180.0
    longest_s: float = 600.0


@dataclass(frozen=True)
class Machine:
    """One mower. Lengths in metres, times in seconds."""

    speed_mps: float = 0.35
    pattern: str = "random"  # or "lanes"
    curvature_sd_per_m: float = 0.0
    slope: Slope = None
    turning_radius_m: float = 0.0
    slows_at_edge: bool = False
    pace_sd: float = 0.0
    spiral_share: float = 0.0
    rim_round_each_night: bool = False
    lane_spacing_m: float = 0.19
    lane_sd_m: float = 0.01
    lane_heading: float = 0.0
    lane_pause_s: float = 3.0
    headland_rounds: int = 0
    shortest_drive_s: float = 60 * MINUTE_S
    longest_drive_s: float = 75 * MINUTE_S
    charge_s: float = 60 * MINUTE_S


class Trail:
    """Places and times, in the order in which they were driven."""

    def __init__(self, place):
        self.places, self.times = [np.asarray(place, float)], [0.0]

    @property
    def now_s(self):
        return self.times[-1]

    def go(self, way, speed_mps):
        """Drives along a way; the speed is one number or one for each piece."""
        way = np.asarray(way, float)
        if np.hypot(*(way[0] - self.places[-1])) > 1e-9:
            way = np.vstack([self.places[-1], way])
            speed_mps = speed_mps if np.isscalar(speed_mps) else np.concatenate([speed_mps[:1], speed_mps])
        lengths = np.hypot(*np.diff(way, axis=0).T)
        times = self.now_s + np.cumsum(lengths / speed_mps)
        keep = lengths > 0
        self.places += list(way[1:][keep])
        self.times += list(times[keep])

    def wait(self, seconds):
        self.places.append(self.places[-1])
        self.times.append(self.now_s + seconds)

    def at(self, times_s):
        """Where the machine is at given times (n, 2)."""
        places, times = np.array(self.places), np.array(self.times)
        return np.column_stack([np.interp(times_s, times, places[:, axis]) for axis in (0, 1)])


@dataclass(frozen=True)
class Drive:
    """What really happened: the trail, the nights (first and last second of each), and where and when the machine was held fast."""

    trail: Trail
    nights: tuple
    stalls: tuple


def drive(ground, station, machine, rng, hours=8.0, nights=1, guide=None, stall=None):
    """Drives some nights. `guide` is a line from the station outwards; every night begins and ends at the station."""
    driver = _Driver(ground, station, machine, rng, guide, stall, nights * hours)
    spans = []
    for night in range(nights):
        begin_s = night * DAY_S
        if driver.trail.now_s < begin_s:
            driver.trail.wait(begin_s - driver.trail.now_s)
        end_s = begin_s + hours * HOUR_S
        driver.night(end_s)
        spans.append((begin_s, max(end_s, driver.trail.now_s)))
    return Drive(driver.trail, tuple(spans), tuple(driver.stalls))


class _Driver:
    def __init__(self, ground, station, machine, rng, guide, stall, hours):
        self.ground, self.machine, self.rng = ground, machine, rng
        self.station = np.asarray(station, float)
        self.gate = ground.nearest(station)
        self.guide = None if guide is None else np.asarray(guide, float)
        self.trail = Trail(station)
        self.heading = 0.0
        self.lanes = lanes_of(ground, machine, rng) if machine.pattern == "lanes" else None
        self.stall, self.stalls = stall, []
        self.stall_gap_s = hours * HOUR_S / (2.5 * stall.times) if stall else 0.0

    @property
    def place(self):
        return self.trail.places[-1]

    def night(self, end_s):
        machine, round_due = self.machine, self.machine.rim_round_each_night
        self.trail.wait(self.rng.uniform(2, 6) * MINUTE_S)
        while end_s - self.trail.now_s > 30 * MINUTE_S and self.lanes != []:
            until_s = self.trail.now_s + self.rng.uniform(machine.shortest_drive_s, machine.longest_drive_s)
            self.outing(min(until_s, end_s - 10 * MINUTE_S), round_due)
            round_due = False
            self.trail.wait(min(machine.charge_s, max(0.0, end_s - self.trail.now_s)))
        if self.trail.now_s < end_s:
            self.trail.wait(end_s - self.trail.now_s)

    def outing(self, until_s, rim_round):
        self.leave()
        if rim_round:
            self.go(self.ground.round_rim(self.place))
        if self.lanes is not None:
            while self.lanes and self.trail.now_s < until_s:
                self.lane(self.lanes.pop(0))
            self.go(self.ground.route(self.place, self.gate))
            self.go([self.gate, self.station])
            return
        self.turn(free=True)
        while self.trail.now_s < until_s:
            self.leg()
        self.go_home()

    def leave(self):
        if self.guide is None:
            self.go([self.station, self.gate])
            return
        line = LineString(self.guide)
        self.go(_cut(line, self.rng.uniform(0.25, 1.0) * line.length))

    def go_home(self):
        for _ in range(MOST_LEGS_HOME):
            if self.guide is None and self.ground.at_rim(self.place):
                self.go(self.ground.round_rim(self.place, self.gate))
                self.go([self.gate, self.station])
                return
            if self.guide is not None and self.leg(home=True):
                return
            if self.guide is None:
                self.leg()
        self.go(self.ground.route(self.place, self.gate))
        self.go([self.gate, self.station])

    def go(self, way, slows=False):
        """Along a way at the machine's pace."""
        machine, line = self.machine, LineString(way)
        if line.length < 1e-6:
            return
        if machine.pace_sd == 0 and not slows:
            self.trail.go(way, machine.speed_mps)
            return
        pieces = max(2, math.ceil(line.length / (0.1 if slows and line.length < 2 * SLOW_ZONE_M else PIECE_M)))
        ends_m = np.linspace(0, line.length, pieces + 1)
        if slows and line.length > SLOW_ZONE_M:
            ends_m = np.union1d(ends_m, line.length - np.arange(0, SLOW_ZONE_M, 0.1))
        corners_m = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(way, axis=0).T))])
        ends_m = np.union1d(ends_m, np.minimum(corners_m, line.length))
        ends_m = ends_m[np.concatenate([[True], np.diff(ends_m) > 1e-6])]
        fine = np.column_stack([np.interp(ends_m, corners_m, np.asarray(way)[:, axis]) for axis in (0, 1)])
        pace, wobble = np.empty(len(fine) - 1), self.rng.normal()
        for number, innovation in enumerate(self.rng.normal(size=len(pace))):
            wobble = 0.8 * wobble + 0.6 * innovation
            pace[number] = min(max(1 + machine.pace_sd * wobble, 0.5), 1.5)
        speed = machine.speed_mps * pace
        if slows:
            share = np.clip((line.length - (ends_m[:-1] + ends_m[1:]) / 2) / SLOW_ZONE_M, 0, 1)
            speed = np.maximum(speed * share, SLOW_SPEED_MPS)
        self.trail.go(fine, speed)

    def leg(self, home=False):
        """One leg and the turn after it. With `home` it ends at the guide run, if it meets it, and goes home along it."""
        way, heading = self.way_ahead()
        if home:
            line = LineString(self.guide)
            met = LineString(way).intersection(line)
            if not met.is_empty:
                first = Point(min(_points(met), key=lambda point: LineString(way).project(Point(point))))
                self.go(_cut(LineString(way), LineString(way).project(first)))
                self.go(_cut(line, line.project(first))[::-1])
                return True
        way = self.held_fast(way)
        if self.machine.spiral_share and self.rng.random() < self.machine.spiral_share:
            way = self.spiralled(way)
        if self.machine.turning_radius_m:
            self.arc_turn(way, heading)
        else:
            self.go(way, self.machine.slows_at_edge)
            self.heading = heading
            self.turn()
        return False

    def way_ahead(self):
        machine, short_m = self.machine, abs(self.rng.normal(0, STOP_SD_M))
        if machine.slope is None and machine.curvature_sd_per_m == 0:
            return self.ground.straight(self.place, self.heading, short_m), self.heading
        own = self.rng.normal(0, machine.curvature_sd_per_m) if machine.curvature_sd_per_m else 0.0

        def curvature(place, heading):
            slope = machine.slope
            if slope is None or place[0] < slope.from_east_m:
                return own
            return own + slope.pull_per_m * math.sin(slope.downhill - heading)

        return self.ground.bent(self.place, self.heading, curvature, short_m)

    def turn(self, free=False):
        """On the spot, by 60 to 180 degrees to either side, until there is room ahead."""
        best = None
        for _ in range(40):
            angle = self.rng.uniform(-math.pi, math.pi) if free else self.rng.choice([-1, 1]) * self.rng.uniform(math.pi / 3, math.pi)
            room_m = self.ground.clear_m(self.place, self.heading + angle)
            if best is None or room_m > best[0]:
                best = room_m, angle
            if room_m > LEAST_LEG_M:
                break
        self.trail.wait(BEFORE_TURN_S + abs(best[1]) / TURN_RATE_RAD_PER_S)
        self.heading += best[1]

    def arc_turn(self, way, heading):
        """Turns without standing still, on an arc that begins as late before the edge as it can; else backs off and turns on the spot."""
        radius_m, line = self.machine.turning_radius_m, LineString(way)
        for _ in range(12):
            side, angle = self.rng.choice([-1, 1]), self.rng.uniform(math.pi / 3, math.pi)
            for before_m in np.arange(0.0, max(0.05, min(1.2, line.length)), 0.1):
                start = np.array(line.interpolate(line.length - before_m).coords[0])
                swept = np.linspace(0, angle, max(4, math.ceil(angle * radius_m / 0.06)))
                middle = start + radius_m * unit(heading + side * math.pi / 2)
                bearings = heading - side * math.pi / 2 + side * swept
                arc = middle + radius_m * np.column_stack([np.cos(bearings), np.sin(bearings)])
                if self.ground.inside(arc).all() and self.ground.clear_m(arc[-1], heading + side * angle) > LEAST_LEG_M:
                    if line.length - before_m > 0.02:
                        self.go(_cut(line, line.length - before_m), self.machine.slows_at_edge)
                    self.trail.go(arc, 0.2)
                    self.heading = heading + side * angle
                    return
        self.go(way, self.machine.slows_at_edge)
        back_m = min(0.3, 0.8 * LineString(way).length)
        self.trail.go(np.array([self.place, self.place - back_m * unit(heading)]), SLOW_SPEED_MPS)
        self.heading = heading
        self.turn()

    def held_fast(self, way):
        """If the way leads past a place that holds the machine: drives there, stands, and gives a new way on."""
        stall = self.stall
        if stall is None or len(self.stalls) >= stall.times:
            return way
        if self.trail.now_s < self.stall_gap_s * (len(self.stalls) + 0.5):
            return way
        line, spot = LineString(way), Point(stall.place)
        if line.distance(spot) > stall.reach_m:
            return way
        at_m = line.project(spot)
        if at_m < 0.1 or at_m > line.length - 0.1:
            return way
        self.go(_cut(line, at_m))
        begin_s = self.trail.now_s
        self.trail.wait(self.rng.uniform(stall.shortest_s, stall.longest_s))
        self.stalls.append((begin_s, self.trail.now_s, tuple(self.place)))
        return np.vstack([self.place, np.array(line.coords)[-1]]) if len(way) == 2 else _cut(line, at_m, rest=True)

    def spiralled(self, way):
        """Interrupts a leg for a spiral outwards (0.18 m a round), where there is room, and gives the rest of the leg."""
        line = LineString(way)
        at_m = self.rng.uniform(0.3, 0.7) * line.length
        middle = np.array(line.interpolate(at_m).coords[0])
        radius_m = min(self.rng.uniform(1.0, 2.0), self.ground.polygon.boundary.distance(Point(middle)) - 0.1)
        if radius_m < 0.7 or line.length < 1.5:
            return way
        angles = np.arange(0.0, 2 * math.pi * radius_m / 0.18, 0.15)
        reach_m = 0.18 * angles / (2 * math.pi)
        first = math.atan2(*(way[-1] - way[0])[::-1])
        curl = middle + np.column_stack([reach_m * np.cos(first + angles), reach_m * np.sin(first + angles)])
        self.go(_cut(line, at_m))
        self.go(curl)
        return self.ground.route(self.place, way[-1])

    def lane(self, lane):
        """To the start of a lane, along it, and a pause."""
        approach = self.ground.route(self.place, lane[0])
        if np.hypot(*(lane[0] - self.place)) > 1e-6:
            self.go(approach)
            self.trail.wait(self.machine.lane_pause_s / 2)
        self.go(lane)
        self.trail.wait(self.machine.lane_pause_s)


def lanes_of(ground, machine, rng):
    """Rounds along every edge if the machine drives them, then parallel lanes over the rest, piece by piece, nearest piece first."""
    ways, spacing_m = [], machine.lane_spacing_m
    for number in range(machine.headland_rounds):
        for part in _parts(ground.polygon.buffer(-GAP_TO_EDGE_M - number * spacing_m, join_style="mitre")):
            ways += [np.array(ring.coords) for ring in [part.exterior, *part.interiors]]
    inner_m = GAP_TO_EDGE_M + max(0, machine.headland_rounds - 0.5) * spacing_m
    rest = affinity.rotate(
        ground.polygon.buffer(-inner_m, join_style="mitre"), -machine.lane_heading, origin=(0, 0), use_radians=True
    )
    back = np.array([unit(machine.lane_heading), unit(machine.lane_heading + math.pi / 2)])
    pieces = [[np.array([[west, at], [east, at]]) @ back for west, east, at in piece] for piece in _lane_pieces(rest, machine, rng)]
    here = ways[-1][-1] if ways else np.zeros(2)
    while pieces:
        nearest = min(range(len(pieces)), key=lambda number: np.hypot(*(pieces[number][0][0] - here)))
        ways += [lane if number % 2 == 0 else lane[::-1] for number, lane in enumerate(pieces.pop(nearest))]
        here = ways[-1][-1]
    return ways


def _lane_pieces(shape, machine, rng):
    """Lanes from west to east (west end, east end, north), those in one piece that follow each other with no island between them."""
    west, south, east, north = shape.bounds
    pieces, before = [], []
    for level in np.arange(south + 0.05, north, machine.lane_spacing_m):
        at = level + rng.normal(0, machine.lane_sd_m)
        cut = shape.intersection(LineString([(west - 1, at), (east + 1, at)]))
        lanes = [(part.bounds[0], part.bounds[2], at) for part in getattr(cut, "geoms", [cut]) if part.length > 0.05]
        now = []
        for lane in lanes:
            beside = [piece for piece in before if _overlap(piece[-1], lane)]
            if len(beside) == 1 and sum(_overlap(beside[0][-1], other) for other in lanes) == 1:
                now.append((beside[0], lane))
            else:
                pieces.append([])
                now.append((pieces[-1], lane))
        for piece, lane in now:
            piece.append(lane)
        before = [piece for piece, _ in now]
    return pieces


def _overlap(one, other):
    return one[0] < other[1] and one[1] > other[0]


def _cut(line, length_m, rest=False):
    """The first metres of a line, or the rest of it."""
    corners = np.array(line.coords)
    at_m = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(corners, axis=0).T))])
    end = np.array(line.interpolate(length_m).coords[0])
    return np.vstack([end, corners[at_m > length_m]]) if rest else np.vstack([corners[at_m < length_m], end])


def _parts(shape):
    return [part for part in getattr(shape, "geoms", [shape]) if isinstance(part, Polygon) and not part.is_empty]


def _points(shape):
    return [point for part in getattr(shape, "geoms", [shape]) for point in part.coords]
