"""Days that cannot be done are told together, and a closed season once."""

from dataclasses import replace
from datetime import date, timedelta

from tests.builders import make_place
from tripplan.language.sentences import fact
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import NoOuting, plan_outing
from tripplan.planning.outing.passed_over import days_in_short, passed_over_together
from tripplan.planning.outing.place_facts import place_facts

TODAY = date(2026, 11, 25)
GARDEN = make_place(id="garden", name="Garden", opening={"hours": "Apr-Oct Tu-Su 10:00-17:00"})


def missed(family: Family, first: date, days: int) -> list[NoOuting]:
    """Why the days in a row cannot be done, at every place of the family."""
    found = []
    for n in range(days):
        day = first + timedelta(days=n)
        for place in family.places:
            facts = place_facts(family, place, (day.year,))
            answer = plan_outing(family, family.party(), facts, day, today=TODAY)
            found += [answer] if isinstance(answer, NoOuting) else []
    return found


def test_a_closed_season_is_told_once(family: Family) -> None:
    """All winter one sentence, over New Year and up to the eve of the first open day."""
    garden = replace(family, places=(GARDEN,))
    (told,) = passed_over_together(missed(garden, date(2026, 12, 20), 20))
    assert told.sentence == "closed for the season; opens Thu, Apr 1, 2027 (Dec 20 to Jan 8)"
    (eve, monday) = passed_over_together(missed(garden, date(2027, 3, 28), 9))
    assert eve.sentence == "closed for the season; opens Thu, Apr 1, 2027 (Mar 28 to Mar 31)"
    assert monday.sentence == "closed on Mondays (Apr 5)"


def test_weekly_closing_is_no_season(family: Family) -> None:
    """A museum that is closed on Mondays says so, with its Mondays; two alike stand together."""
    twin = replace(family, places=(*family.places, make_place(id="twin", name="Twin")))
    (told,) = passed_over_together(missed(twin, date(2026, 11, 29), 12))
    assert told.places == ("Test museum", "Twin")
    assert told.sentence == "closed on Mondays (Nov 30, Dec 7)"


def test_a_place_that_never_opens_again_has_no_day_to_name(family: Family) -> None:
    """Nothing is promised where the card names no open day any more."""
    over = make_place(opening={"hours": "2026 Jan-Oct 10:00-17:00"})
    (told,) = passed_over_together(missed(replace(family, places=(over,)), date(2026, 12, 20), 3))
    assert told.reasons == (fact("hours-closed-time-of-year"),)


def test_three_days_in_a_row_are_told_by_their_ends() -> None:
    """Two days by both, three by the first and the last."""
    first = date(2026, 12, 30)
    days = [first + timedelta(days=n) for n in (0, 1, 2, 4, 5, 8)]
    assert days_in_short(days) == "Dec 30 to Jan 1, Jan 3, Jan 4, Jan 7"
