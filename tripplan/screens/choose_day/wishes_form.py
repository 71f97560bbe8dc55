"""What a day should be like, as the parent picks it; kept from page to page."""

from collections.abc import Mapping
from datetime import time
from decimal import Decimal
from typing import Literal, TypeVar

import streamlit as st

from tripplan.documents.calendars.family_days import WEEKDAYS
from tripplan.documents.study.units import StudyUnit
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.planning.sweep.wishes import Weeks, Wishes
from tripplan.reading.typed.amounts import amount_in
from tripplan.screens.widgets.choices import keep
from tripplan.screens.widgets.view import View
from tripplan.values.weekday import Weekday

Picked = TypeVar("Picked")

_DRIVE = (None, 30, 45, 60, 75, 90, 120)
"""One drive at most [min]."""
_NAP = {0: "days-as-it-comes", 50: "days-nap-half", 75: "days-nap-three-quarters", 100: "days-nap-all"}
"""How much of the naps is kept at least [%]."""
_FULL = {None: 0, 5: 20, 10: 10, 20: 5, 33: 3}
"""The chance of a full house at most [%], and among how many days one then is."""
_AIR: Mapping[Literal["indoors", "outdoors"] | None, str] = {
    None: "days-anywhere",
    "indoors": "days-indoors",
    "outdoors": "days-outdoors",
}
_HOME = (None, *map(time, range(13, 19)))


def wishes_form(view: View, family: Family) -> None:
    """Ask what the day should be like; nothing at first. What is picked is kept as it is picked."""
    st.pills(
        say("days-weekdays"),
        WEEKDAYS,
        selection_mode="multi",
        default=_kept(view, "weekdays", list(WEEKDAYS)),
        format_func={
            name: wording.short_weekday(day) for name, day in zip(WEEKDAYS, Weekday, strict=True)
        }.__getitem__,
        key="weekdays",
        on_change=keep,
        args=(_name(view, "weekdays"), "weekdays"),
    )
    left, right = st.columns(2)
    with left:
        _ask_amount(view, family.household.currency)
        any_drive = say("days-drive-any")
        _ask(view, "drive", say("days-drive"), {m: wording.minutes(m) if m else any_drive for m in _DRIVE})
        _ask(view, "nap", say("days-nap"), {share: say(code) for share, code in _NAP.items()})
        _ask(view, "full", say("days-chance-packed"), {chance: _odds(of) for chance, of in _FULL.items()})
    with right:
        _ask(view, "air", say("days-where"), {air: say(code) for air, code in _AIR.items()})
        any_hour = say("days-home-any")
        _ask(
            view, "home", say("days-free-until"), {at: wording.clock(at) if at else any_hour for at in _HOME}
        )
        _ask(
            view,
            "unit",
            say("days-unit"),
            {None: say("days-unit-none"), **{name: name for name in _units(view, family)}},
        )
        _tick(view, "term", say("days-in-session"))
        _tick(view, "light", say("days-no-dark"))


def kept_wishes(view: View, family: Family) -> Wishes:
    """What the day should be like, by what was last picked. The page ends where an amount cannot be read."""
    return Wishes(
        weekdays=frozenset(_kept(view, "weekdays", list(WEEKDAYS))) or frozenset(WEEKDAYS),
        budget=_budget(_kept(view, "budget", "")),
        drive_minutes=_kept(view, "drive", at_first=None),
        nap_percent=_kept(view, "nap", at_first=0),
        full_house_percent=_kept(view, "full", at_first=None),
        air=_kept(view, "air", at_first=None),
        in_term=_kept(view, "term", at_first=False),
        in_daylight=_kept(view, "light", at_first=False),
        home_by=_kept(view, "home", at_first=None),
        weeks=_units(view, family).get(_kept(view, "unit", at_first=None) or ""),
    )


def _odds(in_all: int) -> str:
    return say("days-at-most-in", in_all=in_all) if in_all else say("days-as-it-comes")


def _units(view: View, family: Family) -> Mapping[str, Weeks]:
    kept = view.records.all(StudyUnit).values()
    return {unit.name: unit for unit in (Weeks.of(one.value, family.places) for one in kept)}


def _name(view: View, wish: str) -> str:
    return f"wished_{wish}_{view.which}"


def _kept(view: View, wish: str, at_first: Picked) -> Picked:
    kept: Picked = st.session_state.setdefault(_name(view, wish), at_first)
    return kept


def _ask(view: View, wish: str, label: str, choices: Mapping[Picked, str]) -> None:
    """Ask for one of some values, by their words; the first counts where nothing was picked."""
    values = list(choices)
    kept = _kept(view, wish, values[0])
    st.selectbox(
        label,
        values,
        index=values.index(kept) if kept in values else 0,
        format_func=choices.__getitem__,
        key=f"wish_{wish}",
        on_change=keep,
        args=(_name(view, wish), f"wish_{wish}"),
    )


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
        say("days-budget", currency=currency),
        value=_kept(view, "budget", ""),
        placeholder=say("days-any-amount"),
        key="wish_budget",
        on_change=keep,
        args=(_name(view, "budget"), "wish_budget"),
    )


def _budget(text: str) -> Decimal | None:
    if not text.strip():
        return None
    amount = amount_in(text.strip())
    if amount is None or amount.startswith("-"):
        st.error(say("days-bad-amount"))
        st.stop()
    return Decimal(amount)
