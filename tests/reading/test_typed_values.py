"""What people type into fields: amounts and times of day as they write them."""

import pytest

from tripplan.reading.typed.amounts import amount_in
from tripplan.reading.typed.clocks import clock_in, half_is_asked


@pytest.mark.parametrize(
    ("text", "country", "expected"),
    [
        ("$14", "US", "14"), ("14", "US", "14"), ("free", "US", "0"), ("$92.40", "US", "92.40"), ("22 mpg", "US", "22"),
        ("$3.09/gal", "US", "3.09"), ("$3.099 per gallon", "US", "3.099"), ("3.109", "US", "3.109"),
        ("14,50 €", "DE", "14.50"), ("14,50", "US", "14.50"), ("1,234", "US", "1234"), ("1,234.50", "US", "1234.50"),
        ("1.234,50", "DE", "1234.50"), ("1,859", "DE", "1.859"), ("1.859", "DE", None), ("85¢", "US", "0.85"),
        ("50p", "GB", "0.50"), ("£5 each", "GB", "5"), ("14 dollars", "US", "14"), ("$14 per person", "US", "14"),
        ("7,5 l/100 km", "DE", "7.5"), ("-4", "US", "-4"), ("-$4", "US", "-4"), ("14.", "US", "14"), ("14.999", "US", "14.999"),
        ("1 234", "FR", "1234"), ("15 %", "US", "15"), ("No charge", "US", "0"), ("kostenlos", "DE", "0"),
        ("ten", "US", None), ("$$", "US", None), ("", "US", None), ("12-14", "US", None), ("1 2", "US", None),
        ("$14 or $12", "US", None), ("1,2345,6", "US", None), ("٣", "US", None),
    ],
)  # fmt: skip
def test_amounts(text: str, country: str, expected: str | None) -> None:
    """Signs, units and the marks of the country are understood; what may be two things is left alone."""
    assert amount_in(text, country) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("9", "09:00"), ("9am", "09:00"), ("9 a.m.", "09:00"), ("0900", "09:00"), ("09:00", "09:00"), ("9:30 pm", "21:30"),
        ("9.30", "09:30"), ("21h", "21:00"), ("930", "09:30"), ("930pm", "21:30"), ("noon", "12:00"), ("12pm", "12:00"),
        ("12am", "00:00"), ("midnight", "00:00"), ("17 Uhr", "17:00"), ("1pm", "13:00"), ("13:05", "13:05"), ("01:00", "01:00"),
        ("10:30", "10:30"), ("12", "12:00"), ("1", None), ("5:30", None), ("25:00", None), ("10:75", None), ("13pm", None),
        ("10-5", None), ("soon", None), ("", None), ("2500", None), ("0930pm", "21:30"),
    ],
)  # fmt: skip
def test_times_of_day(text: str, expected: str | None) -> None:
    """A bare 1 to 6 may be night or afternoon and is not guessed; what no clock shows is no time."""
    assert clock_in(text) == expected


def test_which_times_are_asked_about() -> None:
    """Only those that may be meant for either half of the day."""
    assert [half_is_asked(text) for text in ("1", "5:30", "530", "6 uhr", "7", "05:30", "25", "x")] == [
        True, True, True, True, False, False, False, False,
    ]  # fmt: skip
