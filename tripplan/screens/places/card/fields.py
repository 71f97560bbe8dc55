"""The fields of a place card beside its price board, in the order of the screen."""

import re

from tripplan.documents.places.place import Opening, Place, Visit
from tripplan.screens.forms.questions import Question, questions
from tripplan.screens.widgets.locations.where_form import where_labels, where_on_record

HOURS_EXAMPLES = (
    ("Tu-Su 10:00-17:00", "every day but Monday"),
    ("Apr-Oct Mo-Su 09:00-18:00; Nov-Mar Sa-Su 10:00-16:00", "two seasons"),
    ("Mo-Sa 10:00-17:00; PH off; Dec 24-25 off", "closed on Sundays, public holidays and at Christmas"),
)
_FILLING = ("kind", "indoors", "who_comes", "fullest_days")
"""What of a visit decides how full the place is."""


def _of_visit(*names: str, leaving_out: tuple[str, ...] = ()) -> tuple[Question, ...]:
    return questions(Visit, *names, under="visit", leaving_out=leaving_out, short=True)


NAME = questions(Place, "name")
HOURS = questions(Opening, "hours", under="opening", short=True)
ENTRY = questions(Opening, under="opening", leaving_out=("hours", "school_groups"), short=True)
RARE = tuple(one for one in _of_visit() if one.asked.rare)
VISIT = tuple(one for one in _of_visit(leaving_out=_FILLING) if not one.asked.rare)
CROWD = (
    *_of_visit(*_FILLING),
    *questions(Place, "busiest_months"),
    *questions(Opening, "school_groups", under="opening", short=True),
    *questions(Place, "special_days"),
)
_ABOVE = ("id", "name", "busiest_months", "special_days")
REST = (
    *questions(Place, leaving_out=(*_ABOVE, "currency"), plain=True),
    *questions(Place, "currency"),
)
CARD = (*NAME, *HOURS, *ENTRY, *VISIT, *RARE, *CROWD, *REST)
WHERE = tuple(where_on_record(None))
CALLED = {**where_labels("where"), "id": "Name"}
"""What the page calls the fields that stand for several of a card's own."""
_BESIDE = {
    "id": "name",
    "opening": "hours",
    "where": "where",
    **{question.path: question.name for question in CARD},
}
"""Beside which field of the form a finding is told, by the beginning of its path."""


def field_beside(path: str) -> str:
    """The name of the field beside which a finding is told; empty for none."""
    path = re.sub(r"\[\d+\]", "", path)
    while path and path not in _BESIDE:
        path = path.rpartition(".")[0]
    return _BESIDE.get(path, "")
