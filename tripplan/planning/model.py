"""What every written form (household, place card, calendar) has in common."""

from pydantic import BaseModel, ConfigDict


class Written(BaseModel):
    """Something a parent writes: unknown fields are refused, values are read once and never change."""

    model_config = ConfigDict(
        frozen=True, extra="forbid", str_strip_whitespace=True, use_attribute_docstrings=True
    )
