"""Does the simulator keep its own promises? Where it drives, how fast, and whether the truth is true."""

import numpy as np
import pytest
import shapely
from files import degrees, in_metres
from gardens import Site, ell, rectangle
from kinds import KINDS
from machines import Machine, Stall, drive
from receivers import GRADES, Sky, drifting, logged
from shapely.geometry import LineString, box
from truth import Raster, swept

SEED = 77
HOURS = 1.5


def driven(garden, hours=HOURS):
    site = garden.site
    station = site.stations[0]
    rng = np.random.default_rng(SEED)
    return drive(site.ground(station), station, garden.machine, rng, hours, 1, site.guide, garden.stall)


def places(one):
    return np.array(one.trail.places)


@pytest.mark.parametrize("kind", KINDS)
def test_the_machine_stays_where_it_can_be(kind):
    garden = KINDS[kind]()[-1]
    site = garden.site
    ground, one = site.ground(site.stations[0]), driven(garden)
    way_in = LineString([site.stations[0], ground.nearest(site.stations[0])])
    allowed = ground.polygon.union(way_in).buffer(0.005)
    if site.guide is not None:
        allowed = allowed.union(site.guide_line.buffer(0.005))
    outside = shapely.difference(LineString(places(one)), allowed)
    assert outside.length < 0.01


@pytest.mark.parametrize("kind", ["plain", "lanes", "spirals"])
def test_it_drives_at_its_speed(kind):
    one = driven(KINDS[kind]()[0])
    lengths, seconds = np.hypot(*np.diff(places(one), axis=0).T), np.diff(one.trail.times)
    moving = lengths > 0
    assert lengths[moving] / seconds[moving] == pytest.approx(0.35, rel=1e-6)
    assert lengths[moving].sum() > 0.35 * 3600 * 0.8


def test_the_pace_varies_by_its_share():
    one = driven(KINDS["turning_radius"]()[0])
    lengths, seconds = np.hypot(*np.diff(places(one), axis=0).T), np.diff(one.trail.times)
    speed = lengths[lengths > 0.2] / seconds[lengths > 0.2]
    assert np.median(speed) == pytest.approx(0.35, abs=0.02)
    assert speed.std() / 0.35 == pytest.approx(0.15, abs=0.04)


def test_it_goes_home_and_charges():
    one = driven(KINDS["plain"]()[0], hours=8.0)
    at_home = np.hypot(*(one.trail.at(np.arange(0, one.nights[0][1], 1.0)) - rectangle().stations[0]).T) < 0.01
    assert at_home[0] and at_home[-1]
    assert 0.4 < at_home.mean() < 0.55
    assert one.nights[0][1] == pytest.approx(8 * 3600, abs=600)


def test_the_truth_agrees_with_polygons():
    site = Site(box(0, 0, 7, 5), ((2.0, 0.0),))
    one = drive(site.ground(site.stations[0]), site.stations[0], Machine(), np.random.default_rng(SEED), 0.8)
    by_cells = swept([one], site.lawn.bounds).visited_fraction(site.grass)
    pieces = [LineString(pair).buffer(0.11, quad_segs=32) for pair in zip(places(one)[:-1], places(one)[1:], strict=True)]
    by_polygons = shapely.union_all(pieces).intersection(site.grass).area / site.grass.area
    assert 0.5 < by_polygons < 0.999
    assert by_cells == pytest.approx(by_polygons, abs=0.0004)


def test_one_straight_swath_is_as_wide_as_the_disc():
    raster = Raster((0, 0, 10, 2))
    raster.sweep(np.column_stack([np.arange(-1, 11, 0.01), np.full(1200, 1.003)]))
    assert raster.visited_fraction(box(0, 0, 10, 2)) == pytest.approx(0.22 / 2, abs=0.0005)


def test_what_is_walled_off_is_never_entered():
    for garden in KINDS["closed_corner"]():
        corners = garden.site.walled_off()
        assert len(corners) == 1
        assert swept([driven(garden)], garden.site.lawn.bounds).visited_fraction(corners[0]) == 0


def test_what_holds_it_fast_holds_it_five_times():
    for garden in KINDS["stuck_spot"]():
        stalls = driven(garden, hours=8.0).stalls
        assert len(stalls) == 5
        assert all(180 <= end_s - begin_s <= 600 for begin_s, end_s, _ in stalls)
        assert max(np.hypot(*(np.array(place) - garden.stall.place)) for _, _, place in stalls) <= Stall((0, 0)).reach_m


@pytest.mark.parametrize("grade", GRADES)
def test_errors_are_as_large_and_as_slow_as_their_law(grade):
    law = GRADES[grade]
    errors = drifting(law, 400_000, np.random.default_rng(SEED))
    assert errors.std() == pytest.approx(np.hypot(law.white_m, law.drift_m), rel=0.06)
    lag = int(law.drift_s)
    change = (errors[lag:] - errors[:-lag]).var() / 2
    assert change == pytest.approx(law.white_m**2 + law.drift_m**2 * (1 - np.exp(-1)), rel=0.1)


def test_skies_leave_out_what_they_should():
    site = ell()
    one = driven(KINDS["plain"]()[1], hours=8.0)
    rng = np.random.default_rng(SEED)
    times, _ = logged(one, Sky(), "cm", rng, site.stations[0])
    assert np.all(np.diff(times) == 1)
    times, _ = logged(one, Sky(silent_s=3600.0), "cm", rng, site.stations[0])
    assert np.diff(times).max() == pytest.approx(3600, abs=2)
    _, fixes = logged(one, Sky(tree=(18.0, 5.0, 2.5)), "cm", rng, site.stations[0])
    assert np.hypot(*(fixes - (18.0, 5.0)).T).min() > 2.3
    times, _ = logged(one, Sky(period_s=20), "cm", rng, site.stations[0])
    assert np.all(np.diff(times) == 20)


def test_degrees_and_metres_are_each_others_way_back():
    lon, lat = degrees([(12.0, -7.0)])[0]
    back = in_metres({"type": "Point", "coordinates": [lon, lat]})
    assert (back.x, back.y) == pytest.approx((12.0, -7.0), abs=1e-6)
