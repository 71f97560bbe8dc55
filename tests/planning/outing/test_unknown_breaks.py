"""A school break that nobody has on record never makes a day cheaper or opens a door."""

from datetime import date, timedelta

import pytest

from tests.builders import codes, make_household, make_place
from tripplan.documents.calendars.calendars import DateSpan, SchoolCalendar
from tripplan.documents.places.place import Place
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.planning.sweep.sweeping import sweep

TODAY = date(2026, 11, 25)
TUESDAY = date(2026, 12, 8)
SETTLES = "one of the schools around Bloomington would settle it"
USUAL = {"name": "Everybody", "price": "20.00"}


def district(*no_school: DateSpan) -> SchoolCalendar:
    """A calendar of the schools around both towns that knows of the whole term."""
    return SchoolCalendar(
        name="district",
        country="US",
        latitude=40.5,
        longitude=-89.2,
        known=DateSpan(first=date(2026, 8, 1), last=date(2027, 6, 1)),
        no_school=no_school,
    )


def planned(place: Place, *calendars: SchoolCalendar) -> Outing | NoOuting:
    """The place on that Tuesday."""
    family = Family(make_household(), (place,), calendars)
    facts = place_facts(family, place, (2026,))
    found = plan_outing(family, family.party(), facts, TUESDAY, today=TODAY)
    span = DateSpan(first=TUESDAY, last=TUESDAY)
    table = sweep(family, family.party(), (place,), span, today=TODAY)
    assert bool(table.can_go[0, 0]) == isinstance(found, Outing)
    if isinstance(found, Outing):
        assert int(table.likely[0, 0]) == found.cost.total.likely.minor
        assert found.plan.spent == found.cost.total.likely
    return found


@pytest.mark.parametrize("valid", ["SH", "Mo-Fr; SH off"])
def test_a_price_that_hangs_on_a_break_nobody_knows_of_is_the_dearer(valid: str) -> None:
    """Four at 20 are 80, and four at 5 are 20, which only a calendar can give: in the break or out of it."""
    place = make_place(offers=[USUAL, {"name": "Cheap", "price": "5.00", "valid": valid}])
    unknown = planned(place)
    assert isinstance(unknown, Outing)
    assert unknown.admission.total.minor == 8000
    assert "notes-dearer-price" in codes(unknown.notes)
    break_ = district(DateSpan(first=TUESDAY, last=TUESDAY + timedelta(days=3)))
    known = [planned(place, district()), planned(place, break_)]
    totals = [outing.admission.total.minor for outing in known if isinstance(outing, Outing)]
    assert totals == ([8000, 2000] if valid == "SH" else [2000, 8000])
    assert not any(
        "notes-dearer-price" in codes(outing.notes) for outing in known if isinstance(outing, Outing)
    )


def test_hours_that_hang_on_a_break_nobody_knows_of_are_those_that_are_sure() -> None:
    """Open from 10 to 17 in term and from 12 to 19 in a break: from 12 to 17 whichever it is."""
    place = make_place(opening={"hours": "Tu-Su 10:00-17:00; SH Mo-Su 12:00-19:00"})
    unknown = planned(place)
    assert isinstance(unknown, Outing)
    (span,) = unknown.hours.spans
    assert (span.opens.hour, span.closes.hour) == (12, 17)
    assert unknown.hours.reason.code == "hours-sure-ones"
    in_term = planned(place, district())
    assert isinstance(in_term, Outing)
    assert [(one.opens.hour, one.closes.hour) for one in in_term.hours.spans] == [(10, 17)]


@pytest.mark.parametrize("hours", ["Tu-Su 10:00-17:00; SH off", "SH Mo-Su 10:00-17:00"])
def test_a_place_that_may_be_closed_for_a_break_nobody_knows_of_is_closed(hours: str) -> None:
    """Open only in term, or only in a break: nobody drives there without a calendar, and it says which."""
    unknown = planned(make_place(opening={"hours": hours}))
    assert isinstance(unknown, NoOuting)
    assert SETTLES in unknown.reasons[0].text
