"""What a nuisance is worth, set right where days are ranked; it can be kept in the household."""

from dataclasses import replace

import streamlit as st
from pydantic import ValidationError

from tripplan.documents.family.household import Household
from tripplan.documents.family.worth import Worth
from tripplan.documents.field_spec import labels
from tripplan.planning.family.family import Family
from tripplan.reading.typed_amounts import amount_in
from tripplan.screens.household.sections import WORTH
from tripplan.screens.widgets.choices import keep
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View
from tripplan.values import wording
from tripplan.values.money import Money

SPOT = "weights"
_LABELS = dict(labels(Worth))


def weighed(view: View, family: Family) -> Family:
    """Ask what nuisances are worth, the household's own figures at first, and say them all.

    Returns:
        The family as it weighs them now. The page ends where an amount cannot be read.
    """
    household = family.household
    on_record = household.worth
    with st.expander("What a nuisance is worth to you", expanded=False):
        st.caption(WORTH.lead)
        texts = {name: _amount(view, household, name, label) for name, label in _LABELS.items()}
        typed = {name: amount_in(text) or text for name, text in texts.items()}
        try:
            worth = Worth.model_validate({**dict(on_record), **typed})
        except ValidationError as trouble:
            fields = [_LABELS[str(fault["loc"][0])] for fault in trouble.errors()]
            st.error(plain(f"An amount reads like 12 or 9.50: {wording.listed(fields)}."))
            st.stop()
        if worth != on_record:
            st.button("Keep these in the household", key="keep_weights", on_click=_save, args=(view, worth))
        show_notice(SPOT)
    amounts = (
        f"{_LABELS[name].lower()} {wording.money(Money(getattr(worth, name), household.currency))}"
        for name in _LABELS
    )
    st.caption(plain(f"Weighed against money: {'; '.join(amounts)}."))
    return replace(family, household=household.model_copy(update={"worth": worth}))


def _amount(view: View, household: Household, name: str, label: str) -> str:
    kept, widget = f"weight_{name}_{view.which}", f"weight_{name}"
    return str(
        st.text_input(
            f"{label} [{household.currency}]",
            value=st.session_state.get(kept, str(getattr(household.worth, name))),
            key=widget,
            on_change=keep,
            args=(kept, widget),
        )
    )


def _save(view: View, worth: Worth) -> None:
    kept = view.records.get(Household)
    if kept is not None:
        household = kept.value.model_copy(update={"worth": worth})
        save_all(view, SPOT, [(household, kept.revision)], "These figures now stand in the household.")
