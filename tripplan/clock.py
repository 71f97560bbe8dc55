"""The present moment: the system's, or the one that the environment names."""

from collections.abc import Callable, Mapping
from datetime import UTC, date, datetime, time

from tripplan.errors import PlanError

TODAY_VARIABLE = "TRIPPLAN_TODAY"
"""Plan as if today were this date (2026-11-25), or as if it were this moment (2026-11-25T14:10-06:00), for
demonstrations and tests."""

Clock = Callable[[], datetime]


def system_clock() -> datetime:
    """The present moment, in UTC."""
    return datetime.now(UTC)


def clock_from(environment: Mapping[str, str]) -> Clock:
    """The system's clock; stopped at another date or moment where `TRIPPLAN_TODAY` names one.

    Raises:
        PlanError: the variable holds neither.
    """
    wanted = environment.get(TODAY_VARIABLE)
    if not wanted:
        return system_clock
    try:
        day = date.fromisoformat(wanted)
    except ValueError:
        return _stopped_at(wanted)
    # Noon in UTC is the same date at every home from Hawaii to Eastern Europe and India.
    return lambda: datetime.combine(day, time(12), UTC)


def _stopped_at(wanted: str) -> Clock:
    try:
        moment = datetime.fromisoformat(wanted)
    except ValueError:
        moment = None
    if moment is None or moment.tzinfo is None:
        raise PlanError(
            f"{TODAY_VARIABLE} holds a date such as 2026-11-25, or a moment with its distance from UTC such "
            f"as 2026-11-25T14:10-06:00, not {wanted!r}"
        )
    stopped = moment.astimezone(UTC)
    return lambda: stopped
