"""A place card without writing TOML: a form whose answers go through the same checks as a card's file."""

import re
import unicodedata
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import date
from typing import Any

import streamlit as st

from tripplan.errors import Finding, Weight
from tripplan.files.place_card import read_place_card
from tripplan.files.reading_result import Read
from tripplan.files.toml_text import write_toml
from tripplan.planning import wording
from tripplan.planning.outing import Family
from tripplan.planning.place import LONGEST_ID, Place
from tripplan.records.store import Kept
from tripplan.screens.places.board_editor import (
    begin_draft,
    collect,
    draft_on,
    draw_board,
    findings_in_words,
    forget_draft,
    known_to,
    show_faults,
    to_put_right,
)
from tripplan.screens.places.board_rows import PARKING, PRICES_READ, TICKET, Row, blank, raw_board
from tripplan.screens.places.for_us import show_for_us
from tripplan.screens.places.visit_fields import (
    FIRST_VISIT_FIELDS,
    VISIT_LABELS,
    put_visit,
    visit_inputs,
)
from tripplan.screens.widgets.fields import Fields, FieldValue, lines_in, listed_in, put
from tripplan.screens.widgets.frame import View
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse, show_notice
from tripplan.screens.widgets.saving import save_all, take_back_button
from tripplan.screens.widgets.where_form import (
    where_inputs,
    where_labels,
    where_message,
    where_on_record,
    where_values,
)
from tripplan.screens.widgets.where_lookup import where_lookup

_HOURS_EXAMPLES = (
    ("Tu-Su 10:00-17:00", "every day but Monday"),
    ("Apr-Oct Mo-Su 09:00-18:00; Nov-Mar Sa-Su 10:00-16:00", "two seasons"),
    ("Mo-Sa 10:00-17:00; PH off; Dec 24-25 off", "closed on Sundays, public holidays and at Christmas"),
)

LABELS = {
    "id": "Name",
    "name": "Name",
    "visit.topics": "What can be studied there",
    "visit.shortest_minutes": "Shortest stay worth the drive, in minutes",
    "visit.comfortable_minutes": "A comfortable stay, in minutes",
    "visit.cautions": "Caution",
    "busiest_months": "Busiest months",
    "opening": "Opening hours",
    "opening.hours": "Opening hours",
    "opening.last_entry_minutes_before_close": "Last entry, in minutes before closing",
    "opening.school_groups": "When school classes usually come, in term",
    **VISIT_LABELS,
    **where_labels("where"),
}

_FIRST_FIELDS: dict[str, FieldValue] = {
    "name": "",
    "topics": "",
    "hours": "",
    "last_entry": "",
    "cautions": "",
    **where_on_record(None),
    "shortest": "60",
    "comfortable": "120",
    "indoors": "both",
    "who_comes": "families",
    "busiest": [],
    "school_groups": "",
    "pushchairs": True,
    "own_food": True,
    **FIRST_VISIT_FIELDS,
    "replace": False,
}
_MONTHS = [wording.month(number) for number in range(1, 13)]
_INDOORS = {"both": "both indoors and outdoors", "indoors": "indoors", "outdoors": "outdoors"}
_WHO_COMES = {
    "families": "mostly families with children, as in a zoo or on a farm",
    "everybody": "people of all ages, as in a gallery or on a beach",
}


def first_rows(today: date) -> tuple[Row, ...]:
    """The rows that a new card's board begins with."""
    return (
        blank(TICKET, name="Adult", ages="13+"),
        blank(TICKET, name="Child", ages="3-12"),
        blank(TICKET, name="Small child", price="0", ages="under 3"),
        blank(PARKING),
        blank(PRICES_READ, on=today),
    )


def card_form(view: View, family: Family, cards: Mapping[str, Kept[Place]]) -> None:
    """Ask for everything a card needs, and make the card.

    Args:
        view: whose places.
        family: gives the currency; for it the prices are worked out.
        cards: what is on record, by id.
    """
    with st.expander("By a form", key="open_card_form"):
        spot = f"new_card_{view.which}"
        _form(view, family, cards, spot)
        show_notice(spot)
        take_back_button(view, spot)


@st.fragment
def _form(view: View, family: Family, cards: Mapping[str, Kept[Place]], spot: str) -> None:
    fields = Fields(spot, tuple(_FIRST_FIELDS))
    currency = family.household.currency
    kept = st.session_state.setdefault(f"{spot}_typed", dict(_FIRST_FIELDS))
    for name, value in kept.items():
        # A widget's own state is dropped when its page is left, so it is filled where it is missing.
        st.session_state.setdefault(fields.key(name), value)
    _inputs(fields)
    where_lookup(view, fields)
    st.markdown("**What it costs**")
    draft = draft_on(spot) or begin_draft(spot, first_rows(view.today), 0, new=True)
    left, right = st.columns([3, 2])
    with left:
        slots = draw_board(spot, draft, known_to(family), currency)
    st.session_state[f"{spot}_typed"] = fields.typed()
    values, _ = card_values(fields.typed(), draft.as_rows(), currency)
    board = read_with_stand_ins(values, family, view.today)
    show_faults(slots, draft, board.findings, board.value)
    with right, st.container(border=True):
        if board.value is None:
            said = to_put_right(draft, board.findings)
        else:
            if board.value.opening.hours != values.get("opening", {}).get("hours"):
                st.caption("Until the opening hours can be read, every day from ten to five counts.")
            said = show_for_us(view, family, board.value, spot)
    st.caption(plain(said))
    st.checkbox("If I already have a place of that name, replace it", key=fields.key("replace"))
    # What this button does is seen outside this part of the page too.
    if st.button(
        "Add this place",
        key="save_new_card",
        type="primary",
        on_click=_save,
        args=(view, family, cards, fields),
    ):
        st.rerun()


def _inputs(fields: Fields) -> None:
    def text(name: str, label: str, explained: str | None = None) -> None:
        st.text_input(label, key=fields.key(name), help=explained)

    text("name", "Name of the place")
    where_inputs(fields, with_address=True, with_metropolitan=True)
    st.text_input("Opening hours", key=fields.key("hours"), placeholder=_HOURS_EXAMPLES[0][0])
    st.markdown("\n".join(f"- `{written}` {meant}" for written, meant in _HOURS_EXAMPLES))
    text("last_entry", LABELS["opening.last_entry_minutes_before_close"], "Empty if up to closing time.")
    text("topics", "What can be studied there", "With commas between.")
    text("shortest", LABELS["visit.shortest_minutes"])
    text("comfortable", LABELS["visit.comfortable_minutes"])
    st.checkbox("A pushchair can go all the way round", key=fields.key("pushchairs"))
    st.checkbox("You may eat what you bring", key=fields.key("own_food"))
    _what_fills_it(fields)
    st.text_area(
        "What to watch there",
        key=fields.key("cautions"),
        help="One caution a line: steps, open water, animals, allergens.",
        height="content",
    )
    visit_inputs(fields)


def _what_fills_it(fields: Fields) -> None:
    """What the chance of a full house goes by, besides the calendar."""
    st.selectbox(
        "Where the visit happens", list(_INDOORS), format_func=_INDOORS.__getitem__, key=fields.key("indoors")
    )
    st.selectbox(
        "Who fills the place",
        list(_WHO_COMES),
        format_func=_WHO_COMES.__getitem__,
        key=fields.key("who_comes"),
        help="Decides how much fuller it is in school holidays.",
    )
    st.multiselect(
        LABELS["busiest_months"],
        _MONTHS,
        key=fields.key("busiest"),
        help="If you know them; otherwise the time of year is guessed from how far north or south it lies.",
    )
    st.text_input(
        LABELS["opening.school_groups"],
        key=fields.key("school_groups"),
        help="Written like opening hours, such as 'Tu-Fr 10:00-12:00'. Empty if you know of none.",
    )


def _save(view: View, family: Family, cards: Mapping[str, Kept[Place]], fields: Fields) -> None:
    spot = fields.form
    typed, draft = fields.typed(), draft_on(spot)
    if draft is None:
        return
    collect(spot, draft)
    draft.pressed = True
    values, found = card_values(typed, draft.as_rows(), family.household.currency)
    kept = cards.get(str(values.get("id")))
    if kept is not None and not typed["replace"]:
        message = f"there is '{kept.value.name}' already; tick below to replace it, or change the name"
        found.append(Finding("", "name", typed["name"], message))
    read = read_place_card(write_toml(values), "", view.today)
    if read.value is None or found:
        told = [
            replace(finding, message=where_message(finding.message))
            for finding in (*found, *read.findings)
            if _worth_telling(finding, typed)
        ]
        refuse(spot, findings=findings_in_words(draft, told, LABELS))
        return
    if save_all(view, spot, [(read.value, kept.revision if kept else 0)], f"{read.value.name} is added."):
        forget_draft(spot)
        st.session_state.pop(f"{spot}_typed", None)
        for name in fields.names:
            st.session_state.pop(fields.key(name), None)


def _worth_telling(finding: Finding, typed: Mapping[str, Any]) -> bool:
    """An id is made from the name, so that a missing name would be told twice."""
    return finding.field != "id" or bool(typed["name"].strip())


def card_values(
    typed: Mapping[str, Any], rows: Sequence[Row], currency: str
) -> tuple[dict[str, Any], list[Finding]]:
    """A place card as its file would hold it, and what the form itself could not read.

    Args:
        typed: the fields of the form.
        rows: the price board.
        currency: ISO 4217 code of the prices.
    """
    where, found = where_values(dict(typed), None, "where")
    values: dict[str, Any] = {"format": 1, "currency": currency, "where": where, **raw_board(rows)}
    put(values, "id", place_id(typed["name"]))
    for path, name in (
        ("name", "name"),
        ("visit.shortest_minutes", "shortest"),
        ("visit.comfortable_minutes", "comfortable"),
        ("opening.hours", "hours"),
        ("opening.last_entry_minutes_before_close", "last_entry"),
        ("opening.school_groups", "school_groups"),
        ("visit.indoors", "indoors"),
        ("visit.who_comes", "who_comes"),
    ):
        put(values, path, typed[name])
    put(values, "visit.topics", listed_in(typed["topics"]))
    put(values, "visit.cautions", lines_in(typed["cautions"]))
    put(values, "busiest_months", sorted(_MONTHS.index(month) + 1 for month in typed["busiest"]))
    put(values, "visit.pushchairs", typed["pushchairs"])
    put(values, "visit.own_food", typed["own_food"])
    found += put_visit(values, typed)
    return values, found


def read_with_stand_ins(values: Mapping[str, Any], family: Family, today: date) -> Read[Place]:
    """A card whose board may be complete before the rest is: what is not, is replaced for the time being.

    Args:
        values: the card as its file would hold it.
        family: the location stands in at its home, by whose clock the place is then open from ten to five.
        today: on which the prices were read, where that is not said yet.
    """
    read = read_place_card(write_toml(values), "", today)
    wrong = {
        re.split(r"[.\[]", finding.field, maxsplit=1)[0]
        for finding in read.findings
        if finding.weight is Weight.FAULT
    }
    stand_ins: dict[str, Any] = {
        "id": "not-named-yet",
        "name": "not named yet",
        "where": family.household.home.model_dump(mode="json", exclude_none=True),
        "opening": {"hours": "Mo-Su 10:00-17:00"},
        "visit": {},
        "prices_read": {"on": today, "source": "not said yet"},
    }
    if not wrong & stand_ins.keys():
        return read
    mended = {**values, **{name: stand_ins[name] for name in wrong if name in stand_ins}}
    again = read_place_card(write_toml(mended), "", today)
    return Read(again.value, read.findings)


def place_id(name: str) -> str:
    """An id for a place of that name, such as 'muller-s-farm' for 'Müller's Farm'."""
    letters = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    words = re.sub(r"[^a-z0-9]+", "-", letters).strip("-")[:LONGEST_ID].strip("-")
    return words or ("place" if name.strip() else "")
