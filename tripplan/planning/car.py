"""The family's car and what driving it costs."""

from decimal import Decimal
from enum import StrEnum
from typing import Annotated, Self

from pydantic import Field, model_validator

from tripplan.planning.model import Name, Written
from tripplan.planning.written_money import UnitPrice


class Fuel(StrEnum):
    """How a car's running cost is worked out."""

    MILES_PER_US_GALLON = "mpg"
    LITRES_PER_100_KM = "L/100km"
    KWH_PER_100_KM = "kWh/100km"
    RATE_PER_MILE = "per mile"
    RATE_PER_KM = "per km"


class Car(Written):
    """The family's car and what driving it costs."""

    name: Name = "car"
    """How the family calls it."""
    seats: Annotated[int, Field(ge=1, le=60)] = 5
    """Places with a belt, the driver's included."""
    fuel: Fuel
    """How the running cost is given: by consumption, or by a rate per distance."""
    consumption: Annotated[Decimal, Field(gt=0, le=200)] | None = None
    """Consumption in the unit that `fuel` names; left out where a rate is given."""
    consumption_from: Annotated[str, Field(max_length=200)] = ""
    """Where the consumption comes from, such as 'the car's display'; the parent's figure when left out."""
    fuel_price: UnitPrice | None = None
    """Price per US gallon (mpg), per litre (L/100km) or per kWh; unknown when left out."""
    fuel_price_give_or_take_percent: Annotated[Decimal, Field(ge=0, le=90)] = Decimal(8)
    """How far the price at the pump may be off by the day of the visit [%]."""
    rate: UnitPrice | None = None
    """Cost per mile or per km, for the two rate kinds."""

    @model_validator(mode="after")
    def _complete(self) -> Self:
        by_rate = self.fuel in (Fuel.RATE_PER_MILE, Fuel.RATE_PER_KM)
        if by_rate and (self.rate is None or self.consumption is not None):
            raise ValueError(f"fuel '{self.fuel}' needs a rate and no consumption")
        if not by_rate and (self.consumption is None or self.rate is not None):
            raise ValueError(f"fuel '{self.fuel}' needs a consumption and no rate")
        return self
