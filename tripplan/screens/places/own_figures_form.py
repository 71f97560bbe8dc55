"""The parent's own figures for a place: which add-ons the family takes, tolls, what else is paid there."""

from collections.abc import Iterator, Mapping
from functools import partial
from typing import Any

import streamlit as st

from tripplan.documents.places.own_figures import OwnFigures
from tripplan.documents.places.place import Place
from tripplan.errors import Finding
from tripplan.files.reading_result import Read
from tripplan.files.toml_text import write_toml
from tripplan.files.written import read_form
from tripplan.records.store import Kept
from tripplan.screens.widgets.fields import Fields, FieldValue, filled, put, refill
from tripplan.screens.widgets.frame import View
from tripplan.screens.widgets.markdown import bullets
from tripplan.screens.widgets.notices import named, refuse, show_notice
from tripplan.screens.widgets.saving import remove_one, save_all, take_back_button
from tripplan.values import wording
from tripplan.values.money import Money, minor_digits

_EMPTY_EXTRAS = 2
_EXTRA = {
    "name": "What for",
    "price": "Price, for all of us",
    "give_or_take_percent": "Give or take, in %",
}
_LABELS = {
    "add_ons": "What we take there",
    "tolls": "Tolls and ferries, there and back",
    "stay_minutes": "A stay that feels complete to us, in minutes",
    "extras": "Extra",
    **{f"extras.{name}": label.lower() for name, label in _EXTRA.items()},
}


def own_figures_sentences(own: OwnFigures, place: Place, currency: str) -> Iterator[str]:
    """A parent's own figures, one sentence each.

    Args:
        own: the figures.
        place: whose figures they are.
        currency: ISO 4217 code of the household, in which tolls and extras count.
    """
    if own.add_ons is not None:
        sold = {add_on.name for add_on in place.add_ons}
        taken = [name for name in own.add_ons if name in sold]
        yield f"Beside entry we take {wording.listed(taken)}." if taken else "We take nothing beside entry."
        gone = [name for name in own.add_ons if name not in sold]
        if gone:
            yield f"No longer on the card, so not counted: {wording.listed(gone)}."
    if own.tolls is not None:
        yield f"Tolls and ferries, there and back: {wording.money(Money(own.tolls, currency))}."
    if own.stay_minutes is not None:
        yield f"A stay of {wording.minutes(own.stay_minutes)} feels complete to us."
    for extra in own.extras:
        spread = extra.give_or_take_percent
        moved = f", give or take {spread.normalize():f} %" if spread else ""
        yield f"{extra.name}: {wording.money(Money(extra.price, currency))} for all of us{moved}."


def own_figures(view: View, place: Place, currency: str, kept: Kept[OwnFigures] | None) -> None:
    """Show the parent's own figures for a place, and let them be changed.

    Args:
        view: whose records.
        place: the card.
        currency: of the household.
        kept: what is on record, if anything.
    """
    spot = f"own_{view.which}_{place.id}"
    st.markdown("**Our own figures**")
    said = [] if kept is None else list(own_figures_sentences(kept.value, place, currency))
    if said:
        st.markdown(bullets(said))
    elif place.add_ons:
        st.caption("None; the usual add-ons count, and tolls are not known.")
    else:
        st.caption("None; tolls are not known.")
    # The form folds away, since most families never need it.
    if st.toggle("Change our own figures", key=f"{spot}_open"):
        _form(view, place, currency, kept, spot)
    show_notice(spot)
    take_back_button(view, spot)


def _form(view: View, place: Place, currency: str, kept: Kept[OwnFigures] | None, spot: str) -> None:
    own = kept.value if kept else OwnFigures(place=place.id)
    shown = len(own.extras) + _EMPTY_EXTRAS
    fields = filled(spot, _on_record(own, place, shown))
    with st.form(f"{spot}_form"):
        if place.add_ons:
            st.checkbox("We take what most families take", key=fields.key("usual"))
            st.multiselect(
                "Otherwise we take",
                [add_on.name for add_on in place.add_ons],
                key=fields.key("add_ons"),
                placeholder="nothing",
                help="Counts only where the tick above is off.",
            )
        st.text_input(
            f"{_LABELS['tolls']}, in {currency}",
            key=fields.key("tolls"),
            help="0 if there are none, empty if you do not know.",
        )
        st.text_input(
            _LABELS["stay_minutes"],
            key=fields.key("stay_minutes"),
            help="Empty for what the card says, or what your logbook teaches.",
        )
        for index in range(shown):
            with st.container(horizontal=True, vertical_alignment="bottom"):
                for name, label in _EXTRA.items():
                    st.text_input(label, key=fields.key(f"{name}{index}"))
        st.form_submit_button(
            "Save our figures",
            key=f"{spot}_save",
            type="primary",
            on_click=_save,
            args=(view, place, currency, kept, fields, shown),
        )
    if kept is not None:
        st.button(
            "Forget our figures",
            key=f"{spot}_forget",
            on_click=remove_one,
            args=(view, spot, OwnFigures, place.id, kept.revision, f"Our figures for {place.name} are gone."),
        )


def _on_record(own: OwnFigures, place: Place, shown: int) -> dict[str, FieldValue]:
    sold = [add_on.name for add_on in place.add_ons]
    on_record: dict[str, FieldValue] = {
        "usual": own.add_ons is None,
        "add_ons": [name for name in own.add_ons or () if name in sold],
        "tolls": "" if own.tolls is None else f"{own.tolls:f}",
        "stay_minutes": "" if own.stay_minutes is None else str(own.stay_minutes),
    }
    for index in range(shown):
        extra = own.extras[index] if index < len(own.extras) else None
        on_record[f"name{index}"] = extra.name if extra else ""
        on_record[f"price{index}"] = f"{extra.price:f}" if extra else ""
        spread = extra.give_or_take_percent if extra else 0
        on_record[f"give_or_take_percent{index}"] = f"{spread:f}" if spread else ""
    return on_record


def _save(
    view: View, place: Place, currency: str, kept: Kept[OwnFigures] | None, fields: Fields, shown: int
) -> None:
    spot = fields.form
    read = read_own_figures(fields.typed(), place, currency, shown)
    if read.value is None:
        refuse(spot, findings=named(read.findings, _LABELS))
        return
    saved = save_all(
        view, spot, [(read.value, kept.revision if kept else 0)], f"Our figures for {place.name} now count."
    )
    if saved:
        refill(spot)


def read_own_figures(typed: Mapping[str, Any], place: Place, currency: str, shown: int) -> Read[OwnFigures]:
    """A parent's own figures as they were typed in.

    Args:
        typed: `usual`, `add_ons`, `tolls`, `stay_minutes`, and `name`, `price` and
            `give_or_take_percent` of each extra with its number behind, from 0.
        place: the card.
        currency: ISO 4217 code of the household.
        shown: how many extras there were fields for; those left empty are no extras.
    """
    values: dict[str, Any] = {"place": place.id}
    if place.add_ons and not typed["usual"]:
        values["add_ons"] = list(typed["add_ons"])
    put(values, "tolls", typed["tolls"])
    stay = str(typed["stay_minutes"]).strip()
    put(values, "stay_minutes", int(stay) if stay.isdecimal() and len(stay) < 6 else stay)
    extras = [{name: str(typed[f"{name}{index}"]).strip() for name in _EXTRA} for index in range(shown)]
    values["extras"] = [
        {name: text for name, text in extra.items() if text} for extra in extras if any(extra.values())
    ]
    return read_form(write_toml(values), "", OwnFigures, [partial(_not_payable, currency=currency)])


def _not_payable(own: OwnFigures, file: str, currency: str) -> Iterator[Finding]:
    """Amounts with more digits than the currency has."""
    prices = [("tolls", own.tolls), *((f"extras[{n}].price", e.price) for n, e in enumerate(own.extras))]
    digits = minor_digits(currency)
    for field, price in prices:
        if price is not None and price != round(price, digits):
            yield Finding(file, field, f"{price:f}", f"{currency} has {digits} decimal places")
