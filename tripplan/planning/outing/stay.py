"""How long a visit should be for a party whose ages are of different patience."""

from collections.abc import Sequence
from dataclasses import dataclass

from tripplan.documents.places.place import Visit


@dataclass(frozen=True)
class PartyStay:
    """How long a party should stay.

    Attributes:
        shortest_minutes: a shorter visit is not allowed [min].
        comfortable_minutes: a longer visit is worth nothing more [min].
        decided_by: whose age decides, by the number in the party; None where the card's general stay does.
    """

    shortest_minutes: int
    comfortable_minutes: int
    decided_by: int | None


def stay_for(visit: Visit, ages_months: Sequence[int]) -> PartyStay:
    """How long a party should stay: as long as suits the one who tires first.

    Of all members the one with the shortest comfortable stay decides both figures, among equals the first.

    Args:
        visit: what the place card says; the first of its stays that names an age holds for it.
        ages_months: everybody's age on the day [completed months].
    """
    general = PartyStay(visit.shortest_minutes, visit.comfortable_minutes, None)
    stays = [general] * len(ages_months)
    for number, months in enumerate(ages_months):
        stay = next((stay for stay in visit.stays if months in stay.ages), None)
        if stay is not None:
            stays[number] = PartyStay(stay.shortest_minutes, stay.comfortable_minutes, number)
    return min(stays, key=lambda stay: stay.comfortable_minutes, default=general)
