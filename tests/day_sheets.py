"""Outings to make day sheets of: a small family with names from several alphabets, and the demo's."""

from datetime import date
from functools import lru_cache
from pathlib import Path
from typing import Any

from tests.builders import make_household, make_place
from tripplan.documents.family.household import INVENTED, Household
from tripplan.documents.outings.sheet_entries import SheetEntries, SheetTicks
from tripplan.documents.places.place import Place
from tripplan.files.cards.household_file import load_household
from tripplan.files.cards.place_card import load_place_cards
from tripplan.files.day_sheet.day_sheet import DaySheet, SheetSection, day_sheet
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts

DEMO = Path(__file__).resolve().parents[1] / "demo_places"
TODAY = date(2026, 11, 25)
DAY = date(2026, 12, 8)

FAMILY = make_household(
    members=[
        {"name": "Žofie", "born": "1988-05-20"},
        {"name": "Łucja", "born": "2019-03-11", "needs": "hazelnut allergy"},
        {"name": "Ελένη & Di", "born": "2025-07-15", "naps": [{"start": "12:30", "minutes": 100}]},
    ],
    home={
        "address": "12 Elm Street",
        "town": "Peoria",
        "country": "US",
        "subdivision": "IL",
        "latitude": 40.6936,
        "longitude": -89.589,
        "time_zone": "America/Chicago",
    },
)
MUSEUM = make_place(
    telephone="(309) 555-0147",
    visit={
        "topics": ["water power"],
        "cautions": ["Wet steps.", "<script>alert('x')</script> & \"quotes\""],
        "questions": ["Where does the water come from?"],
    },
)
SHOWING = make_place(
    visit={
        "comfortable_minutes": 240,
        "shows": [
            {"name": "Planet hour", "starts": ["13:30"], "minutes": 40},
            {"name": "Otter feeding", "starts": ["11:00"], "minutes": 20},
            {"name": "Night sky", "starts": ["16:50"], "minutes": 30},
        ],
    }
)
"""Two shows that a day can see, told out of order, and one that is over only after closing."""


@lru_cache
def planned(household: Household = FAMILY, place: Place = MUSEUM, day: date = DAY) -> Outing:
    """An outing that can be done, planned by the real calculators."""
    family = Family(household, (place,))
    outing = plan_outing(family, household.members, place_facts(family, place, (day.year,)), day, today=TODAY)
    assert isinstance(outing, Outing), outing.reasons
    return outing


def sheet(household: Household = FAMILY, place: Place = MUSEUM, **entries: Any) -> DaySheet:
    """The sheet of one outing."""
    return day_sheet(planned(household, place), household, SheetEntries(**entries))


def demo_sheet(place: str, day: date) -> DaySheet:
    """The sheet of an outing of the demo's seven people, with everything ticked."""
    household = load_household(DEMO / "household.toml", TODAY).value
    cards = {card.id: card for card in load_place_cards(DEMO / "places", TODAY).places}
    assert household is not None
    all_ticked = SheetTicks(needs=True, birth_dates=True, home_address=True)
    outing = planned(household, cards[place], day)
    return day_sheet(outing, household, SheetEntries(ticked=all_ticked), notice=INVENTED)


def section(sheet: DaySheet, name: str) -> SheetSection:
    """One section of a sheet by its name."""
    return next(found for found in sheet.sections if found.name == name)


def words(sheet: DaySheet) -> str:
    """Everything a sheet says, a line each."""
    lines = [f"{line.lead} {line.text}" for found in sheet.sections for line in found.lines]
    return "\n".join((sheet.title, sheet.day, sheet.going, sheet.notice, *lines, sheet.closing))
