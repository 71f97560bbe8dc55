"""Place cards from files: a look at every finding first, then the faultless ones are taken over."""

from collections import Counter
from collections.abc import Mapping, Sequence

import streamlit as st

from tripplan.errors import Finding
from tripplan.files.place_card import read_place_card
from tripplan.planning.place import Place
from tripplan.records.store import Kept
from tripplan.screens.widgets.frame import View
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_findings
from tripplan.screens.widgets.saving import save_all

_PAGE = "places"
_TURN = "card_upload_turn"


def card_upload(view: View, cards: Mapping[str, Kept[Place]]) -> None:
    """Let the parent bring cards, see what is wrong with them, and take over the others.

    Args:
        view: whose places.
        cards: what is on record, by id.
    """
    with st.expander("From place cards (TOML files)", key="open_card_upload"):
        turn = st.session_state.setdefault(_TURN, 0)
        files = st.file_uploader(
            "Bring one or more cards", type=["toml"], accept_multiple_files=True, key=f"card_upload_{turn}"
        )
        if not files:
            return
        places, findings = read_cards([(file.name, file.getvalue()) for file in files], view)
        show_findings(findings)
        wanted: list[tuple[Place, int]] = []
        for place in places:
            kept = cards.get(place.id)
            if kept is None:
                st.markdown(plain(f"{place.name}: new."))
                wanted.append((place, 0))
            elif st.checkbox(
                plain(f"{place.name}: replace the card '{kept.value.name}', which has the same id"),
                key=f"replace_{turn}_{place.id}",
            ):
                wanted.append((place, kept.revision))
        if not places:
            return
        count = "one card" if len(wanted) == 1 else f"{len(wanted)} cards"
        st.button(
            f"Take over {count}",
            key="take_cards",
            type="primary",
            disabled=not wanted,
            on_click=_take_over,
            args=(view, wanted),
        )


def read_cards(files: Sequence[tuple[str, bytes]], view: View) -> tuple[list[Place], list[Finding]]:
    """The faultless cards of several files, and every finding.

    Args:
        files: names and contents.
        view: whose today tells how old the prices are.
    """
    read = [read_place_card(content, name, view.today) for name, content in files]
    findings = [finding for one in read for finding in one.findings]
    places = [one.value for one in read if one.value is not None]
    counts = Counter(place.id for place in places)
    for (name, _), one in zip(files, read, strict=True):
        if one.value is not None and counts[one.value.id] > 1:
            findings.append(Finding(name, "id", one.value.id, "another of these files has the same id"))
    return [place for place in places if counts[place.id] == 1], findings


def _take_over(view: View, wanted: Sequence[tuple[Place, int]]) -> None:
    names = ", ".join(place.name for place, _ in wanted)
    if save_all(view, _PAGE, wanted, f"Taken over: {names}."):
        st.session_state[_TURN] += 1
