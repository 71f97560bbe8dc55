"""Opening hours against the reference implementation of the syntax.

Source: opening_hours.js 3.15.0 (npm), evaluated 2026-11-25 for 2 to 14 April 2026 in Nordrhein-Westfalen,
whose public and school holidays that package knows; it gave the very dates below for "PH" and "SH".
"""

from datetime import date, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from tripplan.values.opening_hours import holds_at, open_spans, unknown_spans

UTC = ZoneInfo("UTC")
PUBLIC_HOLIDAYS = frozenset({date(2026, 4, 3), date(2026, 4, 6)})
OUT_OF_SCHOOL = frozenset(date(2026, 3, 30) + timedelta(days=count) for count in range(13))

# Hours as the reference gives them, cut at midnight, with the days of April; '?' marks unknown.
REFERENCE: tuple[tuple[str, dict[str, str]], ...] = (
    ("10:00-17:00", {"10:00-17:00": "2 3 4 5 6 7 8 9 10 11 12 13 14"}),
    ("Tu-Su 10:00-17:00", {"10:00-17:00": "2 3 4 5 7 8 9 10 11 12 14"}),
    ("Tu-Su 10:00-17:00; PH off", {"10:00-17:00": "2 4 5 7 8 9 10 11 12 14"}),
    ("Tu-Su 10:00-17:00; PH closed", {"10:00-17:00": "2 4 5 7 8 9 10 11 12 14"}),
    ("Mo-Fr 10:00-17:00; PH 10:00-14:00", {"10:00-14:00": "3 6", "10:00-17:00": "2 7 8 9 10 13 14"}),
    (
        "Mo-Fr 10:00-17:00; Sa,Su,PH 11:00-18:00",
        {"10:00-17:00": "2 7 8 9 10 13 14", "11:00-18:00": "3 4 5 6 11 12"},
    ),
    ("Mo-Fr,PH 10:00-12:00", {"10:00-12:00": "2 3 6 7 8 9 10 13 14"}),
    ("Sa,PH 10:00-12:00", {"10:00-12:00": "3 4 6 11"}),
    ("PH 09:00-12:00", {"09:00-12:00": "3 6"}),
    ("PH off", {}),
    ("SH 09:00-17:00", {"09:00-17:00": "2 3 4 5 6 7 8 9 10 11"}),
    ("SH off; Mo-Fr 10:00-12:00", {"10:00-12:00": "2 3 6 7 8 9 10 13 14"}),
    ("Mo-Fr 10:00-12:00; SH off", {"10:00-12:00": "13 14"}),
    ("Mo-Fr 10:00-12:00; SH 09:00-15:00", {"09:00-15:00": "2 3 4 5 6 7 8 9 10 11", "10:00-12:00": "13 14"}),
    ("SH Mo-Fr 09:00-17:00", {"09:00-17:00": "2 3 6 7 8 9 10"}),
    ("SH Mo,We 09:00-17:00", {"09:00-17:00": "6 8"}),
    ("SH: 09:00-17:00", {"09:00-17:00": "2 3 4 5 6 7 8 9 10 11"}),
    ("PH Mo-Fr 09:00-12:00", {"09:00-12:00": "3 6"}),
    ("PH Sa-Su 09:00-12:00", {}),
    ("Sa,SH 10:00-11:00", {"10:00-11:00": "2 3 4 5 6 7 8 9 10 11"}),
    ("PH,SH 10:00-11:00", {"10:00-11:00": "2 3 4 5 6 7 8 9 10 11"}),
    ("Su,PH,SH 10:00-11:00", {"10:00-11:00": "2 3 4 5 6 7 8 9 10 11 12"}),
    (
        "Mo-Fr 09:00-15:00; SH Mo-Fr 09:00-17:00; PH off",
        {"09:00-15:00": "13 14", "09:00-17:00": "2 7 8 9 10"},
    ),
    (
        "Mo-Fr 09:00-15:00; PH off; SH Mo-Fr 09:00-17:00",
        {"09:00-15:00": "13 14", "09:00-17:00": "2 3 6 7 8 9 10"},
    ),
    ("Apr SH 10:00-12:00", {"10:00-12:00": "2 3 4 5 6 7 8 9 10 11"}),
    ("May PH 10:00-12:00", {}),
    ("Apr-Oct PH,Sa 10:00-12:00", {"10:00-12:00": "3 4 6 11"}),
    ("2026 PH 10:00-12:00", {"10:00-12:00": "3 6"}),
    ("2027 PH 10:00-12:00", {}),
    ("week 15 SH 10:00-12:00", {"10:00-12:00": "6 7 8 9 10 11"}),
    ("Mo-Fr 10:00-12:00, PH 13:00-15:00", {"10:00-12:00": "2 3 6 7 8 9 10 13 14", "13:00-15:00": "3 6"}),
    (
        "Mo-Sa 10:00-12:00, SH Mo-Fr 14:00-16:00",
        {"10:00-12:00": "2 3 4 6 7 8 9 10 11 13 14", "14:00-16:00": "2 3 6 7 8 9 10"},
    ),
    ("Mo-Fr 10:00-12:00; PH -1 day 10:00-11:00", {"10:00-11:00": "2 5", "10:00-12:00": "3 6 7 8 9 10 13 14"}),
    ("PH +1 day 10:00-11:00", {"10:00-11:00": "4 7"}),
    ("PH 22:00-02:00", {"00:00-02:00": "4 7", "22:00-24:00": "3 6"}),
    ("Fr-Sa 20:00-26:00; PH off", {"00:00-02:00": "4 5 11 12", "20:00-24:00": "4 10 11"}),
    (
        "Mo-Fr 10:00-12:00,13:00-15:00; PH 10:00-11:00,12:00-13:00",
        {
            "10:00-11:00": "3 6",
            "10:00-12:00": "2 7 8 9 10 13 14",
            "12:00-13:00": "3 6",
            "13:00-15:00": "2 7 8 9 10 13 14",
        },
    ),
    ("Mo-Fr 10:00-17:00; PH unknown", {"00:00-24:00?": "3 6", "10:00-17:00": "2 7 8 9 10 13 14"}),
    ('Mo-Fr 10:00-17:00; PH "by appointment"', {"00:00-24:00?": "3 6", "10:00-17:00": "2 7 8 9 10 13 14"}),
    (
        'Mo-Fr 10:00-17:00; SH 10:00-12:00 "ring, please"',
        {"10:00-12:00?": "2 3 4 5 6 7 8 9 10 11", "10:00-17:00": "13 14"},
    ),
    (
        'Mo-Th 10:00-17:00; PH open "feast; bring cake"',
        {"00:00-24:00": "3 6", "10:00-17:00": "2 7 8 9 13 14"},
    ),
    ("Mo-Th 10:00-12:00 || PH 14:00-15:00", {"10:00-12:00": "2 6 7 8 9 13 14", "14:00-15:00": "3 6"}),
    (
        "Mo-Th 10:00-12:00; PH off || SH 14:00-15:00",
        {"10:00-12:00": "2 7 8 9 13 14", "14:00-15:00": "2 3 4 5 6 7 8 9 10 11"},
    ),
    (
        'Mo-Th 10:00-12:00; PH off || "ask"',
        {
            "00:00-10:00?": "2 7 8 9 13 14",
            "00:00-24:00?": "3 4 5 6 10 11 12",
            "10:00-12:00": "2 7 8 9 13 14",
            "12:00-24:00?": "2 7 8 9 13 14",
        },
    ),
    ("24/7; PH off", {"00:00-24:00": "2 4 5 7 8 9 10 11 12 13 14"}),
    (
        "24/7; SH Mo-Fr 12:00-13:00 off",
        {"00:00-12:00": "2 3 6 7 8 9 10", "00:00-24:00": "4 5 11 12 13 14", "13:00-24:00": "2 3 6 7 8 9 10"},
    ),
    ("open; PH,SH off", {"00:00-24:00": "12 13 14"}),
    ("Apr 6 off; PH 10:00-12:00", {"10:00-12:00": "3 6"}),
    ("PH 10:00-12:00; Apr 6 off", {"10:00-12:00": "3"}),
    ("Sa[2] 10:00-12:00; PH off", {"10:00-12:00": "11"}),
    ("SH Sa[2] 10:00-12:00", {"10:00-12:00": "11"}),
)


def hours_by_days(text: str) -> dict[str, str]:
    """What `open_spans` and `unknown_spans` say, in the form of the table."""
    start, end = datetime(2026, 4, 2, tzinfo=UTC), datetime(2026, 4, 15, tzinfo=UTC)
    days: dict[str, set[int]] = {}
    for spans_of, mark in ((open_spans, ""), (unknown_spans, "?")):
        for first, last in spans_of(text, start, end, PUBLIC_HOLIDAYS, OUT_OF_SCHOOL):
            while first < last:
                midnight = datetime(first.year, first.month, first.day, tzinfo=UTC) + timedelta(days=1)
                until = min(last, midnight)
                closes = "24:00" if until == midnight else f"{until:%H:%M}"
                days.setdefault(f"{first:%H:%M}-{closes}{mark}", set()).add(first.day)
                first = until
    return {hours: " ".join(map(str, sorted(found))) for hours, found in days.items()}


@pytest.mark.parametrize(("text", "expected"), REFERENCE, ids=[text for text, _ in REFERENCE])
def test_hours_are_those_of_the_reference_implementation(text: str, expected: dict[str, str]) -> None:
    """Weekday, date, holiday, fallback and comment rules open on the days and hours of the reference."""
    assert hours_by_days(text) == expected


@pytest.mark.parametrize("text", [text for text, _ in REFERENCE])
def test_a_moment_is_open_exactly_within_the_open_spans(text: str) -> None:
    """Asking moment by moment agrees with asking for spans, every half hour of the fortnight."""
    start, end = datetime(2026, 4, 2, tzinfo=UTC), datetime(2026, 4, 15, tzinfo=UTC)
    spans = open_spans(text, start, end, PUBLIC_HOLIDAYS, OUT_OF_SCHOOL)
    for half_hours in range(13 * 48):
        moment = start + timedelta(minutes=30 * half_hours)
        within = any(first <= moment < last for first, last in spans)
        assert holds_at(text, moment, PUBLIC_HOLIDAYS, OUT_OF_SCHOOL) == within
