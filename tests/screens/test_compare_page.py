import re
import sqlite3
from collections.abc import Callable
from contextlib import closing
from datetime import date
from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

from tests.builders import make_outing
from tests.saying import says
from tests.screens.conftest import drawn, opened_part, said, services_in
from tripplan.records.database import Database
from tripplan.records.kinds import ComparedPlaces
from tripplan.records.opening import Which

OpenApp = Callable[..., AppTest]


def totals(app: AppTest) -> list[int]:
    """The totals on the cards [$]."""
    return [
        int(found) for found in re.findall(r"\$(\d+)\+? +(?:load up|drive off)", " ".join(drawn(app).split()))
    ]


@pytest.mark.parametrize("page", ["start", "compare"])
def test_a_first_visitor_sees_three_outings_compared(open_app: OpenApp, page: str) -> None:
    """Nothing is planned yet: the first page, like Compare, has three totals and tells of the demo."""
    app = open_app(page)
    assert len(totals(app)) == 3
    assert app.title[0].value == "Three outings for 7"
    assert any("invented" in text.value for text in app.markdown)
    assert not app.table


def test_the_figures_stand_side_by_side_once_asked_for(open_app: OpenApp) -> None:
    """A chart and a table, which are not worked out before."""
    app = opened_part(open_app("compare"), "open_figures")
    assert not app.exception
    assert {"Total", "Best day", "Nap", "Crowds"} <= set(app.table[0].value.index)


def test_how_sure_the_order_is_can_be_asked(open_app: OpenApp) -> None:
    """What would change the order is told with its figures, by money and with hassle counted."""
    app = opened_part(open_app("compare"), "open_sure")
    assert not app.exception
    for code in ("flips-two-firsts", "flips-cheapest", "flips-better"):
        assert says(said(app.markdown), code)


def test_each_total_can_be_asked_why(open_app: OpenApp) -> None:
    """Each outing tells its items, its tickets and how full it is, and where the figures come from."""
    app = open_app("compare")
    asked = [key for key in (str(button.key) for button in app.button) if key.startswith("ask_why_")]
    assert len(asked) == 3
    for key in asked:
        app.button(key=key).click().run()
        assert not app.exception
        assert "estimate: counted elsewhere, not at this place" in said(app.markdown)
        assert "What it costs" in said(app.markdown)
        app.button(key=key).click().run()
        assert "What it costs" not in said(app.markdown)


def test_planning_an_outing_opens_its_day(open_app: OpenApp) -> None:
    """One press, and Day plan speaks of that place."""
    app = open_app("compare")
    app.button(key="take_ledgewing").click().run()
    assert not app.exception
    assert app.title[0].value.startswith("Ledgewing Birds of Prey")


def test_other_places_are_compared_and_kept(open_app: OpenApp) -> None:
    """Another pick changes the cards and stands in the records."""
    app = opened_part(open_app("compare"), "open_where")
    app.multiselect(key="compared_places").set_value(["tern-landing"]).run()
    assert not app.exception
    assert len(totals(app)) == 1
    again = opened_part(open_app("compare"), "open_where")
    assert again.multiselect(key="compared_places").value == ["tern-landing"]


def test_a_choice_stays_with_the_records_that_it_was_made_in(open_app: OpenApp, tmp_path: Path) -> None:
    """The demo is on the screen, another window switches to the own records: the choice is the demo's."""
    app = opened_part(open_app("compare"), "open_where")
    parts = services_in(tmp_path / "data")
    parts.use(Which.FAMILY)
    app.multiselect(key="compared_places").set_value(["tern-landing"]).run()
    assert not app.exception
    assert parts.own.get(ComparedPlaces) is None
    kept = parts.demo.get(ComparedPlaces)
    assert kept is not None
    assert kept.value.places == ("tern-landing",)


def test_a_choice_that_cannot_be_kept_says_so(
    open_app: OpenApp, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Another program holds the file: the page stands, with a sentence."""
    monkeypatch.setattr(Database.__init__, "__defaults__", (0.05,))  # patience [s]
    app = opened_part(open_app("compare"), "open_where")
    with closing(sqlite3.connect(tmp_path / "data" / "demo.sqlite3", isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        app.multiselect(key="compared_places").set_value(["tern-landing"]).run()
    assert not app.exception
    assert "Nothing was changed" in app.error[0].value
    assert len(totals(app)) == 3


def test_a_smaller_party_costs_less(open_app: OpenApp) -> None:
    """Leaving the grandmother at home lowers the sum of the totals, and the chip tells how many go."""
    app = opened_part(open_app("compare"), "open_who")
    before = totals(app)
    party = app.button_group(key="party_picker")
    party.set_value([name for name in party.value or [] if not name.startswith("Grandma")]).run()
    assert not app.exception
    assert app.title[0].value == "Three outings for 6"
    assert sum(totals(app)) < sum(before)


def test_own_records_without_a_household_begin_with_three_steps(open_app: OpenApp) -> None:
    """Leaving the demo shows no outing but the way to begin, with the demo one press away."""
    app = open_app()
    app.button(key="leave_demo").click().run()
    assert not app.exception
    assert not totals(app)
    assert "Three steps" in app.title[0].value
    assert app.text_input(key="first_name")
    app.button(key="load_demo").click().run()
    assert len(totals(app)) == 3


def test_the_best_three_stand_side_by_side_until_others_are_picked(open_app: OpenApp, data: Path) -> None:
    """Picked places last; with a press it proposes again, and not where the family is going anyway."""
    app = opened_part(open_app("compare"), "open_where")
    picked = services_in(data).records.get(ComparedPlaces)
    assert picked is not None
    app.button(key="suggest_places").click().run()
    assert not app.exception
    services = services_in(data)
    suggested = {str(button.key).removeprefix("take_") for button in app.button if "take_" in str(button.key)}
    assert len(suggested) == 3
    assert suggested != set(picked.value.places)
    for place in suggested:
        planned = make_outing(date(2027, 3, 2), id=place, uid=place, place=place, party=("Tamsin",))
        services.records.save(planned, services.clock())
    app = open_app("compare")
    others = {str(button.key).removeprefix("take_") for button in app.button if "take_" in str(button.key)}
    assert len(others) == 3
    assert not others & suggested
