"""Looking up where something lies on the internet, by a button that says what is sent and where."""

from collections.abc import Callable

import streamlit as st

from tripplan.documents.where import LookupResult
from tripplan.errors import LookupFailed
from tripplan.files.locations.online_lookup import CREDIT, SERVICE_IN_WORDS, asked_text
from tripplan.language import wording
from tripplan.records.kinds import kind_of
from tripplan.records.store import StoredDocument
from tripplan.screens.widgets.fields import Fields
from tripplan.screens.widgets.locations.where_form import fill_in_answer, text_to_look_up
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import refuse, show_notice, tell
from tripplan.screens.widgets.saving import report_errors
from tripplan.screens.widgets.view import View
from tripplan.version import USER_AGENT

Take = Callable[[LookupResult], None]
"""What is done with an answer."""


def where_lookup(view: View, fields: Fields) -> None:
    """Offer to look a location up on the internet and fill the answer into the fields of its form.

    To be drawn outside any form, below the one that `where_inputs` stands in.

    Args:
        view: whose records keep the answer.
        fields: of the form, among them those of `where_on_record`.
    """
    form = fields.form

    def take(found: LookupResult) -> None:
        fill_in_answer(fields, found)
        tell(_spot(form), "The coordinates are filled in above. They count once you save.")

    with st.expander("Not found? Look it up on the internet", key=f"open_look_up_{form}"):
        key = f"look_up_{form}_text"
        _suggest(key, text_to_look_up(fields))
        text = st.text_input(
            "Town or address to look up",
            key=key,
            help="The town with its country is usually enough; no street is needed.",
        )
        look_up_online(view, form, text, take)


def _suggest(key: str, text: str) -> None:
    """Put a text into a field once; what the parent writes there stays until there is another one."""
    mark = f"{key}_suggested"
    if key not in st.session_state or text not in ("", st.session_state.get(mark)):
        st.session_state[key] = text
        st.session_state[mark] = text


def look_up_online(view: View, key: str, text: str, take: Take) -> None:
    """Offer to look a text up on the internet; to be drawn outside any form.

    Nothing is sent before the button is pressed, and nothing a second time: answers are kept on record.

    Args:
        view: whose records keep the answer, and whose service is asked.
        key: tells this piece from others on the page.
        text: address or town to look up.
        take: what is done with the answer, now or with one that is known from an earlier time.
    """
    wanted = asked_text(text)
    spot = _spot(key)
    if not wanted:
        st.caption("To look an address or town up on the internet, type it in first.")
        return
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
        st.button("Send this text and look it up", key=spot, on_click=_ask, args=(view, spot, wanted, take))
        show_notice(spot)
        return
    found = kept.value
    home_zone = view.family.household.home.zone if view.family else None
    day = wording.day(found.looked_up_at.astimezone(home_zone))
    st.markdown(plain(f"{found.name}: {found.latitude:.5f}, {found.longitude:.5f}"))
    st.caption(plain(f"Looked up on {day} at {found.service}. {CREDIT}"))
    show_notice(spot)
    with st.container(horizontal=True):
        st.button("Fill in these coordinates", key=f"{spot}_take", on_click=take, args=(found,))
        st.button("Forget this answer", key=f"{spot}_forget", on_click=_forget, args=(view, spot, kept))


def _spot(key: str) -> str:
    return f"look_up_{key}"


def _known(view: View, wanted: str) -> StoredDocument[LookupResult] | None:
    return view.records.get(LookupResult, wanted.casefold())


def _ask(view: View, spot: str, wanted: str, take: Take) -> None:
    now = view.services.clock()
    try:
        found = view.services.look_up.find(wanted, now)
    except LookupFailed as failed:
        refuse(spot, f"Nothing was looked up: {failed}.")
        return
    with report_errors(spot):
        with view.records.change(now) as change:
            change.save(found, 0)
        take(found)


def _forget(view: View, spot: str, kept: StoredDocument[LookupResult]) -> None:
    key = kind_of(LookupResult).key(kept.value)
    with report_errors(spot):
        view.records.remove(LookupResult, key, view.services.clock(), kept.revision)
