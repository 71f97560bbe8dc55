"""Reading when a place is open from a text as venues write it, into OpenStreetMap's opening_hours syntax."""

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field, replace

from tripplan.reading.clock_times import SPANS, TimeSpan, clock, span_at, time_at
from tripplan.reading.vocabulary import first_look, small_letters

_DAYS = ("Mo", "Tu", "We", "Th", "Fr", "Sa", "Su")
_DAY_WORDS = (
    r"mon(?:days?)?|montags?|mo", r"tue(?:s(?:days?)?)?|dienstags?|di", r"wed(?:nes(?:days?)?|s)?|mittwochs?|mi",
    r"thu(?:r(?:s(?:days?)?)?)?|donnerstags?|do", r"fri(?:days?)?|freitags?|fr", r"sat(?:ur(?:days?)?|s)?|samstags?|sonnabends?|sa",
    r"sun(?:days?)?|sonntags?|so",
)  # fmt: skip
_DAY = "|".join(f"(?P<{name}>{words})" for name, words in zip(_DAYS, _DAY_WORDS, strict=True))
_ONE_DAY = re.compile(rf"\b(?:{_DAY})\b\.?", re.IGNORECASE)
_ALWAYS = re.compile(r"\b(?:24 ?hours(?: a day)?|24/7|around the clock|rund um die uhr)\b", re.IGNORECASE)
_EVERY_DAY = re.compile(
    r"\b(?:daily|every ?day|each day|(?:7|seven) days(?: a| per) week|all week|(?:all )?year[- ]round|all year|ganzjährig|täglich|jeden tag)\b",
    re.IGNORECASE,
)
_LETTERS = {
    "M": "Mo",
    "T": "Tu",
    "W": "We",
    "R": "Th",
    "F": "Fr",
    "Tu": "Tu",
    "Th": "Th",
    "Sa": "Sa",
    "Su": "Su",
}
_SPAN_OF_LETTERS = re.compile(rf"\b(?P<from>{'|'.join(_LETTERS)})\s?-\s?(?P<to>{'|'.join(_LETTERS)})\b")
_LETTER_IN_SMALL = re.compile(r"\b(?:[mtwrf]|tu|th|sa|su)\s?-")
_WEEKENDS = re.compile(r"\b(?:(?:am |on )?weekends?|(?:am )?wochenende[ns]?)\b", re.IGNORECASE)
_WEEKDAYS = re.compile(r"\b(?:weekdays?|werktags?|wochentags?)\b", re.IGNORECASE)
_ORDINALS = {
    "1st": "1", "first": "1", "2nd": "2", "second": "2", "3rd": "3", "third": "3", "4th": "4", "fourth": "4",
    "last": "-1", "ersten": "1", "erster": "1", "zweiten": "2", "dritten": "3", "vierten": "4", "letzten": "-1",
}  # fmt: skip
_ORDINAL = "|".join(_ORDINALS)
_NTH = re.compile(
    rf"\b(?:every |each |jede[nr] )?(?P<first>{_ORDINAL})(?:\s*(?:,|and|&|und)\s*(?P<next>{_ORDINAL}))?\s+",
    re.IGNORECASE,
)
_OF_THE_MONTH = re.compile(r"\s*(?:of (?:the|each|every) month|im monat|des monats)", re.IGNORECASE)
_MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_MONTH_WORDS = (
    r"jan(?:uary|uar)?", r"feb(?:ruary|ruar)?", r"mar(?:ch)?|märz", r"apr(?:il)?", r"may|mai", r"june?|juni", r"july?|juli",
    r"aug(?:ust)?", r"sept?(?:ember)?", r"o[ck]t(?:ober)?", r"nov(?:ember)?", r"de[cz](?:ember)?",
)  # fmt: skip
_LAST_DAY = dict(zip(_MONTHS, (31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31), strict=True))
_MONTH = "|".join(f"(?P<{name}>{words})" for name, words in zip(_MONTHS, _MONTH_WORDS, strict=True))
ONE_MONTH = re.compile(rf"\b(?:{_MONTH})\b\.?", re.IGNORECASE)
"""The name of a month; the name of the group that matched is its short one."""
_DAY_OF_MONTH = re.compile(r"\s*(?P<day>\d{1,2})(?:st|nd|rd|th)?\b(?![:.]\d|\s?[ap]\.?m)", re.IGNORECASE)
_HOLIDAY_MARKS = ("PH", "SH")
_MOST_DAYS_LISTED = 8
"""So many days of one month are listed before its name at most, as in '24., 25. und 31. Dezember'."""
_DAY_BEFORE_MONTH = re.compile(
    r"\b(?P<day>\d{1,2})(?:st|nd|rd|th)?(?:\.\s*|\s+(?:of\s+)?|(?=[-,]))", re.IGNORECASE
)
_MONTH_IN_DIGITS = re.compile(r"(?P<month>1[0-2]|0?[1-9])(?:\.(?:20\d\d\b|(?!\d))|$)")
"""As Germans write it: the 12. of 24.12."""
_NEXT_DAY = re.compile(
    rf"\s*(?P<joined>-|to\b|through\b|bis\b|,|&|/|and\b|und\b)\s*(?:and |und )?(?P<day>\d{{1,2}})(?:st|nd|rd|th)?\b"
    rf"(?![:.]\d|\s?[ap]\.?m|\s?-|\s*to\b|\.?\s*(?:of )?(?:{'|'.join(_MONTH_WORDS)})\b|\s*(?:uhr|o'clock|noon))",
    re.IGNORECASE,
)
"""One more day of the month just named, as in 'Dec 24, 25' or 'Dec 24-26'."""
_NEXT_DAY_BEFORE_MONTH = re.compile(
    r"\s*(?P<joined>-|to\b|bis\b|,|&|/|and\b|und\b)\s*(?:and |und )?(?P<day>\d{1,2})(?:st|nd|rd|th)?(?:\.\s*|\s+(?:of\s+)?|(?=[-,]))",
    re.IGNORECASE,
)
_YEAR = re.compile(r",?\s*20\d\d\b")
_TO = re.compile(r"\s*(?:-|to|through|thru|until|till|bis(?: zum)?)\s*(?:the\s+)?", re.IGNORECASE)
_AND = re.compile(r"\s*(?:,|&|/|\+)?\s*(?:and|und|or)?\s*", re.IGNORECASE)
_HOLIDAYS = (
    (r"new year'?s? eve|silvester", "Dec 31"), (r"new year'?s?(?: day)?|neujahr", "Jan 01"), (r"christmas eve|heiligabend", "Dec 24"),
    (r"boxing day", "Dec 26"), (r"halloween", "Oct 31"), (r"christmas(?: day)?|xmas|(?:erster )?weihnachts(?:feier)?tag", "Dec 25"),
    (r"independence day|(?:the )?(?:4th|fourth) of july|july (?:4th|fourth)", "Jul 04"), (r"memorial day", "May Mo[-1]"),
    (r"labou?r day", "Sep Mo[1]"), (r"thanksgiving(?: day)?", "Nov Th[4]"), (r"columbus day|indigenous peoples'? day", "Oct Mo[2]"),
    (r"(?:martin luther king,? (?:jr\.? )?|mlk )day", "Jan Mo[3]"), (r"presidents'?'?s? day", "Feb Mo[3]"),
    (r"juneteenth", "Jun 19"), (r"veterans'?'?s? day", "Nov 11"), (r"good friday|karfreitag", "easter -2 days"),
    (r"easter monday|ostermontag", "easter +1 day"), (r"easter(?: sunday)?|ostersonntag|ostern", "easter"),
    (r"(?:all |major |federal |public |bank |national |legal |the |on ){0,4}holidays?(?! monday)|(?:an |allen )*feiertag(?:e[n]?|s)?|gesetzliche[nr]? feiertage[n]?", "PH"),
)  # fmt: skip
_HOLIDAY = re.compile(
    r"\b(?P<before>(?:the )?day before |(?:am )?tag vor )?(?P<after>(?:the )?day after |(?:am )?tag nach )?(?:"
    + "|".join(f"(?P<d{number}>{words})" for number, (words, _) in enumerate(_HOLIDAYS))
    + r")(?!\w)",
    re.IGNORECASE,
)
_NTH_WEEKEND = re.compile(
    rf"\b(?:the )?(?P<nth>{_ORDINAL}) (?P<what>weekend|{'|'.join(_DAY_WORDS)}) (?:in|of|im) (?=(?:{_MONTH})\b)",
    re.IGNORECASE,
)
_HOLIDAY_MONDAYS = re.compile(r"\bholiday mondays?\b|\bmonday holidays?\b", re.IGNORECASE)
_CLOSED = re.compile(r"\b(?:closed|geschlossen|schließtage?n?|ruhetag|zu)\b(?: all day| on)?", re.IGNORECASE)
_CLOSES_AT = re.compile(
    r"\b(?:closes? (?:early )?at|closing (?:early )?at|(?:open )?(?:late )?(?:until|till|til|bis)(?: zu)?(?= \d| noon| midnight| mittern))\s+",
    re.IGNORECASE,
)
_NO_TIME = re.compile(rf"\s*(?:st|nd|rd|th)?\.?\s*(?:{'|'.join(_MONTH_WORDS)})\b|\.\d", re.IGNORECASE)
"""What stands behind a number that is a day of a month and no time."""
_SCHOOL_BREAKS = re.compile(
    r"\b(?:(?:during |in )?(?:the )?(?:school (?:holidays|breaks?|vacations?)|half[- ]terms?)|(?:in den )?(?:schul|sommer|herbst|winter)?ferien)\b",
    re.IGNORECASE,
)
_OPEN = re.compile(r"\b(?:open|geöffnet)\b(?: on)?", re.IGNORECASE)
_SEASON_NAME = re.compile(
    r"\b(?:(?:in|during|im) (?:the )?)?(?P<name>summer|winter|sommer|spring|fall|autumn|herbst|frühling|frühjahr|off[- ]season|peak season"
    r"|nebensaison|hauptsaison)(?P<own>[- ]?(?:hours|season|opening|times|zeit|monate|saison))?\b",
    re.IGNORECASE,
)
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
_UNREAD = re.compile(
    r"(?<![\d-])\d{1,2}(?![\d-])|\b(?:until|till|except|unless|außer|sunset|dusk|dawn|sunrise|alternate|every other|some|most|mid|early|late|end of|anfang|mitte|ende)\b",
    re.IGNORECASE,
)
"""What means something for the hours, where no rule has read it."""
_LAST = re.compile(
    r"\b(?:last (?:entry|admissions?|entrance|tour|tickets?|guests?|visitors?)|letzter? (?:einlass|eintritt|führung)|kasse schließt|kassenschluss)"
    r"[^\d\n]{0,25}",
    re.IGNORECASE,
)
_BEFORE_CLOSING = re.compile(
    r"(?P<n>\d{1,3}|one|half an?|eine) ?(?P<unit>minutes?|mins?|hours?|stunde|minuten)? (?:before|prior to|vor) (?:clos|schlie|end|schluss)",
    re.IGNORECASE,
)
_EXCEPT = re.compile(
    r"\b(?:except(?: for| on)?|außer(?: an| am)?|excluding|but|unless|ausgenommen)\b", re.IGNORECASE
)
_STARTS = re.compile(
    r"\b(?:beginning|starting|effective|from|ab)\s+(?=(?:[a-zäö]{3,9}\.? \d|\d{1,2}\. ))", re.IGNORECASE
)
_THROUGH = re.compile(r"\b(?:through|until|thru|bis)\s+(?=(?:[a-zäö]{3,9}\.? \d|\d{1,2}\. ))", re.IGNORECASE)
_FOR_THE_SEASON = re.compile(r"\s*for the (?:season|year|winter)", re.IGNORECASE)
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
    r"\b(?:[a-z]\.|mon|tues?|wed|thurs?|fri|sat|sun|jan|feb|mar|apr|jun|jul|aug|sept?|oct|nov|dec|st|a\.m|p\.m)$",
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


@dataclass
class _Piece:
    """One piece of a statement: a season, days, single dates, times, closed, or except."""

    kind: str
    text: str
    start: int
    end: int
    span: TimeSpan | None = None


@dataclass
class _Rule:
    """Pieces that belong together."""

    seasons: list[str] = field(default_factory=list)
    days: list[str] = field(default_factory=list)
    dates: list[str] = field(default_factory=list)
    spans: list[TimeSpan] = field(default_factory=list)
    closed: bool = False
    closes_at: int | None = None
    excepted: bool = False
    opened: bool = False
    in_brackets: bool = False
    name: str = ""
    last_kind: str = ""

    def takes(self, kind: str) -> bool:
        """Whether one more piece of a kind still belongs to this rule."""
        if kind == "open":
            return not self.says_when
        if kind == "closes":
            return not self.spans and self.closes_at is None
        done = self.says_when
        if not done or kind == self.last_kind:
            return True
        if kind == "times":
            return not self.spans and not self.closed
        if kind == "closed":
            return not self.spans and not self.closed
        filled = {
            "season": self.seasons,
            "name": self.name,
            "days": self.days or self.dates,
            "dates": self.dates or self.days,
        }.get(kind)
        return not filled or (self.last_kind in ("days", "dates") and kind in ("days", "dates"))

    @property
    def says_when(self) -> bool:
        return bool(self.spans or self.closed or self.closes_at is not None or self.open_as_usual)

    @property
    def open_as_usual(self) -> bool:
        """Whether certain dates are said to be open and no times are given for them."""
        return self.opened and bool(self.dates) and not (self.days or self.closed)


def read_hours(text: str) -> HoursRead:
    """Read opening hours.

    Args:
        text: as plain_text leaves it; lines and sentences are read one after the other, a heading such as
            'June 20 through Labor Day' holds for the lines below it.

    Returns:
        What was read, what is in doubt, and the statements about hours that were not read.
    """
    rules: list[_Rule] = []
    doubts: list[str] = []
    lost: list[str] = []
    last_entry: str | None = None
    before_close: int | None = None
    heading, of_something_else = _Rule(), False
    aside: list[tuple[str, list[_Rule]]] = []
    for statement in _statements(text):
        if not _MAY_SAY_WHEN.search(statement):
            continue
        rest, latest, minutes = _without_last_entry(statement)
        last_entry, before_close = latest or last_entry, minutes or before_close
        pieces = list(_pieces(rest))
        read = _rules(rest, pieces)
        says_when = any(rule.says_when for rule in read)
        if _ELSEWHERE.search(rest) or (of_something_else and says_when):
            of_something_else = of_something_else or not says_when
            if says_when:
                lost.append(statement.strip(" .|"))
            continue
        of_something_else = False
        if says_when and _SOMETHING_THEN.search(rest):
            aside.append((statement.strip(" .|"), [rule for rule in read if rule.says_when]))
            continue
        doubts += _doubts_of(rest, pieces)
        again = [piece for piece in pieces if piece.kind == "again"]
        if again and len(pieces) == 1:
            same = next((rule for rule in reversed(rules) if rule.spans), None)
            if same is None:
                lost.append(statement.strip(" .|"))
            else:
                rules.append(_Rule(seasons=list(same.seasons), days=[again[0].text], spans=list(same.spans)))
            continue
        if not says_when:
            if any(piece.kind in ("season", "name", "days", "dates") for piece in pieces):
                if rules and read[0].seasons and not read[0].days and _ONLY.search(rest):
                    for rule in rules:
                        rule.seasons = rule.seasons or list(read[0].seasons)
                    continue
                if rules and read[0].seasons and read[0].days:
                    times = next((rule.spans for rule in reversed(rules) if rule.spans), [])
                    rules.append(replace(read[0], spans=list(times)))
                    others = [day for day in _DAYS if day not in _each_day(read[0].days)]
                    if others and _JUST.search(rest):
                        rules.append(_Rule(seasons=list(read[0].seasons), days=others, closed=True))
                    doubts.append(f"No times are given: {statement.strip(' .|')}")
                    continue
                heading = _heading(heading, read[0])
            elif _HOURS_ABOUT.search(rest) and latest is None and minutes is None and not _is_heading(rest):
                lost.append(statement.strip(" .|"))
            continue
        for rule in read:
            if not rule.seasons and not (rule.closed and rule.dates):
                rule.seasons, rule.name = list(heading.seasons), rule.name or heading.name
            if not rule.days and not rule.dates and not (rule.closed and rule.seasons):
                rule.days = list(heading.days)
                rule.dates = list(heading.dates)
        for rule in read:
            if rule.closes_at is not None and not (
                rule.spans or rule.days or rule.dates or rule.seasons or rule.name
            ):
                lost.append(statement.strip(" .|"))
            elif rule.says_when:
                rules.append(rule)
            elif rule.dates in (["SH"], ["PH"]) and rules and not rule.excepted:
                rule.opened, rule.days = True, []
                rules.append(rule)
            elif rule.days or rule.dates:
                doubts.append(f"Not all of '{statement.strip(' .|')}' was read.")
        if _UNREAD.search(_between(rest, pieces)):
            doubts.append(f"Not all of '{statement.strip(' .|')}' was read.")
        heading.days, heading.dates = [], []
    for words, read in aside:
        if any(rule.spans for rule in rules):
            lost.append(words)
        else:
            rules += read
            doubts.append(f"'{words}' may be the hours of only a part of what there is.")
    doubts += _place_names_in_the_year(rules)
    if (heading.days or heading.seasons) and not rules:
        rules.append(heading)
        doubts.append("No times are given.")
    written = _written(rules)
    if any(span and not span.sure for rule in rules for span in rule.spans):
        doubts.append("Morning or afternoon is not said; times are taken as a place by day would keep them.")
    return HoursRead("; ".join(written), last_entry, before_close, tuple(dict.fromkeys(doubts)), tuple(lost))


def _heading(old: _Rule, new: _Rule) -> _Rule:
    """What a statement without times says for those after it: a new season ends the old one."""
    season = new if new.seasons or new.name else old
    return _Rule(seasons=list(season.seasons), name=season.name, days=list(new.days), dates=list(new.dates))


def _each_day(days: Sequence[str]) -> set[str]:
    """Every day of the week that spans of days name."""
    named: set[str] = set()
    for span in days:
        first, _, last = span.partition("-")
        if first in _DAYS:
            begin = _DAYS.index(first)
            count = (_DAYS.index(last) - begin) % 7 if last in _DAYS else 0
            named |= {_DAYS[(begin + later) % 7] for later in range(count + 1)}
    return named


def _between(statement: str, pieces: Sequence[_Piece]) -> str:
    """What of a statement no piece has read."""
    ends = [0, *(piece.end for piece in pieces)]
    starts = [*(piece.start for piece in pieces), len(statement)]
    return " | ".join(statement[end:start] for end, start in zip(ends, starts, strict=True) if end < start)


def _place_names_in_the_year(rules: list[_Rule]) -> Iterator[str]:
    """Give 'winter' the rest of a year whose summer has dates; leave out what has none. Yields what is in doubt."""
    dated = {rule.name: rule.seasons for rule in rules if rule.name and rule.seasons}
    undated = list(
        dict.fromkeys(rule.name for rule in rules if rule.name and not rule.seasons and not rule.dates)
    )
    if len(undated) > 1:
        rules[:] = [rule for rule in rules if rule.name not in undated or rule.seasons or rule.dates]
        yield f"When {' and '.join(map(repr, undated))} begin and end is not said; their hours are left out."
        return
    for name in undated:
        mine = [rule for rule in rules if rule.name == name and not rule.seasons and not rule.dates]
        spans = dated.get(name) or [
            rest
            for other in dated.values()
            if len(other) == len(dated) == len(undated) == 1 and (rest := _rest_of_year(other[0]))
        ]
        if spans:
            for rule in mine:
                rule.seasons = list(spans)
            rules.sort(key=lambda rule: rule not in mine)  # what overlaps on a day is the dated one's
        elif len(mine) == len([rule for rule in rules if not rule.closed]):
            yield f"When '{name}' begins and ends is not said; its hours are taken for all year."
        else:
            rules[:] = [rule for rule in rules if rule not in mine]
            yield f"When '{name}' begins and ends is not said; its hours are left out."


def _rest_of_year(season: str) -> str | None:
    """The months or days outside one span, which may share its first and last day."""
    ends = re.split(r"-(?=[A-Z]|easter)", season, maxsplit=1)
    if len(ends) == 1:
        return None
    first, last = ends
    if first in _MONTHS and last in _MONTHS:
        return f"{_MONTHS[(_MONTHS.index(last) + 1) % 12]}-{_MONTHS[_MONTHS.index(first) - 1]}"
    return f"{last}-{first}"


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


def _pieces(text: str) -> Iterator[_Piece]:
    at, small = 0, small_letters(text)
    while at < len(text):
        piece = _piece_at(text, small, at)
        if piece is None:
            at += 1
            while at < len(text) and text[at].isalnum() and text[at - 1].isalnum():
                at += 1
            continue
        yield piece
        at = max(piece.end, at + 1)


def _piece_at(text: str, small: str, at: int) -> _Piece | None:
    if not text[at].isalnum() or (at and text[at - 1].isalnum()):
        return None
    begins = _BEGINS.match(small, at)
    if begins is None or not begins.lastgroup:
        return None
    for reader in _READERS[begins.lastgroup]:
        piece = reader(text, at)
        if piece:
            return piece
    return None


def _closing(text: str, at: int) -> _Piece | None:
    match = _CLOSES_AT.match(text, at)
    found = time_at(text, match.end()) if match else None
    if found and not _NO_TIME.match(text, found[1]):
        return _Piece("closes", str(found[0]), at, found[1])
    match = _CLOSED.match(text, at)
    if match:
        return _Piece("closed", "off", at, match.end())
    for kind, pattern in (("except", _EXCEPT), ("open", _OPEN)):
        match = pattern.match(text, at)
        if match and not (kind == "open" and span_at(text, at)):
            return _Piece(kind, "", at, match.end())
    return None


def _season_name(text: str, at: int) -> _Piece | None:
    """A part of the year by its name alone, where hours are said to be its own."""
    match = _SEASON_NAME.match(text, at)
    if not match or not (at == 0 or match["own"] or re.match(r"\s*[:(,-]", text[match.end() :])):
        return None
    return _Piece("name", match["name"].casefold(), at, match.end())


def _holiday_mondays(text: str, at: int) -> _Piece | None:
    match = _HOLIDAY_MONDAYS.match(text, at)
    return _Piece("again", "PH Mo", at, match.end()) if match else None


def _times(text: str, at: int) -> _Piece | None:
    always = _ALWAYS.match(text, at)
    if always:
        return _Piece("times", "00:00-24:00", at, always.end(), TimeSpan(0, 1440))
    found = span_at(text, at)
    return _Piece("times", str(found[0]), at, found[1], found[0]) if found else None


def _point(text: str, at: int) -> tuple[str, str, int] | None:
    """A point of the year that may begin or end a season: as a first day, as a last day, and where it ends."""
    match = _NTH_WEEKEND.match(text, at)
    if match:
        month = ONE_MONTH.match(text, match.end())
        assert month
        day = "Sa" if match["what"].casefold() == "weekend" else _weekday(match["what"])
        day_in_month = f"{month.lastgroup} {day}[{_ORDINALS[match['nth'].casefold()]}]"
        return day_in_month, day_in_month, month.end()
    match = _HOLIDAY.match(text, at)
    if match and not match.group(f"d{len(_HOLIDAYS) - 1}"):
        name = _holiday_day(match)
        return name, name, match.end()
    match = ONE_MONTH.match(text, at)
    if match:
        month_name = str(match.lastgroup)
        day_match = _DAY_OF_MONTH.match(text, match.end())
        if day_match and 1 <= int(day_match["day"]) <= 31:
            end = _after_year(text, day_match.end())
            date = f"{month_name} {int(day_match['day']):02}"
            return date, date, end
        return month_name, month_name, _after_year(text, match.end())
    match = _DAY_BEFORE_MONTH.match(text, at)
    if match:
        month = _month_at(text, match.end())
        if month:
            date = f"{month[0]} {int(match['day']):02}"
            return date, date, _after_year(text, month[1])
    return None


def _month_at(text: str, at: int) -> tuple[str, int] | None:
    """A month by its name, or right after a full stop by its number, and where it ends."""
    named = ONE_MONTH.match(text, at)
    if named:
        return str(named.lastgroup), named.end()
    number = _MONTH_IN_DIGITS.match(text, at) if text[at - 1] == "." else None
    return (_MONTHS[int(number["month"]) - 1], number.end()) if number else None


def _after_year(text: str, at: int) -> int:
    match = _YEAR.match(text, at)
    return match.end() if match else at


def _holiday_day(match: re.Match[str]) -> str:
    number = next(n for n in range(len(_HOLIDAYS)) if match.group(f"d{n}"))
    name = _HOLIDAYS[number][1]
    if match["before"]:
        return f"{name} -1 day"
    return f"{name} +1 day" if match["after"] else name


def _season_or_date(text: str, at: int) -> _Piece | None:
    match = _SCHOOL_BREAKS.match(text, at)
    if match:
        return _Piece("dates", "SH", at, match.end())
    match = _HOLIDAY.match(text, at)
    if match and match.group(f"d{len(_HOLIDAYS) - 1}"):
        return _Piece("dates", "PH", at, match.end())
    days = _days_of_one_month(text, at)
    if days:
        return days
    first = _point(text, at)
    if not first:
        return None
    beginning, _, end = first
    to = _TO.match(text, end)
    if to:
        second = _point(text, to.end())
        if second:
            last = second[1]
            if len(last) == 3 and len(beginning) > 3:
                last = f"{last} {_LAST_DAY[last]}"
            return _Piece("season", f"{beginning}-{last}", at, second[2])
        day = _DAY_OF_MONTH.match(text, to.end())
        if day and re.fullmatch(r"[A-Z][a-z]{2} \d\d", beginning) and span_at(text, to.end()) is None:
            return _Piece("season", f"{beginning}-{int(day['day']):02}", at, day.end())
    to_the_end = _FOR_THE_SEASON.match(text, end)
    if to_the_end:
        return _Piece("season", f"{beginning}-Dec 31", at, to_the_end.end())
    whole_month = re.fullmatch(r"[A-Z][a-z]{2}", beginning)
    return _Piece("season" if whole_month else "dates", beginning, at, end)


def _days_of_one_month(text: str, at: int) -> _Piece | None:
    """Such as '24., 25. und 31. Dezember', 'December 24, 25' or '24-26 December'."""
    month = ONE_MONTH.match(text, at)
    day = _DAY_OF_MONTH.match(text, month.end()) if month else _DAY_BEFORE_MONTH.match(text, at)
    if not day:
        return None
    numbers, place = [int(day["day"])], day.end()
    while len(numbers) < _MOST_DAYS_LISTED:
        if not month:
            named = _month_at(text, place)
            if named:
                ends = _TO.match(text, named[1])
                if len(numbers) == 1 or (ends and _point(text, ends.end())):
                    return None
                return _dates_of(named[0], numbers, at, _after_year(text, named[1]))
        following = (_NEXT_DAY if month else _NEXT_DAY_BEFORE_MONTH).match(text, place)
        if not following:
            break
        number = int(following["day"])
        if following["joined"].casefold() in ("-", "to", "through", "bis"):
            if not numbers[-1] < number <= numbers[-1] + _MOST_DAYS_LISTED:
                return None
            numbers += range(numbers[-1] + 1, number)
        numbers.append(number)
        place = following.end()
    if not month or len(numbers) == 1:
        return None
    return _dates_of(str(month.lastgroup), numbers, at, _after_year(text, place))


def _dates_of(month: str, numbers: Sequence[int], at: int, end: int) -> _Piece | None:
    if not all(1 <= number <= _LAST_DAY[month] for number in numbers):
        return None
    return _Piece("dates", ",".join(f"{month} {number:02}" for number in numbers), at, end)


def _weekday(text: str) -> str:
    match = _ONE_DAY.match(text)
    assert match
    return str(match.lastgroup)


def _weekdays(text: str, at: int) -> _Piece | None:
    for pattern, days in ((_EVERY_DAY, "Mo-Su"), (_WEEKENDS, "Sa-Su"), (_WEEKDAYS, "Mo-Fr")):
        match = pattern.match(text, at)
        if match:
            return _Piece("days", days, at, match.end())
    letters = _SPAN_OF_LETTERS.match(text, at)
    if letters:
        return _Piece("days", f"{_LETTERS[letters['from']]}-{_LETTERS[letters['to']]}", at, letters.end())
    nth = _NTH.match(text, at)
    if nth:
        day = _ONE_DAY.match(text, nth.end())
        if day:
            ordinals = ",".join(_ORDINALS[nth[name].casefold()] for name in ("first", "next") if nth[name])
            of = _OF_THE_MONTH.match(text, day.end())
            return _Piece("days", f"{day.lastgroup}[{ordinals}]", at, of.end() if of else day.end())
    match = _ONE_DAY.match(text, at)
    if not match:
        return None
    short = len(match[0].rstrip(".")) <= 2
    first, end = str(match.lastgroup), match.end()
    to = _TO.match(text, end)
    if to:
        last = _ONE_DAY.match(text, to.end())
        if last:
            return _Piece("days", f"{first}-{last.lastgroup}", at, last.end())
    if short and match[0][0].islower():
        return None  # 'so' and 'do' are words of their own
    return _Piece("days", first, at, end)


_IN_ORDER: dict[str, tuple[Callable[[str, int], _Piece | None], tuple[re.Pattern[str], ...]]] = {
    "closing": (_closing, (_CLOSES_AT, _CLOSED, _EXCEPT, _OPEN)),
    "holiday_mondays": (_holiday_mondays, (_HOLIDAY_MONDAYS,)),
    "season_name": (_season_name, (_SEASON_NAME,)),
    "season_or_date": (
        _season_or_date,
        (_SCHOOL_BREAKS, _HOLIDAY, _NTH_WEEKEND, ONE_MONTH, _DAY_BEFORE_MONTH),
    ),
    "times": (_times, (_ALWAYS, *SPANS)),
    "weekdays": (_weekdays, (_EVERY_DAY, _WEEKENDS, _WEEKDAYS, _LETTER_IN_SMALL, _NTH, _ONE_DAY)),
}
_BEGINS = first_look({name: patterns for name, (_, patterns) in _IN_ORDER.items()})
_READERS = {
    name: [reader for reader, _ in list(_IN_ORDER.values())[number:]] for number, name in enumerate(_IN_ORDER)
}
"""What reads a piece, by what may begin there; and what is tried after that."""


def _opens_a_rule(text: str, gap: str, piece: _Piece) -> bool:
    """Whether a season or days stand in brackets or before a colon, and so begin what follows."""
    return piece.kind in ("season", "name", "days", "dates") and (
        "(" in gap or text[piece.end : piece.end + 2].lstrip().startswith(":")
    )


def _rules(text: str, pieces: Sequence[_Piece]) -> list[_Rule]:
    rules = [_Rule()]
    for number, piece in enumerate(pieces):
        if piece.kind == "except":
            opens = rules[-1].closed  # closed on Mondays, except public holidays
            rules.append(
                _Rule(
                    seasons=list(rules[-1].seasons),
                    excepted=not opens,
                    opened=opens,
                    in_brackets="(" in text[: piece.start][-2:],
                )
            )
            continue
        gap = text[pieces[number - 1].end if number else 0 : piece.start]
        rule = rules[-1]
        if ")" in gap and rule.in_brackets and len(rules) > 1:
            rule = _Rule(closed=rules[-2].closed)
            rules.append(rule)
        if piece.kind == "again":
            spans = next((r.spans for r in reversed(rules) if r.spans), [])
            rules.append(_Rule(days=[piece.text], spans=list(spans), last_kind="days"))
            continue
        if piece.kind == "times" and rule.excepted and rule.days and not rules[-2].says_when:
            rule = rules[-2]  # daily except Mondays 10-5
        elif not rule.takes(piece.kind) or (rule.says_when and _opens_a_rule(text, gap, piece)):
            rule = _Rule(in_brackets="(" in gap)
            rules.append(rule)
        if piece.kind == "season":
            rule.seasons.append(piece.text)
        elif piece.kind == "days":
            if rule.dates in (["SH"], ["PH"]) and not rule.days and not gap.strip(" :"):
                rule.dates = [rule.dates[0] if piece.text == "Mo-Su" else f"{rule.dates[0]} {piece.text}"]
            else:
                rule.days.append(piece.text)
        elif piece.kind == "dates":
            rule.dates += piece.text.split(",")
        elif piece.kind == "times" and piece.span:
            later = (
                rule.spans and piece.span.opens < rule.spans[-1].closes and piece.span.closes + 720 <= 1440
            )
            rule.spans.append(
                replace(piece.span, opens=piece.span.opens + 720, closes=piece.span.closes + 720)
                if later
                else piece.span
            )
        elif piece.kind == "closes":
            rule.closes_at = int(piece.text)
        elif piece.kind == "closed":
            rule.closed = True
        elif piece.kind == "open":
            rule.opened = True
            continue
        elif piece.kind == "name":
            rule.name = piece.text
        rule.last_kind = piece.kind
    for rule, before_it in zip(rules[1:], rules, strict=False):
        rule.name = rule.name or ("" if rule.seasons else before_it.name)
    for rule in rules:
        rule.closed = rule.closed or (rule.excepted and not rule.spans and rule.closes_at is None)
    seasons_after = next(
        (rule.seasons for rule in reversed(rules) if rule.seasons and not (rule.in_brackets or rule.closed)),
        [],
    )
    before: list[str] = []
    for rule in rules:
        if rule.seasons:
            before = rule.seasons
        elif not rule.closed:
            rule.seasons = list(before or seasons_after)
    for rule, earlier in zip(rules[1:], rules, strict=False):
        if (
            rule.spans
            and rule.seasons
            and earlier.spans
            and earlier.seasons != rule.seasons
            and not rule.dates
        ):
            rule.days = rule.days or list(earlier.days)
    return rules


def _doubts_of(statement: str, pieces: Sequence[_Piece]) -> Iterator[str]:
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


def _written(rules: Sequence[_Rule]) -> list[str]:
    """The rules in order: the week, its closing days, holidays, single dates; later ones win where they overlap."""
    week: list[str] = []
    closing_days: list[str] = []
    holidays: list[str] = []
    dates: list[str] = []
    usual = next((rule.spans for rule in rules if rule.spans), [])
    usual_days = {day for rule in rules if rule.spans for day in rule.days}
    for rule in rules:
        if rule.closes_at is not None and not rule.spans:
            if not usual or rule.closes_at <= usual[0].opens:
                continue
            rule.spans = [TimeSpan(usual[0].opens, rule.closes_at)]
        elif rule.open_as_usual and not rule.spans:
            if not usual:
                continue
            rule.spans = list(usual)
        elif rule.spans:
            usual = rule.spans
        times = "off" if rule.closed else ",".join(map(str, rule.spans))
        days = ",".join(day for day in rule.days if day != "Mo-Su" or len(rule.days) == 1)
        season = ",".join(rule.seasons)
        if rule.closed and rule.dates and re.search(r"\d", rule.dates[0]) and set(rule.days) <= usual_days:
            days = ""  # "closed on the following Fridays: March 1"
        if days or not rule.dates:
            words = " ".join(part for part in (season, days, times) if part)
            if words and words != "off":
                (week if not rule.closed else dates if season else closing_days).append(words)
        for date in rule.dates:
            into = holidays if date.startswith(_HOLIDAY_MARKS) else dates
            within = season if into is holidays and not rule.closed else ""
            into.append(" ".join(part for part in (within, date, times) if part))
    holidays.sort(key=lambda words: words.endswith("off"))
    dates.sort(key=lambda words: words.endswith("off"))
    return list(dict.fromkeys(week + closing_days + holidays + dates))


def days_from(words: str) -> str | None:
    """Days or dates in words ('first Sunday', 'weekends', 'Mondays to Fridays') in opening_hours syntax, if they are any."""
    pieces = [piece for piece in _pieces(words) if piece.kind in ("days", "dates", "season")]
    if not pieces:
        return None
    if "school holiday" in words.casefold() or "schulferien" in words.casefold():
        pieces = [replace(piece, text="SH") if piece.text == "PH" else piece for piece in pieces]
    return ",".join(dict.fromkeys(piece.text for piece in pieces))
