"""What all days at one place share: its drive, holidays, schools and crowd risks."""

from collections.abc import Iterable, Mapping
from dataclasses import KW_ONLY, dataclass, replace
from datetime import date, timedelta
from functools import cached_property

from opening_hours import State

from tripplan.documents.calendars.local_days import LocalDay
from tripplan.documents.family.household import Household
from tripplan.documents.logbook.crowd_note import CrowdNote
from tripplan.documents.places.forecast import PlaceForecast
from tripplan.documents.places.idea import IdeaPlace
from tripplan.documents.places.place import Place
from tripplan.language.sentences import Fact, fact
from tripplan.planning.climate.climate import Climate
from tripplan.planning.climate.forecasts import with_forecast
from tripplan.planning.climate.outdoors import OutdoorYear
from tripplan.planning.climate.places import climate_for, outdoor_year
from tripplan.planning.climate.stations import Stations
from tripplan.planning.cost.own_money import in_own_money, rates_counted
from tripplan.planning.crowds.risk import Crowds, crowd_risks
from tripplan.planning.family.family import Family
from tripplan.planning.holidays.local_days import PlaceHolidays, place_holidays, with_local_days
from tripplan.planning.holidays.schools import SchoolDays, school_days
from tripplan.planning.opening.hours import DayHours, Openness, hours_on, season_opens
from tripplan.planning.opening.opening_days import RuleDays, rule_days
from tripplan.planning.travel.drive import Drive
from tripplan.planning.travel.drive_sources import known_drive
from tripplan.planning.travel.guessed_drive import guessed_drive
from tripplan.values.opening_hours import names_school_holidays


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
        household: whose habits count outdoors.
        stations: what tells the usual weather; None where the weather does not matter.
        forecast: what the weather is going to be on the next days; None where nobody asked.
        price_notes: at which rate prices in another currency are counted.
    """

    place: Place
    drive: Drive
    holidays: PlaceHolidays
    schools: SchoolDays
    local_days: tuple[LocalDay, ...] = ()
    crowd_notes: tuple[CrowdNote, ...] = ()
    _: KW_ONLY
    household: Household
    stations: Stations | None = None
    forecast: PlaceForecast | None = None
    price_notes: tuple[Fact, ...] = ()

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

    @cached_property
    def climate(self) -> Climate | None:
        """What the weather is usually like there, and forecasts; None where neither is known."""
        usual = climate_for(self.stations, self.place, self.household)
        return with_forecast(usual, self.place.where.point.latitude, self.forecast)

    @cached_property
    def outdoors(self) -> OutdoorYear | None:
        """What that means for time outdoors; None also where the visit is indoors."""
        return outdoor_year(self.climate, self.place, self.household.habits)

    @property
    def first(self) -> date:
        """The first of the days that all of this is known for."""
        return self.schools.first

    @cached_property
    def if_unknown_are_on_break(self) -> "PlaceFacts":
        """The same as if all pupils of whom nothing is known were on a break."""
        return replace(self, schools=self.schools.with_unknown_on_break())

    def hours_on(self, day: date) -> DayHours:
        """When the place can be visited on one day; where nobody knows of a break, when it is either way."""
        hours = self._hours_on(day)
        if not names_school_holidays(self.place.opening.hours):
            return hours
        other = self.if_unknown_are_on_break._hours_on(day)
        if hours.openness is Openness.OPEN:
            return hours.shared_with(other, self.unknown_break)
        if hours.openness is Openness.CLOSED and other.openness is Openness.OPEN:
            unless = fact("hours-unless-break", reason=hours.reason, doubt=self.unknown_break)
            return replace(hours, reason=unless)
        return hours

    def _hours_on(self, day: date) -> DayHours:
        return hours_on(
            self.place,
            day,
            self.public_holidays.keys(),
            self.days_out_of_school,
            no_classes=self.days_without_classes,
        )

    @property
    def unknown_break(self) -> Fact:
        """Why nobody knows whether a day is in a school break, and which calendar would settle it."""
        return fact("hours-unknown-break", town=self.place.where.town)

    @cached_property
    def opening(self) -> RuleDays:
        """When the place is open on each of the days; where nobody knows of a break, when it surely is."""
        text = self.place.opening.hours
        rule = self.rule(text)
        if not names_school_holidays(text):
            return rule
        return rule.shared_with(self.if_unknown_are_on_break.rule(text))

    def season_opens(self, day: date) -> date | None:
        """When the place opens again that is closed for weeks on end; as `opening.hours.season_opens`."""
        return season_opens(self.place, day, self.public_holidays.keys(), self.days_out_of_school)

    def rule(self, text: str, state: State = State.OPEN) -> RuleDays:
        """What a rule of the card says about each of the days from `first` on."""
        holidays, out_of_school = self.public_holiday_dates, self.days_out_of_school
        return rule_days(text, self.first, len(self.schools.out), holidays, out_of_school, state)


def drive_from_home(family: Family, place: Place) -> Drive:
    """The best known drive from home to a place: typed in, else by road network, else an estimate.

    The way to an idea that nobody has placed yet, or has only guessed at, is a guess too.
    """
    typed = next((typed for typed in family.typed_drives if typed.place == place.id), None)
    if typed is None and isinstance(place, IdeaPlace) and place.way_is_a_guess:
        return guessed_drive(place.idea.drive_minutes)
    return known_drive(
        family.household.home.point,
        place.where.point,
        place.where.country,
        typed,
        family.road_drives.get(place.id),
    )


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
        place=in_own_money(place, family.household),
        drive=drive_from_home(family, place),
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
        household=family.household,
        stations=family.stations,
        forecast=family.forecast_for(place.id),
        price_notes=rates_counted([place], family.household),
    )
