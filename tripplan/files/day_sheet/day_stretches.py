"""What the phone says on the day, stretch by stretch: what is on, until when, where, with whom, what next."""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import datetime, timedelta
from math import ceil

from tripplan.documents.places.place import Place
from tripplan.errors import PlanError
from tripplan.files.day_sheet.day_sheet import address_of, clock_of
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.day import Step, StepKind
from tripplan.planning.outing.outing import Outing

Clock = Callable[[datetime], str]

SOON = timedelta(hours=6)
"""Less than this before leaving is counted in hours, whether or not midnight lies between."""


@dataclass(frozen=True)
class DaySegment:
    """A time of the day, and what is said meanwhile.

    Attributes:
        begins: zone-aware; None for whatever comes before its end.
        ends: likewise; None for all that comes after its beginning. It is over by then.
        title: what stands in the largest type.
        lines: where, with whom and so on; plain text.
        following: what comes next, with its time; empty for nothing.
    """

    begins: datetime | None
    ends: datetime | None
    title: str
    lines: tuple[str, ...] = ()
    following: str = ""

    def is_on(self, now: datetime) -> bool:
        """Whether it is what is said at a moment; zone-aware."""
        return not self.is_over(now) and (self.begins is None or self.begins <= now)

    def is_over(self, now: datetime) -> bool:
        """Whether it is past at a moment; zone-aware."""
        return self.ends is not None and self.ends <= now


def stretches(outing: Outing, at: Clock | None = None) -> tuple[DaySegment, ...]:
    """The whole of time, seen from one outing: before it, each of its steps, and after it.

    Args:
        outing: one place on one day.
        at: how moments are written; as its plan writes them where left out.

    Returns:
        Stretches without gaps; at every moment just one is on.
    """
    plan, at = outing.plan, at or clock_of(outing.plan)
    steps = plan.steps
    going = say("sheet-with", names=tuple(member.name for member in outing.party))
    before = DaySegment(
        None,
        plan.leave_home,
        say("sheet-load-up-at", at=at(plan.leave_home)),
        (
            say("sheet-drive-off-at", at=at(plan.drive_off)),
            say("sheet-on-for", day=outing.day, place=outing.place.name),
            going,
        ),
    )
    following = [*(step_words(step) for step in steps[1:]), home_again()]
    during = (
        DaySegment(
            step.start,
            step.end,
            step_words(step),
            tuple(filter(None, (say("sheet-until", at=at(step.end)), _where(outing, step), going))),
            say("sheet-then", at=at(step.end), what=then),
        )
        for step, then in zip(steps, following, strict=True)
    )
    return (before, *during, DaySegment(plan.home, None, home_again()))


def home_again() -> str:
    """What is said when the day is over."""
    return say("sheet-home-again")


def time_left(stretch: DaySegment, now: datetime) -> str:
    """How long a stretch still is, such as 'in 25 min', 'still 45 min' or, before the outing, 'in 8 days'.

    Args:
        stretch: one that is on and that ends.
        now: zone-aware.

    Raises:
        PlanError: the stretch has no end.
    """
    if stretch.ends is None:
        raise PlanError("what has no end does not become less")
    left = stretch.ends - now
    if stretch.begins is None and left >= SOON:
        days = (stretch.ends.date() - now.astimezone(stretch.ends.tzinfo).date()).days
        if days:
            return say("sheet-tomorrow") if days == 1 else say("sheet-in-days", days=days)
    minutes = wording.minutes(ceil(left / timedelta(minutes=1)))
    return say("sheet-in", left=minutes) if stretch.begins is None else say("sheet-still", left=minutes)


def sleeps(outing: Outing, at: Clock | None = None) -> Iterator[DaySegment]:
    """When a child should be asleep, and what is said meanwhile; moments are written as by `stretches`."""
    at = at or clock_of(outing.plan)
    for nap in outing.plan.naps:
        for place, start, end in nap.slept:
            yield DaySegment(start, end, say("sheet-sleeps", name=nap.member, where=place.where, at=at(end)))


def step_words(step: Step) -> str:
    """A step as a line begins."""
    return wording.capital(step.label.text)


def _where(outing: Outing, step: Step) -> str:
    if step.start >= outing.plan.leave_place:
        return ""
    inside = step.start >= outing.plan.enter or step.kind in (StepKind.WAIT, StepKind.UNLOAD)
    name = outing.place.name
    return say("sheet-at-place", place=name) if inside else say("sheet-to-place", place=name)


@dataclass(frozen=True)
class MapLink:
    """A place as an address that a telephone's own map opens.

    Attributes:
        address: of the scheme geo (A. Mayrhofer, C. Spanring, RFC 5870, 2010); no network is asked. The query
            behind it is no part of that standard: maps that know it put a pin there, others pass over it.
        to_type: what to type into a map where none opens: where a letter would go, and latitude and longitude
            [degrees].
    """

    address: str
    to_type: tuple[str, str]


def map_link(place: Place) -> MapLink:
    """Where a place is, for the telephone's own map."""
    point = place.where.point
    spot = f"{point.latitude:.5f},{point.longitude:.5f}"
    return MapLink(f"geo:{spot}?q={spot}", (address_of(place.where), spot))
