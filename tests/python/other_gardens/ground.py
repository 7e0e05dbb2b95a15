"""Where may the centre of a machine drive, and how far is it to the edge?

`Ground` is one connected polygon with holes, in metres (east, north): the lawn less everything in it, drawn in by the setback.
Rays and tests of points are exact for that polygon; round things are polygons already when they come here.
"""

import math

import numpy as np
from scipy.sparse.csgraph import dijkstra
from shapely.geometry import LineString, Point

# Ends stay this far inside, so that a point on an edge is never asked on which side it lies.
GAP_M = 0.003
BEND_STEP_M = 0.1
LONGEST_M = 60.0


def unit(heading):
    """The direction of a heading in radians, counted from east to north."""
    return np.array([math.cos(heading), math.sin(heading)])


class Ground:
    """One connected piece of ground."""

    def __init__(self, polygon):
        self.polygon = polygon
        self.rim = LineString(polygon.exterior.coords)
        rings = [np.array(polygon.exterior.coords), *(np.array(ring.coords) for ring in polygon.interiors)]
        self.start = np.vstack([ring[:-1] for ring in rings])
        self.along = np.vstack([np.diff(ring, axis=0) for ring in rings])
        self._routes = None

    def inside(self, places):
        """Which of the places (n, 2) lie on the ground: even or odd crossings of a ray to the east."""
        east, north = np.asarray(places, float).reshape(-1, 2).T[:, :, None]
        from_north, rise = self.start[:, 1], self.along[:, 1]
        crosses = (from_north <= north) != (from_north + rise <= north)
        with np.errstate(divide="ignore", invalid="ignore"):
            at_east = self.start[:, 0] + self.along[:, 0] * (north - from_north) / rise
        return (crosses & (at_east > east)).sum(axis=1) % 2 == 1

    def clear_m(self, place, heading):
        """Length of the straight way from a place to the first edge."""
        east, north = math.cos(heading), math.sin(heading)
        to_start = self.start - place
        across = east * self.along[:, 1] - north * self.along[:, 0]
        with np.errstate(divide="ignore", invalid="ignore"):
            ahead = (to_start[:, 0] * self.along[:, 1] - to_start[:, 1] * self.along[:, 0]) / across
            share = (to_start[:, 0] * north - to_start[:, 1] * east) / across
        hit = (ahead > 0) & (share >= 0) & (share <= 1)
        return float(ahead[hit].min()) if hit.any() else 0.0

    def straight(self, place, heading, short_m=0.0):
        """The straight way to the edge, ended `short_m` before it."""
        length_m = max(0.0, self.clear_m(place, heading) - max(short_m, GAP_M))
        return np.array([place, place + length_m * unit(heading)])

    def bent(self, place, heading, curvature, short_m=0.0):
        """The way to the edge where `curvature(place, heading)` (1/m) bends it, and the heading at its end. Steps of 0.1 m."""
        way, headings, here = [np.array(place)], [heading], np.array(place)
        while len(way) * BEND_STEP_M < LONGEST_M:
            for _ in range(40):
                turn = BEND_STEP_M * curvature(here, heading)
                here = here + BEND_STEP_M * unit(heading + turn / 2)
                heading += turn
                way.append(here)
                headings.append(heading)
            out = np.flatnonzero(~self.inside(way))
            if len(out):
                last = max(out[0] - 1, 0)
                end = self.straight(way[last], headings[last], short_m)[1]
                return np.vstack([way[: last + 1], end]), headings[last]
        return np.array(way), heading

    def at_rim(self, place, within_m=0.15):
        """Whether a place lies at the outer edge and not at an island."""
        return self.rim.distance(Point(place)) < within_m

    def nearest(self, place):
        """The place on the outer edge that is nearest, drawn in a little."""
        at = self.rim.interpolate(self.rim.project(Point(place)))
        for number in range(64):
            inner = np.array([at.x, at.y]) + 2 * GAP_M * unit(number * math.pi / 32)
            if self.inside(inner)[0] and self.rim.distance(Point(inner)) > GAP_M:
                return inner
        raise ValueError("the edge is too narrow a tip to stand in")

    def round_rim(self, start, end=None):
        """Along the outer edge: the shorter way from start to end, or all the way round."""
        length_m, first_m = self.rim.length, self.rim.project(Point(start))
        if end is None:
            ahead_m = length_m
        else:
            ahead_m = (self.rim.project(Point(end)) - first_m) % length_m
            ahead_m -= length_m * (ahead_m > length_m / 2)
        corners_m = [self.rim.project(Point(corner)) for corner in self.rim.coords[:-1]]
        offsets = {(corner_m - first_m) % length_m for corner_m in corners_m}
        if ahead_m < 0:
            offsets = {offset - length_m for offset in offsets}
        passed = sorted((offset for offset in offsets if 0 < abs(offset) < abs(ahead_m)), key=abs)
        ways = [self.rim.interpolate((first_m + offset) % length_m) for offset in [0.0, *passed, ahead_m]]
        return np.array([[way.x, way.y] for way in ways])

    def sees(self, start, end):
        """Whether the straight line between two places stays on the ground."""
        start, end = np.asarray(start, float), np.asarray(end, float)
        way = end - start
        length_m = float(np.hypot(*way))
        if length_m < GAP_M:
            return True
        return bool(self.inside((start + end) / 2)[0]) and self.clear_m(start, math.atan2(way[1], way[0])) >= length_m

    def route(self, start, end):
        """A short way between two places of the ground: straight, or from corner to corner of it."""
        if self.sees(start, end):
            return np.array([start, end])
        if self._routes is None:
            inner = self.polygon.buffer(-0.02, join_style="mitre").simplify(0.01)
            inner = max(getattr(inner, "geoms", [inner]), key=lambda part: part.area)
            corners = np.vstack([np.array(ring.coords)[:-1] for ring in [inner.exterior, *inner.interiors]])
            self._routes = corners, self._lengths(corners, corners)
        corners, between = self._routes
        ends = np.array([start, end])
        outer = self._lengths(ends, corners)
        count = len(corners)
        graph = np.zeros((count + 2, count + 2))
        graph[:count, :count] = between
        graph[count:, :count], graph[:count, count:] = outer, outer.T
        _, before = dijkstra(graph, indices=count, return_predecessors=True)
        way, at = [np.asarray(end, float)], before[count + 1]
        while at >= 0 and at != count:
            way.append(corners[at])
            at = before[at]
        if at != count:
            raise ValueError("no way between two places of one ground")
        return np.array([start, *way[::-1]])

    def _lengths(self, ones, others):
        seen = np.zeros((len(ones), len(others)))
        for row, one in enumerate(ones):
            for column, other in enumerate(others):
                if self.sees(one, other):
                    seen[row, column] = np.hypot(*(other - one))
        return seen
