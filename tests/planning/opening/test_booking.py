"""Until when tickets must be booked."""

from datetime import date

from tests.builders import make_place
from tripplan.planning.opening.booking import book_by

DAY = date(2026, 12, 8)
OFFERS = [
    {"name": "Adult", "price": "14.00", "book_days_ahead": 3},
    {"name": "Family", "price": "40.00", "book_days_ahead": 7},
]


def test_the_earliest_last_day_of_what_is_bought_counts() -> None:
    """An offer counts when it, or somebody extra on it, is bought."""
    place = make_place(offers=OFFERS)
    assert book_by(place, DAY, ["Adult"]) == date(2026, 12, 5)
    assert book_by(place, DAY, ["Adult", "Family: extra person"]) == date(2026, 12, 1)


def test_what_is_had_at_the_door_has_no_last_day() -> None:
    """Neither the place nor what is bought asks for booking."""
    assert book_by(make_place(), DAY, ["Adult"]) is None
    assert book_by(make_place(offers=OFFERS), DAY, ["Parking"]) is None


def test_a_place_may_ask_for_booking_itself() -> None:
    """The visit's own number of days counts as well."""
    place = make_place(opening={"hours": "Mo-Su 10:00-17:00", "book_days_ahead": 5})
    assert book_by(place, DAY, ["Adult"]) == date(2026, 12, 3)
