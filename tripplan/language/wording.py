"""How figures are written in the language that is spoken, the same on screens, command line and in files.

Source of how money, dates, clocks, percentages and lists are written: Unicode CLDR, read through Babel.
"""

from datetime import date, datetime, time
from fractions import Fraction
from functools import cache
from typing import Literal, TypeAlias

from babel.dates import format_date, format_skeleton, format_time
from babel.lists import format_list
from babel.numbers import format_currency, format_percent

from tripplan.language.locales import Locale, spoken
from tripplan.language.messages import message
from tripplan.values.money import Money, MoneyRange
from tripplan.values.ranges import Range
from tripplan.values.units import KM_PER_MILE, fahrenheit
from tripplan.values.weekday import Weekday


def counted(number: int, one: str, several: str = "") -> str:
    """A number of things, such as '1 visit' or '3 visits'.

    Args:
        number: how many.
        one: what one of them is called.
        several: what several are called; with an s behind when left out.
    """
    return f"{number} {one if number == 1 else several or f'{one}s'}"


def capital(text: str) -> str:
    """A text as a sentence begins with it; its other letters stay as they are."""
    return f"{text[:1].upper()}{text[1:]}"


_ORDINALS = ["first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth"]


def ordinal(number: int) -> str:
    """A place in a row, such as 'third' or '12th'.

    Args:
        number: from 1 on.
    """
    if number <= len(_ORDINALS):
        return _ORDINALS[number - 1]
    teens = 10 < number % 100 < 14
    return f"{number}{'th' if teens else {1: 'st', 2: 'nd', 3: 'rd'}.get(number % 10, 'th')}"


def money(amount: Money) -> str:
    """An amount to its smallest coin, such as '$12.50'."""
    return format_currency(amount.rounded().amount, amount.currency, locale=spoken().cldr)


def whole_money(amount: Money) -> str:
    """An amount in whole units, such as '$92'; for estimates, which know no cents."""
    locale = spoken()
    return format_currency(
        amount.amount,
        amount.currency,
        format=_whole_pattern(locale),
        locale=locale.cldr,
        currency_digits=False,
    )


@cache
def _whole_pattern(locale: Locale) -> str:
    return str(locale.cldr.currency_formats["standard"].pattern).replace("0.00", "0")


def money_ends(amounts: MoneyRange) -> str:
    """The two ends of a range in whole units, such as '$81 to $110'."""
    return from_to(whole_money(amounts.low), whole_money(amounts.high))


def money_range(amounts: MoneyRange) -> str:
    """A likely amount and its range in whole units, such as '$92 ($81 to $110)'; exact ones to the coin."""
    if amounts.is_exact:
        return money(amounts.likely)
    return f"{whole_money(amounts.likely)} ({money_ends(amounts)})"


def minutes(count: float) -> str:
    """A duration, such as '1 h 25 min' or '40 min'."""
    hours, rest = divmod(round(count), 60)
    if not hours:
        return f"{rest} min"
    return f"{hours} h {rest} min" if rest else f"{hours} h"


def minutes_range(span: Range) -> str:
    """A likely duration and its range, such as '1 h 25 min (1 h 10 min to 1 h 45 min)'."""
    if span.is_exact:
        return minutes(span.likely)
    return f"{minutes(span.likely)} ({from_to(minutes(span.low), minutes(span.high))})"


def distance(km: float, unit: str) -> str:
    """A distance in the household's unit, 'mi' or 'km', such as '61 mi'."""
    value = km / float(KM_PER_MILE) if unit == "mi" else km
    return f"{value:.1f} {unit}" if value < 10 else f"{value:.0f} {unit}"


def distance_range(km: Range, unit: str) -> str:
    """A likely distance and its range in the household's unit."""
    if km.is_exact:
        return distance(km.likely, unit)
    return f"{distance(km.likely, unit)} ({from_to(distance(km.low, unit), distance(km.high, unit))})"


def temperature(celsius: float, unit: str) -> str:
    """A temperature in whole degrees, unit 'F' or 'C', such as '25 °F'."""
    return f"{_degrees(celsius, unit)} °{unit}"


def temperatures(low: float, high: float, unit: str) -> str:
    """Two temperatures [°C] in whole degrees, unit 'F' or 'C', such as '14 to 25 °F'."""
    first, last = _degrees(low, unit), _degrees(high, unit)
    return f"{first if first == last else from_to(str(first), str(last))} °{unit}"


def _degrees(celsius: float, unit: str) -> int:
    return round(fahrenheit(celsius) if unit == "F" else celsius)


def day(value: date) -> str:
    """A date with its weekday, such as 'Tue, Dec 8, 2026'."""
    return format_skeleton("yMMMEd", value, locale=spoken().cldr)


def short_day(value: date) -> str:
    """A date near enough to be told without its year, such as 'Tue, Dec 8'."""
    return format_skeleton("MMMEd", value, locale=spoken().cldr)


def day_of_month(value: date) -> str:
    """A date by its month and day alone, such as 'Dec 8'."""
    return format_skeleton("MMMd", value, locale=spoken().cldr)


def days(first: date, last: date) -> str:
    """Days in a row, such as 'Mon, Jan 4, 2027 to Sun, Feb 7, 2027'; a single day by itself."""
    return day(first) if first == last else from_to(day(first), day(last))


def short_days(first: date, last: date) -> str:
    """Days in a row that are near enough to be told without a year, such as 'Tue, Dec 8 to Fri, Dec 11'."""
    return short_day(first) if first == last else from_to(short_day(first), short_day(last))


DateField: TypeAlias = Literal["YYYY/MM/DD", "DD/MM/YYYY", "MM/DD/YYYY", "DD.MM.YYYY"]


def date_field() -> DateField:
    """How a date is written where one is picked, such as 'MM/DD/YYYY'.

    Source: CLDR's short dates, with four digits for the year.
    """
    fields: dict[Locale, DateField] = {Locale.EN_GB: "DD/MM/YYYY", Locale.DE: "DD.MM.YYYY"}
    return fields.get(spoken(), "MM/DD/YYYY")


def clock_field() -> Literal["12h", "24h"]:
    """How a time of day is written where one is picked. Source: CLDR's short times."""
    return "12h" if "h" in str(spoken().cldr.time_formats["short"].pattern) else "24h"


def weekday(value: Weekday) -> str:
    """A weekday's name, such as 'Saturday'."""
    return str(spoken().cldr.days["stand-alone"]["wide"][value])


def short_weekday(value: Weekday) -> str:
    """A weekday's name in a few letters, such as 'Sat'."""
    return str(spoken().cldr.days["stand-alone"]["abbreviated"][value]).rstrip(".")


def week() -> tuple[Weekday, ...]:
    """The days of a week in the order in which a calendar shows them."""
    first = spoken().cldr.first_week_day
    return tuple(Weekday((first + number) % 7) for number in range(7))


def month(number: int) -> str:
    """A month's name, such as 'February' for 2."""
    return format_date(date(2000, number, 1), format="LLLL", locale=spoken().cldr)


def month_and_year(value: date) -> str:
    """The month of a date, such as 'December 2026'."""
    return format_skeleton("yMMMM", value, locale=spoken().cldr)


def clock(value: datetime | time) -> str:
    """A time of day, of a moment by its own zone, such as '9:05 AM'."""
    # British clocks keep the colon of CLDR: beside prices, a point reads as money.
    # CLDR puts a narrow no-break space before AM, which many fonts and terminals lack.
    return format_time(value, format="short", tzinfo=value.tzinfo, locale=spoken().cldr).replace(
        "\u202f", " "
    )


def odds(chance: float) -> str:
    """A chance as parents say it, such as 'about 1 in 7'; 'almost none' and 'almost certain' at the ends."""
    if chance < 0.02:
        return _words("figures-almost-none")
    if chance > 0.95:
        return _words("figures-almost-certain")
    if chance < 0.1:
        return _words("figures-odds", of=1, in_all=round(1 / chance))
    nearest = min(Fraction(chance).limit_denominator(10), Fraction(9, 10))
    return _words("figures-odds", of=nearest.numerator, in_all=nearest.denominator)


def percent(share: float) -> str:
    """A share in whole percent, such as '14%'."""
    return format_percent(share, locale=spoken().cldr)


def listed(names: tuple[str, ...] | list[str]) -> str:
    """Names as a sentence says them: 'Ada', 'Ada and Ben', 'Ada, Ben, and Cleo'."""
    return format_list(names, locale=spoken().cldr) if names else ""


def from_to(low: str, high: str) -> str:
    """From one thing to another, such as '8 to 10'."""
    return _words("figures-span", low=low, high=high)


def _words(code: str, **values: str | int) -> str:
    return message(code, values, spoken())
