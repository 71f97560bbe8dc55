"""A logbook entry keeps what was noted, never takes unknown for zero, and refuses what cannot be."""

from decimal import Decimal
from typing import Any

import pytest
from pydantic import ValidationError

from tests.planning.logbook.entries import make_entry
from tripplan.documents.logbook.crowd_note import CrowdNote, Fullness
from tripplan.documents.logbook.entry import ChildDay, LogbookEntry, new_entry_id
from tripplan.values.money import Money


def test_an_entry_survives_being_written() -> None:
    """What is read back is equal, money to the cent."""
    entry = make_entry()
    assert LogbookEntry.model_validate_json(entry.model_dump_json()) == entry
    assert entry.spent == Money(Decimal("41.40"), "USD")


def test_a_total_of_the_receipts_is_enough() -> None:
    """With the total alone the outing's money is known, its parts are not, and nothing reads as zero."""
    entry = make_entry(paid=[], receipts_total="61.15")
    assert entry.spent == Money(Decimal("61.15"), "USD")
    assert entry.paid_for("food") is None
    assert entry.not_itemised == Money(Decimal("61.15"), "USD")


def test_nothing_noted_is_unknown_and_nothing_paid_is_zero() -> None:
    """No amount at all is None; a total of 0 says that it was free, in every part."""
    assert make_entry(paid=[]).spent is None
    free = make_entry(paid=[], receipts_total="0")
    assert free.spent == Money.zero("USD")
    assert free.paid_for("parking") == Money.zero("USD")


def test_a_total_that_equals_the_items_leaves_nothing_unknown() -> None:
    """Items that add up to the receipts' total are all there was: no parking was paid."""
    assert make_entry(receipts_total="41.40").paid_for("parking") == Money.zero("USD")
    assert make_entry().paid_for("parking") is None
    assert make_entry(receipts_total="50").paid_for("parking") is None


def test_minutes_pass_by_the_clock_of_the_world() -> None:
    """Across a zone border (Peoria 9:20 CST to Indianapolis 11:25 EST) the way took 65 minutes, by hand."""
    moments = make_entry(
        arrived="11:25", left_place="13:40", place_zone="America/Indiana/Indianapolis"
    ).moments
    assert (moments.way_there_minutes, moments.stay_minutes, moments.way_home_minutes) == (65, 135, 70)


def test_the_night_when_clocks_go_back_is_an_hour_longer() -> None:
    """Left on the evening of October 31, 2026, home at 2:30 CST on November 1: 3 h 30 min later, by hand."""
    entry = make_entry(
        id="2026-10-31-test-museum",
        day="2026-10-31",
        left_home="14:00",
        arrived="15:00",
        left_place="23:59",
        home_again="02:30",
    )
    assert entry.moments.way_home_minutes == 60 + 60 + 91


def test_home_after_midnight_is_the_next_day() -> None:
    """Home again at 0:20 is not before the departure."""
    moments = make_entry(left_place="22:50", home_again="00:20").moments
    assert moments.way_home_minutes == 90


def test_leaving_a_night_under_the_stars_after_midnight_is_the_next_day() -> None:
    """There from 21:40 to 0:30 are 170 minutes, and the way home ends at 1:20."""
    night = {"left_home": "20:50", "arrived": "21:40", "left_place": "00:30", "home_again": "01:20"}
    moments = make_entry(**night).moments
    assert (moments.stay_minutes, moments.way_home_minutes) == (170, 50)


@pytest.mark.parametrize(
    ("changes", "message"),
    [
        ({"arrived": "09:00"}, "'arrived' lies before 'left home'"),
        ({"receipts_total": "41.39"}, "add up to 41.40, more than the receipts' total of 41.39"),
        ({"km": None, "odometer_out_km": 100.0}, "or not at all"),
        ({"odometer_out_km": 1.0, "odometer_home_km": 2.0}, "not both"),
        ({"km": None, "odometer_out_km": 9.0, "odometer_home_km": 2.0}, "says more"),
        ({"naps": [{"member": "Bo", "minutes": 5}]}, "did not go: Bo"),
        ({"children": [{"member": "Cy"}, {"member": "Cy"}]}, "twice: Cy"),
        ({"home_zone": "America/Nowhere"}, "IANA name"),
        ({"id": "test-museum"}, "pattern"),
        ({"paid": [{"kind": "reserve", "amount": "3"}]}, "admission"),
        ({"km": float("nan")}, "finite number"),
    ],
)
def test_what_cannot_be_is_refused(changes: dict[str, Any], message: str) -> None:
    """Times out of order, sums that do not fit and strangers are told in words."""
    with pytest.raises(ValidationError, match=message):
        make_entry(**changes)


def test_hours_of_a_child_fit_their_subjects() -> None:
    """Subjects never have more hours than the day; without a day's figure their sum counts."""
    with pytest.raises(ValidationError, match="3 h together, the day 2 h"):
        ChildDay.model_validate(
            {"member": "Cy", "hours": "2", "subjects": [{"subject": "art", "hours": "3"}]}
        )
    split = ChildDay.model_validate(
        {"member": "Cy", "subjects": [{"subject": "art", "hours": "1.25"}, {"subject": "maths"}]}
    )
    assert split.hours_counted == Decimal("1.25")
    assert ChildDay.model_validate({"member": "Cy", "subjects": [{"subject": "art"}]}).hours_counted is None


def test_driven_distance_is_the_difference_of_the_odometer() -> None:
    """Two readings stand for the distance."""
    assert make_entry(km=None, odometer_out_km=1000.0, odometer_home_km=1128.5).km_driven == 128.5
    assert make_entry(km=None).km_driven is None


def test_a_crowd_note_needs_a_card_and_a_word() -> None:
    """Only an outing to a place with a card, whose fullness was noted, tells planning anything."""
    entry = make_entry()
    assert entry.crowd_note == CrowdNote("test-museum", entry.day, Fullness.SOME_COMPANY)
    assert make_entry(place=None).crowd_note is None
    assert make_entry(fullness=None).crowd_note is None


def test_new_ids_begin_with_the_day_and_are_never_taken_twice() -> None:
    """Any title makes an id; a second outing on the same day gets a number."""
    day = make_entry().day
    assert new_entry_id(day, "Wren's Turn Lock!", set()) == "2026-11-14-wren-s-turn-lock"
    assert new_entry_id(day, "石", {"2026-11-14-outing"}) == "2026-11-14-outing-2"
    assert make_entry(id=new_entry_id(day, "x" * 200, set())).id.startswith("2026-11-14-x")
