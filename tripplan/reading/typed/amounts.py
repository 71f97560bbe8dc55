"""Reading amounts as people type them into a field: $14, 14,50, free, $3.09/gal, 22 mpg, 85¢."""

import re
from decimal import Decimal

from tripplan.reading.vocabulary import plain_text

COMMA_COUNTRIES = frozenset({
    "AT", "BE", "BG", "CZ", "DE", "DK", "EE", "ES", "FI", "FR", "GR", "HR", "HU", "IT", "LT", "LU", "LV", "NL", "NO",
    "PL", "PT", "RO", "SE", "SI", "SK",
})  # fmt: skip
"""Countries that write a comma before decimals. Source: Unicode CLDR, numbers, from memory."""
_FREE = re.compile(
    r"(?:free|for free|no charge|no fee|gratis|frei|kostenlos|umsonst)(?: (?:entry|admission))?",
    re.IGNORECASE,
)
_SIGN = r"(?:us\$|ca\$|c\$|a\$|[$€£]|usd|eur|gbp|cad|aud|chf|dollars?|euros?|pounds?|bucks)"
_UNIT = (
    r"(?:(?:/|per |an? |each\b)?\s?(?:gal(?:lon)?s?|lit(?:er|re)s?|l|kwh|mi(?:le)?s?|km|person|pp|each|car|head)"
    r"|mpg|miles per gallon|l ?/ ?100 ?km|kwh ?/ ?100 ?km|%|percent|minutes?|mins?|min\.?|hours?|h|people|seats?|months?)"
)
_NUMBER = r"\d[\d.,' ]*"
_AMOUNT = re.compile(
    rf"(?P<minus>-)?\s*(?:{_SIGN})?\s*(?P<minus2>-)?(?P<number>{_NUMBER})\s*(?:{_SIGN})?\s*(?:{_UNIT})?\.?",
    re.IGNORECASE | re.ASCII,
)
_CENTS = re.compile(r"(?P<number>\d{1,2})\s?(?:¢|cents?|ct|p|pence)", re.IGNORECASE | re.ASCII)


def amount_in(text: str, country: str = "") -> str | None:
    """A typed amount as a plain decimal number with a point; None where it reads like none.

    Signs of a currency and units beside it are taken for what the field asks for.

    Args:
        text: as typed.
        country: ISO 3166-1 alpha-2 code, which settles what a single comma or point before three digits is.
    """
    told = " ".join(plain_text(text).split())
    if _FREE.fullmatch(told):
        return "0"
    cents = _CENTS.fullmatch(told)
    if cents:
        return f"{Decimal(cents['number']) / 100:.2f}"
    match = _AMOUNT.fullmatch(told)
    if not match:
        return None
    number = _plain_number(match["number"].strip(" ,.'"), country)
    return None if number is None else f"{'-' if match['minus'] or match['minus2'] else ''}{number}"


def _plain_number(written: str, country: str) -> str | None:
    """Digits with at most one point, from digits with points, commas, blanks or apostrophes between them."""
    number = re.sub(r"(?<=\d)[' ](?=\d{3}(?!\d))", "", written)
    if re.search(r"[' ]", number):
        return None
    marks = re.findall(r"[.,]", number)
    if not marks:
        return number
    last = marks[-1]
    after = number.rpartition(last)[2]
    if len(set(marks)) == 2:  # the later of the two stands before decimals
        groups, decimals = number.rpartition(last)[0], after
    elif len(marks) > 1 or (
        last == "," and len(after) == 3 and country not in COMMA_COUNTRIES
    ):  # several of one kind part thousands
        groups, decimals = number, ""
    elif last == "." and len(after) == 3 and country in COMMA_COUNTRIES:
        return None  # 1.859 may be a price per liter, or thousands
    else:
        groups, decimals = number.rpartition(last)[0], after
    parts = re.split(r"[.,]", groups)
    if any(len(part) != 3 for part in parts[1:]) or not parts[0]:
        return None
    return "".join(parts) + (f".{decimals}" if decimals else "")
