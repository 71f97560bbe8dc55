"""Money in a written form: a currency and prices as a parent types them."""

import re
from decimal import Decimal
from typing import Annotated

from babel.numbers import list_currencies
from pydantic import AfterValidator, BeforeValidator, Field, ValidationInfo, WithJsonSchema

from tripplan.values.money import minor_digits


def _known_currency(code: str) -> str:
    if code not in list_currencies():
        raise ValueError("a currency is an ISO 4217 code of three letters, such as USD")
    return code


Currency = Annotated[
    str, AfterValidator(_known_currency), WithJsonSchema({"type": "string", "pattern": "^[A-Z]{3}$"})
]


def _read_price(value: object, info: ValidationInfo) -> object:
    if isinstance(value, bool):
        raise ValueError("a price is a number such as 12.50")  # noqa: TRY004 - pydantic wants it
    if not isinstance(value, str):
        return value
    match = re.fullmatch(r"(-?\d+(?:\.\d+)?)(?:\s*([A-Za-z]{3}))?", value.strip())
    if not match:
        raise ValueError("a price is a number such as 12.50, or a text such as '12.50 USD'")
    amount, stated = match.groups()
    if stated:
        if info.context is None:
            raise ValueError("a currency can be stated beside a price only in a file that names its own")
        expected = info.context["currency"]
        if expected is not None and stated.upper() != expected:
            raise ValueError(f"the price is in {stated.upper()}, but the currency given above is {expected}")
    return Decimal(amount)


def _payable(amount: Decimal, info: ValidationInfo) -> Decimal:
    currency = info.context["currency"] if info.context else None
    if currency is None:
        return amount
    exponent = amount.normalize().as_tuple().exponent
    digits = minor_digits(currency)
    if isinstance(exponent, int) and -exponent > digits:
        raise ValueError(f"{currency} is paid with at most {digits} digits after the point")
    return amount


_PRICE_SCHEMA = WithJsonSchema(
    {
        "anyOf": [
            {"type": "number", "minimum": 0, "maximum": 100_000},
            {"type": "string", "pattern": r"^\d+(\.\d+)?( *[A-Za-z]{3})?$"},
        ]
    }
)

UnitPrice = Annotated[
    Decimal, BeforeValidator(_read_price), Field(ge=0, le=100_000, allow_inf_nan=False), _PRICE_SCHEMA
]
"""Money per gallon, mile or the like, which may have more digits than can be paid.

Where the validation context carries `currency` (ISO 4217 or None), a currency stated beside it must agree.
"""
Price = Annotated[
    Decimal,
    BeforeValidator(_read_price),
    Field(ge=0, le=100_000, allow_inf_nan=False),
    AfterValidator(_payable),
    _PRICE_SCHEMA,
]
"""Money as it is paid: a `UnitPrice` with no more digits than the context's currency has."""
