"""Opening hours as rules: pieces that belong together, and how they are written in OpenStreetMap's syntax."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

from tripplan.reading.hours.clock_times import TimeSpan
from tripplan.reading.hours.pieces import DAYS, MONTHS, Piece

_HOLIDAY_MARKS = ("PH", "SH")


@dataclass
class Rule:
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
    own_season: bool = False
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
    def says_which_days(self) -> bool:
        """Whether it names days, dates or a part of the year."""
        return bool(self.days or self.dates or self.seasons or self.name)

    @property
    def says_when(self) -> bool:
        """Whether it has times, or says that the place is closed then, or open as usual."""
        return bool(self.spans or self.closed or self.closes_at is not None or self.open_as_usual)

    @property
    def open_as_usual(self) -> bool:
        """Whether certain dates are said to be open and no times are given for them."""
        return self.opened and bool(self.dates) and not (self.days or self.closed)


def each_day(days: Sequence[str]) -> set[str]:
    """Every day of the week that spans of days name."""
    named: set[str] = set()
    for span in days:
        first, _, last = span.partition("-")
        if first in DAYS:
            begin = DAYS.index(first)
            count = (DAYS.index(last) - begin) % 7 if last in DAYS else 0
            named |= {DAYS[(begin + later) % 7] for later in range(count + 1)}
    return named


def place_names_in_the_year(rules: list[Rule]) -> Iterator[str]:
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
    if first in MONTHS and last in MONTHS:
        return f"{MONTHS[(MONTHS.index(last) + 1) % 12]}-{MONTHS[MONTHS.index(first) - 1]}"
    return f"{last}-{first}"


def _opens_a_rule(text: str, gap: str, piece: Piece, following: Sequence[Piece]) -> bool:
    """Whether a season or days begin what follows: before a colon, or in brackets that hold times as well."""
    if piece.kind not in ("season", "name", "days", "dates"):
        return False
    if piece.kind == "season" and "," in gap and following and following[-1].kind in ("times", "closes"):
        return True  # seasons stand before their times in this statement
    closing = text.find(")", piece.end)
    in_brackets = any(
        one.kind in ("times", "closes", "closed") and one.start < closing for one in following[:2]
    )
    return ("(" in gap and in_brackets) or text[piece.end : piece.end + 2].lstrip().startswith(":")


def rules_from(text: str, pieces: Sequence[Piece]) -> list[Rule]:
    """The rules that one statement makes of its pieces; some may say nothing of when."""
    rules = [Rule()]
    for number, piece in enumerate(pieces):
        if piece.kind == "except":
            opens = rules[-1].closed  # closed on Mondays, except public holidays
            rules.append(
                Rule(
                    seasons=list(rules[-1].seasons),
                    excepted=not opens,
                    opened=opens,
                    in_brackets="(" in text[: piece.start][-2:],
                )
            )
            continue
        gap = text[pieces[number - 1].end if number else 0 : piece.start]
        rule = rules[-1]
        if rule.excepted and rule.says_which_days and ":" in gap:
            rule = Rule()
            rules.append(rule)
        elif ")" in gap and rule.in_brackets and len(rules) > 1:
            rule = Rule(closed=rules[-2].closed)
            rules.append(rule)
        if piece.kind == "again":
            spans = next((r.spans for r in reversed(rules) if r.spans), [])
            rules.append(Rule(days=[piece.text], spans=list(spans), last_kind="days"))
            continue
        if piece.kind == "times" and rule.excepted and rule.days and not rules[-2].says_when:
            rule = rules[-2]  # daily except Mondays 10-5
        elif rule.says_when and _opens_a_rule(text, gap, piece, pieces[number + 1 :]):
            rule = Rule(in_brackets="(" in gap, own_season=piece.kind == "season")
            rules.append(rule)
        elif not rule.takes(piece.kind):
            rule = Rule(in_brackets="(" in gap)
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
        (
            rule.seasons
            for rule in reversed(rules)
            if rule.seasons and not (rule.in_brackets or rule.own_season or rule.closed)
        ),
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
            (rule.spans or rule.closes_at)
            and rule.seasons
            and earlier.spans
            and earlier.seasons != rule.seasons
            and not rule.dates
        ):
            rule.days = rule.days or list(earlier.days)
    return rules


def as_opening_hours(rules: Sequence[Rule]) -> list[str]:
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
