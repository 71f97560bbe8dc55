"""A document of every kind that the records know, drawn with whatever a parent may have typed in it."""

from datetime import UTC, date, datetime, time, timedelta, timezone
from decimal import Decimal
from typing import Any

from hypothesis import strategies as st

from tests.builders import make_household, make_place
from tests.planning.logbook.entries import make_entry
from tests.planning.logbook.test_against_plan import said
from tripplan.documents.calendars.calendars import FamilyCalendar, SchoolCalendar
from tripplan.documents.calendars.family_days import FamilyDays
from tripplan.documents.calendars.local_days import LocalDays
from tripplan.documents.calendars.server_calendar import OnServer, ServerCalendar
from tripplan.documents.family.household import Household
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import Learnable, LogbookSettings
from tripplan.documents.model import Written
from tripplan.documents.outings.emergency_contacts import EmergencyContacts
from tripplan.documents.outings.going_together import GoingTogether
from tripplan.documents.outings.packing_changes import PackingChanges
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.documents.outings.planned_visits import PlannedVisits
from tripplan.documents.outings.sheet_entries import SheetDetails
from tripplan.documents.places.forecast import ForecastDay, PlaceForecast
from tripplan.documents.places.idea import Idea
from tripplan.documents.places.own_figures import OwnFigures
from tripplan.documents.places.own_questions import OwnQuestions
from tripplan.documents.places.place import Place
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.documents.where import LookupResult
from tripplan.records.kinds import KINDS, ComparedPlaces, DemoShown
from tripplan.values.visible import shows_something, without_unseen

names = st.text(st.characters(exclude_categories=["Cs"]), min_size=1, max_size=80).filter(
    lambda text: shows_something(without_unseen(text))
)
ids = st.from_regex(r"[a-z0-9]{1,9}(-[a-z0-9]{1,9}){0,3}", fullmatch=True)
prices = st.decimals(0, 1000, places=2)
days = st.dates(date(2026, 1, 1), date(2030, 12, 31))
moments = st.datetimes(datetime(2026, 1, 1), datetime(2030, 12, 31), timezones=st.timezones())  # noqa: DTZ001
clocks = st.times().map(lambda clock: clock.replace(hour=clock.hour % 10, second=0, microsecond=0))
offsets = st.integers(-14 * 60, 14 * 60).map(lambda minutes: timezone(timedelta(minutes=minutes)))

households = st.builds(
    lambda name, price, needs, share: make_household(
        name=name,
        treats_per_child=price,
        reserve_percent=share,
        members=[{"name": "Ann", "born": "1988-05", "needs": needs, "statuses": [name]}],
    ),
    names,
    prices,
    st.text(st.characters(exclude_categories=["Cs"])),
    st.decimals(0, 100, allow_nan=False, allow_infinity=False),
)
places = st.builds(
    lambda key, name, price, notes: make_place(
        id=key, name=name, notes=notes, offers=[{"name": "Entry", "price": price, "ages": "any"}]
    ),
    ids,
    names,
    prices,
    names,
)
ideas = st.builds(
    lambda key, name, money, minutes, topics, notes: Idea(
        id=key,
        name=name,
        noted_on=date(2026, 11, 25),
        money=money,
        drive_minutes=minutes,
        topics=tuple(topics),
        notes=notes,
    ),
    ids,
    names.map(lambda name: name[:73]).filter(lambda name: shows_something(without_unseen(name))),
    st.none() | prices,
    st.none() | st.integers(1, 1440),
    st.lists(names, max_size=3),
    names,
)
school_calendars = st.builds(
    lambda name, latitude, longitude, pupils, first, more: SchoolCalendar.model_validate(
        {
            "name": name,
            "country": "US",
            "latitude": latitude,
            "longitude": longitude,
            "pupils": pupils,
            "known": {"first": first, "last": first + timedelta(days=more)},
            "no_school": [{"first": first, "last": first, "name": name}],
        }
    ),
    names,
    st.floats(-90, 90),
    st.floats(-180, 180),
    st.integers(1, 10**9),
    days,
    st.integers(0, 400),
)
family_calendars = st.builds(
    lambda name, start, offset: FamilyCalendar.model_validate(
        {"name": name, "busy": [{"start": start.astimezone(offset), "end": start.astimezone(UTC)}]}
    ),
    names,
    moments,
    offsets,
)
typed_drives = st.builds(
    TypedDrive,
    place=ids,
    km=st.floats(0, 20_000, exclude_min=True),
    minutes=st.floats(0, 10_000, exclude_min=True),
    typed_on=days,
)
planned_outings = st.builds(
    lambda key, moment, party, status, amount: PlannedOuting(
        id=key,
        place=key,
        day=moment.date(),
        party=tuple(party),
        leave_home=moment,
        enter=moment,
        leave_place=moment,
        home=moment,
        uid=f"{key}@example.org",
        status=status,
        changed_at=moment.astimezone(UTC),
        likely_amount=amount,
        currency="USD",
    ),
    ids,
    moments,
    st.lists(names, min_size=1, max_size=5),
    st.sampled_from(PlanStatus),
    st.decimals(0, 10**6, places=3).map(Decimal),
)
study_units = st.builds(
    lambda name, topic, first, more, budget, members: StudyUnit(
        name=name,
        topics=(topic,),
        first=first,
        last=first + timedelta(days=more),
        currency="USD",
        budget=budget,
        members=tuple(members),
    ),
    names,
    names,
    days,
    st.integers(0, 200),
    st.none() | prices,
    st.lists(names, max_size=3),
)


local_days = st.builds(
    lambda name, first, more, factor, place, off: LocalDays.model_validate(
        {
            "days": [
                {
                    "name": name,
                    "first": first,
                    "last": first + timedelta(days=more),
                    "place": place,
                    "crowd_factor": factor,
                    "day_off": off,
                }
            ]
        }
    ),
    names,
    days,
    st.integers(0, 9),
    st.decimals(Decimal("0.1"), 50, places=2),
    ids,
    st.booleans(),
)
family_weeks = st.builds(
    lambda name, start, adult: FamilyDays.model_validate(
        {
            "weekly": [{"name": name, "days": ["Mo"], "start": start, "end": time(23, 55)}],
            "work": [{"member": adult, "days": ["Tu", "We"], "start": start, "end": time(23, 55)}],
            "late_evening": {"after": "21:00", "not_before": start},
        }
    ),
    names,
    clocks,
    names,
)
own_figures = st.builds(
    lambda place, name, price, minutes: OwnFigures.model_validate(
        {
            "place": place,
            "add_ons": [name],
            "tolls": price,
            "extras": [{"name": name, "price": price, "give_or_take_percent": 20}],
            "stay_minutes": minutes,
        }
    ),
    ids,
    names,
    prices,
    st.integers(10, 600),
)
programme_wishes = st.builds(
    lambda unit, place, day, budget: ProgrammeWishes.model_validate(
        {
            "currency": "USD",
            "budget": budget,
            "settled": [{"unit": unit, "place": place, "day": day}],
            "ruled_out": [{"unit": unit, "place": f"{place}-2"}],
            "careful": True,
        }
    ),
    names,
    ids,
    days,
    prices,
)
logbook_entries = st.builds(
    lambda key, day, title, notes, price, start: make_entry(
        id=f"{day}-{key}",
        day=day,
        title=title,
        notes=notes,
        receipts_total=price,
        left_home=start,
        as_planned=said(),
    ),
    ids,
    days,
    names,
    names,
    st.none() | st.decimals(42, 1000, places=2),  # no less than the items
    st.none() | clocks,
)
logbook_settings = st.builds(
    lambda budget, month, name, off: LogbookSettings.model_validate(
        {
            "currency": "USD",
            "budget": budget,
            "year_begins_month": month,
            "grade_bands": [{"member": name, "band": name}],
            "not_learned": off,
        }
    ),
    prices,
    st.integers(1, 12),
    names,
    st.lists(st.sampled_from(Learnable), unique=True),
)
sheet_details = st.builds(
    lambda place, day, what: SheetDetails.model_validate(
        {
            "place": place,
            "day": day,
            "bookings": [{"what": what, "number": "K7"}],
            "ticked": {"needs": True, "birth_dates": True},
        }
    ),
    ids,
    days,
    names,
)
others = st.builds(
    lambda name, months, paid: GoingTogether.model_validate(
        {
            "currency": "USD",
            "households": [{"name": name, "people": [f"{months} mo", "38 (educator)"], "paid": paid}],
            "seats": 7,
            "paid": paid,
        }
    ),
    names,
    st.integers(0, 200),
    prices,
)
server_calendars = st.builds(
    lambda name: ServerCalendar(
        server="https://cal.example.org/", user="vera", calendar="https://cal.example.org/1/", name=name
    ),
    names,
)

DRAWN: dict[type[Written], st.SearchStrategy[Any]] = {
    Household: households,
    Place: places,
    Idea: ideas,
    SchoolCalendar: school_calendars,
    LocalDays: local_days,
    FamilyCalendar: family_calendars,
    FamilyDays: family_weeks,
    TypedDrive: typed_drives,
    OwnFigures: own_figures,
    PlannedOuting: planned_outings,
    StudyUnit: study_units,
    ProgrammeWishes: programme_wishes,
    LogbookEntry: logbook_entries,
    LogbookSettings: logbook_settings,
    SheetDetails: sheet_details,
    OwnQuestions: st.builds(lambda place, text: OwnQuestions(place=place, questions=(text,)), ids, names),
    PackingChanges: st.builds(lambda one: PackingChanges(added=(one,), left_out=("a second hat",)), names),
    EmergencyContacts: st.builds(
        lambda name: EmergencyContacts.model_validate(
            {"contacts": [{"name": name, "telephone": "(608) 555-0100"}]}
        ),
        names,
    ),
    PlannedVisits: st.builds(
        lambda place, day, name: PlannedVisits.model_validate(
            {"visits": [{"place": place, "day": day, "party": [name]}]}
        ),
        ids,
        days,
        names,
    ),
    GoingTogether: others,
    ComparedPlaces: st.builds(ComparedPlaces, places=st.lists(ids, max_size=4).map(tuple)),
    LookupResult: st.builds(
        lambda text, moment: LookupResult(
            text=text, name=text, latitude=1, longitude=2, service="https://example.org", looked_up_at=moment
        ),
        names,
        moments,
    ),
    PlaceForecast: st.builds(
        lambda place, day, moment: PlaceForecast(
            place=place, days=(ForecastDay(day=day, wet=1, known_at=moment),)
        ),
        ids,
        days,
        moments,
    ),
    ServerCalendar: server_calendars,
    OnServer: st.builds(lambda one: OnServer(outing=one, calendar="https://cal.example.org/1/"), ids),
    DemoShown: st.builds(DemoShown, shown=st.booleans()),
}
"""How a document of each kind is drawn."""

TRAVELLING = [model for model, kind in KINDS.items() if kind.travels]


def some_of(model: type[Written], *, at_least: int, at_most: int) -> st.SearchStrategy[list[Any]]:
    """Documents of one type, no two with the same key."""
    return st.lists(DRAWN[model], min_size=at_least, max_size=at_most, unique_by=KINDS[model].key)


def contents(*, at_least: int, at_most: int) -> st.SearchStrategy[list[Written]]:
    """Documents of every kind that is part of an export.

    Args:
        at_least: how many of each kind at least [-].
        at_most: how many at most [-]; of a kind of which there is only one, one.
    """
    return st.tuples(*(some_of(model, at_least=at_least, at_most=at_most) for model in TRAVELLING)).map(
        lambda kinds: [value for values in kinds for value in values]
    )
