"""What a parent types about the weather."""

from datetime import UTC, date, datetime

import pytest

from tripplan.documents.places.forecast import ForecastDay
from tripplan.documents.usual_weather import Degrees
from tripplan.errors import InputFaults
from tripplan.planning.climate.typed_weather import too_far, typed_weather

TODAY = date(2026, 11, 25)
"""A Wednesday."""
NOW = datetime(2026, 11, 25, 15, tzinfo=UTC)


def read(text: str, degrees: Degrees = "F") -> ForecastDay:
    """What is read, for a plan of the day after tomorrow."""
    return typed_weather(text, date(2026, 11, 27), degrees, NOW, TODAY)


@pytest.mark.parametrize(
    ("text", "low", "high", "wet", "snow"),
    [
        ("rain", None, None, 1.0, 0.0),
        ("95", None, 35.0, None, None),  # (95 - 32) / 1.8
        ("dry, 41 to 50", 5.0, 10.0, 0.0, 0.0),
        ("41-50", 5.0, 10.0, None, None),
        ("snow and rain", None, None, 1.0, 1.0),
        ("Snow, 14°", None, -10.0, 1.0, 1.0),
        ("-4 F", None, -20.0, None, None),
        ("low 14", -10.0, None, None, None),
        ("high of 50, low 41", 5.0, 10.0, None, None),
        ("20 C", None, 20.0, None, None),
        ("rain 70 %", None, None, 0.7, 0.0),
        ("light snow 30%, high 32", None, 0.0, 0.3, 0.3),
    ],
)
def test_words_and_temperatures_are_read(
    text: str, low: float | None, high: float | None, wet: float | None, snow: float | None
) -> None:
    """One temperature is the high, two are low and high; what is not told stays open."""
    told = read(text)
    assert told.low == pytest.approx(low)
    assert told.high == pytest.approx(high)
    assert (told.wet, told.snow) == (wet, snow)
    assert told.service == ""


def test_a_family_that_counts_in_celsius() -> None:
    """The same number is another temperature."""
    assert read("30", "C").high == 30


@pytest.mark.parametrize(
    ("text", "day"),
    [
        ("rain tomorrow", date(2026, 11, 26)),
        ("today dry", TODAY),
        ("Friday: 50", date(2026, 11, 27)),
        ("snow on Tue", date(2026, 12, 1)),
        ("wet", date(2026, 11, 27)),
    ],
)
def test_a_day_can_be_named(text: str, day: date) -> None:
    """Else the planned one is meant; 'wet' and 'sunny' are no weekdays."""
    assert read(text).day == day


@pytest.mark.parametrize(
    ("text", "faults"),
    [
        ("", ["say rain"]),
        ("900", ["900 °F is no temperature"]),
        ("95 C", ["95 °C is no temperature"]),
        ("900, purple", ["900 °F", "purple"]),
        ("rain and dry", ["not both"]),
        ("1 2 3", ["at most two"]),
        ("70 %", ["percentage stands with rain"]),
        ("rain 170 %", ["170 % is no chance"]),
        ("rain Monday and Tuesday", ["one day at a time"]),
        ("$$$", ["no word for weather"]),
        ("x" * 1000, ["at most 120"]),
        ("tomorrow", ["say rain"]),
    ],
)
def test_every_fault_is_said_at_once(text: str, faults: list[str]) -> None:
    """With what was typed, shortened; nothing is guessed."""
    with pytest.raises(InputFaults) as caught:
        read(text)
    found = caught.value.findings
    assert len(found) == len(faults)
    for said, finding in zip(faults, found, strict=True):
        assert said in finding.message
        assert len(finding.value) <= 121


def test_forecasts_reach_ten_days_ahead() -> None:
    """Neither yesterday nor the eleventh day."""
    assert too_far(date(2026, 12, 5), TODAY) == ""
    assert "Dec 5, 2026" in too_far(date(2026, 12, 6), TODAY)
    assert too_far(date(2026, 11, 24), TODAY)
