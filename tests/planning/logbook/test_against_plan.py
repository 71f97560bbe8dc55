"""Plan and reality stand side by side; what is unknown on either side is named and never counted."""

from datetime import date, timedelta
from decimal import Decimal
from typing import Any

import pytest

from tests.builders import make_household, make_place
from tests.planning.logbook.entries import make_entry
from tripplan.documents.logbook.as_planned import AsPlanned
from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.planning.family.family import Family
from tripplan.planning.logbook.against_plan import against_plan, year_against_plan
from tripplan.planning.logbook.as_planned import as_planned
from tripplan.planning.logbook.draft import draft, filled_as_planned, waiting
from tripplan.planning.logbook.sentences import against_lines, entry_sentence, year_against_lines
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.values.money import Money

DAY = date(2026, 11, 14)
FAMILY = Family(make_household(), (make_place(),))


def said(**changes: Any) -> AsPlanned:
    """A plan whose drive was to begin at 9:05, by hand."""
    values: dict[str, Any] = {
        "leave_home": "2026-11-14T08:50:00-06:00[America/Chicago]",
        "wheels_turn": "2026-11-14T09:05:00-06:00[America/Chicago]",
        "arrive": "2026-11-14T10:10:00-06:00[America/Chicago]",
        "leave_place": "2026-11-14T12:10:00-06:00[America/Chicago]",
        "home": "2026-11-14T13:15:00-06:00[America/Chicago]",
        "km": 120.0,
        "currency": "USD",
        "likely_amount": "60.00",
        "items": [
            {"kind": "admission", "label": "admission for 3", "amount": "23.00"},
            {"kind": "car", "label": "75 mi", "amount": "12.00"},
            {"kind": "parking", "label": "parking"},
            {"kind": "food", "label": "food for 3", "amount": "20.00"},
            {"kind": "reserve", "label": "reserve", "amount": "5.00"},
        ],
        "naps": [{"member": "Di", "usual_minutes": 100, "kept_minutes": 90}],
        "crowd_chance": 0.3,
        "crowd_word": "well filled",
        **changes,
    }
    return AsPlanned.model_validate(values)


def planned(**changes: Any) -> PlannedOuting:
    """The test museum on that day, as planned nine days before."""
    values: dict[str, Any] = {
        "id": "test-museum-2026-11-14",
        "place": "test-museum",
        "day": DAY,
        "party": ("Ann", "Cy", "Di"),
        "leave_home": "2026-11-14T08:50:00-06:00[America/Chicago]",
        "enter": "2026-11-14T10:10:00-06:00[America/Chicago]",
        "leave_place": "2026-11-14T12:10:00-06:00[America/Chicago]",
        "home": "2026-11-14T13:15:00-06:00[America/Chicago]",
        "uid": "x@example.org",
        "status": "confirmed",
        "changed_at": "2026-11-05T12:00:00Z",
        "likely_amount": "60.00",
        "currency": "USD",
        **changes,
    }
    return PlannedOuting.model_validate(values)


def usd(amount: str) -> Money:
    """Dollars."""
    return Money(Decimal(amount), "USD")


def test_money_is_compared_item_by_item() -> None:
    """By hand: admission as planned, food $1.60 less, the drive 128/120 of $12 = $12.80."""
    against = against_plan(make_entry(as_planned=said()))
    assert against is not None
    lines = {line.what: line for line in against.money}
    assert lines["admission"].more == usd("0.00")
    assert lines["food"].more == usd("-1.60")
    assert (lines["car"].real, lines["car"].worked_out) == (usd("12.80"), True)
    assert (lines["parking"].planned, lines["parking"].real) == (None, None)
    assert lines["in all"].real == usd("54.20")  # 23.00 + 18.40 paid, 12.80 worked out
    assert "Parking: planned not known, was not noted." in list(against_lines(against))


def test_driving_that_was_paid_is_not_worked_out_again() -> None:
    """A receipt for fuel counts as it is; a total without items may hold it already."""
    paid = make_entry(as_planned=said(), paid=[{"kind": "car", "amount": "30.00"}])
    against = against_plan(paid)
    assert against is not None
    assert {line.what: line.real for line in against.money}["car"] == usd("30.00")
    whole = against_plan(make_entry(as_planned=said(), paid=[], receipts_total="70"))
    assert whole is not None
    assert {line.what: line.real for line in whole.money}["in all"] == usd("70")


def test_minutes_naps_and_crowd_are_compared() -> None:
    """15 min late; 65 min there as planned; 135 for 120 min; 70 for 65; 55 of 90 min slept."""
    against = against_plan(make_entry(as_planned=said()))
    assert against is not None
    assert [line.more for line in against.minutes] == [15, 0, 15, 5]
    assert [(line.what, line.more) for line in against.naps] == [("Di's nap", -35)]
    assert against.crowd_planned == 0.3
    assert against.unknown == ("extras",)


def test_what_nobody_noted_is_named() -> None:
    """An entry with nothing but a day names every figure that the plan had."""
    bare = make_entry(
        as_planned=said(),
        paid=[],
        km=None,
        naps=[],
        fullness=None,
        left_home=None,
        arrived=None,
        left_place=None,
        home_again=None,
    )
    against = against_plan(bare)
    assert against is not None
    assert set(against.unknown) == {
        "admission",
        "car",
        "food",
        "extras",
        "in all",
        "leaving home late",
        "the way there",
        "the stay",
        "the way home",
        "Di's nap",
        "how full it was",
    }
    assert "Money not noted" in entry_sentence(bare, "mi")


def test_over_the_year_only_what_both_sides_know_adds_up() -> None:
    """Two outings, one without money: its title is named, and the sums are those of the other."""
    first = make_entry(as_planned=said())
    second = make_entry(id="2026-11-21-mill", day="2026-11-21", title="Mill", as_planned=said(), paid=[])
    never_planned = make_entry(id="2026-11-22-walk", day="2026-11-22")
    year = year_against_plan([first, second, never_planned], "USD")
    assert year.planned_outings == 2
    food = next(line for line in year.money if line.what == "food")
    assert (food.planned, food.real, food.outings) == (usd("20.00"), usd("18.40"), 1)
    assert food.unknown == ("Mill on 2026-11-21",)
    assert year.packed_expected == pytest.approx(0.6)
    told = "\n".join(year_against_lines(year))
    assert "not known for Mill on 2026-11-21" in told
    assert "Parking: not known on both sides for any outing." in told


def test_a_draft_holds_what_is_known_and_no_figure_of_the_day() -> None:
    """Day, place, party and taught children stand in it; money, times and naps are the parent's to write."""
    outing = planned(study_unit="Water")
    entry = draft(FAMILY.household, DAY, place=make_place(), planned=outing, said=as_planned(FAMILY, outing))
    assert (entry.planned, entry.place, entry.party, entry.study_unit) == (
        outing.id,
        "test-museum",
        ("Ann", "Cy", "Di"),
        "Water",
    )
    assert entry.spent is None
    assert entry.moments.left_home is None
    assert [child.member for child in entry.children] == ["Cy"]  # Di is a toddler


def test_a_draft_of_an_outing_whose_party_is_gone_takes_everybody() -> None:
    """People may have been renamed since; who went is then the parent's to say, and nothing breaks."""
    entry = draft(FAMILY.household, DAY, place=make_place(), planned=planned(party=("Zoe",)))
    assert entry.party == tuple(member.name for member in FAMILY.household.members)


def test_what_the_plan_had_said_is_worked_out_again_as_on_the_day_it_was_made() -> None:
    """Total, items and naps are those that planning gave nine days before, although the day is over now."""
    facts = place_facts(FAMILY, FAMILY.places[0], (2026,))
    outing = plan_outing(FAMILY, FAMILY.party(("Ann", "Cy", "Di")), facts, DAY, today=date(2026, 11, 5))
    assert isinstance(outing, Outing)
    plan = outing.plan
    again = as_planned(
        FAMILY,
        planned(leave_home=plan.leave_home, enter=plan.enter, leave_place=plan.leave_place, home=plan.home),
    )
    assert again.likely_total == outing.cost.total.likely
    assert len(again.items) == len(outing.cost.items)
    assert [nap.kept_minutes for nap in again.naps] == [nap.kept_minutes for nap in outing.plan.naps]


def test_without_its_card_the_plan_still_has_times_and_total() -> None:
    """Nothing is invented for a place that is gone."""
    again = as_planned(Family(make_household()), planned())
    assert (again.likely_total, again.items, again.km, again.crowd_chance) == (usd("60.00"), (), None, None)
    against = against_plan(make_entry(as_planned=again))
    assert against is not None
    assert [line.what for line in against.money] == ["in all"]


def test_as_planned_fills_in_only_what_is_empty() -> None:
    """Times, money, distance and nap come from the plan; a receipt that was typed stays."""
    bare = draft(FAMILY.household, DAY, place=make_place(), planned=planned(), said=said())
    full = filled_as_planned(bare)
    assert (full.moments.stay_minutes, full.km, full.naps[0].minutes) == (120, 120.0, 90)
    assert full.spent == usd("55.00")  # 23 + 12 + 20: no reserve, and parking stays unknown
    typed = LogbookEntry.model_validate({**dict(bare), "receipts_total": "9"})
    assert filled_as_planned(typed).spent == usd("9")


def test_outings_wait_from_their_beginning_until_they_are_written() -> None:
    """A planned outing that has begun waits; called off, written down or still to come it does not."""
    outing = planned()
    begun = outing.enter
    assert waiting([outing], [], begun) == (outing,)
    assert waiting([outing], [], outing.leave_home) == ()
    assert waiting([outing], [make_entry(planned=outing.id)], begun) == ()
    assert waiting([planned(status=PlanStatus.CANCELLED)], [], begun) == ()
    before = outing.model_copy(
        update={"id": "before", "enter": begun - timedelta(days=7), "home": outing.home - timedelta(days=7)}
    )
    assert waiting([outing, before], [], begun) == (before, outing), "nobody logs first what is still on"
    assert waiting([outing, before], [], outing.home) == (outing, before)
