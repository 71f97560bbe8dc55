"""What another currency is worth to the household, as the parent typed it in."""

from datetime import date
from decimal import Decimal
from typing import Annotated

from pydantic import Field

from tripplan.documents.field_spec import Control, FieldSpec
from tripplan.documents.model import Written
from tripplan.documents.written_money import Currency


class ExchangeRate(Written):
    """What one unit of another currency is worth in the household's own."""

    currency: Annotated[
        Currency, FieldSpec("one of", help="Three letters, such as EUR.", control=Control.CODE, width=120)
    ]
    """ISO 4217 code of the other currency."""
    worth: Annotated[
        Decimal,
        Field(gt=0, le=1_000_000, allow_inf_nan=False),
        FieldSpec("is worth so much of yours", help="Such as 1.08, with what your bank takes.", width=220),
    ]
    """What one of it costs in the household's currency, with what the bank takes."""
    on: Annotated[date, FieldSpec("as of", width=150)]
    """The day this was so."""
