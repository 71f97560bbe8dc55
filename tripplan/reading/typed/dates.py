"""Reading birth dates and ages as people type them: 5/14/1988, May 14 1988, 14.5.1988, March 1986, 8, 22 months."""

import re
from datetime import date

from tripplan.reading.vocabulary import plain_text

MONTH_FIRST_COUNTRIES = frozenset({"US", "PH", "PW", "FM", "MH"})
"""Countries that write the month before the day. Source: Unicode CLDR, dates, from memory."""
SLASH_COUNTRIES = frozenset({"GB", "IE", "AU", "NZ", "CA", "FR", "ES", "IT", "PT"})
"""Countries that write the day first, with slashes. Source: Unicode CLDR, dates, from memory."""
_MONTHS = (
    ("jan",), ("feb",), ("mar", "mär", "mae"), ("apr",), ("may", "mai"), ("jun",), ("jul",), ("aug",), ("sep",),
    ("oct", "okt"), ("nov",), ("dec", "dez"),
)  # fmt: skip
_NUMBERS = re.compile(r"(\d{1,4})\s?([-./ ])\s?(\d{1,2})(?:\s?\2\s?(\d{2,4}))?\.?", re.ASCII)
_MONTH_YEAR = re.compile(r"(\d{1,2})\s?[-./]\s?(\d{4})", re.ASCII)
_MONTH_DAY = re.compile(
    r"(?P<month>[a-zä]{3,9})\.?,? (?:(?P<day>\d{1,2})(?:st|nd|rd|th)?,? )?(?P<year>\d{4}|'?\d{2})",
    re.ASCII | re.IGNORECASE,
)
_DAY_MONTH = re.compile(
    r"(?P<day>\d{1,2})(?:st|nd|rd|th)?\.? ?(?:of )?(?P<month>[a-zä]{3,9})\.?,? ?(?P<year>\d{4}|'?\d{2})",
    re.ASCII | re.IGNORECASE,
)
_AGE = re.compile(
    r"(?:age[d]? |alter )?(?P<number>\d{1,3})\s?(?P<unit>y(?:ea)?rs?(?: old)?|y/?o|yo|jahre?(?: alt)?|months?(?: old)?|mos?\.?|monate?(?: alt)?)?",
    re.ASCII | re.IGNORECASE,
)
_OLDEST = 120
_LONGEST_YEARS_IN_TWO_DIGITS = 100


def birth_in(text: str, country: str, today: date) -> str | None:
    """A birth date, or an age as of today, as a household's file holds it; None where it reads like neither.

    Args:
        text: as typed.
        country: the household's ISO 3166-1 alpha-2 code, by which 5/4/1988 is read.
        today: on which an age holds.

    Returns:
        Such as '1988-05-14', '1986-03' or '8 years on 2026-11-25'.
    """
    told = " ".join(plain_text(text).split())
    age = _AGE.fullmatch(told)
    if age and int(age["number"]) <= _OLDEST:
        months = (age["unit"] or "").casefold().startswith(("mo", "monat"))
        return f"{int(age['number'])} {'months' if months else 'years'} on {today.isoformat()}"
    for pattern in (_MONTH_DAY, _DAY_MONTH):
        match = pattern.fullmatch(told)
        month = _month(match["month"]) if match else None
        if match and month:
            return _written(_year(match["year"], today), month, int(match["day"]) if match["day"] else None)
    month_year = _MONTH_YEAR.fullmatch(told)
    if month_year:
        return _written(int(month_year[2]), int(month_year[1]), None)
    match = _NUMBERS.fullmatch(told)
    return _from_numbers(match, country, today) if match else None


def birth_as_typed(written: str, country: str) -> str:
    """A birth date as people of a country type it, such as 5/14/1988; `birth_in` reads it back.

    Args:
        written: as a household's file holds it; an age on a day stays as it is.
        country: the household's ISO 3166-1 alpha-2 code.
    """
    match = re.fullmatch(r"(\d{4})-(\d{2})(?:-(\d{2}))?", written)
    if match is None:
        return written
    year, month, day = match[1], str(int(match[2])), str(int(match[3])) if match[3] else ""
    month_first = country in MONTH_FIRST_COUNTRIES
    mark = "/" if month_first or country in SLASH_COUNTRIES else "."
    return mark.join(part for part in ((month, day) if month_first else (day, month)) if part) + mark + year


def _from_numbers(match: re.Match[str], country: str, today: date) -> str | None:
    first, mark, second, third = match[1], match[2], int(match[3]), match[4]
    if len(first) == 4:  # 1988-05-14, 1988/5
        return _written(int(first), second, int(third) if third else None)
    if third is None or len(first) > 2 or len(third) == 3:
        return None
    month, day = int(first), second
    if mark == "." or country not in MONTH_FIRST_COUNTRIES or month > 12:
        month, day = day, month
    return _written(_year(third, today), month, day)


def _year(text: str, today: date) -> int:
    """A year of two digits is the last one that is not to come."""
    digits = text.lstrip("'")
    if len(digits) == 4:
        return int(digits)
    century = today.year - today.year % _LONGEST_YEARS_IN_TWO_DIGITS
    year = century + int(digits)
    return year if year <= today.year else year - _LONGEST_YEARS_IN_TWO_DIGITS


def _written(year: int, month: int, day: int | None) -> str | None:
    if day is None:
        return f"{year:04}-{month:02}" if 1 <= month <= 12 else None
    try:
        return date(year, month, day).isoformat()
    except ValueError:
        return None


def _month(word: str) -> int | None:
    start = word.casefold()[:3]
    return next((number for number, names in enumerate(_MONTHS, start=1) if start in names), None)
