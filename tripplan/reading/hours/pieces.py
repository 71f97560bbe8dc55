"""Cutting a sentence about opening hours into what it is made of: seasons, days, dates, times, closed, except."""

import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace

from tripplan.reading.hours.clock_times import SPANS, TimeSpan, span_at, time_at
from tripplan.reading.vocabulary import first_look, small_letters

DAYS = ("Mo", "Tu", "We", "Th", "Fr", "Sa", "Su")
_DAY_WORDS = (
    r"mon(?:days?)?|montags?|mo", r"tue(?:s(?:days?)?)?|dienstags?|di", r"wed(?:nes(?:days?)?|s)?|mittwochs?|mi",
    r"thu(?:r(?:s(?:days?)?)?)?|donnerstags?|do", r"fri(?:days?)?|freitags?|fr", r"sat(?:ur(?:days?)?|s)?|samstags?|sonnabends?|sa",
    r"sun(?:days?)?|sonntags?|so",
)  # fmt: skip
_DAY = "|".join(f"(?P<{name}>{words})" for name, words in zip(DAYS, _DAY_WORDS, strict=True))
_ONE_DAY = re.compile(rf"\b(?:{_DAY})\b\.?", re.IGNORECASE)
_ALWAYS = re.compile(r"\b(?:24 ?hours(?: a day)?|24/7|around the clock|rund um die uhr)\b", re.IGNORECASE)
_EVERY_DAY = re.compile(
    r"\b(?:daily|every ?day|each day|(?:7|seven) days(?:(?: a| per) week)?|all week|(?:all )?year[- ]round|all year|ganzjährig|täglich|jeden tag)\b",
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
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")
_MONTH_WORDS = (
    r"jan(?:uary|uar)?", r"feb(?:ruary|ruar)?", r"mar(?:ch)?|märz", r"apr(?:il)?", r"may|mai", r"june?|juni", r"july?|juli",
    r"aug(?:ust)?", r"sept?(?:ember)?", r"o[ck]t(?:ober)?", r"nov(?:ember)?", r"de[cz](?:ember)?",
)  # fmt: skip
_LAST_DAY = dict(zip(MONTHS, (31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31), strict=True))
_MONTH = "|".join(f"(?P<{name}>{words})" for name, words in zip(MONTHS, _MONTH_WORDS, strict=True))
ONE_MONTH = re.compile(rf"\b(?:{_MONTH})\b\.?", re.IGNORECASE)
"""The name of a month; the name of the group that matched is its short one."""
_DAY_OF_MONTH = re.compile(r"\s*(?P<day>\d{1,2})(?:st|nd|rd|th)?\b(?![:.]\d|\s?[ap]\.?m)", re.IGNORECASE)
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
_EDGE_OF_MONTH = re.compile(
    rf"(?:the )?(?:end|beginning|start) of (?=(?:{'|'.join(_MONTH_WORDS)})\b)|(?:ende|anfang) (?=(?:{'|'.join(_MONTH_WORDS)})\b)",
    re.IGNORECASE,
)
_HOURS_BEHIND = re.compile(r"\s*(?:-|to\b|bis\b)\s*\d")
_YEAR = re.compile(r",?\s*20\d\d\b")
_TO = re.compile(r"\s*(?:-|to|through|thru|until|till|bis(?: zum)?)\s*(?:the\s+)?", re.IGNORECASE)
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
_ITS_WEEKEND = re.compile(r" weekend\b(?=\s*(?:-|to|through|thru|until|till))", re.IGNORECASE)
_HOLIDAY_MONDAYS = re.compile(r"\bholiday mondays?\b|\bmonday holidays?\b", re.IGNORECASE)
_CLOSED = re.compile(
    r"\b(?:closed|geschlossen|schließtage?n?|ruhetag|winterpause|betriebsferien|zu)\b(?: all day| on)?",
    re.IGNORECASE,
)
_CLOSES_AT = re.compile(
    r"\b(?:closes?(?: early)?(?: at)?(?= \d| noon| midnight)|closing (?:early )?at|(?:open )?(?:late )?(?:until|till|til|bis)(?: zu)?(?= \d| noon| midnight| mittern))\s+",
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
_EXCEPT = re.compile(
    r"\b(?:except(?: for| on)?|außer(?: an| am)?|excluding|but|unless|ausgenommen)\b", re.IGNORECASE
)
_FOR_THE_SEASON = re.compile(r"\s*for the (?:season|year|winter)", re.IGNORECASE)


@dataclass
class Piece:
    """One piece of a statement: a season, days, single dates, times, closed, or except."""

    kind: str
    text: str
    start: int
    end: int
    span: TimeSpan | None = None


def pieces_of(text: str) -> Iterator[Piece]:
    """The pieces of a statement in order; what none of them reads is left out."""
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


def _piece_at(text: str, small: str, at: int) -> Piece | None:
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


def _closing(text: str, at: int) -> Piece | None:
    match = _CLOSES_AT.match(text, at)
    found = time_at(text, match.end()) if match else None
    if found and not _NO_TIME.match(text, found[1]):
        return Piece("closes", str(found[0]), at, found[1])
    match = _CLOSED.match(text, at)
    if match:
        return Piece("closed", "off", at, match.end())
    for kind, pattern in (("except", _EXCEPT), ("open", _OPEN)):
        match = pattern.match(text, at)
        if match and not (kind == "open" and span_at(text, at)):
            return Piece(kind, "", at, match.end())
    return None


def _season_name(text: str, at: int) -> Piece | None:
    """A part of the year by its name alone, where hours are said to be its own."""
    match = _SEASON_NAME.match(text, at)
    if not match or not (at == 0 or match["own"] or re.match(r"\s*[:(,-]", text[match.end() :])):
        return None
    return Piece("name", match["name"].casefold(), at, match.end())


def _holiday_mondays(text: str, at: int) -> Piece | None:
    match = _HOLIDAY_MONDAYS.match(text, at)
    return Piece("again", "PH Mo", at, match.end()) if match else None


def _times(text: str, at: int) -> Piece | None:
    always = _ALWAYS.match(text, at)
    if always:
        return Piece("times", "00:00-24:00", at, always.end(), TimeSpan(0, 1440))
    found = span_at(text, at)
    return Piece("times", str(found[0]), at, found[1], found[0]) if found else None


def _point(text: str, at: int) -> tuple[str, str, int] | None:
    """A point of the year that may begin or end a season: as a first day, as a last day, and where it ends."""
    edge = _EDGE_OF_MONTH.match(text, at)
    at = edge.end() if edge else at
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
        weekend = _ITS_WEEKEND.match(text, match.end())
        return name, name, weekend.end() if weekend else match.end()
    match = ONE_MONTH.match(text, at)
    if match:
        month_name = str(match.lastgroup)
        day_match = _DAY_OF_MONTH.match(text, match.end())
        if day_match and 1 <= int(day_match["day"]) <= 31:
            end = _after_year(text, day_match.end())
            date = f"{month_name} {int(day_match['day']):02}"
            return date, date, end
        return month_name, month_name, _after_year(text, match.end())
    number = _DAY_BEFORE_MONTH.match(text, at)
    named = _month_at(text, number.end()) if number else None
    if number and named:
        date = f"{named[0]} {int(number['day']):02}"
        return date, date, _after_year(text, named[1])
    return None


def _month_at(text: str, at: int) -> tuple[str, int] | None:
    """A month by its name, or right after a full stop by its number, and where it ends."""
    named = ONE_MONTH.match(text, at)
    if named:
        return str(named.lastgroup), named.end()
    number = _MONTH_IN_DIGITS.match(text, at) if text[at - 1] == "." else None
    return (MONTHS[int(number["month"]) - 1], number.end()) if number else None


def _after_year(text: str, at: int) -> int:
    match = _YEAR.match(text, at)
    return match.end() if match else at


def _holiday_day(match: re.Match[str]) -> str:
    number = next(n for n in range(len(_HOLIDAYS)) if match.group(f"d{n}"))
    name = _HOLIDAYS[number][1]
    if match["before"]:
        return f"{name} -1 day"
    return f"{name} +1 day" if match["after"] else name


def _season_or_date(text: str, at: int) -> Piece | None:
    match = _SCHOOL_BREAKS.match(text, at)
    if match:
        return Piece("dates", "SH", at, match.end())
    match = _HOLIDAY.match(text, at)
    if match and match.group(f"d{len(_HOLIDAYS) - 1}"):
        return Piece("dates", "PH", at, match.end())
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
        named = ONE_MONTH.match(text, to.end())
        if second and named and _HOURS_BEHIND.match(text, second[2]):
            second = str(named.lastgroup), str(named.lastgroup), named.end()  # November-March 9-17
        if second:
            last = second[1]
            if len(last) == 3 and len(beginning) > 3:
                last = f"{last} {_LAST_DAY[last]}"
            return Piece("season", f"{beginning}-{last}", at, second[2])
        day = _DAY_OF_MONTH.match(text, to.end())
        if day and re.fullmatch(r"[A-Z][a-z]{2} \d\d", beginning) and span_at(text, to.end()) is None:
            return Piece("season", f"{beginning}-{int(day['day']):02}", at, day.end())
    to_the_end = _FOR_THE_SEASON.match(text, end)
    if to_the_end:
        return Piece("season", f"{beginning}-Dec 31", at, to_the_end.end())
    whole_month = re.fullmatch(r"[A-Z][a-z]{2}", beginning)
    return Piece("season" if whole_month else "dates", beginning, at, end)


def _days_of_one_month(text: str, at: int) -> Piece | None:
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


def _dates_of(month: str, numbers: Sequence[int], at: int, end: int) -> Piece | None:
    if not all(1 <= number <= _LAST_DAY[month] for number in numbers):
        return None
    return Piece("dates", ",".join(f"{month} {number:02}" for number in numbers), at, end)


def _weekday(text: str) -> str:
    match = _ONE_DAY.match(text)
    assert match
    return str(match.lastgroup)


def _weekdays(text: str, at: int) -> Piece | None:
    for pattern, days in ((_EVERY_DAY, "Mo-Su"), (_WEEKENDS, "Sa-Su"), (_WEEKDAYS, "Mo-Fr")):
        match = pattern.match(text, at)
        if match:
            return Piece("days", days, at, match.end())
    letters = _SPAN_OF_LETTERS.match(text, at)
    if letters:
        return Piece("days", f"{_LETTERS[letters['from']]}-{_LETTERS[letters['to']]}", at, letters.end())
    nth = _NTH.match(text, at)
    if nth:
        day = _ONE_DAY.match(text, nth.end())
        if day:
            ordinals = ",".join(_ORDINALS[nth[name].casefold()] for name in ("first", "next") if nth[name])
            of = _OF_THE_MONTH.match(text, day.end())
            return Piece("days", f"{day.lastgroup}[{ordinals}]", at, of.end() if of else day.end())
    match = _ONE_DAY.match(text, at)
    if not match:
        return None
    short = len(match[0].rstrip(".")) <= 2
    first, end = str(match.lastgroup), match.end()
    to = _TO.match(text, end)
    if to:
        last = _ONE_DAY.match(text, to.end())
        if last:
            return Piece("days", f"{first}-{last.lastgroup}", at, last.end())
    if short and match[0][0].islower():
        return None  # 'so' and 'do' are words of their own
    return Piece("days", first, at, end)


_IN_ORDER: dict[str, tuple[Callable[[str, int], Piece | None], tuple[re.Pattern[str], ...]]] = {
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


def days_from(words: str) -> str | None:
    """Days or dates in words ('first Sunday', 'weekends', 'Mondays to Fridays') in opening_hours syntax, if they are any."""
    pieces = [piece for piece in pieces_of(words) if piece.kind in ("days", "dates", "season")]
    if not pieces:
        return None
    if "school holiday" in words.casefold() or "schulferien" in words.casefold():
        pieces = [replace(piece, text="SH") if piece.text == "PH" else piece for piece in pieces]
    return ",".join(dict.fromkeys(piece.text for piece in pieces))
