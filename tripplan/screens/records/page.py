"""Records: what is kept where, a copy to keep elsewhere, what brings things back, and what was changed."""

from collections.abc import Callable
from functools import partial

import streamlit as st

from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.records.copies.listed import copies_of, records_in
from tripplan.records.export import export_all
from tripplan.records.opening import Which
from tripplan.screens.look import cards
from tripplan.screens.records.day_copies import day_copies
from tripplan.screens.records.deleting import deleting
from tripplan.screens.records.past_changes import past_changes, said_of
from tripplan.screens.records.set_aside import what_is_set_aside
from tripplan.screens.records.whole_file import PAGE, bring_file, only_demo
from tripplan.screens.widgets.choices import place_names
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.one_open import opener, part_if_open
from tripplan.screens.widgets.view import View


def render(view: View) -> None:
    """Show what is kept, and a card for each thing that can be done with it."""
    is_demo = view.which is Which.DEMO
    st.title(say("records-demo-here") if is_demo else say("records-here"), anchor=False)
    latest = view.records.past_changes(1)
    zone = view.family.household.home.zone if view.family else None
    st.caption(
        plain(
            say(
                "records-holds",
                records=records_in(view.records.database),
                when=wording.short_day(latest[0].saved_at.astimezone(zone).date()),
            )
            if latest
            else say("records-nothing")
        )
    )
    show_notice(PAGE)
    what_is_set_aside(view)
    with st.container(key="cards_records"):
        with st.container(border=True, key="card_save_copy"):
            st.html(_face("records-save-copy", "needs", say("records-copy-holds")))
            st.download_button(
                say("records-download"),
                partial(export_all, view.records),
                file_name=view.file_name(f"tripplan-{view.today}.json"),
                mime="application/json",
                key="download_records",
                type="primary",
                on_click="ignore",
            )
        days = 0 if is_demo else len({copy.day for copy in copies_of(view.records.database.path)})
        _card(
            view,
            "bring_back",
            _face("records-bring-back", "clock", say("records-bring-back-what", days=days)),
            (say("records-open-bring-back"), say("records-about-copies")),
            _bring_back,
        )
        if latest:
            places = place_names(view.family) if view.family else {}
            _card(
                view,
                "history",
                _face("records-history", "book", say("records-last", said=said_of(latest[0], places))),
                (say("records-open-history"), say("records-about-history")),
                past_changes,
            )
        if not is_demo:
            _card(
                view,
                "safe",
                _face("records-safe", "crowd", say("records-safe-what")),
                (say("records-open-safe"), say("records-about-safe")),
                deleting,
            )


def _face(code: str, drawing: str, what: str) -> str:
    return cards.face(cards.name(say(code), drawing=drawing), cards.said(what))


def _card(view: View, part: str, face: str, labels: tuple[str, str], draw: Callable[[View], None]) -> None:
    """A card whose inside is drawn once it is opened; the labels open it and say what is closed."""
    label, about = labels
    with st.container(border=True, key=f"card_{part}"):
        st.html(face)
        opener(view, PAGE, part, label, about=about)
        where = part_if_open(view, PAGE, part)
        if where is not None:
            with where:
                draw(view)


def _bring_back(view: View) -> None:
    st.caption(plain(say("records-where", path=str(view.records.database.path))))
    if only_demo(view):
        st.caption(say("records-no-demo-copies"))
        return
    day_copies(view)
    bring_file(view)
