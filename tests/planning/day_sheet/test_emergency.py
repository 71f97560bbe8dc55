"""Whom to ring when something happens."""

from typing import Any

import pytest
from pydantic import ValidationError

from tests.builders import make_place
from tripplan.documents.outings.emergency_contacts import EmergencyContact, EmergencyContacts
from tripplan.planning.day_sheet.emergency import FROM_MEMORY, emergency_lines

NOBODY = EmergencyContacts()


def numbers(country: str) -> list[str]:
    """The numbers for a place in some country."""
    where = {"latitude": 50, "longitude": 10, "country": country, "time_zone": "UTC"}
    return [line.telephone for line in emergency_lines(make_place(where=where), NOBODY)]


@pytest.mark.parametrize(
    ("country", "first"),
    [("US", "911"), ("CA", "911"), ("DE", "112"), ("IE", "112"), ("GB", "999"), ("AU", "000"), ("NZ", "111")],
)
def test_the_country_of_the_place_decides_the_emergency_number(country: str, first: str) -> None:
    """Expected numbers from memory."""
    assert numbers(country)[0] == first


def test_great_britain_answers_two_numbers() -> None:
    """999 and 112, from memory."""
    assert numbers("GB") == ["999", "112"]


def test_the_poison_line_is_that_of_the_united_states_only() -> None:
    """1-800-222-1222, from memory; elsewhere none is invented."""
    assert "1-800-222-1222" in numbers("US")
    assert numbers("DE") == ["112"]


def test_where_no_number_is_known_none_is_invented() -> None:
    """The line tells the parent to look it up, and has no number."""
    (line,) = emergency_lines(
        make_place(where={"latitude": 0, "longitude": 0, "country": "XK", "time_zone": "UTC"}), NOBODY
    )
    assert line.telephone == ""
    assert "look the local number up" in line.what


def test_own_people_stand_before_the_place_and_every_line_says_where_it_is_from() -> None:
    """Emergency, poison advice, the family's own, the place's telephone."""
    own = EmergencyContacts(contacts=(EmergencyContact(name="Aunt Vera", telephone="+1 608 555 0100"),))
    lines = emergency_lines(make_place(telephone="(309) 555-0147"), own)
    assert [(line.what, line.source) for line in lines] == [
        ("Emergency", FROM_MEMORY),
        ("Poison advice", FROM_MEMORY),
        ("Aunt Vera", "parent"),
        ("Test museum", "place card"),
    ]


@pytest.mark.parametrize("telephone", ["", "ask Joel", "5", "1; rm -rf", "javascript:alert(1)", "1" * 60])
def test_a_telephone_number_holds_nothing_else(telephone: Any) -> None:
    """Words, code and endless digits are refused in words."""
    with pytest.raises(ValidationError, match="phone number has digits"):
        EmergencyContact(name="Joel", telephone=telephone)
