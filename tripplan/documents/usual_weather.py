"""What twelve months are usually like, as a parent knows them."""

from decimal import Decimal
from typing import Annotated, Literal, Self

from pydantic import Field, model_validator

from tripplan.documents.field_spec import FieldSpec
from tripplan.documents.model import Written

COLDEST, HOTTEST = {"C": -60, "F": -76}, {"C": 60, "F": 140}
"""No month is colder or hotter on average anywhere [degrees of the unit]."""

Degrees = Literal["F", "C"]
_Twelve = Annotated[tuple[Decimal, ...], Field(min_length=12, max_length=12)]
_Days = tuple[Annotated[Decimal, Field(ge=0, le=31)], ...]
_HELP = "Twelve figures, January to December, with commas between."


class UsualWeather(Written):
    """What twelve months are usually like, January to December."""

    degrees: Annotated[
        Degrees, FieldSpec("Temperatures in", words={"F": "degrees Fahrenheit", "C": "degrees Celsius"})
    ]
    """`F` or `C`."""
    highs: Annotated[_Twelve, FieldSpec("Usual daily high of each month", help=_HELP)]
    """Mean daily high of each month, January to December."""
    lows: Annotated[_Twelve, FieldSpec("Usual daily low of each month", help=_HELP)]
    """Mean daily low, likewise."""
    wet_days: Annotated[
        Annotated[_Days, Field(min_length=12, max_length=12)],
        FieldSpec("Days with rain or snow in each month", help=_HELP),
    ]
    """Days with rain or snow, likewise."""
    snow_days: Annotated[_Days, FieldSpec("Days with snowfall in each month", help=_HELP)] = ()
    """Days with snowfall, likewise; left out where nobody knows."""
    source: Annotated[str, FieldSpec("Where you know it from")] = ""
    """Where the figures come from."""

    @model_validator(mode="after")
    def _possible(self) -> Self:
        coldest, hottest = COLDEST[self.degrees], HOTTEST[self.degrees]
        for name in ("highs", "lows"):
            for figure in getattr(self, name):
                if not coldest <= figure <= hottest:
                    raise ValueError(
                        f"{name}: {figure}° is no month's usual temperature; {coldest} to {hottest}"
                    )
        if self.snow_days and len(self.snow_days) != len(self.highs):
            raise ValueError(f"snow_days: {len(self.snow_days)} figures instead of twelve or none")
        for month, (high, low) in enumerate(zip(self.highs, self.lows, strict=True), 1):
            if high < low:
                raise ValueError(f"month {month}: the usual high ({high}°) is below the usual low ({low}°)")
        return self
