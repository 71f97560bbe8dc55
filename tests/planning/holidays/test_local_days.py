"""Festivals and local days off that the parent lists."""

from datetime import date, timedelta
from decimal import Decimal
from typing import Any

import holidays as tables
import pytest
from pydantic import ValidationError

from tests.builders import make_household, make_place
from tripplan.documents.calendars.local_days import LocalDay
from tripplan.documents.places.place import Place
from tripplan.errors import UnknownName
from tripplan.language.sentences import Fact, fact
from tripplan.planning.family.family import Family
from tripplan.planning.holidays.days_off import days_off
from tripplan.planning.holidays.local_days import concerns, local_dates, place_holidays, with_local_days
from tripplan.planning.holidays.public_holidays import holidays_around, public_holidays
from tripplan.planning.outing.place_facts import PlaceFacts, place_facts

PLACE = make_place()
FAIR = date(2026, 9, 17)


def fair(**changes: Any) -> LocalDay:
    """Three days of a fair at the test museum."""
    told = {"name": "Hop fair", "first": FAIR, "last": FAIR + timedelta(days=2), "place": PLACE.id}
    return LocalDay.model_validate({**told, **changes})


def in_town(km_north: float, **changes: Any) -> LocalDay:
    """The same fair in a town so far north of the museum."""
    at = PLACE.where.point
    town = {"country": "US", "latitude": at.latitude + km_north / 111.195, "longitude": at.longitude}
    return fair(place=None, town=town, **changes)


def test_a_fair_makes_its_days_fuller_and_no_others() -> None:
    """A factor of 3 lifts the chance of a full house on the days of the fair, with its name."""
    plain, busy = (
        place_facts(Family(make_household(), (PLACE,), local_days=local), PLACE, (2026,)).crowds
        for local in ((), (fair(crowd_factor=3),))
    )
    assert busy[FAIR].chance > 1.5 * plain[FAIR].chance
    assert fact("crowds-special-day", name="Hop fair") in [reason.cause for reason in busy[FAIR].reasons]
    other = date(2026, 9, 16)
    assert busy[other].chance == pytest.approx(plain[other].chance, abs=0.02)


CLOSED_ON_HOLIDAYS = make_place(opening={"hours": "Mo-Su 10:00-17:00; PH off"})


def facts_with(place: Place, *local: LocalDay, years: tuple[int, ...] = (2026,)) -> PlaceFacts:
    """What all days at a place share, beside some local days."""
    return place_facts(Family(make_household(), (place,), local_days=local), place, years)


def causes(facts: PlaceFacts, day: date) -> list[Fact]:
    """What makes a day there fuller or emptier."""
    return [reason.cause for reason in facts.crowds[day].reasons]


@pytest.mark.parametrize(
    ("first", "last", "year", "days"),
    [
        (date(2026, 2, 28), date(2026, 3, 1), 2027, ["02-28", "03-01"]),
        (date(2026, 2, 28), date(2026, 3, 1), 2028, ["02-28", "02-29", "03-01"]),
        (date(2028, 2, 28), date(2028, 3, 1), 2029, ["02-28", "03-01"]),
        (date(2028, 2, 29), date(2028, 2, 29), 2029, ["03-01"]),
        (date(2027, 12, 30), date(2028, 1, 2), 2028, ["01-01", "01-02", "12-30", "12-31"]),
    ],
)
def test_a_yearly_festival_runs_from_its_first_date_to_its_last(
    first: date, last: date, year: int, days: list[str]
) -> None:
    """What comes back on the same dates has a day more in a leap year, where 29 February lies between."""
    yearly = fair(first=first, last=last, every_year=True)
    assert [f"{day:%m-%d}" for day in local_dates(yearly, (year,))] == days


def test_a_local_day_off_counts_as_a_public_holiday_for_the_crowd_only() -> None:
    """The crowd risk knows it; a place closed on public holidays goes by those of its state, and is open."""
    facts = facts_with(CLOSED_ON_HOLIDAYS, fair(day_off=True))
    assert any(
        reason.cause == fact("crowds-holiday", name="Hop fair") for reason in facts.crowds[FAIR].reasons
    )
    assert FAIR not in facts.public_holidays


def test_places_keep_a_local_day_like_a_public_holiday_where_the_parent_says_so() -> None:
    """Then PH means it: the place is closed that day, and no chance of a full house is told."""
    facts = facts_with(CLOSED_ON_HOLIDAYS, fair(hours_as_on_holidays=True))
    assert facts.public_holidays[FAIR] == "Hop fair"
    assert FAIR not in facts.crowds
    assert date(2026, 9, 21) in facts.crowds


def test_people_are_at_work_on_a_day_that_only_places_keep() -> None:
    """Holiday hours alone make it no day off: nobody is told that it is a public holiday."""
    facts = facts_with(PLACE, fair(hours_as_on_holidays=True))
    assert "crowds-holiday" not in {cause.code for cause in causes(facts, FAIR)}


@pytest.mark.parametrize(
    ("local", "free_days"), [({"day_off": True}, 0), ({"hours_as_on_holidays": True}, 3)]
)
def test_free_entry_on_public_holidays_follows_the_hours(local: dict[str, bool], free_days: int) -> None:
    """An offer good on PH is good on a local day only where the place keeps it like a public holiday."""
    adult, free = {"name": "Entry", "price": "9.00"}, {"name": "Free", "price": "0", "valid": "PH"}
    facts = facts_with(make_place(offers=[adult, free]), fair(**local))
    days = [FAIR + timedelta(days=n) for n in range(3)]
    told = [
        any(reason.cause.code == "crowds-free-entry" for reason in facts.crowds[day].reasons) for day in days
    ]
    assert sum(told) == free_days


def test_a_long_weekend_reaches_over_new_year() -> None:
    """1 January 2029 is a Monday, so Saturday and Sunday before it belong to a long weekend."""
    facts = facts_with(make_place(opening={"hours": "24/7"}), years=(2028,))
    assert facts.crowds.off.long_weekend[-2:].all()
    only_2028 = public_holidays("US", "IL", (2028,))
    assert not days_off(date(2028, 1, 1), date(2028, 12, 31), only_2028).long_weekend[-1]


def test_the_day_before_a_holiday_is_known_on_new_years_eve() -> None:
    """A place closed on the day before every public holiday is closed on 31 December."""
    place = make_place(opening={"hours": "Mo-Su 10:00-17:00; PH -1 day off"})
    facts = facts_with(place, years=(2026,))
    assert date(2026, 12, 30) in facts.crowds
    assert date(2026, 12, 31) not in facts.crowds


def test_where_no_neighbouring_year_is_on_record_the_asked_one_still_counts() -> None:
    """Saudi Arabia's holidays end with a year; its long weekends are told without the year after."""
    last = tables.country_holidays("SA").end_year
    assert {day.year for day in holidays_around("SA", "", (last,))} == {last - 1, last}
    with pytest.raises(UnknownName):
        holidays_around("SA", "", (last + 1,))


def test_a_country_without_holidays_on_record_still_has_the_local_days() -> None:
    """They are listed, and it is said that the public ones are not known."""
    abroad = make_place(
        where={"country": "XX", "subdivision": "", "latitude": 1, "longitude": 1, "time_zone": "UTC"}
    )
    found = place_holidays(abroad, (fair(place=abroad.id, day_off=True),), (2026,))
    assert (found.known, list(found.off_work), dict(found.kept)) == (
        False,
        [FAIR + timedelta(days=n) for n in range(3)],
        {},
    )


def test_a_town_concerns_the_places_within_its_reach() -> None:
    """25 km by default, the parent's own figure otherwise."""
    assert concerns(in_town(24), PLACE)
    assert not concerns(in_town(26), PLACE)
    assert concerns(in_town(26, reach_km=30), PLACE)
    assert not concerns(fair(place="elsewhere"), PLACE)


def test_a_yearly_fair_comes_back_from_its_first_year_on() -> None:
    """On the same dates, also across New Year, never before it began; a leap day moves to 1 March."""
    assert list(local_dates(fair(every_year=True), (2025, 2027))) == [
        FAIR.replace(year=2027) + timedelta(days=n) for n in range(3)
    ]
    year_end = fair(first=date(2026, 12, 31), last=date(2027, 1, 1), every_year=True)
    assert list(local_dates(year_end, (2028,))) == [date(2028, 1, 1), date(2028, 12, 31)]
    leap = fair(first=date(2028, 2, 29), last=date(2028, 2, 29), every_year=True)
    assert list(local_dates(leap, (2029, 2032))) == [date(2029, 3, 1), date(2032, 2, 29)]
    assert list(local_dates(fair(), (2027,))) == []


def test_a_day_on_the_card_keeps_what_the_card_says() -> None:
    """The card is about this place; the list may be about a whole town."""
    card = make_place(special_days=[{"day": FAIR, "name": "Open night", "crowd_factor": 4}])
    found = {special.day: special for special in with_local_days(card, (fair(),), (2026,)).special_days}
    assert len(found) == 3
    assert (found[FAIR].name, found[FAIR].crowd_factor) == ("Open night", Decimal(4))


def test_without_festivals_nothing_is_copied() -> None:
    """The card and the holidays are the same objects."""
    assert with_local_days(PLACE, (fair(place="elsewhere"),), (2026,)) is PLACE
    found = place_holidays(PLACE, (fair(),), (2026,))
    assert found.kept is found.off_work is holidays_around("US", "IL", (2026,))


@pytest.mark.parametrize(
    "wrong",
    [
        {"last": FAIR - timedelta(days=1)},
        {"last": FAIR + timedelta(days=40)},
        {"place": None},
        {"town": {"country": "US", "latitude": 1, "longitude": 1}},
        {"crowd_factor": 0},
        {"reach_km": 500},
    ],
)
def test_what_makes_no_sense_is_refused(wrong: dict[str, Any]) -> None:
    """Backwards, endless, nowhere, in two places, without visitors, or all over the country."""
    with pytest.raises(ValidationError):
        fair(**wrong)
