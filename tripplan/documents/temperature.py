"""A temperature as a parent writes it, with its unit."""

import re
from typing import Annotated, Any

from pydantic import AfterValidator, BeforeValidator

from tripplan.documents.usual_weather import COLDEST, HOTTEST
from tripplan.values.units import celsius

_READ = re.compile(r"([-\u2212]?\d{1,3}(?:\.\d+)?) ?°? ?([FC])", re.IGNORECASE)


def _spelled(value: Any) -> Any:  # noqa: ANN401 - whatever a file holds
    return value.strip() if isinstance(value, str) else value


def _checked(text: str) -> str:
    match = _READ.fullmatch(text)
    if match is None:
        raise ValueError("a temperature reads like 20 F or -5 C")
    degrees, unit = match[1].replace("\u2212", "-"), match[2].upper()
    if not COLDEST[unit] <= float(degrees) <= HOTTEST[unit]:
        raise ValueError(f"must be a temperature from {COLDEST[unit]} {unit} to {HOTTEST[unit]} {unit}")
    return f"{degrees} {unit}"


Temperature = Annotated[str, BeforeValidator(_spelled), AfterValidator(_checked)]
"""A temperature with its unit, such as `20 F` or `-5 C`."""


def in_celsius(temperature: Temperature) -> float:
    """A written temperature in degrees Celsius."""
    degrees, _, unit = temperature.partition(" ")
    return celsius(float(degrees)) if unit == "F" else float(degrees)
