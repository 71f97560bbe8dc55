"""The calculator against an integer programme written independently, on larger parties and boards."""

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.planning.admission.price_boards import ARRIVAL, TODAY, Question, questions
from tests.planning.admission.reference_programme import least_by_reference
from tripplan.planning.admission.cheapest import cheapest_admission
from tripplan.planning.admission.result import Admission, NoAdmission

families = questions(people=(5, 8), offers=8)
groups = questions(people=(9, 16), offers=8, groups=True)
few = questions(people=(6, 12), offers=5, few=True)


@settings(max_examples=60, derandomize=True, suppress_health_check=[HealthCheck.too_slow])
@given(st.one_of(families, groups, few))
def test_an_integer_solver_finds_nothing_cheaper(question: Question) -> None:
    """The answer costs, to the cent, what an independent integer programme finds, or neither finds a way."""
    least = least_by_reference(question)
    answer = cheapest_admission(
        question.place,
        question.party,
        ARRIVAL,
        today=TODAY,
        household_members=question.household,
        held=question.held,
        other_places=question.others,
        car_seats=question.car_seats,
        other_ways=0,
    )
    if least is None:
        assert isinstance(answer, NoAdmission)
    else:
        assert isinstance(answer, Admission)
        # The solver's figure is a float; it lies within rounding of the exact total.
        assert abs(answer.total.minor - least) <= 0.5 + 1e-4
