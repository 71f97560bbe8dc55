"""Looking up where something lies on the internet, by a button that says what is sent and where."""

import time

import streamlit as st

from tripplan.errors import LookupFailed
from tripplan.files.online_lookup import (
    CREDIT,
    SERVICE_IN_WORDS,
    USER_AGENT,
    OnlineLookup,
    asked_text,
    nominatim,
)
from tripplan.planning import wording
from tripplan.planning.where import LookedUp
from tripplan.records.kinds import kind_of
from tripplan.records.store import Kept
from tripplan.screens.frame import View
from tripplan.screens.markdown import plain
from tripplan.screens.notices import refuse, show_notice
from tripplan.screens.saving import records_of, trouble_said


@st.cache_resource(show_spinner=False)
def _service() -> OnlineLookup:
    """One for the whole program, so that its requests keep their distance whoever asks."""
    return OnlineLookup(nominatim(), time.monotonic, time.sleep)


def look_up_online(view: View, key: str, text: str, lookup: OnlineLookup | None = None) -> LookedUp | None:
    """Offer to look a text up on the internet; to be drawn outside any form.

    Nothing is sent before the button is pressed, and nothing a second time: answers are kept on record.

    Args:
        view: whose records keep the answer.
        key: tells this piece from others on the page.
        text: address or town to look up, such as stands in the form's fields now.
        lookup: the service to ask; the real one when left out.

    Returns:
        What is known of this text, now or from an earlier time; None while nobody has asked.
    """
    wanted = asked_text(text)
    spot = f"look_up_{key}"
    if not wanted:
        st.caption("To look an address or town up on the internet, type it in first.")
        return None
    kept = _known(view, wanted)
    if kept is None:
        st.caption(
            plain(
                f"If you press the button, this text goes over the internet to {SERVICE_IN_WORDS}: "
                f"“{wanted}”. With it go the name of this program ({USER_AGENT}) and, as with every page on "
                "the internet, your computer's address; nothing else about your family is sent. The answer "
                "is kept on this computer, so the same text is sent only once."
            )
        )
        st.button("Send this text and look it up", key=spot, on_click=_ask, args=(view, spot, wanted, lookup))
        show_notice(spot)
        return None
    found = kept.value
    home_zone = view.family.household.home.zone if view.family else None
    day = wording.day(found.looked_up_at.astimezone(home_zone))
    st.markdown(plain(f"{found.name}: {found.latitude:.5f}, {found.longitude:.5f}"))
    st.caption(plain(f"Looked up on {day} at {found.service}. {CREDIT}"))
    st.button("Forget this answer", key=f"{spot}_forget", on_click=_forget, args=(view, spot, kept))
    return found


def _known(view: View, wanted: str) -> Kept[LookedUp] | None:
    return records_of(view).get(LookedUp, wanted.casefold())


def _ask(view: View, spot: str, wanted: str, lookup: OnlineLookup | None) -> None:
    now = view.services.clock()
    try:
        found = (lookup or _service()).find(wanted, now)
    except LookupFailed as failed:
        refuse(spot, f"Nothing was looked up: {failed}.")
        return
    with trouble_said(spot), records_of(view).change(now) as change:
        change.save(found, 0)


def _forget(view: View, spot: str, kept: Kept[LookedUp]) -> None:
    key = kind_of(LookedUp).key(kept.value)
    with trouble_said(spot):
        records_of(view).remove(LookedUp, key, view.services.clock(), kept.revision)
