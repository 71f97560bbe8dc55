"""Birth dates and ages as people type them, by the household's country."""

from datetime import date

import pytest

from tests.builders import make_member
from tripplan.reading.typed.dates import birth_as_typed, birth_in

TODAY = date(2026, 11, 25)


@pytest.mark.parametrize(
    ("text", "country", "expected"),
    [
        ("5/14/1988", "US", "1988-05-14"), ("14/5/1988", "GB", "1988-05-14"), ("14/5/1988", "US", "1988-05-14"),
        ("5/4/1988", "US", "1988-05-04"), ("5/4/1988", "GB", "1988-04-05"), ("14.5.1988", "DE", "1988-05-14"),
        ("14.5.1988", "US", "1988-05-14"), ("May 14 1988", "US", "1988-05-14"), ("May 14, 1988", "US", "1988-05-14"),
        ("14 May 1988", "US", "1988-05-14"), ("14. Mai 1988", "DE", "1988-05-14"), ("März 1986", "DE", "1986-03"),
        ("March 1986", "US", "1986-03"), ("3/1986", "US", "1986-03"), ("Jul 9 2020", "US", "2020-07-09"),
        ("9-14-2023", "US", "2023-09-14"), ("Jan 25, 2025", "US", "2025-01-25"), ("1988-05-14", "US", "1988-05-14"),
        ("2019-03", "US", "2019-03"), ("5/14/88", "US", "1988-05-14"), ("5/14/20", "US", "2020-05-14"),
        ("5/14/27", "US", "1927-05-14"), ("8", "US", "8 years on 2026-11-25"), ("22 months", "US", "22 months on 2026-11-25"),
        ("22 mo", "US", "22 months on 2026-11-25"), ("8 years old", "US", "8 years on 2026-11-25"),
        ("age 8", "US", "8 years on 2026-11-25"), ("3 Jahre", "DE", "3 years on 2026-11-25"), ("2/30/2020", "US", None),
        ("soon", "US", None), ("", "US", None), ("2020-13", "US", None), ("1850", "US", None), ("Smarch 5 2020", "US", None),
        ("5/14/198", "US", None),
    ],
)  # fmt: skip
def test_birth_dates(text: str, country: str, expected: str | None) -> None:
    """Every usual way; a day that no month has and words that are no date are left alone."""
    assert birth_in(text, country, TODAY) == expected


def test_an_age_is_kept_as_an_age_on_its_day() -> None:
    """Eight on a day: born in the year that ends eight years before it, and never younger than eight then."""
    member = make_member(born="8 years on 2026-11-25")
    assert (member.born.earliest, member.born.latest) == (date(2017, 11, 26), date(2018, 11, 25))
    assert member.months_on(TODAY) // 12 == 8
    assert not member.age_in_doubt_on(TODAY)
    assert member.age_in_doubt_on(date(2027, 3, 1))
    assert str(member.born) == "8 years on 2026-11-25"
    assert make_member(born=member.model_dump(mode="json")["born"]).born == member.born


def test_an_age_in_months_is_known_to_the_month() -> None:
    """Twenty-two months on a day: born within one month."""
    born = make_member(born="22 months on 2026-11-25").born
    assert (born.earliest, born.latest) == (date(2024, 12, 26), date(2025, 1, 25))


@pytest.mark.parametrize(
    ("country", "written", "typed"),
    [
        ("US", "2025-07-14", "7/14/2025"),
        ("US", "2025-07", "7/2025"),
        ("GB", "2025-07-14", "14/7/2025"),
        ("DE", "2025-07-14", "14.7.2025"),
        ("DE", "2025-07", "7.2025"),
        ("US", "8 years on 2026-11-25", "8 years on 2026-11-25"),
    ],
)
def test_a_birth_date_is_shown_as_its_country_types_it_and_read_back(
    country: str, written: str, typed: str
) -> None:
    """The order and marks of CLDR's short dates, from memory."""
    assert birth_as_typed(written, country) == typed
    assert birth_in(typed, country, date(2026, 11, 29)) in (written, None if "years" in typed else written)
