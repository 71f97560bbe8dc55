"""School calendars from the command line."""

import json
from datetime import date
from pathlib import Path

import jsonschema  # type: ignore[import-untyped]
import pytest

from tests.commands.conftest import NOON, Run
from tripplan.commands.options import shared
from tripplan.documents import model
from tripplan.documents.calendars.calendars import SchoolCalendar
from tripplan.records.opening import Which, open_records

TABLE = (
    "first day,last day,name,kind\n"
    "2026-08-24,,Begins,first day of school\n"
    "2026-12-21,2027-01-01,Rest,no school\n"
    "2027-06-04,,Ends,last day of school\n"
)
DISTRICT = "Limekiln Bluffs district (invented)"


def on_record(data: Path) -> dict[str, SchoolCalendar]:
    """The demo's calendars."""
    records = open_records(data, Which.DEMO, NOON)
    return {name: kept.value for name, kept in records.all(SchoolCalendar).items()}


def test_the_list_tells_how_far_calendars_reach_around_each_place(run: Run) -> None:
    """The two districts, each place's share known, and that a typical year stands in after that."""
    said = run("schools", "list", "--demo")
    assert said.status == 0
    assert "then nothing after that" in said.out
    told = " ".join(said.out.split())
    assert "Ledgewing Birds of Prey: Known of 100% of the students nearby until Wed, Jun 2, 2027" in told
    assert told.count("Pew Research Center") == 1


def test_the_list_in_json_holds_the_calendars_and_how_far_they_reach(run: Run) -> None:
    """Calendars as they are on record; each place with its districts, whose shares add up to one."""
    told = json.loads(run("schools", "list", "--demo", "--json").out)
    jsonschema.validate(told, json.loads(run("schema", "schools-list").out))
    assert {one["name"] for one in told["calendars"]} >= {DISTRICT}
    place = next(one for one in told["places"] if one["place"] == "ledgewing")
    assert sum(one["share"] for one in place["districts"]) == pytest.approx(1, abs=1e-3)
    assert "Known of 100% of the students nearby until" in place["said"]
    assert "Pew Research Center" in place["typical_year"]
    assert (told["data"], told["today"], told["until"]) == ("demo", "2026-11-25", "2028-05-26")


def test_a_built_in_region_is_added_shown_and_removed(run: Run, data: Path) -> None:
    """By its code; its pupils are said to be a guess unless told."""
    assert run("schools", "add", "de-by", "--demo").status == 0
    assert on_record(data)["Bavaria (school holidays)"].region == "DE-BY"
    shown = run("schools", "show", "bavaria (school holidays)", "--demo")
    assert "2026-08-03 to 2026-09-14 Summer Break" in shown.out
    assert "a guess, 12%" in " ".join(shown.out.split())
    assert run("schools", "add", "DE-BY", "--name", "Bayern", "--students", "1700000", "--demo").status == 0
    assert on_record(data)["Bayern"].pupils == 1_700_000
    assert run("schools", "remove", "Bayern", "--demo").status == 0
    assert "Bayern" not in on_record(data)


def test_more_pupils_than_follow_any_calendar_are_a_slip(run: Run, tmp_path: Path) -> None:
    """The limit is the screen's; it is told along with a place that cannot be found."""
    file = tmp_path / "ours.csv"
    file.write_text("first day,name\n2026-12-24,winter break\n", encoding="utf-8")
    for source in (file, "DE-BY"):
        said = run("schools", "add", source, "--students", "5000001", "--demo")
        assert said.status == 2
        assert (
            "command line: --students: a calendar has at most 5,000,000 students (found: 5,000,001)"
            in said.err
        )
    both = run("schools", "add", file, "--students", "5000001", "--at", "Nowhereville Q", "--demo")
    assert "--at" in both.err
    assert "--students" in both.err


def test_a_table_is_added_and_added_again(run: Run, data: Path, tmp_path: Path) -> None:
    """Where its pupils live and how many they are is kept by a later import."""
    file = tmp_path / "alder.csv"
    file.write_text(TABLE)
    first = run("schools", "add", file, "--at", "Dubuque, IA", "--students", "4200", "--demo")
    assert first.status == 0, first.err
    made = on_record(data)["alder"]
    assert (made.pupils, made.subdivision, round(made.latitude, 1)) == (4200, "IA", 42.5)
    file.write_text(TABLE.replace("Rest", "Winter rest"))
    assert run("schools", "add", file, "--demo").status == 0
    again = on_record(data)["alder"]
    assert (again.pupils, again.latitude) == (4200, made.latitude)
    assert [span.name for span in again.no_school] == ["Winter rest"]


def test_dates_of_a_table_are_never_guessed(run: Run, tmp_path: Path) -> None:
    """Without --dates every such date is a fault; with it they are read."""
    file = tmp_path / "alder.csv"
    file.write_text("first day;name\n03/04/2027;No school\n")
    refused = run("schools", "add", file, "--demo")
    assert refused.status == 2
    assert "whether the day or the month comes first" in " ".join(refused.err.split())
    assert run("schools", "add", file, "--dates", "day-first", "--demo").status == 0


def test_the_next_year_is_guessed_and_marked(run: Run, data: Path) -> None:
    """The calendar itself stays as it is known."""
    said = run("schools", "guess", DISTRICT, "--demo")
    assert said.status == 0
    assert "then a guess from Thu, Jun 3, 2027" in " ".join(said.out.split())
    kept = on_record(data)[DISTRICT]
    assert kept.known.last == date(2027, 6, 2)
    assert kept.expected


def test_a_guess_stays_when_the_file_is_added_again(run: Run, data: Path) -> None:
    """The district's file is read anew, and the year after is guessed from it as before."""
    assert run("schools", "guess", DISTRICT, "--demo").status == 0
    before = on_record(data)[DISTRICT]
    again = run("schools", "add", "demo_places/calendars/limekiln-bluffs-district-ia.ics", "--demo")
    assert again.status == 0
    after = on_record(data)[DISTRICT]
    assert (after.expected_within, after.expected) == (before.expected_within, before.expected)
    assert "then a guess from" in again.out


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("add", "DE-XX"), "no region with built-in school breaks"),
        (("add", "missing.ics"), "cannot be opened"),
        (("add", "AU-ACT", "--today", "2030-03-01"), "no school breaks on record for these years"),
        (("regions", "US"), "no country with built-in school breaks"),
        (("show", "nobody"), "no school calendar called 'nobody'"),
        (("add", "DE-BY", "--at", "Nowhereville"), "--at"),
    ],
)
def test_what_is_not_there_is_said(run: Run, words: tuple[str, ...], said: str) -> None:
    """With status 2, and what would have worked."""
    # The demo's own calendars are of 2026, so it is filled then.
    assert run("schools", "list", "--demo").status == 0
    answer = run("schools", *words, "--demo")
    assert answer.status == 2
    assert said in " ".join((answer.err + answer.out).split())


def test_regions_are_listed_with_what_is_known_of_them(run: Run) -> None:
    """French zones are decided to summer 2027 and guessed after that."""
    said = run("schools", "regions", "fr")
    assert said.status == 0
    assert "FR-A" in said.out
    assert "2027-08-31" in said.out
    assert "DE-BY" not in said.out


@pytest.mark.parametrize("source", ["de-by", "demo_places/calendars/otter-slough-district-wi.ics"])
def test_a_name_too_long_for_the_records_is_refused(run: Run, data: Path, source: str) -> None:
    """It is told as a wrong word of the command line, and nothing is added."""
    before = on_record(data)
    said = run("schools", "add", source, "--demo", "--name", "x" * 81)
    assert said.status == 2
    assert "a name has 1 to 80 characters, not 81" in said.err
    assert on_record(data) == before


def test_the_longest_name_is_that_of_the_records() -> None:
    """The command line checks it without loading the planning."""
    assert shared.LONGEST_NAME == model.LONGEST_NAME


def test_a_districts_file_is_looked_through_and_its_entries_named_otherwise(
    run: Run, data: Path, tmp_path: Path
) -> None:
    """What each entry is taken for is told with the reason; titles say otherwise, and that stays."""
    file = tmp_path / "ours.csv"
    rows = ("2026-12-21,2027-01-01,Winter break", "2026-12-18,,Early release", "2027-02-11,,Conferences")
    file.write_text("\n".join(("first day,last day,name", *rows)), encoding="utf-8")
    looked = run("schools", "look", file, "--demo")
    assert looked.status == 0
    no_school, _, rest = looked.out.partition("Short days, with school:")
    assert "2026-12-21 to 2027-01-01 Winter break ('break' is a break)" in " ".join(no_school.split())
    assert "Early release" in rest.partition("School as always:")[0]
    assert "Conferences" in rest.partition("School as always:")[2]
    otherwise = ("--short", "conferences", "--school", "early  release")
    assert run("schools", "add", file, "--name", "Ours", *otherwise, "--demo").status == 0
    assert [day.name for day in on_record(data)["Ours"].short_days] == ["Conferences"]
    assert run("schools", "add", file, "--demo").status == 0
    assert [day.name for day in on_record(data)["Ours"].short_days] == ["Conferences"]
    wrong = run(
        "schools",
        "add",
        file,
        "--no-school",
        "Conference",
        "--short",
        "Winter break",
        "--school",
        "Winter break",
        "--demo",
    )
    assert wrong.status == 2
    assert "command line: --no-school: no entry is called that; did you mean conferences?" in wrong.err
    assert "command line: --school: --short says otherwise of it" in wrong.err


def test_a_file_that_is_too_large_is_refused_without_a_size_that_was_not_read(
    run: Run, tmp_path: Path
) -> None:
    """No more of it is read than shows that it is too large, so nothing is said of how large it is."""
    file = tmp_path / "ours.ics"
    file.write_bytes(b"BEGIN:VCALENDAR\r\n" + b"x" * 6_000_000)
    said = run("schools", "add", file, "--demo")
    assert said.status == 2
    assert said.err.strip() == "ours.ics: is larger than 5 MB; export a shorter span of time"
