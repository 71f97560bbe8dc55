"""An invented family is told as such wherever it goes: imported, exported, sent, printed."""

import json
from collections.abc import Callable
from dataclasses import replace
from datetime import date
from pathlib import Path

from streamlit.testing.v1 import AppTest

from tests.builders import make_household, make_place
from tests.day_sheets import planned
from tests.screens.conftest import said, services_in
from tripplan.documents.family.household import INVENTED, Household
from tripplan.documents.outings.planned import EntryTicks, PlanStatus
from tripplan.files.cards.household_file import read_household, write_household
from tripplan.planning.calendar_entry.outing_entry import entry_for_outing
from tripplan.planning.family.family import Family
from tripplan.records.export import export_all, import_all, read_export
from tripplan.records.opening import Which
from tripplan.screens.widgets.view import View

OpenApp = Callable[..., AppTest]


def test_an_export_begins_with_whose_it_is(open_app: OpenApp, tmp_path: Path) -> None:
    """A person who opens the file, and the page before it is taken over, read that the family is invented."""
    open_app()
    data = export_all(services_in(tmp_path / "data").demo)
    whole = json.loads(data)
    assert list(whole)[:3] == ["tripplan_records", "of", "invented"]
    assert (whole["of"], whole["invented"]) == ("The Quillmarsh family (invented)", True)
    assert read_export(data, "all.json").of.endswith("an invented family")
    assert read_export(b'{"tripplan_records": 1, "documents": []}', "all.json").of == "nobody's household"


def test_the_demo_in_the_own_records_does_not_pass_for_the_own_family(
    open_app: OpenApp, tmp_path: Path
) -> None:
    """After an import the pages, the notice for papers and the names of files all say so."""
    parts = services_in(tmp_path / "data")
    assert import_all(parts.own, export_all(parts.demo), "all.json", parts.clock()) == ()
    parts.use(Which.FAMILY)
    for page in ("compare", "records"):
        assert "the family in them is invented" in said(open_app(page).markdown)
    family = parts.family()
    assert family is not None
    assert family.household.notice == INVENTED
    view = View(parts, Which.FAMILY, family, parts.today())
    assert view.file_name("days.csv") == "demo-days.csv"
    real = replace(view, family=Family(make_household(), (make_place(),)))
    assert real.file_name("days.csv") == "days.csv"


def test_the_own_family_is_not_told_as_invented(open_app: OpenApp, tmp_path: Path) -> None:
    """Nothing is said of a household that is nobody's invention."""
    parts = services_in(tmp_path / "data")
    parts.own.save(make_household(), parts.clock())
    parts.use(Which.FAMILY)
    assert "invented" not in said(open_app("household").markdown)
    assert make_household().notice == ""


def test_a_household_file_and_a_calendar_entry_keep_it() -> None:
    """Written, read again, and in what the other adult reads on the calendar."""
    household = make_household(invented=True)
    again = read_household(write_household(household), "household.toml", date(2026, 11, 25)).value
    assert again is not None
    assert again.notice == INVENTED
    texts = [
        entry_for_outing(
            planned(one), one, uid="u", ticked=EntryTicks(), status=PlanStatus.CONFIRMED
        ).description
        for one in (household, make_household())
    ]
    assert [text.startswith(INVENTED) for text in texts] == [True, False]


def test_a_demo_of_an_earlier_version_is_told_as_invented_too(tmp_path: Path) -> None:
    """Its household had no mark yet; what was tried out there stays."""
    parts = services_in(tmp_path)
    kept = parts.demo.get(Household)
    assert kept is not None
    earlier = kept.value.model_copy(update={"invented": False, "name": "Tried out"})
    parts.demo.save(earlier, parts.clock(), kept.revision)
    now = services_in(tmp_path).demo.get(Household)
    assert now is not None
    assert (now.value.invented, now.value.name) == (True, "Tried out")
