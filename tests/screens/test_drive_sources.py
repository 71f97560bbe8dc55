"""Wherever a drive is shown, how it is known is said, and whose map it rests on.

Source: Open Database License (ODbL) 1.0, section 4.3: whoever uses a produced work is told that it was made
from the database, and under which license that is.
"""

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import UTC, datetime
from io import BytesIO

import pytest
from pypdf import PdfReader
from streamlit.testing.v1 import AppTest

from tests.day_sheets import FAMILY, MUSEUM, planned, words
from tests.screens.conftest import said
from tripplan.documents.outings.sheet_entries import SheetEntries
from tripplan.files.day_sheet.day_phone_html import day_phone_html
from tripplan.files.day_sheet.day_sheet import day_sheet
from tripplan.files.day_sheet.day_sheet_html import day_sheet_html
from tripplan.files.day_sheet.day_sheet_pdf import Paper, day_sheet_pdf
from tripplan.planning.outing.sentences import drive_sources
from tripplan.planning.travel.drive import Drive, KnownBy
from tripplan.roads.network import CREDIT, RoadNetwork
from tripplan.values.ranges import Origin, Range, Source

ON_ROADS = Drive(
    Range.exactly(40), Range.exactly(35), KnownBy.ROADS, Source(Origin.ROADS, "the quickest way", CREDIT)
)
ESTIMATED = replace(ON_ROADS, known_by=KnownBy.ESTIMATE, source=Source(Origin.ESTIMATE, "fitted"))
TYPED = replace(ON_ROADS, known_by=KnownBy.TYPED, source=Source(Origin.PARENT, "typed in"))


@pytest.fixture(params=[True, False], ids=["roads", "estimate"])
def on_roads(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> bool:
    """Whether the ways to all places are known by roads."""

    def drives(_: RoadNetwork, _origin: object, points: Sequence[object]) -> tuple[Drive | None, ...]:
        return (ON_ROADS if request.param else None,) * len(points)

    monkeypatch.setattr(RoadNetwork, "drives", drives)
    return bool(request.param)


@pytest.mark.parametrize("page", ["compare", "choose_day", "day_plan", "on_the_day"])
def test_every_page_with_a_drive_says_how_it_is_known(
    open_app: Callable[..., AppTest], on_roads: bool, page: str
) -> None:
    """With a road network its map is credited; without, the figures are called an estimate."""
    app = open_app(page)
    if page == "on_the_day":
        app.query_params.update({"place": "tern-landing", "day": "2026-12-03"})
        app.run()
    shown = said([*app.caption, *app.markdown])
    assert (CREDIT in shown) is on_roads
    told = "road network" if on_roads else "an estimate"
    assert f"Drive: {told}" in shown or f"Drives: {told}" in shown


def test_the_sources_of_several_drives_are_told_apart() -> None:
    """Each kind with its places, each credit once."""
    drives = {"Mill": ESTIMATED, "Barn": ON_ROADS, "Cave": ON_ROADS, "Lake": TYPED}
    assert drive_sources(drives) == (
        f"Drives: an estimate for Mill; road network for Barn and Cave; typed in for Lake; {CREDIT}."
    )
    assert drive_sources({"Mill": ESTIMATED}) == "Drive: an estimate."


@pytest.mark.parametrize(
    ("drive", "told"),
    [
        (ON_ROADS, f"Drive: road network; {CREDIT}."),
        (ESTIMATED, "Drive: an estimate."),
        (TYPED, "Drive: typed in."),
    ],
    ids=["roads", "estimate", "typed in"],
)
def test_every_form_of_the_day_sheet_says_how_the_drive_is_known(drive: Drive, told: str) -> None:
    """Web page, PDF and the page for the phone, read again by a second library where there is one."""
    outing = planned(FAMILY, MUSEUM)
    outing = replace(outing, way_there=replace(outing.way_there, drive=drive))
    sheet = day_sheet(outing, FAMILY, SheetEntries())
    assert told in words(sheet)
    assert told in day_sheet_html(sheet)
    assert told in day_phone_html(outing, sheet)
    pdf = day_sheet_pdf(sheet, Paper.LETTER, datetime(2026, 11, 25, tzinfo=UTC))
    printed = " ".join(" ".join(page.extract_text() for page in PdfReader(BytesIO(pdf)).pages).split())
    assert told in printed
