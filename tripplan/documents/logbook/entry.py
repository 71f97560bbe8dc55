"""One outing as it really was: what was paid, the times, the naps, what was learned."""

import re
from collections import Counter
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from decimal import Decimal
from itertools import pairwise
from typing import Annotated, Literal, Self
from zoneinfo import ZoneInfo

from pydantic import Field, model_validator

from tripplan.documents.family.member import SleepsIn
from tripplan.documents.field_spec import Control, FieldSpec, Unit
from tripplan.documents.logbook.as_planned import AsPlanned
from tripplan.documents.logbook.crowd_note import CrowdNote, Fullness
from tripplan.documents.logbook.outdoors import Outdoors
from tripplan.documents.model import ClockTime, Name, Written
from tripplan.documents.places.place import PlaceId
from tripplan.documents.where import ZoneName
from tripplan.documents.written_money import Currency, Price
from tripplan.values.money import Money, total

LATE_NIGHT = time(6, 0)
"""Who comes home before this by the clock has come home the next day."""

PaidFor = Literal["admission", "car", "parking", "food", "extras"]
"""What money goes to; as `CostKind`, but nobody pays a reserve."""
Hours = Annotated[Decimal, Field(ge=0, le=24, decimal_places=2)]
LongText = Annotated[str, Field(max_length=4000)]
"""What somebody wrote in some lines."""
EntryId = Annotated[str, Field(pattern=r"^\d{4}-\d{2}-\d{2}-[a-z0-9]+(-[a-z0-9]+)*$", max_length=80)]
"""The day, then small letters, digits and hyphens."""


class Paid(Written):
    """One thing that was paid for."""

    kind: Annotated[
        PaidFor,
        FieldSpec(
            "Paid for",
            words={
                "admission": "Entry",
                "car": "Fuel and tolls",
                "parking": "Parking",
                "food": "Food",
                "extras": "Extras and treats",
            },
        ),
    ]
    """What the money went to."""
    amount: Annotated[Price, FieldSpec("amount")]
    """For everybody, in the entry's currency."""
    what: Annotated[str, Field(max_length=80), FieldSpec("what it was")] = ""
    """In the parent's words; may be empty."""


class FuelUsed(Written):
    """What the car took for this outing, as read at the pump or on its display."""

    amount: Annotated[Decimal, Field(gt=0, le=2000), FieldSpec("What the car took")]
    """In `unit`."""
    unit: Annotated[Literal["L", "US gal", "kWh"], FieldSpec("unit")]


class NapThere(Written):
    """What became of one child's usual nap."""

    member: Annotated[Name, FieldSpec("Who")]
    minutes: Annotated[int, Field(ge=0, le=600), FieldSpec("minutes slept", unit=Unit.MINUTES, width=220)]
    """How long the child slept; 0 where it did not."""
    where: Annotated[
        SleepsIn | None,
        FieldSpec(
            "Where?",
            called="where",
            control=Control.PILLS,
            words={place.value: place.where for place in SleepsIn},
        ),
    ] = None
    """Where; not known when left out."""


class SubjectTime(Written):
    """A subject of the day."""

    subject: Annotated[Name, FieldSpec("Subject", example="science", width=220)]
    hours: Annotated[
        Hours | None,
        FieldSpec("Its hours, if you split them", unit=Unit.HOURS, called="hours", example="1.5", width=220),
    ] = None
    """How much of the day's hours belongs to it; not split when left out."""


class ChildDay(Written):
    """What one child did and learned, and what of it counts as instruction."""

    member: Annotated[Name, FieldSpec("Who")]
    did: Annotated[LongText, FieldSpec("Did", control=Control.NOTE)] = ""
    """What the child did."""
    learned: Annotated[LongText, FieldSpec("Learned", control=Control.NOTE)] = ""
    """What the child learned."""
    subjects: Annotated[tuple[SubjectTime, ...], FieldSpec("Subjects", called="Subject")] = ()
    """The subjects of the day."""
    hours: Annotated[Hours | None, FieldSpec("Hours that count", unit=Unit.HOURS, example="2.5")] = None
    """Hours that the family counts as instruction; not counted in hours when left out."""
    counts_as_day: Annotated[bool, FieldSpec("Counts as a school day")] = True
    """Whether the family counts the day as a day of instruction."""

    @model_validator(mode="after")
    def _subjects_fit(self) -> Self:
        twice = [name for name, count in Counter(s.subject for s in self.subjects).items() if count > 1]
        if twice:
            raise ValueError(f"each subject is named once; twice: {', '.join(twice)}")
        split = sum((s.hours for s in self.subjects if s.hours is not None), Decimal(0))
        if self.hours is not None and split > self.hours:
            raise ValueError(f"the subjects have {split:f} h together, the day {self.hours:f} h")
        return self

    @property
    def hours_counted(self) -> Decimal | None:
        """The hours of the day; where only subjects have hours, their sum; None where none are given [h]."""
        split = [s.hours for s in self.subjects if s.hours is not None]
        return self.hours if self.hours is not None or not split else sum(split, Decimal(0))


@dataclass(frozen=True)
class Moments:
    """The four moments of an outing; None where nobody noted them.

    Attributes:
        left_home: the wheels turned, by the clock at home.
        arrived: at the place, by its clock.
        left_place: for home, by the place's clock.
        home_again: by the clock at home.
    """

    left_home: datetime | None
    arrived: datetime | None
    left_place: datetime | None
    home_again: datetime | None

    @property
    def stay_minutes(self) -> int | None:
        """How long the family stayed [min]."""
        return minutes_between(self.arrived, self.left_place)

    @property
    def way_there_minutes(self) -> int | None:
        """How long the way there took, with rests [min]."""
        return minutes_between(self.left_home, self.arrived)

    @property
    def way_home_minutes(self) -> int | None:
        """How long the way home took, with rests [min]."""
        return minutes_between(self.left_place, self.home_again)


def minutes_between(first: datetime | None, second: datetime | None) -> int | None:
    """Minutes that passed between two moments, clock changes allowed for; None where one is unknown [min]."""
    if first is None or second is None:
        return None
    return (second.astimezone(UTC) - first.astimezone(UTC)) // timedelta(minutes=1)


class LogbookEntry(Written):
    """One outing as it really was. What nobody noted is left out, never written as zero."""

    format: Literal[1] = 1
    """Version of this form."""
    id: EntryId
    """The day, then small letters, digits and hyphens, such as 2026-11-14-stone-mill; never changes."""
    day: Annotated[date, FieldSpec("Day")]
    """The day of the outing."""
    title: Annotated[Name, FieldSpec("What was it? (if somewhere else)", called="What it was")]
    """Where the family was, such as the place's name."""
    place: Annotated[
        PlaceId | None, FieldSpec("Where was it?", called="Place", control=Control.CHOICE, offered="places")
    ] = None
    """The id of the place card; left out where there is none."""
    planned: Annotated[str, Field(max_length=80)] = ""
    """The id of the planned outing; empty where it was never planned here."""
    study_unit: Annotated[
        str, Field(max_length=80), FieldSpec("Study unit", help="Its budget is counted under this name.")
    ] = ""
    """The name of the study unit that it belongs to; empty for none."""
    away: Annotated[bool, FieldSpec("It was away from home")] = True
    """Whether it happened away from home; some states ask."""
    party: Annotated[
        tuple[Name, ...],
        Field(min_length=1, max_length=60),
        FieldSpec("Who went?", called="Who went", control=Control.SOME, offered="people"),
    ]
    """The names of those who went."""
    currency: Currency
    """ISO 4217 code of all amounts."""
    paid: Annotated[tuple[Paid, ...], FieldSpec("Paid")] = ()
    """What was paid, by item, one `[[paid]]` each."""
    receipts_total: Annotated[
        Price | None,
        FieldSpec(
            "What did it cost?", help="0 where nothing was paid.", called="Receipts in all", unit=Unit.MONEY
        ),
    ] = None
    """What the receipts add up to; enough on its own. 0 where nothing was paid."""
    food: Annotated[
        Literal["packed", "bought", "both"] | None,
        FieldSpec(
            "How did you eat?",
            called="How you ate",
            control=Control.PILLS,
            words={"packed": "packed at home", "bought": "bought there", "both": "both"},
        ),
    ] = None
    """How the family ate; with the money for food it tells what a meal costs. Not known when left out."""
    left_home: Annotated[
        ClockTime | None, FieldSpec("Left home", control=Control.CLOCK_TYPED, example="9:05", width=150)
    ] = None
    """When the wheels turned, by the clock at home."""
    arrived: Annotated[
        ClockTime | None, FieldSpec("Were there", control=Control.CLOCK_TYPED, example="9:05", width=150)
    ] = None
    """When the family was there, by the clock of the place."""
    left_place: Annotated[
        ClockTime | None, FieldSpec("Left for home", control=Control.CLOCK_TYPED, example="9:05", width=150)
    ] = None
    """When it left for home, by the clock of the place; before 06:00 and earlier by the clock than it was
    there, it was the next day."""
    home_again: Annotated[
        ClockTime | None, FieldSpec("Home again", control=Control.CLOCK_TYPED, example="9:05", width=150)
    ] = None
    """When everybody was home, by the clock at home; before 06:00 it was the next day."""
    home_zone: ZoneName
    """IANA time zone of the home."""
    place_zone: ZoneName | None = None
    """IANA time zone of the place; that of the home when left out."""
    km: Annotated[
        Annotated[float, Field(gt=0, le=20_000, allow_inf_nan=False)] | None,
        FieldSpec("Driven in all", unit=Unit.KILOMETRES),
    ] = None
    """Driven in all."""
    odometer_out_km: Annotated[
        Annotated[float, Field(ge=0, le=5_000_000, allow_inf_nan=False)] | None,
        FieldSpec("Odometer on leaving", unit=Unit.KILOMETRES),
    ] = None
    """What the odometer said on leaving home."""
    odometer_home_km: Annotated[
        Annotated[float, Field(ge=0, le=5_000_000, allow_inf_nan=False)] | None,
        FieldSpec("Odometer back home", unit=Unit.KILOMETRES),
    ] = None
    """What it said back home."""
    fuel: Annotated[FuelUsed | None, FieldSpec("What the car took for it")] = None
    """What the car took for it; not known when left out."""
    fullness: Annotated[
        Fullness | None,
        FieldSpec(
            "How full was it?",
            called="How full it was",
            control=Control.PILLS,
            words=dict(zip(Fullness, ("quiet", "some company", "busy", "packed"), strict=True)),
        ),
    ] = None
    """How full it was; not known when left out."""
    outdoors: Annotated[
        Outdoors | None,
        FieldSpec(
            "How was it outdoors?",
            called="How it was outdoors",
            control=Control.PILLS,
            words={one.value: one.value for one in Outdoors},
        ),
    ] = None
    """How the weather was to be out in; not known when left out."""
    naps: Annotated[tuple[NapThere, ...], FieldSpec("Nap")] = ()
    """What became of the naps, one `[[naps]]` a child."""
    children: Annotated[tuple[ChildDay, ...], FieldSpec("Child")] = ()
    """What the children did and learned, one `[[children]]` each."""
    weather: Annotated[str, Field(max_length=200), FieldSpec("Weather")] = ""
    """In words, if anybody cares."""
    notes: Annotated[LongText, FieldSpec("Notes", control=Control.NOTE)] = ""
    """Anything else."""
    as_planned: AsPlanned | None = None
    """What the plan had said; kept so that a card that changes later does not change the comparison."""

    @model_validator(mode="after")
    def _named_once(self) -> Self:
        for what, members in (
            ("nap", [nap.member for nap in self.naps]),
            ("child's day", [child.member for child in self.children]),
        ):
            strangers = sorted(set(members) - set(self.party))
            if strangers:
                raise ValueError(f"a {what} names somebody who did not go: {', '.join(strangers)}")
        twice = [name for name, count in Counter(c.member for c in self.children).items() if count > 1]
        if twice:
            raise ValueError(f"each child has one entry a day; twice: {', '.join(twice)}")
        return self

    @model_validator(mode="after")
    def _money_fits(self) -> Self:
        items = sum((one.amount for one in self.paid), Decimal(0))
        if self.receipts_total is not None and self.receipts_total < items:
            raise ValueError(
                f"the items add up to {items:f}, more than the receipts' total of {self.receipts_total:f}"
            )
        return self

    @model_validator(mode="after")
    def _way_fits(self) -> Self:
        out, back = self.odometer_out_km, self.odometer_home_km
        if (out is None) != (back is None):
            raise ValueError("the odometer is read on leaving and back home, or not at all")
        if out is not None and back is not None:
            if self.km is not None:
                raise ValueError("give the distance, or the odometer at both ends, not both")
            if back <= out:
                raise ValueError("the odometer says more back home than on leaving")
        return self

    @model_validator(mode="after")
    def _times_in_order(self) -> Self:
        moments = self.moments
        noted = [
            (name, moment)
            for name, moment in (
                ("left home", moments.left_home),
                ("arrived", moments.arrived),
                ("left the place", moments.left_place),
                ("home again", moments.home_again),
            )
            if moment is not None
        ]
        for (before, first), (after, second) in pairwise(noted):
            if second.astimezone(UTC) < first.astimezone(UTC):
                raise ValueError(f"'{after}' lies before '{before}'; are the times right?")
        return self

    @property
    def zones(self) -> tuple[ZoneInfo, ZoneInfo]:
        """The time zones of home and place."""
        home = ZoneInfo(self.home_zone)
        return home, ZoneInfo(self.place_zone) if self.place_zone else home

    @property
    def moments(self) -> Moments:
        """The times with their zones."""
        home, there = self.zones

        def at(clock: time | None, zone: ZoneInfo, day: date) -> datetime | None:
            return None if clock is None else datetime.combine(day, clock, zone)

        next_day = self.day + timedelta(days=1)
        left, arrived = self.left_place, self.arrived
        left_late = left is not None and arrived is not None and left < min(LATE_NIGHT, arrived)
        home_late = self.home_again is not None and self.home_again < LATE_NIGHT
        return Moments(
            at(self.left_home, home, self.day),
            at(arrived, there, self.day),
            at(left, there, next_day if left_late else self.day),
            at(self.home_again, home, next_day if home_late else self.day),
        )

    @property
    def itemised(self) -> Money:
        """The sum of the items; zero where there are none."""
        return total((Money(one.amount, self.currency) for one in self.paid), self.currency)

    @property
    def spent(self) -> Money | None:
        """What was paid in all: the receipts' total, else the items; None where neither is noted."""
        if self.receipts_total is not None:
            return Money(self.receipts_total, self.currency)
        return self.itemised if self.paid else None

    @property
    def not_itemised(self) -> Money:
        """What of the receipts' total no item tells of; zero where there is no total."""
        if self.receipts_total is None:
            return Money.zero(self.currency)
        return Money(self.receipts_total, self.currency) - self.itemised

    def paid_for(self, kind: PaidFor) -> Money | None:
        """What was paid for one kind of thing.

        Returns:
            The items of that kind together. Where there are none, zero if everything paid is known by item,
            which a receipts' total that equals the items shows; else None, as nobody knows.
        """
        amounts = [Money(one.amount, self.currency) for one in self.paid if one.kind == kind]
        if amounts:
            return total(amounts, self.currency)
        complete = self.receipts_total is not None and self.not_itemised.amount == 0
        return Money.zero(self.currency) if complete else None

    @property
    def km_driven(self) -> float | None:
        """Driven in all [km]; None where nobody noted it."""
        if self.odometer_out_km is not None and self.odometer_home_km is not None:
            return self.odometer_home_km - self.odometer_out_km
        return self.km

    @property
    def crowd_note(self) -> CrowdNote | None:
        """How full the place was, as planning is told; None without a place card or a word for it."""
        if self.place is None or self.fullness is None:
            return None
        return CrowdNote(self.place, self.day, self.fullness)

    def child(self, name: str) -> ChildDay | None:
        """What one child did, if anything is noted."""
        return next((child for child in self.children if child.member == name), None)


def new_entry_id(day: date, title: str, taken: frozenset[str] | set[str]) -> str:
    """An id for a new entry: the day and the place in small letters, numbered where it is taken.

    Args:
        day: of the outing.
        title: what it is called, or the id of its place card.
        taken: ids that are in use.
    """
    slug = re.sub(r"[^a-z0-9]+", "-", title.casefold()).strip("-")[:50].strip("-") or "outing"
    first = f"{day.isoformat()}-{slug}"
    number, candidate = 2, first
    while candidate in taken:
        candidate, number = f"{first}-{number}", number + 1
    return candidate


def slept_minutes(entry: LogbookEntry, member: str) -> int | None:
    """How long one child slept in all [min]; None where nobody noted it."""
    noted = [nap.minutes for nap in entry.naps if nap.member == member]
    return sum(noted) if noted else None
