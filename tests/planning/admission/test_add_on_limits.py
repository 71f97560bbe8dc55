"""Whom something beside entry is for by height."""

from datetime import date
from typing import Any

import pytest

from tests.builders import make_member
from tripplan.documents.places.offers import AddOn
from tripplan.language.sentences import fact
from tripplan.planning.admission.add_on_limits import height_fits, height_notes, takes

DAY = date(2026, 12, 8)
CHILD, GROWN_UP = "2019-06-15", "1988-05-20"


def slide(**limits: Any) -> AddOn:
    """A slide with limits."""
    return AddOn.model_validate({"name": "Slide", "price": "4", **limits})


def person(height: str | None, born: str = CHILD, **more: Any) -> Any:
    """Somebody so tall."""
    return make_member("Cy", born, height=height, **more)


@pytest.mark.parametrize(
    ("height", "limits", "fits"),
    [
        ("42 in", {"least_height": "42 in"}, True),
        ("41.9 in", {"least_height": "42 in"}, False),
        ("120 cm", {"most_height": "120 cm"}, True),
        ("48 in", {"most_height": "120 cm"}, False),
        ("45 in", {"least_height": "42 in", "most_height": "120 cm"}, True),
        (None, {}, True),
        (None, {"least_height": "42 in"}, None),
        (None, {"most_height": "120 cm"}, None),
    ],
)
def test_a_child_is_let_on_by_its_height(height: str | None, limits: dict[str, Any], fits: object) -> None:
    """Both limits are let in themselves; a child of unknown height is neither too short nor tall enough.

    48 in are 121.92 cm (NIST SP 811, 2008, appendix B.8).
    """
    member = person(height)
    assert height_fits(slide(**limits), member, member.months_on(DAY)) is fits
    assert takes(slide(**limits), member, member.months_on(DAY)) is (fits is not False)


@pytest.mark.parametrize(
    ("limits", "fits"),
    [
        ({"least_height": "48 in"}, True),
        ({"least_height": "140 cm"}, True),
        ({"least_height": "145 cm"}, None),
        ({"least_height": "215 cm"}, False),
        ({"most_height": "54 in"}, False),
        ({"most_height": "6 ft 3"}, None),
        ({"most_height": "210 cm"}, True),
    ],
)
def test_a_grown_up_is_asked_only_where_grown_ups_differ(limits: dict[str, Any], fits: object) -> None:
    """Who has told no height stands between 140 and 210 cm (our choice, no source)."""
    member = person(None, GROWN_UP)
    assert height_fits(slide(**limits), member, member.months_on(DAY)) is fits


def test_an_unknown_height_is_a_question() -> None:
    """It is asked once for each add-on that hangs on it, with the limits, and of nobody it is not for."""
    notes = height_notes(
        [slide(least_height="42 in", most_height="60 in", ages="under 18"), slide()],
        [person(None), person(None, GROWN_UP)],
        DAY,
    )
    limits = (fact("notes-height-from", height="42 in"), fact("notes-height-to", height="60 in"))
    assert list(notes) == [fact("notes-height-asked", name="Cy", what="Slide", limits=limits)]


def test_who_is_too_short_or_too_tall_is_told() -> None:
    """With the height and the limit, each in its own unit."""
    short = fact("notes-too-short", name="Cy", what="Slide", height="41 in", least="107 cm")
    tall = fact("notes-too-tall", name="Cy", what="Slide", height="130 cm", most="50 in")
    assert list(height_notes([slide(least_height="107 cm")], [person("41 in")], DAY)) == [short]
    assert list(height_notes([slide(most_height="50 in")], [person("130 cm")], DAY)) == [tall]
    assert not list(height_notes([slide(least_height="41 in")], [person("41 in")], DAY))


@pytest.mark.parametrize(
    ("height", "measured", "limits", "asked"),
    [
        ("41 in", "2026-06-07", {"least_height": "42 in"}, True),
        ("41 in", "2026-06-08", {"least_height": "42 in"}, False),
        ("41 in", None, {"least_height": "42 in"}, False),
        ("42 in", "2025-06-07", {"least_height": "42 in"}, False),
        ("42 in", "2025-06-07", {"most_height": "42 in"}, True),
        ("43 in", "2025-06-07", {"most_height": "42 in"}, False),
    ],
)
def test_an_old_measure_is_asked_again_where_growing_matters(
    height: str, measured: str | None, limits: dict[str, Any], asked: bool
) -> None:
    """184 days before the visit is more than half a year, 183 are not; who was tall enough still is."""
    notes = list(height_notes([slide(**limits)], [person(height, height_on=measured)], DAY))
    again = [note for note in notes if note.code == "notes-height-old"]
    assert bool(again) is asked
    grown = person(height, GROWN_UP, height_on=measured)
    assert not [n for n in height_notes([slide(**limits)], [grown], DAY) if n.code == "notes-height-old"]
