"""What the phone says at every minute of a day."""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest

from tests.day_sheets import planned
from tripplan.files.day_sheet.day_stretches import (
    DaySegment,
    map_link,
    sleeps,
    step_words,
    stretches,
    time_left,
)

MINUTE = timedelta(minutes=1)


def test_at_every_minute_just_one_stretch_is_on() -> None:
    """From long before leaving to long after being home; what is over does not come again."""
    outing = planned()
    told = stretches(outing)
    moment, last = outing.plan.leave_home - 60 * MINUTE, outing.plan.home + 60 * MINUTE
    before = 0
    while moment <= last:
        on = [number for number, stretch in enumerate(told) if stretch.is_on(moment.astimezone(UTC))]
        assert len(on) == 1
        assert on[0] >= before
        assert [stretch.is_over(moment) for stretch in told] == [
            number < on[0] for number in range(len(told))
        ]
        before = on[0]
        moment += MINUTE
    assert before == len(told) - 1


def test_each_stretch_announces_the_next() -> None:
    """The steps in order, each with what comes after it and when; home again is the last."""
    outing = planned()
    first, *during, last = stretches(outing)
    assert first.title.startswith("Load up at ")
    assert [stretch.title for stretch in during] == [step_words(step) for step in outing.plan.steps]
    for stretch, after in zip(during, [*during[1:], last], strict=True):
        assert stretch.following.startswith("Then, at ")
        assert stretch.following.endswith(f": {after.title}")
    assert (last.title, last.following) == ("Home again", "")


NIGHT = datetime(2026, 12, 8, 23, 50, tzinfo=ZoneInfo("America/Chicago"))


@pytest.mark.parametrize(
    ("left", "before", "during"),
    [
        (25 * MINUTE, "in 25 min", "still 25 min"),
        (359 * MINUTE, "in 5 h 59 min", "still 5 h 59 min"),
        (6 * 60 * MINUTE, "tomorrow", "still 6 h"),
        (48 * 60 * MINUTE, "in 2 days", "still 48 h"),
    ],
)
def test_how_long_it_still_is_goes_on_past_midnight(left: timedelta, before: str, during: str) -> None:
    """At ten to twelve: an outing is announced by days, but what is on or begins soon by minutes."""
    assert time_left(DaySegment(None, NIGHT + left, "Shoes on"), NIGHT) == before
    assert time_left(DaySegment(NIGHT - MINUTE, NIGHT + left, "Visit"), NIGHT.astimezone(UTC)) == during


def test_sleep_is_told_while_it_lasts() -> None:
    """As long as the plan keeps of the nap, where it happens."""
    outing = planned()
    told = list(sleeps(outing))
    assert told
    minutes = sum((sleep.ends - sleep.begins) / MINUTE for sleep in told if sleep.begins and sleep.ends)
    assert minutes == sum(nap.kept_minutes for nap in outing.plan.naps)
    assert all(" sleeps " in sleep.title for sleep in told)


def test_the_map_is_given_the_point_and_nothing_else() -> None:
    """Whoever has no map that opens can type in the same point, or where a letter would go."""
    place = planned().place
    link = map_link(place)
    letter, spot = link.to_type
    assert letter == "Bloomington IL, US"
    assert link.address == f"geo:{spot}?q={spot}"
