"""One line says where something is, however a parent writes it down."""

import pytest

from tripplan.documents.where import Point
from tripplan.files.locations.where_text import WhereText, read_where

PEORIA = Point(40.69, -89.59)


@pytest.mark.parametrize(
    "text",
    [
        "40.69, -89.59",
        " 40.69  -89.59 ",
        "40.69 N, 89.59 W",
        "N 40° 41' 24\" W 89° 35' 24\"",
        "geo:40.69,-89.59",
        "geo:40.69,-89.59;u=35",
        "geo:0,0?q=40.69,-89.59(A mill, IL 61602)",
        "geo:40.69,-89.59?q=A mill, 61602",
        "https://maps.example.org/?q=40.69,-89.59",
        "https://maps.example.org/#map=15/40.69/-89.59",
    ],
)
def test_coordinates_in_any_form_are_a_point(text: str) -> None:
    """Signs, letters, degrees and minutes, geo: addresses and a map's link all mean the same point."""
    point = read_where(text).point
    assert point is not None
    assert (point.latitude, point.longitude) == pytest.approx((PEORIA.latitude, PEORIA.longitude))


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        ("Peoria, IL", WhereText(town="Peoria", subdivision="IL")),
        ("peoria, il", WhereText(town="peoria", subdivision="IL")),
        ("Peoria IL", WhereText(town="Peoria", subdivision="IL")),
        ("Peoria, Illinois", WhereText(town="Peoria", subdivision="IL")),
        ("Peoria, IL, USA", WhereText(town="Peoria", subdivision="IL")),
        ("St. Louis, MO", WhereText(town="St. Louis", subdivision="MO")),
        ("61602", WhereText(postal_code="61602")),
        ("61602-1234", WhereText(postal_code="61602-1234")),
        ("Kansas City KS 66101", WhereText(town="Kansas City", subdivision="KS", postal_code="66101")),
        (
            "12 Main St, Dubuque, IA 52001",
            WhereText(address="12 Main St", town="Dubuque", subdivision="IA", postal_code="52001"),
        ),
        ("Galena", WhereText(town="Galena")),
        ("Lyon, France", WhereText(town="Lyon, France")),
        ("Saint-Denis", WhereText(town="Saint-Denis")),
    ],
)
def test_names_are_told_apart(text: str, parts: WhereText) -> None:
    """Street, town, state by code or name, and ZIP code each come out on their own."""
    assert read_where(text) == parts


@pytest.mark.parametrize(
    ("text", "part"),
    [
        ("https://maps.example.org/abc", "no coordinates stand in this link"),
        ("geo:40.69,61602", "a longitude lies between -180 and 180; found 61602"),
        ("geo:0,0?q=Peoria, IL 61602", "only says to search for 'Peoria, IL 61602'"),
        ("95, 10", "a latitude lies between -90 and 90"),
        ("40.69", "coordinates read like"),
        (", ,", "coordinates read like"),
    ],
)
def test_what_can_only_be_coordinates_is_said_to_be_wrong(text: str, part: str) -> None:
    """A link without a point, a pair off the globe and a lone number are never taken for a town."""
    with pytest.raises(ValueError, match=part):
        read_where(text)
