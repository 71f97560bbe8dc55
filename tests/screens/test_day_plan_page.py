import re
from collections.abc import Callable
from datetime import date, datetime, time, timedelta
from pathlib import Path

from streamlit.testing.v1 import AppTest
from streamlit.testing.v1.element_tree import Radio

from tests.saying import says
from tests.screens.conftest import APP, services_in
from tripplan.documents.family.household import Household
from tripplan.documents.outings.planned import EntryTicks, PlannedOuting, PlanStatus
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.calendar_entry.planned_outing import planned_from
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts

OpenApp = Callable[..., AppTest]


def text_of(app: AppTest) -> str:
    """Everything the page says, entries of lists each on a line."""
    elements = (*app.markdown, *app.header, *app.caption)
    drawn = "\n".join(
        element.proto.body for element in app.get("html") if "<style>:root" not in element.proto.body
    )
    listed = re.sub(r"<[^>]+>", "", re.sub(r"<style>.*?</style>|<li[^>]*>", "\n- ", drawn, flags=re.DOTALL))
    return "\n".join((listed, *(element.value for element in elements))).replace("\\", "")


def leave_windows(app: AppTest) -> Radio[int]:
    """The good times to leave, to pick from."""
    return next(radio for radio in app.radio if radio.label == "Good times to leave")


def test_a_first_visitor_sees_when_to_leave(open_app: OpenApp) -> None:
    """Without a choice the cheapest compared place is planned: departure, return, tickets, cautions."""
    text = text_of(open_app("day_plan"))
    assert re.fullmatch(r"[\w ]+: load up at \d+:\d\d [AP]M", headline(open_app("day_plan")))
    assert re.search(r": drive off at \d+:\d\d [AP]M, home again at \d+:\d\d [AP]M", text)
    folds = [expander.label.replace("\\", "") for expander in open_app("day_plan").expander]
    assert any(label.startswith("Tickets and cost: ") for label in folds)
    assert "parked car" in text
    assert "Bram, usually 12:30 PM for 1 h 40 min: asleep about " in text


def test_the_chance_of_a_full_house_can_be_asked_why(open_app: OpenApp) -> None:
    """Every reason is told with its size, and where the figures come from."""
    app = open_app("day_plan")
    (why,) = (expander for expander in app.expander if expander.label == "Why this plan")
    text = "\n".join(element.value for element in why.markdown).replace("\\", "")
    assert " times " in text
    assert "estimate: counted elsewhere, not at this place" in text


def test_an_impossible_day_says_what_stands_in_the_way(open_app: OpenApp) -> None:
    """Christmas at a closed place gives a warning and a reason instead of a plan."""
    app = open_app("day_plan")
    app.date_input(key="plan_day").set_value(date(2026, 12, 25)).run()
    assert not app.exception
    assert any("cannot be done" in warning.value for warning in app.warning)
    assert "closed" in text_of(app)


def with_habits(data: Path, **changes: time) -> None:
    """Let the demo family travel in another way."""
    services = services_in(data)
    kept = services.demo.get(Household)
    assert kept is not None
    habits = kept.value.habits.model_copy(update=changes)
    household = kept.value.model_copy(update={"habits": habits})
    services.demo.save(household, services.clock(), expected=kept.revision)


def test_an_impossible_day_says_which_limit_would_make_it_possible(open_app: OpenApp, data: Path) -> None:
    """Drive, doors and the shortest stay end at 12:24 PM; a quarter of an hour after 12:10 will do."""
    with_habits(data, home_by=time(12, 10))
    app = open_app("day_plan")
    app.selectbox(key="plan_place").set_value("tern-landing").run()
    app.date_input(key="plan_day").set_value(date(2026, 12, 9)).run()
    assert "Being home by 12:25 PM instead of 12:10 PM would make the day possible." in text_of(app)


def test_on_an_impossible_day_own_times_say_by_which_limits_they_fail(open_app: OpenApp, data: Path) -> None:
    """Home by ten nothing can be done; the sliders are there, and tell how far off each idea is."""
    with_habits(data, home_by=time(10))
    app = open_app("day_plan")
    app.selectbox(key="plan_place").set_value("tern-landing").run()
    app.date_input(key="plan_day").set_value(date(2026, 12, 9)).run()
    assert any("cannot be done" in warning.value for warning in app.warning)

    def by_when() -> str:
        (said,) = re.findall(r"You would be home at (\S+ [AP]M), .* after 10:00 AM", text_of(app))
        return str(said)

    first = by_when()
    slide(app, "We leave the place at", 60)
    assert not app.exception
    assert by_when() != first
    assert not [button for button in app.button if button.key == "take_tried"]


def test_a_closed_place_offers_no_times_to_try(open_app: OpenApp) -> None:
    """On Christmas no idea of when to leave helps, but another day does."""
    app = open_app("day_plan")
    app.date_input(key="plan_day").set_value(date(2026, 12, 25)).run()
    assert not app.exception
    assert not app.select_slider
    assert "Choose another day" in [link.proto.label for link in app.get("page_link")]


def test_another_departure_changes_the_plan_and_is_kept(open_app: OpenApp) -> None:
    """Where there are several leave windows, picking another one moves the departure."""
    app = open_app("day_plan")
    app.selectbox(key="plan_place").set_value("candlewick-sink-cave").run()
    app.date_input(key="plan_day").set_value(date(2027, 3, 17)).run()
    assert not app.exception
    windows = leave_windows(app)
    before = headline(app)
    other = next(number for number in range(len(windows.options)) if number != windows.value)
    windows.set_value(other).run()
    assert not app.exception
    assert before != headline(app)


def test_good_times_to_leave_stand_side_by_side(open_app: OpenApp) -> None:
    """A column for each of them, with the nap of the child by name, lunch, waiting and being home."""
    app = open_app("day_plan")
    app.selectbox(key="plan_place").set_value("candlewick-sink-cave").run()
    app.date_input(key="plan_day").set_value(date(2027, 3, 17)).run()
    table = app.table[0].value
    windows = [option.replace("\\", "") for option in leave_windows(app).options]
    assert len(table.columns) == len(windows) > 1
    assert {"load up", "let in", "lunch", "Bram's nap", "home"} <= set(table.index)
    assert all(f"home by {home}" in window for window, home in zip(windows, table.loc["home"], strict=True))


def test_the_day_can_be_traded_for_more_nap(open_app: OpenApp) -> None:
    """Where nap and stay collide, a table and sentences beside the chart say what is gained and lost."""
    app = open_app("day_plan")
    app.selectbox(key="plan_place").set_value("candlewick-sink-cave").run()
    app.date_input(key="plan_day").set_value(date(2026, 12, 13)).run()
    assert not app.exception
    table = app.table[-1]
    assert 3 <= len(table.value) <= 5
    assert list(table.value.columns) == ["load up", "nap kept", "time there", "home", "weighs"]
    text = text_of(app)
    assert "more nap and" in text
    assert re.search(r"\$[\d.]+ is (about )?the least", text)


def test_the_best_plan_stands_beside_what_it_could_be_traded_for(open_app: OpenApp) -> None:
    """More nap is told beside the best plan; there is a chart only where the stays differ too."""
    app = open_app("day_plan")
    app.selectbox(key="plan_place").set_value("tern-landing").run()
    app.date_input(key="plan_day").set_value(date(2026, 12, 3)).run()
    table = app.table[-1]
    leave = list(table.value["load up"])
    assert [row.endswith(" (best)") for row in leave] == [False, False, False, True]
    assert bool(app.get("vega_lite_chart")) == (len(set(table.value["time there"])) > 1)


def test_nothing_to_trade_is_said_in_so_many_words(open_app: OpenApp) -> None:
    """Where all naps fit a comfortable stay, there is no chart to puzzle over."""
    app = open_app("day_plan")
    app.selectbox(key="plan_place").set_value("tern-landing").run()
    app.date_input(key="plan_day").set_value(date(2026, 12, 9)).run()
    assert "weighs" not in [column for table in app.table for column in table.value.columns]
    assert "Nothing has to be traded" in text_of(app)


def test_chances_are_told_and_the_plan_leaves_slack_for_them(open_app: OpenApp) -> None:
    """A timed entry is planned with time to spare, and why that is worth it stands below."""
    app = open_app("day_plan")
    app.selectbox(key="plan_place").set_value("rag-and-reed").run()
    app.date_input(key="plan_day").set_value(date(2026, 12, 9)).run()
    text = text_of(app)
    assert "Chance to make the timed entry at 1:00 PM: almost certain" in text
    assert re.search(say("plan-late-for-timed-entry") + r" \(0\.\d%\) \$0\.\d\d", text)
    assert "Chance to be home before the first bedtime at 7:00 PM: almost certain" in text


def running_late(open_app: OpenApp) -> AppTest:
    """The part for the day itself, at a place with timed entry in early December."""
    app = open_app("day_plan")
    app.selectbox(key="plan_place").set_value("rag-and-reed").run()
    app.date_input(key="plan_day").set_value(date(2026, 12, 9)).run()
    app.button(key="running_late").click().run()
    assert not app.exception
    return app


def titles(app: AppTest) -> list[str]:
    """Headings of what can be done."""
    return [heading.value.replace("\\", "") for heading in app.subheader]


def test_running_late_says_at_once_what_can_be_done(open_app: OpenApp) -> None:
    """One tap: going on with its new times, another place, or staying at home, each with its money."""
    app = running_late(open_app)
    assert says("\n".join(titles(app)), "recovery-go-on")
    assert say("recovery-stay-home") in titles(app)
    assert says(text_of(app), "recovery-costs", more=False)
    app.button(key="running_late").click().run()
    assert say("recovery-stay-home") not in titles(app)


def counted_from(app: AppTest) -> timedelta:
    """The time of day that running late is counted from."""
    (said,) = re.findall(r"From (\d+:\d\d) [AP]M:", text_of(app))
    hour, minute = said.split(":")
    return timedelta(hours=int(hour), minutes=int(minute))


def test_a_later_start_moves_the_clock_it_is_about(open_app: OpenApp) -> None:
    """An hour late is half an hour later than half an hour late."""
    app = running_late(open_app)
    half = counted_from(app)
    app.button_group(key="late_tapped_HOME").set_value(60).run()
    assert not app.exception
    assert counted_from(app) - half == timedelta(minutes=30)


def test_who_sleeps_or_is_ill_changes_the_ways(open_app: OpenApp) -> None:
    """A sleeping child can sleep on; with a child ill one adult stays at home."""
    app = running_late(open_app)
    app.selectbox(key="late_asleep").set_value("Bram").run()
    assert not app.exception
    assert says("\n".join(titles(app)), "recovery-sleep-on-then", name="Bram")
    app.selectbox(key="late_asleep").set_value("").run()
    app.selectbox(key="late_ill").set_value("Odile").run()
    assert not app.exception
    on = next(title for title in titles(app) if says(title, "recovery-go-on"))
    assert says(on, "recovery-with")
    assert "Odile" not in on


def test_on_the_way_and_at_the_place_have_their_own_fields(open_app: OpenApp) -> None:
    """On the way one says how far it still is, at the place what time it is."""
    app = running_late(open_app)
    app.radio(key="late_where").set_value("on the way").run()
    assert not app.exception
    assert app.number_input(key="late_to_drive_ON_THE_WAY_30").value
    assert say("recovery-turn-back") in titles(app)
    app.radio(key="late_where").set_value("at the place").run()
    assert not app.exception
    assert app.time_input(key="late_now").value is not None
    assert say("recovery-go-home") in titles(app)


def timed_day(open_app: OpenApp) -> AppTest:
    """A day at a place with timed entry in early December."""
    app = open_app("day_plan")
    app.selectbox(key="plan_place").set_value("rag-and-reed").run()
    app.date_input(key="plan_day").set_value(date(2026, 12, 9)).run()
    return app


def headline(app: AppTest) -> str:
    """When to leave."""
    (title,) = app.title
    return title.value.replace("\\", "")


def slide(app: AppTest, label: str, minutes: int) -> AppTest:
    """Move the slider of that label by some minutes."""
    slider = next(one for one in app.select_slider if one.label == label)
    now = slider.value
    assert isinstance(now, datetime)
    slider.set_value(now + timedelta(minutes=minutes))
    return app.run()


def test_other_times_are_weighed_at_once_and_can_be_taken(open_app: OpenApp) -> None:
    """An earlier departure is told with what it weighs; taken, the page plans with it, and goes back."""
    app = timed_day(open_app)
    before = headline(app)
    assert say("plan-is-best") in text_of(app)
    slide(app, "We load up at", -15)
    assert not app.exception
    assert say("plan-is-best") not in text_of(app)
    assert headline(app) == before
    app.button(key="take_tried").click().run()
    assert not app.exception
    assert "Planned with your own times" in text_of(app)
    assert headline(app) != before
    app.button(key="back_to_best").click().run()
    assert headline(app) == before
    assert "Planned with your own times" not in text_of(app)


def test_times_that_cannot_be_say_which_limits_they_cross(open_app: OpenApp) -> None:
    """Far beyond closing the slider still answers: with the limits, and nothing to take."""
    app = timed_day(open_app)
    slide(app, "We leave the place at", 135)
    assert not app.exception
    text = text_of(app)
    assert "That cannot be" in text
    assert "Leaving the place at 5:30 PM does not fit: it is open " in text
    assert not [button for button in app.button if button.key == "take_tried"]


def test_a_nap_at_another_time_is_tried_without_changing_the_household(open_app: OpenApp) -> None:
    """With the nap an hour and a half earlier something else is kept of it, and that is only tried."""
    app = timed_day(open_app)
    (kept,) = (line for line in text_of(app).splitlines() if line.startswith("- Nap: "))
    planned = headline(app)
    slide(app, "Bram gets tired at", -90)
    assert not app.exception
    (now,) = (line for line in text_of(app).splitlines() if line.startswith("- Nap: "))
    assert kept != now
    assert headline(app) == planned
    assert "Naps are only tried here" in text_of(app)


def test_a_day_is_planned_to_the_minute_on_request(open_app: OpenApp) -> None:
    """Off the five-minute grid the family leaves at another minute, and the sliders go by minutes too."""
    app = timed_day(open_app)
    before = headline(app)
    steps = len(app.select_slider[0].options)
    app.toggle(key="to_the_minute").set_value(True).run()
    assert not app.exception
    assert headline(app) != before
    assert len(app.select_slider[0].options) > 4 * steps


def test_the_day_is_planned_around_the_shows_that_are_wanted(open_app: OpenApp) -> None:
    """Unwanted on the page, a show leaves the plan and its card says so; that can be taken back."""
    app = open_app("day_plan")
    app.selectbox(key="plan_place").set_value("ledgewing").run()
    app.date_input(key="plan_day").set_value(date(2026, 12, 17)).run()
    (shows,) = (group for group in app.button_group if group.label == "Which shows do we want to see?")
    assert shows.value == ["Hawk flight"]
    assert "Hawk flight: seen at 1:00 PM" in text_of(app)
    shows.set_value([]).run()
    assert not app.exception
    assert "Hawk flight: seen" not in text_of(app)
    assert "The shows to see at " in "\n".join(told.value for told in app.success)
    app.button(key="take_back_wanted_shows").click().run()
    assert not app.exception
    assert "Hawk flight: seen at 1:00 PM" in text_of(app)


def plan_it(data: Path, place_id: str, day: date, **changes: object) -> PlannedOuting:
    """Put an outing on record, a quarter of an hour after its best plan."""
    services = services_in(data)
    family = services.family()
    assert family is not None
    place = next(place for place in family.places if place.id == place_id)
    facts = place_facts(family, place, (day.year,))
    outing = plan_outing(family, family.party(), facts, day, today=services.today(family))
    assert isinstance(outing, Outing)
    planned = planned_from(
        outing,
        family.household,
        EntryTicks(),
        PlanStatus.CONFIRMED,
        before=None,
        ids_taken=(),
        at=services.clock(),
    )
    later = planned.leave_home + timedelta(minutes=15)
    planned = planned.model_copy(update={"leave_home": later, **changes})
    services.demo.save(planned, services.clock())
    return planned


def test_the_page_opens_the_next_planned_outing(open_app: OpenApp, data: Path) -> None:
    """Of two on record the earlier, as it is on record: its place in the headline, its times, its party."""
    plan_it(data, "ledgewing", date(2026, 12, 17))
    planned = plan_it(data, "tern-landing", date(2026, 12, 3), party=("Tamsin", "Petra", "Bram"))
    app = open_app("day_plan")
    at = wording.clock(planned.leave_home)
    assert headline(app) == f"Tern Landing River House: load up at {at}"
    assert "Thu, Dec 3: drive off at" in text_of(app)
    assert app.button_group(key=f"party_picker_{planned.id}").value == ["Tamsin", "Petra", "Bram"]
    assert app.query_params["place"] in ("tern-landing", ["tern-landing"])


def test_the_address_may_name_place_and_day(data: Path) -> None:
    """It goes before what is planned; whatever is picked on the page then counts."""
    plan_it(data, "tern-landing", date(2026, 12, 3))
    app = AppTest.from_file(str(APP), default_timeout=30).run()
    app.query_params["place"], app.query_params["day"] = "ledgewing", "2026-12-17"
    app.switch_page("screens/pages/day_plan.py").run()
    app.run()
    assert not app.exception
    assert headline(app).startswith("Ledgewing")
    assert "Thu, Dec 17" in text_of(app)
    app.date_input(key="plan_day").set_value(date(2026, 12, 12)).run()
    assert "Sat, Dec 12" in text_of(app)
    app.selectbox(key="plan_place").set_value("tern-landing").run()
    app.date_input(key="plan_day").set_value(date(2026, 12, 3)).run()
    assert headline(app).startswith("Tern Landing")


def test_a_planned_day_picked_again_has_its_own_times(open_app: OpenApp, data: Path) -> None:
    """Picking place and day of an outing on record shows it with the times that are on record."""
    planned = plan_it(data, "ledgewing", date(2026, 12, 17))
    plan_it(data, "tern-landing", date(2026, 12, 3))
    app = open_app("day_plan")
    app.selectbox(key="plan_place").set_value("ledgewing").run()
    app.date_input(key="plan_day").set_value(date(2026, 12, 17)).run()
    assert headline(app).endswith(f"load up at {wording.clock(planned.leave_home)}")
    assert "Planned with your own times" in text_of(app)
