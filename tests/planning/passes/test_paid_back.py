"""When a pass has paid: by the real price of each visit, in order of their days."""

from datetime import date, timedelta
from itertools import accumulate
from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.builders import make_household, make_place
from tripplan.documents.places.place import Place
from tripplan.language.sentences import fact
from tripplan.planning.family.family import Family
from tripplan.planning.passes.plan import BreakEven, PlannedVisit
from tripplan.planning.passes.sentences import break_even_fact
from tripplan.planning.passes.which_pays import which_pass_pays

TODAY = date(2026, 12, 1)
FAMILY = Family(make_household())
EVERYBODY = [{"count": 9, "ages": "any"}]
prices = st.integers(1, 40)


def priced(weekday: int, weekend: int, card: int) -> Place:
    """A place whose adults pay otherwise at weekends, with a pass for everybody; children are free."""
    tickets: list[dict[str, Any]] = [
        {"name": "Weekday", "price": f"{weekday}.00", "ages": "18+", "valid": "Mo-Fr"},
        {"name": "Weekend", "price": f"{weekend}.00", "ages": "18+", "valid": "Sa-Su"},
        {"name": "Child", "price": "0.00", "ages": "under 18"},
        {"kind": "pass", "name": "Year card", "price": f"{card}.00", "months": 12, "seats": EVERYBODY},
    ]
    return make_place(opening={"hours": "Mo-Su 10:00-17:00"}, offers=tickets)


def outlook(place: Place, days: list[date]) -> BreakEven:
    """What the plan says of the pass."""
    party = FAMILY.party()
    found = which_pass_pays(FAMILY, [PlannedVisit(place, day, party) for day in days], today=TODAY)
    (even,) = found.break_even
    return even


@settings(max_examples=60, deadline=None)
@given(
    prices,
    prices,
    st.integers(1, 300),
    st.lists(st.integers(1, 360), min_size=1, max_size=9, unique=True),
)
def test_a_pass_has_paid_when_a_plain_sum_says_so(
    weekday: int, weekend: int, card: int, ahead: list[int]
) -> None:
    """Two adults' tickets added up by hand, visit by visit, in whatever order the visits were named."""
    days = [TODAY + timedelta(days=n) for n in ahead]
    even = outlook(priced(weekday, weekend, card), days)
    each = [2 * (weekend if day.weekday() > 4 else weekday) for day in sorted(days)]
    sums = list(accumulate(each))
    paid = [number for number, spent in enumerate(sums, start=1) if spent >= card]
    if paid:
        assert (even.pays_after, even.pays_on) == (paid[0], sorted(days)[paid[0] - 1])
    else:
        assert even.pays_on is None
        assert even.pays_after is not None
        assert even.pays_after > len(days)


def test_dear_visits_pay_a_pass_back_earlier_than_their_average() -> None:
    """Two Saturdays of 2 x 30, then three weekdays of 2 x 5: 120 are reached on the second visit.

    The average is 30 a visit, by which it would be the fourth.
    """
    days = [date(2027, 1, 9), date(2027, 1, 16), date(2027, 2, 2), date(2027, 2, 9), date(2027, 3, 2)]
    even = outlook(priced(5, 30, 120), days)
    assert (even.pays_after, even.pays_on) == (2, date(2027, 1, 16))
    told = break_even_fact(even)
    assert told.code == "passes-paid-back"
    assert (told.values["day"], told.values["number"]) == (date(2027, 1, 16), 2)


def test_a_pass_that_is_not_bought_may_be_paid_back_all_the_same() -> None:
    """One that costs just what it saves says the visit; with too few visits, how many like them it takes."""
    days = [date(2027, 1, 9), date(2027, 1, 16)]
    assert break_even_fact(outlook(priced(5, 30, 120), days)).values["number"] == 2
    few = outlook(priced(5, 30, 150), days)
    assert (few.bought, few.pays_after, few.pays_on) == (False, 3, None)
    told = break_even_fact(few)
    assert (told.code, told.values["after"]) == ("passes-paid-after", fact("passes-visits", count=3))
