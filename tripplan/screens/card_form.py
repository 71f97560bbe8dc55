"""A place card without writing TOML: a form whose answers go through the same checks as a card's file."""

import re
import unicodedata
from collections.abc import Mapping
from typing import Any

import pandas as pd
import streamlit as st

from tripplan.errors import Finding, Weight
from tripplan.files.place_card import read_place_card
from tripplan.files.toml_text import write_toml
from tripplan.planning.outing import Family
from tripplan.planning.place import Place
from tripplan.records.store import Kept
from tripplan.screens.fields import Fields, FieldValue, filled, lines_in, listed_in, put, refill
from tripplan.screens.frame import View
from tripplan.screens.notices import named, refuse, show_notice
from tripplan.screens.saving import save_all
from tripplan.screens.where_form import where_inputs, where_labels, where_on_record, where_values

_SPOT = "new_card"
_PAGE = "places"
_TURN = "new_card_turn"
_LONGEST_ID = 60
_FIRST_TICKETS = (
    {"name": "Adult", "price": "", "ages": "13+"},
    {"name": "Child", "price": "", "ages": "3-12"},
    {"name": "Small child", "price": "0", "ages": "under 3"},
)
_COLUMNS = ("name", "price", "ages")
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
    "opening": "Opening hours",
    "opening.hours": "Opening hours",
    "opening.last_entry_minutes_before_close": "Last entry, in minutes before closing",
    "offers": "Tickets",
    "offers.price": "price",
    "offers.ages": "ages",
    "offers.name": "name",
    "offers.seats": "seats",
    "offers.seats.count": "how many",
    "offers.seats.ages": "ages",
    "parking.price": "Parking",
    "prices_read": "Prices",
    "prices_read.source": "Where the prices were read",
    "prices_read.on": "When the prices were read",
    **where_labels("where"),
}


def card_form(view: View, family: Family, cards: Mapping[str, Kept[Place]]) -> None:
    """Ask for everything a simple card needs, and make the card.

    Args:
        view: whose places.
        family: gives the currency.
        cards: what is on record, by id.
    """
    with st.expander("By a form", key="open_card_form"):
        turn = st.session_state.setdefault(_TURN, 0)
        fields = filled(_SPOT, _on_record(view))
        with st.form("new_card_form"):
            _inputs(fields, family.household.currency, turn)
            st.form_submit_button(
                "Add this place",
                key="save_new_card",
                type="primary",
                on_click=_save,
                args=(view, family, cards, fields, turn),
            )
        show_notice(_SPOT)


def _on_record(view: View) -> dict[str, FieldValue]:
    return {
        "name": "",
        "topics": "",
        "hours": "",
        "last_entry": "",
        "cautions": "",
        "source": "",
        **where_on_record(None),
        "shortest": "60",
        "comfortable": "120",
        "parking": "",
        "pushchairs": True,
        "own_food": True,
        "bundle": "",
        "bundle_price": "",
        "bundle_adults": "2",
        "bundle_children": "3",
        "bundle_ages": "under 18",
        "read_on": view.today,
        "replace": False,
    }


def _inputs(fields: Fields, currency: str, turn: int) -> None:
    def text(name: str, label: str, explained: str | None = None) -> None:
        st.text_input(label, key=fields.key(name), help=explained)

    text("name", "Name of the place")
    where_inputs(fields, with_address=True)
    text("topics", "What can be studied there", "With commas between.")
    st.text_input("Opening hours", key=fields.key("hours"), placeholder=_HOURS_EXAMPLES[0][0])
    st.markdown("\n".join(f"- `{written}` {meant}" for written, meant in _HOURS_EXAMPLES))
    text("last_entry", LABELS["opening.last_entry_minutes_before_close"], "Empty if up to closing time.")
    text("shortest", LABELS["visit.shortest_minutes"])
    text("comfortable", LABELS["visit.comfortable_minutes"])
    st.markdown(
        f"**Tickets.** Prices in {currency}, such as 12.50; 0 is free. Both ends of an age band count."
    )
    st.data_editor(
        pd.DataFrame(_FIRST_TICKETS, columns=list(_COLUMNS)),
        num_rows="dynamic",
        hide_index=True,
        column_config={
            "name": st.column_config.TextColumn("name", width="small"),
            "price": st.column_config.TextColumn("price", width="small"),
            "ages": st.column_config.TextColumn("ages", width="small", help="3-12, 65+, under 2, any"),
        },
        key=f"new_card_tickets_{turn}",
        alt="The tickets: name, price and ages of each",
    )
    st.markdown("**A family ticket**, if there is one")
    text("bundle", "Name of the family ticket")
    text("bundle_price", "Its price")
    text("bundle_adults", "It lets in so many adults")
    text("bundle_children", "and so many children")
    text("bundle_ages", "who are", "An age band such as 3-15 or under 18.")
    text("parking", "Parking, for the car", "0 if it is free, empty if you do not know.")
    st.checkbox("A pushchair can go all the way round", key=fields.key("pushchairs"))
    st.checkbox("You may eat what you bring", key=fields.key("own_food"))
    st.text_area(
        "What to watch there",
        key=fields.key("cautions"),
        help="One caution a line: steps, open water, animals, allergens.",
        height="content",
    )
    text("source", "Where did you read the prices?", "The place's own page, the board at the till, a call.")
    st.date_input("When did you read them?", key=fields.key("read_on"))
    st.checkbox("If I already have a place of that name, replace it", key=fields.key("replace"))


def _save(view: View, family: Family, cards: Mapping[str, Kept[Place]], fields: Fields, turn: int) -> None:
    typed = fields.typed()
    tickets = edited_rows(_FIRST_TICKETS, st.session_state[f"new_card_tickets_{turn}"])
    values, found = card_values(typed, tickets, family.household.currency)
    kept = cards.get(str(values.get("id")))
    if kept is not None and not typed["replace"]:
        message = f"there is '{kept.value.name}' already; tick below to replace it, or change the name"
        found.append(Finding("", "name", typed["name"], message))
    read = read_place_card(write_toml(values), "", view.today)
    if read.value is None or found:
        faults = [finding for finding in read.findings if finding.weight is Weight.FAULT]
        refuse(_SPOT, findings=_in_words([*found, *faults], values))
        return
    if save_all(view, _PAGE, [(read.value, kept.revision if kept else 0)], f"{read.value.name} is added."):
        refill(_SPOT)
        st.session_state[_TURN] += 1


def _in_words(findings: list[Finding], values: dict[str, Any]) -> tuple[Finding, ...]:
    offers = values.get("offers", [])

    def offer(index: int) -> str:
        called = offers[index].get("name", "") if index < len(offers) else ""
        return f"Ticket {index + 1} ({called})" if called else f"Ticket {index + 1}"

    shown = [finding for finding in findings if finding.field != "id" or values.get("name")]
    return named(shown, LABELS, {"offers": offer})


def edited_rows(first: tuple[dict[str, str], ...], edits: Mapping[str, Any]) -> list[dict[str, str]]:
    """The rows of a table after the parent has changed it, without empty ones.

    Args:
        first: the rows as they were drawn.
        edits: what the table's widget says: `edited_rows`, `added_rows` and `deleted_rows`.
    """
    rows = [{**row, **edits["edited_rows"].get(index, {})} for index, row in enumerate(first)]
    kept = [row for index, row in enumerate(rows) if index not in edits["deleted_rows"]]
    told = [
        {name: str(row.get(name) or "").strip() for name in _COLUMNS} for row in (*kept, *edits["added_rows"])
    ]
    return [row for row in told if any(row.values())]


def card_values(
    typed: Mapping[str, Any], tickets: list[dict[str, str]], currency: str
) -> tuple[dict[str, Any], list[Finding]]:
    """A place card as its file would hold it, and what the form itself could not read.

    Args:
        typed: the fields of the form.
        tickets: name, price and ages of each, as texts.
        currency: ISO 4217 code of the prices.
    """
    where, found = where_values(dict(typed), None, "where")
    values: dict[str, Any] = {"format": 1, "currency": currency, "where": where}
    put(values, "id", place_id(typed["name"]))
    for path, name in (
        ("name", "name"),
        ("visit.shortest_minutes", "shortest"),
        ("visit.comfortable_minutes", "comfortable"),
        ("opening.hours", "hours"),
        ("opening.last_entry_minutes_before_close", "last_entry"),
        ("parking.price", "parking"),
        ("prices_read.source", "source"),
    ):
        put(values, path, typed[name])
    put(values, "visit.topics", listed_in(typed["topics"]))
    put(values, "visit.cautions", lines_in(typed["cautions"]))
    put(values, "visit.pushchairs", typed["pushchairs"])
    put(values, "visit.own_food", typed["own_food"])
    put(values, "prices_read.on", typed["read_on"] or "")
    values["offers"] = [{name: text for name, text in row.items() if text} for row in tickets]
    if typed["bundle"].strip() or typed["bundle_price"].strip():
        values["offers"].append(_bundle(typed))
    return values, found


def _bundle(typed: Mapping[str, Any]) -> dict[str, Any]:
    bundle: dict[str, Any] = {"kind": "bundle", "seats": []}
    put(bundle, "name", typed["bundle"])
    put(bundle, "price", typed["bundle_price"])
    for count, ages in ((typed["bundle_adults"], "18+"), (typed["bundle_children"], typed["bundle_ages"])):
        if count.strip() not in ("", "0"):
            seat: dict[str, Any] = {}
            put(seat, "count", count)
            put(seat, "ages", ages)
            bundle["seats"].append(seat)
    return bundle


def place_id(name: str) -> str:
    """An id for a place of that name, such as 'muller-s-farm' for 'Müller's Farm'."""
    letters = unicodedata.normalize("NFKD", name).encode("ascii", "ignore").decode().lower()
    words = re.sub(r"[^a-z0-9]+", "-", letters).strip("-")[:_LONGEST_ID].strip("-")
    return words or ("place" if name.strip() else "")
