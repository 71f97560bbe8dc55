"""Calendar files that the parent brings: read once within the days that matter, with every finding."""

from datetime import date
from zoneinfo import ZoneInfo

import streamlit as st

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.files.calendar_reader.content import CalendarContent
from tripplan.files.calendar_reader.reading import read_calendar
from tripplan.files.demo import READ_AHEAD, READ_BACK
from tripplan.files.toml.reading_result import ReadResult
from tripplan.planning.family.family import Family
from tripplan.screens.widgets.view import View

_FILES_KEPT = 4


def calendar_uploaded(
    view: View, family: Family, label: str, key: str, own_addresses: tuple[str, ...] = ()
) -> tuple[str, ReadResult[CalendarContent]] | None:
    """Ask for a calendar file and read it.

    Args:
        view: its today is the middle of the days that matter.
        family: times without a zone are by its clock.
        label: what is asked for.
        key: of the widget.
        own_addresses: e-mail addresses by which a declined invitation is known.

    Returns:
        The file's name and what was read of it; None while there is no file.
    """
    file = st.file_uploader(label, type=["ics"], key=key)
    if file is None:
        return None
    window = window_around(view.today)
    zone = family.household.home.zone.key
    return file.name, _read(file.getvalue(), file.name, window.first, window.last, zone, own_addresses)


def window_around(today: date) -> DateSpan:
    """The days that matter: a year back, eighteen months ahead."""
    return DateSpan(first=today - READ_BACK, last=today + READ_AHEAD)


@st.cache_resource(max_entries=_FILES_KEPT, show_spinner="Reading the calendar ...")
def _read(
    data: bytes, file: str, first: date, last: date, zone: str, own_addresses: tuple[str, ...]
) -> ReadResult[CalendarContent]:
    window = DateSpan(first=first, last=last)
    return read_calendar(data, file, window, ZoneInfo(zone), own_addresses=own_addresses)
