"""Families, places and spans drawn for the sweep, with everything in them that tells one day from another."""

from datetime import UTC, date, datetime, time, timedelta
from typing import Any

from hypothesis import strategies as st

from tests.builders import make_household, make_place
from tripplan.documents.calendars.calendars import Busy, DateSpan, FamilyCalendar, SchoolCalendar
from tripplan.documents.calendars.family_days import FamilyDays
from tripplan.documents.places.place import Place
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.planning.climate.stations import stations
from tripplan.planning.family.family import Family

TODAY = date(2026, 11, 25)
HOURS = (
    "Tu-Su 10:00-17:00",
    "Mo-Fr 09:00-12:00,13:00-18:00; Sa-Su 10:00-20:00; PH off",
    "Mo-Su 10:00-17:00; SH Mo-Fr 09:00-19:00; PH 12:00-16:00",
    "Fr-Sa 16:00-02:00; Su 11:00-15:00",
    "24/7",
    'Apr-Oct Sa-Su 10:00-18:00; We 10:00-14:00 open; Nov-Mar Sa 11:00-16:00 "by appointment"',
)
ZONES = (("America/Chicago", 40.4842, -88.9937), ("America/Indiana/Indianapolis", 39.7684, -86.1581))
SPANS = st.dates(date(2026, 11, 20), date(2027, 4, 1)).map(
    lambda first: DateSpan(first=first, last=first + timedelta(days=11))
)


def _born(years: int, days: int) -> str:
    return (date(2026, 12, 20) - timedelta(days=round(365.2425 * years) + days)).isoformat()


@st.composite
def families(draw: st.DrawFn) -> Family:
    """A household with children about to pass an age, two places, calendars and a week of its own.

    The places are drawn alike in much, so that what was found for the one is used for the other.
    """
    days = st.integers(-60, 60)
    naps = [{"start": draw(st.sampled_from(("12:30", "13:00"))), "minutes": 90, "in_pushchair": True}]
    household: dict[str, Any] = {
        "members": [
            {"name": "Ann", "born": "1988-05-20"},
            {"name": "Bo", "born": "1986-11-02", "statuses": ["educator"]},
            {"name": "Cy", "born": _born(draw(st.sampled_from((3, 6, 13, 18))), draw(days))},
            {"name": "Di", "born": _born(draw(st.sampled_from((1, 2))), draw(days)), "naps": naps},
        ],
        "treats_per_child": "2.50",
        "food": {"way": draw(st.sampled_from(("packed", "bought")))},
        "habits": {"home_by": draw(st.sampled_from(("17:00", "19:00", "23:30", "00:45")))},
        "worth": {"quiet_hour": draw(st.sampled_from(("0.00", "9.00")))},
    }
    if draw(st.booleans()):
        household["car"] = None
    if draw(st.booleans()):
        household["habits"] |= {"never_outdoors_below": "20 F", "never_outdoors_above": "29 C"}
    if draw(st.booleans()):
        rush = {"start": "07:00", "end": "09:30", "factor": "1.4"}
        household["habits"]["rush_hours"] = [rush, {**rush, "days": ["Fr"], "start": "14:00", "end": "19:00"}]
    if draw(st.booleans()):
        household["exchange_rates"] = [{"currency": "EUR", "worth": "1.0837", "on": "2026-11-20"}]
    if draw(st.booleans()):
        until = date(2026, 12, 1) + timedelta(days=draw(st.integers(0, 90)))
        household["passes"] = [
            {"place": "test-museum", "offer": "Pass", "holders": ["Ann"], "valid_until": until.isoformat()}
        ]
    minutes = st.sampled_from((25.0, 70.0, 130.0))
    first = draw(places())
    second = draw(st.one_of(places(), _changed(first)))
    ids = ("test-museum", "second-museum")
    return Family(
        make_household(**household),
        tuple(place.model_copy(update={"id": id_}) for place, id_ in zip((first, second), ids, strict=True)),
        (
            SchoolCalendar(
                name="district",
                country="US",
                latitude=40.5,
                longitude=-89.2,
                known=DateSpan(first=date(2026, 8, 1), last=date(2027, 6, 1)),
                no_school=(DateSpan(first=date(2026, 12, 21), last=date(2027, 1, 3)),),
            ),
        ),
        draw(st.lists(st.builds(_engagements, st.lists(_busy(), max_size=4)), max_size=1).map(tuple)),
        draw(st.sampled_from((FamilyDays(), _WORKING))),
        tuple(TypedDrive(place=id_, km=30, minutes=draw(minutes), typed_on=TODAY) for id_ in ids),
        stations=draw(st.sampled_from((None, stations()))),
    )


_WORKING = FamilyDays.model_validate(
    {
        "weekly": [{"name": "choir", "days": ["We"], "start": "15:00", "end": "16:00"}],
        "work": [
            {"member": "Bo", "days": ["Mo", "Tu"], "start": "08:00", "end": "17:00", "then": "without"},
            {"member": "Ann", "days": ["Th"], "start": "08:00", "end": "10:00"},
        ],
        "late_evening": {"not_before": "10:00"},
    }
)


def _engagements(busy: list[Busy]) -> FamilyCalendar:
    return FamilyCalendar(name="ours", busy=tuple(busy))


@st.composite
def _busy(draw: st.DrawFn) -> Busy:
    start = datetime(2026, 11, 20, tzinfo=UTC) + timedelta(hours=draw(st.integers(0, 3200)))
    return Busy(start=start, end=start + timedelta(hours=draw(st.sampled_from((1, 5, 30)))), name="busy")


def _changed(place: Place) -> st.SearchStrategy[Place]:
    """The same place with one thing changed that a day plan or a price rests on."""
    opening, visit, where = place.opening, place.visit, place.where
    changes: tuple[dict[str, Any], ...] = (
        {"opening": opening.model_copy(update={"school_groups": "Mo-Fr 09:30-12:00"})},
        {"opening": opening.model_copy(update={"last_entry_minutes_before_close": 90})},
        {"opening": opening.model_copy(update={"entry_times": (time(10, 30), time(14))})},
        {"visit": visit.model_copy(update={"pushchairs": not visit.pushchairs})},
        {"visit": visit.model_copy(update={"comfortable_minutes": 200, "stays": ()})},
        {"visit": visit.model_copy(update={"shows": visit.shows[:1], "quiet_hours": "Sa 11:00-13:00"})},
        {"where": where.model_copy(update={"metropolitan": True})},
        {"offers": place.offers[:1]},
    )
    return st.sampled_from(changes).map(lambda change: place.model_copy(update=change))


_PLANETARIUM = {"name": "Stars", "price": "2.00", "valid": "Tu-Fr 08:00-12:30", "usual": True}
_SLIDE = {"name": "Slide", "price": "1.75", "most_height": "135 cm", "usual": True}
_VOUCHERS: tuple[dict[str, Any], ...] = (
    {"name": "Ahead", "percent_off": "10", "book_days_ahead": 12, "people_at_most": 3},
    {"name": "Weekday", "amount_off": "2.50", "valid": "Tu-Th 08:00-12:30"},
)
_PARKING_BY_TIME: dict[str, Any] = {
    "price": "9.00",
    "rates": (
        {"valid": "Su; PH", "price": "0"},
        {"up_to_minutes": 60, "price": "2.00"},
        {"valid": "Mo-Fr 08:00-13:00", "per_hour": "1.75", "free_minutes": 30, "at_most": "6.00"},
    ),
}
_SHOW_DAYS = st.sampled_from(("Sa-Su", "We,Fr 10:00-12:00", "SH", "Fr 20:00-03:00"))


@st.composite
def places(draw: st.DrawFn) -> Any:
    """A place whose hours, prices and rules go by the date."""
    zone, latitude, longitude = draw(st.sampled_from(ZONES))
    late = date(2026, 12, 1) + timedelta(days=draw(st.integers(0, 100)))
    every_offer: list[dict[str, Any]] = [
        {"name": "Adult", "price": "14.00", "ages": "13+"},
        {"name": "Child", "price": "9.00", "ages": "3-12"},
        {"name": "Small child", "price": "0.00", "ages": "under 3"},
        {"name": "Early", "price": "6.50", "valid": "Mo-Fr 08:00-11:00; PH off"},
        {"name": "With boat", "price": "5.75", "ages": "3+", "includes": ["Boat"]},
        {"name": "Week", "price": "7.00", "last_day": late.isoformat(), "book_days_ahead": 9},
        {"name": "New", "price": "5.00", "ages": "under 7", "first_day": late.isoformat()},
        {"name": "Break", "price": "4.00", "valid": "SH", "ages": "3+"},
        {"name": "Birthday", "price": "0.50", "good_on": "birthday"},
        {"name": "Month", "price": "1.50", "good_on": "birth month", "companions": {}},
        {"kind": "discount", "name": "Quarter off", "percent_off": "25", "ages": "3-40"},
        {
            "name": "Group",
            "price": "8.00",
            "ages": "13+",
            "other_ages": [{"ages": "3-12", "price": "4.50"}],
            "at_least": 3,
            "online_only": True,
        },
        {
            "kind": "bundle",
            "name": "Car",
            "price": "24.00",
            "seats": [{"count": 8}],
            "per_car": True,
            "last_day": late.isoformat(),
        },
        {"name": "Two hours", "price": "4.50", "longest_stay_minutes": 120},
        {"name": "Morning", "price": "6.00", "valid": "Mo-Sa", "leave_by": "12:30"},
        {
            "kind": "bundle",
            "name": "Family",
            "price": "31.00",
            "seats": [{"count": 2, "ages": "18+"}, {"count": 3, "ages": "under 18"}],
        },
        {
            "kind": "pass",
            "name": "Pass",
            "price": "160.00",
            "months": 12,
            "seats": [{"count": 2, "ages": "any"}],
            "guests_percent_off": 50,
            "guests_at_most": 2,
            "parking_included": True,
        },
    ]
    some = draw(st.lists(st.sampled_from(every_offer), min_size=1, max_size=6, unique_by=lambda o: o["name"]))
    opening: dict[str, Any] = {"hours": draw(st.sampled_from(HOURS))}
    if draw(st.booleans()):
        opening |= {"last_entry_minutes_before_close": 60, "book_days_ahead": draw(st.sampled_from((0, 3)))}
    if draw(st.booleans()):
        opening |= {"entry_times": ("10:00", "11:30", "13:00"), "school_groups": "Tu-Th 10:00-12:00"}
    visit: dict[str, Any] = {"indoors": draw(st.sampled_from(("indoors", "both", "outdoors")))}
    if draw(st.booleans()):
        visit |= {
            "quiet_hours": draw(st.sampled_from(("Mo-We 12:00-14:00", "PH 11:00-12:30"))),
            "shows": [
                {"name": "Feeding", "starts": ["11:00", "14:30"], "days": draw(_SHOW_DAYS)},
                {"name": "Sky", "starts": ["12:10"], "minutes": 35},
            ],
            "stays": [{"ages": "under 3", "shortest_minutes": 45, "comfortable_minutes": 75}],
        }
    return make_place(
        visit=visit,
        where={
            "town": "Bloomington",
            "country": "US",
            "subdivision": "IL",
            "latitude": latitude,
            "longitude": longitude,
            "time_zone": zone,
        },
        opening=opening,
        offers=some,
        vouchers=draw(st.sampled_from(((), (), _VOUCHERS))),
        fees=draw(st.sampled_from(((), (), ({"name": "Part", "percent": "3", "online_only": True},)))),
        parking=draw(st.sampled_from(({"price": "5.00"}, {"price": "5.00"}, _PARKING_BY_TIME))),
        add_ons=[
            {
                "name": "Boat",
                "price": "3.25",
                "ages": "3-12",
                "with_ticket": draw(st.sampled_from(((), ({"offers": [some[0]["name"]], "price": "1"},)))),
                "usual": True,
            },
            *draw(st.sampled_from(((), (_PLANETARIUM,), (_SLIDE,)))),
        ],
        sales_tax={"percent": "7.25"} if draw(st.booleans()) else None,
        must_be_accompanied=[{"ages": "under 13", "by": "18+", "each_minds": 1}]
        if draw(st.booleans())
        else (),
        currency=draw(st.sampled_from(("USD", "USD", "USD", "EUR"))),
    )
