from datetime import date

from tests.builders import make_household, make_place
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.planning.compare.choose import compare, days_in
from tripplan.planning.family.family import Family

TODAY = date(2026, 11, 25)
DAYS = days_in(DateSpan(first=date(2026, 12, 1), last=date(2026, 12, 14)))

NEAR = make_place()
DEAR = make_place(id="dear-one", name="Dear one", offers=[{"name": "Everybody", "price": "40.00"}])
CLOSED = make_place(id="closed-one", name="Closed one", opening={"hours": "Jul-Aug 10:00-17:00"})
FAMILY = Family(make_household(), (NEAR, DEAR, CLOSED))


def test_a_span_counts_both_ends() -> None:
    """The first and the last day belong to a span."""
    assert (DAYS[0], DAYS[-1], len(DAYS)) == (date(2026, 12, 1), date(2026, 12, 14), 14)


def test_candidates_stand_in_order_of_total_cost_and_the_impossible_comes_last() -> None:
    """The cheaper place stands first whatever the order asked in; a place without a day stands last."""
    candidates = compare(FAMILY, FAMILY.party(), (CLOSED, DEAR, NEAR), DAYS, today=TODAY)
    assert [candidate.place.id for candidate in candidates] == ["test-museum", "dear-one", "closed-one"]
    assert candidates[2].best is None
    assert len(candidates[2].passed_over) == len(DAYS)
