"""The rain plan on Day plan: one press swaps."""

import os
from datetime import UTC, date, datetime
from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

from tests.screens.conftest import said, services_in
from tripplan.documents.outings.planned import EntryTicks, PlannedOuting, PlanStatus
from tripplan.planning.calendar_entry.planned_outing import planned_from
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts

DAY = date(2027, 4, 15)


def page() -> None:
    """The part for the prairie of the demo; whole in itself, as the test runs it from its text."""
    import os
    from datetime import date

    from tripplan.planning.outing.outing import Outing
    from tripplan.screens.day_plan.rain_part import render_rain_plan
    from tripplan.screens.widgets import answers
    from tripplan.screens.widgets.view import View
    from tripplan.services import open_services

    services = open_services(dict(os.environ))
    family = services.family()
    assert family is not None
    view = View(services, services.which, family, services.today(family))
    place = next(one for one in family.places if one.visit.indoors == "outdoors")
    names = [one.name for one in family.household.members]
    outing = answers.planned(family, names, place, date(2027, 4, 15), view.today)
    if isinstance(outing, Outing):  # once it is swapped, its time is taken
        render_rain_plan(view, family, outing)


@pytest.mark.usefixtures("data")
def test_one_press_puts_the_indoor_outing_on_record() -> None:
    """The entry of the outing in the open air now is the one indoors, and that is what the pages speak of."""
    services = services_in(Path(os.environ["TRIPPLAN_DATA"]))
    family = services.family()
    assert family is not None
    place = next(one for one in family.places if one.visit.indoors == "outdoors")
    outing = plan_outing(
        family, family.party(), place_facts(family, place, (2027,)), DAY, today=date(2026, 11, 25)
    )
    assert isinstance(outing, Outing)
    now = datetime(2026, 11, 25, 15, tzinfo=UTC)
    kept = planned_from(
        outing, family.household, EntryTicks(), PlanStatus.CONFIRMED, before=None, ids_taken=(), at=now
    )
    services.demo.save(kept, now, 0)
    app = AppTest.from_function(page, default_timeout=30).run()
    assert not app.exception, app.exception
    assert "If it rains:" in said(app.markdown)
    app.button(key="use_rain_plan").click().run()
    assert not app.exception, app.exception
    changed = services.demo.get(PlannedOuting, kept.id)
    assert changed is not None
    indoors = next(one for one in family.places if one.id == changed.value.place)
    assert indoors.visit.indoors == "indoors"
    assert changed.value.day == DAY
    assert changed.value.sequence == kept.sequence + 1
    assert app.session_state["taken_demo"][0] == indoors.id
