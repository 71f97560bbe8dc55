"""The year's money on the Logbook page, against the budget and against the plans."""

import calendar
from collections.abc import Mapping
from typing import Any

import streamlit as st

from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.study.units import StudyUnit
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language import wording
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.against_plan import year_against_plan
from tripplan.planning.logbook.sentences import year_against_lines, year_lines
from tripplan.planning.logbook.year import YearAccount, year_account
from tripplan.reading.typed_amounts import amount_in
from tripplan.records.store import StoredDocument
from tripplan.screens.forms.form_box import form_box, save_button
from tripplan.screens.logbook.typed_entry import children_of
from tripplan.screens.widgets.fields import Fields, FieldValue, filled, put, refill
from tripplan.screens.widgets.markdown import bullets, plain
from tripplan.screens.widgets.notices import named, refuse, show_notice
from tripplan.screens.widgets.saving import save_all, take_back_button
from tripplan.screens.widgets.view import View

_SPOT = "logbook_year"
_MONTHS = {number: calendar.month_name[number] for number in range(1, 13)}
_LABELS = {
    "budget": "Budget of the year",
    "year_begins_day": "on day",
    "grade_bands": "Grades",
    "grade_bands.band": "grades",
}


def year_of_outings(
    view: View,
    family: Family,
    entries: Mapping[str, StoredDocument[LogbookEntry]],
    outings: Mapping[str, StoredDocument[PlannedOuting]],
    settings: StoredDocument[LogbookSettings] | None,
) -> None:
    """Show what the year has cost, what is left, and how the plans have held; let the budget be set."""
    st.header("The year's money", anchor=False)
    chosen = settings.value if settings else LogbookSettings()
    first, _ = chosen.year_of(view.today)
    years = {"this": f"the year from {wording.day(first)}", "last": "the year before"}
    picked = st.segmented_control(
        "Which year?", list(years), format_func=years.__getitem__, default="this", key="logbook_which_year"
    )
    account = year_account(
        [kept.value for kept in entries.values()],
        [kept.value for kept in outings.values()],
        [kept.value for kept in view.records.all(StudyUnit).values()],
        chosen,
        currency=family.household.currency,
        today=view.today,
        year_with=first.replace(year=first.year - 1) if picked == "last" else view.today,
    )
    _sums(account)
    lines = [kept.value for kept in entries.values() if account.first <= kept.value.day <= account.last]
    against = year_against_plan(lines, account.purse.spent.currency)
    with st.expander("Planned against real, over the year", key="open_year_against"):
        st.markdown(bullets(year_against_lines(against)))
        st.caption("Each line adds up only outings for which plan and reality are both known.")
    with st.expander("Budget, year and grades", key="open_logbook_settings"):
        _settings_form(view, family, settings)
    show_notice(_SPOT)
    take_back_button(view, _SPOT)


def _sums(account: YearAccount) -> None:
    purse = account.purse
    columns = st.columns(3)
    columns[0].metric("Spent at least" if purse.unknown else "Spent", wording.money(purse.spent))
    columns[1].metric("Planned, likely", wording.money(purse.planned) if purse.to_come else "nothing")
    left = purse.left_after_planned
    columns[2].metric("Left after that", "no budget set" if left is None else wording.money(left))
    st.markdown(bullets(year_lines(account)))


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
            f"What outings may cost in a year, in {currency}",
            key=fields.key("budget"),
            help="Empty for no budget.",
        )
        st.selectbox(
            "The year begins in", list(_MONTHS), format_func=_MONTHS.__getitem__, key=fields.key("month")
        )
        st.number_input("on day", min_value=1, max_value=28, key=fields.key("day"))
        for name in children:
            st.text_input(
                f"Grades of {plain(name)}, if your state asks",
                key=fields.key(f"band_{name}"),
                placeholder="grades 1-6",
            )
        save_button(
            fields,
            "Save",
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
        refuse(_SPOT, findings=named(read.findings, _LABELS))
        return
    said = "Budget, year and grades are kept."
    if save_all(view, _SPOT, [(read.value, settings.revision if settings else 0)], said):
        refill(fields.form)
