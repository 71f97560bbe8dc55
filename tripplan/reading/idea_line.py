"""Reading one line about somewhere to go: a name, and what a parent may add to it."""

import re
from collections.abc import Container
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from tripplan.documents.places.idea import LONGEST_IDEA, Idea, free_id
from tripplan.documents.where import Where
from tripplan.reading.typed.durations import DURATION, minutes_in
from tripplan.reading.vocabulary import plain_text
from tripplan.values.visible import shows_something

LONGEST_LINE = 300
"""A longer line is no idea but a text [characters]."""
_ABOUT = r"(?:\b(?:about|around|roughly|maybe|ca\.?|etwa|rund)\s+|~\s?)?"
_MONEY = re.compile(
    rf"{_ABOUT}(?:[$€£]\s?(?P<before>\d[\d,]*(?:\.\d{{2}})?)|(?P<after>\d[\d,]*(?:[.]\d{{2}})?)\s?(?:€|£|dollars?|euros?|pounds?|bucks))"
    r"(?:\s+(?:for (?:us|everyone|everybody|all of us)|in all|total|altogether|für uns))?",
    re.IGNORECASE,
)
_DRIVE = re.compile(
    rf"{_ABOUT}(?P<long>{DURATION})\s+(?:away|drive|by car|from (?:here|home|us)|entfernt|weg)\b",
    re.IGNORECASE,
)
_WHERE = re.compile(r"^(?:in|near|at|bei)\s+(?P<where>.+)$", re.IGNORECASE)


@dataclass(frozen=True)
class IdeaLine:
    """What one line says of somewhere to go.

    Attributes:
        name: what it is called.
        money: about what it costs for the party; None where that is not said.
        drive_minutes: about how far it is [min]; None where that is not said.
        where: where it lies, in words; may be empty.
        rest: what else the line says, word for word; may be empty.
    """

    name: str
    money: Decimal | None = None
    drive_minutes: int | None = None
    where: str = ""
    rest: str = ""


def read_idea(line: str) -> IdeaLine | None:
    """Read a line such as 'Herring weir, about $40 for us, an hour away, near Galena IL'.

    Args:
        line: as typed.

    Returns:
        What it says; None where it is more than a line, or has no name.
    """
    said = " ".join(plain_text(line).split())
    if "\n" in line.strip() or not said or len(said) > LONGEST_LINE:
        return None
    money, minutes = _MONEY.search(said), _DRIVE.search(said)
    for match in (money, minutes):
        if match:
            said = said.replace(match[0], ",", 1)
    parts = [part for part in (piece.strip() for piece in re.split(r";|,(?!\d)", said)) if part]
    name, *others = parts or [""]
    if not shows_something(name) or len(name) > LONGEST_IDEA:
        return None
    where, rest = "", ", ".join(others)
    for number, part in enumerate(others):
        found = _WHERE.match(part)
        if found:
            where = ", ".join((found["where"], *others[number + 1 :]))
            rest = ", ".join(others[:number])
            break
    amount = (money["before"] or money["after"]).replace(",", "") if money else None
    return IdeaLine(
        name,
        Decimal(amount) if amount else None,
        minutes_in(minutes["long"]) if minutes else None,
        where,
        rest,
    )


def idea_of(
    line: IdeaLine, taken: Container[str], noted_on: date, where: Where | None, **more: object
) -> Idea:
    """The idea that a line tells; nothing of the line is lost.

    Args:
        line: as read.
        taken: the ids of places and ideas on record.
        noted_on: today.
        where: where `line.where` lies; None where the line does not say, or nobody found it.
        more: further fields of the idea, which win over what the line says.

    Raises:
        pydantic.ValidationError: a figure is out of bounds, or the name is too long.
    """
    unplaced = f"near {line.where}" if line.where and where is None else ""
    told: dict[str, object] = {
        "id": free_id(line.name, taken),
        "name": line.name,
        "noted_on": noted_on,
        "money": line.money,
        "drive_minutes": line.drive_minutes,
        "where": where,
        "notes": "; ".join(filter(None, (line.rest, unplaced))),
    }
    return Idea.model_validate({**told, **more})
