"""What a nuisance is worth, set right where days are ranked; it can be kept in the household."""

from dataclasses import replace

import streamlit as st
from pydantic import ValidationError

from tripplan.documents.family.household import Household
from tripplan.documents.family.worth import Worth
from tripplan.documents.field_spec import labels
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.reading.typed.amounts import amount_in
from tripplan.screens.widgets.choices import keep
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.notices import show_notice
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View

SPOT = "weights"


def _labels() -> dict[str, str]:
    return dict(labels(Worth))


def weights_form(view: View, household: Household) -> None:
    """Ask what a lost nap, a crowd and the like are worth; the household's own figures at first."""
    st.caption(say("days-weights-lead"))
    for name, label in _labels().items():
        _amount(view, household, name, label)
    worth = _kept_worth(view, household)
    if worth != household.worth:
        st.button(say("days-keep-weights"), key="keep_weights", on_click=_save, args=(view, worth))
    show_notice(SPOT)


def weighed(view: View, family: Family) -> Family:
    """The family as it weighs them by what was last typed. The page ends where an amount cannot be read."""
    household = family.household
    worth = _kept_worth(view, household)
    return replace(family, household=household.model_copy(update={"worth": worth}))


def _kept_worth(view: View, household: Household) -> Worth:
    on_record = household.worth
    texts = {name: _kept_text(view, household, name) for name in Worth.model_fields}
    typed = {name: amount_in(text) or text for name, text in texts.items()}
    try:
        return Worth.model_validate({**dict(on_record), **typed})
    except ValidationError as trouble:
        fields = tuple(_labels()[str(fault["loc"][0])] for fault in trouble.errors())
        st.error(plain(say("days-weights-bad", fields=fields)))
        st.stop()


def _kept_text(view: View, household: Household, name: str) -> str:
    return str(st.session_state.get(f"weight_{name}_{view.which}", getattr(household.worth, name)))


def _amount(view: View, household: Household, name: str, label: str) -> None:
    kept, widget = f"weight_{name}_{view.which}", f"weight_{name}"
    st.text_input(
        f"{label} [{household.currency}]",
        value=_kept_text(view, household, name),
        key=widget,
        on_change=keep,
        args=(kept, widget),
    )


def _save(view: View, worth: Worth) -> None:
    kept = view.records.get(Household)
    if kept is not None:
        household = kept.value.model_copy(update={"worth": worth})
        save_all(view, SPOT, [(household, kept.revision)], say("days-weights-kept"))
