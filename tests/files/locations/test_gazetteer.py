"""Towns, postal codes and coordinates are found offline, or it is said what to give instead."""

import subprocess
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.files.locations.any_coordinates import lies_on_the_globe_or_is_refused
from tripplan.documents.where import Point, Where
from tripplan.files.locations.gazetteer import (
    GazetteerMatch,
    NotFound,
    by_town_noted,
    find_postal_code,
    find_town,
    locate,
    parse_coordinates,
    zone_of,
)


def found(result: GazetteerMatch | NotFound) -> GazetteerMatch:
    """The look-up's result, which must be one."""
    assert isinstance(result, GazetteerMatch)
    return result


# Points of the towns' centres: from memory, as printed on common maps; a town is several kilometres wide.
@pytest.mark.parametrize(
    ("town", "state", "latitude", "longitude", "zone"),
    [
        ("Dubuque", "IA", 42.50, -90.66, "America/Chicago"),
        ("peoria", "IL", 40.69, -89.59, "America/Chicago"),
        ("ST. LOUIS", "MO", 38.63, -90.20, "America/Chicago"),
        ("Fort Wayne", "IN", 41.08, -85.14, "America/Indiana/Indianapolis"),
        ("Mt Vernon", "IL", 38.32, -88.90, "America/Chicago"),
        ("O'Fallon", "IL", 38.59, -89.91, "America/Chicago"),
        ("De Kalb", "IL", 41.93, -88.75, "America/Chicago"),
    ],
)
def test_a_town_is_found_in_any_usual_spelling(
    town: str, state: str, latitude: float, longitude: float, zone: str
) -> None:
    """Small letters, short forms and missing blanks do not matter, and the point lies in the town."""
    place = found(find_town(town, state, "US"))
    assert place.point.latitude == pytest.approx(latitude, abs=0.1)
    assert place.point.longitude == pytest.approx(longitude, abs=0.1)
    assert place.subdivision == state
    assert place.time_zone in (zone, "America/New_York" if state == "IN" else zone)


def test_a_small_town_is_found_by_its_neighbours_postal_code() -> None:
    """Bertram, Iowa shares the postal code 52403 with Cedar Rapids (GeoNames, by the package zipcodes)."""
    assert found(find_town("Bertram", "IA", "US")).point == found(find_postal_code("52403", "US")).point


def test_a_name_that_is_alone_needs_no_state() -> None:
    """A town whose name stands once is found without its state, others ask for it."""
    assert found(find_town("Ottumwa", "", "US")).subdivision == "IA"
    several = find_town("Peoria", "", "US")
    assert several == NotFound("town", "there is one in AZ and IL; give the state as subdivision, such as IL")
    many = find_town("springfield", "", "US")
    assert isinstance(many, NotFound)
    assert "states; give the state as subdivision" in many.message


@pytest.mark.parametrize(
    ("result", "field", "part"),
    [
        (
            find_town("Peroia", "IL", "US"),
            "town",
            "did you mean Peoria? Otherwise give latitude and longitude",
        ),
        (find_town("Xyzzy", "", "US"), "town", "give its state as subdivision, or give latitude"),
        (find_town("Peoria", "ZZ", "US"), "subdivision", "no such US state"),
        (find_town("Lyon", "", "FR"), "town", "known offline for the US only; give latitude and longitude"),
        (find_postal_code("69001", "FR"), "postal_code", "known offline for the US only"),
        (find_postal_code("616", "US"), "postal_code", "five digits"),
        (find_postal_code("00000", "US"), "postal_code", "no such ZIP code"),
        (find_postal_code("09001", "US"), "postal_code", "no such ZIP code"),
        (find_town("<script>" * 500, "IL", "US"), "town", "no such town"),
    ],
)
def test_what_is_not_found_says_what_to_give_instead(
    result: GazetteerMatch | NotFound, field: str, part: str
) -> None:
    """Unknown towns, states, codes and countries are told at their field; post offices abroad are unknown."""
    assert isinstance(result, NotFound)
    assert result.field == field
    assert part in result.message


def test_a_location_is_completed_from_what_is_given() -> None:
    """A postal code goes before the town, coordinates before both, and nothing given is changed."""
    by_code = locate(Where(country="US", postal_code="61602", town="Down by the river"))
    assert isinstance(by_code, Where)
    assert (by_code.town, by_code.subdivision, by_code.time_zone) == (
        "Down by the river",
        "IL",
        "America/Chicago",
    )
    by_point = locate(Where(country="US", town="Nowhere", latitude=42.5, longitude=-90.66))
    assert isinstance(by_point, Where)
    assert by_point.time_zone == "America/Chicago"
    assert by_point.point == Point(42.5, -90.66)
    assert locate(by_point) == by_point


@pytest.mark.parametrize(
    ("changed", "town_only"),
    [
        ({}, True),
        ({"latitude": 42.5123}, False),
        ({"address": "350 E 3rd St"}, False),
        ({"town": "Nowhere"}, False),
        ({"postal_code": "61602"}, False),
    ],
)
def test_an_older_location_by_its_town_alone_is_known_as_such(
    changed: dict[str, object], town_only: bool
) -> None:
    """What was looked up before that was noted has just the look-up's point; more than that is left alone."""
    looked_up = locate(Where(country="US", town="Dubuque", subdivision="IA"))
    assert isinstance(looked_up, Where)
    older = Where.model_validate(looked_up.model_dump(exclude={"by_town"}) | changed)
    assert not older.town_only
    assert by_town_noted(older).town_only is town_only
    assert locate(older) == by_town_noted(older)


def test_the_wrong_side_of_greenwich_is_told() -> None:
    """An American longitude without its minus is a slip, but for Guam and the far Aleutians."""
    slip = Where(country="US", subdivision="IL", latitude=40.7, longitude=89.6)
    assert isinstance(locate(slip), NotFound)
    attu = Where(country="US", subdivision="AK", latitude=52.9, longitude=172.9)
    assert isinstance(locate(attu), Where)


# Zones of well-known towns: from memory.
@pytest.mark.parametrize(
    ("point", "zone"),
    [
        (Point(41.88, -87.63), "America/Chicago"),
        (Point(39.74, -104.99), "America/Denver"),
        (Point(52.52, 13.40), "Europe/Berlin"),
        (Point(-33.87, 151.21), "Australia/Sydney"),
    ],
)
def test_a_point_has_a_time_zone(point: Point, zone: str) -> None:
    """The zone follows from the coordinates, anywhere on land."""
    assert zone_of(point) == zone


@pytest.mark.parametrize(
    "text",
    [
        "40.69, -89.59",
        "40.69 -89.59",
        "+40.69;-89.59",
        "40.69°, -89.59°",
        "40.69 N, 89.59 W",
        "40.69°N 89.59°W",
        "N 40.69 W 89.59",
        "89.59 w, 40.69 n",
        "40°41'24\"N 89°35'24\"W",
        "40°41\u203224\u2033 N, 89°35\u203224\u2033 W",
        "40 41 24 N 89 35 24 W",
        "40°41.4'N, 89°35.4'W",
        "N40°41'24'' W89°35'24''",
        "geo:40.69,-89.59",
        "geo:40.69,-89.59,152;crs=wgs84;u=35",
        "  40.69, -89.59  ",
        "https://maps.example.org/@40.69,-89.59,12z",
        "https://maps.example.org/place/A+Mill/@40.6,-89.5,15z/data=!4m6!3d40.69!4d-89.59",
        "https://maps.example.org/?q=40.69,-89.59",
        "https://maps.example.org/?q=40.69%2C-89.59&z=12",
        "https://maps.example.org/?q=loc:40.69+-89.59",
        "https://maps.example.org/?ll=40.69,-89.59&q=A+Mill",
        "https://maps.example.org/?mlat=40.69&mlon=-89.59#map=12/40.6/-89.5",
        "https://maps.example.org/?lat=40.69&lon=-89.59",
        "https://maps.example.org/#map=12/40.69/-89.59",
        "https://maps.example.org/#map=12.5/40.69/-89.59&layers=N",
        "https://maps.example.org/?" + "&".join(f"p{n}={n}" for n in range(90)) + "&ll=40.69,-89.59",
        "www.maps.example.org/@40.69,-89.59,12z",
    ],
)
def test_coordinates_are_read_in_the_usual_forms(text: str) -> None:
    """Signs, letters, minutes and seconds, geo: addresses (RFC 5870) and links to maps mean the same."""
    point = parse_coordinates(text)
    assert point.latitude == pytest.approx(40.69, abs=1e-9)
    assert point.longitude == pytest.approx(-89.59, abs=1e-9)


def test_the_example_of_the_standard_is_read() -> None:
    """RFC 5870 (A. Mayrhofer, C. Spanring, 2010), section 6.1: geo:48.2010,16.3695,183 lies in Vienna."""
    point = parse_coordinates("geo:48.2010,16.3695,183")
    assert point == Point(48.201, 16.3695)
    assert zone_of(point) == "Europe/Vienna"


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("95, 3", "latitude lies between -90 and 90"),
        ("3, 195", "longitude lies between -180 and 180"),
        ("40N 41N", "north or south, the other east or west"),
        ("40°61'N 89°W", "less than 60"),
        ("geo:40.69,-89.59;crs=moon", "WGS84"),
        ("40.69", "coordinates read like"),
        ("1e5, 3", "coordinates read like"),
        ("near the mill", "coordinates read like"),
        ("", "coordinates read like"),
        ("https://maps.example.org/a-mill", "no coordinates stand in this link"),
        ("https://maps.example.org/?q=95,3", "latitude lies between -90 and 90"),
        ("https://maps.example.org/[", "no coordinates stand in this link"),
        ("1 " * 5000, "coordinates read like"),
    ],
)
def test_what_is_no_pair_of_coordinates_is_refused(text: str, part: str) -> None:
    """Half a pair, points off the globe and other globes are refused with the forms that would do."""
    with pytest.raises(ValueError, match=part):
        parse_coordinates(text)


@given(
    st.text(alphabet="0123456789.,;-+ NSEWnsew°'\"geo:", max_size=200)
    | st.text(alphabet="0123456789.,;-+@/?&=#![]%qlmapd", max_size=80).map("https://m.example/".__add__)
)
def test_any_text_is_a_point_on_the_globe_or_refused(text: str) -> None:
    """No text breaks the reading, and what is read lies on the globe."""
    lies_on_the_globe_or_is_refused(text)


def test_the_tables_are_loaded_only_when_they_are_needed() -> None:
    """Importing the gazetteer loads no map of time zones."""
    code = "import sys, tripplan.files.locations.gazetteer; print('tzfpy' in sys.modules)"
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert told.stdout.strip() == "False"
