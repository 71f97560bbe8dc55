"""The address that a telephone's own map opens or hands on, against the standard for such addresses.

Source: A. Mayrhofer, C. Spanring, A Uniform Resource Identifier for Geographic Locations (`geo` URI),
RFC 5870, 2010, sections 3.3 (syntax), 3.4.2 (component description for WGS-84) and 6 (examples), from
memory and held against copies of the grammar in published source text.
"""

import re

import pytest

from tests.builders import make_place
from tests.day_sheets import DEMO, TODAY
from tripplan.documents.places.place import Place
from tripplan.documents.where import Point
from tripplan.files.cards.place_card import load_place_cards
from tripplan.files.day_sheet.day_stretches import map_link
from tripplan.files.locations.gazetteer import parse_coordinates

# Section 3.3, rule by rule, in its own names.
NUM = r"-?[0-9]+(?:\.[0-9]+)?"
PNUM = r"[0-9]+(?:\.[0-9]+)?"
LABELTEXT = r"[0-9A-Za-z-]+"
PARAMCHAR = r"(?:[\[\]:&+$]|[0-9A-Za-z\-_.!~*'()]|%[0-9A-Fa-f]{2})"
GEO_URI = re.compile(
    rf"geo:(?P<latitude>{NUM}),(?P<longitude>{NUM})(?:,{NUM})?"
    rf"(?:;crs={LABELTEXT})?(?:;u={PNUM})?(?:;{LABELTEXT}(?:={PARAMCHAR}+)?)*"
)
METRES_OF_A_DEGREE = 111_320
"""Along a meridian or the equator; common practice, no source [m]."""


def at(latitude: float, longitude: float) -> Place:
    """A place somewhere on the globe."""
    where = make_place().where.model_copy(update={"latitude": latitude, "longitude": longitude})
    return make_place().model_copy(update={"where": where})


PLACES = [
    *load_place_cards(DEMO / "places", TODAY).places,
    at(-33.8568, 151.2153),
    at(0.0000001, -0.0000001),
    at(-90, 0),
    at(5e-324, 180),
]


@pytest.mark.parametrize("place", PLACES, ids=lambda place: f"{place.where.latitude},{place.where.longitude}")
def test_the_address_follows_the_syntax_and_names_the_point(place: Place) -> None:
    """Up to the query it is a whole geo URI of WGS-84, latitude first, right to a few metres."""
    address, _, pin = map_link(place).address.partition("?")
    read = GEO_URI.fullmatch(address)
    assert read is not None
    latitude, longitude = float(read["latitude"]), float(read["longitude"])
    assert abs(latitude) <= 90
    assert abs(longitude) <= 180
    point = place.where.point
    assert abs(latitude - point.latitude) * METRES_OF_A_DEGREE < 5
    assert abs(longitude - point.longitude) * METRES_OF_A_DEGREE < 5
    # The pin is the same point once more, so whoever passes over it loses nothing.
    assert pin == f"q={address.removeprefix('geo:')}"


def test_the_syntax_as_read_here_takes_the_standards_own_example_and_no_query() -> None:
    """Section 6.1; and the query is no part of section 3.3, so it may say nothing that counts."""
    assert GEO_URI.fullmatch("geo:48.2010,16.3695,183")
    assert GEO_URI.fullmatch("geo:48.198634,16.371648;crs=wgs84;u=40")
    assert not GEO_URI.fullmatch("geo:48.2010,16.3695?q=48.2010,16.3695")
    assert not GEO_URI.fullmatch("geo:+48.2010,16,3695")
    assert not GEO_URI.fullmatch("geo:4.8e1,16.3695")


# RFC 5870, sections 6.1, 6.2 and 6.4, from memory. In 6.4 the two at the pole are the same point, as are
# any two there; here each keeps the longitude that it is written with.
EXAMPLES = [
    (Point(48.2010, 16.3695), "geo:48.2010,16.3695,183"),
    (Point(48.198634, 16.371648), "geo:48.198634,16.371648;crs=wgs84;u=40"),
    (Point(90, -22.43), "geo:90,-22.43;crs=WGS84"),
    (Point(90, 46), "geo:90,46"),
    (Point(22.3, -118.44), "geo:22.300,-118.44"),
    (Point(22.3, -118.44), "geo:22.3,-118.4400"),
    (Point(66, 30), "geo:66,30;u=6.500;FOo=this%2dthat"),
    (Point(66, 30), "geo:66.0,30;u=6.5;foo=this-that"),
    (Point(70, 20), "geo:70,20;foo=1.00;bar=white"),
    (Point(47, 11), "geo:47,11;foo=blue;bar=white"),
    (Point(22, 0), "geo:22,0;bar=Blue"),
]


@pytest.mark.parametrize(("point", "address"), EXAMPLES, ids=[address for _, address in EXAMPLES])
def test_the_standards_examples_are_read(point: Point, address: str) -> None:
    """Each is a whole geo URI by the syntax, and the look-up finds the point that it names."""
    assert GEO_URI.fullmatch(address)
    assert parse_coordinates(address) == point
