"""Whom something beside entry is for: by age, proof and height.

Nobody's height is guessed. Where it decides and is not known, the add-on is counted, as nothing unknown makes
a day cheaper, and the parent is asked. A grown-up is asked only where grown-ups can be too tall or too short.
"""

from collections.abc import Iterable, Iterator, Sequence
from datetime import date, timedelta
from decimal import Decimal

from tripplan.documents.family.member import Member
from tripplan.documents.places.offers import AddOn
from tripplan.language.sentences import Fact, fact
from tripplan.values.ages import ADULT

GROWN_UP_CM = (Decimal(140), Decimal(210))
"""Between which heights grown-ups who have not told theirs stand [cm]. No source, our choice: wide."""
MEASURED_AGAIN_AFTER = timedelta(days=183)
"""How long a child's height counts as it was measured. No source, our choice."""


def takes(add_on: AddOn, member: Member, months: int) -> bool:
    """Whether an add-on is for somebody of an age [completed months], as far as anybody knows."""
    return _is_offered(add_on, member, months) and height_fits(add_on, member, months) is not False


def height_fits(add_on: AddOn, member: Member, months: int) -> bool | None:
    """Whether somebody of an age [completed months] is of the right height; None where nobody knows."""
    if add_on.least_height is None and add_on.most_height is None:
        return True
    least = Decimal(0) if add_on.least_height is None else add_on.least_height.cm
    most = Decimal("Infinity") if add_on.most_height is None else add_on.most_height.cm
    if member.height is not None:
        low = high = member.height.cm
    elif months in ADULT:
        low, high = GROWN_UP_CM
    else:
        low, high = Decimal(0), Decimal("Infinity")
    if high < least or low > most:
        return False
    return True if least <= low and high <= most else None


def height_notes(add_ons: Iterable[AddOn], party: Sequence[Member], day: date) -> Iterator[Fact]:
    """Whose height is asked for, and who is too short or too tall, for what the party wants beside entry.

    Args:
        add_ons: what it wants.
        party: who goes.
        day: the date of the visit.
    """
    for add_on in add_ons:
        for member in party:
            months = member.months_on(day)
            if _is_offered(add_on, member, months):
                yield from _height_note(add_on, member, months, day)


def _height_note(add_on: AddOn, member: Member, months: int, day: date) -> Iterator[Fact]:
    least, most, height = add_on.least_height, add_on.most_height, member.height
    who = {"name": member.name, "what": add_on.name}
    if height is None:
        if height_fits(add_on, member, months) is None:
            limits = [("notes-height-from", least), ("notes-height-to", most)]
            told = tuple(fact(code, height=str(limit)) for code, limit in limits if limit is not None)
            yield fact("notes-height-asked", **who, limits=told)
        return
    too_short = least is not None and height.cm < least.cm
    too_tall = most is not None and height.cm > most.cm
    if too_short:
        yield fact("notes-too-short", **who, height=str(height), least=str(least))
    if too_tall:
        yield fact("notes-too-tall", **who, height=str(height), most=str(most))
    growing_matters = months not in ADULT and (too_short or (most is not None and not too_tall))
    if growing_matters and member.height_on and day - member.height_on > MEASURED_AGAIN_AFTER:
        yield fact("notes-height-old", **who, height=str(height), day=member.height_on)


def _is_offered(add_on: AddOn, member: Member, months: int) -> bool:
    """Whether it is for somebody but for the height."""
    return months in add_on.ages and (not add_on.needs or not set(add_on.needs).isdisjoint(member.statuses))
