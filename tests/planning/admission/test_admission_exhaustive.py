"""The calculator against a search that tries everything."""

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.planning.admission.exhaustive import Search
from tests.planning.admission.price_boards import ARRIVAL, TODAY, Question, questions
from tripplan.planning.admission.cheapest import cheapest_admission
from tripplan.planning.admission.result import Admission, NoAdmission


def ask(question: Question, other_ways: int = 0) -> Admission | NoAdmission:
    """Put a question to the calculator."""
    return cheapest_admission(
        question.place,
        question.party,
        ARRIVAL,
        today=TODAY,
        household_members=question.household,
        held=question.held,
        other_places=question.others,
        car_seats=question.car_seats,
        other_ways=other_ways,
    )


@settings(max_examples=100, derandomize=True, suppress_health_check=[HealthCheck.too_slow])
@given(st.one_of(questions(people=(2, 4), offers=3), questions(people=(3, 4), offers=3, few=True)))
def test_no_legal_set_of_offers_is_cheaper(question: Question) -> None:
    """The answer costs, to the cent, what the cheapest of all legal assignments costs, or there is none."""
    least = Search(question).cheapest()
    answer = ask(question)
    if least is None:
        assert isinstance(answer, NoAdmission)
        assert answer.reasons
    else:
        assert isinstance(answer, Admission)
        assert answer.total.minor == least
