"""The bare price of entry is the total of the full answer, also where single tickets are seen to be best."""

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.builders import make_place
from tests.planning.admission.price_boards import (
    ARRIVAL,
    TODAY,
    Question,
    bands,
    bundles,
    named,
    passes,
    person,
    prices,
    questions,
    rarely,
)
from tripplan.planning.admission.cheapest import Gate
from tripplan.planning.admission.result import NoAdmission
from tripplan.planning.admission.singly import price_of_single_tickets
from tripplan.planning.household import Member
from tripplan.planning.place import Place


def _gate(question: Question) -> Gate:
    return Gate(
        question.place,
        ARRIVAL,
        TODAY,
        household=question.household,
        held=question.held,
        other_places=question.others,
    )


def _check(question: Question) -> None:
    gate = _gate(question)
    full, price = gate.admission(question.party), gate.entry_price(question.party)
    if isinstance(full, NoAdmission):
        assert price is None
    else:
        assert price is not None
        assert (price.total, price.parking_included) == (full.total, full.parking_included)


@settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(questions(people=(1, 5), offers=4))
def test_the_price_of_entry_is_the_total_of_the_full_answer(question: Question) -> None:
    """Whatever stands on the board and whichever passes are held, both ask the same amount."""
    _check(question)


_STATUSES = st.sampled_from(((), (), ("student",)))
_PARTIES = st.lists(st.tuples(st.sampled_from((1, 4, 8, 15, 30, 67)), _STATUSES), min_size=1, max_size=6)


@st.composite
def _plain_boards(draw: st.DrawFn) -> Place:
    """Single tickets, beside bundles and passes about as dear as those of a whole party."""
    tickets = st.fixed_dictionaries(
        {"price": prices, "ages": bands, "needs": rarely(st.just(("student",)), ())}
    )
    usual = {"price": draw(prices), "ages": "any"}
    dear = st.sampled_from(("19.50", "24", "36", "45", "90"))
    units = st.one_of(bundles, passes).flatmap(
        lambda unit: (
            dear.map(lambda price: {**unit, "price": price, "parking_included": True})
            if unit["kind"] == "pass"
            else dear.map(lambda price: {**unit, "price": price})
        )
    )
    offers = [usual, *draw(st.lists(tickets, max_size=4)), *draw(st.lists(units, max_size=2))]
    return make_place(offers=named(offers, "Offer"))


@settings(max_examples=300, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(_plain_boards(), _PARTIES)
def test_single_tickets_are_called_best_only_where_they_are(
    place: Place, people: list[tuple[int, tuple[str, ...]]]
) -> None:
    """Beside bundles and passes that may be a little cheaper, the price is that of the full search."""
    party = tuple(person(f"P{n}", years, statuses) for n, (years, statuses) in enumerate(people))
    _check(Question(place, party, frozenset(member.name for member in party), (), ()))


def _singly(place: Place, party: tuple[Member, ...]) -> int | None:
    found = price_of_single_tickets(
        place, place.offers, party, [member.months_on(ARRIVAL.date()) for member in party]
    )
    return None if found is None else found.minor


def test_what_is_called_plain() -> None:
    """Two adults at 14.00: plain beside a family ticket at 28.00, no more at 27.99, with a fee or a tax."""
    place = make_place()
    party = (person("Ann", 30), person("Bo", 30))
    bundle = {"kind": "bundle", "name": "Two", "price": "28.00", "seats": [{"count": 2}]}
    adult = {"name": "Adult", "price": "14.00", "ages": "13+"}
    assert _singly(place, party) == 2800
    assert _singly(make_place(offers=[adult, bundle]), party) == 2800
    assert _singly(make_place(offers=[adult, {**bundle, "price": "27.99"}]), party) is None
    assert _singly(make_place(offers=[{**adult, "ages": "65+"}]), party) is None
    assert _singly(make_place(sales_tax={"percent": "7"}), party) is None
    fees = [{"name": "Booking", "price": "1.00", "per": "order"}]
    assert _singly(make_place(fees=fees), party) is None
    assert _singly(place, (person("Cy", 8), party[1])) == 2300
