"""A place card begun from what the place itself writes: a pasted text, or its web page saved as a file."""

import re
from collections.abc import Sequence
from dataclasses import dataclass

import streamlit as st

from tripplan.documents.places.offer_sentences import add_on_sentence, sentence
from tripplan.documents.places.offers import Parking
from tripplan.language import wording
from tripplan.planning.family.family import Family
from tripplan.reading.board import BoardRead, read_board
from tripplan.reading.saved_page import PageRead, read_page
from tripplan.screens.places.adding.handing_on import suggest
from tripplan.screens.places.adding.hours_in_words import hours_in_words
from tripplan.screens.places.adding.what_it_is import name_in
from tripplan.screens.places.board.kinds import KINDS, Row
from tripplan.screens.places.board.rows import blank, row_of
from tripplan.screens.places.card.fields import ENTRY, HOURS
from tripplan.screens.widgets.fields import FieldValue
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import refuse
from tripplan.screens.widgets.view import View
from tripplan.values.money import Money

_MORE = 8
"""So many lines that were not understood are shown; a web page has many that matter to nobody."""
_LONGEST_CODE = 3
_CLOSING = re.compile(r"-(\d\d):(\d\d)")


@dataclass(frozen=True)
class Told:
    """What was read, in words.

    Attributes:
        read: offers and hours, each beside the words it came from.
        doubts: what the text leaves open.
        not_understood: what was not read, word for word.
    """

    read: tuple[str, ...]
    doubts: tuple[str, ...]
    not_understood: tuple[str, ...]


def read_text(view: View, family: Family, spot: str, text: str) -> None:
    """Read a pasted text and fill the form with it.

    Args:
        view: whose today dates the prices.
        family: whose country settles what a dollar is.
        spot: names the form that is filled.
        text: as pasted.
    """
    _fill(
        view,
        family,
        spot,
        PageRead(
            name=name_in(text),
            board=read_board(
                text, family.household.home.country, {place.id: place.name for place in family.places}
            ),
        ),
    )


def read_saved_page(view: View, family: Family, spot: str, called: str, content: bytes) -> None:
    """Read a saved web page and fill the form with it.

    Args:
        view: whose today dates the prices.
        family: whose country settles what a dollar is where the page does not say its own.
        spot: names the form that is filled.
        called: the file's name, for what is wrong with it.
        content: the file.
    """
    try:
        page = read_page(content, family.household.home.country)
    except ValueError as unreadable:
        refuse(spot, f"{called}: {unreadable}.")
        return
    _fill(view, family, spot, page)


def _fill(view: View, family: Family, spot: str, page: PageRead) -> None:
    board = page.board
    currency = board.currency or family.household.currency
    values = _values(page, board, currency)
    suggest(spot, values, _rows(board, page.web or "its own page", view), way="read")
    hours = hours_in_words(board.opening_hours)
    if board.parking is not None:
        amount = Money(board.parking, currency)
        hours = (*hours, f"Parking: {wording.money(amount) if board.parking else 'free'}")
    st.session_state[_told(spot)] = Told(
        (
            *(f"“{one.words}”: {sentence(one.offer, currency)}" for one in board.offers),
            *(f"“{one.words}”: {add_on_sentence(one.add_on, currency)}" for one in board.add_ons),
            *hours,
        ),
        board.doubts,
        board.not_understood,
    )


def _told(spot: str) -> str:
    return f"{spot}_read_told"


def show_what_was_read(spot: str) -> None:
    """What was read, what is in doubt, and what was not understood."""
    told = st.session_state.get(_told(spot))
    if isinstance(told, Told):
        _show(told)


def _rows(board: BoardRead, source: str, view: View) -> Sequence[Row]:
    """The price board as read; a row for parking and one for the source always stand there."""
    offers = [row_of(one.offer) for one in board.offers] or [blank(KINDS["ticket"], name="Adult", ages="13+")]
    add_ons = [row_of(one.add_on) for one in board.add_ons]
    parking = blank(KINDS["parking"]) if board.parking is None else row_of(Parking(price=board.parking))
    return (*offers, *add_ons, parking, blank(KINDS["prices_read"], on=view.today, source=source))


def _values(page: PageRead, board: BoardRead, currency: str) -> dict[str, FieldValue]:
    """The fields of the card as far as they were read; what was not read is empty."""
    street = ", ".join(filter(None, (page.street, page.town)))
    state = page.subdivision if len(page.subdivision) <= _LONGEST_CODE else ""
    line = ", ".join(filter(None, (street, f"{state} {page.postal_code}".strip())))
    values: dict[str, FieldValue] = {
        HOURS[0].name: board.opening_hours,
        "currency": currency,
        "name": page.name,
        "where": line,
        "coordinates": "" if page.latitude is None else f"{page.latitude}, {page.longitude}",
        "web": page.web,
        "telephone": page.telephone,
    }
    minutes = _minutes_before_closing(board)
    if minutes is not None:
        last_entry = next(one.name for one in ENTRY if one.path.endswith("last_entry_minutes_before_close"))
        values[last_entry] = str(minutes)
    return values


def _minutes_before_closing(board: BoardRead) -> int | None:
    """How long before closing the last visitors are let in [min], where one closing time says it."""
    if board.last_entry_minutes_before_close is not None or board.last_entry is None:
        return board.last_entry_minutes_before_close
    closing = {60 * int(hour) + int(minute) for hour, minute in _CLOSING.findall(board.opening_hours)}
    last = 60 * int(board.last_entry[:2]) + int(board.last_entry[3:])
    return closing.pop() - last if len(closing) == 1 and last <= max(closing) else None


def _show(told: Told) -> None:
    if not told.read:
        st.info("No prices or hours were found in it.")
    else:
        st.markdown("**Read, with the words it came from**")
        st.markdown(bullets(told.read))
    if told.doubts:
        st.markdown("**Please check**")
        st.markdown(bullets(told.doubts))
    if told.not_understood:
        st.markdown("**Not understood; add it by hand if it matters**")
        st.markdown(bullets(told.not_understood[:_MORE]))
        if len(told.not_understood) > _MORE:
            st.caption(plain(f"And {len(told.not_understood) - _MORE} more lines."))
