"""What the rows of a price board are made of: fields, rules with fields of their own, short lists."""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import Enum
from typing import Any

from tripplan.documents.model import Written

Typed = dict[str, Any]
"""What stands in a row's fields, by their paths: texts, ticks, dates, lists of words, lists of entries."""


class Shape(Enum):
    """How a field is filled in."""

    TEXT = "one line"
    NOTE = "several lines"
    TICK = "yes or no"
    DAY = "a date"
    WORDS = "any number of words"
    CHOICE = "one of several"


class Words(Enum):
    """What is offered to pick from."""

    STATUSES = "statuses"
    OFFERS = "offers"
    PLACES = "places"


@dataclass(frozen=True)
class Field:
    """One field of a row.

    Attributes:
        path: within what the card's file holds, such as 'at_least'.
        label: as on the screen.
        explained: the help beside it; may be empty.
        shape: how it is filled in.
        offered: what is offered, if the family's data decide that.
        choices: what is offered, if it is always the same: values and their words.
        width: how wide it is drawn [px]; as wide as there is room when left out.
    """

    path: str
    label: str
    explained: str = ""
    shape: Shape = Shape.TEXT
    offered: Words | None = None
    choices: tuple[tuple[str, str], ...] = ()
    width: int | None = None


@dataclass(frozen=True)
class Part:
    """A rule that a row has or has not; a tick opens its fields.

    Attributes:
        path: of the rule.
        label: of the tick.
        form: what the rule is written as.
        fields: with paths within the rule.
    """

    path: str
    label: str
    form: type[Written]
    fields: tuple[Field, ...]


@dataclass(frozen=True)
class Entries:
    """A short list within a row, such as a family ticket's seats; an empty entry always waits at its end.

    Attributes:
        path: of the list.
        label: of one entry.
        form: what an entry is written as.
        fields: with paths within an entry.
        most: so many entries a card takes.
    """

    path: str
    label: str
    form: type[Written]
    fields: tuple[Field, ...]
    most: int = 60


Piece = Field | Part | Entries


@dataclass(frozen=True)
class RowKind:
    """One kind of row.

    Attributes:
        name: tells it from the others.
        holder: under which name the card's file holds it; a list unless `alone`.
        called: as on the screen.
        form: what it is written as.
        main: the fields that are always in sight.
        more: the rarer rules.
        alone: whether a board has at most one of them.
        always: whether every board has it, so that it can neither be added nor removed.
    """

    name: str
    holder: str
    called: str
    form: type[Written]
    main: tuple[Piece, ...]
    more: tuple[Piece, ...] = ()
    alone: bool = False
    always: bool = False

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """All fields, rules and lists of such a row."""
        return self.main + self.more


@dataclass(frozen=True)
class Row:
    """One row of a board.

    Attributes:
        kind: what it is.
        typed: what stands in its fields.
    """

    kind: RowKind
    typed: Mapping[str, Any]

    @property
    def title(self) -> str:
        """Its kind and name, such as 'Ticket (Adult)'."""
        name = str(self.typed.get("name") or "").strip()
        return f"{self.kind.called} ({name})" if name else self.kind.called
