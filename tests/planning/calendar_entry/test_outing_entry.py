"""The calendar entry of a planned outing."""

from dataclasses import replace
from datetime import date, datetime, timedelta
from decimal import Decimal
from typing import Any
from zoneinfo import ZoneInfo

import pytest

from tests.builders import make_household, make_place
from tests.planning.day.day_questions import make_question
from tripplan.documents.family.member import SleepsIn
from tripplan.documents.logbook.crowd_note import Fullness
from tripplan.documents.outings.planned import EntryTicks, PlanStatus
from tripplan.language.sentences import fact
from tripplan.planning.admission.result import Admission, Purchase
from tripplan.planning.calendar_entry.entry import OutingEntry, outing_uid
from tripplan.planning.calendar_entry.outing_entry import entry_for_outing
from tripplan.planning.cost import CostItem, OutingCost, Swing
from tripplan.planning.crowds.risk import CrowdRisk
from tripplan.planning.day import DayPlan, DaySearch, LeaveWindow, NapOutcome, Step, StepKind
from tripplan.planning.day.times.hourly_money import PriceHours
from tripplan.planning.holidays.schools import SchoolShares
from tripplan.planning.opening.hours import DayHours, Openness
from tripplan.planning.outing.hourly_costs import HourlyCosts
from tripplan.planning.outing.outing import Outing
from tripplan.planning.travel.drive import Drive, KnownBy, Leg, Rest
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money, MoneyRange
from tripplan.values.ranges import Origin, Range, Source

CHICAGO = ZoneInfo("America/Chicago")
LEAVE = datetime(2026, 12, 8, 8, 40, tzinfo=CHICAGO)
SOURCE = Source(Origin.ESTIMATE, "written for tests")
HOUSEHOLD = make_household()


def dollars(text: str) -> Money:
    """An amount in US dollars."""
    return Money(Decimal(text), "USD")


def outing(**changes: Any) -> Outing:
    """A museum visit of the test household, with every answer filled in by hand."""
    drive = Drive(Range(58, 62, 66), Range(48, 52, 60), KnownBy.ESTIMATE, SOURCE)
    leg = Leg(drive, 10, 52, (Rest(30, 15),), 5)
    nap = NapOutcome(
        "Di", LEAVE.replace(hour=12, minute=30), 100, ((SleepsIn.CAR, 40), (SleepsIn.HOME, 20)), None
    )
    plan = DayPlan(
        leave_home=LEAVE,
        enter=LEAVE + timedelta(minutes=82),
        leave_place=LEAVE + timedelta(hours=4),
        home=LEAVE + timedelta(hours=5, minutes=25),
        steps=(
            Step(
                StepKind.LOAD_UP, LEAVE, LEAVE + timedelta(minutes=10), fact("plan-step-load-up", there=True)
            ),
            Step(
                StepKind.DRIVE,
                LEAVE + timedelta(minutes=10),
                LEAVE + timedelta(minutes=77),
                fact("plan-step-drive", there=True),
            ),
        ),
        naps=(nap,),
        visit_minutes=158,
        awake_minutes=158,
        car_minutes=104,
        felt=dollars("4.00"),
    )
    ticket = Purchase("Adult", 2, dollars("14.00"), dollars("28.00"), ("Ann", "Bo"), "14.00 each")
    range_ = MoneyRange(dollars("55"), dollars("61"), dollars("70"))
    fuel = Swing("fuel price", below=dollars("6"), above=dollars("9"))
    driving = CostItem(CostKind.CAR, fact("costs-extra", name="124 km"), dollars("61"), SOURCE, (fuel,))
    values: dict[str, Any] = {
        "place": make_place(web="https://example.org/museum", visit={"topics": ["water power", "grain"]}),
        "day": date(2026, 12, 8),
        "party": HOUSEHOLD.members,
        "way_there": leg,
        "way_home": leg,
        "hours": DayHours(Openness.OPEN, (), (), (), fact("hours-open")),
        "question": make_question(),
        "search": DaySearch(plan, (LeaveWindow(LEAVE, LEAVE + timedelta(minutes=20), plan),), ()),
        "plan": plan,
        "admission": Admission((ticket,), dollars("28.00"), {}, (), ("Bring the card of Bo.",)),
        "crowd": CrowdRisk(0.14, Fullness.SOME_COMPANY, (), SchoolShares(0, 1, 0), with_notes=False),
        "weather": None,
        "cost": OutingCost((driving,), range_, (fact("costs-parking", cars=1),)),
        "hourly_costs": HourlyCosts(PriceHours(), (None,)),
        "cheaper_hour": None,
        "generalized_cost": dollars("65.00"),
        "notes": (fact("notes-tickets", text="Di and Cy were here last year."),),
        "cautions": (fact("cautions-of-place", text="Check the child seat of Di; follow local law."),),
        **changes,
    }
    return Outing(**values)


def entry(**options: Any) -> OutingEntry:
    """The entry of that outing; options that are ticks go onto the list of ticks."""
    told = {name: options.pop(name) for name in tuple(options) if name in EntryTicks.model_fields}
    ticked = EntryTicks.model_validate(told)
    return entry_for_outing(outing(), HOUSEHOLD, uid=outing_uid("x"), ticked=ticked, **options)


def test_the_title_says_when_to_leave_home() -> None:
    """One entry for the whole day names the departure; an entry per part has one of its own for it."""
    assert entry().summary == "Test museum (load up 8:40 AM)"
    assert entry(in_parts=True).summary == "Test museum"


def test_the_entry_runs_from_leaving_home_to_being_home_again() -> None:
    """The four times of the plan are the times of the entry, and place and topics come from the card."""
    made = entry(status=PlanStatus.TENTATIVE, sequence=2)
    plan = outing().plan
    assert (made.start, made.arrive, made.leave_place, made.end) == (
        plan.leave_home,
        plan.enter,
        plan.leave_place,
        plan.home,
    )
    assert made.location == "Test museum, Bloomington"
    assert made.url == "https://example.org/museum"
    assert made.categories == ("water power", "grain")
    assert (made.status, made.sequence) == (PlanStatus.TENTATIVE, 2)


def test_the_description_says_times_tickets_costs_nap_and_cautions() -> None:
    """What the other adult needs to know stands in the entry, in the household's units and money."""
    said = entry().description.split("\n")
    assert "Going: 2 adults and 2 children." in said
    assert "Load up at 8:40 AM, drive off at 8:50 AM." in said
    assert "Any time from 8:40 AM to 9:00 AM is about as good." in said
    assert "Go in about 10:02 AM, set out for home about 12:40 PM." in said
    assert "Home again about 2:05 PM." in said
    # 62 km are 38.5 miles, 58 and 66 km are 36.0 and 41.0 (1 mile = 1.609344 km).
    assert "Drive, one way: 39 mi (36 mi to 41 mi), 52 min (48 min to 1 h) (estimate)." in said
    assert "Planned on the way: one rest, 15 min." in said
    assert "Nap: 1 h of 1 h 40 min kept (40 min in the car and 20 min at home)." in said
    assert "To buy, $28.00 in all:" in said
    assert "- 2 x Adult, $28.00" in said
    assert "Cost in all: at least $61 ($55 to $70)." in said
    assert "- Car, 124 km: $61 ($55 to $70)" in said
    assert "Not known and not counted: parking." in said
    assert "Crowds: some company; chance of a packed day: about 1 in 7." in said
    assert "- Check the child seat of a child; follow local law." in said


def test_nothing_private_gets_in_unless_ticked() -> None:
    """No name, birth date or home stands in the entry by default, wherever it would come from."""
    made = entry()
    everything = " ".join((made.summary, made.location, made.description))
    for member in HOUSEHOLD.members:
        assert member.name not in everything.replace(".", " ").replace(",", " ").split()
        assert str(member.born) not in everything
    assert "Peoria" not in everything
    assert "- 2 children were here last year." in made.description
    assert "Bring the card of an adult." in made.description


def test_names_and_home_come_in_when_ticked() -> None:
    """What the parent ticks is written out, and still no birth date."""
    made = entry(names=True, home_address=True)
    assert "Di's nap: 1 h of 1 h 40 min kept (40 min in the car and 20 min at home)." in made.description
    assert "Going: Ann, Bo, Cy, and Di." in made.description
    assert "- Di and Cy were here last year." in made.description
    assert "Load up at 8:40 AM, drive off at 8:50 AM from Peoria." in made.description
    assert "2025-07-15" not in made.description


def test_sentences_that_begin_with_somebody_left_unnamed_begin_with_a_capital() -> None:
    """At the beginning of a line and after a full stop; within a sentence it stays small."""
    notes = (fact("notes-tickets", text="Di tires first. Ann waits with Di."),)
    made = entry_for_outing(outing(notes=notes), HOUSEHOLD, uid="x")
    assert "- A child tires first. An adult waits with a child." in made.description


def test_names_inside_other_words_stay() -> None:
    """Leaving out 'Bo' does not spoil the word 'Boots', nor 'Di' the word 'Dinner'."""
    made = entry_for_outing(
        outing(notes=(fact("notes-tickets", text="Boots and Dinner for Bo."),)), HOUSEHOLD, uid="x"
    )
    assert "- Boots and Dinner for an adult." in made.description


def test_reminders_and_tasks_come_as_ticked() -> None:
    """By default packing, an hour ahead and leaving; tasks take over the packing."""
    assert [reminder.minutes_before for reminder in entry().reminders] == [820, 60, 0]
    made = entry(things_to_do="tasks")
    assert [reminder.minutes_before for reminder in made.reminders] == [60, 0]
    assert [to_do.text for to_do in made.to_dos] == ["Pack for tomorrow's outing: Test museum"]


def test_prices_stay_out_unless_ticked() -> None:
    """Without the tick no amount of money is told, and what to buy still is."""
    told = entry(costs=False).description
    assert "$" not in told
    assert "- 2 x Adult" in told
    assert "$28.00" in entry().description


def test_a_moved_outing_says_from_when() -> None:
    """The description begins with the day and hour that no longer hold."""
    made = entry(moved_from=LEAVE - timedelta(days=1))
    assert made.description.startswith("Moved: it was planned for Mon, Dec 7, 2026, loading up at 8:40 AM.")


def test_clocks_that_differ_are_named() -> None:
    """Where home and place keep different time, every time says which clock it is by."""
    plan = outing().plan
    detroit = ZoneInfo("America/Detroit")
    there = replace(
        plan, enter=plan.enter.astimezone(detroit), leave_place=plan.leave_place.astimezone(detroit)
    )
    made = entry_for_outing(outing(plan=there), HOUSEHOLD, uid="x")
    assert "Go in about 11:02 AM EST, set out for home about 1:40 PM EST." in made.description
    assert "Home again about 2:05 PM CST." in made.description


@pytest.mark.parametrize("units", ["mi", "km"])
def test_distances_follow_the_household(units: str) -> None:
    """The household's unit is used in the text."""
    made = entry_for_outing(outing(), make_household(units=units), uid="x")
    assert f" {units} " in made.description
