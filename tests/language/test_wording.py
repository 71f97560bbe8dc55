from datetime import UTC, date, datetime
from decimal import Decimal

import pytest

from tripplan.language import wording
from tripplan.language.locales import Locale, speaking
from tripplan.values.money import Money, MoneyRange
from tripplan.values.ranges import Range
from tripplan.values.weekday import Weekday


def usd(amount: str) -> Money:
    """Dollars."""
    return Money(Decimal(amount), "USD")


def test_money_is_said_to_the_coin_and_ranges_in_whole_units() -> None:
    """An exact amount shows its cents; an estimate shows its range and no false cents."""
    assert wording.money(usd("1234.5")) == "$1,234.50"
    assert wording.money_range(MoneyRange.exactly(usd("12.5"))) == "$12.50"
    assert wording.money_range(MoneyRange(usd("81.2"), usd("92.4"), usd("110"))) == "$92 ($81 to $110)"


def test_durations_are_said_in_hours_and_minutes() -> None:
    """Whole hours lose their zero minutes, short spans their hours."""
    assert [wording.minutes(m) for m in (40, 60, 85)] == ["40 min", "1 h", "1 h 25 min"]
    assert wording.minutes_range(Range(70, 85, 105)) == "1 h 25 min (1 h 10 min to 1 h 45 min)"


def test_distances_are_said_in_the_households_unit() -> None:
    """100 km are 62 miles; short distances keep a decimal (1 mile = 1.609344 km exactly)."""
    assert wording.distance(100, "mi") == "62 mi"
    assert wording.distance(8.04672, "mi") == "5.0 mi"
    assert wording.distance_range(Range(90, 100, 120), "km") == "100 km (90 km to 120 km)"


@pytest.mark.parametrize(
    ("chance", "said"),
    [
        (0.001, "almost none"),
        (0.04, "about 1 in 25"),
        (0.14, "about 1 in 7"),
        (0.5, "about 1 in 2"),
        (0.67, "about 2 in 3"),
        (0.94, "about 9 in 10"),
        (0.995, "almost certain"),
    ],
)
def test_a_chance_is_said_as_odds_with_small_numbers(chance: float, said: str) -> None:
    """Odds use numbers up to ten where that is close enough, and never say 'always' or 'never'."""
    assert wording.odds(chance) == said


def test_days_in_a_row_are_said_by_their_ends_and_one_by_itself() -> None:
    """A single day is not said twice."""
    first, last = date(2027, 1, 4), date(2027, 2, 7)
    assert wording.days(first, last) == "Mon, Jan 4, 2027 to Sun, Feb 7, 2027"
    assert wording.days(first, first) == "Mon, Jan 4, 2027"


def test_dates_times_and_lists_read_as_a_person_writes_them() -> None:
    """A date names its weekday; a time has an ordinary space before AM; a list ends in 'and'."""
    assert wording.day(date(2026, 12, 8)) == "Tue, Dec 8, 2026"
    assert wording.clock(datetime(2026, 12, 8, 9, 5, tzinfo=UTC)) == "9:05 AM"
    assert wording.listed(["Ada", "Ben", "Cleo"]) == "Ada, Ben, and Cleo"
    assert wording.listed(["Ada"]) == "Ada"


@pytest.mark.parametrize(
    ("number", "words", "said"),
    [
        (0, ("visit",), "0 visits"),
        (1, ("visit",), "1 visit"),
        (3, ("visit",), "3 visits"),
        (1, ("break or day off", "breaks and days off"), "1 break or day off"),
        (2, ("person", "people"), "2 people"),
    ],
)
def test_one_of_a_thing_is_told_as_one(number: int, words: tuple[str, ...], said: str) -> None:
    """Whatever is counted, one of it stands in the singular."""
    assert wording.counted(number, *words) == said


def test_places_in_a_row_are_words_up_to_ten() -> None:
    """As American English writes them: the third, the 11th, the 22nd."""
    told = [wording.ordinal(number) for number in (1, 3, 10, 11, 12, 13, 21, 22, 23, 111)]
    assert told == ["first", "third", "tenth", "11th", "12th", "13th", "21st", "22nd", "23rd", "111th"]


@pytest.mark.parametrize(
    ("locale", "told"),
    [
        (
            Locale.EN_US,
            ["$1,234.50", "Tue, Dec 8, 2026", "Dec 8", "2:05 PM", "14%", "Ada, Ben, and Cleo", "Saturday"],
        ),
        (
            Locale.EN_GB,
            ["US$1,234.50", "Tue, 8 Dec 2026", "8 Dec", "14:05", "14%", "Ada, Ben and Cleo", "Saturday"],
        ),
        (
            Locale.DE,
            ["1.234,50 $", "Di., 8. Dez. 2026", "8. Dez.", "14:05", "14 %", "Ada, Ben und Cleo", "Samstag"],
        ),
    ],
)
def test_figures_are_written_as_the_language_writes_them(locale: Locale, told: list[str]) -> None:
    """Money, dates, clocks, shares, lists and weekdays by the patterns of CLDR (from its charts)."""
    with speaking(locale):
        assert [
            text.replace("\xa0", " ")
            for text in (
                wording.money(usd("1234.5")),
                wording.day(date(2026, 12, 8)),
                wording.day_of_month(date(2026, 12, 8)),
                wording.clock(datetime(2026, 12, 8, 14, 5, tzinfo=UTC)),
                wording.percent(0.14),
                wording.listed(["Ada", "Ben", "Cleo"]),
                wording.weekday(Weekday.SATURDAY),
            )
        ] == told
