"""The parent's own figures for a place: which add-ons the family takes, tolls, what else is paid there."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta
from functools import partial

import streamlit as st

from tripplan.documents.places.own_figures import OwnFigures
from tripplan.documents.places.place import Place
from tripplan.errors import Finding
from tripplan.files.toml.reading_result import ReadResult
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language.sentences import say
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.answers import Raw, Typed, on_record, put_changes
from tripplan.screens.forms.form import Form, form_for, save
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.forms.questions import Setting, questions
from tripplan.screens.widgets.fields import FieldValue
from tripplan.screens.widgets.markdown import bullets
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.saving import remove_one, take_back_button
from tripplan.screens.widgets.view import View
from tripplan.values.money import Money, minor_digits

_ASKED = (
    *questions(OwnFigures, "tolls", "stay_minutes", "stay_from"),
    *(replace(one, entry="{name}{index}", waiting=2) for one in questions(OwnFigures, "extras")),
)


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
        yield say("places-own-take", what=tuple(taken)) if taken else say("places-own-take-nothing")
        gone = [name for name in own.add_ons if name not in sold]
        if gone:
            yield say("places-own-gone", what=tuple(gone))
    if own.tolls is not None:
        yield say("places-own-tolls", price=Money(own.tolls, currency))
    if own.stay_minutes is not None:
        yield say("places-own-stay", stay=timedelta(minutes=own.stay_minutes))
    for extra in own.extras:
        spread = extra.give_or_take_percent
        price = Money(extra.price, currency)
        if spread:
            percent = f"{spread.normalize():f}"
            yield say("places-own-extra-about", name=extra.name, price=price, percent=percent)
        else:
            yield say("places-own-extra", name=extra.name, price=price)


def own_figures(view: View, place: Place, currency: str, kept: StoredDocument[OwnFigures] | None) -> None:
    """Show the parent's own figures for a place, and let them be changed.

    Args:
        view: whose records.
        place: the card.
        currency: of the household.
        kept: what is on record, if anything.
    """
    spot = f"own_{view.which}_{place.id}"
    st.markdown(f"**{say('places-own')}**")
    said = [] if kept is None else list(own_figures_sentences(kept.value, place, currency))
    if said:
        st.markdown(bullets(said))
    elif place.add_ons:
        st.caption(say("places-own-none-usual"))
    else:
        st.caption(say("places-own-none"))
    # The form folds away, since most families never need it.
    if st.toggle(say("places-own-change"), key=f"{spot}_open"):
        _form(view, place, currency, kept, spot)
    show_notice(spot)
    take_back_button(view, spot)


def _form(
    view: View, place: Place, currency: str, kept: StoredDocument[OwnFigures] | None, spot: str
) -> None:
    own = kept.value if kept else None
    sold, taken = [add_on.name for add_on in place.add_ons], own.add_ons if own else None
    also: dict[str, FieldValue] = {
        "usual": taken is None,
        "add_ons": [name for name in taken or () if name in sold],
    }
    form = form_for(spot, _ASKED, own, Setting(currency=currency), also=also)
    with form_box(form.fields):
        if sold:
            st.checkbox(say("places-own-usual"), key=form.fields.key("usual"))
            st.multiselect(
                say("places-own-otherwise"),
                sold,
                key=form.fields.key("add_ons"),
                placeholder=say("places-own-nothing"),
                help=say("places-own-otherwise-help"),
            )
        form.draw()
        save_button(
            form.fields,
            say("places-own-save"),
            key=f"{spot}_save",
            on_click=_save,
            args=(view, place, currency, kept, form),
        )
    if kept is not None:
        st.button(
            say("places-own-forget"),
            key=f"{spot}_forget",
            on_click=remove_one,
            args=(
                view,
                spot,
                OwnFigures,
                place.id,
                kept.revision,
                say("places-own-forgotten", place=place.name),
            ),
        )


def _save(
    view: View, place: Place, currency: str, kept: StoredDocument[OwnFigures] | None, form: Form
) -> None:
    raw = raw_figures(form.fields.typed(), place, kept.value if kept else None)
    revision, said = kept.revision if kept else 0, say("places-own-count", place=place.name)
    save(view, form.name, read_own_figures(raw, currency), raw, OwnFigures, revision, said)


def raw_figures(typed: Typed, place: Place, before: OwnFigures | None = None) -> Raw:
    """A parent's own figures as they were typed in, before they are checked.

    Args:
        typed: `usual`, `add_ons`, and what the form asks for.
        place: the card.
        before: what is on record, if anything.
    """
    raw: Raw = {"place": place.id} if before is None else before.model_dump(mode="json", exclude_none=True)
    if place.add_ons:
        raw.pop("add_ons", None)
        if not typed["usual"]:
            raw["add_ons"] = list(typed["add_ons"])
    at_first = {} if before is None else on_record(_ASKED, before, Setting())
    put_changes(raw, _ASKED, typed, at_first, Setting())
    return raw


def read_own_figures(raw: Raw, currency: str) -> ReadResult[OwnFigures]:
    """A parent's own figures with every fault.

    Args:
        raw: as typed in.
        currency: ISO 4217 code of the household.
    """
    return read_form(write_toml(raw), "", OwnFigures, [partial(_not_payable, currency=currency)])


def _not_payable(own: OwnFigures, file: str, currency: str) -> Iterator[Finding]:
    """Amounts with more digits than the currency has."""
    prices = [("tolls", own.tolls), *((f"extras[{n}].price", e.price) for n, e in enumerate(own.extras))]
    digits = minor_digits(currency)
    for field, price in prices:
        if price is not None and price != round(price, digits):
            yield Finding(
                file, field, f"{price:f}", say("places-own-digits", currency=currency, digits=digits)
            )
