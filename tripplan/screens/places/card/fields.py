"""The fields of a place card beside its price board, and what they are called."""

import re
from dataclasses import dataclass
from enum import Enum

from tripplan.screens.places.card.visit_fields import VISIT_LABELS
from tripplan.screens.widgets.where_form import where_labels, where_on_record
from tripplan.values import wording

MONTHS = tuple(wording.month(number) for number in range(1, 13))
HOURS_EXAMPLES = (
    ("Tu-Su 10:00-17:00", "every day but Monday"),
    ("Apr-Oct Mo-Su 09:00-18:00; Nov-Mar Sa-Su 10:00-16:00", "two seasons"),
    ("Mo-Sa 10:00-17:00; PH off; Dec 24-25 off", "closed on Sundays, public holidays and at Christmas"),
)
SPECIAL_DAY_EXAMPLE = "2026-12-12: Lantern night; 2.5 times"


class How(Enum):
    """How a field is filled in."""

    TEXT = "one line"
    NOTE = "several lines"
    TICK = "yes or no"
    CHOICE = "one of several"
    LINES = "a list, one entry a line"
    TIMES = "times of day with commas between"
    MONTHS = "any of the twelve months"
    SPECIAL_DAYS = "days unlike the rest, one a line"
    CODE = "a code of capital letters"


@dataclass(frozen=True)
class CardField:
    """One field of the form.

    Attributes:
        name: part of its widget's key.
        path: where it stands on the card.
        label: as on the screen.
        explained: the help beside it; may be empty.
        how: how it is filled in.
        choices: values and their words, where one of several is picked.
        example: what stands in it while it is empty.
    """

    name: str
    path: str
    label: str
    explained: str = ""
    how: How = How.TEXT
    choices: tuple[tuple[str, str], ...] = ()
    example: str | None = None


NAME = CardField("name", "name", "Name of the place")
HOURS = CardField("hours", "opening.hours", "Opening hours", example=HOURS_EXAMPLES[0][0])
ENTRY = (
    CardField(
        "last_entry",
        "opening.last_entry_minutes_before_close",
        "Last entry, in minutes before closing",
        "0 if up to closing time.",
    ),
    CardField(
        "entry_times",
        "opening.entry_times",
        "People are let in only at these times",
        "With commas between, such as 10:00, 11:30. Empty if at any time.",
        How.TIMES,
    ),
    CardField(
        "book_ahead",
        "opening.book_days_ahead",
        "A visit is to be booked so many days ahead",
        "0 if you can just go.",
    ),
    CardField(
        "hours_read",
        "opening.checked_on_site",
        "These hours were read at the place or on its own page",
        "Otherwise they are a guess, and are shown as one.",
        How.TICK,
    ),
)
VISIT = (
    CardField("topics", "visit.topics", "What can be studied there", "One topic a line.", How.LINES),
    CardField("shortest", "visit.shortest_minutes", "Shortest stay worth the drive, in minutes"),
    CardField("comfortable", "visit.comfortable_minutes", "A comfortable stay, in minutes"),
    CardField("pushchairs", "visit.pushchairs", "A pushchair can go all the way round", how=How.TICK),
    CardField("own_food", "visit.own_food", "You may eat what you bring", how=How.TICK),
    CardField("food_sold", "visit.food_sold", "There is something to eat to buy", how=How.TICK),
)
CROWD = (
    CardField(
        "indoors",
        "visit.indoors",
        "Where the visit happens",
        how=How.CHOICE,
        choices=(
            ("both", "both indoors and outdoors"),
            ("indoors", "indoors"),
            ("outdoors", "outdoors"),
        ),
    ),
    CardField(
        "who_comes",
        "visit.who_comes",
        "Who fills the place",
        "Decides how much fuller it is in school holidays.",
        How.CHOICE,
        choices=(
            ("families", "mostly families with children, as in a zoo or on a farm"),
            ("everybody", "people of all ages, as in a gallery or on a beach"),
        ),
    ),
    CardField(
        "busiest",
        "busiest_months",
        "Busiest months",
        "If you know them; otherwise the time of year is guessed from how far north or south it lies.",
        How.MONTHS,
    ),
    CardField(
        "school_groups",
        "opening.school_groups",
        "When school classes usually come, in term",
        "Written like opening hours, such as 'Tu-Fr 10:00-12:00'. Empty if you know of none.",
    ),
    CardField(
        "special_days",
        "special_days",
        "Days when more or fewer people come than usual",
        "One a line: the day as year-month-day, what happens, and how many times the usual number of "
        "visitors come (2 times if you leave it out).",
        How.SPECIAL_DAYS,
        example=SPECIAL_DAY_EXAMPLE,
    ),
)
CHILDREN = (
    CardField(
        "cautions",
        "visit.cautions",
        "What to watch there",
        "One caution a line: steps, open water, animals, allergens.",
        How.LINES,
    ),
    CardField(
        "questions", "visit.questions", "Questions for the children", "One question a line.", How.LINES
    ),
)
CONTACT = (
    CardField("web", "web", "Its own page on the internet"),
    CardField("telephone", "telephone", "Telephone"),
    CardField("notes", "notes", "Anything else you should know", how=How.NOTE),
    CardField("currency", "currency", "Currency of its prices", "Three letters, such as USD.", How.CODE),
)
FIELDS = (NAME, HOURS, *ENTRY, *VISIT, *CROWD, *CHILDREN, *CONTACT)
WHERE = tuple(where_on_record(None))
MORE_OF_VISIT = {"shows": "shows", "stays": "stays", "quiet": "quiet_hours"}
"""The fields that `visit_fields` draws, and what they are called within the card's `visit`."""
LABELS = {
    "id": "Name",
    "opening": "Opening hours",
    "where": "Location",
    "special_days": "Day when more or fewer people come",
    "visit.cautions": "Caution",
    "visit.questions": "Question",
    "opening.entry_times": "Entry time",
    **{field.path: field.label for field in FIELDS if field.how not in (How.LINES, How.TIMES)},
    **VISIT_LABELS,
    **where_labels("where"),
}
"""How the fields of a card beside its board are called, by their paths without indices."""
_BESIDE = {
    "id": "name",
    "opening": "hours",
    "where": "where",
    **{field.path: field.name for field in FIELDS},
    **{f"visit.{path}": name for name, path in MORE_OF_VISIT.items()},
}
"""Beside which field of the form a finding is told, by the beginning of its path."""


def field_beside(path: str) -> str:
    """The name of the field beside which a finding is told; empty for none."""
    path = re.sub(r"\[\d+\]", "", path)
    while path and path not in _BESIDE:
        path = path.rpartition(".")[0]
    return _BESIDE.get(path, "")
