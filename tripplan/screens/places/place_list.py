"""The places one can go to: what each comes to on its best day, and a way to all that is known of it."""

from collections.abc import Mapping

import streamlit as st

from tripplan.documents.places.place import Place
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.compare.choose import best_of
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing
from tripplan.planning.travel.drive import Drive
from tripplan.screens.look import cards
from tripplan.screens.look.cards import Chip
from tripplan.screens.look.drawings import kind_of
from tripplan.screens.look.outing_card import chips_of, likely_total
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import kept_party, kept_span
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.view import View


def place_list(view: View, family: Family, places: Mapping[str, Place], drives: Mapping[str, Drive]) -> None:
    """List places, the nearest first, each with its best day in the time that is set on Choose a day.

    Args:
        view: whose records.
        family: who goes, by default everybody.
        places: by id.
        drives: from home, by the id of the place.
    """
    near = sorted(places.values(), key=lambda place: drives[place.id].minutes.likely)
    table = answers.swept(family, kept_party(view, family), near, kept_span(view), view.today)
    for row, place in enumerate(near):
        with st.container(border=True, key=f"card_place_{place.id}"):
            _card(place, drives[place.id], best_of(table, row))


def _card(place: Place, drive: Drive, best: Outing | None) -> None:
    if best is None:
        way = Chip("drive", say("cards-drive", minutes=wording.minutes(drive.minutes.likely)))
        head = cards.name(place.name, drawing=kind_of(place)) + cards.small(say("compare-no-day"))
        st.html(cards.face(head, cards.chips([way])))
    else:
        head = cards.name(place.name, likely_total(best), drawing=kind_of(place))
        st.html(cards.face(head, cards.chips(chips_of(best))))
    st.page_link(
        "screens/pages/places.py",
        label=plain(say("places-about", place=place.name)),
        query_params={"place": place.id},
    )
