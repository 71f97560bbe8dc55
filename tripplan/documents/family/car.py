"""The family's car and what driving it costs."""

from decimal import Decimal
from enum import StrEnum
from typing import Annotated, Self

from pydantic import Field, model_validator

from tripplan.documents.field_spec import FieldSpec, Unit
from tripplan.documents.model import Name, Written
from tripplan.documents.written_money import UnitPrice


class Fuel(StrEnum):
    """How a car's running cost is worked out."""

    MILES_PER_US_GALLON = "mpg"
    LITRES_PER_100_KM = "L/100km"
    KWH_PER_100_KM = "kWh/100km"
    RATE_PER_MILE = "per mile"
    RATE_PER_KM = "per km"


class Car(Written):
    """The family's car and what driving it costs."""

    name: Annotated[Name, FieldSpec("What you call it")] = "car"
    """How the family calls it."""
    seats: Annotated[int, Field(ge=1, le=60), FieldSpec("Seats in the car, the driver's included")] = 5
    """Places with a belt, the driver's included."""
    fuel: Annotated[
        Fuel,
        FieldSpec(
            "Gas mileage or flat rate",
            words={
                "mpg": "miles per US gallon",
                "L/100km": "liters per 100 km",
                "kWh/100km": "kWh per 100 km",
                "per mile": "a rate per mile",
                "per km": "a rate per km",
            },
        ),
    ]
    """How the running cost is given: by consumption, or by a rate per distance."""
    consumption: Annotated[
        Annotated[Decimal, Field(gt=0, le=200)] | None,
        FieldSpec("Gas mileage or consumption", help="In the unit chosen above."),
    ] = None
    """Consumption in the unit that `fuel` names; left out where a rate is given."""
    consumption_from: Annotated[
        str,
        Field(max_length=200),
        FieldSpec(
            "Where the consumption comes from, and when you looked",
            help="Such as 'the car's display, November 2026'; empty if it is just your own figure.",
        ),
    ] = ""
    """Where the consumption comes from, such as 'the car's display'; the parent's figure when left out."""
    fuel_price: Annotated[
        UnitPrice | None,
        FieldSpec("Price of fuel", help="For a US gallon, a liter or a kWh; empty if you do not know."),
    ] = None
    """Price per US gallon (mpg), per liter (L/100km) or per kWh; unknown when left out."""
    fuel_price_give_or_take_percent: Annotated[
        Decimal, Field(ge=0, le=90), FieldSpec("The price may be off by", unit=Unit.PERCENT)
    ] = Decimal(8)
    """How far the price at the pump may be off by the day of the visit."""
    rate: Annotated[
        UnitPrice | None, FieldSpec("Rate per mile or km", help="Only for the two kinds of rate.")
    ] = None
    """Cost per mile or per km, for the two rate kinds."""

    @model_validator(mode="after")
    def _complete(self) -> Self:
        by_rate = self.fuel in (Fuel.RATE_PER_MILE, Fuel.RATE_PER_KM)
        if by_rate and (self.rate is None or self.consumption is not None):
            raise ValueError(f"fuel '{self.fuel}' needs a rate and no consumption")
        if not by_rate and (self.consumption is None or self.rate is not None):
            raise ValueError(f"fuel '{self.fuel}' needs a consumption and no rate")
        return self
