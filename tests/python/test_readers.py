"""Our readers beside gpxpy and pynmea2, on every recording that is kept with the project."""

import datetime
import json
import os
import pathlib
import subprocess

import gpxpy
import pynmea2

REFERENCE = os.environ["REFERENCE"]
RECORDINGS = pathlib.Path(__file__).parents[2] / "fixtures/recordings"


def recordings(below, *endings):
    return {
        str(path.relative_to(RECORDINGS)): path
        for path in sorted((RECORDINGS / below).rglob("*"))
        if path.suffix in endings and "LICENSE" not in path.name
    }


def read(paths):
    questions = [{"ask": "read", "path": str(path)} for path in paths]
    done = subprocess.run([REFERENCE], input=json.dumps(questions), capture_output=True, text=True)
    assert done.returncode == 0, done.stderr
    return json.loads(done.stdout)


# What pynmea2 reads as a position and we do not, by recording: how many, and why. Nothing may be added without a reason.
NMEA_NOT_OURS = {
    "nmea/gpsd/bt451.log": (6, "the log was spliced: its clock jumps back by an hour, and time only rises in a trace"),
    "nmea/gpsd/bundg_zeus_9.log": (163, "sentences of one second tell different places; one of them is used"),
    "nmea/gpsd/garmin-10x.log": (1, "estimated by dead reckoning without a satellite, and RMC calls it void"),
}
# Recordings with positions that we refuse as a whole, and a part of what we say.
NMEA_REFUSED = {
    "nmea/gpsd/holux-gm-210.log": "without a usable position",
    "nmea/pynmeagps/pygpsdata-mixed.log": "but no date anywhere",
    "nmea/pynmeagps/pygpsdata-nmeastartup.log": "without a usable position",
}
SECONDS_A_DAY = 86_400


def key(seconds, lat_deg, lon_deg):
    """A second is told to a thousandth, a degree to a centimetre."""
    return round(seconds, 3), round(lat_deg, 7), round(lon_deg, 7)


def positions_by_pynmea2(data):
    """Time of day, latitude and longitude of every valid GGA, RMC, GNS and GLL with a right checksum."""
    found = set()
    for line in data.decode("latin-1").splitlines():
        if not line.startswith("$"):
            continue
        try:
            message = pynmea2.parse(line.strip(), check=False)
        except pynmea2.ParseError:
            continue
        valid = {
            "GGA": lambda: message.gps_qual,
            "RMC": lambda: message.status == "A",
            "GNS": lambda: set(message.mode_indicator) - {"N"},
            "GLL": lambda: message.status == "A",
        }.get(getattr(message, "sentence_type", None))
        if valid is None or not valid() or not message.lat:
            continue
        at = message.timestamp
        seconds = at.hour * 3600 + at.minute * 60 + at.second + at.microsecond / 1e6
        try:
            found.add(key(seconds, message.latitude, message.longitude))
        except ValueError:
            # A minus sign before the degrees.
            continue
    return found


def test_nmea_positions_are_those_of_pynmea2():
    files = recordings("nmea", ".log", ".nmea", ".txt")
    assert len(files) > 25
    not_ours, refused, compared = {}, {}, 0
    for (name, path), found in zip(files.items(), read(files.values())):
        theirs = positions_by_pynmea2(path.read_bytes())
        if "refused" in found:
            refused[name] = found["refused"]
            continue
        ours = {key(time_s % SECONDS_A_DAY, lat_deg, lon_deg) for time_s, lat_deg, lon_deg in found["fixes"]}
        assert ours <= theirs, (name, sorted(ours - theirs)[:3])
        assert len(ours) == len(found["fixes"]), name
        if theirs - ours:
            not_ours[name] = len(theirs - ours)
        compared += len(ours)
    assert compared > 3_500
    assert not_ours == {name: count for name, (count, _) in NMEA_NOT_OURS.items()}
    assert refused.keys() == NMEA_REFUSED.keys()
    for name, part in NMEA_REFUSED.items():
        assert part in refused[name]


def test_seconds_that_are_told_twice_are_the_ones_left_out():
    """The reason given for the largest difference: not a second of that recording is missing."""
    name = "nmea/gpsd/bundg_zeus_9.log"
    path = RECORDINGS / name
    (found,) = read([path])
    ours = {round(time_s % SECONDS_A_DAY, 3) for time_s, *_ in found["fixes"]}
    assert {seconds for seconds, *_ in positions_by_pynmea2(path.read_bytes())} <= ours


# Recordings that gpxpy refuses, its words, and why we do not: a kind of fix outside the standard spoils no position.
GPX_REFUSED_BY_GPXPY = {"gpx/georust/with_accuracy.gpx": 'Invalid value "something_not_in_the_spec"'}


def points_by_gpxpy(text):
    """Time, latitude and longitude of every track point that has a time; one a time, times rising."""
    found = {}
    for track in gpxpy.parse(text).tracks:
        for segment in track.segments:
            for point in segment.points:
                if point.time is not None:
                    time = point.time if point.time.tzinfo else point.time.replace(tzinfo=datetime.timezone.utc)
                    found.setdefault(round(time.timestamp(), 3), (point.latitude, point.longitude))
    return [[time_s, *found[time_s]] for time_s in sorted(found)]


def test_gpx_points_are_those_of_gpxpy():
    files = recordings("gpx", ".gpx")
    assert len(files) > 15
    not_ours, refused_by_them, compared = {}, {}, 0
    for (name, path), found in zip(files.items(), read(files.values())):
        try:
            theirs = points_by_gpxpy(path.read_bytes().decode("utf-8-sig"))
        except gpxpy.gpx.GPXException as error:
            refused_by_them[name] = str(error)
            continue
        ours = [] if "refused" in found else [[round(time_s, 3), *at] for time_s, *at in found["fixes"]]
        if ours != theirs:
            not_ours[name] = (len(ours), len(theirs), [pair for pair in zip(ours, theirs) if pair[0] != pair[1]][:2])
        compared += len(ours)
    assert compared > 20_000
    # There is no difference that would want a reason.
    assert not_ours == {}
    assert refused_by_them.keys() == GPX_REFUSED_BY_GPXPY.keys()
    for name, words in GPX_REFUSED_BY_GPXPY.items():
        assert refused_by_them[name].startswith(words)
