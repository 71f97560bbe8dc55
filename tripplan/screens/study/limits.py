"""What the semester's outings keep to: a chip that says it, and the form behind it."""

from collections.abc import Mapping, Sequence

import streamlit as st

from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.reading.typed.amounts import amount_in
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.study.saving import PAGE, Wanted
from tripplan.screens.widgets.fields import Fields, filled
from tripplan.screens.widgets.notices import named, refuse
from tripplan.screens.widgets.one_open import close_part, opener, part_if_open
from tripplan.screens.widgets.view import View

_FORM = "programme_limits"
_WEIGHED = {"felt": "studies-weigh-felt", "money": "studies-weigh-money"}
_DAYS = {"first": "studies-first", "last": "studies-last"}


def limits_part(view: View, family: Family, units: Sequence[StudyUnit], wanted: Wanted) -> None:
    """Say what the outings keep to, and let the parent change it.

    Args:
        view: whose records.
        family: the family in use.
        units: its topics.
        wanted: what is on record.
    """
    with st.container(horizontal=True, key="chips"):
        opener(view, PAGE, _FORM, _in_short(wanted.wishes), about=say("studies-limits"))
    part = part_if_open(view, PAGE, _FORM)
    if part is not None:
        with part:
            _form(view, family, units, wanted)


def _in_short(wishes: ProgrammeWishes) -> str:
    most = wishes.spends_at_most
    money = say("studies-no-budget") if most is None else say("studies-at-most", money=most)
    week = say("studies-two-a-week") if wishes.several_a_week else say("studies-one-a-week")
    return f"{money}, {week}"


def _form(view: View, family: Family, units: Sequence[StudyUnit], wanted: Wanted) -> None:
    wishes = wanted.wishes
    names = [unit.name for unit in units]
    fields = filled(
        _FORM,
        {
            "budget": "" if wishes.budget is None else str(wishes.budget),
            "careful": wishes.careful,
            "several_a_week": wishes.several_a_week,
            "same_place_again": wishes.same_place_again,
            "weigh": wishes.weigh,
            "without": [name for name in wishes.without if name in names],
        },
    )
    with form_box(fields):
        st.text_input(
            say("studies-budget", currency=family.household.currency),
            key=fields.key("budget"),
            help=say("studies-budget-help"),
        )
        st.checkbox(say("studies-careful"), key=fields.key("careful"))
        st.checkbox(say("studies-several"), key=fields.key("several_a_week"))
        st.checkbox(say("studies-same-place"), key=fields.key("same_place_again"))
        st.radio(
            say("studies-weigh"),
            list(_WEIGHED),
            format_func={name: say(code) for name, code in _WEIGHED.items()}.__getitem__,
            key=fields.key("weigh"),
            help=say("studies-weigh-help"),
        )
        # An empty day cannot be filled in anew by its key, so the key says what is on record.
        keys = {name: f"limits_{name}_{getattr(wishes, name)}" for name in _DAYS}
        for column, (name, code) in zip(st.columns(2), _DAYS.items(), strict=True):
            column.date_input(
                say(code), value=getattr(wishes, name), format=wording.date_field(), key=keys[name]
            )
        st.multiselect(
            say("studies-without"), names, key=fields.key("without"), placeholder=say("studies-none")
        )
        save_button(
            fields,
            say("studies-save-limits"),
            key="save_limits",
            on_click=_save,
            args=(view, wanted, fields, keys),
            is_main=False,
        )


def _save(view: View, wanted: Wanted, fields: Fields, day_keys: Mapping[str, str]) -> None:
    typed = fields.typed()
    values = {
        **wanted.wishes.model_dump(mode="python", include={"currency", "settled", "ruled_out"}),
        **typed,
        "budget": amount_in(typed["budget"]) or typed["budget"].strip() or None,
        **{name: st.session_state[key] for name, key in day_keys.items()},
    }
    read = read_form(write_toml(_given(values)), "", ProgrammeWishes)
    if read.value is None:
        labels = {name: say(code) for name, code in _DAYS.items()}
        budget = say("studies-budget", currency=wanted.wishes.currency)
        refuse(_FORM, findings=named(read.findings, {"budget": budget, **labels}))
        return
    wanted.save(read.value, say("studies-limits-saved"))
    close_part(view, PAGE)


def _given(values: Mapping[str, object]) -> dict[str, object]:
    """The values without what is left out, as a file would hold them."""
    return {
        name: [_given(one) if isinstance(one, dict) else one for one in value]
        if isinstance(value, list | tuple)
        else value
        for name, value in values.items()
        if value is not None
    }
