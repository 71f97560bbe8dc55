"""What to keep in mind on every drive with children; each caution says whom it defers to."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from tripplan.planning.travel.drive import Leg
from tripplan.planning.travel.rests import INFANT_UNDER_MONTHS
from tripplan.values.ages import MONTHS

CHILD_UNDER_MONTHS = 13 * MONTHS
"""Children's cautions show below this age: the highest age at which a rule of the back seat was found."""
NEWBORN_UNDER_MONTHS = 1


@dataclass(frozen=True)
class Caution:
    """One thing that can hurt somebody, and what to do about it.

    Attributes:
        applies: whether it concerns a leg and the party's ages [completed months].
        text: what to do.
        defers_to: who has the last word.
        source: where it was read.
    """

    applies: Callable[[Leg, Sequence[int]], bool]
    text: str
    defers_to: str
    source: str


def _somebody_under(limit_months: int) -> Callable[[Leg, Sequence[int]], bool]:
    return lambda _, ages_months: any(months < limit_months for months in ages_months)


CAUTIONS = (
    Caution(
        applies=_somebody_under(CHILD_UNDER_MONTHS),
        text="Every child rides in the seat that fits age, height and weight, babies facing backwards.",
        defers_to="The law where you drive and the seat's manual decide which.",
        source="GOV.UK, Child car seats: the law (seat until 12 years or 135 cm; height-based seats face "
        "backwards until past 15 months); US advice, quoted at second hand: back seat under 13",
    ),
    Caution(
        applies=lambda leg, _: leg.drive_minutes > 0,
        text="Drive rested: at least 15 minutes' break after every two hours, and no long drive "
        "between midnight and 6 in the morning. Whoever gets sleepy stops at the next safe place.",
        defers_to="The law where you drive comes first.",
        source="The Highway Code (Great Britain), rule 91",
    ),
    Caution(
        applies=_somebody_under(CHILD_UNDER_MONTHS),
        text="Never leave a child alone in a parked car, not for a minute: on a warm day it can heat up by "
        "19 °F (11 °C) in 10 minutes and 34 °F (19 °C) in 30, windows ajar or not. A nap in the parked "
        "car needs an adult inside and cooling.",
        defers_to="If a child looks unwell from heat, call the local emergency number at once.",
        source="Newspaper report quoting a San Jose meteorologist's measurements (second hand)",
    ),
    Caution(
        applies=_somebody_under(INFANT_UNDER_MONTHS),
        text="Take a baby out of the seat at every stop, at least every two hours; on arrival move a "
        "sleeping baby to a firm, flat surface.",
        defers_to="Your child's doctor or health visitor has the last word.",
        source="NHS Wales health-board page (no published limit; not more than two hours advised); "
        "American Academy of Pediatrics, quoted at second hand",
    ),
    Caution(
        applies=_somebody_under(NEWBORN_UNDER_MONTHS),
        text="In the first four weeks some advise no more than about 30 minutes in a car seat at a time.",
        defers_to="Ask your midwife or doctor before a longer drive.",
        source="The Lullaby Trust, quoted at second hand; the figure is a pilot study's test length",
    ),
)


def drive_cautions(leg: Leg, ages_months: Sequence[int]) -> tuple[str, ...]:
    """The cautions that concern one drive, most general first.

    Args:
        leg: the drive with its rests.
        ages_months: everybody's age on the day [completed months].

    Returns:
        Whole sentences, each with whom it defers to.
    """
    return tuple(
        f"{caution.text} {caution.defers_to}" for caution in CAUTIONS if caution.applies(leg, ages_months)
    )
