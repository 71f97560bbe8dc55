"""The bare price of entry is the total of the full answer, also where the board is plain."""

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
from tripplan.documents.family.member import Member
from tripplan.documents.places.place import Place
from tripplan.planning.admission.cheapest import Gate
from tripplan.planning.admission.plain_boards import plain_price
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
def test_a_board_is_called_plain_only_where_it_is(
    place: Place, people: list[tuple[int, tuple[str, ...]]]
) -> None:
    """Beside bundles and passes that may be a little cheaper, the price is that of the full answer."""
    party = tuple(person(f"P{n}", years, statuses) for n, (years, statuses) in enumerate(people))
    _check(Question(place, party, frozenset(member.name for member in party), (), ()))


def _plainly(place: Place, party: tuple[Member, ...]) -> int | None:
    found = plain_price(place, place.offers, party, [member.months_on(ARRIVAL.date()) for member in party])
    return None if found is None else found.minor


def test_what_is_called_plain() -> None:
    """Two adults at 14.00: plain, also beside one ticket for two; not beside two, a pass, a fee or a tax."""
    place = make_place()
    party = (person("Ann", 30), person("Bo", 30))
    bundle = {"kind": "bundle", "name": "Two", "price": "28.00", "seats": [{"count": 2}]}
    adult = {"name": "Adult", "price": "14.00", "ages": "13+"}
    assert _plainly(place, party) == 2800
    assert _plainly(make_place(offers=[adult, bundle]), party) == 2800
    cheaper = {**bundle, "price": "27.99"}
    assert _plainly(make_place(offers=[adult, cheaper]), party) == 2799
    assert _plainly(make_place(offers=[adult, cheaper, {**cheaper, "name": "Duo"}]), party) is None
    assert _plainly(make_place(offers=[adult, {**cheaper, "must_include": "18+"}]), party) is None
    assert _plainly(make_place(offers=[adult, {**bundle, "kind": "pass", "months": 12}]), party) is None
    assert _plainly(make_place(offers=[{**adult, "ages": "65+"}]), party) is None
    four = (*party, person("Cy", 30), person("Di", 30))
    once = {**bundle, "price": "20.00", "at_most": 1}
    assert _plainly(make_place(offers=[adult, {**bundle, "price": "20.00"}]), four) == 4000
    assert _plainly(make_place(offers=[adult, once]), four) == 2000 + 2 * 1400
    assert _plainly(make_place(sales_tax={"percent": "7"}), party) is None
    fees = [{"name": "Booking", "price": "1.00", "per": "order"}]
    assert _plainly(make_place(fees=fees), party) is None
    assert _plainly(place, (person("Cy", 8), party[1])) == 2300
