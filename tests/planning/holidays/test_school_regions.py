"""The built-in school holidays: what is on record, and what only looks so."""

from datetime import date

import pytest

from tests.builders import out_of_school
from tripplan.documents.where import Point
from tripplan.errors import UnknownName
from tripplan.planning.holidays.public_holidays import public_holidays
from tripplan.planning.holidays.school_region_table import SchoolRegion
from tripplan.planning.holidays.school_regions import (
    built_in_calendar,
    region_called,
    regions_near,
    regions_of,
    school_regions,
    whole_years,
)
from tripplan.planning.holidays.schools import pupil_weights, school_days


@pytest.mark.parametrize("region", school_regions(), ids=lambda region: region.code)
def test_every_region_is_whole_for_this_year_and_the_next(region: SchoolRegion) -> None:
    """No built-in calendar has a year with a summer missing, or one of endless school."""
    calendar = built_in_calendar(region, 2026, 2027)
    assert calendar is not None
    for year in (2026, 2027):
        off = sum(
            (min(span.last, date(year, 12, 31)) - max(span.first, date(year, 1, 1))).days + 1
            for span in (*calendar.no_school, *calendar.expected)
            if span.first.year <= year <= span.last.year
        )
        # From 10 weeks (Germany, Rhineland-Palatinate) to 20, public holidays included; from memory.
        assert 70 <= off <= 140


@pytest.mark.parametrize(
    ("code", "last"),
    [
        ("DE-BY", 2028),
        ("DE-NW", 2028),
        ("NL-ZUID", 2029),
        ("AU-TAS", 2027),
        ("AU-NSW", 2030),
        ("PL-14", 2028),
        ("AT-1", 2040),
    ],
)
def test_a_year_that_a_table_holds_in_part_only_does_not_count(code: str, last: int) -> None:
    """The package has DE 2029 to August, NL 2030 without autumn, PL 2029 without winter; AT goes by rule."""
    assert whole_years(code)[-1] == last


def test_outside_its_years_a_region_is_unknown_and_never_in_school() -> None:
    """Silence of the table makes no calendar."""
    assert built_in_calendar(region_called("AU-ACT"), 2028, 2029) is None
    calendar = built_in_calendar(region_called("AU-ACT"), 2027, 2029)
    assert calendar is not None
    assert out_of_school(calendar, date(2028, 2, 15)) is None


def test_what_a_rule_goes_on_with_is_expected_and_not_known() -> None:
    """French zones are decreed to summer 2027; the package's own rule goes on after that."""
    calendar = built_in_calendar(region_called("FR-A"), 2026, 2028)
    assert calendar is not None
    assert calendar.known.last == date(2027, 8, 31)
    assert calendar.expected_within is not None
    assert calendar.expected_within.first == date(2027, 9, 1)
    assert any(span.first.year == 2028 for span in calendar.expected)


def test_a_part_of_a_country_finds_its_region() -> None:
    """Île-de-France is zone C, Gelderland follows two, Corsica has no zone, Illinois no table."""
    assert [region.code for region in regions_of("FR", "IDF")] == ["FR-C"]
    assert {region.code for region in regions_of("NL", "GE")} == {"NL-MIDDEN", "NL-ZUID"}
    assert regions_of("FR", "COR") == ()
    assert regions_of("US", "IL") == ()


def test_every_part_is_one_that_public_holidays_are_asked_for() -> None:
    """Where the country has regional holidays, a region's code is one of them or the nation's are used."""
    for region in school_regions():
        if region.country in ("DE", "AT", "AU"):
            assert public_holidays(region.country, region.parts[0], [2026])


def test_regions_near_a_place_come_nearest_first() -> None:
    """Around Salzburg: its own state before Bavaria and Upper Austria."""
    near = [region.code for region in regions_near([Point(47.80, 13.04)])]
    assert near[0] == "AT-5"
    assert {"DE-BY", "AT-4"} <= set(near)
    assert "FR-A" not in near
    assert regions_near([]) == ()
    assert regions_near([Point(40.0, -89.0)]) == ()


def test_an_unknown_region_is_an_error() -> None:
    """A typing error must not look like a region without holidays."""
    with pytest.raises(UnknownName):
        region_called("DE-XX")


def test_a_large_region_counts_by_its_towns() -> None:
    """At Passau the pupils of Munich, 150 km away, count, but not as if they were there."""
    bavaria = built_in_calendar(region_called("DE-BY"), 2026, 2027)
    assert bavaria is not None
    at_passau, at_munich = (
        float(pupil_weights([bavaria], point)[0]) for point in (Point(48.57, 13.45), Point(48.14, 11.58))
    )
    assert 0 < at_passau < at_munich < bavaria.pupils


def test_at_a_border_both_sides_count() -> None:
    """In the first week of August 2027 Saxony-Anhalt has school holidays; so do Berlin and Brandenburg."""
    calendars = [built_in_calendar(region_called(code), 2027, 2027) for code in ("DE-BE", "DE-BB", "DE-ST")]
    found = [calendar for calendar in calendars if calendar is not None]
    days = school_days(found, Point(52.4, 13.06), date(2027, 8, 2), date(2027, 8, 6))
    assert days.unknown.max() == 0
    assert days.out.min() > 0.9
