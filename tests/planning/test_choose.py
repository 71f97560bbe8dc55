from datetime import date

from tests.builders import make_household, make_place
from tripplan.planning.calendars import DateSpan
from tripplan.planning.choose import compare, days_in, rank
from tripplan.planning.family import Family
from tripplan.planning.outing import Outing, plan_outing
from tripplan.planning.place_facts import place_facts

TODAY = date(2026, 11, 25)
DAYS = days_in(DateSpan(first=date(2026, 12, 1), last=date(2026, 12, 14)))

NEAR = make_place()
DEAR = make_place(id="dear-one", name="Dear one", offers=[{"name": "Everybody", "price": "40.00"}])
CLOSED = make_place(id="closed-one", name="Closed one", opening={"hours": "Jul-Aug 10:00-17:00"})
FAMILY = Family(make_household(), (NEAR, DEAR, CLOSED))


def test_a_span_counts_both_ends() -> None:
    """The first and the last day belong to a span."""
    assert (DAYS[0], DAYS[-1], len(DAYS)) == (date(2026, 12, 1), date(2026, 12, 14), 14)


def test_every_place_and_day_gets_exactly_one_answer() -> None:
    """Nothing is lost between what can be done and what cannot."""
    ranking = rank(FAMILY, FAMILY.party(), FAMILY.places, DAYS, today=TODAY)
    done = [(outing.place.id, outing.day) for outing in ranking.outings]
    answered = done + [(missed.place.id, missed.day) for missed in ranking.passed_over]
    assert sorted(answered) == sorted((p.id, day) for p in FAMILY.places for day in DAYS)


def test_days_are_ranked_by_felt_cost_as_single_answers_give_it() -> None:
    """The order agrees with planning every day by itself and sorting by felt cost."""
    ranking = rank(FAMILY, FAMILY.party(), (NEAR,), DAYS, today=TODAY)
    facts = place_facts(FAMILY, NEAR, (2026,))
    single = [plan_outing(FAMILY, FAMILY.party(), facts, day, today=TODAY) for day in DAYS]
    felt = sorted(found.felt_cost.amount for found in single if isinstance(found, Outing))
    assert [found.felt_cost.amount for found in ranking.outings] == felt


def test_candidates_stand_in_order_of_total_cost_and_the_impossible_comes_last() -> None:
    """The cheaper place stands first whatever the order asked in; a place without a day stands last."""
    candidates = compare(FAMILY, FAMILY.party(), (CLOSED, DEAR, NEAR), DAYS, today=TODAY)
    assert [candidate.place.id for candidate in candidates] == ["test-museum", "dear-one", "closed-one"]
    assert candidates[2].best is None
    assert len(candidates[2].passed_over) == len(DAYS)


def test_progress_is_told_after_each_place() -> None:
    """Three places report a third, two thirds and the whole."""
    told: list[float] = []
    rank(FAMILY, FAMILY.party(), FAMILY.places, DAYS[:1], today=TODAY, progress=told.append)
    assert told == [1 / 3, 2 / 3, 1.0]
