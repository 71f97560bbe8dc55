"""School holidays, guesses and typical years against published calendars.

Open data: OpenPotato, openholidaysapi.data, commit dd3dfa8 (ODbL), in files beside the checkout that are read
and not copied. New York City 2025-26: the list of the Department of Education as CBS New York quotes it.
England 2025 to 2027: schools' own pages.
"""

import csv
import sys
from collections.abc import Sequence
from datetime import date, timedelta
from pathlib import Path

import numpy as np
import pytest
from numpy.typing import NDArray

from tests.builders import out_of_school
from tripplan.documents.calendars.calendars import DateSpan, SchoolCalendar, with_next_year_expected
from tripplan.documents.where import Point
from tripplan.planning.holidays.public_holidays import public_holidays
from tripplan.planning.holidays.school_regions import built_in_calendar, region_called
from tripplan.planning.holidays.schools import school_days
from tripplan.planning.holidays.typical_year import OUT_ON_A_WEEKDAY, typical_days

DAY = timedelta(days=1)
Flags = NDArray[np.bool_]


def spans(text: str) -> tuple[DateSpan, ...]:
    """Spans of days such as 2025-09-23/24, 2025-12-24/2026-01-02 or a single date, with blanks between."""
    found = []
    for part in text.split():
        first, _, last = part.partition("/")
        end = f"{first[: len(first) - len(last)]}{last}" if last else first
        found.append(DateSpan(first=date.fromisoformat(first), last=date.fromisoformat(end)))
    return tuple(found)


def open_data(folder: Path, file: str, part: str = "") -> tuple[DateSpan, ...]:
    """The school holidays of a file of openholidaysapi.data, nationwide ones and those of one part."""
    with (folder / "school" / f"src_{file}.csv").open(newline="", encoding="utf-8-sig") as table:
        rows = list(csv.DictReader(table, delimiter=";"))
    found = []
    for row in rows:
        named = row.get("Subdivisions") or row.get("Groups") or ""
        if not part or not named or part in named.split(","):
            first, last = row["StartDate"], row["EndDate"] or row["StartDate"]
            found.append(DateSpan(first=date.fromisoformat(first), last=date.fromisoformat(last)))
    return tuple(found)


def off_on(days: Sequence[date], off: Sequence[DateSpan]) -> Flags:
    """Which days lie inside one of the spans."""
    return np.array([any(day in span for span in off) for day in days])


def weekdays(first: date, last: date) -> list[date]:
    """Mondays to Fridays."""
    days = (first + n * DAY for n in range((last - first).days + 1))
    return [day for day in days if day.weekday() < 5]


def brier(chance: NDArray[np.float64] | float, happened: Flags) -> float:
    """Mean squared distance between chances and what happened [-]."""
    return float(np.mean((chance - happened.astype(float)) ** 2))


def report(text: str) -> None:
    """Print a measurement; shown with -s."""
    sys.stdout.write(f"{text}\n")


def table_breaks(folder: Path, country: str, region: str) -> list[DateSpan]:
    """The breaks of one region in the table of 2025 to 2027."""
    with (folder / "school_breaks_2025_2027.csv").open(newline="", encoding="utf-8") as table:
        return [
            DateSpan(first=date.fromisoformat(row["first_day"]), last=date.fromisoformat(row["last_day"]))
            for row in csv.DictReader(table)
            if row["country"] == country and row["region"] == region
        ]


@pytest.mark.parametrize("zone", ["A", "B", "C"])
def test_french_zones_are_those_of_another_package(zone: str, shared_data: Path) -> None:
    """From October 2025 to August 2027 all weekdays agree but the two of Ascension 2026, missing there.

    Source: PyPI vacances-scolaires-france 0.12.0, after the ministry's open data. A news page confirms that
    there were no classes on 15 May 2026.
    """
    calendar = built_in_calendar(region_called(f"FR-{zone}"), 2025, 2027)
    assert calendar is not None
    theirs = table_breaks(shared_data, "FR", f"zone {zone}")
    breaks = [off for off in calendar.no_school if off.first != off.last]
    days = weekdays(date(2025, 10, 1), date(2027, 8, 31))
    differ = off_on(days, theirs) ^ off_on(days, breaks)
    assert [day for day, differs in zip(days, differ, strict=True) if differs] == [
        date(2026, 5, 14),
        date(2026, 5, 15),
    ]


OPEN_DATA = {
    "DE-BY": ("de_holidays_holidays.school.by", ""),
    "DE-NW": ("de_holidays_holidays.school.nw", ""),
    "AT-9": ("at_holidays_holidays.school", "WI"),
    "NL-NOORD": ("nl_holidays_holidays.school", "NO"),
    "NL-MIDDEN": ("nl_holidays_holidays.school", "MI"),
    "NL-ZUID": ("nl_holidays_holidays.school", "ZU"),
    "FR-C": ("fr_holidays_holidays.school", "IF"),
}
KNOWN_DIFFERENCES = {
    # Repentance Day, on which Bavarian pupils stay at home; the package has it not.
    "DE-BY": {date(2026, 11, 18)},
    # All Souls' Day, free in Vienna by the open data.
    "AT-9": {date(2026, 11, 2)},
    # The open data let the break end on 21 March instead of 21 February: a typing error there.
    "NL-ZUID": set(weekdays(date(2027, 2, 22), date(2027, 3, 19))),
    # The Friday after Ascension Day: no classes by a news page and the package; the open data have it not.
    "FR-C": {date(2026, 5, 15)},
}


@pytest.mark.parametrize("code", OPEN_DATA)
def test_built_in_regions_are_those_of_open_data(code: str, shared_data: Path) -> None:
    """In 2026 and half of 2027 all weekdays but public holidays agree, save for days with a known reason."""
    region = region_called(code)
    calendar = built_in_calendar(region, 2026, 2027)
    assert calendar is not None
    subdivision = region.parts[0] if len(region.parts) == 1 else ""
    holidays = public_holidays(region.country, subdivision, (2026, 2027))
    days = [day for day in weekdays(date(2026, 1, 1), date(2027, 6, 30)) if day not in holidays]
    file, part = OPEN_DATA[code]
    differ = off_on(days, open_data(shared_data, file, part)) ^ off_on(days, calendar.no_school)
    assert {days[n] for n in np.flatnonzero(differ)} == KNOWN_DIFFERENCES.get(code, set())


@pytest.mark.parametrize(
    ("file", "part", "last_year"),
    # The last year of which the following one is on record in full. Only Ireland had no part in the fit.
    [*((*source, 2025) for source in OPEN_DATA.values()), ("ie_holidays_holidays.school", "", 2024)],
)
def test_a_copied_year_tells_the_next_one_as_a_chance(
    file: str, part: str, last_year: int, shared_data: Path
) -> None:
    """The guess beats the share of days off alone, and a copy taken for a fact, over the years from 2021."""
    theirs = open_data(shared_data, file, part)
    guessed, copied, happened = [], [], []
    for year in range(2021, last_year + 1):
        known = DateSpan(first=date(year, 1, 1), last=date(year, 12, 31))
        inside = tuple(off for off in theirs if off.last >= known.first and off.first <= known.last)
        district = SchoolCalendar(
            name="d", country="XX", latitude=50, longitude=5, known=known, no_school=inside
        )
        expected = with_next_year_expected(district)
        first, last = known.last + DAY, known.last + 364 * DAY
        days = weekdays(first, last)
        chance = school_days((expected,), Point(50, 5), first, last).chance_out
        guessed.append(chance[[(day - first).days for day in days]])
        copied.append(off_on(days, expected.expected))
        happened.append(off_on(days, theirs))
    was = np.concatenate(happened)
    plain = np.concatenate(copied).astype(float)
    scores = [brier(chances, was) for chances in (np.concatenate(guessed), plain, float(was.mean()))]
    report(
        "Brier score of the guess {:.3f}, of the plain copy {:.3f}, of the base rate {:.3f}".format(*scores)
    )
    assert scores[0] < scores[1]
    assert scores[0] < 0.85 * scores[2]


def typical(country: str, subdivision: str, days: Sequence[date]) -> NDArray[np.float64]:
    """The chance of no school on some days."""
    out = typical_days(country, subdivision, days[0], days[-1]).out
    return out[[(day - days[0]).days for day in days]]


NEW_YORK = spans(
    "2025-09-23/24 2025-10-02 2025-10-13 2025-10-20 2025-11-04 2025-11-11 2025-11-27/28 "
    "2025-12-24/2026-01-02 2026-01-19 2026-02-16/20 2026-03-20 2026-04-02/10 2026-05-25 2026-05-27 "
    "2026-06-04 2026-06-19"
)


def test_a_typical_year_tells_new_york_better_than_a_flat_rate() -> None:
    """Of the whole year far better, of the term alone a little: nobody can guess which week is the break."""
    days = weekdays(date(2025, 7, 1), date(2026, 8, 31))
    in_term = np.array([date(2025, 9, 4) <= day <= date(2026, 6, 26) for day in days])
    happened = off_on(days, NEW_YORK) | ~in_term
    chance = typical("US", "NY", days)
    flat = brier(OUT_ON_A_WEEKDAY, happened)
    report(f"New York City: Brier score {brier(chance, happened):.3f}, flat {flat:.3f}")
    assert brier(chance, happened) < 0.5 * flat
    base = float(happened[in_term].mean())
    assert brier(chance[in_term], happened[in_term]) < brier(base, happened[in_term])


DISTRICT_YEARS = {
    # Weekdays from July to June without school, as said and as they were; Brier score of the whole year and
    # of the term alone.
    ("Fairfax County", "VA", "2025-2026"): (82, 81, 0.089, 0.103),
    ("Livingston", "NJ", "2025-2026"): (85, 78, 0.081, 0.099),
    ("Livingston", "NJ", "2026-2027"): (85, 78, 0.073, 0.090),
    ("St. Johns County", "FL", "2025-2026"): (80, 81, 0.052, 0.060),
    ("St. Johns County", "FL", "2026-2027"): (81, 81, 0.049, 0.057),
    ("St. Johns County", "FL", "2027-2028"): (81, 83, 0.055, 0.063),
}


def district_year(folder: Path, district: str, school_year: str) -> tuple[list[date], Flags, Flags]:
    """The weekdays of a school year with which of them were in term and which were without school."""
    with (folder / "school" / "us_school_calendars.csv").open(newline="", encoding="utf-8") as table:
        rows = [
            (row["kind"], date.fromisoformat(row["start"]), date.fromisoformat(row["end"]))
            for row in csv.DictReader(table)
            if (row["district"], row["school_year"]) == (district, school_year)
        ]
    begins = {kind: first for kind, first, _ in rows}
    off = [DateSpan(first=first, last=last) for kind, first, last in rows if kind == "no_school"]
    year = int(school_year[:4])
    days = weekdays(date(year, 7, 1), date(year + 1, 6, 30))
    in_term = np.array([begins["first_day"] <= day <= begins["last_day"] for day in days])
    return days, in_term, off_on(days, off) | ~in_term


@pytest.mark.parametrize("district_and_year", DISTRICT_YEARS, ids=" ".join)
def test_a_typical_year_tells_three_american_districts(
    district_and_year: tuple[str, str, str], shared_data: Path
) -> None:
    """Far better than a flat rate over the year and better than the share of days off in term.

    The number of weekdays without school is met to eight; which of them are the district's own days, spring
    break and religious holidays nobody can guess. Of all this only the last days of school outside of the
    north-east and south were set after a district here: Fairfax's were told to be free for certain.

    Source: the districts' own calendars, 2025 to 2028.
    """
    district, state, school_year = district_and_year
    said, seen, of_year, of_term = DISTRICT_YEARS[district_and_year]
    days, in_term, happened = district_year(shared_data, district, school_year)
    chance = typical("US", state, days)
    assert (round(float(chance.sum())), int(happened.sum())) == (said, seen)
    assert brier(chance, happened) == pytest.approx(of_year, abs=0.0006)
    assert brier(chance, happened) < 0.45 * brier(OUT_ON_A_WEEKDAY, happened)
    assert brier(chance[in_term], happened[in_term]) == pytest.approx(of_term, abs=0.0006)
    assert brier(chance[in_term], happened[in_term]) < 0.86 * brier(
        float(happened[in_term].mean()), happened[in_term]
    )


def test_chances_of_no_school_mean_what_they_say(shared_data: Path) -> None:
    """Over the six school years days with a chance of p were without school about that often.

    Nothing is told to be free for certain that was a day of school. Measured, said and seen: 0.03 and 0.05 on
    773 days, 0.21 and 0.13 on 361, 0.71 and 0.72 on 118, 0.99 and 1.00 on 315.
    """
    chance, happened = [], []
    for district, state, school_year in DISTRICT_YEARS:
        days, _, off = district_year(shared_data, district, school_year)
        chance.append(typical("US", state, days))
        happened.append(off)
    said, seen = np.concatenate(chance), np.concatenate(happened)
    assert said[~seen].max() < 0.95
    of = np.digitize(said, (0.1, 0.5, 0.9))
    found = [(round(float(said[of == n].mean()), 2), round(float(seen[of == n].mean()), 2)) for n in range(4)]
    assert found == [(0.03, 0.05), (0.21, 0.13), (0.71, 0.72), (0.99, 1.00)]


def test_no_day_of_term_is_certain_where_big_districts_differ() -> None:
    """Spring breaks of 2026 do not meet: New York 2 to 10 April, Chicago and Miami-Dade 23 to 27 March.

    Source: news pages. So no weekday of these weeks may look sure either way.
    """
    march = weekdays(date(2026, 3, 23), date(2026, 3, 27))
    april = weekdays(date(2026, 4, 7), date(2026, 4, 10))
    for state, week in (("NY", april), ("IL", march), ("FL", march)):
        chance = typical("US", state, week)
        assert chance.min() > 0.1
        assert chance.max() < 0.5


ENGLAND = spans(
    "2025-10-27/31 2025-12-22/2026-01-02 2026-02-16/20 2026-03-30/2026-04-10 2026-05-25/29 2026-10-26/30 "
    "2026-12-21/2027-01-01 2027-02-15/19 2027-03-26/2027-04-09 2027-05-31/2027-06-04"
)


def test_a_typical_year_tells_england_and_ireland(shared_data: Path) -> None:
    """Half terms and breaks fall where the pattern puts them; neither source lists summers."""
    schools = weekdays(date(2025, 9, 8), date(2026, 7, 15)) + weekdays(date(2026, 9, 7), date(2027, 7, 15))
    happened = off_on(schools, ENGLAND)
    assert brier(typical("GB", "ENG", schools), happened) < 0.15 * brier(float(happened.mean()), happened)
    irish = [d for d in weekdays(date(2022, 9, 5), date(2026, 4, 30)) if d.month not in (5, 6, 7, 8)]
    happened = off_on(irish, open_data(shared_data, "ie_holidays_holidays.school"))
    assert brier(typical("IE", "", irish), happened) < 0.5 * brier(float(happened.mean()), happened)


def test_three_australian_states_agree_with_their_published_terms() -> None:
    """New South Wales, 2025-26 summer as its education department publishes it: 22 December to 26 January."""
    calendar = built_in_calendar(region_called("AU-NSW"), 2026, 2026)
    assert calendar is not None
    january = weekdays(date(2026, 1, 1), date(2026, 1, 30))
    assert [d for d in january if not out_of_school(calendar, d)] == weekdays(
        date(2026, 1, 27), date(2026, 1, 30)
    )
