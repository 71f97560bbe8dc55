"""A family with one place, ready to plan an outing with."""

import pytest

from tests.builders import make_household, make_place
from tripplan.planning.family.family import Family


@pytest.fixture
def family() -> Family:
    """Two adults, a seven-year-old and a napping toddler, and a museum an hour away."""
    return Family(make_household(), (make_place(),))
