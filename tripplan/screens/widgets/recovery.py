"""When a records file is damaged: a copy in its place, chosen on whatever page the parent is."""

from collections.abc import Mapping
from pathlib import Path

import streamlit as st

from tripplan.clock import clock_from
from tripplan.errors import RecordsDamaged, RecordsUnusable
from tripplan.language import wording
from tripplan.records.copies.listed import DayCopy, copies_of
from tripplan.records.opening import Which
from tripplan.records.restoring import recover
from tripplan.screens.widgets.markdown import plain


def offer_recovery(trouble: RecordsDamaged, environment: Mapping[str, str]) -> None:
    """Offer what can take the place of a damaged file: a day's copy, or the demo as it was at first.

    Args:
        trouble: names the file.
        environment: environment variables, for the clock.
    """
    if trouble.path.stem == Which.DEMO:
        st.button(
            "Make the demo anew", key="recover", on_click=_recover, args=(trouble.path, None, environment)
        )
        st.caption("Your own records are another file and stay as they are.")
        return
    copies = {copy.day.isoformat(): copy for copy in copies_of(trouble.path)}
    if not copies:
        st.caption("There is no copy of an earlier day. The damaged file is kept, whatever you press.")
        st.button(
            "Begin with empty records",
            key="recover",
            on_click=_recover,
            args=(trouble.path, None, environment),
        )
        return
    picked = st.selectbox(
        "Go on with the copy of",
        list(copies),
        format_func={day: wording.day(copy.day) for day, copy in copies.items()}.__getitem__,
        key="recover_from",
    )
    st.caption(
        "The damaged file is kept beside it under another name. What was entered since then is not in it."
    )
    st.button(
        "Use this copy", key="recover", on_click=_recover, args=(trouble.path, copies[picked], environment)
    )


def _recover(path: Path, copy: DayCopy | None, environment: Mapping[str, str]) -> None:
    try:
        recover(path, copy, clock_from(environment)())
    except RecordsUnusable as again:
        st.error(plain(f"Nothing was changed: {again}"))
