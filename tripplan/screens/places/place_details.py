"""One place by its address: its prices, hours and drive, and where each can be changed."""

from datetime import date
from decimal import Decimal, InvalidOperation
from functools import partial

import streamlit as st

from tripplan.documents.places.own_figures import OwnFigures
from tripplan.documents.places.place import Place
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.documents.where import TOWN_ONLY
from tripplan.files.cards.place_card import write_place_card
from tripplan.files.toml.reading_result import ReadResult
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.compare.choose import best_of
from tripplan.planning.family.family import Family
from tripplan.planning.travel.drive import Drive
from tripplan.reading.typed.amounts import amount_in
from tripplan.reading.typed.durations import minutes_in
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.look import cards
from tripplan.screens.look.folds import fold
from tripplan.screens.look.outing_card import outing_face, scale_of
from tripplan.screens.places.board.change import change_board
from tripplan.screens.places.card.change import change_card
from tripplan.screens.places.for_us import show_for_us
from tripplan.screens.places.own_figures_form import own_figures
from tripplan.screens.places.place_sentences import (
    board_sentences,
    crowd_sentences,
    hours_sentences,
    source_sentence,
    visit_sentences,
)
from tripplan.screens.places.year_weather import render_year_weather
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import kept_party, kept_span, take
from tripplan.screens.widgets.fields import Fields, filled, refill
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import named, refuse
from tripplan.screens.widgets.saving import remove_one, save_all
from tripplan.screens.widgets.view import View
from tripplan.values.units import KM_PER_MILE

PAGE = "places"


def render_place(
    view: View,
    family: Family,
    kept: StoredDocument[Place],
    drive: Drive,
    typed: StoredDocument[TypedDrive] | None,
    own: StoredDocument[OwnFigures] | None,
) -> None:
    """Show all that is on record of one place.

    Args:
        view: whose records.
        family: for whom the prices are worked out.
        kept: the card.
        drive: from home.
        typed: what the parent knows of the drive.
        own: what she says beside the card.
    """
    place, units = kept.value, family.household.units
    where = place.where
    st.caption(plain(", ".join(filter(None, (where.address, where.town, where.subdivision, where.country)))))
    if where.town_only:
        st.warning(TOWN_ONLY)
    _best_day(view, family, place)
    if (part := fold(say("places-prices"), f"open_prices_{place.id}")) is not None:
        with part:
            if not change_board(view, family, kept):
                _board(view, family, place)
            own_figures(view, place, family.household.currency, own)
    if (part := fold(say("places-visit"), f"open_visit_{place.id}")) is not None:
        with part:
            if not change_card(view, family, kept):
                _card_told(view, family, place)
            contact = " · ".join(filter(None, (place.web, place.telephone)))
            st.caption(plain(f"{say('places-ask-before')} {contact}"))
    if (part := fold(say("places-weather"), f"open_weather_{place.id}")) is not None:
        with part:
            render_year_weather(view, family, place)
    if (part := fold(say("places-drive"), f"open_drive_{place.id}")) is not None:
        with part:
            st.markdown(bullets(_drive_sentences(drive, units)))
            st.caption(plain(f"{drive.source.text}."))
            _typed_drive(view, place, units, typed)
    with st.container(horizontal=True):
        st.download_button(
            say("places-download-card"),
            partial(write_place_card, place),
            file_name=f"{place.id}.toml",
            mime="application/toml",
            key=f"download_{place.id}",
            on_click="ignore",
        )
        st.button(say("places-remove"), key=f"remove_{place.id}", on_click=_remove, args=(view, kept))


def _best_day(view: View, family: Family, place: Place) -> None:
    """The outing there on its best day in the time that is set, and a way to plan it."""
    table = answers.swept(family, kept_party(view, family), [place], kept_span(view), view.today)
    best = best_of(table, 0)
    with st.container(border=True, key="card_best_day"):
        if best is None:
            st.html(cards.face(cards.warning(say("compare-no-day"))))
            return
        st.html(outing_face(best, scale_of([best])))
        if st.button(plain(say("compare-plan", place=place.name)), key=f"take_{place.id}", type="primary"):
            take(view, place.id, best.day)
            st.switch_page("screens/pages/day_plan.py")


def _remove(view: View, kept: StoredDocument[Place]) -> None:
    """Remove the place, and lead back to the list of all."""
    remove_one(view, PAGE, Place, kept.value.id, kept.revision, say("places-removed", place=kept.value.name))
    st.query_params.pop("place", None)


def _card_told(view: View, family: Family, place: Place) -> None:
    """What the card says beside its prices."""
    st.markdown(f"**{say('places-when-open')}**")
    st.markdown(bullets(hours_sentences(place, family.school_calendars, view.today, family.local_days)))
    st.markdown(f"**{say('places-visit-like')}**")
    st.markdown(bullets(visit_sentences(place)))
    st.markdown(f"**{say('places-crowds')}**")
    st.markdown(bullets(crowd_sentences(place, view.today)))
    if place.visit.cautions:
        st.markdown(f"**{say('places-mind')}**")
        st.markdown(bullets(place.visit.cautions))
    if place.visit.questions:
        st.markdown(f"**{say('places-questions')}**")
        st.markdown(bullets(place.visit.questions))


def _board(view: View, family: Family, place: Place) -> None:
    """The price board in sentences, and beside it what it comes to."""
    left, right = st.columns([3, 2])
    with left:
        st.markdown(bullets(board_sentences(place)))
        st.caption(plain(source_sentence(place)))
    with right, st.container(border=True):
        show_for_us(view, family, place, f"for_us_{view.which}_{place.id}")


def _drive_sentences(drive: Drive, units: str) -> list[str]:
    length = wording.distance_range(drive.km, units)
    return [
        f"{length}, {wording.minutes_range(drive.minutes)}: {drive.known_in_words}.",
        *drive.notes,
    ]


# --- a drive the parent knows -----------------------------------------------------------------------------


def _typed_drive(view: View, place: Place, units: str, typed: StoredDocument[TypedDrive] | None) -> None:
    known = typed.value if typed else None
    spot = f"drive_{place.id}"
    fields = filled(
        spot,
        {
            "distance": "" if known is None else _shown(known.km, units),
            "minutes": "" if known is None else f"{known.minutes:g}",
        },
    )
    with form_box(fields):
        st.caption(say("places-own-drive"))
        st.text_input(say("places-own-distance-in", unit=units), key=fields.key("distance"))
        st.text_input(say("places-own-minutes-without"), key=fields.key("minutes"))
        save_button(
            fields,
            say("places-own-drive-use"),
            key=f"save_{spot}",
            on_click=_save_drive,
            args=(view, place, units, typed.revision if typed else 0, fields),
            is_main=False,
        )
    if typed is not None:
        st.button(
            say("places-own-drive-forget"),
            key=f"forget_{spot}",
            on_click=remove_one,
            args=(
                view,
                PAGE,
                TypedDrive,
                place.id,
                typed.revision,
                say("places-own-drive-forgotten", place=place.name),
            ),
        )


def _shown(km: float, units: str) -> str:
    length = Decimal(str(km))
    if units == "mi":
        length /= KM_PER_MILE
    return f"{round(length, 2).normalize():f}"


def _save_drive(view: View, place: Place, units: str, expected: int, fields: Fields) -> None:
    read = read_typed_drive(fields.typed(), place.id, units, view.today)
    if read.value is None:
        labels = {"km": say("places-own-distance"), "minutes": say("places-own-minutes")}
        refuse(fields.form, findings=named(read.findings, labels))
        return
    said = say("places-own-drive-counts", place=place.name)
    if save_all(view, fields.form, [(read.value, expected)], said, can_be_taken_back=False):
        refill(fields.form)


def read_typed_drive(typed: dict[str, str], place_id: str, units: str, today: date) -> ReadResult[TypedDrive]:
    """A drive as it was typed in.

    Args:
        typed: the texts `distance`, in the household's unit, and `minutes`.
        place_id: of the place card.
        units: 'mi' or 'km'.
        today: when it was typed in.
    """
    values = {"place": place_id, "typed_on": today}
    distance, minutes = typed["distance"].strip(), typed["minutes"].strip()
    known = minutes_in(minutes)
    texts = {
        "km": _km(amount_in(distance) or distance, units),
        "minutes": minutes if known is None else str(known),
    }
    return read_form(
        write_toml({**values, **{name: text for name, text in texts.items() if text}}), "", TypedDrive
    )


def _km(text: str, units: str) -> str:
    """A distance in kilometres; what is no number stays as it is, so that the reader can say so."""
    if units == "km":
        return text
    try:
        return str(Decimal(text) * KM_PER_MILE)
    except InvalidOperation:
        return text
