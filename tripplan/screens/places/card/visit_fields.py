"""What a visit is like beyond the usual, as the fields of a form: shows, quiet hours, stays by age.

A show is one line, such as `Otter feeding: 11:00, 14:30; 20 min; Sa-Su`, with `; not for us` at its end where
nothing is to be planned around it. A stay is one line too, such as `under 3: 30 to 60 min`.
"""

import re
from collections.abc import Callable, Mapping
from typing import Any

import streamlit as st

from tripplan.documents.places.place import Show
from tripplan.errors import Finding
from tripplan.screens.widgets.fields import Fields, lines_in, put

SHOW_EXAMPLE = "Otter feeding: 11:00, 14:30; 20 min; Sa-Su"
NOT_FOR_US = "not for us"
"""Ends the line of a show that nothing is planned around."""
STAY_EXAMPLE = "under 3: 30 to 60 min"
FIRST_VISIT_FIELDS = {"shows": "", "stays": "", "quiet": ""}
VISIT_LABELS = {
    "visit.shows": "Show",
    "visit.stays": "Stay by age",
    "visit.quiet_hours": "Quiet hours",
}

_SHOW = re.compile(
    r"(?P<name>[^:]+):\s*(?P<starts>\d{1,2}:\d{2}(?:\s*,\s*\d{1,2}:\d{2})*)"
    r"(?:\s*;\s*(?P<minutes>\d+)\s*(?:min|minutes)?)?"
    rf"(?:\s*;(?!\s*{NOT_FOR_US})\s*(?P<days>[^;].*?))?(?:\s*;\s*(?P<unwanted>{NOT_FOR_US}))?"
)
_STAY = re.compile(
    r"(?P<ages>[^:]+):\s*(?P<shortest>\d+)\s*(?:to|-)\s*(?P<comfortable>\d+)\s*(?:min|minutes)?"
)


def visit_inputs(fields: Fields) -> None:
    """The fields themselves, folded away: most places need none of them."""
    with st.expander("Shows, quiet hours, stays by age"):
        st.text_area(
            "Shows at fixed times, one a line",
            key=fields.key("shows"),
            placeholder=SHOW_EXAMPLE,
            help="Its name, when it begins, how long it lasts (20 minutes if you leave it out), and on which "
            f"days if not on all. Nothing is planned around a show that ends with '; {NOT_FOR_US}'.",
            height="content",
        )
        st.text_input("Quiet hours", key=fields.key("quiet"), placeholder="Su 09:00-10:00")
        st.text_area(
            "Other stays for some ages, one a line",
            key=fields.key("stays"),
            placeholder=STAY_EXAMPLE,
            help="The shortest stay worth the drive, and a comfortable one. Whoever tires first decides.",
            height="content",
        )


def put_visit(values: dict[str, Any], typed: Mapping[str, Any]) -> list[Finding]:
    """Write the fields into a place card as its file would hold it.

    Args:
        values: the card; changed.
        typed: the fields.

    Returns:
        The lines that cannot be read.
    """
    findings: list[Finding] = []
    put(values, "visit.quiet_hours", typed["quiet"])
    _put_lines(values, "shows", typed["shows"], _SHOW, _show, SHOW_EXAMPLE, findings)
    _put_lines(values, "stays", typed["stays"], _STAY, _stay, STAY_EXAMPLE, findings)
    return findings


def _put_lines(
    values: dict[str, Any],
    name: str,
    text: str,
    form: re.Pattern[str],
    entry: Callable[[re.Match[str]], dict[str, Any]],
    example: str,
    findings: list[Finding],
) -> None:
    entries = []
    for line in lines_in(text):
        match = form.fullmatch(line.strip())
        if match is None:
            findings.append(Finding("", f"visit.{name}", line[:60], f"a line reads like '{example}'"))
        else:
            entries.append(entry(match))
    if entries:
        put(values, f"visit.{name}", entries)


def _show(match: re.Match[str]) -> dict[str, Any]:
    show: dict[str, Any] = {
        "name": match["name"].strip(),
        "starts": [f"{start.strip():0>5}" for start in match["starts"].split(",")],
    }
    if match["minutes"]:
        show["minutes"] = int(match["minutes"])
    if match["days"]:
        show["days"] = match["days"].strip()
    if match["unwanted"]:
        show["worth_it"] = False
    return show


def show_line(show: Show) -> str:
    """A show as the line that reads back as the same."""
    line = f"{show.name}: {', '.join(f'{start:%H:%M}' for start in show.starts)}; {show.minutes} min"
    if show.days:
        line += f"; {show.days}"
    return line if show.worth_it else f"{line}; {NOT_FOR_US}"


def _stay(match: re.Match[str]) -> dict[str, Any]:
    return {
        "ages": match["ages"].strip(),
        "shortest_minutes": int(match["shortest"]),
        "comfortable_minutes": int(match["comfortable"]),
    }
