"""How sure it is which outing is the cheapest."""

from dataclasses import replace
from datetime import date
from decimal import Decimal
from statistics import NormalDist

import pytest

from tests.builders import make_household, make_place
from tripplan.errors import CurrencyMismatch, PlanError
from tripplan.language.sentences import Fact, fact, say
from tripplan.planning.compare.certainty import (
    NINETY_FIVE_PERCENT_POINT,
    SURE_ENOUGH,
    chance_cheapest,
    how_sure,
)
from tripplan.planning.cost import CostItem, OutingCost, Swing
from tripplan.planning.cost.items import add_up, known_item
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money
from tripplan.values.ranges import Origin, Source

SOURCE = Source(Origin.ESTIMATE, "made up for tests")
NORMAL = NormalDist()
FOUR_STANDARD_ERRORS = 0.01
"""40 000 draws have a standard error of at most 0.25 %."""


PARKING = fact("costs-parking", cars=1)


def usd(text: str) -> Money:
    """US dollars."""
    return Money(Decimal(text), "USD")


def cost(likely: str, *swings: tuple[str, str, str], unknown: Fact | None = None) -> OutingCost:
    """A cost of one item, moved by causes that take so much off and put so much on."""
    moved = [Swing(cause, usd(below), usd(above)) for cause, below, above in swings]
    items = [known_item(CostKind.CAR, fact("costs-tolls"), usd(likely), SOURCE, moved)]
    if unknown:
        items.append(CostItem(CostKind.PARKING, unknown, None, SOURCE))
    return add_up(items, "USD")


def test_the_five_percent_point_is_that_of_the_standard_normal() -> None:
    """The constant is the quantile that the standard library computes."""
    assert pytest.approx(NORMAL.inv_cdf(0.95), abs=1e-12) == NINETY_FIVE_PERCENT_POINT


@pytest.mark.parametrize("ahead", ["0", "2", "5", "11"])
def test_two_independent_outings_follow_the_difference_of_two_normals(ahead: str) -> None:
    """Standard deviations are 6/1.645 and 8/1.645, so the difference has 10/1.645."""
    near = cost("100", ("one", "6", "6"))
    far = cost(str(100 + int(ahead)), ("other", "8", "8"))
    expected = NORMAL.cdf(int(ahead) / (10 / NORMAL.inv_cdf(0.95)))
    assert chance_cheapest([near, far]) == pytest.approx((expected, 1 - expected), abs=FOUR_STANDARD_ERRORS)


def test_a_shared_cause_that_weighs_the_same_cancels() -> None:
    """However wild the fuel price, it does not decide between two equal drives."""
    near = cost("100", ("fuel price", "40", "60"), ("one", "6", "6"))
    far = cost("105", ("fuel price", "40", "60"), ("other", "8", "8"))
    expected = NORMAL.cdf(5 / (10 / NORMAL.inv_cdf(0.95)))
    assert chance_cheapest([near, far])[0] == pytest.approx(expected, abs=FOUR_STANDARD_ERRORS)


def test_only_the_difference_of_a_shared_cause_counts() -> None:
    """Swings of 5 and 9 from one cause leave a normal with 4/1.645 between the two."""
    near, far = cost("100", ("fuel price", "5", "5")), cost("103", ("fuel price", "9", "9"))
    expected = NORMAL.cdf(3 / (4 / NORMAL.inv_cdf(0.95)))
    assert chance_cheapest([near, far])[0] == pytest.approx(expected, abs=FOUR_STANDARD_ERRORS)


def test_a_lopsided_swing_uses_its_own_side() -> None:
    """Against an exact 10, a likely 12 that may be 4 less or 90 more is cheaper by its lower half alone."""
    lopsided, exact = cost("12", ("distance", "4", "90")), cost("10")
    expected = NORMAL.cdf(-2 / (4 / NORMAL.inv_cdf(0.95)))
    assert chance_cheapest([lopsided, exact])[0] == pytest.approx(expected, abs=FOUR_STANDARD_ERRORS)


def test_two_lopsided_outings_agree_with_a_sum_over_a_grid() -> None:
    """A second computation: 2000 equally likely steps of one cause, the other's normal taken whole."""
    near, far = cost("100", ("one", "3", "12")), cost("104", ("other", "9", "2"))
    z95, steps, expected = NORMAL.inv_cdf(0.95), 2000, 0.0
    for step in range(steps):
        z = NORMAL.inv_cdf((step + 0.5) / steps)
        gap = 100 + z / z95 * (12 if z > 0 else 3) - 104
        expected += (1 - NORMAL.cdf(gap * z95 / (2 if gap > 0 else 9))) / steps
    assert chance_cheapest([near, far])[0] == pytest.approx(expected, abs=FOUR_STANDARD_ERRORS)


def test_the_ends_of_a_total_are_its_5_and_95_percent_points() -> None:
    """Nine times in ten a total of even swings lies between the ends that the sum of items gives it."""
    total = cost("100", ("one", "6", "6"), ("other", "8", "8"), ("third", "10", "10"))
    for end, chance_below in ((total.total.low, 0.05), (total.total.high, 0.95)):
        below = chance_cheapest([total, cost(str(end.amount))])[0]
        assert below == pytest.approx(chance_below, abs=FOUR_STANDARD_ERRORS / 2)


def test_outings_that_cost_exactly_the_same_share_the_chance() -> None:
    """Two equal totals moved by the same causes halve the chance that a third one leaves them."""
    twin = cost("100", ("fuel price", "5", "5"))
    assert chance_cheapest([twin, twin, cost("200")]) == (0.5, 0.5, 0.0)


def test_split_swings_of_one_cause_count_as_their_sum() -> None:
    """Two items moved by 1.10 and 2.20 tie with one item moved by 3.30."""
    parts = [
        known_item(
            CostKind.CAR, fact("costs-tolls"), usd("50"), SOURCE, [Swing("fuel price", usd(by), usd(by))]
        )
        for by in ("1.10", "2.20")
    ]
    split, whole = add_up(parts, "USD"), cost("100", ("fuel price", "3.30", "3.30"))
    assert chance_cheapest([split, whole]) == (0.5, 0.5)


def test_the_answer_is_the_same_every_time_and_in_any_order() -> None:
    """One seed gives one answer, and turning the outings round turns the chances round."""
    costs = [cost("100", ("a", "9", "9")), cost("103", ("b", "5", "9")), cost("104", ("a", "1", "1"))]
    chances = chance_cheapest(costs)
    assert chance_cheapest(costs) == chances
    assert chance_cheapest(costs[::-1]) == chances[::-1]
    assert sum(chances) == pytest.approx(1)
    assert chance_cheapest(costs, seed=1) != chances


def test_chances_need_outings_in_one_currency() -> None:
    """Nothing to compare, or two currencies, is a caller's mistake."""
    with pytest.raises(PlanError):
        chance_cheapest([])
    with pytest.raises(CurrencyMismatch):
        chance_cheapest([cost("1"), add_up([], "EUR")])


@pytest.fixture(scope="module")
def outing() -> Outing:
    """An outing whose cost and name a test may replace."""
    family = Family(make_household(), (make_place(),))
    answer = plan_outing(
        family,
        family.party(),
        place_facts(family, family.places[0], {2026}),
        date(2026, 12, 8),
        today=date(2026, 11, 25),
    )
    assert isinstance(answer, Outing)
    return answer


def named(outing: Outing, name: str, its_cost: OutingCost) -> Outing:
    """The same outing to another place at another cost."""
    return replace(outing, place=make_place(name=name), cost=its_cost)


def test_a_clear_first_place_is_named_with_its_chance(outing: Outing) -> None:
    """Ten dollars ahead of a difference of 10/1.645 is a chance of 95 %."""
    sure = how_sure(
        [
            named(outing, "Far", cost("110", ("b", "8", "8"))),
            named(outing, "Near", cost("100", ("a", "6", "6"))),
        ]
    )
    assert not sure.too_close
    assert sure.chances[1] == pytest.approx(0.95, abs=FOUR_STANDARD_ERRORS)
    assert sure.facts == (fact("sure-cheapest", place="Near", odds=sure.chances[1]),)


def test_a_first_place_under_two_in_three_is_too_close_to_call(outing: Outing) -> None:
    """One dollar ahead of a difference of 10/1.645 is a chance of 57 %; the hopeless one is not named."""
    near, far = cost("100", ("a", "6", "6")), cost("101", ("b", "8", "8"))
    sure = how_sure(
        [named(outing, "Far", far), named(outing, "Near", near), named(outing, "Dear", cost("200"))]
    )
    assert max(sure.chances) < SURE_ENOUGH
    assert sure.too_close
    far_chance, near_chance, _ = sure.chances
    named_ones = (("Near", near_chance), ("Far", far_chance))
    chances = tuple(fact("sure-chance", place=place, odds=odds) for place, odds in named_ones)
    assert sure.facts == (fact("sure-too-close", chances=chances),)


def test_a_first_place_that_never_lost_a_draw_is_still_not_called_certain(outing: Outing) -> None:
    """A chance of 1 from draws is said to be almost certain."""
    sure = how_sure([named(outing, "Near", cost("100")), named(outing, "Dear", cost("200"))])
    assert sure.chances == (1.0, 0.0)
    assert say("figures-almost-certain") in sure.facts[0].text


def test_the_sentence_says_what_the_chance_leaves_out(outing: Outing) -> None:
    """Parking at an unknown price is in no total and in no chance."""
    sure = how_sure([named(outing, "Near", cost("90", unknown=PARKING)), named(outing, "Far", cost("200"))])
    assert sure.facts[1] == fact("sure-left-out", unknown=(fact("sure-unknown", what=PARKING, place="Near"),))


def test_one_outing_alone_has_nothing_to_be_compared_with(outing: Outing) -> None:
    """Its chance is 1 and no verdict is given."""
    sure = how_sure([named(outing, "Near", cost("90"))])
    assert (sure.chances, sure.too_close) == ((1.0,), False)
    assert sure.facts == (fact("sure-nothing-else", place="Near"),)
