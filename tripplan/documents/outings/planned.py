"""An outing the family means to go on, as it stands in its records and on its calendar."""

import re
from collections.abc import Iterable
from datetime import date, datetime
from decimal import Decimal
from enum import StrEnum
from typing import Annotated, Literal, Self
from zoneinfo import ZoneInfo

from pydantic import AwareDatetime, BeforeValidator, Field, PlainSerializer, model_validator

from tripplan.documents.model import Name, Written
from tripplan.documents.places.place import PlaceId
from tripplan.documents.where import zone_named
from tripplan.documents.written_money import Currency
from tripplan.values.money import Money

_WITH_ZONE = re.compile(r"(?P<moment>[^\[]+)\[(?P<zone>[^\]]+)\]")


def _read_zoned(value: object) -> object:
    match = _WITH_ZONE.fullmatch(value) if isinstance(value, str) else None
    if match is None:
        return value
    moment, zone = datetime.fromisoformat(match["moment"]), zone_named(match["zone"])
    if zone is None:
        raise ValueError("the time zone in brackets is an IANA name such as 'America/Chicago'")
    # Where the zone's rules have changed since, the clock on the wall is what the family agreed on.
    wall = moment.replace(tzinfo=zone)
    return wall if wall.utcoffset() == moment.utcoffset() else wall.replace(fold=1)


def _write_zoned(moment: datetime) -> str:
    zone = moment.tzinfo
    return f"{moment.isoformat()}[{zone.key}]" if isinstance(zone, ZoneInfo) else moment.isoformat()


ZonedTime = Annotated[
    AwareDatetime, BeforeValidator(_read_zoned), PlainSerializer(_write_zoned, return_type=str)
]
"""A moment that keeps its zone when written: '2026-12-08T09:05:00-06:00[America/Chicago]' (RFC 9557, 4.1)."""


class PlanStatus(StrEnum):
    """How firm a planned outing is (RFC 5545, 3.8.1.11)."""

    TENTATIVE = "tentative"
    CONFIRMED = "confirmed"
    CANCELLED = "cancelled"


class ThingsToDo(StrEnum):
    """How booking and packing get onto the calendar, beside the reminders."""

    NONE = "none"
    TASKS = "tasks"
    """As to-dos (RFC 5545, 3.6.2), which some calendar programs leave out without a word."""
    ENTRIES = "entries"
    """As short entries of their own, which every program shows."""


COLOURS = (
    "aqua", "black", "blue", "fuchsia", "gray", "green", "lime", "maroon",
    "navy", "olive", "purple", "red", "silver", "teal", "white", "yellow",
)  # fmt: skip
"""What an entry may be colored with. Source: W3C, CSS Color Module Level 3, 4.1 (basic color keywords)."""


class EntryTicks(Written):
    """What the parent ticked for the entry on the calendar, so that its next file tells the same."""

    in_parts: bool = False
    """Whether drive, visit and way home are entries of their own."""
    names: bool = False
    """Whether people's names may be read by everyone who sees the calendar."""
    home_address: bool = False
    """Whether the home address may."""
    costs: bool = True
    """Whether prices and the total may."""
    busy: bool = True
    """Whether the entry marks its time as taken (RFC 5545, 3.8.2.7)."""
    colour: Annotated[str, Field(pattern=f"^({'|'.join(COLOURS)})?$")] = ""
    """The entry's color (RFC 7986, 5.9); the calendar's own when left out."""
    booking_reminder: bool = True
    """Whether to remind the evening before the last day for booking, where tickets must be booked ahead."""
    packing_reminder: bool = True
    """Whether to remind the evening before to pack."""
    leaving_reminder_minutes: Annotated[int, Field(ge=1, le=24 * 60)] | None = 60
    """How long before leaving home to remind [min]; not at all when left out."""
    leave_now_reminder: bool = True
    """Whether to say so when it is time to leave."""
    things_to_do: ThingsToDo = ThingsToDo.NONE
    """Whether booking and packing are to-dos or entries of their own."""


class PlannedOuting(Written):
    """One place on one day, chosen; the same entry on the calendar however often it changes."""

    id: Annotated[str, Field(pattern=r"^[a-z0-9]+(-[a-z0-9]+)*$", max_length=80)]
    """Small letters, digits and hyphens; never changes."""
    place: PlaceId
    """The id of the place card."""
    day: date
    """The day of the visit, by the clock of the place."""
    party: Annotated[tuple[Name, ...], Field(min_length=1)]
    """The names of those who go."""
    leave_home: ZonedTime
    """When load-up begins."""
    enter: ZonedTime
    """When the party is let in."""
    leave_place: ZonedTime
    """When load-up for the way home begins."""
    home: ZonedTime
    """When everybody is home again."""
    uid: Annotated[str, Field(min_length=1, max_length=255)]
    """The calendar entry's UID (RFC 5545, 3.8.4.7); never changes."""
    sequence: Annotated[int, Field(ge=0)] = 0
    """How often the entry has changed since it was first written (RFC 5545, 3.8.7.4)."""
    status: PlanStatus = PlanStatus.TENTATIVE
    changed_at: AwareDatetime
    """When it was last changed (RFC 5545, 3.8.7.3)."""
    likely_amount: Annotated[Decimal, Field(ge=0, max_digits=20, allow_inf_nan=False)]
    """What the outing is likely to cost in all, in `currency`, as it was when last changed."""
    currency: Currency
    """ISO 4217 code."""
    ticked: EntryTicks = EntryTicks()
    """What its entry on the calendar tells."""
    book_by: date | None = None
    """The last day for booking what is to be bought; none where it can be had at the door."""
    moved_from: ZonedTime | None = None
    """When it would have begun before it was last moved."""
    once_written: tuple[Annotated[str, Field(max_length=40)], ...] = ()
    """Endings of the UIDs of parts and to-dos that an earlier file may hold; the next takes back those it
    no longer has."""
    choice: Annotated[str, Field(max_length=80)] = ""
    """Names the candidates it was pencilled in with, of which one will be kept; empty for none."""
    study_unit: Name | Literal[""] = ""
    """The name of the study unit that it closes; empty for none."""
    settled: bool = False
    """Whether its times were changed while it was on, so that they hold whatever a plan would say."""

    @model_validator(mode="after")
    def _in_order(self) -> Self:
        if not self.leave_home <= self.enter <= self.leave_place <= self.home:
            raise ValueError("the day runs in order: leave home, enter, leave the place, home again")
        return self

    @property
    def likely_total(self) -> Money:
        """What the outing is likely to cost in all."""
        return Money(self.likely_amount, self.currency)

    @property
    def takes_time(self) -> bool:
        """Whether nothing else can be done meanwhile.

        Something else can where it is called off, or is one of several candidates and none is kept yet.
        """
        open_choice = self.status is PlanStatus.TENTATIVE and self.choice
        return self.status is not PlanStatus.CANCELLED and not open_choice

    def planned_on(self, home_zone: ZoneInfo) -> date:
        """The date at home when it was last changed, by which booking deadlines count; the day at the latest.

        A place that must be booked some days ahead can still be gone to by whoever planned it in time.
        """
        return min(self.changed_at.astimezone(home_zone).date(), self.day)

    @property
    def edition(self) -> str:
        """Tells this state of the outing from every other."""
        return f"{self.sequence} {self.changed_at.isoformat()}"

    def changed(self, at: datetime, **changes: object) -> Self:
        """The same entry after a change: one sequence number later, every field checked anew.

        Args:
            at: when the change is made; zone-aware.
            changes: the fields that change, by name.

        Raises:
            pydantic.ValidationError: a new value does not fit.
        """
        return self.model_validate({**dict(self), **changes, "sequence": self.sequence + 1, "changed_at": at})


def same_day(outing: PlannedOuting, outings: Iterable[PlannedOuting]) -> tuple[PlannedOuting, ...]:
    """Other outings that take somebody of the party on the same day.

    Args:
        outing: the one that is to be planned.
        outings: all on record.
    """
    return tuple(
        other
        for other in outings
        if other.id != outing.id
        and other.takes_time
        and other.day == outing.day
        and not set(other.party).isdisjoint(outing.party)
    )


def others_called_off(
    kept: PlannedOuting, outings: Iterable[PlannedOuting], at: datetime
) -> tuple[PlannedOuting, ...]:
    """The candidates an outing was pencilled in with, called off now that confirmed.

    Args:
        kept: the outing; nothing else is called off unless it is confirmed and was one of several.
        outings: all on record.
        at: when confirmed; zone-aware.
    """
    if kept.status is not PlanStatus.CONFIRMED or not kept.choice:
        return ()
    return tuple(
        other.changed(at, status=PlanStatus.CANCELLED)
        for other in outings
        if other.id != kept.id and other.choice == kept.choice and other.status is PlanStatus.TENTATIVE
    )
