"""The wish list: ideas, each with what is known of it, what is only guessed, and what to ask."""

from collections.abc import Mapping

import streamlit as st

from tripplan.documents.places.idea import Idea
from tripplan.language.sentences import InTurn, say, told
from tripplan.planning.family.family import Family
from tripplan.planning.outing.idea_notes import assumed, to_ask
from tripplan.records.store import StoredDocument
from tripplan.screens.places.adding.short_form import begin
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.saving import remove_one
from tripplan.screens.widgets.view import View

_PAGE = "places"


def wish_list(view: View, family: Family, ideas: Mapping[str, StoredDocument[Idea]]) -> None:
    """List the ideas that are no cards yet.

    Args:
        view: whose records.
        family: who would go, for whom the questions to ask are put.
        ideas: those on record, by id.
    """
    if not ideas:
        return
    st.header(say("places-ideas"), anchor=False)
    for kept in sorted(ideas.values(), key=lambda kept: kept.value.name.casefold()):
        _idea(view, family, kept)


def _idea(view: View, family: Family, kept: StoredDocument[Idea]) -> None:
    idea, household = kept.value, family.household
    place = idea.as_place(household.home, household.currency)
    months = [member.months_on(view.today) for member in household.members]
    with st.expander(plain(say("places-an-idea", name=idea.name)), key=f"open_idea_{idea.id}"):
        lines = [
            say("places-fits", topics=tuple(idea.topics)) if idea.topics else "",
            idea.notes,
            *told(assumed(place)[1:]),
            idea.source,
        ]
        st.markdown(bullets(filter(None, lines)))
        st.markdown(plain(say("notes-to-ask", questions=InTurn(to_ask(place, months)))))
        contact = " · ".join(filter(None, (idea.web, idea.telephone)))
        if contact:
            st.caption(plain(contact))
        st.button(
            plain(say("places-fill-in", name=idea.name)),
            key=f"fill_in_{idea.id}",
            type="primary",
            on_click=begin,
            args=(f"new_card_{view.which}", idea.name, _written(idea), idea.id),
            help=say("places-fill-in-help"),
        )
        st.button(
            plain(say("places-remove-idea", name=idea.name)),
            key=f"remove_idea_{idea.id}",
            on_click=remove_one,
            args=(view, _PAGE, Idea, idea.id, kept.revision, say("places-idea-removed", name=idea.name)),
        )


def _written(idea: Idea) -> str:
    """Where it is, as far as it is known, on one line."""
    where = idea.where
    if where is None:
        return ""
    named = ", ".join(
        filter(None, (where.address, where.town, f"{where.subdivision} {where.postal_code}".strip()))
    )
    return named if where.town or where.postal_code else f"{where.point.latitude}, {where.point.longitude}"
