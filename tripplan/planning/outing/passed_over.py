"""Days that cannot be done, told together where they have the same reason."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from tripplan.language import wording
from tripplan.language.sentences import Fact, told
from tripplan.planning.outing.outing import NoOuting

_RUN = 3
"""So many days in a row are told by the first and the last."""


@dataclass(frozen=True)
class PassedOver:
    """Days that have the same reasons.

    Attributes:
        places: names of the places that have them on just these days.
        reasons: at least one.
        days: in order.
    """

    places: tuple[str, ...]
    reasons: tuple[Fact, ...]
    days: tuple[date, ...]

    @property
    def sentence(self) -> str:
        """The reasons with their days, such as 'closed on Mondays (Nov 30, Dec 7)'."""
        return f"{'; '.join(told(self.reasons))} ({days_in_short(self.days)})"


def passed_over_together(missed: Iterable[NoOuting]) -> tuple[PassedOver, ...]:
    """The days that cannot be done, those with the same reasons together.

    Args:
        missed: in order of their days.

    Returns:
        In the order of their first days.
    """
    days: dict[tuple[str, tuple[Fact, ...]], list[date]] = {}
    for one in missed:
        days.setdefault((one.place.name, one.reasons), []).append(one.day)
    places: dict[tuple[tuple[Fact, ...], tuple[date, ...]], list[str]] = {}
    for (place, reasons), on in days.items():
        places.setdefault((reasons, tuple(on)), []).append(place)
    return tuple(PassedOver(tuple(names), reasons, on) for (reasons, on), names in places.items())


def days_in_short(days: Sequence[date]) -> str:
    """Days in order, such as 'Nov 30, Dec 7' or 'Nov 26 to Jan 6'."""
    runs: list[list[date]] = []
    for day in days:
        if runs and day - runs[-1][-1] == timedelta(days=1):
            runs[-1].append(day)
        else:
            runs.append([day])
    said: list[str] = []
    for run in runs:
        if len(run) >= _RUN:
            said.append(wording.from_to(wording.day_of_month(run[0]), wording.day_of_month(run[-1])))
        else:
            said.extend(map(wording.day_of_month, run))
    return ", ".join(said)
