"""The two ways of one outing as they are with this party on this day."""

from collections.abc import Sequence, Set
from dataclasses import replace
from datetime import date

from tripplan.planning import wording
from tripplan.planning.day.minutes import DayMinutes
from tripplan.planning.day.timed_legs import timed_leg
from tripplan.planning.household import Household, Member
from tripplan.planning.ranges import Source
from tripplan.planning.travel.drive import Drive, Leg, Way
from tripplan.planning.travel.rests import (
    drive_stretch_for,
    plan_leg,
    usual_load_up_minutes,
    usual_unload_minutes,
)
from tripplan.planning.travel.rush_hours import rush_hours_between
from tripplan.planning.travel.stops import StoppedDrive, there_and_back
from tripplan.planning.where import Where


def ways_of(
    household: Household,
    party: Sequence[Member],
    drive: Drive,
    place: Where,
    day: date,
    public_holidays: Set[date],
) -> tuple[Way, Way]:
    """The way there and the way home, with load-up, rests, stops and rush hours.

    Args:
        household: home and habits.
        party: who goes; ages are those on the day.
        drive: the way from home to the place, wheels turning on empty roads.
        place: where it ends.
        day: the date at home.
        public_holidays: on these the roads are as on a Sunday, without a rush.
    """
    home, habits = household.home, household.habits
    ages_months = [member.months_on(day) for member in party]
    toilets = [member.toilet_minutes for member in party if member.toilet_minutes is not None]
    stretch = drive_stretch_for(ages_months, habits.drive_at_most_minutes, toilets)
    rush = rush_hours_between(habits.rush_hours, home, place) if day not in public_holidays else ()

    def way(stopped: StoppedDrive) -> Way:
        def leg_of(drive_minutes: int | None) -> Leg:
            leg = plan_leg(
                stopped.drive,
                load_up_minutes=usual_load_up_minutes(ages_months)
                if habits.load_up_minutes is None
                else habits.load_up_minutes,
                unload_minutes=usual_unload_minutes(ages_months),
                drive_at_most_minutes=stretch,
                rest_minutes=habits.rest_minutes,
                drive_minutes=drive_minutes,
                stops=stopped.stops,
            )
            return leg if drive_minutes is None else _slowed(leg)

        return timed_leg(leg_of, rush, DayMinutes(day, home.zone))

    there, back = there_and_back(drive, habits.stops, home.point, place, household.units)
    return way(there), way(back)


def _slowed(leg: Leg) -> Leg:
    """The same leg with the range of its driving time moved up to what rush hours make of it."""
    drive = leg.drive
    factor = leg.drive_minutes / drive.minutes.likely
    longer = wording.minutes(leg.drive_minutes - drive.minutes.likely)
    return replace(
        leg,
        drive=replace(
            drive,
            minutes=drive.minutes.map(lambda minutes: minutes * factor),
            source=Source(drive.source.origin, f"{drive.source.text}; rush hours add {longer}"),
        ),
    )
