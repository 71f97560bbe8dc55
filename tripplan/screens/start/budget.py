"""What is left of the year's budget, as one bar."""

import streamlit as st

from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.study.units import StudyUnit
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.year import year_account
from tripplan.screens.look import cards
from tripplan.screens.widgets.view import View


def render_budget(view: View, family: Family) -> None:
    """Draw the bar where a budget is set, with what is spent and what is planned in words."""
    settings = view.records.get(LogbookSettings)
    if settings is None or settings.value.budget is None:
        return
    purse = year_account(
        [kept.value for kept in view.records.all(LogbookEntry).values()],
        [kept.value for kept in view.records.all(PlannedOuting).values()],
        [kept.value for kept in view.records.all(StudyUnit).values()],
        settings.value,
        currency=family.household.currency,
        today=view.today,
    ).purse
    left = purse.left_after_planned
    if purse.budget is None or left is None:
        return
    spent, planned, budget = (float(one.amount) for one in (purse.spent, purse.planned, purse.budget))
    said = say(
        "start-spent-and-planned",
        spent=wording.whole_money(purse.spent),
        planned=wording.whole_money(purse.planned),
    )
    with st.container(border=True, key="card_budget"):
        st.html(
            cards.face(
                cards.name(
                    say("start-left-of-budget", budget=wording.whole_money(purse.budget)),
                    wording.whole_money(left),
                    drawing="money",
                ),
                cards.bar(
                    [(say("start-spent"), spent), (say("start-planned"), planned)],
                    max(budget, spent + planned, 1.0),
                    said,
                    of_whole=True,
                ),
                cards.small(said),
            )
        )
