"""`tripplan day`: one day at one place."""

import json
from datetime import date, datetime, timedelta
from typing import Any

import pytest

from tests.builders import make_household, make_place
from tests.commands.conftest import Files, Run, assert_fits_schema
from tests.forecasts.answers import grid_forecast, grid_links, weather_server
from tests.saying import says
from tripplan.files.cards.household_file import write_household
from tripplan.language import wording

# By hand: half an hour's drive typed in, 5 minutes to load two adults and 3 to unload them (the usual times
# of `tripplan.planning.travel.rests`), doors open at 10:00, two hours are comfortable. 38 minutes before ten
# is 9:22; the first departure after it on the five-minute grid is 9:25, so nobody waits, and the first way
# home on the grid after two hours is at 12:05. Lunch may be half an hour early, so that it is eaten inside.
TIMELINE = """
at        what                       how long
--------  -------------------------  ---------
12:35 PM  load up for the way there  5 min
12:40 PM  drive there                30 min
1:10 PM   unload                     3 min
1:13 PM   visit                      2 h 2 min
3:15 PM   load up for the way home   5 min
3:20 PM   drive home                 30 min
3:50 PM   unload                     3 min
3:53 PM   home again
"""


def answer(run: Run, *argv: str) -> dict[str, Any]:
    """The JSON answer."""
    told: dict[str, Any] = json.loads(run("day", *argv, "--json").out)
    return told


@pytest.mark.usefixtures("own_records")
def test_the_timeline_of_a_small_day(run: Run) -> None:
    """Every step of a day worked out by hand stands on its line, without gaps."""
    said = run("day", "test-museum", "2026-12-08")
    assert (said.status, said.err) == (0, "")
    assert TIMELINE in said.out
    assert "Drive, one way: 40 mi (" in said.out
    assert "parent: typed in on 2026-11-25" in said.out


@pytest.mark.usefixtures("own_records")
def test_steps_follow_each_other_without_gaps(run: Run) -> None:
    """In JSON too, each step begins where the one before ends."""
    plan = answer(run, "test-museum", "2026-12-08")["outing"]["plan"]
    ends = [step["end"] for step in plan["steps"]]
    assert [plan["leave_home"], *ends] == [*(step["start"] for step in plan["steps"]), plan["home"]]


@pytest.mark.usefixtures("own_records")
def test_a_day_can_be_planned_to_the_minute(run: Run) -> None:
    """By hand: lunch at home ends at 12:35; 38 minutes later is 13:13, then two hours, then 38 minutes."""
    told = answer(run, "test-museum", "2026-12-08", "--grid", "1")
    plan = told["outing"]["plan"]
    assert [plan[name][11:16] for name in ("leave_home", "enter", "leave_place", "home")] == [
        "12:35",
        "13:13",
        "15:13",
        "15:51",
    ]
    assert told["grid_minutes"] == 1
    assert answer(run, "test-museum", "2026-12-08")["grid_minutes"] == 5


@pytest.mark.usefixtures("own_records")
def test_leaving_at_times_of_ones_own_is_held_against_the_best(run: Run) -> None:
    """With a comfortable stay it weighs as much; let in at 1:30, half past two is an hour short of it."""
    asked = ("test-museum", "2026-12-08", "--leave-home", "12:52", "--leave-place")
    said = run("day", *asked, "15:32")
    assert said.status == 0
    assert "12:52 PM  load up for the way there" in said.out
    assert "Leaving as asked: As good as the best plan: as much nap and as long a stay." in " ".join(
        said.out.split()
    )
    told = answer(run, *asked, "14:30")
    # The usual worth of an hour missed there is 10.00; on the grid the best stays two minutes too long, 0.07,
    # and an hour less in the weather of a December weighs 2.63 less.
    best = told["against_best"]
    assert (best["code"], best["values"]["by"]["amount"]) == ("plan-weighs-more", "7.30")
    (change,) = best["values"]["changes"]
    assert (change["code"], change["values"]) == ("plan-difference-stay", {"by": "PT60M", "more": False})


@pytest.mark.usefixtures("own_records")
def test_times_of_ones_own_that_cannot_be_say_which_limit_they_cross(run: Run) -> None:
    """Closed by then and home too late are told together, and the answer is no."""
    said = run("day", "test-museum", "2026-12-08", "--leave-home", "10:00", "--leave-place", "19:00")
    assert said.status == 1
    assert "it is open 10:00 AM to 5:00 PM" in said.out
    assert "You would be home at 7:38 PM, 38 min after 7:00 PM" in said.out


def test_on_an_impossible_day_times_of_ones_own_say_which_limits_they_cross(run: Run, files: Files) -> None:
    """Back at half past ten there is no day; whoever names times hears what is wrong with just these."""
    files.add(opening={"hours": "10:00-17:00"})
    household = make_household(habits={"home_by": "11:30"})
    files.household.write_text(write_household(household), encoding="utf-8")
    asked = ("test-museum", "2026-12-08", *files.options)
    said = run("day", *asked)
    assert said.status == 1
    assert "being home by 11:30 AM do not fit" in " ".join(said.out.split())
    assert "would make the day possible" not in said.out
    said = run("day", *asked, "--leave-home", "9:00", "--leave-place", "12:00")
    assert said.status == 1
    told = " ".join(said.out.split())
    assert "after 11:30 AM, when you want to be home." in told
    assert "At any other time: " in told


def test_an_impossible_day_says_which_limit_would_make_it_possible(run: Run, files: Files) -> None:
    """Ten minutes too long by the time of being home; a quarter of an hour later would do."""
    files.add(opening={"hours": "10:00-17:00"})
    too_long = " ".join(run("day", "test-museum", "2026-12-08", *files.options).out.split())
    home = datetime.fromisoformat(
        answer(
            run, "test-museum", "2026-12-08", *files.options, "--leave-home", "8:45", "--leave-place", "11:05"
        )["outing"]["plan"]["home"]
    )
    assert "would make the day possible" not in too_long
    household = make_household(habits={"home_by": f"{home - timedelta(minutes=10):%H:%M}"})
    files.household.write_text(write_household(household), encoding="utf-8")
    said = run("day", "test-museum", "2026-12-08", *files.options)
    assert said.status == 1
    later = wording.clock(home + timedelta(minutes=5))
    assert f"Being home by {later} instead of " in " ".join(said.out.split())
    assert "would make the day possible." in said.out


@pytest.mark.usefixtures("own_records")
@pytest.mark.parametrize(
    ("asked", "why"),
    [
        (("--leave-home", "9:00"), "--leave-place: --leave-home and --leave-place are named together"),
        (("--leave-home", "nine", "--leave-place", "12:00"), "--leave-home: a time of day reads like 16:30"),
        (("--grid", "0"), "--grid"),
        (("--grid", "five"), "--grid"),
    ],
)
def test_times_and_grids_that_cannot_be_read_are_bad_input(
    run: Run, asked: tuple[str, ...], why: str
) -> None:
    """The fault names its option."""
    said = run("day", "test-museum", "2026-12-08", *asked)
    assert said.status == 2
    assert why in " ".join(said.err.split())


def test_the_timeline_tells_who_sleeps_when_and_where(run: Run, files: Files) -> None:
    """Below the steps stands each usual nap with the time and place in which it is slept."""
    files.add()
    said = " ".join(run("day", "test-museum", "2026-12-08", *files.options).out.split())
    assert "Naps: - Di, usually 12:30 PM for 1 h 40 min: asleep about " in said


def test_everything_about_the_day_is_told(run: Run, files: Files) -> None:
    """Windows, hours, nap, crowd, cost, tickets and cautions each have their place."""
    files.add()
    said = run("day", "test-museum", "2026-12-08", *files.options)
    for told in (
        "Test museum, Tue, Dec 8, 2026\nAnn, Bo, Cy, and Di\n",
        "About equally good times to leave: ",
        "Open 10:00 AM to 5:00 PM (open by the hours on the place card).",
        "Nap: ",
        "Crowds: ",
        "Cost in all: ",
        "  1 x Child for Cy: $9.00\n",
        "Please mind:\n",
    ):
        assert told in said.out


def test_clocks_of_two_zones_are_told_apart(run: Run, files: Files) -> None:
    """Where the place's clock differs from the one at home, every time carries its zone."""
    where = {**make_place().where.model_dump(exclude_none=True), "time_zone": "America/New_York"}
    files.add(id="east", where=where)
    lines = run("day", "east", "2026-12-08", *files.options).out.splitlines()
    (there,) = (line for line in lines if "load up for the way there" in line)
    (back,) = (line for line in lines if "load up for the way home" in line)
    assert there.split()[1:3] == ["AM", "CST"]
    assert back.split()[2] == "EST"


def test_json_is_what_its_form_says(run: Run, files: Files) -> None:
    """No key is missing, none is unknown; a day that cannot be done says why."""
    files.add()
    for day, possible in (("2026-12-08", True), ("2026-12-07", False)):
        told = answer(run, "test-museum", day, *files.options)
        assert_fits_schema(told, "day")
        assert (told["outing"] is not None, told["passed_over"] is None) == (possible, possible)


def test_a_day_that_cannot_be_done_is_a_no(run: Run, files: Files) -> None:
    """A closed day and a day gone by are answers, no faults."""
    files.add()
    closed = run("day", "test-museum", "2026-12-07", *files.options)
    assert (closed.status, closed.err) == (1, "")
    assert closed.out == "Test museum cannot be visited on Mon, Dec 7, 2026:\n  closed on Mondays\n"
    assert "the day is over" in run("day", "test-museum", "2026-11-24", *files.options).out


@pytest.mark.parametrize("name", ["test-museum", "TEST-MUSEUM", "Test museum", "test m", "test-m"])
def test_a_place_may_be_called_by_its_name_or_its_beginning(run: Run, files: Files, name: str) -> None:
    """Capital letters do not matter, and a beginning that fits one place is enough."""
    files.add()
    files.add(id="other", name="Other")
    assert answer(run, name, "2026-12-08", *files.options)["outing"]["place"]["id"] == "test-museum"


@pytest.mark.usefixtures("own_records")
def test_cards_in_files_stand_for_the_places_on_record_alone(run: Run, files: Files) -> None:
    """With `--places` the family on record goes, and still knows its drives."""
    files.add(opening={"hours": "Mo 10:00-17:00"})
    told = answer(run, "test-museum", "2026-12-07", "--places", str(files.places))
    assert (told["data"], told["party"]) == ("own", ["Ann", "Bo"])
    assert told["outing"]["way_there"]["known_by"] == "typed in"


@pytest.mark.usefixtures("own_records")
def test_a_household_file_stands_for_all_the_family_knows(run: Run, files: Files) -> None:
    """With `--household` others go to the places on record, without knowing the drive."""
    told = answer(run, "test-museum", "2026-12-08", "--household", str(files.household))
    assert (told["data"], told["party"]) == ("files", ["Ann", "Bo", "Cy", "Di"])
    assert told["outing"]["way_there"]["known_by"] == "estimate"


def test_how_likely_the_day_holds_is_told(run: Run, files: Files) -> None:
    """The chances, why the best is the best and which limit helps stand under the timeline."""
    files.add()
    said = " ".join(run("day", "test-museum", "2026-12-08", *files.options).out.split())
    for told in (
        "Chance to make the last entry at 5:00 PM: almost certain.",
        "Chance to be home by 7:00 PM: almost certain.",
        "is the least by what matters to you",
    ):
        assert told in said
    assert says(said, "plan-change-helps")


def test_shows_are_told_in_words_and_in_json(run: Run, files: Files) -> None:
    """One that is seen with its time and chance, one after closing without, one that nobody asked for not."""
    files.add(
        visit={
            "shows": [
                {"name": "Otter feeding", "starts": ["11:00"], "minutes": 20},
                {"name": "Night sky", "starts": ["16:50"], "minutes": 30},
                {"name": "Old film", "starts": ["11:30"], "worth_it": False},
            ]
        }
    )
    said = " ".join(run("day", "test-museum", "2026-12-08", *files.options).out.split())
    assert "Otter feeding: seen from 11:00 AM to 11:20 AM" in said
    assert "Night sky at 4:50 PM: missed in this plan." in said
    plan = answer(run, "test-museum", "2026-12-08", *files.options)["outing"]["plan"]
    seen, missed = plan["shows"]
    assert (seen["name"], seen["start"], seen["end"]) == (
        "Otter feeding",
        "2026-12-08T11:00:00-06:00",
        "2026-12-08T11:20:00-06:00",
    )
    assert 0 <= seen["missed_chance"] < 0.5
    assert missed == {"name": "Night sky", "start": None, "end": None, "missed_chance": 1.0, "asleep": []}
    steps = [(step["kind"], step["label"]["text"], step["start"]) for step in plan["steps"]]
    assert ("show", "Otter feeding", seen["start"]) in steps


def test_good_times_to_leave_stand_side_by_side(run: Run, files: Files) -> None:
    """A line for each fact, a column for each span of departures, here one for each entry."""
    household = make_household(
        habits={"usual_departure": "07:00", "lunch_minutes": 0},
        members=[{"name": "Ann", "born": "1988-05-20"}],
    )
    files.household.write_text(write_household(household), encoding="utf-8")
    files.add(opening={"hours": "10:00-17:00", "entry_times": ["10:00", "13:00"]})
    said = run("day", "test-museum", "2026-12-08", *files.options).out
    head = next(line for line in said.splitlines() if line.startswith("leave "))
    assert head.count(" to ") == 2
    facts = said[said.index(head) :].split("\n\n")[0]
    assert "time there" in facts
    assert facts.splitlines()[-1].startswith("home ")


def test_trade_offs_are_told_as_a_table_and_in_json(run: Run, files: Files) -> None:
    """A nap only at home against an early closing: more nap, less time there; the same in JSON."""
    nap = {"start": "12:30", "minutes": 100, "in_car": False, "slack_minutes": 0}
    household = make_household(
        members=[{"name": "Ann", "born": "1988-05-20"}, {"name": "Di", "born": "2025-07-15", "naps": [nap]}]
    )
    files.household.write_text(write_household(household), encoding="utf-8")
    files.add(visit={"pushchairs": False, "comfortable_minutes": 240}, opening={"hours": "10:00-15:00"})
    said = run("day", "test-museum", "2026-12-08", *files.options).out
    assert "against the best plan" in said
    told = answer(run, "test-museum", "2026-12-08", *files.options)
    points = told["trade_offs"]["points"]
    assert 3 <= len(points) <= 5
    assert sum(point["best"] for point in points) <= 1
    assert [point["nap_kept_minutes"] for point in points] == sorted(
        (point["nap_kept_minutes"] for point in points), reverse=True
    )
    assert {part["name"]["code"] for part in told["trade_offs"]["parts"]} >= {"plan-driving"}
    assert 0 <= told["slack"]["make_entry"] <= 1
    assert told["slack"]["timed_entry"] is False


def test_running_late_tells_what_can_be_done_now(run: Run, files: Files) -> None:
    """Forty minutes late with paid tickets: going on and staying at home, with what is lost."""
    files.add()
    said = run("day", "test-museum", "2026-12-08", "--late", "40", "--paid", *files.options)
    assert (said.status, said.err) == (0, "")
    assert said.out.startswith("From ")
    assert says(said.out, "recovery-go-on", place="Test museum")
    assert says(said.out, "recovery-stay-home")
    assert says(said.out, "recovery-tickets-lost")


def test_running_late_is_told_in_json_too(run: Run, files: Files) -> None:
    """On the way with a child asleep in the afternoon: going on, turning back; waiting is too long."""
    files.add()
    asked = ("--late", "10", "--where", "way", "--asleep", "Di", *files.options)
    told = answer(run, "test-museum", "2026-12-08", *asked)["replanned"]
    assert [way["choice"] for way in told["ways"]] == ["go on", "turn back"]
    (not_any_more,) = told["impossible"]
    assert not_any_more["title"]["code"] == "recovery-sleep-on-then"
    assert not_any_more["title"]["values"] == {"name": "Di", "place": "Test museum"}
    assert not_any_more["reasons"]
    assert told["ways"][-1]["plan"] is None
    assert told["ways"][0]["plan"]["steps"]
    assert "cautions-asleep-in-car" in {caution["code"] for caution in told["cautions"]}


def test_how_far_what_time_and_who_stays_can_be_named(run: Run, files: Files) -> None:
    """As on the screens: minutes still to drive on either way, the time at the place, the adult who stays."""
    files.add()

    def told(*asked: str) -> str:
        said = run("day", "test-museum", "2026-12-08", *asked, *files.options)
        assert (said.status, said.err) == (0, "")
        return " ".join(said.out.split())

    plan = answer(run, "test-museum", "2026-12-08", *files.options)["outing"]["plan"]
    home = datetime.fromisoformat(plan["home"])
    back = told("--where", "back", "--late", "20", "--to-drive", "15")
    assert says(back, "recovery-drive-home")
    assert says(back, "recovery-home-at", at=home + timedelta(minutes=20))
    assert told("--where", "way", "--to-drive", "10") != told("--where", "way", "--to-drive", "30")
    assert told("--where", "there", "--now", "12:40").startswith("From 12:40 PM:")
    assert "Bo stays at home with Cy" in told("--ill", "Cy", "--stays", "Bo")
    # Whatever goes wrong is answered, with or without being late.
    assert told("--rain").startswith("From ")


@pytest.mark.parametrize(
    ("asked", "field", "why"),
    [
        (("--ill", "Cy", "--stays", "Zed"), "--stays", "nobody of that name goes"),
        (("--where", "there", "--now", "noon"), "--now", "a time of day reads like 16:30"),
        (("--late", "10", "--ill", "Zed"), "--ill", "nobody of that name goes"),
        (("--late", "10", "--asleep", "Zed"), "--asleep", "nobody of that name goes"),
        (("--late", "999"), "--late", "that late, the day is over"),
    ],
)
def test_trouble_that_cannot_be_is_bad_input(
    run: Run, files: Files, asked: tuple[str, ...], field: str, why: str
) -> None:
    """A stranger asleep or ill, or a day that is over, is told as a fault of its option."""
    files.add()
    said = run("day", "test-museum", "2026-12-08", *asked, *files.options)
    assert said.status == 2
    assert f"command line: {field}: {why}" in " ".join(said.err.split())


@pytest.mark.usefixtures("own_records")
def test_the_weather_can_be_typed(run: Run) -> None:
    """A frosty word takes the place of the usual, whichever unit it is in; the JSON says so."""
    told = answer(run, "test-museum", "2026-12-01", "--weather", "snow, 5 to 14")["outing"]["weather"]
    assert (told["day_low"], told["day_high"]) == (-15.0, -10.0)  # (5 - 32) / 1.8, (14 - 32) / 1.8
    assert told["forecast"]["words"] == "snow, 5 to 14"
    assert "“snow, 5 to 14”" in told["source"]["text"]
    usual = answer(run, "test-museum", "2026-12-01")["outing"]["weather"]
    assert usual["forecast"] is None
    assert usual["day_low"] != told["day_low"]


@pytest.mark.usefixtures("own_records")
@pytest.mark.parametrize(
    ("typed", "said"),
    [
        ("900", "900 °F is no temperature"),
        ("rain tomorrow", "that is the weather of Thu, Nov 26, 2026"),
        ("frogs", "no word for weather"),
    ],
)
def test_weather_that_cannot_be_is_refused(run: Run, typed: str, said: str) -> None:
    """The option is named, with what was typed."""
    refused = run("day", "test-museum", "2026-12-01", "--weather", typed)
    assert (refused.status, refused.out) == (2, "")
    assert "--weather" in refused.err
    assert said in refused.err


@pytest.mark.usefixtures("own_records")
def test_the_forecast_is_asked_for_and_what_is_sent_is_told(
    run: Run, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The day's figures are the service's; without an answer the usual counts, and that is said."""
    december = [(50 - day, 30, 90, "Rain") for day in range(8)]

    def server_says(server: str, path: str) -> object:
        return (
            grid_links(server) if path.startswith("/points") else grid_forecast(date(2026, 11, 25), december)
        )

    with weather_server(server_says) as (forecasts, asked):
        monkeypatch.setattr("tripplan.commands.day.real_forecasts", lambda: forecasts)
        found = run("day", "test-museum", "2026-12-01", "--forecast", "--json")
    assert len(asked) == 2
    assert "sends 40.48, -88.99" in found.err
    weather = json.loads(found.out)["outing"]["weather"]
    assert weather["forecast"]["service"] == "api.weather.gov"
    assert weather["chance_wet"] == 0.9
    gone = run("day", "test-museum", "2026-12-01", "--forecast", "--json")  # the server is no more
    assert "The usual weather counts" in gone.err
    assert not json.loads(gone.out)["outing"]["weather"]["forecast"]


@pytest.mark.usefixtures("own_records")
def test_no_forecast_reaches_so_far(run: Run) -> None:
    """A day weeks ahead is refused before anything is sent."""
    refused = run("day", "test-museum", "2027-02-02", "--forecast")
    assert refused.status == 2
    assert "--forecast" in refused.err
