"""What a day should be like, as the parent picks it; kept from page to page."""

from collections.abc import Mapping
from datetime import time
from decimal import Decimal
from typing import Literal, TypeVar

import streamlit as st

from tripplan.documents.calendars.family_days import WEEKDAYS
from tripplan.documents.model import Weekday
from tripplan.documents.study.units import StudyUnit
from tripplan.planning.family.family import Family
from tripplan.planning.sweep.wishes import Weeks, Wishes
from tripplan.reading.typed_amounts import amount_in
from tripplan.screens.widgets.choices import keep
from tripplan.screens.widgets.view import View

Picked = TypeVar("Picked")

_DAYS: Mapping[str, Weekday] = dict(
    zip(("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun"), WEEKDAYS, strict=True)
)
_DRIVE: Mapping[str, int | None] = {
    "as long as it takes": None,
    "30 min": 30,
    "45 min": 45,
    "1 h": 60,
    "1 h 15 min": 75,
    "1 h 30 min": 90,
    "2 h": 120,
}
_NAP: Mapping[str, int] = {"as it comes": 0, "half of it": 50, "three quarters": 75, "all of it": 100}
_FULL: Mapping[str, int | None] = {
    "as it comes": None,
    "at most 1 in 20": 5,
    "at most 1 in 10": 10,
    "at most 1 in 5": 20,
    "at most 1 in 3": 33,
}
_AIR: Mapping[str, Literal["indoors", "outdoors"] | None] = {
    "anywhere": None,
    "indoors, or both": "indoors",
    "outdoors, or both": "outdoors",
}
_HOME: Mapping[str, time | None] = {
    "as the household says": None,
    "1:00 PM": time(13),
    "2:00 PM": time(14),
    "3:00 PM": time(15),
    "4:00 PM": time(16),
    "5:00 PM": time(17),
    "6:00 PM": time(18),
}
_ANY_TIME = "none in particular"


def wishes_form(view: View, family: Family) -> None:
    """Ask what the day should be like; nothing at first. What is picked is kept as it is picked."""
    st.pills(
        "On which weekdays?",
        list(_DAYS),
        selection_mode="multi",
        default=_kept(view, "weekdays", list(_DAYS)),
        key="weekdays",
        on_change=keep,
        args=(_name(view, "weekdays"), "weekdays"),
    )
    left, right = st.columns(2)
    with left:
        _ask_amount(view, family.household.currency)
        _ask(view, "drive", "One drive takes at most", _DRIVE)
        _ask(view, "nap", "Of the naps, keep at least", _NAP)
        _ask(view, "full", "Chance that it is packed", _FULL)
    with right:
        _ask(view, "air", "Where to be", _AIR)
        _ask(view, "home", "Home again by", _HOME)
        _ask(view, "unit", "Close which stretch of study?", _units(view, family))
        _tick(view, "term", "Only while most schools nearby are in session")
        _tick(view, "light", "No driving in the dark")


def kept_wishes(view: View, family: Family) -> Wishes:
    """What the day should be like, by what was last picked. The page ends where an amount cannot be read."""
    days = _kept(view, "weekdays", list(_DAYS))
    return Wishes(
        weekdays=frozenset(_DAYS[day] for day in days) or frozenset(WEEKDAYS),
        budget=_budget(_kept(view, "budget", "")),
        drive_minutes=_picked(view, "drive", _DRIVE),
        nap_percent=_picked(view, "nap", _NAP),
        full_house_percent=_picked(view, "full", _FULL),
        air=_picked(view, "air", _AIR),
        in_term=_kept(view, "term", at_first=False),
        in_daylight=_kept(view, "light", at_first=False),
        home_by=_picked(view, "home", _HOME),
        weeks=_picked(view, "unit", _units(view, family)),
    )


def _units(view: View, family: Family) -> Mapping[str, Weeks | None]:
    kept = view.records.all(StudyUnit).values()
    units = (Weeks.of(one.value, family.places) for one in kept)
    return {_ANY_TIME: None, **{unit.name: unit for unit in units}}


def _name(view: View, wish: str) -> str:
    return f"wish_{wish}_{view.which}"


def _kept(view: View, wish: str, at_first: Picked) -> Picked:
    kept: Picked = st.session_state.setdefault(_name(view, wish), at_first)
    return kept


def _ask(view: View, wish: str, label: str, choices: Mapping[str, Picked]) -> None:
    labels = list(choices)
    kept = _kept(view, wish, labels[0])
    st.selectbox(
        label,
        labels,
        index=labels.index(kept) if kept in labels else 0,
        key=f"wish_{wish}",
        on_change=keep,
        args=(_name(view, wish), f"wish_{wish}"),
    )


def _picked(view: View, wish: str, choices: Mapping[str, Picked]) -> Picked:
    first = next(iter(choices))
    return choices.get(_kept(view, wish, first), choices[first])


def _tick(view: View, wish: str, label: str) -> None:
    st.toggle(
        label,
        value=_kept(view, wish, at_first=False),
        key=f"wish_{wish}",
        on_change=keep,
        args=(_name(view, wish), f"wish_{wish}"),
    )


def _ask_amount(view: View, currency: str) -> None:
    st.text_input(
        f"Spend in all at most [{currency}]",
        value=_kept(view, "budget", ""),
        placeholder="any amount",
        key="wish_budget",
        on_change=keep,
        args=(_name(view, "budget"), "wish_budget"),
    )


def _budget(text: str) -> Decimal | None:
    if not text.strip():
        return None
    amount = amount_in(text.strip())
    if amount is None or amount.startswith("-"):
        st.error("An amount reads like 120, $120 or 9.50.")
        st.stop()
    return Decimal(amount)
