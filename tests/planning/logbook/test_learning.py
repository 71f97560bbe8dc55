"""Own figures move from the usual ones with every outing that tells, say so, and can be switched off."""

import math
from datetime import date, timedelta
from decimal import Decimal
from typing import Any

import pytest

from tests.builders import codes, make_household, make_place
from tests.planning.logbook.entries import make_entry
from tests.planning.logbook.test_against_plan import said
from tripplan.documents.logbook.crowd_note import CrowdNote, Fullness
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.settings import Learnable, LogbookSettings
from tripplan.documents.places.own_figures import OwnFigures
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.learning import LEARNED_FROM, LearnedFigure, learned_figures, with_logbook
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts

FAMILY = Family(make_household(), (make_place(),))
SETTINGS = LogbookSettings()
TODAY = date(2026, 11, 25)


def outings(count: int, **changes: Any) -> list[LogbookEntry]:
    """So many outings like each other, a day apart."""
    days = [date(2026, 9, 1) + timedelta(days=n) for n in range(count)]
    return [make_entry(id=f"{day}-trip", day=day, **changes) for day in days]


def figure(entries: list[LogbookEntry], label: str, family: Family = FAMILY) -> LearnedFigure:
    """One figure by its label."""
    return next(one for one in learned_figures(family, entries) if one.label == label)


def planned_with(family: Family) -> Outing:
    """A day at the test museum."""
    facts = place_facts(family, family.places[0], (2026,))
    outing = plan_outing(family, family.party(("Ann", "Cy")), facts, date(2026, 12, 8), today=TODAY)
    assert isinstance(outing, Outing)
    return outing


FUEL = {"km": 100.0, "fuel": {"amount": "11.76", "unit": "L"}}
"""11.76 L on 100 km are 20.0 mpg (235.215 / 11.76, NIST SP 811)."""


def test_consumption_lies_between_the_usual_and_what_was_seen() -> None:
    """24 mpg weigh as three fillings, six at 20 mpg: on the logarithm (3 ln 24 + 6 ln 20) / 9, 21.3 mpg."""
    own = figure(outings(6, **FUEL), "what the car uses")
    assert float(own.own) == pytest.approx(math.exp((3 * math.log(24) + 6 * math.log(20)) / 9), abs=0.06)
    assert (own.usual, own.outings, own.told_by) == (Decimal(24), 6, "from your last 6 outings")
    assert own.likely.low < float(own.own) < own.likely.high


def test_gallons_and_litres_teach_the_same() -> None:
    """3.1067 US gal are 11.76 L."""
    gallons = outings(6, km=100.0, fuel={"amount": "3.1067", "unit": "US gal"})
    assert figure(gallons, "what the car uses").own == figure(outings(6, **FUEL), "what the car uses").own


def test_fuel_of_another_kind_teaches_nothing() -> None:
    """Kilowatt hours say nothing about a car that burns petrol, and no fuel nothing about any."""
    electric = outings(2, km=100.0, fuel={"amount": "20", "unit": "kWh"})
    for entries in (electric, outings(2)):
        assert not [one for one in learned_figures(FAMILY, entries) if one.what is Learnable.FUEL]


def test_food_moves_by_a_factor_for_all() -> None:
    """Ann and Cy eat (Di is too young to pay before 12 months): 14 + 9 = 23; $46 twice is a factor of 2.

    By hand: the usual weighs as two meals, so two of twice as much make exp(2 ln 2 / 4), the root of 2.
    """
    entries = outings(2, food="bought", party=["Ann", "Cy"], naps=[], paid=[{"kind": "food", "amount": "46"}])
    assert figure(entries, "an adult's bought meal").own == Decimal("19.80")  # 14 x 1.41421
    assert figure(entries, "a child's bought meal").own == Decimal("12.73")  # 9 x 1.41421
    for silent in (None, "both"):
        assert not learned_food(outings(2, food=silent))


def learned_food(entries: list[LogbookEntry]) -> list[LearnedFigure]:
    """What is learned about food."""
    return [one for one in learned_figures(FAMILY, entries) if one.what is Learnable.FOOD]


def test_delays_learn_from_the_planned_minute() -> None:
    """Six departures 15 min late: the usual delay is exp((3 ln 10 + 6 ln 20) / 9) - 5 = 11 min, by hand."""
    entries = outings(6)
    entries = [LogbookEntry.model_validate({**dict(e), "as_planned": moved(e.day)}) for e in entries]
    usual = figure(entries, "how late we get off on a usual day")
    assert usual.own == round(math.exp((3 * math.log(10) + 6 * math.log(20)) / 9) - 5)
    late = figure(entries, "how late on one day in ten")
    assert late.own >= usual.own


def moved(day: date) -> object:
    """The plan of `said`, on another day; daylight saving time or not, 9:05 by the clock at home."""
    shift = day - date(2026, 11, 14)
    plan = said()
    return plan.model_copy(
        update={
            name: getattr(plan, name) + shift
            for name in ("leave_home", "wheels_turn", "arrive", "leave_place", "home")
        }
    )


def test_stays_teach_their_place_and_others_of_its_kind() -> None:
    """135 min three times move the museum most, a place of its kind less, another kind not."""
    like = make_place(id="like", name="Like")
    outside = make_place(id="outside", name="Outside", visit={"indoors": "outdoors"})
    family = Family(make_household(), (make_place(), like, outside))
    figures = {one.place: one for one in learned_figures(family, outings(3)) if one.place}
    assert set(figures) == {"test-museum", "like"}
    assert figures["test-museum"].own > figures["like"].own >= 120
    # By hand: prior worth two at the card's 120 min, three stays of 135: 120 x (135/120)^(3/5) = 128.8.
    assert figures["test-museum"].own == 130
    assert figures["test-museum"].told_by == "from your last 3 stays there"
    assert figures["like"].told_by == "from your last 3 stays at places that are both indoors and out"


def test_a_stay_that_the_parent_typed_is_the_usual_one() -> None:
    """What she typed is what the outings move."""
    family = Family(
        make_household(), (make_place(),), own_figures=(OwnFigures(place="test-museum", stay_minutes=60),)
    )
    assert figure(outings(1), "how long we stay at Test museum", family).usual == 60


def test_the_newest_outings_speak() -> None:
    """A car that was replaced long ago says nothing any more."""
    old = [
        make_entry(
            id=f"2020-01-{n + 1:02}-old",
            day=date(2020, 1, n + 1),
            km=100.0,
            fuel={"amount": "40", "unit": "L"},
        )
        for n in range(30)
    ]
    new = outings(LEARNED_FROM, **FUEL)
    assert figure([*old, *new], "what the car uses").own == figure(new, "what the car uses").own


def test_plans_are_made_with_own_figures_and_every_why_says_so() -> None:
    """Consumption, food and stay reach the plan, each with how many outings it is from."""
    entries = outings(6, food="packed", paid=[{"kind": "food", "amount": "12"}], **FUEL)
    outing = planned_with(with_logbook(FAMILY, entries, SETTINGS))
    sources = " ".join(item.source.text for item in outing.cost.items)
    assert "consumption: from your last 6 outings; without them 24 mpg" in sources
    assert "one meal (from your last 6 outings)" in sources
    assert "21.3 mpg" in " ".join(item.label.text for item in outing.cost.items)
    assert "notes-own-stay" in codes(outing.notes)


def test_crowd_notes_reach_planning() -> None:
    """How full a place was is handed on, as long as it may be learned."""
    entries = outings(1)
    note = CrowdNote("test-museum", date(2026, 9, 1), Fullness.SOME_COMPANY)
    assert with_logbook(FAMILY, entries, SETTINGS).crowd_notes == (note,)
    off = LogbookSettings(not_learned=(Learnable.CROWDS,))
    assert with_logbook(FAMILY, entries, off).crowd_notes == ()


@pytest.mark.parametrize("what", [Learnable.FUEL, Learnable.FOOD, Learnable.STAYS, Learnable.DELAYS])
def test_each_group_is_switched_off_alone(what: Learnable) -> None:
    """Off, the usual figure stays; the others are still learned."""
    entries = outings(3, food="packed", paid=[{"kind": "food", "amount": "12"}], **FUEL)
    entries = [LogbookEntry.model_validate({**dict(e), "as_planned": moved(e.day)}) for e in entries]
    on = with_logbook(FAMILY, entries, SETTINGS)
    off = with_logbook(FAMILY, entries, LogbookSettings(not_learned=(what,)))

    def parts(family: Family) -> dict[Learnable, object]:
        household = family.household
        return {
            Learnable.FUEL: household.car,
            Learnable.FOOD: household.food,
            Learnable.STAYS: family.own_figures,
            Learnable.DELAYS: household.habits,
        }

    assert parts(off)[what] == parts(FAMILY)[what] != parts(on)[what]
    assert all(parts(off)[other] == parts(on)[other] for other in parts(on) if other is not what)


def test_without_outings_or_with_all_off_nothing_changes() -> None:
    """The family is the very same."""
    assert with_logbook(FAMILY, [], SETTINGS) is FAMILY
    off = LogbookSettings(not_learned=tuple(Learnable))
    assert with_logbook(FAMILY, outings(3, **FUEL), off) is FAMILY
