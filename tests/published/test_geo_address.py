"""The address that a telephone's own map opens, against the standard for such addresses.

Source: A. Mayrhofer, C. Spanring, A Uniform Resource Identifier for Geographic Locations (`geo` URI),
RFC 5870, 2010, sections 3.3 (syntax), 3.4.2 (component description for WGS-84) and 6.1 (an example), from
memory and held against copies of the grammar in published source text.
"""

import re

import pytest

from tests.builders import make_place
from tests.day_sheets import DEMO, TODAY
from tripplan.files.day_stretches import map_link
from tripplan.files.place_card import load_place_cards
from tripplan.planning.place import Place

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
