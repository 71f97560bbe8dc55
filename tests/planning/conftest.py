"""Families to plan outings with: a small one with one place, and the invented one with everything it has."""

from datetime import date

import pytest

from tests.builders import make_household, make_place
from tests.conftest import ROOT
from tripplan.documents.calendars.calendars import FamilyCalendar, SchoolCalendar
from tripplan.documents.family.household import Household
from tripplan.documents.places.place import Place
from tripplan.files.demo import read_demo
from tripplan.planning.family.family import Family


@pytest.fixture
def family() -> Family:
    """Two adults, a seven-year-old and a napping toddler, and a museum an hour away."""
    return Family(make_household(), (make_place(),))


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
