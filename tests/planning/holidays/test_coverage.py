"""How far school calendars reach, in words and stretches."""

import itertools
from datetime import date, timedelta

from tests.builders import make_place
from tripplan.documents.calendars.calendars import SchoolCalendar, with_next_year_expected
from tripplan.documents.places.place import Place
from tripplan.planning.holidays.coverage import (
    SchoolState,
    calendar_coverage,
    days_off,
    place_coverage,
    place_stretches,
    stretches,
    typical_year_sentences,
)

FIRST, LAST = date(2026, 11, 25), date(2028, 5, 26)


def district(place: Place, **changes: object) -> SchoolCalendar:
    """A district at a place, known for the school year 2026-27."""
    return SchoolCalendar.model_validate(
        {
            "name": "Alder district",
            "country": "US",
            "subdivision": place.where.subdivision,
            "latitude": place.where.latitude,
            "longitude": place.where.longitude,
            "known": {"first": date(2026, 8, 17), "last": date(2027, 6, 4)},
            "no_school": [{"first": date(2026, 12, 21), "last": date(2027, 1, 1), "name": "winter break"}],
            **changes,
        }
    )


def test_stretches_cover_every_day_once_with_what_is_said_of_it() -> None:
    """Known term, the winter break with its weekends, a guess, and nothing beyond."""
    found = stretches(with_next_year_expected(district(make_place())), FIRST, date(2028, 12, 31))
    assert found[0].first == FIRST
    assert found[-1].last == date(2028, 12, 31)
    for before, after in itertools.pairwise(found):
        assert after.first == before.last + timedelta(days=1)
        assert after.state is not before.state
    winter = next(stretch for stretch in found if stretch.state is SchoolState.OUT)
    assert (winter.first, winter.last) == (date(2026, 12, 21), date(2027, 1, 1))
    assert [stretch.state for stretch in found][-1] is SchoolState.UNKNOWN
    assert SchoolState.LIKELY_OUT in {stretch.state for stretch in found}


def test_a_calendars_reach_is_told_with_its_guess_and_its_end() -> None:
    """What is known, what is guessed and where it ends; an ended calendar says that it says nothing."""
    plain = district(make_place())
    assert calendar_coverage(plain, FIRST, LAST).endswith("then nothing after that.")
    assert "a guess from" in calendar_coverage(with_next_year_expected(plain), FIRST, LAST)
    assert "Nothing is known" in calendar_coverage(plain, date(2028, 1, 1), LAST)


def test_days_off_are_weekdays_and_count_once_for_all_calendars() -> None:
    """Dec 21, 2026 is a Monday: two weeks off are ten days, also where a second calendar has some of them."""
    breaks = ((date(2026, 12, 21), date(2027, 1, 3)), (date(2026, 12, 24), date(2026, 12, 25)))
    both = [district(make_place(), no_school=[{"first": first, "last": last}]) for first, last in breaks]
    assert days_off(both, date(2026, 12, 1), date(2027, 1, 31)) == 10
    assert days_off(both, date(2026, 12, 24), date(2026, 12, 31)) == 6
    assert days_off([], date(2026, 12, 1), date(2027, 1, 31)) == 0


def test_a_place_tells_the_share_that_is_known_and_by_whose_calendars() -> None:
    """Two equal districts, one of which ends in December."""
    place = make_place()
    ended = district(
        place, name="Beech district", known={"first": date(2026, 8, 17), "last": date(2026, 12, 18)}
    )
    cover = place_coverage((district(place), ended), place, FIRST, LAST)
    assert "100% of the students nearby until" in cover.sentence
    assert "until Fri, Dec 18, 2026, then of 50% until" in cover.sentence
    assert [round(share, 2) for _, share in cover.districts] == [0.5, 0.5]


def test_a_place_is_told_by_what_most_pupils_around_it_do() -> None:
    """Of two districts the larger one says; when both have ended, a typical year stands in, as likely."""
    place = make_place()
    small = district(place, name="Beech district", pupils=1000, no_school=())
    found = place_stretches(place_coverage((district(place), small), place, FIRST, LAST).days)
    winter = next(stretch for stretch in found if stretch.state is SchoolState.OUT)
    assert (winter.first, winter.last) == (date(2026, 12, 21), date(2027, 1, 1))
    assert found[0].state is SchoolState.SCHOOL
    after = {stretch.state for stretch in found if stretch.first > date(2027, 6, 4)}
    assert after == {SchoolState.LIKELY_OUT, SchoolState.LIKELY_SCHOOL}
    july = next(stretch for stretch in found if stretch.first <= date(2027, 7, 14) <= stretch.last)
    assert july.state is SchoolState.LIKELY_OUT


def test_a_place_without_calendars_says_that_nothing_is_certain() -> None:
    """The typical year is named with what it rests on."""
    cover = place_coverage((), make_place(), FIRST, LAST)
    assert "None of it is certain" in cover.sentence
    assert "Pew Research Center" in cover.typical_source
    assert cover.districts == ()


def test_what_a_typical_year_rests_on_is_told_once() -> None:
    """Places of one country share the sentence; another country has its own; where all is known is none."""
    here, there = make_place(), make_place(id="other", name="Other")
    abroad = make_place(id="far", name="Far", where={"country": "DE", "latitude": 52.5, "longitude": 13.4})
    (one,) = typical_year_sentences([place_coverage((), place, FIRST, LAST) for place in (here, there)])
    assert one.startswith("Where nothing is known a guess")
    assert "Pew Research Center" in one
    covers = [place_coverage((), place, FIRST, LAST) for place in (here, abroad, there)]
    first, second = typical_year_sentences(covers)
    assert f"for {here.name} and Other," in first
    assert "for Far," in second
    known = district(here, known={"first": date(2026, 1, 1), "last": date(2029, 1, 1)})
    assert typical_year_sentences([place_coverage((known,), here, FIRST, LAST)]) == ()
