"""Which ground was really driven over?

A raster of 2.5 cm cells; a cell counts as visited when its middle once lay under the disc. The disc's middle is taken every 50 ms of the
true trail, which leaves the edge of the swath ragged by less than a millimetre at 0.35 m/s. The cells themselves are the approximation:
on a lawn of some hundred square metres the fraction is right to about 0.02 points. The raster is turned against the gardens: were it
parallel to a straight edge that is followed again and again, that one swath's rounding would be an error of 0.1 points.
"""

import math

import numpy as np
import shapely
from shapely import affinity
from shapely.geometry import box

CELL_M = 0.025
SAMPLE_S = 0.05
CUT_WIDTH_M = 0.22
TURN_RAD = 0.367
_TURN = np.array([[math.cos(TURN_RAD), -math.sin(TURN_RAD)], [math.sin(TURN_RAD), math.cos(TURN_RAD)]])


class Raster:
    """Cells over a rectangle of ground and a metre round it, none of them visited at first."""

    def __init__(self, bounds, cell_m=CELL_M):
        west, south, east, north = self._turned(box(*bounds)).bounds
        self.cell_m, self.corner = cell_m, np.array([west, south]) - 1.0
        self.columns, self.rows = (math.ceil((span_m + 2.0) / cell_m) for span_m in (east - west, north - south))
        self.visited = np.zeros(self.rows * self.columns, bool)

    @staticmethod
    def _turned(shape):
        return affinity.rotate(shape, -TURN_RAD, origin=(0, 0), use_radians=True)

    def sweep(self, places, cut_width_m=CUT_WIDTH_M):
        """Marks what lies under a disc at each of the places (n, 2)."""
        radius = cut_width_m / 2 / self.cell_m
        middle = (np.asarray(places) @ _TURN - self.corner) / self.cell_m - 0.5
        column, row = np.rint(middle).astype(int).T
        off_column, off_row = (np.rint(middle) - middle).astype(np.float32).T
        here, reach = row * self.columns + column, math.ceil(radius) + 1
        for up in range(-reach, reach + 1):
            squared = (off_row + up) ** 2
            for right in range(-reach, reach + 1):
                if math.hypot(max(abs(right) - 0.5, 0), max(abs(up) - 0.5, 0)) > radius:
                    continue
                under = squared + (off_column + right) ** 2 <= radius * radius
                self.visited[here[under] + (up * self.columns + right)] = True

    def cells_in(self, shape):
        """Numbers of the cells whose middles lie in a shape."""
        if shape.is_empty:
            return np.zeros(0, int)
        turned = self._turned(shape)
        low_column, low_row, high_column, high_row = (np.array(turned.bounds) - np.tile(self.corner, 2)) / self.cell_m
        columns = np.arange(max(0, int(low_column)), min(self.columns, int(high_column) + 1))
        rows = np.arange(max(0, int(low_row)), min(self.rows, int(high_row) + 1))
        column, row = (each.ravel() for each in np.meshgrid(columns, rows))
        shapely.prepare(turned)
        middles = self.corner + self.cell_m * (np.column_stack([column, row]) + 0.5)
        inside = shapely.contains_xy(turned, middles)
        return (row * self.columns + column)[inside]

    def visited_m2(self, shape):
        """Visited area of a shape."""
        return float(self.visited[self.cells_in(shape)].sum()) * self.cell_m**2

    def visited_fraction(self, shape):
        """Visited share of a shape; None where it has no cell."""
        cells = self.cells_in(shape)
        return float(self.visited[cells].mean()) if len(cells) else None


def swept(drives, bounds, cell_m=CELL_M):
    """The raster after some drives over the same ground."""
    raster = Raster(bounds, cell_m)
    for one in drives:
        for begin_s, end_s in one.nights:
            places = one.trail.at(np.arange(begin_s, end_s, SAMPLE_S))
            moved = np.concatenate([[True], np.any(np.diff(places, axis=0) != 0, axis=1)])
            raster.sweep(places[moved])
    return raster
