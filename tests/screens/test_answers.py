from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest
import streamlit as st

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.calendars.local_days import LocalDay
from tripplan.documents.logbook.crowd_note import CrowdNote, Fullness
from tripplan.documents.places.place import Place
from tripplan.planning.family.family import Family
from tripplan.screens.widgets import answers
from tripplan.services import open_services

TODAY = date(2026, 11, 25)
SPAN = DateSpan(first=date(2026, 12, 1), last=date(2026, 12, 10))


@pytest.fixture
def family(tmp_path: Path) -> Family:
    """The demo family, with no answers kept."""
    st.cache_resource.clear()
    found = open_services({"TRIPPLAN_DATA": str(tmp_path), "TRIPPLAN_TODAY": TODAY.isoformat()}).family()
    assert found is not None
    return found


def with_first_place(family: Family, place: Place) -> Family:
    """The same family with its first place changed."""
    return Family(family.household, (place, *family.places[1:]), family.school_calendars)


def test_the_same_question_is_worked_out_once(family: Family) -> None:
    """Equal data give the very same answer back, even when they were read anew."""
    names = [member.name for member in family.household.members]
    again = Family(**vars(family))
    first = answers.unit_days(family, names, family.places[:1], SPAN, TODAY)
    assert answers.unit_days(again, list(names), again.places[:1], SPAN, TODAY) is first


def test_any_change_in_the_data_is_a_new_question(family: Family) -> None:
    """A changed price, party, span or date never meets an old answer."""
    names = [member.name for member in family.household.members]
    first = answers.unit_days(family, names, family.places[:1], SPAN, TODAY)
    cheaper = family.places[0].model_copy(update={"notes": "prices were read again"})
    fair = LocalDay(name="fair", first=SPAN.first, last=SPAN.last, place=family.places[0].id)
    note = CrowdNote(family.places[0].id, date(2026, 11, 20), Fullness.PACKED)
    longer = DateSpan(first=SPAN.first, last=date(2026, 12, 11))
    others = (
        answers.unit_days(with_first_place(family, cheaper), names, (cheaper,), SPAN, TODAY),
        answers.unit_days(family, names[:-1], family.places[:1], SPAN, TODAY),
        answers.unit_days(family, names, family.places[:1], longer, TODAY),
        answers.unit_days(family, names, family.places[1:2], SPAN, TODAY),
        answers.unit_days(family, names, family.places[:1], SPAN, date(2026, 11, 26)),
        answers.unit_days(replace(family, local_days=(fair,)), names, family.places[:1], SPAN, TODAY),
        answers.unit_days(replace(family, crowd_notes=(note,)), names, family.places[:1], SPAN, TODAY),
    )
    assert all(other is not first for other in others)


def test_a_swept_span_is_worked_out_once(family: Family) -> None:
    """Equal questions share one table; another span is a new question."""
    names = [member.name for member in family.household.members]
    first = answers.swept(family, names, family.places[:2], SPAN, TODAY)
    assert answers.swept(family, list(names), family.places[:2], SPAN, TODAY) is first
    longer = DateSpan(first=SPAN.first, last=date(2026, 12, 11))
    assert answers.swept(family, names, family.places[:2], longer, TODAY) is not first
