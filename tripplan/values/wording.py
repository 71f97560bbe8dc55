"""How figures are said in words, the same on screens, command line and in files."""

from datetime import date, datetime, time
from fractions import Fraction

from babel.dates import format_date, format_time
from babel.numbers import format_currency

from tripplan.values.money import Money, MoneyRange
from tripplan.values.ranges import Range
from tripplan.values.units import KM_PER_MILE, fahrenheit

LOCALE = "en_US"


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
    return format_currency(amount.rounded().amount, amount.currency, locale=LOCALE)


def whole_money(amount: Money) -> str:
    """An amount in whole units, such as '$92'; for estimates, which know no cents."""
    return format_currency(
        amount.amount, amount.currency, format="¤#,##0", locale=LOCALE, currency_digits=False
    )


def money_ends(amounts: MoneyRange) -> str:
    """The two ends of a range in whole units, such as '$81 to $110'."""
    return f"{whole_money(amounts.low)} to {whole_money(amounts.high)}"


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
    return f"{minutes(span.likely)} ({minutes(span.low)} to {minutes(span.high)})"


def distance(km: float, unit: str) -> str:
    """A distance in the household's unit, 'mi' or 'km', such as '61 mi'."""
    value = km / float(KM_PER_MILE) if unit == "mi" else km
    return f"{value:.1f} {unit}" if value < 10 else f"{value:.0f} {unit}"


def distance_range(km: Range, unit: str) -> str:
    """A likely distance and its range in the household's unit."""
    if km.is_exact:
        return distance(km.likely, unit)
    return f"{distance(km.likely, unit)} ({distance(km.low, unit)} to {distance(km.high, unit)})"


def temperature(celsius: float, unit: str) -> str:
    """A temperature in whole degrees, unit 'F' or 'C', such as '25 °F'."""
    return f"{_degrees(celsius, unit)} °{unit}"


def temperatures(low: float, high: float, unit: str) -> str:
    """Two temperatures [°C] in whole degrees, unit 'F' or 'C', such as '14 to 25 °F'."""
    first, last = _degrees(low, unit), _degrees(high, unit)
    return f"{first} °{unit}" if first == last else f"{first} to {last} °{unit}"


def _degrees(celsius: float, unit: str) -> int:
    return round(fahrenheit(celsius) if unit == "F" else celsius)


def day(value: date) -> str:
    """A date with its weekday, such as 'Tue, Dec 8, 2026'."""
    return format_date(value, format="EEE, MMM d, y", locale=LOCALE)


def short_day(value: date) -> str:
    """A date near enough to be told without its year, such as 'Tue, Dec 8'."""
    return format_date(value, format="EEE, MMM d", locale=LOCALE)


def days(first: date, last: date) -> str:
    """Days in a row, such as 'Mon, Jan 4, 2027 to Sun, Feb 7, 2027'; a single day by itself."""
    return day(first) if first == last else f"{day(first)} to {day(last)}"


def month(number: int) -> str:
    """A month's name, such as 'February' for 2."""
    return format_date(date(2000, number, 1), format="MMMM", locale=LOCALE)


def clock(value: datetime | time) -> str:
    """A time of day, of a moment by its own zone, such as '9:05 AM'."""
    # CLDR puts a narrow no-break space before AM, which many fonts and terminals lack.
    return format_time(value, format="short", tzinfo=value.tzinfo, locale=LOCALE).replace("\u202f", " ")


def odds(chance: float) -> str:
    """A chance as parents say it, such as 'about 1 in 7'; 'almost none' and 'almost certain' at the ends."""
    if chance < 0.02:
        return "almost none"
    if chance > 0.95:
        return "almost certain"
    if chance < 0.1:
        return f"about 1 in {round(1 / chance)}"
    nearest = min(Fraction(chance).limit_denominator(10), Fraction(9, 10))
    return f"about {nearest.numerator} in {nearest.denominator}"


def percent(share: float) -> str:
    """A share in whole percent, such as '14 %'."""
    return f"{share:.0%}".replace("%", " %")


def listed(names: tuple[str, ...] | list[str]) -> str:
    """Names as a sentence says them: 'Ada', 'Ada and Ben', 'Ada, Ben and Cleo'."""
    if len(names) < 2:
        return "".join(names)
    return f"{', '.join(names[:-1])} and {names[-1]}"
