"""A form for the annual passes that the family holds."""

from collections.abc import Sequence
from datetime import timedelta

import streamlit as st

from tripplan.documents.family.held_pass import HeldPass
from tripplan.documents.family.household import Household
from tripplan.documents.places.offers import Pass, is_kept
from tripplan.errors import Finding
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.household.saving import check_and_save, raw_household
from tripplan.screens.widgets.fields import Fields, filled
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.view import View


def _passes_on_cards(view: View) -> dict[str, tuple[str, str, str]]:
    """Every annual pass or ticket for two places on a card: place id, name, and both in words."""
    places = view.family.places if view.family else ()
    return {
        f"{place.id}/{offer.name}": (place.id, offer.name, f"{offer.name}, {place.name}")
        for place in places
        for offer in place.offers
        if is_kept(offer)
    }


def _with_counted_guests(view: View, held: Sequence[HeldPass]) -> tuple[int, ...]:
    """Which of the passes held let in so many guests in all, by their index."""
    places = view.family.places if view.family else ()
    limited = {
        (place.id, offer.name)
        for place in places
        for offer in place.offers
        if isinstance(offer, Pass) and offer.guests_per_year is not None
    }
    return tuple(index for index, one in enumerate(held) if (one.place, one.offer) in limited)


def held_in_words(held: HeldPass, view: View) -> str:
    """A pass that is held, such as 'Year card of Old Mill, for Joel, until Sat, Dec 4, 2027'."""
    places = {place.id: place.name for place in view.family.places} if view.family else {}
    return say(
        "household-held-for",
        offer=held.offer,
        place=places.get(held.place, held.place),
        holders=held.holders,
        day=held.valid_until,
    )


def pass_form(view: View, kept: StoredDocument[Household]) -> None:
    """The passes on record, each to be left out, and one more from those the places sell."""
    held, sold = kept.value.passes, _passes_on_cards(view)
    if not held and not sold:
        st.caption(say("household-no-pass-sold"))
        return
    counted = _with_counted_guests(view, held)
    fields = filled(
        "passes",
        {
            **{f"gone{index}": False for index in range(len(held))},
            **{f"guests{index}": held[index].guests_so_far for index in counted},
            "new": "",
            "holders": [],
            "until": view.today + timedelta(days=365),
        },
    )
    with form_box(fields, border=False):
        for index, one in enumerate(held):
            st.checkbox(
                plain(say("household-leave-pass-out", offer=one.offer, day=one.valid_until)),
                key=fields.key(f"gone{index}"),
            )
            if index in counted:
                label = plain(say("household-guests-so-far", offer=one.offer))
                st.number_input(label, min_value=0, max_value=1000, step=1, key=fields.key(f"guests{index}"))
        st.selectbox(
            say("household-another-pass"),
            ["", *sold],
            format_func={
                "": say("household-none"),
                **{name: said for name, (_, _, said) in sold.items()},
            }.__getitem__,
            key=fields.key("new"),
        )
        st.multiselect(
            say("household-written-out-to"),
            [member.name for member in kept.value.members],
            key=fields.key("holders"),
        )
        st.date_input(say("household-until-which-day"), key=fields.key("until"), format=wording.date_field())
        save_button(
            fields,
            say("household-save", what=say("household-the-passes")),
            key="save_passes",
            on_click=_save_passes,
            args=(view, kept, fields),
        )


def _save_passes(view: View, kept: StoredDocument[Household], fields: Fields) -> None:
    typed = fields.typed()
    raw = raw_household(kept.value)
    passes = [
        {**one, "guests_so_far": typed.get(f"guests{index}", one.get("guests_so_far", 0))}
        for index, one in enumerate(raw.get("passes", ()))
        if not typed[f"gone{index}"]
    ]
    found = []
    if typed["new"]:
        place, offer, called = _passes_on_cards(view)[typed["new"]]
        if not typed["holders"]:
            found.append(Finding("", "passes.holders", called, say("household-one-person")))
        valid_until = typed["until"] or view.today
        passes.append(
            {"place": place, "offer": offer, "holders": typed["holders"], "valid_until": valid_until}
        )
    raw["passes"] = passes
    check_and_save(view, "passes", kept.revision, raw, found)
