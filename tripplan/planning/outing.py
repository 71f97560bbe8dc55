"""One place on one day for one party: the only place where the calculators' answers meet."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime, time, timedelta
from decimal import Decimal
from functools import cached_property
from typing import Annotated

from opening_hours import State
from pydantic import Field

from tripplan.errors import PlanError, UnknownName
from tripplan.planning import wording
from tripplan.planning.admission.cheapest import OTHER_WAYS, Gate
from tripplan.planning.admission.result import Admission, NoAdmission
from tripplan.planning.calendars import FamilyCalendar, SchoolCalendar
from tripplan.planning.clocks import clock_notes, minute_of_day
from tripplan.planning.cost import OutingCost, outing_cost
from tripplan.planning.crowds.notes import CrowdNote
from tripplan.planning.crowds.public_holidays import public_holidays
from tripplan.planning.crowds.risk import CrowdRisk, Crowds, crowd_risks
from tripplan.planning.crowds.schools import SchoolDays, school_days
from tripplan.planning.day import DayPlan, DayQuestion, DaySearch, Napper, plan_choice, plan_day
from tripplan.planning.day.minutes import DayMinutes
from tripplan.planning.family_days import BusyDays, FamilyDays
from tripplan.planning.hours import DayHours, Openness, hours_on
from tripplan.planning.household import Household, Member
from tripplan.planning.local_days import LocalDay, PlaceHolidays, place_holidays, with_local_days
from tripplan.planning.model import Written
from tripplan.planning.money import Money
from tripplan.planning.opening_days import RuleDays, rule_days
from tripplan.planning.own_figures import OwnFigures
from tripplan.planning.place import Place, PlaceId
from tripplan.planning.stay import stay_for
from tripplan.planning.travel.cautions import drive_cautions
from tripplan.planning.travel.daylight import TimedDrive, darkness_notes, daylight
from tripplan.planning.travel.drive import Drive, Leg, Way
from tripplan.planning.travel.known import known_drive
from tripplan.planning.travel.patience import usual_patience
from tripplan.planning.visit_notes import visit_notes
from tripplan.planning.ways import Pace, pace_of, ways_of

USUAL_GRID_MINUTES = 5
"""Departures and leaving times are usually tried this far apart [min]."""


class TypedDrive(Written):
    """What the parent knows of one way, from having driven it or looked it up."""

    place: PlaceId
    """The id of the place card."""
    km: Annotated[float, Field(gt=0, le=20_000)]
    """One way [km]."""
    minutes: Annotated[float, Field(gt=0, le=10_000)]
    """One way, wheels turning [min]."""
    typed_on: date
    """When it was typed in."""


@dataclass(frozen=True)
class Family:
    """All that planning is told about one family.

    Attributes:
        household: people, car, home, habits.
        places: every place card the family keeps.
        school_calendars: of the districts within reach.
        family_calendars: when the family is busy.
        own_week: when it is busy every week, who works when, and what a late evening does.
        typed_drives: drives the parent knows.
        own_figures: what else the parent says about single places.
        road_drives: what a road network on this computer says, by the id of the place.
        crowd_notes: how full places were when the family was there.
        local_days: festivals and local days off that the parent listed.
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

    @cached_property
    def busy_days(self) -> BusyDays:
        """When the family is busy, by day; worked out once."""
        return BusyDays(self.household, self.family_calendars, self.own_week, self.local_days)

    @cached_property
    def places_of_passes(self) -> tuple[Place, ...]:
        """The places whose annual passes the family holds."""
        held = {one.place for one in self.household.passes}
        return tuple(place for place in self.places if place.id in held)

    def own_figures_for(self, place_id: str) -> OwnFigures | None:
        """What the parent says about one place beside its card, if anything."""
        return next((own for own in self.own_figures if own.place == place_id), None)

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


@dataclass(frozen=True)
class PlaceFacts:
    """What all days at one place share, worked out once.

    Attributes:
        place: the card.
        drive: the way from home, without rests.
        holidays: public holidays and local days at the place.
        schools: how the pupils nearby are spread, on every day of the calendar years that are asked about,
            those of the family's notes of the place among them.
        local_days: festivals and local days off that the parent listed.
        crowd_notes: how full the place was when the family was there.
    """

    place: Place
    drive: Drive
    holidays: PlaceHolidays
    schools: SchoolDays
    local_days: tuple[LocalDay, ...] = ()
    crowd_notes: tuple[CrowdNote, ...] = ()

    @property
    def public_holidays(self) -> Mapping[date, str]:
        """What PH means at the place, by date; empty where `holidays_known` is false."""
        return self.holidays.kept

    @cached_property
    def public_holiday_dates(self) -> frozenset[date]:
        """The dates of `public_holidays`."""
        return frozenset(self.public_holidays)

    @property
    def holidays_known(self) -> bool:
        """Whether the country's public holidays are on record."""
        return self.holidays.known

    @cached_property
    def days_out_of_school(self) -> frozenset[date]:
        """Days on which most pupils nearby have no school."""
        return self.schools.on_break_dates()

    @cached_property
    def days_without_classes(self) -> frozenset[date]:
        """Days on which most pupils nearby are likely without school, so that no school classes come."""
        return self.schools.likely_out_dates()

    @cached_property
    def crowds(self) -> Crowds:
        """Crowd risk of every open day of these years; reasons are made when asked for."""
        schools = self.schools
        last = self.first + timedelta(days=len(schools.out) - 1)
        years = range(self.first.year, last.year + 1)
        return crowd_risks(
            with_local_days(self.place, self.local_days, years),
            self.rule(self.place.opening.hours).kind > 0,
            self.holidays.off_work,
            schools,
            kept=self.public_holiday_dates,
        ).learning_from(self.crowd_notes)

    @property
    def first(self) -> date:
        """The first of the days that all of this is known for."""
        return self.schools.first

    def hours_on(self, day: date) -> DayHours:
        """When the place can be visited on one day."""
        return hours_on(
            self.place,
            day,
            self.public_holidays.keys(),
            self.days_out_of_school,
            no_classes=self.days_without_classes,
        )

    def rule(self, text: str, state: State = State.OPEN) -> RuleDays:
        """What a rule of the card says about each of the days from `first` on."""
        holidays, out_of_school = self.public_holiday_dates, self.days_out_of_school
        return rule_days(text, self.first, len(self.schools.out), holidays, out_of_school, state)


@dataclass(frozen=True)
class Outing:
    """One place on one day for one party, with all the answers; it can be done.

    Attributes:
        place: where to.
        day: when.
        party: who goes; ages are those on `day`.
        way_there: the drive out, with its rests.
        way_home: the drive back.
        hours: when the place can be visited.
        question: what the search was asked.
        search: the leave windows and their plans.
        plan: the one that is meant, usually the best of them.
        admission: what to buy.
        crowd: how likely a full house is.
        cost: what it costs in all.
        felt_cost: money plus what the parent says the nuisances weigh.
        notes: what else the parent should know.
        cautions: for safety, with the deference they need.
    """

    place: Place
    day: date
    party: tuple[Member, ...]
    way_there: Leg
    way_home: Leg
    hours: DayHours
    question: DayQuestion
    search: DaySearch
    plan: DayPlan
    admission: Admission
    crowd: CrowdRisk
    cost: OutingCost
    felt_cost: Money
    notes: tuple[str, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True)
class NoOuting:
    """Why one place cannot be visited on one day.

    Attributes:
        place: where to.
        day: when.
        reasons: what stands in the way, in words; at least one.
        question: what the search was asked, where it found nothing; None where it need not be asked, for the
            place is closed, say.
    """

    place: Place
    day: date
    reasons: tuple[str, ...]
    question: DayQuestion | None = None


def place_facts(family: Family, place: Place, years: Iterable[int]) -> PlaceFacts:
    """Work out what all days at one place share.

    Args:
        family: home, calendars and known drives.
        place: the card.
        years: the calendar years that days will be asked about.

    Returns:
        Drive, holidays and crowd risks; the crowd risk of a day compares it with the same calendar year.
    """
    notes = tuple(note for note in family.crowd_notes if note.place == place.id)
    asked = {*years, *(note.day.year for note in notes)}
    first, last = date(min(asked), 1, 1), date(max(asked), 12, 31)
    where = place.where
    return PlaceFacts(
        place=place,
        drive=known_drive(
            family.household.home.point,
            where.point,
            where.country,
            next((typed for typed in family.typed_drives if typed.place == place.id), None),
            family.road_drives.get(place.id),
        ),
        holidays=place_holidays(place, family.local_days, range(first.year, last.year + 1)),
        schools=school_days(
            family.school_calendars,
            where.point,
            first,
            last,
            country=where.country,
            subdivision=where.subdivision,
        ),
        local_days=family.local_days,
        crowd_notes=notes,
    )


def plan_outing(
    family: Family,
    party: Sequence[Member],
    facts: PlaceFacts,
    day: date,
    *,
    today: date,
    leave_at: datetime | None = None,
    leave_place_at: datetime | None = None,
    grid_minutes: int = USUAL_GRID_MINUTES,
    as_asked: Callable[[DayQuestion], DayQuestion] = lambda question: question,
) -> Outing | NoOuting:
    """Answer everything about one place on one day.

    Args:
        family: people, car, home, calendars.
        party: who goes; an adult at work that day stays behind where the parent said so.
        facts: what all days at the place share; must cover the day's calendar year.
        day: the date, at home and at the place.
        today: for booking deadlines.
        leave_at: take the leave window that holds this departure; the best plan of all when left out.
        leave_place_at: with it, take just that departure and this leaving time, where the limits allow it.
        grid_minutes: how far apart the departures and leaving times are that are tried [min].
        as_asked: changes what the search is asked, such as on a day that has begun.

    Returns:
        The outing with all its answers, or why it cannot be.
    """
    place, household = facts.place, family.household
    if day < today:
        return NoOuting(place, day, ("the day is over",))
    if place.currency != household.currency:
        return NoOuting(
            place,
            day,
            (f"prices are in {place.currency}, the household counts in {household.currency}",),
        )
    hours = facts.hours_on(day)
    if hours.openness is not Openness.OPEN:
        return NoOuting(place, day, (hours.reason,))
    if (day - today).days < place.opening.book_days_ahead:
        return NoOuting(place, day, (f"visits must be booked {place.opening.book_days_ahead} days ahead",))
    who_goes = family.busy_days.who_goes(party, day)
    party = who_goes.members
    needs, ways = PartyNeeds.of(household, party, day), ways_on(family, party, facts, day)
    busy = family.busy_days.on(day, [member.name for member in party])
    question = day_question(family, needs, facts, day, hours, ways)
    question = as_asked(replace(question, busy=busy, grid_minutes=grid_minutes))
    search = plan_day(question)
    if search.best is None:
        return NoOuting(place, day, search.collisions, question)
    plan = _meant(question, search, leave_at, leave_place_at) or search.best
    minutes = DayMinutes(day, household.home.zone)
    there = question.way_there.at(minutes.rounded_down(plan.leave_home))
    back = question.way_home.at(minutes.rounded_down(plan.leave_place))
    admission = gate_at(family, facts, plan.enter, today=today).admission(party, other_ways=OTHER_WAYS)
    if isinstance(admission, NoAdmission):
        return NoOuting(place, day, admission.reasons)
    cost = outing_cost(
        household,
        party,
        day,
        place,
        admission,
        there,
        back,
        lunch_out=plan.lunch_out,
        own=family.own_figures_for(place.id),
    )
    crowd = facts.crowds[day]
    full_house = Money(household.worth.full_house * Decimal(str(round(crowd.chance, 4))), household.currency)
    return Outing(
        place=place,
        day=day,
        party=party,
        way_there=there,
        way_home=back,
        hours=hours,
        question=question,
        search=search,
        plan=plan,
        admission=admission,
        crowd=crowd,
        cost=cost,
        felt_cost=(cost.total.likely + plan.felt + full_house).rounded(),
        notes=(
            *who_goes.notes,
            *family.busy_days.notes(day),
            *_notes(household, facts, party, day, hours, admission),
            *clock_notes(day, household.home.zone, plan.enter),
            *_darkness(household, day, plan, there, back),
            *visit_notes(hours, plan),
            *(_own_stay(family, place) or _stay_note(party, day, place)),
        ),
        cautions=(
            *drive_cautions(there, [member.months_on(day) for member in party]),
            *place.visit.cautions,
            *_needs_cautions(party),
        ),
    )


def _meant(
    question: DayQuestion, search: DaySearch, leave_at: datetime | None, leave_place_at: datetime | None
) -> DayPlan | None:
    """The plan that somebody has picked; None where nobody has, or where it cannot be done."""
    if leave_at is None:
        return None
    if leave_place_at is not None:
        picked = plan_choice(question, leave_at, leave_place_at)
        if isinstance(picked, DayPlan):
            return picked
    return next((window.best for window in search.windows if window.first <= leave_at <= window.last), None)


@dataclass(frozen=True, eq=False)
class PartyNeeds:
    """What a party brings into a day plan at the ages it has on a day, whatever the place.

    Attributes:
        months: everybody's age [completed months].
        nappers: the usual naps.
        last_wakes: when the last of the party usually wakes, by the clock at home.
        first_bed: when the first of it should be in bed, likewise.
        patience_minutes: how long at a stretch its most restless bear driving [min]; None for any time.
    """

    months: tuple[int, ...]
    nappers: tuple[Napper, ...]
    last_wakes: time
    first_bed: time
    patience_minutes: int | None

    @classmethod
    def of(cls, household: Household, party: Sequence[Member], day: date) -> "PartyNeeds":
        """Those of a party on a day."""
        awake = household.habits.awake_before_bed_minutes
        return cls(
            months=tuple(member.months_on(day) for member in party),
            nappers=tuple(
                Napper(member.name, member.naps, latest_nap_end(member, awake))
                for member in party
                if member.naps
            ),
            last_wakes=max(member.wakes for member in party),
            first_bed=min(member.bed for member in party),
            patience_minutes=least_patience(party, day),
        )


def day_question(
    family: Family, needs: PartyNeeds, facts: PlaceFacts, day: date, hours: DayHours, ways: tuple[Way, Way]
) -> DayQuestion:
    """What the day search is asked about one place on a day on which nobody is engaged.

    Args:
        family: people, car, home, calendars.
        needs: of those who go.
        facts: what all days at the place share.
        day: the date, at home and at the place.
        hours: when the place can be visited that day; must be open.
        ways: there and home that day.
    """
    place, household = facts.place, family.household
    own = family.own_figures_for(place.id)
    stay = stay_for(place.visit, needs.months)
    comfortable = (own and own.stay_minutes) or stay.comfortable_minutes
    way_there, way_home = ways
    return DayQuestion(
        day=day,
        home_zone=household.home.zone,
        way_there=way_there,
        way_home=way_home,
        hours=hours,
        nappers=needs.nappers,
        pushchairs=place.visit.pushchairs,
        shortest_minutes=min(stay.shortest_minutes, comfortable),
        comfortable_minutes=comfortable,
        habits=household.habits,
        worth=household.worth,
        busy=(),
        currency=household.currency,
        last_wakes=needs.last_wakes,
        first_bed=needs.first_bed,
        patience_minutes=needs.patience_minutes,
    )


def ways_on(family: Family, party: Sequence[Member], facts: PlaceFacts, day: date) -> tuple[Way, Way]:
    """The way there and the way home on one day; the arguments are those of `plan_outing`."""
    return ways_at(family, pace_of(family.household, party, day), facts, day)


def ways_at(family: Family, pace: Pace, facts: PlaceFacts, day: date) -> tuple[Way, Way]:
    """As `ways_on`, for a party of which it is known how it travels that day."""
    return ways_of(family.household, pace, facts.drive, facts.place.where, day, facts.public_holidays.keys())


def gate_at(family: Family, facts: PlaceFacts, moment: datetime, *, today: date) -> Gate:
    """The till of a place as the family meets it at the moment it is let in."""
    return Gate(
        facts.place,
        moment,
        today,
        household=frozenset(member.name for member in family.household.members),
        held=family.household.passes,
        public_holidays=facts.public_holidays.keys(),
        days_out_of_school=facts.days_out_of_school,
        other_places=family.places_of_passes,
    )


def latest_nap_end(member: Member, awake_minutes: int) -> time:
    """When a shifted nap is over at the latest, so long before bedtime; midnight at the earliest."""
    left = max(0, minute_of_day(member.bed) - awake_minutes)
    return time(left // 60, left % 60)


def _holiday_at_home(household: Household, facts: PlaceFacts, day: date) -> list[str]:
    """That it is a public holiday where the family lives, but not at the place."""
    home = household.home
    try:
        name = public_holidays(home.country, home.subdivision, (day.year,)).get(day)
    except UnknownName:
        return []
    if not name or day in facts.public_holidays:
        return []
    return [f"At home it is a public holiday ({name}), at the place it is none."]


def _notes(
    household: Household,
    facts: PlaceFacts,
    party: Sequence[Member],
    day: date,
    hours: DayHours,
    admission: Admission,
) -> tuple[str, ...]:
    """What the parent should know beside the figures."""
    notes = [*facts.drive.notes, *admission.notes]
    if not facts.place.opening.checked_on_site:
        notes.append(hours.reason)
    notes += _holiday_at_home(household, facts, day)
    if not facts.holidays_known:
        notes.append(
            "Public holidays of the place's country are not on record; the crowd risk leaves them out."
        )
    in_doubt = [member.name for member in party if member.age_in_doubt_on(day)]
    if in_doubt:
        notes.append(f"Without the birth day of {wording.listed(in_doubt)} the higher age is counted.")
    if not any(member.is_adult_on(day) for member in party):
        notes.append("Nobody in this party is 18 or older.")
    return tuple(notes)


def _own_stay(family: Family, place: Place) -> tuple[str, ...]:
    """Where the family's own stay takes the place of the card's."""
    own = family.own_figures_for(place.id)
    if own is None or own.stay_minutes is None:
        return ()
    source = own.stay_from or "typed in for this place"
    return (
        f"A stay of {wording.minutes(own.stay_minutes)} counts as complete, where the card says "
        f"{wording.minutes(place.visit.comfortable_minutes)}: {source}.",
    )


def least_patience(party: Sequence[Member], day: date) -> int | None:
    """How long at a stretch the most restless of a party bears driving [min]; None for any time."""
    bears = (
        usual_patience(member.months_on(day)) if member.patience_minutes is None else member.patience_minutes
        for member in party
    )
    return min((minutes for minutes in bears if minutes is not None), default=None)


def _stay_note(party: Sequence[Member], day: date, place: Place) -> tuple[str, ...]:
    """Whose age decides how long to stay, where the card tells ages apart."""
    stay = stay_for(place.visit, [member.months_on(day) for member in party])
    if stay.decided_by is None:
        return ()
    return (
        f"{party[stay.decided_by].name} tires first and decides how long to stay: "
        f"{wording.minutes(stay.comfortable_minutes)} is comfortable at that age, less than "
        f"{wording.minutes(stay.shortest_minutes)} not worth the drive.",
    )


def _darkness(household: Household, day: date, plan: DayPlan, there: Leg, back: Leg) -> tuple[str, ...]:
    """Which part of the drives is in the dark, by the sun where the family lives."""
    drives = [
        TimedDrive(
            name,
            leave + timedelta(minutes=leg.load_up_minutes),
            leave + timedelta(minutes=leg.minutes - leg.unload_minutes),
        )
        for name, leave, leg in (
            ("the drive there", plan.leave_home.astimezone(UTC), there),
            ("the drive home", plan.leave_place.astimezone(UTC), back),
        )
    ]
    return darkness_notes(daylight(household.home.point, day, household.home.zone), drives)


def _needs_cautions(party: Sequence[Member]) -> tuple[str, ...]:
    """Needs and allergies that the parent wrote down, to be checked with the place."""
    needy = [member.name for member in party if member.needs]
    if not needy:
        return ()
    return (f"Check with the place what it can do about the needs noted for {wording.listed(needy)}.",)
