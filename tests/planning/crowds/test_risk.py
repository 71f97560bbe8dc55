"""Crowd risk of the open days of a year."""

from datetime import date, timedelta
from typing import Any

import numpy as np
import pytest

from tests.builders import make_place
from tests.planning.crowds.open_on import risks_on
from tripplan.documents.calendars.calendars import DateSpan, SchoolCalendar
from tripplan.documents.logbook.crowd_note import Fullness
from tripplan.errors import PlanError
from tripplan.language.sentences import fact
from tripplan.planning.crowds.risk import (
    FULLNESS,
    CrowdReason,
    CrowdRisk,
    crowd_risks,
    fullness_for,
)
from tripplan.planning.holidays.public_holidays import public_holidays
from tripplan.planning.holidays.schools import school_days
from tripplan.values.weekday import Weekday

YEAR = tuple(date(2026, 1, 1) + timedelta(days=n) for n in range(365))
HOLIDAYS = public_holidays("US", "IL", range(2025, 2028))
TUESDAY, SATURDAY = date(2026, 10, 20), date(2026, 10, 24)
SUNDAY = date(2026, 10, 25)
TUESDAY_ON_BREAK, SATURDAY_ON_BREAK = date(2026, 3, 24), date(2026, 3, 28)
SCHOOLS = SchoolCalendar.model_validate(
    {
        "name": "district",
        "country": "US",
        "latitude": 40.5,
        "longitude": -89.0,
        "known": {"first": "2026-01-01", "last": "2026-12-31"},
        "no_school": [{"first": "2026-03-21", "last": "2026-03-29"}],
    }
)


def year(*, known: bool = True, **place: Any) -> dict[date, CrowdRisk]:
    """The risks of 2026 at a place that is open every day."""
    return dict(risks_on(YEAR, make_place(**place), HOLIDAYS, (SCHOOLS,) if known else ()))


def causes(risk: CrowdRisk) -> dict[str, CrowdReason]:
    """The reasons by their codes."""
    return {reason.cause.code.removeprefix("crowds-"): reason for reason in risk.reasons}


def test_chances_add_up_to_a_fifth_of_the_open_days() -> None:
    """The busiest fifth is a fifth, whatever the days are."""
    assert sum(risk.chance for risk in year().values()) == pytest.approx(73, abs=1e-6)


def test_a_short_school_day_is_a_little_fuller_and_says_so() -> None:
    """Between a whole school day and one without school, and nearer to the first."""
    short = SCHOOLS.model_copy(update={"short_days": (DateSpan(first=TUESDAY, last=TUESDAY),)})
    risks = risks_on(YEAR, make_place(), HOLIDAYS, (short,))
    plain, off = year()[TUESDAY], year()[TUESDAY_ON_BREAK]
    assert plain.chance < risks[TUESDAY].chance < (plain.chance + off.chance) / 2
    assert causes(risks[TUESDAY])["short-school-day"].factor == pytest.approx(1.5, abs=0.05)
    assert "short-school-day" not in causes(risks[TUESDAY_ON_BREAK])


def free_on(valid: str, **more: Any) -> list[dict[str, Any]]:
    """A price board with a day on which everybody enters free."""
    return [
        {"name": "Ticket", "price": "9.00", "ages": "any"},
        {"name": "Free day", "price": "0.00", "ages": "any", "valid": valid, **more},
    ]


def test_a_rare_day_of_free_entry_is_fuller() -> None:
    """A free first Tuesday draws, as its reason says; three free days a week draw less, seven nobody."""
    first_tuesday, other_tuesday = date(2026, 10, 6), TUESDAY
    risks = year(offers=free_on("Tu[1]"))
    assert risks[first_tuesday].chance > year()[first_tuesday].chance
    three_days = year(offers=free_on("Mo,We,Tu"))
    assert causes(risks[first_tuesday])["free-entry"].factor == pytest.approx(1.7, abs=0.05)
    assert "free-entry" not in causes(risks[other_tuesday])
    assert causes(three_days[TUESDAY])["free-entry"].factor == pytest.approx(1.4, abs=0.05)
    assert "free-entry" not in causes(year(offers=free_on("Mo-Su"))[TUESDAY])


@pytest.mark.parametrize(
    "more",
    [
        {"price": "1.00"},
        {"ages": "under 5"},
        {"needs": ["library card"]},
        {"last_day": "2026-09-30"},
        {"at_most": 1},
        {"at_least": 10},
        {"companions": {}},
    ],
    ids=["costs", "for some ages", "for some people", "is over", "for one", "for groups", "beside a payer"],
)
def test_what_is_not_free_for_everybody_draws_nobody(more: dict[str, Any]) -> None:
    """Only a ticket that lets everybody in for nothing makes a day of free entry."""
    assert "free-entry" not in causes(year(offers=free_on("Tu[1]", **more))[date(2026, 10, 6)])


def test_school_classes_fill_term_mornings_only() -> None:
    """A Tuesday with classes is fuller in term; on a break, on other weekdays and on holidays none come."""
    opening = {"hours": "Mo-Su 10:00-17:00", "school_groups": "Mo-Tu 10:00-12:00"}
    risks = year(opening=opening)
    classes = causes(risks[TUESDAY])["school-classes"]
    assert classes.cause.values["hours"] == "Mo-Tu 10:00-12:00"
    assert classes.factor == pytest.approx(1.5, abs=0.05)
    assert risks[TUESDAY].chance > year()[TUESDAY].chance
    for without in (TUESDAY_ON_BREAK, date(2026, 10, 21), SATURDAY, date(2026, 10, 12)):
        assert "school-classes" not in causes(risks[without])


def test_no_school_classes_come_on_a_day_in_lieu_of_a_holiday() -> None:
    """Independence Day 2026 is a Saturday, so that Friday 3 July is off; by SCHOOLS it lies in term.

    The rule is that of 5 U.S.C. 6103 (b) for federal employees (from memory), as in the table of holidays.
    """
    risks = year(opening={"hours": "Mo-Su 10:00-17:00", "school_groups": "Fr 10:00-12:00"})
    assert "school-classes" not in causes(risks[date(2026, 7, 3)])
    assert "school-classes" in causes(risks[date(2026, 7, 10)])


def test_fridays_are_told_apart_and_weekend_days_bring_alike() -> None:
    """Each is named with its size; the tables disagree whether Saturdays or Sundays are fuller."""
    risks = year()
    for day, factor in ((23, 1.1), (24, 2.5), (25, 2.5)):
        reason = causes(risks[date(2026, 10, day)])["weekday"]
        assert reason.cause.values["day"] == date(2026, 10, day).weekday()
        assert reason.factor == pytest.approx(factor, abs=0.05)


def test_the_kind_of_place_decides_how_full_days_off_are() -> None:
    """A zoo lives more by weekends than a museum, and public holidays fill it more."""
    holiday = date(2026, 10, 12)
    zoo, museum = (year(visit={"kind": kind}) for kind in ("zoo_or_farm", "museum"))
    for day, cause, times in ((SATURDAY, "weekday", 1.1), (holiday, "holiday", 1.3)):
        assert causes(zoo[day])[cause].factor > times * causes(museum[day])[cause].factor


@pytest.mark.parametrize(("fullest", "fuller"), [("saturdays", SATURDAY), ("sundays", SUNDAY)])
def test_the_fullest_day_on_the_card_decides(fullest: str, fuller: date) -> None:
    """The day that the card names is 1.5 times as full as the other day of the weekend."""
    risks = year(visit={"fullest_days": fullest})
    other = SUNDAY if fuller == SATURDAY else SATURDAY
    assert risks[fuller].chance > year()[fuller].chance > risks[other].chance


def test_where_all_days_are_alike_none_is_fuller_but_by_season() -> None:
    """Weekends, breaks and holidays have about the base rate, as a term weekday of the same week has."""
    risks = year(visit={"fullest_days": "all_alike", "indoors": "indoors"})
    for day in (SATURDAY, TUESDAY, TUESDAY_ON_BREAK, date(2026, 10, 12)):
        assert risks[day].chance == pytest.approx(0.2, abs=0.03)


def test_the_busiest_months_on_the_card_decide() -> None:
    """Outdoors in the north a card that names February turns the year around, and the reason says so."""
    summer, winter = date(2026, 7, 21), date(2026, 2, 17)
    guessed = year(visit={"indoors": "outdoors"})
    told = year(visit={"indoors": "outdoors"}, busiest_months=[1, 2, 3])
    assert guessed[summer].chance > guessed[winter].chance
    assert told[summer].chance < told[winter].chance
    assert "season-by-card" in causes(told[winter])


def test_school_holidays_count_by_who_comes() -> None:
    """A weekday on break is like a weekend where families come, and much less where everybody does."""
    families = year()[TUESDAY_ON_BREAK]
    everybody = year(visit={"who_comes": "everybody"})[TUESDAY_ON_BREAK]
    assert causes(families)["no-school"].factor == pytest.approx(2.9, abs=0.05)
    assert causes(everybody)["no-school"].factor == pytest.approx(1.4, abs=0.05)
    assert families.chance > everybody.chance


def test_nobody_can_tell_the_season_from_afar_where_winters_are_warm() -> None:
    """At 27 degrees of latitude the time of year is a doubt that the reason names."""
    where = {**make_place().where.model_dump(), "latitude": 27.0}
    risk = year(where=where, visit={"indoors": "outdoors"})[TUESDAY]
    assert "season-in-doubt" in causes(risk)
    assert "season-in-doubt" not in causes(year(visit={"indoors": "outdoors"})[TUESDAY])


def test_days_off_are_fuller_than_school_days() -> None:
    """A weekend, a weekday on break and a public holiday each beat a Tuesday in term."""
    risks = year()
    for fuller in (SATURDAY, TUESDAY_ON_BREAK, date(2026, 10, 12)):
        assert risks[fuller].chance > risks[TUESDAY].chance
    assert risks[SATURDAY_ON_BREAK].chance > risks[date(2026, 3, 14)].chance


def test_the_celebrated_day_is_a_public_holiday_and_the_day_off_work_says_so() -> None:
    """Independence Day is on Saturday; on Friday many are off work for it."""
    risks = year()
    for day, code in ((4, "holiday"), (3, "in-lieu")):
        assert causes(risks[date(2026, 7, day)])[code].cause.values["name"] == "Independence Day"


def test_a_bridge_day_is_fuller() -> None:
    """The Friday after Thanksgiving beats other Fridays in term, and says why."""
    bridge = year()[date(2026, 11, 27)]
    assert bridge.chance > year()[date(2026, 11, 20)].chance
    assert "bridge-day" in causes(bridge)


def test_half_the_pupils_bring_half_the_crowd() -> None:
    """With every second pupil on break a weekday lies halfway in visitors, not in logarithms."""
    in_school = SCHOOLS.model_copy(update={"no_school": ()})
    factors = [
        risks_on(YEAR, make_place(visit={"indoors": "indoors"}), HOLIDAYS, calendars)[TUESDAY_ON_BREAK]
        .reasons[0]
        .factor
        for calendars in ((SCHOOLS,), (SCHOOLS, in_school))
    ]
    assert factors[1] - 1 == pytest.approx((factors[0] - 1) / 2)


def test_reasons_come_largest_first_and_name_their_size() -> None:
    """A special day of ten times outweighs the weekend, and both say how much they bring."""
    place: dict[str, Any] = {
        "special_days": [{"day": SATURDAY, "name": "Harvest fair", "crowd_factor": "10"}]
    }
    first, second, *_ = year(**place)[SATURDAY].reasons
    assert first.cause == fact("crowds-special-day", name="Harvest fair")
    assert first.factor == pytest.approx(10)
    assert second.cause == fact("crowds-weekday", day=Weekday.SATURDAY)
    assert second.text == "Saturday: 2.5 times as busy as an ordinary weekday"


def test_a_special_day_is_fuller() -> None:
    """The same Saturday without the fair has a lower chance."""
    place: dict[str, Any] = {"special_days": [{"day": SATURDAY, "name": "Harvest fair", "crowd_factor": "3"}]}
    assert year(**place)[SATURDAY].chance > year()[SATURDAY].chance


def test_an_ordinary_day_says_that_it_is_one() -> None:
    """A reason is never missing."""
    (reason,) = year(visit={"indoors": "indoors"})[TUESDAY].reasons
    assert reason.cause == fact("crowds-ordinary-day")


def test_unknown_schools_are_a_doubt_between_school_and_none() -> None:
    """The chance lies between that of a term day and that of a break, and a reason says what is unknown."""
    # Where no typical school year is on record either, every weekday is alike.
    nowhere = {**make_place().where.model_dump(), "country": "JP", "subdivision": ""}
    unknown, known = year(known=False, where=nowhere), year()
    assert known[TUESDAY].chance < unknown[TUESDAY].chance < known[TUESDAY_ON_BREAK].chance
    assert "school-unknown" in causes(unknown[TUESDAY])
    assert not {"school-unknown", "school-likely", "no-school-likely"} & set(causes(known[TUESDAY]))


def test_where_no_calendar_is_known_the_states_typical_year_counts() -> None:
    """A Tuesday of July is fuller than one of October, and the reason says that nothing is certain."""
    risks = year(known=False)
    july = risks[date(2026, 7, 14)]
    assert july.chance > risks[TUESDAY].chance
    assert causes(july)["no-school-likely"].cause.values["students"] == fact("crowds-students")
    assert july.shares.unknown == 1
    march = risks[date(2026, 3, 24)]
    assert risks[TUESDAY].chance < march.chance < july.chance


def test_summer_is_where_the_place_is() -> None:
    """Outdoors in the north July is the fuller month, in the south January, in the tropics neither."""
    january, july = date(2026, 1, 20), date(2026, 7, 21)
    # Where no school year is on record, schools do not bring a summer of their own.
    where = {**make_place().where.model_dump(), "country": "JP", "subdivision": ""}
    chance = {}
    for latitude in (45.0, 5.0, -45.0):
        place = make_place(where={**where, "latitude": latitude}, visit={"indoors": "outdoors"})
        risks = risks_on(YEAR, place, HOLIDAYS, ())
        chance[latitude] = risks[july].chance - risks[january].chance
    assert chance[45.0] > 0.02
    assert chance[-45.0] < -0.02
    assert chance[5.0] == pytest.approx(0, abs=1e-4)


def test_only_open_days_are_compared_and_each_year_with_itself() -> None:
    """Closed days get no answer, no open day is no answer at all, and a second year changes nothing."""
    assert list(risks_on([SATURDAY, TUESDAY], make_place(), HOLIDAYS, ())) == [TUESDAY, SATURDAY]
    assert risks_on([], make_place(), HOLIDAYS, ()) == {}
    two_years = risks_on([*YEAR, date(2027, 1, 5)], make_place(), HOLIDAYS, (SCHOOLS,))
    assert two_years[SATURDAY] == year()[SATURDAY]
    assert len(two_years) == 366


def test_the_arrays_say_what_the_days_say() -> None:
    """Chances by date, from the year's arrays and from the risks are the same; closed days have none."""
    weekdays = [day for day in YEAR if day.weekday() < 5]
    crowds = risks_on(weekdays, make_place(), HOLIDAYS, (SCHOOLS,))
    assert list(crowds.chance[crowds.is_open]) == [risk.chance for risk in crowds.values()]
    assert [crowds.chance_on(day) for day in weekdays] == [risk.chance for risk in crowds.values()]
    assert np.isnan(crowds.chance[~crowds.is_open]).all()
    for closed in (SATURDAY, date(2027, 1, 5)):
        with pytest.raises(KeyError):
            crowds.chance_on(closed)
        with pytest.raises(KeyError):
            crowds[closed]


def test_a_year_needs_an_entry_for_each_of_its_days() -> None:
    """Arrays of another length, and parts of a year, are refused."""
    for first, last, entries in (
        (YEAR[0], YEAR[-1], 364),
        (YEAR[0], YEAR[-2], 364),
        (YEAR[1], YEAR[-1], 364),
        (YEAR[1], YEAR[-1] + timedelta(days=1), 365),
    ):
        schools = school_days((SCHOOLS,), make_place().where.point, first, last)
        with pytest.raises(PlanError):
            crowd_risks(make_place(), np.ones(entries, dtype=bool), HOLIDAYS, schools)


def test_every_chance_has_one_of_four_words() -> None:
    """The words cover all chances, in rising order, without gap."""
    assert [word for _, word in FULLNESS] == list(Fullness)
    assert [fullness_for(chance) for chance in (0.0, 0.2, 0.4, 1.0)] == list(Fullness)
    assert [limit for limit, _ in FULLNESS] == sorted(limit for limit, _ in FULLNESS)
    assert fullness_for(0.5) is Fullness.WELL_FILLED
    assert fullness_for(0.500001) is Fullness.PACKED
