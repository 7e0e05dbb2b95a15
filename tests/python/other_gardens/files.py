"""What does the judged program get to read? A log (CSV), a plan (GeoJSON) and settings (TOML), written from metres.

The gardens are put into the open sea. Metres become degrees by the radii of curvature of WGS 84 there; over a garden that is right to
less than a millimetre.
"""

import datetime
import json
import math

import numpy as np
from shapely import affinity
from shapely.geometry import shape

LAT_DEG, LON_DEG = 49.5, -25.0
FIRST_FIX = datetime.datetime(2026, 6, 1, 20, 0, tzinfo=datetime.UTC)
SETTINGS = "[machine]\ncut_width_m = 0.22\nbody_width_m = 0.4\n"

_SEMI_MAJOR_M, _ECCENTRICITY_SQUARED = 6_378_137.0, 0.00669437999014
_BEND = 1 - _ECCENTRICITY_SQUARED * math.sin(math.radians(LAT_DEG)) ** 2
LAT_M = math.radians(1) * _SEMI_MAJOR_M * (1 - _ECCENTRICITY_SQUARED) / _BEND**1.5
LON_M = math.radians(1) * _SEMI_MAJOR_M / math.sqrt(_BEND) * math.cos(math.radians(LAT_DEG))


def degrees(places):
    """Longitude and latitude (n, 2) of places in metres."""
    return np.asarray(places, float).reshape(-1, 2) / (LON_M, LAT_M) + (LON_DEG, LAT_DEG)


def in_metres(geometry):
    """A GeoJSON geometry in degrees as a shape in metres."""
    return affinity.affine_transform(shape(geometry), [LON_M, 0, 0, LAT_M, -LON_DEG * LON_M, -LAT_DEG * LAT_M])


def write_log(path, times, places, rounded_deg=0.0):
    lon_lat = degrees(places)
    if rounded_deg:
        lon_lat = np.round(lon_lat / rounded_deg) * rounded_deg
    begin = np.datetime64(FIRST_FIX.replace(tzinfo=None), "s")
    stamps = np.datetime_as_string(begin + np.asarray(times).astype("timedelta64[s]"))
    rows = [f"{stamp}Z,{lat:.8f},{lon:.8f}" for stamp, (lon, lat) in zip(stamps, lon_lat.tolist(), strict=True)]
    path.write_text("time,lat,lon\n" + "\n".join(rows) + "\n")


def write_plan(path, site, moved=(0.0, 0.0, 0.0)):
    """A site as a plan, shifted (m) and turned about its middle (degrees) as the drawer's hand did."""
    east_m, north_m, turn_deg = moved
    middle = site.lawn.centroid

    def feature(role, name, drawn, **more):
        drawn = affinity.translate(affinity.rotate(drawn, turn_deg, origin=middle), east_m, north_m)

        def pairs(line):
            return [[round(lon, 9), round(lat, 9)] for lon, lat in degrees(line.coords)]

        if drawn.geom_type == "Polygon":
            coordinates = [pairs(ring) for ring in [drawn.exterior, *drawn.interiors]]
        else:
            coordinates = pairs(drawn) if drawn.geom_type == "LineString" else pairs(drawn)[0]
        return {
            "type": "Feature",
            "properties": {"role": role, "name": name, **more},
            "geometry": {"type": drawn.geom_type, "coordinates": coordinates},
        }

    features = [feature("lawn", "lawn", site.lawn)]
    features += [feature("obstacle", name, drawn) for name, drawn in site.obstacles.items()]
    features += [feature("exclusion", name, drawn) for name, drawn in site.zones.items()]
    features += [feature("station", f"station {number + 1}", drawn) for number, drawn in enumerate(site.station_points)]
    if site.guide_line is not None:
        features.append(feature("guide", "guide", site.guide_line))
    path.write_text(json.dumps({"type": "FeatureCollection", "features": features}))
