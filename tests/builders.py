"""Small valid households and places for tests; every field can be changed by name."""

from collections.abc import Iterable
from datetime import date, datetime, time, timedelta
from typing import Any
from zoneinfo import ZoneInfo

from tripplan.documents.calendars.calendars import SchoolCalendar
from tripplan.documents.family.household import Household
from tripplan.documents.family.member import Member
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.places.place import Place
from tripplan.language.sentences import Fact


def make_member(name: str = "Ann", born: str = "1988-05-20", **changes: Any) -> Member:
    """An adult without naps."""
    return Member.model_validate({"name": name, "born": born, **changes})


def make_household(**changes: Any) -> Household:
    """Two adults, a seven-year-old and a napping toddler in a Midwestern town."""
    values: dict[str, Any] = {
        "name": "Test household",
        "home": {
            "town": "Peoria",
            "country": "US",
            "subdivision": "IL",
            "latitude": 40.6936,
            "longitude": -89.589,
            "time_zone": "America/Chicago",
        },
        "currency": "USD",
        "units": "mi",
        "members": [
            {"name": "Ann", "born": "1988-05-20"},
            {"name": "Bo", "born": "1986-11-02"},
            {"name": "Cy", "born": "2019-03-11"},
            {"name": "Di", "born": "2025-07-15", "naps": [{"start": "12:30", "minutes": 100}]},
        ],
        "car": {"fuel": "mpg", "consumption": "24", "fuel_price": "3.12"},
        **changes,
    }
    return Household.model_validate(values)


def make_place(**changes: Any) -> Place:
    """A museum some 60 km from the household's home, open every day but Monday."""
    values: dict[str, Any] = {
        "id": "test-museum",
        "name": "Test museum",
        "currency": "USD",
        "where": {
            "town": "Bloomington",
            "country": "US",
            "subdivision": "IL",
            "latitude": 40.4842,
            "longitude": -88.9937,
            "time_zone": "America/Chicago",
        },
        "opening": {"hours": "Tu-Su 10:00-17:00"},
        "offers": [
            {"name": "Adult", "price": "14.00", "ages": "13+"},
            {"name": "Child", "price": "9.00", "ages": "3-12"},
            {"name": "Small child", "price": "0.00", "ages": "under 3"},
        ],
        "parking": {"price": "5.00"},
        "prices_read": {"on": date(2026, 11, 2), "source": "written for tests"},
        **changes,
    }
    return Place.model_validate(values)


def make_outing(day: date, start: str = "09:00", end: str = "17:30", **changes: Any) -> PlannedOuting:
    """An outing on record for two of the household, by the clock at home."""
    zone = ZoneInfo("America/Chicago")
    leaves, back = (datetime.combine(day, time.fromisoformat(at), zone) for at in (start, end))
    values: dict[str, Any] = {
        "id": f"farm-{day}",
        "place": "farm",
        "day": day,
        "party": ("Ann", "Cy"),
        "leave_home": leaves,
        "enter": leaves + timedelta(hours=1),
        "leave_place": back - timedelta(hours=1),
        "home": back,
        "uid": f"farm-{day}@test",
        "status": "confirmed",
        "changed_at": datetime(2026, 11, 25, 12, tzinfo=zone),
        "likely_amount": "50.00",
        "currency": "USD",
        **changes,
    }
    return PlannedOuting.model_validate(values)


def out_of_school(calendar: SchoolCalendar, day: date) -> bool | None:
    """Whether a calendar's pupils have no school that day, by its spans; None where it does not reach."""
    if day not in calendar.known:
        return None
    return day.weekday() >= 5 or any(day in span for span in calendar.no_school)


def codes(facts: Iterable[Fact]) -> list[str]:
    """The codes of some facts."""
    return [one.code for one in facts]
