"""Festivals and local days off that the parent lists."""

from datetime import date, timedelta
from decimal import Decimal
from typing import Any

import pytest
from pydantic import ValidationError

from tests.builders import make_household, make_place
from tripplan.planning.local_days import (
    LocalDay,
    concerns,
    local_dates,
    with_local_days,
    with_local_holidays,
)
from tripplan.planning.outing import Family, place_facts

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
    assert any("Hop fair" in reason.text for reason in busy[FAIR].reasons)
    other = date(2026, 9, 16)
    assert busy[other].chance == pytest.approx(plain[other].chance, abs=0.02)


def test_a_local_day_off_counts_as_a_public_holiday_for_the_crowd_only() -> None:
    """The crowd risk knows it; hours that speak of public holidays do not."""
    facts = place_facts(Family(make_household(), (PLACE,), local_days=(fair(day_off=True),)), PLACE, (2026,))
    assert any("public holiday (Hop fair)" in reason.text for reason in facts.crowds[FAIR].reasons)
    assert FAIR not in facts.public_holidays


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
    holidays = {date(2026, 1, 1): "New Year's Day"}
    assert with_local_days(PLACE, (fair(place="elsewhere"),), (2026,)) is PLACE
    assert with_local_holidays(holidays, PLACE, (fair(),), (2026,)) is holidays


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
