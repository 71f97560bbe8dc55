"""A place card begun from what the place itself writes: a pasted text, or its web page saved as a file."""

import re
from collections.abc import Sequence

import streamlit as st

from tripplan.documents.places.offer_sentences import sentence
from tripplan.documents.places.offers import Parking
from tripplan.planning.family.family import Family
from tripplan.reading.board import BoardRead, read_board
from tripplan.reading.saved_page import PageRead, read_page
from tripplan.screens.places.board.draft import begin_draft
from tripplan.screens.places.board.kinds import KINDS, Row
from tripplan.screens.places.board.rows import blank, row_of
from tripplan.screens.places.card.fields import ENTRY, HOURS
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import refuse
from tripplan.screens.widgets.view import View

_LEAST_TO_READ = 4
_MORE = 8
"""So many lines that were not understood are shown; a web page has many that matter to nobody."""
_LONGEST_CODE = 3
_CLOSING = re.compile(r"-(\d\d):(\d\d)")


def paste_part(view: View, family: Family, spot: str) -> None:
    """Ask for a text or a page, fill the form below from it, and show what was read beside its own words.

    Args:
        view: whose today dates the prices.
        family: whose country settles what a dollar is.
        spot: names the form that is filled.
    """
    with st.form(f"{spot}_paste", border=False):
        st.text_area(
            "Paste prices and hours as the place writes them",
            key=f"{spot}_pasted",
            placeholder="Adults $14, seniors (65+) $12, children 3-12 $9, under 3 free. Open Tue-Sat 10-5.",
            height=120,
        )
        st.file_uploader(
            "Or bring its web page, saved as a file",
            type=["html", "htm", "mhtml", "mht"],
            key=f"{spot}_page",
            help="Nothing in the page is run, and nothing is fetched.",
        )
        st.form_submit_button("Read it", key=f"{spot}_read", on_click=_read, args=(view, family, spot))
    told = st.session_state.get(_told(spot))
    if told is not None:
        _show(*told)


def _told(spot: str) -> str:
    return f"{spot}_read_told"


def _read(view: View, family: Family, spot: str) -> None:
    text, page_file = st.session_state[f"{spot}_pasted"], st.session_state[f"{spot}_page"]
    country = family.household.home.country
    page = PageRead()
    if page_file is not None:
        try:
            page = read_page(page_file.getvalue(), country)
        except ValueError as unreadable:
            refuse(spot, f"{page_file.name}: {unreadable}.")
            return
    elif len(text.strip()) < _LEAST_TO_READ:
        refuse(spot, "Paste a text first, or bring a saved page.")
        return
    board = page.board if page_file is not None else read_board(text, country)
    currency = board.currency or family.household.currency
    _fill(spot, page, board, currency)
    rows = _rows(board, page.web or "its own page", view)
    begin_draft(spot, rows, 0, new=False)
    st.session_state[_told(spot)] = (
        [f"“{one.words}”: {sentence(one.offer, currency)}" for one in board.offers],
        list(board.doubts),
        list(board.not_understood),
    )


def _rows(board: BoardRead, source: str, view: View) -> Sequence[Row]:
    """The price board as read; a row for parking and one for the source always stand there."""
    offers = [row_of(one.offer) for one in board.offers] or [blank(KINDS["ticket"], name="Adult", ages="13+")]
    parking = blank(KINDS["parking"]) if board.parking is None else row_of(Parking(price=board.parking))
    return (*offers, parking, blank(KINDS["prices_read"], on=view.today, source=source))


def _fill(spot: str, page: PageRead, board: BoardRead, currency: str) -> None:
    """Put what was read into the fields of the card; what was not read stays as it is."""
    values = {
        HOURS[0].name: board.opening_hours,
        "currency": currency,
        "name": page.name,
        "address": page.street,
        "town": page.town,
        "subdivision": page.subdivision if len(page.subdivision) <= _LONGEST_CODE else "",
        "postal_code": page.postal_code,
        "coordinates": "" if page.latitude is None else f"{page.latitude}, {page.longitude}",
        "web": page.web,
        "telephone": page.telephone,
    }
    minutes = _minutes_before_closing(board)
    if minutes is not None:
        last_entry = next(one.name for one in ENTRY if one.path.endswith("last_entry_minutes_before_close"))
        values[last_entry] = str(minutes)
    for name, value in values.items():
        key = f"{spot}_{name}"
        if value and key in st.session_state:
            st.session_state[key] = value


def _minutes_before_closing(board: BoardRead) -> int | None:
    """How long before closing the last visitors are let in [min], where one closing time says it."""
    if board.last_entry_minutes_before_close is not None or board.last_entry is None:
        return board.last_entry_minutes_before_close
    closing = {60 * int(hour) + int(minute) for hour, minute in _CLOSING.findall(board.opening_hours)}
    last = 60 * int(board.last_entry[:2]) + int(board.last_entry[3:])
    return closing.pop() - last if len(closing) == 1 and last <= max(closing) else None


def _show(offers: Sequence[str], doubts: Sequence[str], not_understood: Sequence[str]) -> None:
    if offers:
        st.markdown("**Read, with the words it came from**")
        st.markdown(bullets(offers))
    if doubts:
        st.markdown("**Please check**")
        st.markdown(bullets(doubts))
    if not_understood:
        st.markdown("**Not understood; add it by hand if it matters**")
        st.markdown(bullets(not_understood[:_MORE]))
        if len(not_understood) > _MORE:
            st.caption(plain(f"And {len(not_understood) - _MORE} more lines."))
