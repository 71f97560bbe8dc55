"""The invented family with everything it has."""

from datetime import date

import pytest

from tests.conftest import ROOT
from tripplan.files.demo import read_demo
from tripplan.planning.calendars import FamilyCalendar, SchoolCalendar
from tripplan.planning.family import Family
from tripplan.planning.household import Household
from tripplan.planning.place import Place


@pytest.fixture(scope="session")
def demo_family() -> Family:
    """The household of the demo with its places and calendars."""
    documents = read_demo(ROOT / "demo_places", date(2026, 11, 25)).documents
    (household,) = (document for document in documents if isinstance(document, Household))
    return Family(
        household,
        tuple(document for document in documents if isinstance(document, Place)),
        tuple(document for document in documents if isinstance(document, SchoolCalendar)),
        tuple(document for document in documents if isinstance(document, FamilyCalendar)),
    )
