"""Places: what the family keeps, nearest first, each with its prices, hours and drive."""

from datetime import date
from decimal import Decimal, InvalidOperation
from functools import partial

import streamlit as st

from tripplan.documents.places.idea import Idea
from tripplan.documents.places.own_figures import OwnFigures
from tripplan.documents.places.place import Place
from tripplan.documents.places.typed_drive import TypedDrive
from tripplan.documents.where import TOWN_ONLY
from tripplan.files.cards.format_guide import example_card, format_guide
from tripplan.files.cards.place_card import write_place_card
from tripplan.files.toml.reading_result import ReadResult
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.planning.outing.place_facts import drive_from_home
from tripplan.planning.travel.drive import Drive
from tripplan.reading.typed.amounts import amount_in
from tripplan.reading.typed.durations import minutes_in
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.look.folds import fold
from tripplan.screens.places.adding.front_door import add_place
from tripplan.screens.places.board.change import change_board
from tripplan.screens.places.card.change import change_card
from tripplan.screens.places.for_us import show_for_us
from tripplan.screens.places.from_map import from_map
from tripplan.screens.places.ideas import wish_list
from tripplan.screens.places.map_chart import places_map
from tripplan.screens.places.own_figures_form import own_figures
from tripplan.screens.places.place_sentences import (
    board_sentences,
    crowd_sentences,
    hours_sentences,
    source_sentence,
    visit_sentences,
)
from tripplan.screens.places.roads import render_roads
from tripplan.screens.places.sharing import share_cards
from tripplan.screens.places.year_weather import render_year_weather
from tripplan.screens.widgets.fields import Fields, filled, refill
from tripplan.screens.widgets.frame import family_or_stop
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import named, refuse, show_notice
from tripplan.screens.widgets.saving import remove_one, save_all, take_back_button
from tripplan.screens.widgets.view import View
from tripplan.services import cards_on_record
from tripplan.values.units import KM_PER_MILE

PAGE = "places"


def render(view: View) -> None:
    """List the places by their drive, and offer to add others."""
    family = family_or_stop(view)
    st.title(say("doors-page-places"))
    show_notice(PAGE)
    take_back_button(view, PAGE)
    records = view.records
    cards, typed, own = cards_on_record(records), records.all(TypedDrive), records.all(OwnFigures)
    add_place(view, family, cards)
    wish_list(view, family, {key: kept for key, kept in records.all(Idea).items() if key not in cards})
    from_map(view, family)
    if not cards:
        st.info("There are no places here yet. Add the first one above; its name is enough.")
    drives = {place_id: drive_from_home(family, kept.value) for place_id, kept in cards.items()}
    household = family.household
    places_map(household.home, [(cards[key].value, drive) for key, drive in drives.items()], household.units)
    for place_id in sorted(cards, key=lambda place_id: drives[place_id].minutes.likely):
        _place(view, family, cards[place_id], drives[place_id], typed.get(place_id), own.get(place_id))
    share_cards(view, cards)
    _guide()
    render_roads(view)


def _place(
    view: View,
    family: Family,
    kept: StoredDocument[Place],
    drive: Drive,
    typed: StoredDocument[TypedDrive] | None,
    own: StoredDocument[OwnFigures] | None,
) -> None:
    place, units = kept.value, family.household.units
    way = f"{wording.distance(drive.km.likely, units)}, {wording.minutes_range(drive.minutes)}"
    part = fold(plain(f"{place.name}: {way}"), f"open_{place.id}")
    if part is None:
        return
    with part:
        where = place.where
        st.caption(
            plain(", ".join(filter(None, (where.address, where.town, where.subdivision, where.country))))
        )
        if where.town_only:
            st.warning(TOWN_ONLY)
        st.markdown("**What it costs**")
        if not change_board(view, family, kept):
            _board(view, family, place)
        own_figures(view, place, family.household.currency, own)
        if not change_card(view, family, kept):
            _card_told(view, family, place)
        render_year_weather(view, family, place)
        contact = " · ".join(filter(None, (place.web, place.telephone)))
        st.caption(plain(f"Before you go, ask the place whether this still holds. {contact}"))
        st.markdown("**The drive, one way**")
        st.markdown(bullets(_drive_sentences(drive, units)))
        st.caption(plain(f"{drive.source.text}."))
        _typed_drive(view, place, units, typed)
        with st.container(horizontal=True):
            st.download_button(
                "Download card",
                partial(write_place_card, place),
                file_name=f"{place.id}.toml",
                mime="application/toml",
                key=f"download_{place.id}",
                on_click="ignore",
            )
            st.button(
                "Remove this place",
                key=f"remove_{place.id}",
                on_click=remove_one,
                args=(view, PAGE, Place, place.id, kept.revision, f"{place.name} is removed."),
            )


def _card_told(view: View, family: Family, place: Place) -> None:
    """What the card says beside its prices."""
    st.markdown("**When it is open**")
    st.markdown(bullets(hours_sentences(place, family.school_calendars, view.today, family.local_days)))
    st.markdown("**What a visit is like**")
    st.markdown(bullets(visit_sentences(place)))
    st.markdown("**Crowds**")
    st.markdown(bullets(crowd_sentences(place, view.today)))
    if place.visit.cautions:
        st.markdown("**Please mind**")
        st.markdown(bullets(place.visit.cautions))
    if place.visit.questions:
        st.markdown("**Questions for the children**")
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
    unit = "miles" if units == "mi" else "km"
    with form_box(fields):
        st.caption("If you know the way better, type it in; it then counts instead of the estimate.")
        st.text_input(f"Distance one way, in {unit}", key=fields.key("distance"))
        st.text_input("Minutes one way, without rests", key=fields.key("minutes"))
        save_button(
            fields,
            "Use my figures",
            key=f"save_{spot}",
            on_click=_save_drive,
            args=(view, place, units, typed.revision if typed else 0, fields),
            is_main=False,
        )
    if typed is not None:
        st.button(
            "Forget my figures",
            key=f"forget_{spot}",
            on_click=remove_one,
            args=(
                view,
                PAGE,
                TypedDrive,
                place.id,
                typed.revision,
                f"Your figures for the way to {place.name} are forgotten.",
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
        labels = {"km": "Distance one way", "minutes": "Minutes one way"}
        refuse(fields.form, findings=named(read.findings, labels))
        return
    said = f"Your figures for {place.name} now count."
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


# --- the format of a card ---------------------------------------------------------------------------------


def _guide() -> None:
    with st.expander("How a place card is written", key="open_guide", on_change="rerun") as part:
        if not part.open:
            return
        st.caption(
            "A card is a small text file that can be handed to another family. This is one; every field is "
            "described in the guide."
        )
        st.code(example_card(), language="toml", wrap_lines=True)
        st.download_button(
            "Download the guide",
            format_guide,
            file_name="place-card-guide.md",
            mime="text/markdown",
            key="download_guide",
            on_click="ignore",
        )
