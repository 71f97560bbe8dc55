"""How much children usually sleep, by age: defaults that the parent overrides.

Sources, each checked by its abstract or a verbatim quotation:

* Hours in 24, naps included: Paruthi et al., Recommended amount of sleep for pediatric populations,
  Journal of Clinical Sleep Medicine 12(6):785-786, 2016 (American Academy of Sleep Medicine).
* Naps: Weissbluth, Naps in children: 6 months-7 years, Sleep 18(2):82-87, 1995, n = 172: two naps a
  day by 9-12 months, a single afternoon nap by 15-24 months, mostly of two hours from 2 years on;
  most children nap in their third and fourth year. At six months naps total 3.5 h (press reports).
* From four years on few nap: 44 of 158 children of 49-72 months (Smith et al., 2019).

The clock times, and 18 months as the age of the change to one nap, are assumptions without a source.
"""

from dataclasses import dataclass
from datetime import date, time

from tripplan.documents.family.member import Member, Nap
from tripplan.language import wording

_MONTHS = 12


@dataclass(frozen=True)
class SleepHours:
    """A recommended span of sleep in 24 hours, naps included.

    Attributes:
        at_least: lower end [h].
        at_most: upper end [h].
    """

    at_least: int
    at_most: int


_RECOMMENDED = (
    (4, SleepHours(12, 16)),
    (1 * _MONTHS, SleepHours(11, 14)),
    (3 * _MONTHS, SleepHours(10, 13)),
    (6 * _MONTHS, SleepHours(9, 12)),
    (13 * _MONTHS, SleepHours(8, 10)),
)
_RECOMMENDED_UNTIL = 19 * _MONTHS

_THREE_NAPS = (
    Nap(start=time(8, 45), minutes=75),
    Nap(start=time(12, 0), minutes=75),
    Nap(start=time(15, 30), minutes=60),
)
_TWO_NAPS = (Nap(start=time(9, 30), minutes=60), Nap(start=time(13, 0), minutes=90))
_ONE_NAP = (Nap(start=time(12, 45), minutes=120),)
_NAPS = ((4, _THREE_NAPS), (9, _TWO_NAPS), (18, _ONE_NAP), (4 * _MONTHS, ()))


def recommended_sleep(months: int) -> SleepHours | None:
    """Recommended sleep at an age.

    Args:
        months: age [completed months].

    Returns:
        The span; None under 4 months and from 19 years on, where the source recommends nothing.
    """
    if months >= _RECOMMENDED_UNTIL:
        return None
    return next((hours for first, hours in reversed(_RECOMMENDED) if months >= first), None)


def usual_naps(months: int) -> tuple[Nap, ...]:
    """Naps that are common at an age, as a first guess for the parent to change.

    Args:
        months: age [completed months].

    Returns:
        The naps in order; none under 4 months, where sleep follows no clock, and none from 4 years on.
    """
    return next((naps for first, naps in reversed(_NAPS) if months >= first), ())


def sleep_sentence(member: Member, day: date) -> str:
    """Recommended sleep beside what a person's own times come to; empty where none is recommended.

    Args:
        member: the person.
        day: on which the age counts.
    """
    recommended = recommended_sleep(member.months_on(day))
    if recommended is None:
        return ""
    night = (member.wakes.hour - member.bed.hour) * 60 + member.wakes.minute - member.bed.minute
    own = night % (24 * 60) + sum(nap.minutes for nap in member.naps)
    return (
        f"Recommended at this age: {recommended.at_least} to {recommended.at_most} hours of sleep in 24, "
        "naps included (American Academy of Sleep Medicine, 2016). By the times below it is "
        f"{wording.minutes(own)} at most. Your child's doctor has the last word."
    )
