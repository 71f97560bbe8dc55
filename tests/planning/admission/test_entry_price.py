"""The bare price of entry is the total of the full answer, also where the board is a plain one."""

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
    seats,
)
from tripplan.documents.places.place import Place
from tripplan.planning.admission.cheapest import Gate
from tripplan.planning.admission.result import NoAdmission


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


@settings(max_examples=100, suppress_health_check=[HealthCheck.too_slow])
@given(questions(people=(1, 5), offers=4))
def test_the_price_of_entry_is_the_total_of_the_full_answer(question: Question) -> None:
    """Whatever stands on the board and whichever passes are held, both ask the same amount."""
    _check(question)


_STATUSES = st.sampled_from(((), (), ("student",)))
_PARTIES = st.lists(st.tuples(st.sampled_from((1, 4, 8, 15, 30, 67)), _STATUSES), min_size=1, max_size=6)


@st.composite
def _plain_boards(draw: st.DrawFn) -> Place:
    """Single tickets, beside bundles and passes about as dear as those of some or all of a party."""
    tickets = st.fixed_dictionaries(
        {"price": prices, "ages": bands, "needs": rarely(st.just(("student",)), ())}
    )
    usual = {"price": draw(prices), "ages": "any"}
    dear = st.sampled_from(("9", "14.50", "19.50", "24", "36", "45", "90"))
    family = st.fixed_dictionaries({"kind": st.just("bundle"), "seats": seats, "at_most": rarely(st.just(1))})
    with_parking = passes.map(lambda unit: {**unit, "parking_included": True})
    units = st.builds(
        lambda unit, price: {**unit, "price": price}, st.one_of(family, family, bundles, with_parking), dear
    )
    offers = [usual, *draw(st.lists(tickets, max_size=4)), *draw(st.lists(units, max_size=2))]
    return make_place(offers=named(offers, "Offer"))


@settings(max_examples=100, suppress_health_check=[HealthCheck.too_slow])
@given(_plain_boards(), _PARTIES)
def test_a_plain_board_is_priced_as_any_other(
    place: Place, people: list[tuple[int, tuple[str, ...]]]
) -> None:
    """Beside bundles and passes that may be a little cheaper, the price is that of the full answer."""
    party = tuple(person(f"P{n}", years, statuses) for n, (years, statuses) in enumerate(people))
    _check(Question(place, party, frozenset(member.name for member in party), (), ()))
