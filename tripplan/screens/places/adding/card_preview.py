"""Place cards from files, perhaps another family's: a look at what each would change, then a choice."""

from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from enum import StrEnum

import streamlit as st

from tripplan.documents.model import LONGEST_NAME
from tripplan.documents.places.place import LONGEST_ID, Place
from tripplan.errors import Finding
from tripplan.files.cards.place_card import read_place_card
from tripplan.files.cards.shared_cards import cards_in
from tripplan.language import wording
from tripplan.records.merging.differences import NOTHING, Difference, differences
from tripplan.records.store import StoredDocument
from tripplan.screens.places.place_sentences import board_sentences
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import show_findings
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View

_PAGE = "places"
_TURN = "card_upload_turn"


class Choice(StrEnum):
    """What to do with a card whose id is there already."""

    MINE = "Keep mine"
    THEIRS = "Take theirs instead"
    BOTH = "Keep both"


def preview_cards(
    view: View, cards: Mapping[str, StoredDocument[Place]], files: Sequence[tuple[str, bytes]]
) -> None:
    """Show what is wrong with cards that were brought, and let the parent take over the others.

    Args:
        view: whose places.
        cards: what is on record, by id.
        files: names and contents.
    """
    turn = upload_turn()
    places, findings = read_cards(files, view)
    show_findings(findings)
    taken = {*cards, *(place.id for place in places)}
    wanted = []
    same = [place for place in places if (kept := cards.get(place.id)) and kept.value == place]
    if same:
        names = wording.listed([place.name for place in same])
        st.markdown(plain(f"You have {len(same)} of these cards already, word for word: {names}."))
    for place in places:
        if place in same:
            continue
        chosen = _chosen(place, cards.get(place.id), taken, f"{turn}_{place.id}")
        if chosen is not None:
            wanted.append(chosen)
            taken.add(chosen[0].id)
    if len(same) == len(places):
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


def upload_turn() -> int:
    """How often cards were taken over; part of the key of the field that brings them, which is then empty."""
    turn: int = st.session_state.setdefault(_TURN, 0)
    return turn


def _chosen(
    place: Place, kept: StoredDocument[Place] | None, taken: Collection[str], turn: str
) -> tuple[Place, int] | None:
    """What to save of one card, with the revision it replaces; None for nothing."""
    if kept is None:
        st.markdown(plain(f"{place.name}: new."))
        st.markdown(bullets(board_sentences(place)))
        return place, 0
    st.markdown(plain(f"{place.name}: you have a card with the same id. Theirs differs from yours:"))
    st.markdown(bullets(told(differences(kept.value, place))))
    choice = st.radio(
        plain(f"What to do with {place.name}?"),
        [choice.value for choice in Choice],
        key=f"choice_{turn}",
        help="Your own figures, drives and plans stay with your card. What is replaced can be taken back.",
    )
    if choice == Choice.THEIRS:
        return place, kept.revision
    if choice == Choice.BOTH:
        other = beside(place, taken)
        st.caption(plain(f"Theirs will be called '{other.name}', with the id {other.id}."))
        return other, 0
    return None


def told(found: Sequence[Difference]) -> list[str]:
    """What would change on a card, one sentence a field.

    Args:
        found: from the card on record to the other one.
    """
    sentences = []
    for one in found:
        if one.before == NOTHING:
            sentences.append(f"{one.field}: yours has none, theirs says {one.after}")
        elif one.after == NOTHING:
            sentences.append(f"{one.field}: yours says {one.before}, theirs has none")
        else:
            sentences.append(f"{one.field}: yours says {one.before}, theirs says {one.after}")
    return sentences


def beside(place: Place, taken: Collection[str]) -> Place:
    """The card under an id and a name that are free, so that it can stand beside the one there is.

    Args:
        place: the card.
        taken: the ids that are not free.
    """
    number = 2
    while (free := f"{place.id[: LONGEST_ID - len(str(number)) - 1].rstrip('-')}-{number}") in taken:
        number += 1
    mark = f" ({number})"
    return place.model_copy(update={"id": free, "name": f"{place.name[: LONGEST_NAME - len(mark)]}{mark}"})


def read_cards(files: Sequence[tuple[str, bytes]], view: View) -> tuple[list[Place], list[Finding]]:
    """The faultless cards of several files, and every finding.

    Args:
        files: names and contents; a file may hold several cards.
        view: whose today tells how old the prices are.
    """
    cards = [card for name, content in files for card in cards_in(name, content)]
    read = [read_place_card(content, name, view.today) for name, content in cards]
    findings = [finding for one in read for finding in one.findings]
    places = [one.value for one in read if one.value is not None]
    counts = Counter(place.id for place in places)
    for (name, _), one in zip(cards, read, strict=True):
        if one.value is not None and counts[one.value.id] > 1:
            findings.append(Finding(name, "id", one.value.id, "another of these cards has the same id"))
    return [place for place in places if counts[place.id] == 1], findings


def _take_over(view: View, wanted: Sequence[tuple[Place, int]]) -> None:
    names = ", ".join(place.name for place, _ in wanted)
    if save_all(view, _PAGE, wanted, f"Taken over: {names}."):
        st.session_state[_TURN] += 1
