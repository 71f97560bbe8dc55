"""All that planning is told about one family."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime, time, timedelta
from functools import cached_property
from typing import Self

from tripplan.documents.calendars.calendars import FamilyCalendar, SchoolCalendar
from tripplan.documents.calendars.family_days import FamilyDays
from tripplan.documents.calendars.local_days import LocalDay
from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member
from tripplan.documents.logbook.crowd_note import CrowdNote
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.documents.places.forecast import PlaceForecast
from tripplan.documents.places.idea import IdeaPlace
from tripplan.documents.places.own_figures import OwnFigures
from tripplan.documents.places.place import Place, PlaceId
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.errors import PlanError, UnknownName
from tripplan.planning.climate.stations import Stations
from tripplan.planning.family.busy_days import BusyDays
from tripplan.planning.travel.drive import Drive

MOMENT = timedelta(minutes=5)
"""The present counts by so much at a time, so that answers hold for that long."""


@dataclass(frozen=True)
class Family:
    """All that planning is told about one family.

    Attributes:
        household: people, car, home, habits.
        places: every place card the family keeps, and its ideas with what is assumed of them.
        school_calendars: of the districts within reach.
        family_calendars: when the family is busy.
        own_week: when it is busy every week, who works when, and what a late evening does.
        typed_drives: drives the parent knows.
        own_figures: what else the parent says about single places.
        road_drives: what a road network on this computer says, by the id of the place.
        crowd_notes: how full places were when the family was there.
        local_days: festivals and local days off that the parent listed.
        planned: the outings on record; their time is taken.
        last_visits: when the family was last at a place, by its id, as the logbook has it.
        now: nobody leaves before, zone-aware; None where the present does not matter.
        stations: what the weather is usually like; None where it does not matter.
        forecasts: what it is going to be on the next days, for some places.
    """

    household: Household
    places: tuple[Place, ...] = ()
    school_calendars: tuple[SchoolCalendar, ...] = ()
    family_calendars: tuple[FamilyCalendar, ...] = ()
    own_week: FamilyDays = field(default_factory=FamilyDays)
    typed_drives: tuple[TypedDrive, ...] = ()
    own_figures: tuple[OwnFigures, ...] = ()
    road_drives: Mapping[str, Drive] = field(default_factory=dict)
    crowd_notes: tuple[CrowdNote, ...] = ()
    local_days: tuple[LocalDay, ...] = ()
    planned: tuple[PlannedOuting, ...] = ()
    last_visits: Mapping[str, date] = field(default_factory=dict)
    now: datetime | None = None
    stations: Stations | None = None
    forecasts: tuple[PlaceForecast, ...] = ()

    @cached_property
    def busy_days(self) -> BusyDays:
        """When the family is busy, by day; worked out once."""
        names = {place.id: place.name for place in self.places}
        outings = tuple((one, names.get(one.place, one.place)) for one in self.planned if one.takes_time)
        return BusyDays(
            self.household, self.family_calendars, self.own_week, self.local_days, outings, self.now
        )

    def at(self, now: datetime) -> Self:
        """The family as it is from a moment on; what has begun by then is not proposed any more.

        Args:
            now: zone-aware; the next full five minutes count.
        """
        passed = (now.astimezone(UTC) - datetime(1970, 1, 1, tzinfo=UTC)) % MOMENT
        moment = now + (MOMENT - passed) % MOMENT
        return replace(self, now=moment.astimezone(self.household.home.zone))

    def asked_between(self, first: date, last: date) -> Self:
        """The family without the present moment where none of some days is today."""
        if self.now is None or first <= self.now.date() <= last:
            return self
        return replace(self, now=None)

    def with_nothing_planned(self) -> Self:
        """The family without its outings and the present moment, for who looks after these itself."""
        return replace(self, planned=(), now=None)

    def free_between(self, start: time, end: time) -> Self:
        """The family on a day on which it is free from one time to another, whatever its habits.

        Args:
            start: nobody leaves home before, by the clock at home.
            end: everybody is home again by then.
        """
        habits = self.household.habits.model_copy(update={"earliest_departure": start, "home_by": end})
        return replace(self, household=self.household.model_copy(update={"habits": habits}))

    def about(self, place: PlaceId, day: date) -> Self:
        """The family as it is asked about one outing.

        One that is on record is shown as it is: neither itself nor what else she has planned for that day
        stands in its way, and it stays possible once it has begun.
        """
        on_record = any(
            (one.place, one.day) == (place, day) and one.status is not PlanStatus.CANCELLED
            for one in self.planned
        )
        if not on_record:
            return self
        return replace(self, planned=tuple(one for one in self.planned if one.day != day), now=None)

    @cached_property
    def cards(self) -> tuple[Place, ...]:
        """The places whose prices and hours are known, so all but those that are only an idea."""
        return tuple(place for place in self.places if not isinstance(place, IdeaPlace))

    def with_cards_only(self) -> "Family":
        """The same family without its ideas, for questions about money alone that need real prices."""
        return replace(self, places=self.cards)

    @cached_property
    def places_of_passes(self) -> tuple[Place, ...]:
        """The places whose annual passes the family holds."""
        held = {one.place for one in self.household.passes}
        return tuple(place for place in self.places if place.id in held)

    def own_figures_for(self, place_id: str) -> OwnFigures | None:
        """What the parent says about one place beside its card, if anything."""
        return next((own for own in self.own_figures if own.place == place_id), None)

    def forecast_for(self, place_id: str) -> PlaceForecast | None:
        """What the weather is going to be at one place on the next days, if anybody has asked."""
        return next((one for one in self.forecasts if one.place == place_id), None)

    def party(self, names: Sequence[str] | None = None) -> tuple[Member, ...]:
        """The members who go, everybody when no names are given.

        Raises:
            UnknownName: a name is not a member's.
            PlanError: the list of names is empty.
        """
        members = self.household.members
        if names is None:
            return members
        if not names:
            raise PlanError("an outing needs at least one person")
        known = {member.name: member for member in members}
        for name in names:
            if name not in known:
                raise UnknownName("member", name, tuple(known))
        return tuple(member for member in members if member.name in names)
