"""Every kind of row that a price board can have: one for each form that a card's board is made of."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Any, get_args, get_origin

from pydantic import BaseModel

from tripplan.documents.field_spec import called, forms_in
from tripplan.documents.places.offers import OfferRules
from tripplan.documents.places.place import Place
from tripplan.screens.forms.questions import Question, questions

HOLDERS = (
    "offers",
    "add_ons",
    "fees",
    "sales_tax",
    "vouchers",
    "must_be_accompanied",
    "parking",
    "prices_read",
)
"""The fields of a card that make up its board, in the order of the screen."""


@dataclass(frozen=True)
class RowKind:
    """One kind of row.

    Attributes:
        name: tells it from the others; of an offer, as the card's file calls it.
        holder: under which name the card's file holds it; a list unless `alone`.
        called: as on the screen.
        form: what it is written as.
        asked: its fields.
        alone: whether a board has at most one of them.
        always: whether every board has it, so that it can neither be added nor removed.
    """

    name: str
    holder: str
    called: str
    form: type[BaseModel]
    asked: tuple[Question, ...]
    alone: bool
    always: bool

    @property
    def main(self) -> tuple[Question, ...]:
        """The fields that are always in sight."""
        return tuple(one for one in self.asked if not one.asked.rare)

    @property
    def more(self) -> tuple[Question, ...]:
        """The rarer rules: its own first, then those that every offer has."""
        rare = (one for one in self.asked if one.asked.rare)
        return tuple(sorted(rare, key=lambda one: one.path in OfferRules.model_fields))


@dataclass(frozen=True)
class Row:
    """One row of a board.

    Attributes:
        kind: what it is.
        typed: what stands in its fields, by their names.
    """

    kind: RowKind
    typed: Mapping[str, Any]

    @property
    def title(self) -> str:
        """Its kind and name, such as 'Ticket (Adult)'."""
        name = str(self.typed.get("name") or "").strip()
        return f"{self.kind.called} ({name})" if name else self.kind.called


def _kinds() -> Iterator[RowKind]:
    for holder in HOLDERS:
        field = Place.model_fields[holder]
        alone = get_origin(field.annotation) is not tuple
        always = alone and type(None) not in get_args(field.annotation)
        for form in forms_in(field.annotation):
            name = form.model_fields["kind"].get_default() if holder == "offers" else holder
            word = called(form)
            asked = tuple(_under_its_kind(one, word) for one in questions(form))
            yield RowKind(name, holder, word, form, asked, alone, always)


def _under_its_kind(question: Question, word: str) -> Question:
    """The name of an offer is asked for by what the offer is called."""
    if question.asked.label != "Name":
        return question
    return replace(question, asked=replace(question.asked, label=word, code=""))


KINDS = MappingProxyType({kind.name: kind for kind in _kinds()})
"""Every kind of row by its name."""
