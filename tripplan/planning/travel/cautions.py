"""What to keep in mind on every drive with children; each caution says who has the last word."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from tripplan.language.sentences import Fact, fact
from tripplan.planning.travel.drive import Leg
from tripplan.planning.travel.rests import INFANT_UNDER_MONTHS
from tripplan.values.ages import MONTHS

CHILD_UNDER_MONTHS = 13 * MONTHS
"""Children's cautions show below this age: the highest age at which a rule of the back seat was found."""
NEWBORN_UNDER_MONTHS = 1


@dataclass(frozen=True)
class Caution:
    """One thing that can hurt somebody.

    Attributes:
        code: of the message that says what to do and who has the last word.
        applies: whether it concerns a leg and the party's ages [completed months].
        source: where it was read.
    """

    code: str
    applies: Callable[[Leg, Sequence[int]], bool]
    source: str


def _somebody_under(limit_months: int) -> Callable[[Leg, Sequence[int]], bool]:
    return lambda _, ages_months: any(months < limit_months for months in ages_months)


CAUTIONS = (
    Caution(
        "cautions-car-seat",
        applies=_somebody_under(CHILD_UNDER_MONTHS),
        source="GOV.UK, Child car seats: the law (seat until 12 years or 135 cm; height-based seats face "
        "backwards until past 15 months); US advice, quoted at second hand: back seat under 13",
    ),
    Caution(
        "cautions-tired-driver",
        applies=lambda leg, _: leg.drive_minutes > 0,
        source="The Highway Code (Great Britain), rule 91",
    ),
    Caution(
        "cautions-parked-car",
        applies=_somebody_under(CHILD_UNDER_MONTHS),
        source="Newspaper report quoting a San Jose meteorologist's measurements (second hand)",
    ),
    Caution(
        "cautions-baby-in-seat",
        applies=_somebody_under(INFANT_UNDER_MONTHS),
        source="NHS Wales health-board page (no published limit; not more than two hours advised); "
        "American Academy of Pediatrics, quoted at second hand",
    ),
    Caution(
        "cautions-newborn-in-seat",
        applies=_somebody_under(NEWBORN_UNDER_MONTHS),
        source="The Lullaby Trust, quoted at second hand; the figure is a pilot study's test length",
    ),
)


def drive_cautions(leg: Leg, ages_months: Sequence[int]) -> tuple[Fact, ...]:
    """The cautions that concern one drive, most general first.

    Args:
        leg: the drive with its rests.
        ages_months: everybody's age on the day [completed months].
    """
    return tuple(fact(caution.code) for caution in CAUTIONS if caution.applies(leg, ages_months))
