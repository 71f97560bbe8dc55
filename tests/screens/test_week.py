"""A week of times as people type it becomes opening hours that the evaluator understands."""

from datetime import date
from zoneinfo import ZoneInfo

import pytest

from tests.builders import make_place
from tripplan.documents.where import Point
from tripplan.planning.opening.hours import Openness, hours_on
from tripplan.screens.places.adding.week import HOLIDAYS, SUN, gaps_filled, hours_of_week, times_of

GALENA = (Point(42.4167, -90.429), ZoneInfo("America/Chicago"))
MUSEUM = gaps_filled({"Tu": "10-5", "Su": "noon-5"})


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("10-5", "10:00-17:00"),
        ("10am-5pm", "10:00-17:00"),
        ("10:30 to 4", "10:30-16:00"),
        ("noon-5", "12:00-17:00"),
        ("10-12, 1-5", "10:00-12:00,13:00-17:00"),
        ("", "off"),
        ("closed", "off"),
        ("dawn to dusk", SUN),
        ("dawn-dusk", SUN),
        ("sunrise - sunset", SUN),
        ("all day", "00:00-24:00"),
        ("9\u201317", "09:00-17:00"),
        ("9 to 17 Uhr", "09:00-17:00"),
        ("maybe", None),
        ("10", None),
        ("25-26", None),
        ("10-5 mostly", None),
    ],
)
def test_times(typed: str, expected: str | None) -> None:
    """Each day as people write it; what cannot be read is not guessed."""
    assert times_of(typed) == expected


def test_empty_days_are_filled_from_above() -> None:
    """Wednesday to Saturday like Tuesday; Monday, before the first, stays closed."""
    assert MUSEUM["Mo"] == ""
    assert [MUSEUM[day] for day in ("We", "Th", "Fr", "Sa")] == ["10-5"] * 4
    assert MUSEUM["Su"] == "noon-5"


def test_a_museum_with_a_season_and_holidays() -> None:
    """Days in a row are one rule, the season stands before each, and the holidays close last."""
    closed = [HOLIDAYS["US"]["Thanksgiving"], HOLIDAYS["US"]["Christmas"]]
    hours, faults = hours_of_week(MUSEUM, "April to October only", closed, None, 2026)
    assert not faults
    assert hours == "Apr-Oct Tu-Sa 10:00-17:00; Apr-Oct Su 12:00-17:00; Nov Th[4] off; Dec 25 off"


def test_thanksgiving_alone_is_closed() -> None:
    """The fourth Thursday of November is closed and the one before is open, by the hours' evaluator."""
    closed = [HOLIDAYS["US"]["Thanksgiving"]]
    hours, _ = hours_of_week(MUSEUM, "", closed, None, 2026)
    place = make_place(opening={"hours": hours})
    assert hours_on(place, date(2026, 11, 26), frozenset(), frozenset()).openness is not Openness.OPEN
    assert hours_on(place, date(2026, 11, 19), frozenset(), frozenset()).openness is Openness.OPEN


@pytest.mark.parametrize("season", ["", "May to September", "Nov 15 to Mar 15", "July"])
def test_dawn_to_dusk_stays_within_daylight(season: str) -> None:
    """Month by month, never before the sun is up or after it has set there (by the package astral)."""
    from tripplan.planning.travel.daylight import daylight

    hours, faults = hours_of_week(gaps_filled({"Mo": "dawn-dusk"}), season, [], GALENA, 2026)
    assert not faults
    place = make_place(
        opening={"hours": hours}, where={**make_place().where.model_dump(), "latitude": 42.4167}
    )
    for month in range(1, 13):
        day = date(2026, month, 15)
        found = hours_on(place, day, frozenset(), frozenset())
        if found.openness is Openness.OPEN:
            (span,), light = found.spans, daylight(GALENA[0], day, GALENA[1])
            assert light.rises is not None
            assert light.sets is not None
            assert light.rises <= span.opens < span.closes <= light.sets
            assert (span.closes - span.opens).total_seconds() > 8 * 3600
        else:
            assert season
    july = hours_on(place, date(2026, 7, 15), frozenset(), frozenset())
    assert (july.openness is Openness.OPEN) == (season != "Nov 15 to Mar 15")


def test_what_cannot_be_read_is_told_at_its_day() -> None:
    """Every unreadable day and season at once, with what stood there."""
    hours, faults = hours_of_week({"Mo": "ten-ish", "Tu": "10-5"}, "sometimes", [], None, 2026)
    assert hours == ""
    assert [(fault.field, fault.typed) for fault in faults] == [("Mo", "ten-ish"), ("season", "sometimes")]
