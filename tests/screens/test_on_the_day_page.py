"""The page for the phone: what is on now by the clock, which outing it is about, and whom to ring."""

from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta
from decimal import Decimal
from pathlib import Path

import pytest
from streamlit.testing.v1 import AppTest

from tests.saying import says
from tests.screens.conftest import APP, services_in
from tripplan.documents.outings.planned import EntryTicks, PlannedOuting, PlanStatus
from tripplan.documents.outings.sheet_entries import Booking, SheetDetails
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.calendar_entry.planned_outing import planned_from
from tripplan.planning.day import DayPlan, Step, StepKind
from tripplan.planning.on_the_day.trouble import Whereabouts
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.services import Services, open_services
from tripplan.values.money import Money

DAY = date(2026, 12, 3)
RIVER_HOUSE = {"place": "tern-landing", "day": DAY.isoformat()}
MINUTE = timedelta(minutes=1)
AtTime = Callable[..., AppTest]


@pytest.fixture
def at_time(data: Path, monkeypatch: pytest.MonkeyPatch) -> AtTime:  # noqa: ARG001 - it is there for the app
    """Opens the page at a moment by the clock at home, with what its address asks for."""

    def opened(moment: datetime, **asked: str) -> AppTest:
        monkeypatch.setenv("TRIPPLAN_TODAY", moment.isoformat())
        app = AppTest.from_file(str(APP), default_timeout=30).run()
        for name, value in asked.items():
            app.query_params[name] = value
        app.switch_page("screens/pages/on_the_day.py").run()
        app.run()  # the keys of the new page are there from the second run on
        assert not app.exception, app.exception
        return app

    return opened


def text_of(app: AppTest) -> str:
    """Everything the page says."""
    elements = (*app.title, *app.header, *app.markdown, *app.caption)
    return "\n".join(element.value for element in elements).replace("\\", "")


def title(app: AppTest) -> str:
    """What stands there in the largest type."""
    return app.title[0].value.replace("\\", "")


def links(app: AppTest) -> list[str]:
    """What the link buttons open."""
    return [button.proto.url for button in app.get("link_button")]


def best_of(services: Services, place_id: str, day: date, without: str = "") -> Outing:
    """The best plan of a day, as it is told on that page."""
    family = services.family()
    assert family is not None
    family = family.with_nothing_planned()
    party = [member.name for member in family.household.members if member.name != without]
    place = next(place for place in family.places if place.id == place_id)
    facts = place_facts(family, place, (day.year,))
    outing = plan_outing(family, family.party(party), facts, day, today=services.today(family))
    assert isinstance(outing, Outing), outing
    return outing


@pytest.fixture
def plan(data: Path) -> DayPlan:
    """The demo family's best plan for the river house that day."""
    services = open_services({"TRIPPLAN_DATA": str(data), "TRIPPLAN_TODAY": "2026-11-25"})
    return best_of(services, "tern-landing", DAY).plan


def step_of(plan: DayPlan, kind: StepKind) -> Step:
    """The first step of a kind."""
    return next(step for step in plan.steps if step.kind is kind)


def plan_it(
    data: Path, place_id: str, day: date, on: str, status: PlanStatus = PlanStatus.CONFIRMED
) -> PlannedOuting:
    """Put the best plan of a day on record as it would have been on an earlier date, without Joel."""
    services = open_services({"TRIPPLAN_DATA": str(data), "TRIPPLAN_TODAY": on})
    outing, family = best_of(services, place_id, day, without="Joel"), services.family()
    assert family is not None
    planned = planned_from(
        outing, family.household, EntryTicks(), status, before=None, ids_taken=(), at=services.clock()
    )
    services.demo.save(planned, services.clock())
    return planned


def test_without_an_outing_the_page_leads_to_the_planning(at_time: AtTime) -> None:
    """Nothing planned and nothing taken: it says so, and no more."""
    assert title(at_time(datetime(2026, 12, 3, 16, tzinfo=UTC))) == say("today-no-outing")


def test_the_largest_words_follow_the_clock(at_time: AtTime, plan: DayPlan) -> None:
    """Before leaving, on the way, there and back home: what is on now, until when, where, with whom."""
    drive, visit = step_of(plan, StepKind.DRIVE), step_of(plan, StepKind.VISIT)
    before = at_time(plan.leave_home - 25 * MINUTE, **RIVER_HOUSE)
    assert title(before) == f"Load up at {wording.clock(plan.leave_home)}"
    assert "in 25 min" in text_of(before)
    driving = at_time(drive.end - 45 * MINUTE, **RIVER_HOUSE)
    assert title(driving) == "Drive there"
    said = text_of(driving)
    assert f"until {wording.clock(drive.end)}" in said
    assert "still 45 min" in said
    assert "to Tern Landing River House" in said
    assert "with Tamsin, Joel, Grandma Wilhelmina, Ivo, Petra, Odile, and Bram" in said
    assert f"Then, at {wording.clock(drive.end)}: Unload" in said
    assert f"**now: Drive there, until {wording.clock(drive.end)}**" in said
    assert title(at_time(visit.start, **RIVER_HOUSE)) == "Visit"
    assert title(at_time(plan.home, **RIVER_HOUSE)) == "Home again"


def test_who_should_be_asleep_is_told(at_time: AtTime, plan: DayPlan) -> None:
    """In the middle of the nap the plan keeps, with where and until when."""
    (nap,) = plan.naps
    place, start, end = next(iter(nap.slept))
    where = "at home" if place == "home" else f"in the {place}"
    app = at_time(start + (end - start) / 2, **RIVER_HOUSE)
    assert f"Bram sleeps {where} until about {wording.clock(end)}" in text_of(app)


def test_days_ahead_it_says_how_long_it_still_is(at_time: AtTime, plan: DayPlan) -> None:
    """Eight days before, and on the eve."""
    said = text_of(at_time(plan.leave_home - timedelta(days=8), **RIVER_HOUSE))
    assert "in 8 days" in said
    assert "on Thu, Dec 3, 2026, for Tern Landing River House" in said
    assert "tomorrow" in text_of(at_time(plan.leave_home - timedelta(days=1), **RIVER_HOUSE))


def test_the_way_and_the_numbers_are_one_tap_away(at_time: AtTime, plan: DayPlan) -> None:
    """The address opens a map by an open kind of address until the party is in; numbers are dialled."""
    app = at_time(plan.leave_home, **RIVER_HOUSE)
    on_the_way = links(app)
    assert "into yours:\n- 18 Ferry Slip Road, Clinton IA, US\n- 41.83720,-90.18610" in text_of(app)
    assert "geo:41.83720,-90.18610?q=41.83720,-90.18610" in on_the_way
    assert "tel:911" in on_the_way
    there = at_time(plan.enter, **RIVER_HOUSE)
    assert not [link for link in links(there) if link.startswith("geo:")]
    assert says(text_of(there), "today-check-numbers")
    assert "parked car" in text_of(there)


def test_the_planned_outing_of_the_day_comes_first_with_its_own_party(at_time: AtTime, data: Path) -> None:
    """A place that must be booked ahead is there on the day; a later and a called-off outing wait below."""
    planned = plan_it(data, "rag-and-reed", date(2026, 12, 9), "2026-11-25")
    plan_it(data, "tern-landing", date(2026, 12, 11), "2026-11-26", PlanStatus.TENTATIVE)
    plan_it(data, "ledgewing", date(2026, 12, 17), "2026-11-26", PlanStatus.CANCELLED)
    plan_it(data, "sheaf-and-stone", date(2026, 12, 9), "2026-11-26", PlanStatus.TENTATIVE)
    app = at_time(planned.leave_home - 30 * MINUTE)
    assert title(app) == f"Load up at {wording.clock(planned.leave_home)}"
    assert "with Tamsin, Grandma Wilhelmina, Ivo, Petra, Odile, and Bram" in text_of(app)
    other = app.selectbox(key="on_the_day_demo")
    assert [option.split(":")[0] for option in other.options] == [
        "Wed, Dec 9, 2026",
        "Wed, Dec 9, 2026",
        "Fri, Dec 11, 2026",
    ]
    assert other.options[0].endswith("(planned)")
    other.select_index(2).run()
    assert not app.exception
    assert "on Fri, Dec 11, 2026, for Tern Landing River House" in text_of(app)


def test_on_the_way_the_first_page_says_when_everybody_is_home(at_time: AtTime, data: Path) -> None:
    """What has begun is not announced as still to come."""
    planned = plan_it(data, "tern-landing", DAY, "2026-11-25")
    app = at_time(planned.leave_home + MINUTE)
    app.switch_page("screens/pages/start.py").run()
    assert not app.exception
    assert title(app) == f"Tern Landing River House: home again at {wording.clock(planned.home)}"


def test_an_evening_out_is_not_over_at_midnight(at_time: AtTime, data: Path) -> None:
    """Half past midnight the outing of the day before is there, booked ahead or not; at five it is not."""
    planned = plan_it(data, "rag-and-reed", date(2026, 12, 9), "2026-11-25")
    late = planned.model_copy(
        update={"home": planned.home.replace(hour=23, minute=30), "sequence": planned.sequence + 1}
    )
    services = open_services({"TRIPPLAN_DATA": str(data), "TRIPPLAN_TODAY": "2026-11-25"})
    services.demo.save(late, services.clock(), expected=1)
    night = datetime(2026, 12, 10, 0, 30, tzinfo=planned.home.tzinfo)
    assert title(at_time(night)) == "Home again"
    assert title(at_time(night.replace(hour=5))) == say("today-no-outing")
    night = datetime(2026, 12, 4, 0, 30, tzinfo=planned.home.tzinfo)
    app = at_time(night, **RIVER_HOUSE)
    assert title(app) == "Home again"
    app.button(key="running_late").click().run()
    assert not app.exception
    app.radio(key="late_where").set_value("at the place").run()
    app.time_input(key="late_now").set_value(night.time()).run()
    assert not app.exception
    assert says(text_of(app), "today-from", at=night)
    assert says("\n".join(ways_out(app)), "recovery-go-home")


def test_running_late_goes_by_the_clock(at_time: AtTime, plan: DayPlan) -> None:
    """On the way it knows how far it still is for who left half an hour late; inside, what time it is."""
    drive = step_of(plan, StepKind.DRIVE)
    now = drive.end - 40 * MINUTE
    driving = at_time(now, **RIVER_HOUSE)
    driving.button(key="running_late").click().run()
    assert driving.radio(key="late_where").value == Whereabouts.ON_THE_WAY.value
    assert driving.number_input(key="late_to_drive_ON_THE_WAY_30").value == 70
    assert says(text_of(driving), "today-from", at=now)
    there = plan.enter + 16 * MINUTE
    app = at_time(there, **RIVER_HOUSE)
    app.button(key="running_late").click().run()
    assert not app.exception
    assert app.radio(key="late_where").value == Whereabouts.THERE.value
    assert app.time_input(key="late_now").value == there.time()
    assert says(text_of(app), "today-from", at=there)
    assert says("\n".join(ways_out(app)), "recovery-go-home")


def ways_out(app: AppTest) -> list[str]:
    """Headings of what can be done."""
    return [heading.value.replace("\\", "") for heading in app.subheader]


def test_whoever_is_still_at_home_is_at_least_as_late_as_the_clock_says(
    at_time: AtTime, plan: DayPlan
) -> None:
    """At home 50 minutes after leaving, half an hour is not believed: nobody can leave in the past."""
    app = at_time(plan.leave_home + 50 * MINUTE, **RIVER_HOUSE)
    app.button(key="running_late").click().run()
    app.radio(key="late_where").set_value("still at home").run()
    assert not app.exception
    assert says(text_of(app), "today-late-already", late=50 * MINUTE)
    assert says(text_of(app), "today-from", at=plan.leave_home + 50 * MINUTE)
    app.button_group(key="late_tapped_HOME").set_value(60).run()
    assert says(text_of(app), "today-from", at=plan.leave_home + 60 * MINUTE)


def test_booked_tickets_are_taken_to_be_paid_for(at_time: AtTime, data: Path, plan: DayPlan) -> None:
    """With a booking number on record staying at home loses the tickets, unless the parent says otherwise."""
    services = open_services({"TRIPPLAN_DATA": str(data), "TRIPPLAN_TODAY": "2026-11-25"})
    booking = Booking(what="Family ticket", number="K7-3312")
    services.demo.save(SheetDetails(place="tern-landing", day=DAY, bookings=(booking,)), services.clock())
    app = at_time(plan.leave_home - 25 * MINUTE, **RIVER_HOUSE)
    app.button(key="running_late").click().run()
    assert app.toggle(key="late_paid_True").value is True
    assert says(text_of(app), "recovery-tickets-lost", lost=Money(Decimal("57.00"), "USD"))
    app.toggle(key="late_paid_True").set_value(False).run()
    assert not says(text_of(app), "recovery-tickets-lost")
    assert not app.exception


def test_on_the_way_home_only_the_drive_is_left(at_time: AtTime, plan: DayPlan) -> None:
    """By the clock in time, at first; half an hour late, home so much later; rain is not asked."""
    drive = [step for step in plan.steps if step.kind is StepKind.DRIVE][-1]
    app = at_time(drive.end - 10 * MINUTE, **RIVER_HOUSE)
    app.button(key="running_late").click().run()
    assert not app.exception
    assert app.radio(key="late_where").value == Whereabouts.GOING_HOME.value
    assert app.number_input(key="late_to_drive_GOING_HOME_0").value == 10
    app.button_group(key="late_tapped_GOING_HOME").set_value(30).run()
    assert app.number_input(key="late_to_drive_GOING_HOME_30").value == 40
    assert ways_out(app) == [say("recovery-drive-home")]
    assert says(text_of(app), "recovery-home-at", at=plan.home + 30 * MINUTE)
    assert "late_rain" not in [toggle.key for toggle in app.toggle]
    app.selectbox(key="late_asleep").set_value("Bram").run()
    assert not app.exception
    assert say("recovery-sleep-on-in-car", name="Bram") in ways_out(app)


def test_another_plan_takes_the_old_ones_place_and_can_be_taken_back(at_time: AtTime, data: Path) -> None:
    """Late, the plan that is used changes page, record and the entry's number; taken back, it is as before.

    The number goes on counting up all the same (RFC 5546, 2.1.5).
    """
    planned = plan_it(data, "tern-landing", DAY, "2026-11-25")
    app = at_time(planned.leave_home - 25 * MINUTE)
    app.button(key="running_late").click().run()
    app.number_input(key="late_minutes_HOME_30").set_value(35).run()
    app.button(key="use_plan_0").click().run()
    assert not app.exception

    def kept() -> PlannedOuting:
        (one,) = services_in(data).demo.all(PlannedOuting).values()
        return one.value

    assert (kept().uid, kept().sequence) == (planned.uid, 1)
    assert kept().leave_home >= planned.leave_home + 35 * MINUTE
    later = wording.clock(kept().leave_home)
    assert title(app) == f"Load up at {later}"
    app.switch_page("screens/pages/day_plan.py").run()
    app.run()
    assert title(app).endswith(f"load up at {later}")
    app.button(key="take_back_used_plan").click().run()
    assert not app.exception
    assert (kept().leave_home, kept().sequence) == (planned.leave_home, 2)
    assert app.selectbox(key="plan_place").value == "tern-landing"
    assert title(app).endswith(f"load up at {wording.clock(planned.leave_home)}")


def test_staying_home_calls_it_off_everywhere(at_time: AtTime, data: Path) -> None:
    """An ill child at home: one press calls the outing off; nothing stands on the page any more but that."""
    planned = plan_it(data, "tern-landing", DAY, "2026-11-25")
    app = at_time(planned.leave_home - 25 * MINUTE)
    app.button(key="running_late").click().run()
    app.selectbox(key="late_ill").set_value("Odile").run()
    (off,) = (button for button in app.button if button.label == say("today-cancel"))
    off.click().run()
    assert not app.exception
    (one,) = services_in(data).demo.all(PlannedOuting).values()
    assert one.value.status is PlanStatus.CANCELLED
    assert title(app) == say("today-no-outing")
    assert says(
        "\n".join(told.value for told in app.success), "today-canceled", place="Tern Landing River House"
    )


def test_taking_back_what_was_not_planned_leaves_fields_and_headline_alike(
    at_time: AtTime, data: Path
) -> None:
    """An outing that was only tried is planned by using a plan; taken back, the page speaks of one place."""
    app = at_time(datetime(2026, 12, 3, 12, tzinfo=UTC))
    app.switch_page("screens/pages/day_plan.py").run()
    app.run()
    app.selectbox(key="plan_place").set_value("tern-landing").run()
    app.date_input(key="plan_day").set_value(date(2026, 12, 9)).run()
    app.button(key="running_late").click().run()
    app.button(key="use_plan_0").click().run()
    assert len(services_in(data).demo.all(PlannedOuting)) == 1
    app.button(key="take_back_used_plan").click().run()
    assert not app.exception
    assert not services_in(data).demo.all(PlannedOuting)
    picked = app.selectbox(key="plan_place")
    family = services_in(data).family()
    assert family is not None
    names = {place.id: place.name for place in family.places}
    assert title(app).startswith(names[str(picked.value)])


def test_one_press_says_what_went_wrong_and_is_answered_at_once(at_time: AtTime, plan: DayPlan) -> None:
    """Late, asleep, ill, rain: each is filled in as pressed, with what can be done and a way to use it."""
    app = at_time(plan.leave_home + 20 * MINUTE, **RIVER_HOUSE)

    def pressed(number: int) -> set[str]:
        app.button(key=f"went_wrong_{number}").click().run()
        assert not app.exception
        return {str(button.key) for button in app.button}

    assert "use_plan_0" in pressed(0)
    assert app.number_input(key="late_minutes_ON_THE_WAY_15today-late-15").value == 15
    assert "use_plan_0" in pressed(2)
    assert app.number_input(key="late_minutes_ON_THE_WAY_45today-late-45").value == 45
    assert "use_plan_0" in pressed(3)
    assert app.selectbox(key="late_asleeptoday-asleep").value == "Bram"
    pressed(4)
    app.selectbox(key="late_illtoday-ill").set_value("Odile").run()
    assert "use_plan_0" in {button.key for button in app.button}
    assert "use_plan_0" in pressed(5)
    assert app.toggle(key="late_raintoday-rain").value
    app.button(key="running_late").click().run()
    assert "use_plan_0" not in {button.key for button in app.button}
