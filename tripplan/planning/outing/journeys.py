"""The two ways of one outing as they are with this party on this day."""

from collections.abc import Sequence, Set
from dataclasses import dataclass, replace
from datetime import date

from tripplan.documents.calendars.family_days import WEEKDAYS
from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member
from tripplan.documents.where import Where
from tripplan.language import wording
from tripplan.planning.day.times.minutes import DayMinutes
from tripplan.planning.day.times.timed_legs import timed_leg
from tripplan.planning.travel.drive import Drive, Journey, Leg
from tripplan.planning.travel.rests import (
    drive_stretch_for,
    plan_leg,
    usual_load_up_minutes,
    usual_unload_minutes,
)
from tripplan.planning.travel.rush_hours import rush_hours_between
from tripplan.planning.travel.stops import StoppedDrive, there_and_back


@dataclass(frozen=True)
class Pace:
    """How a party travels, whatever the road.

    Attributes:
        load_up_minutes: from 'shoes on' to the wheels turning [min].
        unload_minutes: from parking to walking [min].
        stretch_minutes: the longest stretch of driving without a rest [min].
    """

    load_up_minutes: int
    unload_minutes: int
    stretch_minutes: int


def pace_of(household: Household, party: Sequence[Member], day: date) -> Pace:
    """How a party travels at the ages it has on a day."""
    habits = household.habits
    ages_months = [member.months_on(day) for member in party]
    toilets = [member.toilet_minutes for member in party if member.toilet_minutes is not None]
    return Pace(
        usual_load_up_minutes(ages_months) if habits.load_up_minutes is None else habits.load_up_minutes,
        usual_unload_minutes(ages_months),
        drive_stretch_for(ages_months, habits.drive_at_most_minutes, toilets),
    )


def ways_of(
    household: Household, pace: Pace, drive: Drive, place: Where, day: date, public_holidays: Set[date]
) -> tuple[Journey, Journey]:
    """The way there and the way home, with load-up, rests, stops and rush hours.

    Args:
        household: home and habits.
        pace: how the party travels that day.
        drive: the way from home to the place, wheels turning on empty roads.
        place: where it ends.
        day: the date at home.
        public_holidays: on these the roads are as on a Sunday, without a rush.
    """
    home, habits = household.home, household.habits
    # Everybody is home by the next morning, so on a day without rush hours those of the next do not count.
    rush = [
        hours
        for hours in rush_hours_between(habits.rush_hours, home, place)
        if WEEKDAYS[day.weekday()] in hours.days and day not in public_holidays
    ]

    def way(stopped: StoppedDrive) -> Journey:
        def leg_of(drive_minutes: int | None) -> Leg:
            drive = stopped.drive
            return plan_leg(
                drive if drive_minutes is None else _slowed(drive, drive_minutes),
                load_up_minutes=pace.load_up_minutes,
                unload_minutes=pace.unload_minutes,
                drive_at_most_minutes=pace.stretch_minutes,
                rest_minutes=habits.rest_minutes,
                drive_minutes=drive_minutes,
                stops=stopped.stops,
            )

        return timed_leg(leg_of, rush, DayMinutes(day, home.zone))

    there, back = there_and_back(drive, habits.stops, home.point, place, household.units)
    way_there = way(there)
    return way_there, way_there if back == there else way(back)


def _slowed(drive: Drive, drive_minutes: int) -> Drive:
    """The same drive with the range of its time moved up to what rush hours make of it.

    Full roads vary more than empty ones, and only upwards: on a bad day they are slower than usual by as much
    again as they usually are slower than empty. No source, our choice.
    """
    factor = drive_minutes / drive.minutes.likely
    longer = wording.minutes(drive_minutes - drive.minutes.likely)
    source = replace(drive.source, text=f"{drive.source.text}; rush hours add {longer}")
    moved = drive.minutes.map(lambda minutes: minutes * factor)
    minutes = replace(moved, high=moved.high * factor)
    return Drive(drive.km, minutes, drive.known_by, source, drive.notes)
