"""People of other households by age: what is typed is read, kept and written the same."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from tests.builders import make_household, make_place
from tripplan.documents.outings.going_together import GoingTogether, OtherHousehold, members_of, people_listed
from tripplan.errors import PlanError
from tripplan.language.sentences import fact
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting
from tripplan.planning.together.shapes import Together
from tripplan.planning.together.visit import first_open_day, visit_together
from tripplan.values.weekday import Weekday

TODAY, DAY = date(2026, 11, 25), date(2026, 12, 8)
FAMILY = Family(make_household(), (make_place(),))
PLACE_AND_DAY = (FAMILY.places[0], DAY)


def household(text: str, name: str = "Reed") -> OtherHousehold:
    """A household with the people in a text."""
    return OtherHousehold.model_validate({"name": name, "people": people_listed(text)})


def with_others(*others: OtherHousehold) -> GoingTogether:
    """Those households going together with the own one."""
    return GoingTogether(currency="USD", households=others)


@pytest.mark.parametrize(
    ("text", "months"),
    [("38", 456), ("9 years", 108), ("16 mo", 16), ("16mo", 16), ("1 month", 1), ("0", 0), ("2 y", 24)],
)
def test_an_age_is_read_in_years_or_months(text: str, months: int) -> None:
    """A bare number is years, 'mo' is months."""
    assert household(text).people[0].months == months


@pytest.mark.parametrize("text", ["old", "-3", "9.5", "9 weeks", "101", "1201 mo", "38 (a", "38 ((a))", ""])
def test_what_is_no_age_is_refused(text: str) -> None:
    """Nothing is guessed, and ages beyond any price band are not taken."""
    with pytest.raises(ValidationError):
        OtherHousehold.model_validate({"name": "Reed", "people": [text]})


def test_statuses_stand_in_brackets_and_may_hold_commas() -> None:
    """A comma within brackets parts statuses, not people."""
    people = household("38 (educator, Iowa resident), 9,, 16 mo,").people
    assert [person.statuses for person in people] == [("educator", "Iowa resident"), (), ()]
    assert list(map(str, people)) == ["38 (educator, Iowa resident)", "9", "16 mo"]


def test_people_are_kept_as_they_were_typed() -> None:
    """Saved as JSON and read again, the households are the same."""
    going = with_others(household("38 (educator), 9, 24 mo"))
    assert GoingTogether.model_validate_json(going.model_dump_json()) == going
    assert '"24 mo"' in going.model_dump_json()


@given(st.integers(0, 1200), st.dates(date(2026, 1, 1), date(2060, 12, 31)))
def test_on_the_day_everybody_is_as_old_as_told(months: int, day: date) -> None:
    """Whatever the day, the age in completed months is the one that was typed."""
    (member,) = members_of(household(f"{months} mo").people, day)
    assert member.months_on(day) == months


def test_nobody_needs_a_name() -> None:
    """People are counted as adults and children of their household."""
    names = [member.name for member in members_of(household("38, 9, 17, 18").people, DAY)]
    assert names == ["adult 1", "child 1", "child 2", "adult 2"]


def test_two_households_of_one_name_are_refused() -> None:
    """Otherwise nobody could tell how to settle it."""
    with pytest.raises(ValidationError, match="twice: Reed"):
        with_others(household("38"), household("40"))


def test_the_own_household_comes_first_with_its_car() -> None:
    """Two households pay as on the card: 14 + 14 + 9 = $37, and 14 + 9 = $23."""
    found = visit_together(
        FAMILY, FAMILY.party(), with_others(household("38, 9")), *PLACE_AND_DAY, today=TODAY
    )
    assert isinstance(found, Together)
    assert [(share.group, share.amount.minor) for share in found.shares] == [
        ("Test household", 3700),
        ("Reed", 2300),
    ]
    assert (found.seats.people, found.seats.seats) == (6, 10)


def test_a_place_abroad_is_shared_at_the_own_rate() -> None:
    """At 1.25 dollars the $37 and $23 of the board in euro are $46.25 and $28.75, and the rate is said."""
    rate = {"currency": "EUR", "worth": "1.25", "on": "2026-11-20"}
    abroad = make_place(currency="EUR")
    family = Family(make_household(exchange_rates=[rate]), (abroad,))
    found = visit_together(
        family, family.party(), with_others(household("38, 9")), abroad, PLACE_AND_DAY[1], today=TODAY
    )
    assert isinstance(found, Together)
    assert [(share.amount.minor, share.amount.currency) for share in found.shares] == [
        (4625, "USD"),
        (2875, "USD"),
    ]
    (told,) = found.rates
    assert (told.code, told.values["worth"]) == ("notes-rate", "1.25 USD")


def test_a_day_that_cannot_be_done_says_why() -> None:
    """Closed, over, or to be booked earlier: the reason is told, nothing is priced."""
    place = FAMILY.places[0]
    early = make_place(opening={"hours": "Tu-Su 10:00-17:00", "book_days_ahead": 30})
    for card, day, reason in (
        (place, date(2026, 12, 7), fact("hours-closed-weekday", day=Weekday.MONDAY)),
        (place, date(2026, 11, 24), fact("outing-over")),
        (early, DAY, fact("outing-book-ahead", days=30)),
    ):
        found = visit_together(FAMILY, FAMILY.party(), with_others(household("38")), card, day, today=TODAY)
        assert isinstance(found, NoOuting)
        assert found.reasons == (reason,)


def test_an_empty_party_and_a_second_household_of_the_own_name_are_refused() -> None:
    """Both are callers' mistakes."""
    with pytest.raises(PlanError, match="nobody of Test household"):
        visit_together(FAMILY, (), with_others(household("38")), *PLACE_AND_DAY, today=TODAY)
    twin = with_others(household("38", "Test household"))
    with pytest.raises(PlanError, match="a name of its own"):
        visit_together(FAMILY, FAMILY.party(), twin, *PLACE_AND_DAY, today=TODAY)


def test_the_first_open_day_passes_over_closed_ones() -> None:
    """Monday is closed, Tuesday is the first; among Mondays there is none."""
    monday, tuesday = date(2026, 12, 7), date(2026, 12, 8)
    assert first_open_day(FAMILY, FAMILY.places[0], [monday, tuesday], TODAY) == tuesday
    assert first_open_day(FAMILY, FAMILY.places[0], [monday], TODAY) is None
