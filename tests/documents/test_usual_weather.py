"""Twelve months of weather, as a parent types them."""

from typing import Any

import pytest
from pydantic import ValidationError

from tripplan.documents.usual_weather import UsualWeather

MONTHS = {
    "degrees": "F",
    "highs": [28, 32, 45, 58, 70, 79, 83, 81, 74, 61, 46, 33],
    "lows": [12, 16, 28, 39, 50, 60, 64, 62, 53, 41, 29, 18],
    "wet_days": [8] * 12,
}


@pytest.mark.parametrize(
    ("change", "named"),
    [
        ({"highs": [900, *[40] * 11], "lows": [0] * 12}, "900"),
        ({"degrees": "C", "highs": [83] * 12}, "83"),
        ({"lows": [99, *[10] * 11]}, "month 1"),
        ({"highs": [50] * 11}, "highs"),
        ({"wet_days": [32] * 12}, "wet_days"),
        ({"snow_days": [3]}, "snow_days"),
        ({"lows": ["nan"] * 12}, "lows"),
    ],
)
def test_impossible_months_are_named(change: dict[str, Any], named: str) -> None:
    """900 degrees, a low above the high, eleven months, more days than a month has, no number."""
    with pytest.raises(ValidationError) as found:
        UsualWeather.model_validate({**MONTHS, **change})
    assert named in str(found.value)


def test_snow_may_be_left_out_or_said_of_every_month() -> None:
    """Nobody has to know it."""
    assert UsualWeather.model_validate(MONTHS).snow_days == ()
    assert len(UsualWeather.model_validate({**MONTHS, "snow_days": [1] * 12}).snow_days) == 12
