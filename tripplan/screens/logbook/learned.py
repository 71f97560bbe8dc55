"""What the outings teach, on Afterwards: own figures beside the usual ones, each to be switched."""

from collections.abc import Mapping

import streamlit as st

from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import Learnable, LogbookSettings
from tripplan.language.sentences import say
from tripplan.planning.logbook.learning import learned_figures
from tripplan.planning.logbook.sentences import learned_sentence
from tripplan.records.store import StoredDocument
from tripplan.screens.widgets.markdown import bullets
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View
from tripplan.services import family_on_record

_SPOT = "logbook_learned"


def what_is_learned(
    view: View,
    entries: Mapping[str, StoredDocument[LogbookEntry]],
    settings: StoredDocument[LogbookSettings] | None,
) -> None:
    """Show every figure that outings teach, and let each group be switched on and off."""
    family = family_on_record(view.records)
    if family is None:
        return
    chosen = settings.value if settings else LogbookSettings()
    written = [kept.value for kept in entries.values()]
    figures = learned_figures(family, written)
    notes = sum(entry.crowd_note is not None for entry in written)
    st.caption(say("afterwards-switch-on"))
    show_notice(_SPOT)
    for what in Learnable:
        mine = [figure for figure in figures if figure.what is what]
        if what is Learnable.CROWDS:
            lines = [say("afterwards-notes-of-crowds", notes=notes)] if notes else []
        else:
            lines = [learned_sentence(figure) for figure in mine]
        _group(view, what, chosen, settings, lines)


def _group(
    view: View,
    what: Learnable,
    chosen: LogbookSettings,
    settings: StoredDocument[LogbookSettings] | None,
    lines: list[str],
) -> None:
    key = f"learn_{view.which}_{what.name.casefold()}"
    st.session_state[key] = chosen.learns(what)
    st.toggle(
        say("afterwards-plan-with-own", what=what.value),
        key=key,
        disabled=not lines,
        on_change=_switch,
        args=(view, what, chosen, settings),
    )
    if lines:
        st.markdown(bullets(lines))
    else:
        st.caption(say("afterwards-not-enough"))


def _switch(
    view: View, what: Learnable, chosen: LogbookSettings, settings: StoredDocument[LogbookSettings] | None
) -> None:
    off = set(chosen.not_learned) ^ {what}
    changed = chosen.model_copy(update={"not_learned": tuple(one for one in Learnable if one in off)})
    code = "afterwards-own-off" if what in off else "afterwards-own-on"
    said = say(code, what=what.value)
    save_all(view, _SPOT, [(changed, settings.revision if settings else 0)], said, can_be_taken_back=False)
