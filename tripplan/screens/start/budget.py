"""What is left of the year's budget, as one bar."""

import streamlit as st

from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.study.units import StudyUnit
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.year import Purse, year_account
from tripplan.screens.look import cards
from tripplan.screens.widgets.view import View


def render_budget(view: View, family: Family) -> None:
    """Draw the bar where a budget is set, with what is spent and what is planned in words."""
    settings = view.records.get(LogbookSettings)
    if settings is None or settings.value.budget is None:
        return
    account = year_account(
        [kept.value for kept in view.records.all(LogbookEntry).values()],
        [kept.value for kept in view.records.all(PlannedOuting).values()],
        [kept.value for kept in view.records.all(StudyUnit).values()],
        settings.value,
        currency=family.household.currency,
        today=view.today,
    )
    with st.container(border=True, key="card_budget"):
        st.html(budget_face(account.purse))


def budget_face(purse: Purse) -> str:
    """The inside of a card about a year's money; without a budget it tells what was spent.

    Args:
        purse: of the year.
    """
    spent, planned, left = purse.spent, purse.planned, purse.left_after_planned
    said = say(
        "start-spent-and-planned", spent=wording.whole_money(spent), planned=wording.whole_money(planned)
    )
    if purse.budget is None or left is None:
        head = cards.name(say("start-spent-this-year"), wording.whole_money(spent), drawing="money")
        return cards.face(head, cards.small(said))
    parts = [(say("start-spent"), float(spent.amount)), (say("start-planned"), float(planned.amount))]
    whole = max(float(purse.budget.amount), sum(much for _, much in parts), 1.0)
    return cards.face(
        cards.name(
            say("start-left-of-budget", budget=wording.whole_money(purse.budget)),
            wording.whole_money(left),
            drawing="money",
        ),
        cards.bar(parts, whole, said, of_whole=True),
        cards.small(said),
    )
