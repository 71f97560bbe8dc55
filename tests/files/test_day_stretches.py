"""What the phone says at every minute of a day."""

from datetime import UTC, timedelta

from tests.day_sheets import planned
from tripplan.files.day_stretches import map_link, sleeps, step_words, stretches

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
    assert first.title.startswith("Shoes on at ")
    assert [stretch.title for stretch in during] == [step_words(step) for step in outing.plan.steps]
    for stretch, after in zip(during, [*during[1:], last], strict=True):
        assert stretch.following.startswith("Then, at ")
        assert stretch.following.endswith(f": {after.title}")
    assert (last.title, last.following) == ("Home again", "")


def test_sleep_is_told_while_it_lasts() -> None:
    """As long as the plan keeps of the nap, where it happens."""
    outing = planned()
    told = list(sleeps(outing))
    assert told
    minutes = sum((sleep.ends - sleep.begins) / MINUTE for sleep in told if sleep.begins and sleep.ends)
    assert minutes == sum(nap.kept_minutes for nap in outing.plan.naps)
    assert all(" sleeps " in sleep.title for sleep in told)


def test_the_map_is_given_the_point_and_nothing_else() -> None:
    """An address of the scheme geo with latitude first (RFC 5870, 3.3), the same that can be typed in."""
    place = planned().place
    link = map_link(place)
    latitude, longitude = (float(part) for part in link.spot.split(","))
    assert (latitude, longitude) == (place.where.point.latitude, place.where.point.longitude)
    assert link.address == f"geo:{link.spot}?q={link.spot}"
