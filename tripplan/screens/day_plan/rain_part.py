"""The rain plan: where to go instead of an outing in the open air, one press away."""

import streamlit as st

from tripplan.documents.outings.planned import PlannedOuting
from tripplan.documents.study.units import StudyUnit
from tripplan.language.sentences import say
from tripplan.planning.family.family import Family
from tripplan.planning.on_the_day.rain_plan import RainPlan, swapped
from tripplan.planning.outing.outing import Outing
from tripplan.records.planned_outings import outings_ever
from tripplan.screens.day_plan.running_late import USED
from tripplan.screens.widgets import answers
from tripplan.screens.widgets.choices import on_record, take
from tripplan.screens.widgets.markdown import plain
from tripplan.screens.widgets.saving import save_all
from tripplan.screens.widgets.view import View


def render_rain_plan(view: View, family: Family, outing: Outing) -> None:
    """Say what there is to do indoors on the same day, with what it costs, and offer to swap.

    Args:
        view: whose records.
        family: people, car, home, places.
        outing: the one that is planned; nothing is shown unless it is in the open air.
    """
    if outing.place.visit.indoors != "outdoors":
        return
    planned = on_record(view, outing.place.id, outing.day)
    unit = view.records.get(StudyUnit, planned.study_unit) if planned and planned.study_unit else None
    found = answers.if_it_rains(family, outing, unit.value if unit else None, view.today)
    if found is None:
        st.markdown(say("dayplan-rain-nothing"))
        return
    with st.container(border=True, key="rain_plan"):
        st.markdown(plain(say("dayplan-rain", what=found.sentence)))
        st.button(
            plain(say("dayplan-rain-use", place=found.outing.place.name)),
            key="use_rain_plan",
            on_click=_use,
            args=(view, family, outing, found, planned),
            help=say("dayplan-rain-use-help"),
        )


def _use(view: View, family: Family, outing: Outing, found: RainPlan, planned: PlannedOuting | None) -> None:
    """Show the rain plan; where the outing is on record, put it in its place there."""
    new = found.outing
    if planned is None:
        take(view, new.place.id, new.day)
        return
    ever = outings_ever(view.records)
    changed = swapped(found, family, planned, ids_taken=ever.ids, at=view.services.clock())
    said = say("dayplan-rain-used", place=new.place.name, before=outing.place.name)
    if save_all(view, USED, [(changed, ever.revision_of(planned))], said):
        take(view, new.place.id, new.day, changed.leave_home, changed.leave_place)
