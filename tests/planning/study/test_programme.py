"""A term's programme keeps every limit at the least weight, or says what stands in the way."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import date, datetime, timedelta
from decimal import Decimal
from itertools import combinations, product
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from tests.builders import make_household, make_place
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.documents.places.place import Place
from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.errors import PlanError
from tripplan.language.sentences import fact
from tripplan.planning.family.family import Family
from tripplan.planning.study.options import Option, UnitOptions
from tripplan.planning.study.programme import Programme, Term, elsewhere, programme_of, term_from
from tripplan.planning.study.sentences import standing_sentence
from tripplan.planning.sweep.sweeping import sweep
from tripplan.planning.sweep.table import DayTable
from tripplan.values.money import Money, MoneyRange

TODAY = date(2026, 11, 25)
MONDAY = date(2027, 1, 4)


def dollars(amount: int) -> Money:
    """So many dollars."""
    return Money(Decimal(amount), "USD")


def option(place: str, week: int, cost: int, felt: int, weekday: int = 1, swing: int = 0) -> Option:
    """A place in a week, counted from the first of January's full ones."""
    amounts = MoneyRange(dollars(max(0, cost - swing)), dollars(cost), dollars(cost + swing))
    return Option(place, MONDAY + timedelta(weeks=week, days=weekday), amounts, dollars(felt))


def unit(name: str, **changes: Any) -> StudyUnit:
    """A unit that runs all winter."""
    values = {"topics": ["mills"], "first": MONDAY, "last": date(2027, 3, 28), "currency": "USD"}
    return StudyUnit.model_validate({"name": name, **values, **changes})


def term(units: Mapping[str, Sequence[Option]], others: Iterable[date] = (), **wishes: Any) -> Term:
    """Units with their options by name, and what the parent wants."""
    return Term(
        tuple(UnitOptions(unit(name), tuple(options)) for name, options in units.items()),
        ProgrammeWishes.model_validate({"currency": "USD", **wishes}),
        tuple(others),
        (),
        "USD",
    )


def told(programme: Programme) -> dict[str, str]:
    """Where each unit goes, and in which week."""
    return {
        one.unit.name: f"{one.option.place} {(one.option.day - MONDAY).days // 7}"
        for one in programme.outings
    }


GRAIN = (option("mill", 0, 40, 50), option("farm", 1, 30, 60))
WATER = (option("mill", 1, 40, 45), option("lock", 0, 20, 48), option("lock", 2, 20, 70))


def test_each_unit_goes_where_all_together_weigh_least() -> None:
    """The mill is visited once, week 0 has one outing, and what is left weighs least."""
    # By hand: mill 0 and mill 1 are one place twice, mill 0 and lock 0 lie in one week; mill 0 and lock 2
    # weigh 120, farm 1 and lock 0 108, which is least; the total is 30 + 20.
    found = programme_of(term({"Grain": GRAIN, "Water": WATER}))
    assert told(found) == {"Grain": "farm 1", "Water": "lock 0"}
    assert found.felt == dollars(108)
    assert found.total == MoneyRange.exactly(dollars(50))
    assert not found.obstacles


def test_rules_can_be_lifted() -> None:
    """By hand: with one place twice, mill 0 and mill 1 weigh 95; with one week twice, 98 is least."""
    assert told(programme_of(term({"Grain": GRAIN, "Water": WATER}, same_place_again=True))) == {
        "Grain": "mill 0",
        "Water": "mill 1",
    }
    two = {"Grain": GRAIN, "Water": (option("lock", 0, 20, 48, weekday=2), *WATER[2:])}
    assert told(programme_of(term(two, several_a_week=True))) == {"Grain": "mill 0", "Water": "lock 0"}
    same_day = programme_of(term({"Grain": GRAIN, "Water": WATER[1:]}, several_a_week=True))
    assert told(same_day) == {"Grain": "farm 1", "Water": "lock 0"}


def test_the_least_money_may_be_asked_for_instead() -> None:
    """By hand: generalized cost prefers the mill at 90, money the farm at 10."""
    units = {"Grain": [option("mill", 0, 90, 95), option("farm", 1, 10, 200)]}
    assert told(programme_of(term(units))) == {"Grain": "mill 0"}
    assert told(programme_of(term(units, weigh="money"))) == {"Grain": "farm 1"}


def test_ranges_add_up_and_a_careful_parent_counts_their_high_ends() -> None:
    """60 give or take 10 and 30 give or take 5 are 75 to 105; a budget of 100 holds likely, not carefully."""
    units = {"Grain": [option("mill", 0, 60, 60, swing=10)], "Water": [option("lock", 1, 30, 30, swing=5)]}
    found = programme_of(term(units, budget=100))
    assert (found.total.low, found.total.likely, found.total.high) == (dollars(75), dollars(90), dollars(105))
    careful = programme_of(term(units, budget=100, careful=True))
    assert careful.outings == ()
    assert careful.obstacles[0].endswith("at the high end of every range, is $105.00")


def test_a_cost_that_nobody_knows_makes_the_total_a_lower_bound() -> None:
    """One outing with unknown parking is enough for the whole to say 'at least'."""
    units = {"Grain": [replace(GRAIN[0], at_least=True)], "Water": [WATER[2]]}
    assert programme_of(term(units)).unknown
    assert not programme_of(term({"Water": [WATER[2]]})).unknown


def test_a_budget_that_is_too_small_says_how_much_is_needed() -> None:
    """By hand: the least money is farm 1 and lock 0 or 2, 50 in all."""
    found = programme_of(term({"Grain": GRAIN, "Water": WATER}, budget="49.99"))
    assert found.outings == ()
    assert found.obstacles == (
        "the budget of $49.99 stands in the way: the least that one outing for each unit can cost is $50.00",
        "the unit 'Grain' stands in the way: without an outing for it the others can be done",
        "the unit 'Water' stands in the way: without an outing for it the others can be done",
    )


def test_a_rule_that_stands_in_the_way_is_named() -> None:
    """Two units with one place between them, and two with one week between them."""
    place = programme_of(term({"Grain": [GRAIN[0]], "Water": [WATER[0]]}))
    assert place.obstacles[0] == "no place twice stands in the way: without that it can be done"
    week = programme_of(term({"Grain": [GRAIN[0]], "Water": [option("lock", 0, 20, 48, weekday=3)]}))
    assert week.obstacles[0] == "no two outings in one week stands in the way: without that it can be done"


def test_where_no_limit_gives_room_alone_the_fewest_units_are_named() -> None:
    """Four units want one place on one day: three of them would have to go without."""
    one = [option("mill", 0, 10, 10)]
    found = programme_of(term(dict.fromkeys("ABCD", one)))
    (said,) = found.obstacles
    assert said.count("'") == 6
    assert said.endswith("stand in the way together: without outings for them the others can be done")


def test_weeks_with_another_planned_outing_are_not_free() -> None:
    """Something else is planned in week 1, so the farm is out; in the same week it is allowed where asked."""
    other = MONDAY + timedelta(weeks=1, days=5)
    units = {"Grain": GRAIN, "Water": WATER}
    assert told(programme_of(term(units, others=[other]))) == {"Grain": "mill 0", "Water": "lock 2"}
    assert told(programme_of(term(units, others=[other], several_a_week=True)))["Grain"] == "farm 1"


def test_a_unit_without_options_does_not_hold_up_the_others() -> None:
    """It is told with its reasons, and the others get their programme."""
    asked = term({"Grain": GRAIN})
    found = programme_of(replace(asked, units=(*asked.units, UnitOptions(unit("Stars"), (), ("no place",)))))
    assert told(found) == {"Grain": "mill 0"}
    assert [(one.unit.name, one.reasons) for one in found.without] == [("Stars", ("no place",))]


def test_another_place_comes_with_what_it_does_to_the_whole() -> None:
    """By hand: Grain at the mill forces Water to week 2; 40 + 20 is 10 more, 120 weighs 12 more."""
    asked = term({"Grain": GRAIN, "Water": WATER})
    now = programme_of(asked)
    (mill,) = elsewhere(asked, now, "Grain")
    assert (mill.option.place, mill.more, mill.felt_more) == ("mill", dollars(10), dollars(12))
    assert mill.moves == ("Water",)
    assert mill.total == MoneyRange.exactly(dollars(60))
    assert elsewhere(asked, now, "Nobody's") == ()


OPTIONS = st.builds(
    option,
    st.sampled_from(["mill", "farm", "lock"]),
    st.integers(0, 3),
    st.integers(0, 60),
    st.integers(0, 90),
    st.integers(0, 6),
    st.integers(0, 9),
)
TERMS = st.builds(
    lambda units, budget, week, place, careful, weigh: term(
        {f"Unit {number}": options for number, options in enumerate(units)},
        budget=budget,
        several_a_week=week,
        same_place_again=place,
        careful=careful,
        weigh=weigh,
    ),
    st.lists(st.lists(OPTIONS, min_size=1, max_size=4), min_size=1, max_size=4),
    st.none() | st.integers(0, 150),
    st.booleans(),
    st.booleans(),
    st.booleans(),
    st.sampled_from(["felt", "money"]),
)


def least_by_trying(asked: Term) -> Decimal | None:
    """The least weight of every combination that keeps the rules, written as the rules read."""
    wishes = asked.wishes

    def keeps_the_rules(chosen: Sequence[Option]) -> bool:
        for one, other in combinations(chosen, 2):
            weeks = {one.day.isocalendar()[:2], other.day.isocalendar()[:2]}
            if one.day == other.day or (len(weeks) == 1 and not wishes.several_a_week):
                return False
            if one.place == other.place and not wishes.same_place_again:
                return False
        spent = sum((one.cost.high if wishes.careful else one.cost.likely).amount for one in chosen)
        return wishes.budget is None or spent <= wishes.budget

    return min(
        (
            sum(
                ((one.felt if wishes.weigh == "felt" else one.cost.likely).amount for one in chosen),
                Decimal(0),
            )
            for chosen in product(*(one.options for one in asked.units))
            if keeps_the_rules(chosen)
        ),
        default=None,
    )


@settings(max_examples=60)
@given(TERMS)
def test_no_programme_weighs_less_and_obstacles_are_true(asked: Term) -> None:
    """Against every combination: the least weight, and where there is none, what is named does give room."""
    least = least_by_trying(asked)
    found = programme_of(asked)
    if least is not None:
        weighed = found.felt if asked.wishes.weigh == "felt" else found.total.likely
        assert weighed.amount == least
        return
    assert found.outings == ()
    assert found.obstacles
    for one in asked.units:
        rest = replace(asked, units=tuple(other for other in asked.units if other is not one))
        said = any(f"the unit '{one.unit.name}' stands" in line for line in found.obstacles)
        assert said is (least_by_trying(rest) is not None)
    lifted: dict[str, dict[str, Any]] = {
        "no two outings in one week stands": {"several_a_week": True},
        "no place twice stands": {"same_place_again": True},
        "the budget of": {"budget": None},
    }
    for words, changes in lifted.items():
        if asked.wishes != (wishes := asked.wishes.model_copy(update=changes)):
            said = any(line.startswith(words) for line in found.obstacles)
            assert said is (least_by_trying(replace(asked, wishes=wishes)) is not None)


# --- from a family's places and days ----------------------------------------------------------------------

MILL, FARM, BARN = (
    make_place(id=name, name=name.capitalize(), visit={"topics": topics}, opening={"hours": hours})
    for name, topics, hours in (
        ("mill", ["grain"], "Tu-Su 10:00-17:00"),
        ("farm", ["grain", "animals"], "Sa 10:00-17:00"),
        ("barn", ["hay"], "2028 Mo-Su 10:00-17:00"),
    )
)
FAMILY = Family(make_household(), (MILL, FARM, BARN))


def swept(party: tuple[str, ...], places: tuple[Place, ...], span: DateSpan) -> DayTable:
    """As the real one, for the family above."""
    return sweep(FAMILY, FAMILY.party(party), places, span, today=TODAY)


def solved(*units: StudyUnit, outings: Sequence[PlannedOuting] = (), **wishes: Any) -> tuple[Term, Programme]:
    """The programme of the family above."""
    wanted = ProgrammeWishes.model_validate({"currency": "USD", **wishes})
    asked = term_from(FAMILY, units, wanted, outings, swept, today=TODAY)
    return asked, programme_of(asked)


def grain(**changes: Any) -> StudyUnit:
    """Two weeks of grain."""
    return unit("Grain", **{"topics": ["grain"], "last": date(2027, 1, 17), **changes})


ANIMALS = unit("Animals", topics=["animals"], last=date(2027, 1, 17))


def planned(place: str, day: date, **changes: Any) -> PlannedOuting:
    """An outing on record."""
    start = datetime(day.year, day.month, day.day, 9, tzinfo=ZoneInfo("America/Chicago"))
    values = {
        "id": f"{place}-{day}",
        "place": place,
        "day": day,
        "party": ("Ann", "Cy"),
        "leave_home": start,
        "enter": start + timedelta(hours=1),
        "leave_place": start + timedelta(hours=3),
        "home": start + timedelta(hours=4),
        "uid": "x",
        "changed_at": start,
        "likely_amount": Decimal(70),
        "currency": "USD",
    }
    return PlannedOuting.model_validate({**values, **changes})


def test_units_take_their_outings_in_their_weeks_at_places_that_fit() -> None:
    """Animals fit the farm alone, which opens on Saturdays; grain then goes to the mill in the other week."""
    _, found = solved(grain(), ANIMALS)
    places = {one.unit.name: one.option for one in found.outings}
    assert places["Animals"].place == "farm"
    assert places["Animals"].day.weekday() == 5
    assert places["Grain"].place == "mill"
    weeks = {one.option.day.isocalendar()[1] for one in found.outings}
    assert len(weeks) == 2
    assert all(MONDAY <= one.option.day <= date(2027, 1, 17) for one in found.outings)


def test_what_nobody_knows_of_an_outing_is_named() -> None:
    """Parking without a price leaves the total a lower bound, and is named at the outing that is chosen."""
    mill = make_place(id="mill", visit={"topics": ["grain"]}, parking={})
    family = replace(FAMILY, places=(mill,))

    def swept(party: tuple[str, ...], places: tuple[Place, ...], span: DateSpan) -> DayTable:
        return sweep(family, family.party(party), places, span, today=TODAY)

    asked = term_from(family, [grain()], ProgrammeWishes(currency="USD"), (), swept, today=TODAY)
    found = programme_of(asked)
    (one,) = found.outings
    assert found.unknown
    assert (one.option.at_least, one.option.unknown) == (True, (fact("costs-parking", cars=1),))


def test_only_those_a_unit_is_for_are_paid_for() -> None:
    """The outing of a unit for Ann and Cy costs what it costs these two, less than for all four."""
    both = solved(grain())[1].total.likely
    few = solved(grain(members=["Ann", "Cy"]))[1].total.likely
    assert few < both


@pytest.mark.parametrize(
    ("changes", "wishes", "said"),
    [
        ({"topics": ["stars"]}, {}, "no place card names one of its topics"),
        ({"first": "2026-01-04", "last": "2026-02-01"}, {}, "none of its days lies ahead and in the term"),
        ({}, {"first": "2027-02-01"}, "none of its days lies ahead and in the term"),
        ({"topics": ["hay"]}, {}, "no day can be done"),
        ({"budget": 5}, {}, "its own budget of $5.00 is too small: the least it can cost is $"),
        ({"members": ["Zoe"]}, {}, "nobody it is for is a member"),
        ({"currency": "EUR", "budget": 5}, {}, "its budget is in EUR, the household counts in USD"),
        (
            {},
            {"ruled_out": [{"unit": "Grain", "place": "mill"}, {"unit": "Grain", "place": "farm"}]},
            "you have ruled out every place that fits",
        ),
        ({}, {"settled": [{"unit": "Grain", "place": "gone"}]}, "has no card any more"),
        (
            {},
            {"settled": [{"unit": "Grain", "place": "farm", "day": "2027-01-05"}]},
            "Tue, Jan 5, 2027, which you fixed, cannot be done",
        ),
        (
            {},
            {"settled": [{"unit": "Grain", "day": "2027-02-05"}]},
            "the day you fixed, Fri, Feb 5, 2027, does not lie ahead in its weeks and the term",
        ),
    ],
)
def test_why_a_unit_has_no_outing_is_said(changes: dict[str, Any], wishes: dict[str, Any], said: str) -> None:
    """Each thing that leaves a unit without a day has a sentence of its own."""
    _, found = solved(grain(**changes), **wishes)
    (without,) = found.without
    assert said in without.reasons[0]


def test_what_the_parent_settles_and_rules_out_is_kept() -> None:
    """A settled place and day stay; a day ruled out gives way to the next best."""
    day = date(2027, 1, 6)
    _, found = solved(grain(), settled=[{"unit": "Grain", "place": "mill", "day": day}])
    (one,) = found.outings
    assert (one.option.place, one.option.day, one.settled) == ("mill", day, True)
    _, best = solved(grain())
    first = best.outings[0].option
    wishes = ProgrammeWishes(currency="USD").ruling_out("Grain", first.place, first.day)
    _, second = solved(grain(), **dict(wishes))
    assert (second.outings[0].option.place, second.outings[0].option.day) != (first.place, first.day)
    assert second.felt.amount >= best.felt.amount


def test_an_outing_planned_for_a_unit_is_its_outing() -> None:
    """It keeps its day, counts against the budget and takes its week; called off, it counts no more."""
    day = date(2027, 1, 8)
    mine = planned("mill", day, study_unit="Grain")
    _, found = solved(grain(), ANIMALS, outings=[mine])
    by_unit = {one.unit.name: one for one in found.outings}
    assert by_unit["Grain"].planned == mine
    assert by_unit["Grain"].option.day == day
    assert by_unit["Animals"].option.day == date(2027, 1, 16)
    _, poor = solved(grain(), ANIMALS, outings=[mine], budget=1)
    assert poor.obstacles
    called_off = mine.model_copy(update={"status": PlanStatus.CANCELLED})
    _, again = solved(grain(), outings=[called_off])
    assert again.outings[0].planned is None


def test_an_outing_moved_out_of_its_units_weeks_is_still_its_outing() -> None:
    """A week late, or before the unit even begins, it stays the one outing, and where it lies is said."""
    for day in (date(2027, 1, 22), date(2026, 12, 29)):
        mine = planned("mill", day, study_unit="Grain")
        _, found = solved(grain(), outings=[mine])
        (one,) = found.outings
        assert (one.planned, one.option.day) == (mine, day)
        assert "outside the unit's weeks" in standing_sentence(one)


def test_of_two_outings_kept_for_a_unit_the_one_in_its_weeks_is_its_outing() -> None:
    """The other one only takes its day."""
    early, inside = (planned("mill", day, study_unit="Grain") for day in (TODAY, date(2027, 1, 8)))
    _, found = solved(grain(), outings=[early, inside])
    (one,) = found.outings
    assert one.planned == inside
    assert "outside" not in standing_sentence(one)


def test_last_years_outing_is_not_that_of_a_unit_taken_up_again() -> None:
    """An outing over for most of a year leaves the unit of the same name without one."""
    _, found = solved(grain(), outings=[planned("mill", date(2026, 2, 20), study_unit="Grain")])
    assert found.outings[0].planned is None


def test_days_of_other_planned_outings_are_taken() -> None:
    """With something else on both Saturdays, the farm cannot be done even where weeks may be shared."""
    others = [planned("mill", date(2027, 1, 9)), planned("mill", date(2027, 1, 16))]
    _, found = solved(ANIMALS, outings=others, several_a_week=True)
    assert found.without[0].reasons == (
        "every day that could be done is ruled out, or taken by another planned outing",
    )


def test_a_unit_may_stay_without_an_outing_this_time() -> None:
    """It is neither planned nor told as missing."""
    asked, found = solved(grain(), ANIMALS, without=["Animals"])
    assert [one.unit.name for one in asked.units] == ["Grain"]
    assert not found.without


def test_what_cannot_be_weighed_is_refused() -> None:
    """A budget in another currency than the household's, and more units than a programme holds."""
    with pytest.raises(PlanError, match="EUR"):
        solved(grain(), currency="EUR", budget=5)
    with pytest.raises(PlanError, match="at most 12 units"):
        solved(*(unit(f"Unit {number}") for number in range(13)))


def test_wishes_change_by_what_the_parent_presses() -> None:
    """Settling, ruling out and allowing again leave the other wishes as they are."""
    wishes = ProgrammeWishes(currency="USD", budget=Decimal(300)).settling("Grain", "mill", MONDAY)
    assert wishes.settled_for("Grain") is not None
    out = wishes.ruling_out("Grain", "mill")
    assert out.settled == ()
    assert out.allowing_again("Grain") == ProgrammeWishes(currency="USD", budget=Decimal(300))
    kept = wishes.ruling_out("Grain", "mill", MONDAY + timedelta(days=1))
    assert kept.settled == wishes.settled
    assert wishes.settling("Grain", None, None).settled == ()
