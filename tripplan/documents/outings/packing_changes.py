"""What the family packs differently from what is suggested."""

from typing import Annotated, Self

from pydantic import Field, model_validator

from tripplan.documents.model import Name, Written

Packed = Annotated[tuple[Name, ...], Field(max_length=100)]


class PackingChanges(Written):
    """What this family packs differently from what is suggested, on every outing."""

    added: Packed = ()
    """Things to pack that nobody suggests."""
    left_out: Packed = ()
    """Suggestions the family does without, called as the list calls them."""

    @model_validator(mode="after")
    def _agree(self) -> Self:
        both = {thing.casefold() for thing in self.added} & {thing.casefold() for thing in self.left_out}
        if both:
            raise ValueError(f"added and left out at once: {', '.join(sorted(both))}")
        return self
