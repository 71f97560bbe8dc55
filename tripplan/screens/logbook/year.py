"""The year's money on Afterwards: one bar against the budget, and a step further where it went."""

from collections.abc import Callable, Mapping
from datetime import date, timedelta
from typing import Any

import streamlit as st

from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.study.units import StudyUnit
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.against_plan import year_against_plan
from tripplan.planning.logbook.sentences import year_against_lines, year_lines
from tripplan.planning.logbook.year import YearAccount, year_account
from tripplan.reading.typed.amounts import amount_in
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.faults import forget_faults, keep_faults, tell_faults_at
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.logbook.entry_form import PAGE
from tripplan.screens.logbook.typed_entry import children_of
from tripplan.screens.start.budget import budget_face
from tripplan.screens.widgets.fields import Fields, FieldValue, filled, put, refill
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import named, refuse, show_notice
from tripplan.screens.widgets.one_open import close_part, opener, part_if_open
from tripplan.screens.widgets.saving import save_all, take_back_button
from tripplan.screens.widgets.view import View

_SPOT = "logbook_year"
_MONEY, _BUDGET = "year_money", "year_budget"
_LABELS = {
    "budget": "afterwards-years-budget",
    "year_begins_day": "afterwards-on-day",
    "grade_bands": "afterwards-grades",
    "grade_bands.band": "afterwards-grades",
}


def year_of_outings(
    view: View,
    family: Family,
    entries: Mapping[str, StoredDocument[LogbookEntry]],
    outings: Mapping[str, StoredDocument[PlannedOuting]],
    settings: StoredDocument[LogbookSettings] | None,
) -> None:
    """Show what is left of the year's money as one bar; where it went, and the budget, are a press away."""
    chosen = settings.value if settings else LogbookSettings()

    def account_with(day: date) -> YearAccount:
        return year_account(
            [kept.value for kept in entries.values()],
            [kept.value for kept in outings.values()],
            [kept.value for kept in view.records.all(StudyUnit).values()],
            chosen,
            currency=family.household.currency,
            today=view.today,
            year_with=day,
        )

    account = account_with(view.today)
    with st.container(border=True, key="card_year"):
        st.html(budget_face(account.purse))
        show_notice(_SPOT)
        take_back_button(view, _SPOT)
        with st.container(horizontal=True):
            if entries:
                opener(view, PAGE, _MONEY, say("afterwards-money-went"), about=say("afterwards-about-money"))
            set_budget = say("afterwards-change-budget")
            if chosen.budget is None:
                set_budget = say("afterwards-set-budget")
            opener(view, PAGE, _BUDGET, set_budget, about=say("afterwards-about-budget"))
        part = part_if_open(view, PAGE, _MONEY)
        if part is not None:
            with part:
                _where_it_went(entries, account, account_with)
        part = part_if_open(view, PAGE, _BUDGET)
        if part is not None:
            with part:
                _settings_form(view, family, settings)


def _where_it_went(
    entries: Mapping[str, StoredDocument[LogbookEntry]],
    account: YearAccount,
    account_with: Callable[[date], YearAccount],
) -> None:
    years = {"this": say("afterwards-since", day=account.first), "last": say("afterwards-year-before")}
    picked = st.segmented_control(
        say("afterwards-which-year"),
        list(years),
        format_func=years.__getitem__,
        default="this",
        key="logbook_which_year",
    )
    if picked == "last":
        account = account_with(account.first - timedelta(days=1))
    st.markdown(bullets(year_lines(account)))
    lines = [kept.value for kept in entries.values() if account.first <= kept.value.day <= account.last]
    st.markdown(f"**{say('afterwards-planned-and-paid')}**")
    st.markdown(bullets(year_against_lines(year_against_plan(lines, account.purse.spent.currency))))


def _settings_form(view: View, family: Family, settings: StoredDocument[LogbookSettings] | None) -> None:
    chosen = settings.value if settings else LogbookSettings()
    currency = chosen.currency or family.household.currency
    children = children_of(family.household, view.today)
    on_record: dict[str, FieldValue] = {
        "budget": "" if chosen.budget is None else f"{chosen.budget:f}",
        "month": chosen.year_begins_month,
        "day": chosen.year_begins_day,
        **{f"band_{name}": chosen.band_of(name) for name in children},
    }
    fields = filled(f"{_SPOT}_{view.which}", on_record)
    with form_box(fields, border=False):
        st.text_input(
            say("afterwards-may-cost", currency=currency),
            key=fields.key("budget"),
            help=say("afterwards-no-budget"),
        )
        tell_faults_at(fields, "budget")
        st.selectbox(
            say("afterwards-year-begins"),
            list(range(1, 13)),
            format_func=wording.month,
            key=fields.key("month"),
        )
        st.number_input(say("afterwards-on-day"), min_value=1, max_value=28, key=fields.key("day"))
        for name in children:
            st.text_input(
                plain(say("afterwards-grades-of", name=name)),
                key=fields.key(f"band_{name}"),
                placeholder=say("afterwards-grades-example"),
            )
        tell_faults_at(fields, "band_", "grade_bands")
        save_button(
            fields,
            say("afterwards-save-budget"),
            key="save_logbook_settings",
            on_click=_save,
            args=(view, fields, settings, currency, children),
            is_main=False,
        )


def _save(
    view: View,
    fields: Fields,
    settings: StoredDocument[LogbookSettings] | None,
    currency: str,
    children: list[str],
) -> None:
    typed = fields.typed()
    before = settings.value if settings else LogbookSettings()
    others = [band.model_dump() for band in before.grade_bands if band.member not in children]
    values: dict[str, Any] = {
        "currency": currency,
        "year_begins_month": typed["month"],
        "year_begins_day": typed["day"],
        "grade_bands": [
            *others,
            *(
                {"member": name, "band": band}
                for name in children
                if (band := str(typed[f"band_{name}"]).strip())
            ),
        ],
        "not_learned": [what.value for what in before.not_learned],
    }
    put(values, "budget", amount_in(typed["budget"]) or typed["budget"])
    read = read_form(write_toml(values), "", LogbookSettings)
    if read.value is None:
        told = named(read.findings, {path: say(code) for path, code in _LABELS.items()})
        keep_faults(fields.form, read.findings, told)
        refuse(_SPOT, findings=told)
        return
    said = say("afterwards-budget-saved")
    if save_all(view, _SPOT, [(read.value, settings.revision if settings else 0)], said):
        forget_faults(fields.form)
        refill(fields.form)
        close_part(view, PAGE)
