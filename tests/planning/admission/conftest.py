"""Short forms for tests about admission."""

from collections.abc import Callable
from datetime import date
from typing import Any, Protocol

import pytest

from tests.builders import make_place
from tests.planning.admission.price_boards import ARRIVAL, TODAY, person
from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.member import Member
from tripplan.planning.admission.cheapest import cheapest_admission
from tripplan.planning.admission.result import Admission, NoAdmission


class Family(Protocol):
    """Makes a party from names with ages."""

    def __call__(self, **years: int | tuple[int, str]) -> tuple[Member, ...]:
        """One person per name: years, or years and a status."""
        ...


@pytest.fixture
def family() -> Family:
    """A party by name, such as `family(Ann=36, Cy=7, Di=(20, 'student'))`."""

    def make(**years: int | tuple[int, str]) -> tuple[Member, ...]:
        return tuple(
            person(name, age) if isinstance(age, int) else person(name, age[0], (age[1],))
            for name, age in years.items()
        )

    return make


@pytest.fixture
def ask() -> Callable[..., Admission | NoAdmission]:
    """Asks for the admission of a party; names of the card's fields change the place."""

    def make(
        party: tuple[Member, ...],
        *,
        held: tuple[HeldPass, ...] = (),
        household: tuple[str, ...] = (),
        today: date = TODAY,
        other_places: tuple[Any, ...] = (),
        **card: Any,
    ) -> Admission | NoAdmission:
        return cheapest_admission(
            make_place(**card),
            party,
            ARRIVAL,
            today=today,
            household_members=household,
            held=held,
            other_places=other_places,
        )

    return make


@pytest.fixture
def buy(ask: Callable[..., Admission | NoAdmission]) -> Callable[..., tuple[str, dict[str, int]]]:
    """What a party pays in all, and how many of what it buys."""

    def make(party: tuple[Member, ...], **card: Any) -> tuple[str, dict[str, int]]:
        answer = ask(party, **card)
        assert isinstance(answer, Admission), answer
        return str(answer.total.amount), {line.name: line.quantity for line in answer.purchases}

    return make
