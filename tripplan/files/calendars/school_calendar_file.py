"""Makes a school calendar of a calendar file: guesses which entries mean 'no school', the parent decides."""

import re
from collections.abc import Iterable, Iterator, Mapping, Sequence, Set
from dataclasses import dataclass, replace
from datetime import date, timedelta
from enum import StrEnum

from tripplan.documents.calendars.calendars import DateSpan, EntryChoice, SchoolCalendar
from tripplan.errors import Finding, UnknownName, Weight
from tripplan.files.calendar_reader.content import CalendarContent, CalendarEntry
from tripplan.files.toml.reading_result import ReadResult

_DAY = timedelta(days=1)


class Meaning(StrEnum):
    """What an entry of a school calendar says about the day."""

    NO_SCHOOL = "no school"
    SHORT_DAY = "a short day"
    FIRST_DAY = "the first day of school"
    LAST_DAY = "the last day of school"
    OTHER = "something else"


@dataclass(frozen=True)
class ProposedEntry:
    """One entry with a guess at its meaning.

    Attributes:
        entry: as it stands in the file.
        meaning: the guess.
        reason: why, in words.
        earlier: what the parent said of it at an earlier import, if anything; it beats the guess.
    """

    entry: CalendarEntry
    meaning: Meaning
    reason: str
    earlier: Meaning | None = None

    @property
    def ticked(self) -> bool:
        """Whether the entry counts as days without school unless the parent says otherwise."""
        return (self.earlier or self.meaning) is Meaning.NO_SCHOOL

    @property
    def short(self) -> bool:
        """Whether the entry counts as short days, with school, unless the parent says otherwise."""
        return (self.earlier or self.meaning) is Meaning.SHORT_DAY


@dataclass(frozen=True)
class SchoolProposal:
    """A calendar file, ready for the parent to look through.

    Attributes:
        name: what the file calls itself; may be empty.
        entries: all of them, in order of time.
        known: the days the file seems to speak about.
        summer: days between a last and the next first day of school; all without school.
    """

    name: str
    entries: tuple[ProposedEntry, ...]
    known: DateSpan
    summer: tuple[DateSpan, ...]

    @property
    def ticked(self) -> frozenset[str]:
        """The keys of the entries that are ticked beforehand as days without school."""
        return frozenset(proposed.entry.key for proposed in self.entries if proposed.ticked)

    @property
    def short(self) -> frozenset[str]:
        """The keys of the entries that are ticked beforehand as short days."""
        return frozenset(proposed.entry.key for proposed in self.entries if proposed.short)


def _words(*patterns: str) -> re.Pattern[str]:
    return re.compile("|".join(patterns), re.IGNORECASE)


# English, then German, then French, as districts and ministries title their entries.
# Common practice, no source.
_SOME_PUPILS = _words(r"\bkindergarten\b", r"\bpre-?k\b", r"\bpreschool\b", r"\bgrades?\b", r"\bseniors?\b")
_SHORT_DAY = _words(
    r"\bearly (?:dismissal|release|out|closing)\b",
    r"\b(?:late|delayed) (?:start|opening|arrival)\b",
    r"\bhalf[- ]days?\b",
    r"\b(?:minimum|shortened) days?\b",
    r"\bkurzstunden\b",
    r"\bdemi-journée\b",
)
_SCHOOL = r"(?:student |school )?day (?:of|for) (?:the )?(?:school|class|classes|students|instruction)\b"
_FIRST_DAY = _words(
    rf"\bfirst {_SCHOOL}(?!.*\bafter\b)",
    r"(?<!summer )\bschool(?: year)? (?:begins|starts)\b(?! (?:at|late)\b)",
    r"\bclasses begin\b",
    r"\berster schultag\b",
    r"\brentrée (?:scolaire|des (?:élèves|classes))",
)
_LAST_DAY = _words(
    rf"\blast {_SCHOOL}(?!.*\bbefore\b)",
    r"(?<!summer )\bschool(?: year)? ends\b(?! (?:at|early)\b)",
    r"\bletzter schultag\b",
    r"\bfin (?:des cours|de l'année scolaire)",
)
_NO_SCHOOL = _words(
    r"\bno (?:school|class|classes|students|pupils)\b",
    r"\bschools?(?: is| are)? (?:closed|not in session)\b",
    r"\b(?:district|offices?|all) closed\b",
    r"^closed\b",
    r"\bnon[- ]?(?:attendance|student|instruction(?:al)?|school) days?\b",
    r"\b(?:student|pupil) (?:holiday|free)\b",
    r"\b(?:unterrichts|schul)frei",
    r"\bpas (?:de cours|de classe|d'école|d'ecole)",
)
_SCHOOL_ON = _words(
    r"\bresumes?\b",
    r"\breturns?\b",
    r"\bback to school\b",
    r"\bends\b",
    r"\bbefore\b",
    r"\bafter\b",
    r"\b(?:concert|party|program|parade|dance|sale|shop|fair|market|camp|show|assembly|lunch|breakfast|recital)\b",
    r"\b(?:meeting|practice|game|tournament|registration|deadline|fundraiser|drive|konzert|feier|fête)\b",
)
_BREAK = _words(
    r"\b(?:break|recess|vacation|half[- ]term|holidays?)\b",
    r"ferien\b",
    r"\b(?:feiertag|brückentag)",
    r"\b(?:vacances|jours? fériés?|congés?|pont de l'ascension)",
)
_STAFF_DAY = _words(
    r"\b(?:teachers?|staff)'?s? (?:institute|in-?service|work ?day|planning|development|training)",
    r"\b(?:professional|staff) (?:development|learning)\b",
    r"\b(?:institute|in-?service|inset|work) days?\b",
    r"\bpädagogischer tag\b",
    r"\bjournée pédagogique\b",
)
_HOLIDAY = _words(
    r"\blabor day\b",
    r"\bmemorial day\b",
    r"\bthanksgiving\b",
    r"\bmartin luther king\b|\bmlk\b",
    r"\bjuneteenth\b",
    r"\bindependence day\b",
    r"\bgood friday\b",
    r"\beaster monday\b",
    r"\bchristmas\b",
    r"\bnew year'?s?\b",
)


def _meaning(entry: CalendarEntry) -> tuple[Meaning, str]:
    """What an entry seems to mean, and why."""
    title = entry.summary.replace("\u2019", "'")
    if entry.cancelled:
        return Meaning.OTHER, "it was called off"
    if _SOME_PUPILS.search(title):
        return Meaning.OTHER, "it seems to be for some students only"
    for pattern, meaning in (
        (_FIRST_DAY, Meaning.FIRST_DAY),
        (_LAST_DAY, Meaning.LAST_DAY),
        (_SHORT_DAY, Meaning.SHORT_DAY),
        (_NO_SCHOOL, Meaning.NO_SCHOOL),
    ):
        if found := pattern.search(title):
            return meaning, f"it says '{found[0]}'"
    if not entry.all_day:
        return Meaning.OTHER, "it does not cover the whole day"
    if found := _SCHOOL_ON.search(title):
        return Meaning.OTHER, f"'{found[0]}' sounds like a day with school"
    for pattern, kind in (
        (_BREAK, "a break"),
        (_STAFF_DAY, "a day for the staff"),
        (_HOLIDAY, "a public holiday"),
    ):
        if found := pattern.search(title):
            return Meaning.NO_SCHOOL, f"'{found[0]}' is {kind}"
    return Meaning.OTHER, "nothing in it says that there is no school"


def propose_school_calendar(
    content: CalendarContent,
    file: str,
    *,
    told: Mapping[str, Meaning] | None = None,
    before: SchoolCalendar | None = None,
) -> ReadResult[SchoolProposal]:
    """Guess which entries of a calendar file mean days without school.

    Args:
        content: the file as `tripplan.files.calendar_reader.reading.read_calendar` reads it.
        file: its name, as the parent knows it.
        told: what the file itself says of entries, by their keys; it beats the guess.
        before: the calendar an earlier version of the file became; what was ticked there stays, also where
            an entry has been moved or renamed since.

    Returns:
        Every entry with its guess, and a warning where the file leaves its first or last day open. There is
        no value when the file has no entry.
    """
    earlier = _Earlier(before.choices if before else ())
    proposed = tuple(earlier.applied(_proposed(entry, told or {})) for entry in content.entries)
    if not proposed:
        return ReadResult(
            None, (Finding(file, "", "", "has no entries for these days, so it says nothing of school"),)
        )
    known = _known(proposed)
    findings = []
    if not any(one.ticked for one in proposed):
        findings.append("no entry says that there is no school; say which of them mean it")
    for meaning in (Meaning.FIRST_DAY, Meaning.LAST_DAY):
        if not _days(proposed, meaning):
            findings.append(f"does not name {meaning}; taken to speak about {known.first} to {known.last}")
    warnings = tuple(Finding(file, "", "", message, Weight.WARNING) for message in findings)
    return ReadResult(SchoolProposal(content.name, proposed, known, tuple(_summers(proposed))), warnings)


def _proposed(entry: CalendarEntry, told: Mapping[str, Meaning]) -> ProposedEntry:
    if entry.key in told:
        return ProposedEntry(entry, told[entry.key], f"the file says '{told[entry.key]}'")
    return ProposedEntry(entry, *_meaning(entry))


class _Earlier:
    """What the parent said of the entries of an earlier version of a file."""

    def __init__(self, choices: Sequence[EntryChoice]) -> None:
        said = [(choice, _said(choice)) for choice in choices]
        self._by_key = {choice.key: meaning for choice, meaning in said}
        self._by_entry = _where_agreed((choice.key.rpartition(" ")[0], meaning) for choice, meaning in said)
        self._by_title = _where_agreed((choice.title.casefold(), meaning) for choice, meaning in said)

    def applied(self, proposed: ProposedEntry) -> ProposedEntry:
        """The entry as it was left: the same occurrence, else one of the same title, else the same entry.

        Some programs number their entries anew at every export, so a title says more than an id.
        """
        entry = proposed.entry
        kept = self._by_key.get(entry.key)
        if kept is None:
            kept = self._by_title.get(entry.summary.casefold(), self._by_entry.get(entry.entry))
        if kept is None or entry.cancelled:
            return proposed
        if (kept is Meaning.NO_SCHOOL, kept is Meaning.SHORT_DAY) == (proposed.ticked, proposed.short):
            return proposed
        reason = "as you left it before" if kept is Meaning.OTHER else "as you ticked it before"
        return replace(proposed, reason=reason, earlier=kept)


def _said(choice: EntryChoice) -> Meaning:
    if choice.no_school:
        return Meaning.NO_SCHOOL
    return Meaning.SHORT_DAY if choice.short else Meaning.OTHER


def _where_agreed(said: Iterable[tuple[str, Meaning]]) -> dict[str, Meaning]:
    """What was said of each name, where the same was said every time."""
    found: dict[str, set[Meaning]] = {}
    for name, value in said:
        found.setdefault(name, set()).add(value)
    return {name: values.pop() for name, values in found.items() if name and len(values) == 1}


def calendar_before(
    content: CalendarContent, file: str, calendars: Iterable[SchoolCalendar]
) -> SchoolCalendar | None:
    """The calendar on record that an earlier version of a file became, if there is one.

    Args:
        content: the file.
        file: its name.
        calendars: those on record.

    Returns:
        The one with most entries in common, at least a third of those it has; else the one that came from a
        file of this name, or is called as the file calls itself.
    """
    entries = {entry.entry for entry in content.entries} | {entry.key for entry in content.entries}
    best, most = None, 0.0
    for calendar in calendars:
        chosen = {choice.key.rpartition(" ")[0] for choice in calendar.choices}
        share = len(chosen & entries) / len(chosen) if chosen else 0.0
        named = calendar.source == file or (content.name and calendar.name == content.name[:80])
        weight = share if share > 1 / 3 else 0.01 * bool(named)
        if weight > most:
            best, most = calendar, weight
    return best


def _days(proposed: Sequence[ProposedEntry], *meanings: Meaning) -> list[CalendarEntry]:
    return [one.entry for one in proposed if one.meaning in meanings]


def _known(proposed: Sequence[ProposedEntry]) -> DateSpan:
    """From the first to the last day of school, or to the ends of what is said where they are not named."""
    off, short = _days(proposed, Meaning.NO_SCHOOL), _days(proposed, Meaning.SHORT_DAY)
    first, last = _days(proposed, Meaning.FIRST_DAY), _days(proposed, Meaning.LAST_DAY)
    said = [*first, *last, *short, *off] or [one.entry for one in proposed]
    return DateSpan(
        first=min(entry.first_day for entry in ([*first, *off] if first else said)),
        last=max(entry.last_day for entry in ([*last, *off] if last else said)),
    )


def _summers(proposed: Sequence[ProposedEntry]) -> Iterator[DateSpan]:
    """The days between a last day of school and the first day of the next school year."""
    ends: date | None = None
    for one in proposed:
        if one.meaning is Meaning.LAST_DAY:
            ends = one.entry.last_day
        elif one.meaning is Meaning.FIRST_DAY:
            if ends is not None and ends + _DAY < one.entry.first_day:
                yield DateSpan(first=ends + _DAY, last=one.entry.first_day - _DAY, name="summer")
            ends = None


def school_calendar_from(
    proposal: SchoolProposal,
    *,
    country: str,
    latitude: float,
    longitude: float,
    subdivision: str = "",
    name: str = "",
    pupils: int = 10_000,
    ticked: Set[str] | None = None,
    short: Set[str] | None = None,
    known: DateSpan | None = None,
    source: str = "",
) -> SchoolCalendar:
    """The school calendar the parent agreed to.

    Args:
        proposal: the entries of the file.
        country: ISO 3166-1 code.
        latitude: of the middle of where the pupils live [degrees].
        longitude: likewise [degrees].
        subdivision: ISO 3166-2 code without the country.
        name: of the district; the file's own name when left out.
        pupils: how many follow the calendar.
        ticked: the keys of the entries that mean no school; those ticked beforehand when left out.
        short: the keys of the entries that mean short days, with school; likewise. What is ticked as both is
            a day without school.
        known: the days the calendar speaks about; the proposal's when left out.
        source: where it comes from.

    Returns:
        The calendar; days off outside the known span are left out. What was ticked is kept for the next
        import.

    Raises:
        UnknownName: a key is not one of the proposal's.
        pydantic.ValidationError: a value does not fit.
    """
    keys = {proposed.entry.key: proposed.entry for proposed in proposal.entries}
    chosen = proposal.ticked if ticked is None else ticked
    shortened = (proposal.short if short is None else short) - chosen
    for key in (*chosen, *shortened):
        if key not in keys:
            raise UnknownName("calendar entry", key)
    span = known or proposal.known
    days_off = [
        DateSpan(first=entry.first_day, last=entry.last_day, name=entry.summary)
        for key, entry in keys.items()
        if key in chosen
    ]
    within = (
        DateSpan(first=max(off.first, span.first), last=min(off.last, span.last), name=off.name)
        for off in (*days_off, *proposal.summer)
        if off.last >= span.first and off.first <= span.last
    )
    return SchoolCalendar(
        name=name or proposal.name[:80] or "School calendar",
        country=country,
        subdivision=subdivision,
        latitude=latitude,
        longitude=longitude,
        pupils=pupils,
        known=span,
        no_school=tuple(sorted(within, key=lambda off: (off.first, off.last))),
        short_days=tuple(
            DateSpan(first=one.entry.first_day, last=one.entry.last_day, name=one.entry.summary)
            for one in proposal.entries
            if one.entry.key in shortened
        ),
        choices=tuple(
            EntryChoice(
                key=one.entry.key,
                title=one.entry.summary,
                no_school=one.entry.key in chosen,
                short=one.entry.key in shortened,
            )
            for one in proposal.entries
            if one.entry.key in (chosen | shortened) or one.meaning in (Meaning.NO_SCHOOL, Meaning.SHORT_DAY)
        ),
        source=source,
    )
