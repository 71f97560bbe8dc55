"""What a family's own notes say of other days at the place."""

from datetime import date, timedelta

import numpy as np
import pytest

from tests.builders import make_household, make_place
from tests.planning.crowds.open_on import risks_on
from tripplan.documents.logbook.crowd_note import CrowdNote, Fullness
from tripplan.language.sentences import fact
from tripplan.planning.crowds.learning import (
    DAYS_OFF_VARY,
    IMPRESSION,
    KINDS_VARY,
    SEASONS_VARY,
    Observation,
    posterior,
)
from tripplan.planning.crowds.levels import TABLES, pooled
from tripplan.planning.crowds.risk import Crowds
from tripplan.planning.family.family import Family
from tripplan.planning.holidays.public_holidays import public_holidays
from tripplan.planning.outing.place_facts import place_facts

YEAR = tuple(date(2026, 1, 1) + timedelta(days=n) for n in range(365))
HOLIDAYS = public_holidays("US", "IL", range(2025, 2028))
SATURDAY, NEXT_SATURDAY, TUESDAY = date(2026, 10, 17), date(2026, 10, 24), date(2026, 10, 20)
PLACE = make_place()


@pytest.fixture
def crowds() -> Crowds:
    """The year without any note."""
    return risks_on(YEAR, PLACE, HOLIDAYS, ())


def note(day: date = SATURDAY, fullness: Fullness = Fullness.PACKED) -> CrowdNote:
    """A note of the place."""
    return CrowdNote(PLACE.id, day, fullness)


def test_packed_saturdays_make_saturdays_fuller_and_others_hardly(crowds: Crowds) -> None:
    """Three notes of packed Saturdays raise the next Saturday, and lower Tuesdays, which share the fifth."""
    weeks = [SATURDAY - timedelta(weeks=n) for n in range(3)]
    after = crowds.learning_from([note(day) for day in weeks])
    assert after.chance_on(NEXT_SATURDAY) > crowds.chance_on(NEXT_SATURDAY) + 0.02
    assert crowds.chance_on(TUESDAY) - 0.03 < after.chance_on(TUESDAY) <= crowds.chance_on(TUESDAY)
    assert np.nansum(after.chance[after.off.years[2026]]) == pytest.approx(73, abs=1e-6)


def test_saturdays_and_sundays_are_learnt_apart(crowds: Crowds) -> None:
    """Notes of packed Saturdays raise Saturdays half as much again as Sundays, or more."""
    after = crowds.learning_from([note(SATURDAY - timedelta(weeks=n)) for n in range(4)])
    sunday = NEXT_SATURDAY + timedelta(days=1)
    learnt = after.level - crowds.level
    saturdays, sundays = (float(learnt[(day - crowds.off.first).days]) for day in (NEXT_SATURDAY, sunday))
    assert saturdays > 1.5 * sundays > 0


def test_empty_saturdays_make_saturdays_emptier(crowds: Crowds) -> None:
    """Notes of plenty of room pull the other way, and the words go in order."""
    found = [
        crowds.learning_from([note(fullness=fullness)]).chance_on(NEXT_SATURDAY) for fullness in Fullness
    ]
    assert found == sorted(found)
    assert found[0] < crowds.chance_on(NEXT_SATURDAY) < found[-1]


def test_one_note_is_gentle(crowds: Crowds) -> None:
    """One note against all expectation moves the chance of the very next Saturday by less than a fifth."""
    after = crowds.learning_from([note(fullness=Fullness.PLENTY_OF_ROOM)])
    assert 0.03 < crowds.chance_on(NEXT_SATURDAY) - after.chance_on(NEXT_SATURDAY) < 0.2


def test_the_reason_says_how_many_notes_and_how_much(crowds: Crowds) -> None:
    """A day like those noted has the notes as a reason with its size, and the source says how they count."""
    empty = [note(SATURDAY - timedelta(weeks=n), Fullness.PLENTY_OF_ROOM) for n in range(3)]
    risk = crowds.learning_from(empty)[NEXT_SATURDAY]
    (reason,) = [reason for reason in risk.reasons if reason.cause.code == "crowds-your-notes"]
    assert reason.text == f"from your 3 notes here: {reason.factor:.1f} times as busy as counted elsewhere"
    assert 0.3 < reason.factor < 0.8
    assert risk.with_notes
    assert "crowds-your-notes" not in {reason.cause.code for reason in crowds[NEXT_SATURDAY].reasons}
    after_one = crowds.learning_from(empty[:1])[NEXT_SATURDAY]
    assert fact("crowds-your-notes", notes=1) in [reason.cause for reason in after_one.reasons]


def test_about_four_notes_of_a_day_off_weigh_as_much_as_the_tables(crowds: Crowds) -> None:
    """The stated prior: with so many equal notes a Saturday moves half of the way to what they say.

    Second, independent computation: the gain of n equal looks in closed form, n v / (n v + s).
    """
    sight = crowds.sight(note())
    assert sight is not None
    varies = float(sight.ways**2 @ np.array([DAYS_OFF_VARY, SEASONS_VARY, *[KINDS_VARY] * 5]) ** 2)
    blur = sight.noise**2 + IMPRESSION**2
    for count in (1, 4, 20):
        moved = float(sight.ways @ posterior([sight] * count)[0]) / sight.residual
        assert moved == pytest.approx(count * varies / (count * varies + blur))
    three, four = (float(sight.ways @ posterior([sight] * count)[0]) / sight.residual for count in (3, 4))
    assert three < four == pytest.approx(0.5, abs=0.03)


def test_no_note_changes_nothing(crowds: Crowds) -> None:
    """Without notes the same object comes back, and nothing is learnt."""
    assert crowds.learning_from([]) is crowds
    assert not posterior([])[0].any()


def test_notes_that_say_what_was_expected_change_nothing() -> None:
    """Without a surprise nothing is learnt, however many notes there are."""
    assert not posterior([Observation(np.ones(7), 0.0, 0.5)] * 9)[0].any()


def test_the_prior_is_how_much_the_tables_differ() -> None:
    """The stated spreads are those of the tables."""
    weekends = np.array([table.weekend for table in TABLES])
    seasons = np.array([table.effects["season"] for table in TABLES if "season" in table.effects])
    holidays = np.array([table.effects["public_holiday"] / table.weekend for table in TABLES])
    assert weekends.std(ddof=1) / weekends.mean() == pytest.approx(DAYS_OFF_VARY, abs=0.01)
    assert seasons.std(ddof=1) / seasons.mean() == pytest.approx(SEASONS_VARY, abs=0.01)
    assert holidays.std(ddof=1) * pooled(TABLES, None, "families").weekend == pytest.approx(
        KINDS_VARY, abs=0.05
    )


def test_a_familys_notes_of_past_years_and_of_this_place_count() -> None:
    """`place_facts` learns from notes of any year, and only from those of the place."""
    last_year = date(2025, 10, 18)

    def chance(*notes: CrowdNote) -> float:
        family = Family(household=make_household(), places=(PLACE,), crowd_notes=notes)
        return place_facts(family, PLACE, (2026,)).crowds.chance_on(NEXT_SATURDAY)

    assert chance(note(last_year, Fullness.PLENTY_OF_ROOM)) < chance()
    assert chance(CrowdNote("elsewhere", last_year, Fullness.PLENTY_OF_ROOM)) == chance()


def test_a_note_of_a_year_without_open_days_is_left_out(crowds: Crowds) -> None:
    """It cannot be compared with the days around it, and is not counted among the notes."""
    unknown = note(date(2024, 5, 4))
    assert crowds.learning_from([unknown]) is crowds
    assert crowds.learning_from([unknown, note()])[SATURDAY] == crowds.learning_from([note()])[SATURDAY]
    family = Family(household=make_household(), places=(PLACE,), crowd_notes=(note(date(2024, 5, 4)),))
    only_later = make_place(opening={"hours": "2026 Tu-Su 10:00-17:00"})
    assert place_facts(family, only_later, (2026,)).crowds.chance_on(SATURDAY) > 0
