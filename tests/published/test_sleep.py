"""Sleep by age against published recommendations and nap statistics."""

from datetime import date

import pytest

from tripplan.documents.family.member import Member
from tripplan.planning.family.sleep import SleepHours, recommended_sleep, sleep_sentence, usual_naps


@pytest.mark.parametrize(
    ("months", "expected"),
    [
        (3, None),
        (4, SleepHours(12, 16)),
        (12, SleepHours(11, 14)),
        (35, SleepHours(11, 14)),
        (36, SleepHours(10, 13)),
        (72, SleepHours(9, 12)),
        (13 * 12, SleepHours(8, 10)),
        (19 * 12, None),
    ],
)
def test_recommended_hours_are_the_published_ones(months: int, expected: SleepHours | None) -> None:
    """Paruthi et al., J Clin Sleep Med 12(6):785-786, 2016: 12-16, 11-14, 10-13, 9-12 and 8-10 hours."""
    assert recommended_sleep(months) == expected


@pytest.mark.parametrize(("months", "naps"), [(3, 0), (6, 3), (9, 2), (12, 2), (24, 1), (36, 1), (60, 0)])
def test_the_number_of_naps_follows_the_published_pattern(months: int, naps: int) -> None:
    """Weissbluth, Sleep 18:82-87, 1995: two naps by 9-12 months, one by 15-24 months, gone for most by 5."""
    assert len(usual_naps(months)) == naps


def test_nap_lengths_follow_the_published_totals() -> None:
    """Weissbluth 1995: 3.5 hours in all at six months, two hours as the usual single nap from two years."""
    assert sum(nap.minutes for nap in usual_naps(6)) == 210
    assert [nap.minutes for nap in usual_naps(30)] == [120]


@pytest.mark.parametrize("months", range(48))
def test_usual_naps_leave_room_for_each_other(months: int) -> None:
    """Naps come in order, each over before the next begins."""
    ends = 0
    for nap in usual_naps(months):
        start = nap.start.hour * 60 + nap.start.minute
        assert start >= ends
        ends = start + nap.minutes


def test_own_sleep_stands_beside_the_recommendation() -> None:
    """By hand: from 19:00 to 6:30 are 11 h 30 min, and a nap of 100 minutes makes it 13 h 10 min."""
    born = {"year": 2025, "month": 7, "day": 14}
    bram = Member.model_validate(
        {"name": "Bram", "born": born, "bed": "19:00", "naps": [{"start": "12:30", "minutes": 100}]}
    )
    said = sleep_sentence(bram, date(2026, 11, 25))
    assert "11 to 14 hours of sleep in 24" in said
    assert "13 h 10 min at most" in said
    assert sleep_sentence(bram, date(2050, 1, 1)) == ""
