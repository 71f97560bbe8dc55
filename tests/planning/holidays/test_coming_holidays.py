"""The public holidays and long weekends of the coming year."""

from datetime import date

from tests.builders import make_household, make_place
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.planning.holidays.coming_holidays import BRIDGE_DAY, coming_holidays

HOME = make_household().home
PLACE = make_place().where


def test_holidays_at_home_and_at_places_are_told_once_each() -> None:
    """Thanksgiving is one at home and in Wisconsin; 12 February, Lincoln's birthday, only in Illinois."""
    elsewhere = PLACE.model_copy(update={"subdivision": "WI"})
    illinois = HOME.model_copy(update={"subdivision": "IL"})
    told = coming_holidays(illinois, (PLACE, elsewhere), date(2026, 11, 25))
    by_day = {one.day: one for one in told}
    assert by_day[date(2026, 11, 26)].where == ("home", "US-WI")
    assert by_day[date(2027, 2, 12)].where == ("home",)
    assert list(by_day) == sorted(by_day)
    assert (told[0].day, told[-1].day) == (date(2026, 11, 26), date(2027, 11, 25))


def test_long_weekends_and_bridge_days_are_told_across_new_year() -> None:
    """31 December 2029 is a Monday alone before New Year's Day, so four days in a row are off."""
    told = {one.day: one for one in coming_holidays(HOME, (), date(2029, 6, 1))}
    assert told[date(2029, 12, 31)].name == BRIDGE_DAY
    assert told[date(2030, 1, 1)].row == DateSpan(first=date(2029, 12, 29), last=date(2030, 1, 1))


def test_a_country_that_is_not_on_record_has_none() -> None:
    """Nothing is made up for it."""
    nowhere = HOME.model_copy(update={"country": "XX", "subdivision": ""})
    assert coming_holidays(nowhere, (), date(2026, 11, 25)) == ()
