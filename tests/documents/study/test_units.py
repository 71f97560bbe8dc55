"""A study unit says what is studied, when, for whom and for how much."""

from datetime import date
from decimal import Decimal
from typing import Any

import pytest
from pydantic import ValidationError

from tripplan.documents.study.units import StudyUnit
from tripplan.values.money import Money

GRAIN: dict[str, Any] = {
    "name": "From grain to bread",
    "topics": ["grain and bread"],
    "first": "2027-01-11",
    "last": "2027-02-14",
    "currency": "USD",
}


def test_both_ends_of_its_weeks_count() -> None:
    """The first and the last day lie in the unit, the days beside them do not."""
    weeks = StudyUnit.model_validate(GRAIN).weeks
    assert date(2027, 1, 11) in weeks
    assert date(2027, 2, 14) in weeks
    assert date(2027, 1, 10) not in weeks
    assert date(2027, 2, 15) not in weeks


def test_a_budget_carries_its_currency_and_may_be_missing() -> None:
    """No budget is no limit, which is not the same as nothing to spend."""
    assert StudyUnit.model_validate(GRAIN).spends_at_most is None
    assert StudyUnit.model_validate({**GRAIN, "budget": 0}).spends_at_most == Money(Decimal(0), "USD")
    assert StudyUnit.model_validate({**GRAIN, "budget": "80.50"}).spends_at_most == Money(
        Decimal("80.50"), "USD"
    )


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"topics": []}, "at least 1 item"),
        ({"last": "2027-01-10"}, "before the first"),
        ({"name": " "}, "at least 1 character"),
        ({"budget": -1}, "greater than or equal to 0"),
        ({"currency": "coins"}, "ISO 4217"),
        ({"weeks": 4}, "Extra inputs"),
    ],
)
def test_what_makes_no_sense_is_refused(changes: dict[str, Any], said: str) -> None:
    """A unit without topics or with its ends swapped, and fields nobody knows."""
    with pytest.raises(ValidationError, match=said):
        StudyUnit.model_validate({**GRAIN, **changes})
