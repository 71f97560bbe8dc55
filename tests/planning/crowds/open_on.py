"""Crowd risks of a place that is open on days of one's choice."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, timedelta

import numpy as np

from tripplan.documents.calendars.calendars import SchoolCalendar
from tripplan.documents.places.place import Place
from tripplan.planning.crowds.risk import Crowds, crowd_risks
from tripplan.planning.holidays.schools import school_days


def risks_on(
    days: Iterable[date], place: Place, holidays: Mapping[date, str], calendars: Sequence[SchoolCalendar]
) -> Crowds:
    """The risks of some days of 2026 and 2027, the only ones on which the place is open."""
    first, last = date(2026, 1, 1), date(2027, 12, 31)
    where, opened = place.where, frozenset(days)
    schools = school_days(
        calendars, where.point, first, last, country=where.country, subdivision=where.subdivision
    )
    is_open = [first + timedelta(days=n) in opened for n in range(len(schools.out))]
    return crowd_risks(place, np.array(is_open), holidays, schools)
