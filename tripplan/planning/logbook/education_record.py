"""A record of outings for home-education authorities: days, hours and subjects of each child in a period."""

import re
from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

from tripplan.documents.family.household import Household
from tripplan.documents.logbook.entry import ChildDay, LogbookEntry
from tripplan.documents.logbook.settings import LogbookSettings
from tripplan.planning.logbook.state_rules import RULES_DIFFER, StateRule


@dataclass(frozen=True)
class RecordLine:
    """One child on one outing.

    Attributes:
        day: the date.
        child: the name, or initials where the parent did not tick it.
        grade_band: as the parent wrote it; may be empty.
        where: what the outing is called.
        away: whether it was away from home.
        counts_as_day: whether the family counts the day.
        hours: hours that count [h]; None where the family counts none.
        subjects: with the hours split among them, as far as the family did.
        did, learned: in the parent's words, other people's names as initials likewise.
    """

    day: date
    child: str
    grade_band: str
    where: str
    away: bool
    counts_as_day: bool
    hours: Decimal | None
    subjects: tuple[tuple[str, Decimal | None], ...]
    did: str
    learned: str


@dataclass(frozen=True)
class SubjectTotal:
    """One subject of one child.

    Attributes:
        subject: its name.
        days: on how many days it was named [-].
        hours: those split to it [h]; None where none were.
    """

    subject: str
    days: int
    hours: Decimal | None


@dataclass(frozen=True)
class ChildTotal:
    """One child's period.

    Attributes:
        child: the name, or initials.
        grade_band: as the parent wrote it; may be empty.
        days: days that count; two outings on one day are one.
        days_away: those of them with an outing away from home.
        hours: hours that count [h].
        hours_away: those of them away from home [h].
        days_without_hours: days of which no hours are noted; while there are any, `hours` leaves them out.
        subjects: in order of the name.
    """

    child: str
    grade_band: str
    days: int
    days_away: int
    hours: Decimal
    hours_away: Decimal
    days_without_hours: int
    subjects: tuple[SubjectTotal, ...]


@dataclass(frozen=True)
class EducationRecord:
    """What is handed in.

    Attributes:
        first, last: the period, both ends included.
        household: what it is called; empty unless the parent ticked it.
        lines: by day, then by child.
        totals: one a child.
        rules_differ: the note that goes with every such record.
        state: one state's published figures, if asked for; no advice.
    """

    first: date
    last: date
    household: str
    lines: tuple[RecordLine, ...]
    totals: tuple[ChildTotal, ...]
    rules_differ: str
    state: StateRule | None


def education_record(
    entries: Collection[LogbookEntry],
    household: Household,
    settings: LogbookSettings,
    first: date,
    last: date,
    *,
    children: Collection[str] | None = None,
    named: Collection[str] = (),
    with_household: bool = False,
    state: StateRule | None = None,
) -> EducationRecord:
    """Gather what children did and learned between two days.

    Args:
        entries: the logbook.
        household: the people.
        settings: grade bands.
        first: the first day of the period.
        last: its last day.
        children: whose record it is; every child with a line when left out.
        named: whose names are written out; all others stand as initials, in what was written as well.
        with_household: whether the household's name is written.
        state: one state's published figures to print below.
    """
    initials = initials_of([member.name for member in household.members], entries)
    shown = {name: name if name in named else short for name, short in initials.items()}
    told = sorted(
        (
            (entry, child)
            for entry in entries
            if first <= entry.day <= last
            for child in entry.children
            if children is None or child.member in children
        ),
        key=lambda pair: (pair[0].day, pair[0].id, list(initials).index(pair[1].member)),
    )
    people = dict.fromkeys(child.member for _, child in told)
    order = sorted(people, key=list(initials).index)
    return EducationRecord(
        first=first,
        last=last,
        household=household.name if with_household else "",
        lines=tuple(_line(entry, child, settings, shown) for entry, child in told),
        totals=tuple(
            _total(name, [(e, c) for e, c in told if c.member == name], settings, shown) for name in order
        ),
        rules_differ=RULES_DIFFER,
        state=state,
    )


def initials_of(members: Sequence[str], entries: Collection[LogbookEntry]) -> dict[str, str]:
    """Everybody's initials; those that several share get a number, in order of the household.

    Args:
        members: the household's names.
        entries: whoever they name beside counts too.
    """
    others = sorted({name for entry in entries for name in entry.party} - set(members))
    names = [*members, *others]
    short = {name: "".join(f"{word[0].upper()}." for word in name.split()) for name in names}
    shared = Counter(short.values())
    seen: Counter[str] = Counter()
    answer: dict[str, str] = {}
    for name in names:
        seen[short[name]] += 1
        number = f"{seen[short[name]]}" if shared[short[name]] > 1 else ""
        answer[name] = f"{short[name]}{number}"
    return answer


def _line(
    entry: LogbookEntry, child: ChildDay, settings: LogbookSettings, shown: Mapping[str, str]
) -> RecordLine:
    return RecordLine(
        day=entry.day,
        child=shown[child.member],
        grade_band=settings.band_of(child.member),
        where=_without_names(entry.title, shown),
        away=entry.away,
        counts_as_day=child.counts_as_day,
        hours=child.hours_counted,
        subjects=tuple((_without_names(one.subject, shown), one.hours) for one in child.subjects),
        did=_without_names(child.did, shown),
        learned=_without_names(child.learned, shown),
    )


def _without_names(text: str, shown: Mapping[str, str]) -> str:
    """The text with every name that is not to be written out as its initials, whatever its case."""
    kept = {word for name, short in shown.items() if name == short for word in name.split()}
    hidden = {name: short for name, short in shown.items() if name != short}
    # Of 'Grandma Wilhelmina', neither word alone may stay.
    words = {word: f"{word[0].upper()}." for name in hidden for word in name.split() if word not in kept}
    instead = {name.casefold(): short for name, short in (words | hidden).items()}
    if not instead:
        return text
    # All at once and the longest first, so that no initial is taken for somebody called by a letter.
    names = "|".join(re.escape(name) for name in sorted(words | hidden, key=len, reverse=True))
    return re.sub(
        rf"(?<!\w)(?:{names})(?!\w)",
        lambda found: instead.get(found[0].casefold(), f"{found[0][0].upper()}."),
        text,
        flags=re.IGNORECASE,
    )


def _total(
    name: str,
    told: Sequence[tuple[LogbookEntry, ChildDay]],
    settings: LogbookSettings,
    shown: Mapping[str, str],
) -> ChildTotal:
    counted = [(entry, child) for entry, child in told if child.counts_as_day]
    hours = [(entry, child.hours_counted) for entry, child in told]
    known = {entry.day for entry, some in hours if some is not None}
    return ChildTotal(
        child=shown[name],
        grade_band=settings.band_of(name),
        days=len({entry.day for entry, _ in counted}),
        days_away=len({entry.day for entry, _ in counted if entry.away}),
        hours=sum((some for _, some in hours if some is not None), Decimal(0)),
        hours_away=sum((some for entry, some in hours if some is not None and entry.away), Decimal(0)),
        days_without_hours=len({entry.day for entry, _ in counted} - known),
        subjects=tuple(_subjects(told, shown)),
    )


def _subjects(
    told: Sequence[tuple[LogbookEntry, ChildDay]], shown: Mapping[str, str]
) -> Iterator[SubjectTotal]:
    """Every subject once, whatever the case it was typed in."""
    days: dict[str, set[date]] = {}
    hours: dict[str, list[Decimal]] = {}
    called: dict[str, str] = {}
    for entry, child in told:
        for one in child.subjects:
            key = one.subject.casefold()
            called.setdefault(key, _without_names(one.subject, shown))
            days.setdefault(key, set()).add(entry.day)
            if one.hours is not None:
                hours.setdefault(key, []).append(one.hours)
    for key in sorted(days):
        yield SubjectTotal(called[key], len(days[key]), sum(hours[key], Decimal(0)) if key in hours else None)
