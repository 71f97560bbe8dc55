"""Which of a day's shows the parent wants to see; the plan is made around these."""

import streamlit as st

from tripplan.documents.places.place import Place
from tripplan.language.sentences import say
from tripplan.planning.outing.outing import Outing
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.saving import save_all, take_back_button
from tripplan.screens.widgets.view import View

_SPOT = "wanted_shows"


def render_shows(view: View, outing: Outing) -> None:
    """Ask which shows of the day are worth being there for; what is picked is kept on the place's card.

    Args:
        view: whose places.
        outing: one place on one day; nothing is asked where it has no show.
    """
    shows = {show.name: show for show in outing.hours.shows}
    if not shows:
        return
    labels = {
        name: plain(say("dayplan-show", name=name, starts=tuple(show.starts))) for name, show in shows.items()
    }
    wanted = [name for name, show in shows.items() if show.worth_it]
    widget = f"{_SPOT}_{outing.place.id}_{outing.day}_{'_'.join(wanted)}"
    st.pills(
        say("dayplan-shows"),
        list(shows),
        selection_mode="multi",
        default=wanted,
        format_func=labels.__getitem__,
        key=widget,
        on_change=_keep,
        args=(view, outing.place.id, tuple(shows), widget),
        help=say("dayplan-shows-help"),
    )
    show_notice(_SPOT)
    take_back_button(view, _SPOT)


def _keep(view: View, place_id: str, asked: tuple[str, ...], widget: str) -> None:
    """Write onto the card which of the shows that were asked about are wanted."""
    kept = view.records.get(Place, place_id)
    if kept is None:
        return
    place, wanted = kept.value, st.session_state[widget]
    shows = tuple(
        show.model_copy(update={"worth_it": show.name in wanted}) if show.name in asked else show
        for show in place.visit.shows
    )
    changed = place.model_copy(update={"visit": place.visit.model_copy(update={"shows": shows})})
    save_all(view, _SPOT, [(changed, kept.revision)], say("dayplan-shows-kept", place=place.name))
