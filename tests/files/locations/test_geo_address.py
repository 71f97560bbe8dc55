"""What is pasted from a telephone's map: the point in the address, and what an address is refused for."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.builders import make_place
from tests.files.locations.any_coordinates import lies_on_the_globe_or_is_refused
from tripplan.files.day_sheet.day_stretches import map_link
from tripplan.files.locations.gazetteer import parse_coordinates
from tripplan.files.locations.geo_address import is_geo_address, pair_in_geo_address


@pytest.mark.parametrize(
    "address",
    [
        "geo:40.69,-89.59",
        "GEO:40.69,-89.59",
        "geo:40.69, -89.59, 152",
        "geo:40.69%2C-89.59",
        "geo:40.69,-89.59;u=35",
        "geo:40.69,-89.59;CRS=WGS84;U=0.5;name=mill",
        "geo:40.69,-89.59?z=17",
        "geo:40.69,-89.59?q=A+mill",
        "geo:40.69,-89.59;u=35?q=40.69,-89.59",
        "geo:40.6,-89.5?q=40.69,-89.59",
        "geo:0,0?q=40.69,-89.59",
        "geo:0,0?q=40.69,-89.59(A mill)",
        "geo:0,0?z=17&q=40.69%2C-89.59%20(Bed+%26+Board+(by+the+mill))",
        "geo:0,0?q=40.69,-89.59(Bed & Board; a mill?)",
        f"geo:0,0?q=40.69,-89.59({'a mill ' * 100})",
    ],
)
def test_the_marked_point_is_read(address: str) -> None:
    """Height, uncertainty and names are passed over; a pair in the query, which is the pin, wins."""
    assert is_geo_address(address)
    assert pair_in_geo_address(address) == (40.69, -89.59)


@pytest.mark.parametrize(
    ("address", "faults"),
    [
        ("geo:40.69,-89.59;crs=moon-2011", ["must be in WGS84; found crs 'moon-2011'"]),
        ("geo:40.69,-89.59;crs=wgs84;crs=Mars", ["found crs 'Mars'"]),
        ("geo:40.69,-89.59;u=near", ["number of metres; found 'near'"]),
        ("geo:40.69,-89.59;u=-5", ["number of metres; found '-5'"]),
        ("geo:forty,-89.59;u=;crs=", ["u of a geo: address", "found crs ''", "found 'forty,-89.59'"]),
        ("geo:40.69", ["written like geo:40.69,-89.59; found '40.69'"]),
        ("geo:40.69,-89.59,high", ["found '40.69,-89.59,high'"]),
        ("geo:1,2,3,4", ["found '1,2,3,4'"]),
        ("geo:", ["found ''"]),
        ("geo:0,0?q=A+mill", ["only says to search for 'A mill'"]),
        ("geo:0,0?q=", ["only says to search for ''"]),
        ("geo:95.5,-189", ["latitude lies between -90 and 90", "found 95.5", "180; found -189"]),
        ("geo:0,0?q=95,3", ["found 95"]),
    ],
)
def test_a_bad_address_is_refused_with_its_faults_and_their_values(address: str, faults: list[str]) -> None:
    """Another globe, no number, no pair, only a search, or off the globe: each is told, all at once."""
    with pytest.raises(ValueError, match=r".") as refused:
        parse_coordinates(address)
    assert [fault for fault in faults if fault not in str(refused.value)] == []


def test_a_point_at_no_degrees_is_a_point() -> None:
    """Without a query, geo:0,0 is what it says: where the equator meets the prime meridian."""
    assert pair_in_geo_address("geo:0,0") == (0, 0)
    assert pair_in_geo_address("geo:0,0;u=10?z=3") == (0, 0)


def test_the_address_that_a_day_sheet_holds_is_read_back() -> None:
    """What is written for a telephone's map names the place's own point, to a few metres."""
    place = make_place()
    point = parse_coordinates(map_link(place).address)
    assert point.latitude == pytest.approx(place.where.point.latitude, abs=5e-5)
    assert point.longitude == pytest.approx(place.where.point.longitude, abs=5e-5)


@given(st.text(alphabet="0123456789.,;-+ ?&=()%2Cqcrsu", max_size=80).map("geo:".__add__))
def test_any_address_is_a_pair_or_refused(address: str) -> None:
    """No address breaks the reading, and what is read as a point lies on the globe."""
    lies_on_the_globe_or_is_refused(address)
