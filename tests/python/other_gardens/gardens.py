"""What do the invented gardens look like? Shapes in metres, and one garden with everything that is true of it and everything that is told.

Five shapes: a rectangle, an L with an island, two lawns and a neck, a skew polygon with two round obstacles, a ring round a house.
"""

from dataclasses import dataclass, field

from ground import Ground
from machines import Machine, Stall
from receivers import Sky
from shapely.geometry import LineString, Point, Polygon, box
from shapely.ops import unary_union

OBSTACLE_ROOM_M = 0.23  # half a body and a little: so far the machine's middle keeps from things that stand


def disc(east_m, north_m, radius_m):
    return Point(east_m, north_m).buffer(radius_m, quad_segs=6)


@dataclass(frozen=True)
class Site:
    """Lawn, things on it, stations. `setback_m`: how far the machine's middle keeps from the edge of lawn and zones."""

    lawn: Polygon
    stations: tuple
    obstacles: dict = field(default_factory=dict)
    zones: dict = field(default_factory=dict)
    setback_m: float = 0.15
    guide: tuple = None

    @property
    def grass(self):
        return self.lawn.difference(unary_union([*self.obstacles.values(), *self.zones.values()]))

    @property
    def station_points(self):
        return [Point(station) for station in self.stations]

    @property
    def guide_line(self):
        return None if self.guide is None else LineString(self.guide)

    def ground(self, station):
        """Where the middle of the machine may be that starts at a station: the piece that is nearest to it."""
        standing = [thing.buffer(max(OBSTACLE_ROOM_M, self.setback_m), quad_segs=4) for thing in self.obstacles.values()]
        zones = [zone.buffer(self.setback_m, quad_segs=4) for zone in self.zones.values()]
        open_ground = self.lawn.buffer(-self.setback_m, quad_segs=4).difference(unary_union(standing + zones)).simplify(0.002)
        pieces = [piece for piece in getattr(open_ground, "geoms", [open_ground]) if piece.area > 1.0]
        return Ground(min(pieces, key=lambda piece: piece.distance(Point(station))))

    def walled_off(self, cut_width_m=0.22):
        """Pieces of grass that no disc can get to, 0.8 m wide and 3 m² at least."""
        reached = unary_union([self.ground(station).polygon.buffer(cut_width_m / 2) for station in self.stations])
        left = self.grass.difference(reached).buffer(-0.4).buffer(0.4)
        return [piece for piece in getattr(left, "geoms", [left]) if piece.area > 3.0]


@dataclass(frozen=True)
class Expected:
    """What an answer should name, where a kind has a known truth. Empty: nothing in particular.

    `plan_fit`: verdicts that are right. `named`: list of the findings' `plan_fit` that must not be empty.
    `causes`: causes that are right for the ground which cannot be reached. `comparable`: whether a visited fraction can be judged at all.
    """

    plan_fit: tuple = ()
    named: str = None
    causes: tuple = ()
    comparable: bool = True


@dataclass(frozen=True)
class Garden:
    """One garden to be judged: what is so (`site`, `machine`, `sky`) and what the plan says (`drawn`, `moved`)."""

    name: str
    site: Site
    machine: Machine = Machine()
    sky: Sky = Sky()
    drawn: Site = None
    moved: tuple = (0.0, 0.0, 0.0)
    hours: float = 8.0
    nights: int = 1
    stall: Stall = None
    recorded: bool = False  # recorded errors are laid on, in place of a grade
    expected: Expected = Expected()

    @property
    def plan(self):
        return self.drawn or self.site


def rectangle():
    return Site(box(0, 0, 24, 15), ((7.0, 0.0),), setback_m=0.15)


def ell():
    lawn = Polygon([(0, 0), (25, 0), (25, 10), (12, 10), (12, 23), (0, 23)])
    return Site(lawn, ((0.0, 5.0),), {"pond": disc(6, 13.5, 1.3)}, setback_m=0.12)


def neck():
    corners = [(0, 0), (14, 0), (14, 5.5), (18.5, 5.5), (18.5, -1), (34, -1), (34, 12), (18.5, 12), (18.5, 8.5), (14, 8.5),
               (14, 14), (0, 14)]  # fmt: skip
    guide = ((4.0, 0.0), (4.0, 3.0), (13.0, 7.0), (20.5, 7.0), (26.0, 4.0))
    return Site(Polygon(corners), ((4.0, 0.0),), {"tree": disc(27, 8, 0.6)}, setback_m=0.18, guide=guide)


def skew():
    lawn = Polygon([(0, 1), (11, -4), (26, 0), (31, 13), (17, 22), (3, 17)])
    return Site(lawn, ((0.0, 1.0),), {"tree": disc(20, 9, 1.4), "bed": disc(8.5, 8, 0.7)}, setback_m=0.1)


def ring():
    return Site(box(0, 0, 26, 21), ((26.0, 4.0),), {"house": box(8, 7, 19, 15)}, setback_m=0.2)


SHAPES = {"rectangle": rectangle, "ell": ell, "neck": neck, "skew": skew, "ring": ring}
