"""Reading when a place is open from a text as venues write it, into OpenStreetMap's opening_hours syntax."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from tripplan.reading.hours.clock_times import clock, time_at
from tripplan.reading.hours.pieces import DAYS, ONE_MONTH, Piece, pieces_of
from tripplan.reading.hours.rules import Rule, as_opening_hours, each_day, place_names_in_the_year, rules_from

_ELSEWHERE = re.compile(
    r"\b(?:(?:gift|museum) ?shop|shop|store|caf[eé]|restaurant|snack bar|bistro|box office|ticket office|office|kitchen|library|laden|kasse)\b",
    re.IGNORECASE,
)
"""What has hours of its own beside the place's."""
_SOMETHING_THEN = re.compile(
    r"\b(?:story ?times?|feedings?|shows?|tours?|programs?|class(?:es)?|workshops?|camps?|sensory|events?|lectures?|performances?"
    r"|vorführung\w*|fütterung\w*|führung\w*|members? only|early entry)\b",
    re.IGNORECASE,
)
"""What takes place at times of its own."""
_MOST_RULES = 100
"""No place has more opening hours; what a text says beyond is left word for word."""
_IN_BRACKETS_TOO = re.compile(r"\((?:plus|also|and|sowie|zusätzlich)\b[^()]*\)", re.IGNORECASE)
_WORDS = re.compile(r"[^\W\d_]{3}")
_UNREAD = re.compile(
    r"(?<![\d-])\d{1,2}(?![\d-])|\b(?:until|till|except|unless|außer|sunset|dusk|dawn|sunrise|alternate|every other|some|most|mid|early|late|end of|anfang|mitte|ende)\b",
    re.IGNORECASE,
)
"""What means something for the hours, where no rule has read it."""
_LAST = re.compile(
    r"\b(?:last (?:entry|admissions?|admittance|entrance|tour|tickets?|guests?|visitors?)|letzter? (?:einlass|eintritt|führung)|kasse schließt|kassenschluss)"
    r"[^\d\n]{0,25}",
    re.IGNORECASE,
)
_BEFORE_CLOSING = re.compile(
    r"(?P<n>\d{1,3}|one|half an?|eine) ?(?P<unit>minutes?|mins?|hours?|stunde|minuten)? (?:before|prior to|vor) (?:clos|schlie|end|schluss)",
    re.IGNORECASE,
)
_SOME_DAYS = re.compile(
    r"\b(?:two|three|four|five|six|[2-6]|zwei|drei|vier|fünf|sechs) (?:days|tage)\b", re.IGNORECASE
)
_BY_APPOINTMENT = re.compile(
    r"\b(?:by appointment|on request|nach vereinbarung|auf anfrage)\b", re.IGNORECASE
)
_JUST = re.compile(r"\b(?:only|nur)\b", re.IGNORECASE)
_MAY_CHANGE = re.compile(
    r"\b(?:vary|varies|varying|may change|subject to change|weather permitting|call (?:ahead|for)|abweichend\w*)\b",
    re.IGNORECASE,
)
_ONLY = re.compile(r"\b(?:only|nur|seasonal(?:ly)?|open)\b", re.IGNORECASE)
_SUN_TIME = re.compile(r"\b(?:dawn|dusk|sunrise|sunset|sonnenaufgang|sonnenuntergang)\b", re.IGNORECASE)
_HOURS_ABOUT = re.compile(
    r"\b(?:open|hours?|close[sd]?|geöffnet|öffnungszeit\w*|summer|winter|season\w*|sommer)\b", re.IGNORECASE
)
_SENTENCE_END = re.compile(r"(?<=[^\W\d_]{2})[.!?](?=\s|$)|(?<=\d)[.!?](?=\s+[A-ZÄÖÜ]|\s*$)|;")
_MAY_SAY_WHEN = re.compile(r"[^\W\d_]|\d\s*-")
_SHORTENED = re.compile(
    r"\b(?:[a-z]\.|mon|tues?|wed|thurs?|fri|sat|sun|di|mi|do|fr|sa|so|mo|jan|feb|mar|apr|jun|jul|aug|sept?|oct|nov|dec|st|a\.m|p\.m)$",
    re.IGNORECASE,
)
_LONGEST_SHORTENED = 8
_DATE_IN_DIGITS = re.compile(r"\b\d{1,2}\.\d{1,2}$")


@dataclass(frozen=True)
class HoursRead:
    """What was read of when a place is open.

    Attributes:
        opening_hours: OpenStreetMap opening_hours syntax; empty where nothing was read.
        last_entry: the latest time people are let in, as 16:15; None where it is not said.
        last_entry_minutes_before_close: said so [min]; None where it is not said.
        doubts: what the text leaves open, as sentences.
        not_understood: statements about hours that were not read, word for word.
    """

    opening_hours: str = ""
    last_entry: str | None = None
    last_entry_minutes_before_close: int | None = None
    doubts: tuple[str, ...] = ()
    not_understood: tuple[str, ...] = ()


def read_hours(text: str) -> HoursRead:
    """Read opening hours.

    Args:
        text: as plain_text leaves it; lines and sentences are read one after the other, a heading such as
            'June 20 through Labor Day' holds for the lines below it.

    Returns:
        What was read, what is in doubt, and the statements about hours that were not read.
    """
    reader = _Reader()
    for statement in _statements(text):
        if _MAY_SAY_WHEN.search(statement):
            reader.read(statement)
    return reader.all_read()


class _Reader:
    """What has been read so far, statement by statement.

    Attributes:
        rules: the opening hours.
        doubts: what the text leaves open, as sentences.
        lost: statements about hours that were not read.
        aside: hours of something that takes place there, with their words.
        heading: the season and days that a title gives to what stands below it.
        heading_of_hours: whether it speaks of being open.
        of_something_else: whether such a title names a shop or the like.
    """

    def __init__(self) -> None:
        self.rules: list[Rule] = []
        self.doubts: list[str] = []
        self.lost: list[str] = []
        self.aside: list[tuple[str, list[Rule]]] = []
        self.heading = Rule()
        self.heading_of_hours = False
        self.of_something_else = False
        self.last_entry: str | None = None
        self.before_close: int | None = None

    def read(self, statement: str) -> None:
        """Take up one sentence or line."""
        if len(self.rules) > _MOST_RULES:
            self.lost.append(statement.strip(" .|"))
            return
        more = _IN_BRACKETS_TOO.search(statement)
        if more:
            self.lost.append(more[0])
            statement = statement[: more.start()] + statement[more.end() :]
        rest, latest, minutes = _without_last_entry(statement)
        self.last_entry, self.before_close = latest or self.last_entry, minutes or self.before_close
        words = statement.strip(" .|")
        pieces = list(pieces_of(rest))
        read = rules_from(rest, pieces)
        says_when = any(rule.says_when for rule in read)
        wordy = _WORDS.search(rest) is not None
        if (wordy and _ELSEWHERE.search(rest)) or (self.of_something_else and says_when):
            self.of_something_else = self.of_something_else or not says_when
            if says_when:
                self.lost.append(words)
            return
        self.of_something_else = False
        if says_when and wordy and _SOMETHING_THEN.search(rest):
            self.aside.append((words, [rule for rule in read if rule.says_when]))
            return
        if wordy:
            self.doubts += _doubts_of(rest, pieces)
        if len(pieces) == 1 and pieces[0].kind == "again":
            self._again(pieces[0], words)
        elif says_when:
            self._take(read, words)
            if wordy and _UNREAD.search(_between(rest, pieces)):
                self.doubts.append(f"Not all of '{words}' was read.")
        elif any(piece.kind in ("season", "name", "days", "dates") for piece in pieces):
            self._without_times(read, rest, words)
        elif _HOURS_ABOUT.search(rest) and latest is None and minutes is None and not _is_heading(rest):
            self.lost.append(words)

    def _again(self, piece: Piece, words: str) -> None:
        same = next((rule for rule in reversed(self.rules) if rule.spans), None)
        if same is None:
            self.lost.append(words)
        else:
            self.rules.append(Rule(seasons=list(same.seasons), days=[piece.text], spans=list(same.spans)))

    def _take(self, read: list[Rule], words: str) -> None:
        """Rules with times, or closed, each with what the title above it gives."""
        for rule in read:
            if not rule.seasons and not (rule.closed and rule.dates):
                rule.seasons, rule.name = list(self.heading.seasons), rule.name or self.heading.name
            if not rule.days and not rule.dates and not (rule.closed and rule.seasons):
                rule.days, rule.dates = list(self.heading.days), list(self.heading.dates)
        for rule in read:
            if rule.closes_at is not None and not (rule.spans or rule.says_which_days):
                self.lost.append(words)
            elif rule.says_when:
                self.rules.append(rule)
            elif rule.dates in (["SH"], ["PH"]) and self.rules and not rule.excepted:
                rule.opened, rule.days = True, []
                self.rules.append(rule)
            elif rule.days or rule.dates:
                self.doubts.append(f"Not all of '{words}' was read.")
        self.heading.days, self.heading.dates = [], []

    def _without_times(self, read: list[Rule], rest: str, words: str) -> None:
        """Days or a season without times: those of all rules above, days of a season, or a title."""
        first = read[0]
        if self.rules and first.seasons and first.days:
            times = next((rule.spans for rule in reversed(self.rules) if rule.spans), [])
            self.rules.append(replace(first, spans=list(times)))
            others = [day for day in DAYS if day not in each_day(first.days)]
            if others and _JUST.search(rest):
                self.rules.append(Rule(seasons=list(first.seasons), days=others, closed=True))
            self.doubts.append(f"No times are given: {words}")
        elif self.rules and first.seasons and _ONLY.search(rest):
            for rule in self.rules:
                rule.seasons = rule.seasons or list(first.seasons)
        else:
            self.heading = _heading(self.heading, first)
            self.heading_of_hours = _HOURS_ABOUT.search(rest) is not None

    def all_read(self) -> HoursRead:
        """What came of all statements."""
        rules, doubts = self.rules, self.doubts
        for words, read in self.aside:
            if any(rule.spans for rule in rules):
                self.lost.append(words)
            else:
                rules += read
                doubts.append(f"'{words}' may be the hours of only a part of what there is.")
        doubts += place_names_in_the_year(rules)
        if self.heading_of_hours and (self.heading.days or self.heading.seasons) and not rules:
            rules.append(self.heading)
            doubts.append("No times are given.")
        opening_hours = "; ".join(as_opening_hours(rules))
        if any(span and not span.sure for rule in rules for span in rule.spans):
            doubts.append(
                "Morning or afternoon is not said; times are taken as a place by day would keep them."
            )
        told = tuple(dict.fromkeys(doubts))
        lost = tuple(dict.fromkeys(self.lost))
        return HoursRead(opening_hours, self.last_entry, self.before_close, told, lost)


def _heading(old: Rule, new: Rule) -> Rule:
    """What a statement without times says for those after it: a new season ends the old one."""
    season = new if new.seasons or new.name else old
    return Rule(seasons=list(season.seasons), name=season.name, days=list(new.days), dates=list(new.dates))


def _between(statement: str, pieces: Sequence[Piece]) -> str:
    """What of a statement no piece has read."""
    ends = [0, *(piece.end for piece in pieces)]
    starts = [*(piece.start for piece in pieces), len(statement)]
    return " | ".join(statement[end:start] for end, start in zip(ends, starts, strict=True) if end < start)


def _is_heading(statement: str) -> bool:
    """Whether it says nothing by itself: a title, or that one can also come by appointment."""
    return bool(_BY_APPOINTMENT.search(statement)) or (
        len(statement.split()) <= 3 and not re.search(r"\d", statement)
    )


def _statements(text: str) -> Iterator[str]:
    for line in re.sub(r":[ ]*\n", ": ", text).splitlines():
        start = 0
        for end in _SENTENCE_END.finditer(line):
            part = line[start : end.start()]
            if ONE_MONTH.match(line, end.end() + 1) and part[-1:].isdigit():
                continue
            if end[0] == "." and (
                _DATE_IN_DIGITS.search(part[-_LONGEST_SHORTENED:])
                or _SHORTENED.search(part[-_LONGEST_SHORTENED:])
            ):
                continue
            yield part
            start = end.end()
        if line[start:].strip(" .|"):
            yield line[start:]


def _without_last_entry(statement: str) -> tuple[str, str | None, int | None]:
    match = _LAST.search(statement)
    if not match:
        return statement, None, None
    before = _BEFORE_CLOSING.search(statement, match.start())
    if before:
        number = before["n"].casefold()
        count = {"one": 60, "eine": 60, "half a": 30, "half an": 30}.get(number) or int(number)
        minutes = (
            count * 60
            if count < 5 and (before["unit"] or "").casefold().startswith(("hour", "stund"))
            else count
        )
        return statement[: match.start()] + statement[before.end() :], None, minutes
    found = time_at(statement, match.end())
    if not found:
        return statement, None, None
    return statement[: match.start()] + statement[found[1] :], clock(found[0]), None


def _doubts_of(statement: str, pieces: Sequence[Piece]) -> Iterator[str]:
    if _SOME_DAYS.search(statement) and not any(piece.kind == "days" for piece in pieces):
        yield "Which days of the week it is open is not said."
    if _SUN_TIME.search(statement):
        yield "Hours from dawn to dusk are not read; give times of the clock."
    if _MAY_CHANGE.search(statement):
        yield f"Hours may differ: {statement.strip(' .|')}"
    if _BY_APPOINTMENT.search(statement):
        yield "It can also be visited by appointment."
    if any(piece.kind == "again" for piece in pieces):
        yield "Times on holiday Mondays are taken as the same."
