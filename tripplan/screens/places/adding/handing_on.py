"""Handing what is known of a new place on to the form that asks for everything."""

from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any

import streamlit as st
from pydantic import TypeAdapter, ValidationError

from tripplan.documents.places.offers import Offer, Parking
from tripplan.screens.places.board.draft import begin_draft
from tripplan.screens.places.board.kinds import KINDS, Row
from tripplan.screens.places.board.rows import blank, row_of
from tripplan.screens.places.card.fields import HOURS
from tripplan.screens.widgets.fields import FieldValue, refill
from tripplan.screens.widgets.lasting import let_go, let_last
from tripplan.screens.widgets.view import View

_OFFERS: TypeAdapter[list[Offer]] = TypeAdapter(list[Offer])


def first_rows(today: date) -> tuple[Row, ...]:
    """The rows that a new card's board begins with."""
    return (
        blank(KINDS["ticket"], name="Adult", ages="13+"),
        blank(KINDS["ticket"], name="Child", ages="3-12"),
        blank(KINDS["ticket"], name="Small child", price="0", ages="under 3"),
        blank(KINDS["parking"]),
        blank(KINDS["prices_read"], on=today),
    )


def suggested_for(spot: str) -> Mapping[str, FieldValue]:
    """What the fields of the form say at first, beside what is usual."""
    found: Mapping[str, FieldValue] = st.session_state.get(f"{spot}_suggested", {})
    return found


def suggest(spot: str, values: Mapping[str, FieldValue], rows: Sequence[Row], *, way: str) -> None:
    """Fill the form with what is known, and open it.

    Args:
        spot: names the form.
        values: of its fields, by name; empty ones are left out.
        rows: of its price board.
        way: 'read' to show what was read and the few fields that are left, 'long' for everything.
    """
    refill(spot)
    begin_draft(spot, rows, 0, new=False)
    known = {name: value for name, value in values.items() if value}
    let_last({f"{spot}_suggested": known, f"{spot}_way": way})


def forget_suggested(spot: str) -> None:
    """Let the form begin with what is usual again."""
    let_go(f"{spot}_suggested", f"{spot}_way")


def all_fields(view: View, spot: str, raw: Mapping[str, Any], where: str) -> None:
    """Open the form that asks for everything with a card that may not be complete yet.

    Args:
        view: whose today dates the prices where nothing is said.
        spot: names the form.
        raw: the card as its file would hold it.
        where: where it is, as typed.
    """
    try:
        offers = [row_of(offer) for offer in _OFFERS.validate_python(list(raw.get("offers", ())))]
    except ValidationError:
        offers = []
    parking = raw.get("parking")
    rows = (
        first_rows(view.today)
        if not offers
        else (
            *offers,
            row_of(Parking.model_validate(parking)) if parking else blank(KINDS["parking"]),
            blank(KINDS["prices_read"], on=view.today, source="typed in by you"),
        )
    )
    values: dict[str, FieldValue] = {
        "name": str(raw.get("name", "")),
        "where": where,
        HOURS[0].name: str(raw.get("opening", {}).get("hours", "")),
    }
    suggest(spot, values, rows, way="long")
