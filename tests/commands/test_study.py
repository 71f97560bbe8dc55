"""`tripplan study` tells units and plans a term; `tripplan busy` tells what keeps the family busy."""

import json
from decimal import Decimal
from pathlib import Path

import jsonschema  # type: ignore[import-untyped]

from tests.builders import make_place
from tests.commands.conftest import NOON, Files, Run
from tripplan.documents.calendars.calendars import FamilyCalendar
from tripplan.documents.calendars.family_days import FamilyDays
from tripplan.documents.outings.planned import PlannedOuting, PlanStatus
from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.records.store import Records


def test_the_demos_term_is_planned(run: Run) -> None:
    """Units with fitting places and close spellings are told, and the programme with its total and limits."""
    listed = run("study", "list", "--demo")
    assert (listed.status, listed.err) == (0, "")
    assert "Who eats whom" in listed.out
    assert "does not count until you say so" in " ".join(listed.out.split())
    planned = run("study", "programme", "--demo")
    assert (planned.status, planned.err) == (0, "")
    assert "3 outings: $" in planned.out


def test_the_terms_outings_are_kept_as_planned_ones(run: Run) -> None:
    """All three are on record under their units and on the calendar; keeping them again changes nothing."""
    kept = run("study", "programme", "--demo", "--keep")
    assert (kept.status, kept.err) == (0, "")
    assert "3 outings are planned; tripplan calendar has an entry for each." in " ".join(kept.out.split())
    listed = json.loads(run("study", "programme", "--demo", "--json").out)
    assert all(one["planned"] for one in listed["outings"])
    again = run("study", "programme", "--demo", "--keep")
    assert "All of them are planned already." in again.out


def test_an_outing_that_is_kept_again_after_it_was_removed_goes_on_from_there(
    run: Run, own_records: Records
) -> None:
    """It stands under the same UID with a later sequence, as calendars that hold its entry ask."""
    own_records.save(make_place(id="mill", visit={"topics": ["mills"]}), NOON)
    run("study", "add", "Mills", "--topic", "mills", "--from", "2027-01-04", "--to", "2027-01-29")
    run("study", "programme", "--keep")
    (first,) = own_records.all(PlannedOuting).values()
    called_off = own_records.save(
        first.value.changed(NOON, status=PlanStatus.CANCELLED), NOON, first.revision
    )
    own_records.remove(PlannedOuting, first.value.id, NOON, called_off.revision)
    assert "1 outing is planned" in run("study", "programme", "--keep").out
    (again,) = own_records.all(PlannedOuting).values()
    assert again.value.uid == first.value.uid
    assert again.value.sequence == called_off.value.sequence + 1
    assert (again.value.status, again.value.study_unit) == (PlanStatus.TENTATIVE, "Mills")


def test_outings_of_a_household_in_a_file_are_not_kept(run: Run, files: Files) -> None:
    """The records are those of another family; the fault is told by the option."""
    said = run("study", "programme", "--keep", "--household", files.household)
    assert said.status == 2
    assert "--keep" in said.err
    assert "leave --household out" in said.err


def test_a_unit_is_added_and_changed(run: Run, own_records: Records) -> None:
    """The unit is on record as given; a wrong one is told and changes nothing; without places, status 1."""
    words = ("study", "add", "Mills", "--topic", "mills", "water", "--from", "2027-01-04", "--to")
    assert run(*words, "2027-02-01", "--budget", "80").status == 0
    kept = own_records.get(StudyUnit, "Mills")
    assert kept is not None
    assert (kept.value.topics, str(kept.value.budget)) == (("mills", "water"), "80")
    wrong = run(*words, "2027-01-01")
    assert wrong.status == 2
    assert "the last day lies before the first" in wrong.err
    none = run("study", "programme")
    assert none.status == 1
    assert "no place card names one of its topics" in none.out


def test_changing_a_unit_leaves_what_is_not_named(run: Run, own_records: Records) -> None:
    """Topics and weeks are new; budget, who goes and places named on the screen stay."""
    unit = {
        "name": "Mills",
        "topics": ["mills"],
        "first": "2027-01-04",
        "last": "2027-02-01",
        "currency": "USD",
        "budget": "80",
        "members": ["Bo"],
        "also_places": ["test-museum"],
    }
    own_records.save(StudyUnit.model_validate(unit), NOON, 0)
    changed = ("--topic", "water", "--from", "2027-01-11", "--to", "2027-02-08")
    assert run("study", "add", "Mills", *changed).status == 0
    kept = own_records.get(StudyUnit, "Mills")
    assert kept is not None
    dumped = kept.value.model_dump(mode="json")
    assert dumped == {**unit, "topics": ["water"], "first": "2027-01-11", "last": "2027-02-08"}


def test_one_thing_of_a_unit_can_be_changed(run: Run, own_records: Records) -> None:
    """What is not named stays, a budget with its currency; 'none' takes away; a new unit needs the rest."""
    unit = {
        "name": "Mills",
        "topics": ["mills"],
        "first": "2027-01-04",
        "last": "2027-02-01",
        "currency": "EUR",
        "budget": "80",
        "members": ["Bo"],
        "also_places": ["test-museum"],
    }
    own_records.save(StudyUnit.model_validate(unit), NOON, 0)

    def after(*changes: str) -> dict[str, object]:
        assert run("study", "add", "mills", *changes).status == 0
        kept = own_records.get(StudyUnit, "Mills")
        assert kept is not None
        return kept.value.model_dump(mode="json")

    assert after("--to", "2027-02-08") == {**unit, "last": "2027-02-08"}
    assert after("--topic", "water") == {**unit, "last": "2027-02-08", "topics": ["water"]}
    left = {**unit, "last": "2027-02-08", "topics": ["water"], "budget": None, "also_places": []}
    assert after("--budget", "none", "--also", "none") == {**left, "currency": "USD"}
    new = run("study", "add", "Stars", "--budget", "5")
    assert new.status == 2
    for option in ("--topic", "--from", "--to"):
        assert f"command line: {option}: " in new.err


def test_what_is_planned_is_not_fixed_otherwise(run: Run, own_records: Records) -> None:
    """A programme takes a planned outing as it is, so another place or day is refused and changes nothing."""
    own_records.save(make_place(id="mill", visit={"topics": ["mills"]}), NOON)
    run("study", "add", "Mills", "--topic", "mills", "--from", "2027-01-04", "--to", "2027-01-29")
    run("study", "programme", "--keep")
    (planned,) = own_records.all(PlannedOuting).values()
    day = str(planned.value.day)
    other = "2027-01-05" if day != "2027-01-05" else "2027-01-06"
    for words, option in (
        (("fix", "Mills", "--on", other), "--on"),
        (("fix", "Mills", "--place", "test-museum"), "--place"),
        (("rule-out", "Mills", "mill"), "PLACE"),
        (("rule-out", "Mills", "mill", "--on", day), "PLACE"),
    ):
        refused = run("study", *words)
        assert refused.status == 2
        assert f"command line: {option}: " in refused.err
    assert own_records.get(ProgrammeWishes) is None
    assert run("study", "fix", "Mills", "--place", "mill", "--on", day).status == 0
    assert run("study", "rule-out", "Mills", "mill", "--on", other).status == 0


def test_faults_are_told_by_the_options(run: Run) -> None:
    """No path of a form is told, but the word of the command line where the fault was typed."""
    unit = run("study", "add", "Mills", "--topic", "", "--from", "2027-02-01", "--to", "2027-01-01", "--demo")
    assert unit.status == 2
    assert "command line: --topic: must not be empty" in unit.err
    week = run("busy", "block", "x" * 81, "16:00", "25:00", "Tuesday", "--demo")
    assert week.status == 2
    for option in ("NAME", "END", "DAY"):
        assert f"command line: {option}: " in week.err
    assert "weekly" not in week.err
    assert "command line: TIME: " in run("busy", "late", "25:00", "--demo").err
    work = run("busy", "work", "Nobody", "08:00", "noon", "Mo", "--demo")
    assert "command line: MEMBER: " in work.err
    assert "command line: END: " in work.err


def test_units_and_the_programme_are_told_in_json(run: Run) -> None:
    """Programs get each unit with its places, and the programme that the words tell."""
    listed = json.loads(run("study", "list", "--demo", "--json").out)
    jsonschema.validate(listed, json.loads(run("schema", "study-list").out))
    water = next(one for one in listed["units"] if one["unit"]["name"] == "Stone and water")
    assert water["places"]
    assert {one["on_cards"] for one in water["close"]} == {"limestone and caves"}
    planned = json.loads(run("study", "programme", "--demo", "--json").out)
    jsonschema.validate(planned, json.loads(run("schema", "study-programme").out))
    assert [one["unit"] for one in planned["outings"]] == [one["unit"]["name"] for one in listed["units"]]
    told = sum(Decimal(one["cost"]["likely"]) for one in planned["outings"])
    assert Decimal(planned["total"]["likely"]) == told
    assert (planned["data"], planned["unknown"]) == ("demo", False)


def test_the_answer_in_json_says_that_the_household_is_of_a_file(run: Run, files: Files) -> None:
    """With a household file the units on record are told, for the family in the file."""
    for task in ("list", "programme", "limits"):
        told = run("study", task, "--household", files.household, "--demo", "--json")
        assert told.err == ""
        answer = json.loads(told.out)
        jsonschema.validate(answer, json.loads(run("schema", f"study-{task}").out))
        assert answer["data"] == "files"


def test_without_a_programme_the_answer_in_json_is_no(run: Run, own_records: Records) -> None:
    """Status 1, the unit and its reasons."""
    dates = ("--from", "2027-01-04", "--to", "2027-02-01")
    assert run("study", "add", "Stars", "--topic", "stars", *dates).status == 0
    said = run("study", "programme", "--json")
    assert said.status == 1
    answer = json.loads(said.out)
    assert answer["without"] == [{"unit": "Stars", "reasons": ["no place card names one of its topics"]}]
    assert own_records.get(StudyUnit, "Stars") is not None


def test_a_unit_is_removed_with_what_was_settled_for_it(run: Run, own_records: Records) -> None:
    """By its name in any case of letters; a name that is none is told, with those that are."""
    dates = ("--from", "2027-01-04", "--to", "2027-02-01")
    assert run("study", "add", "Mills", "--topic", "mills", *dates).status == 0
    wishes = ProgrammeWishes(currency="USD", without=("Mills",)).settling("Mills", "test-museum", None)
    own_records.save(wishes.ruling_out("Mills", "elsewhere"), NOON)
    unknown = run("study", "remove", "Hills")
    assert unknown.status == 2
    assert "Mills" in unknown.err
    assert run("study", "remove", "mills").status == 0
    assert own_records.get(StudyUnit, "Mills") is None
    left = own_records.get(ProgrammeWishes)
    assert left is not None
    assert left.value == ProgrammeWishes(currency="USD")


def test_what_the_term_keeps_to_is_changed_and_told(run: Run, own_records: Records) -> None:
    """What is named changes, the rest stays; 'none' takes a limit away; faults are told by their options."""
    dates = ("--from", "2027-01-04", "--to", "2027-02-01")
    assert run("study", "add", "Mills", "--topic", "mills", *dates).status == 0
    words = ("--budget", "120.50", "--careful", "--two-a-week", "--least", "money", "--from", "2027-01-11")
    told = run("study", "limits", *words)
    assert (told.status, told.err) == (0, "")
    assert "At most $120.50 in all, counted at the high end of every range." in told.out
    assert "Two outings may lie in one week." in told.out
    assert run("study", "limits", "--no-careful", "--without", "mills", "--place-twice").status == 0
    kept = own_records.get(ProgrammeWishes)
    assert kept is not None
    assert kept.value.model_dump(mode="json", exclude_defaults=True) == {
        "currency": "USD",
        "budget": "120.50",
        "first": "2027-01-11",
        "several_a_week": True,
        "same_place_again": True,
        "weigh": "money",
        "without": ["Mills"],
    }
    wrong = run("study", "limits", "--budget", "a lot", "--to", "soon")
    assert wrong.status == 2
    assert "command line: --budget: " in wrong.err
    assert "command line: --to: " in wrong.err
    assert run("study", "limits", "--budget", "none", "--from", "none", "--without", "none").status == 0
    answer = json.loads(run("study", "limits", "--json").out)
    jsonschema.validate(answer, json.loads(run("schema", "study-limits").out))
    assert (answer["wishes"]["budget"], answer["wishes"]["first"], answer["wishes"]["without"]) == (
        None,
        None,
        [],
    )


def test_a_units_outing_is_fixed_ruled_out_and_freed(run: Run) -> None:
    """The programme goes where it was fixed, not where it was ruled out, and as before once it is free."""

    def chosen() -> tuple[str, str]:
        planned = json.loads(run("study", "programme", "--demo", "--json").out)
        return next((one["place"], one["day"]) for one in planned["outings"] if one["unit"] == unit)

    unit = "Stone and water"
    place, day = chosen()
    assert run("study", "rule-out", unit, place, "--on", day, "--demo").status == 0
    assert chosen() != (place, day)
    fixed = run("study", "fix", unit.upper(), "--place", place, "--on", day, "--demo")
    assert fixed.status == 0
    assert f"'{unit}' is fixed to " in fixed.out
    assert run("study", "free", unit, "--demo").status == 0
    assert chosen() == (place, day)
    assert run("study", "rule-out", unit, place, "--demo").status == 0
    assert f"'{unit}' does not go to " in run("study", "limits", "--demo").out
    assert not any(place == one for one in chosen())
    assert run("study", "free", unit, "--demo").status == 0
    nothing = run("study", "fix", unit, "--demo")
    assert nothing.status == 2
    assert "--place" in nothing.err
    wrong = run("study", "fix", unit, "--place", "nowhere", "--on", "2031-01-01", "--demo")
    assert wrong.status == 2
    assert "command line: --place: " in wrong.err
    assert "can have its outing on Mon, Feb 8, 2027 to Sun, Mar 21, 2027 (found: 2031-01-01)" in wrong.err
    assert "Stone and water" in run("study", "fix", "Stars", "--on", day, "--demo").err


def test_places_that_fit_all_the_same_are_named(run: Run, own_records: Records) -> None:
    """A place whose card has none of the topics counts once it is named."""
    words = ("study", "add", "Stars", "--topic", "stars", "--from", "2027-01-04", "--to", "2027-02-01")
    assert run(*words, "--also", "Nowhere").status == 2
    assert run(*words, "--also", "test-museum").status == 0
    kept = own_records.get(StudyUnit, "Stars")
    assert kept is not None
    assert kept.value.also_places == ("test-museum",)
    assert "you named it" in run("study", "list").out


def test_what_keeps_the_family_busy_is_told_in_json_and_removed(
    run: Run, own_records: Records, tmp_path: Path
) -> None:
    """A block, working hours, a calendar and the late evenings go by their names, the rest stays."""
    assert run("busy", "block", "Piano", "16:00", "17:00", "Tu").status == 0
    assert run("busy", "work", "Bo", "08:00", "16:00", "Mo", "We").status == 0
    assert run("busy", "late", "21:30").status == 0
    file = tmp_path / "ours.ics"
    entry = "BEGIN:VEVENT\r\nUID:1\r\nDTSTART:20261210T150000Z\r\nDURATION:PT1H\r\nEND:VEVENT\r\n"
    file.write_text(f"BEGIN:VCALENDAR\r\nX-WR-CALNAME:Ours\r\n{entry}END:VCALENDAR\r\n", encoding="utf-8")
    assert run("busy", "file", file).status == 0
    told = json.loads(run("busy", "list", "--json").out)
    jsonschema.validate(told, json.loads(run("schema", "busy-list").out))
    assert [(one["name"], one["source"], one["busy"]) for one in told["calendars"]] == [
        ("Ours", "ours.ics", 1)
    ]
    assert [one["name"] for one in told["own_week"]["weekly"]] == ["Piano"]
    nobody = run("busy", "remove", "Flute")
    assert nobody.status == 2
    assert all(name in nobody.err for name in ("Piano", "Bo", "Ours"))
    for name in ("piano", "BO", "Ours"):
        assert run("busy", "remove", name).status == 0
    assert run("busy", "late", "never").status == 0
    kept = own_records.get(FamilyDays)
    assert kept is not None
    assert kept.value == FamilyDays()
    assert not own_records.all(FamilyCalendar)


def test_the_own_week_is_told_and_changed(run: Run, own_records: Records, tmp_path: Path) -> None:
    """A block, working hours, a late evening and a file go on record; the same file again replaces itself."""
    assert run("busy", "block", "Piano", "16:00", "17:00", "Tu", "--from", "2027-01-05").status == 0
    assert run("busy", "work", "Bo", "08:00", "16:00", "Mo", "We", "--without").status == 0
    assert run("busy", "late", "21:30", "--not-before", "10:00").status == 0
    kept = own_records.get(FamilyDays)
    assert kept is not None
    assert [block.name for block in kept.value.weekly] == ["Piano"]
    assert kept.value.work[0].then == "without"
    assert kept.value.work[0].public_holidays_off
    assert run("busy", "work", "Zoe", "08:00", "16:00", "Mo").status == 2
    wrong = run("busy", "block", "Piano", "16:00", "15:00", "Tu")
    assert wrong.status == 2
    assert "later on the same day" in wrong.err
    file = tmp_path / "ours.ics"
    entry = "BEGIN:VEVENT\r\nUID:1\r\nDTSTART:20261210T150000Z\r\nDURATION:PT1H\r\nEND:VEVENT\r\n"
    file.write_text(f"BEGIN:VCALENDAR\r\n{entry}END:VCALENDAR\r\n", encoding="utf-8")
    assert "is added: 1 busy time." in run("busy", "file", file).out
    assert "is replaced: 1 busy time." in run("busy", "file", file).out
    listed = run("busy", "list")
    assert "Piano: Tue, 16:00 to 17:00" in listed.out
    assert "nobody leaves before 10:00" in listed.out


def test_a_block_of_some_weeks_and_hours_on_holidays(run: Run, own_records: Records) -> None:
    """Every other week, but not in breaks; hours on holidays too; faults are told by the options."""
    breaks = ("--not-during", "2026-12-21", "2027-01-03", "--not-during", "2027-03-15", "2027-03-19")
    dates = ("--from", "2026-12-01", "--every-weeks", "2")
    block = ("busy", "block", "Choir", "16:00", "17:00", "Tu")
    assert run(*block, *dates, *breaks).status == 0
    assert run("busy", "work", "Bo", "08:00", "16:00", "Mo", "--on-holidays").status == 0
    kept = own_records.get(FamilyDays)
    assert kept is not None
    (choir,) = kept.value.weekly
    begins = [str(span.first) for span in choir.not_during]
    assert (choir.every_weeks, begins) == (2, ["2026-12-21", "2027-03-15"])
    assert not kept.value.work[0].public_holidays_off
    wrong = run(
        *block, "--from", "2026-12-01", "--every-weeks", "13", "--not-during", "2027-01-03", "2026-12-21"
    )
    assert "command line: --every-weeks: " in wrong.err
    assert "command line: --not-during: the last day lies before the first" in wrong.err


def test_entries_of_a_family_calendar_may_stay_out(run: Run, own_records: Records, tmp_path: Path) -> None:
    """By their titles; so does an invitation that was declined by the address that is told."""
    file = tmp_path / "ours.ics"
    days = {"Birthday": "10", "Dentist": "11", "Gala": "12"}
    guests = "ATTENDEE;PARTSTAT=DECLINED:mailto:us@example.org\r\nATTENDEE:mailto:them@example.org\r\n"
    invited = f"ORGANIZER:mailto:host@example.org\r\n{guests}"
    events = "".join(
        f"BEGIN:VEVENT\r\nUID:{title}\r\nSUMMARY:{title}\r\n"
        f"DTSTART:202612{day}T150000Z\r\nDURATION:PT1H\r\n"
        f"{invited if title == 'Gala' else ''}END:VEVENT\r\n"
        for title, day in days.items()
    )
    file.write_text(f"BEGIN:VCALENDAR\r\n{events}END:VCALENDAR\r\n", encoding="utf-8")
    words = ("busy", "file", file, "--name", "All of us", "--keep-names")
    assert run(*words, "--not-busy", "birthday", "--addresses", "us@example.org").status == 0
    kept = own_records.get(FamilyCalendar, "All of us")
    assert kept is not None
    assert [busy.name for busy in kept.value.busy] == ["Dentist"]
    wrong = run(*words, "--not-busy", "Birthdays")
    assert "command line: --not-busy: no entry is called that (found: Birthdays)" in wrong.err


def test_a_family_calendar_with_nothing_in_it_is_not_kept(
    run: Run, own_records: Records, tmp_path: Path
) -> None:
    """It would say that the family is always free; one that was read before may have become empty."""
    file = tmp_path / "ours.ics"
    entry = "BEGIN:VEVENT\r\nUID:1\r\nDTSTART:{}T150000Z\r\nDURATION:PT1H\r\nEND:VEVENT\r\n"
    for body, reason in (
        ("", "has no entries"),
        (entry.format("20190110"), "its entries begin from 2019-01-10"),
    ):
        file.write_text(f"BEGIN:VCALENDAR\r\n{body}END:VCALENDAR\r\n", encoding="utf-8")
        said = run("busy", "file", file)
        assert said.status == 2
        assert reason in said.err
        assert not own_records.all(FamilyCalendar)
    for day, busy in (("20261210", 1), ("20190110", 0)):
        file.write_text(f"BEGIN:VCALENDAR\r\n{entry.format(day)}END:VCALENDAR\r\n", encoding="utf-8")
        assert run("busy", "file", file).status == 0
        kept = own_records.get(FamilyCalendar, "ours")
        assert kept is not None
        assert len(kept.value.busy) == busy


def test_two_files_without_a_name_are_two_calendars(run: Run, own_records: Records, tmp_path: Path) -> None:
    """Each is called after its file, so that the second does not take the place of the first."""
    entry = "BEGIN:VEVENT\r\nUID:1\r\nDTSTART:20261210T150000Z\r\nDURATION:PT1H\r\nEND:VEVENT\r\n"
    for name in ("hers", "his"):
        file = tmp_path / f"{name}.ics"
        file.write_text(f"BEGIN:VCALENDAR\r\n{entry}END:VCALENDAR\r\n", encoding="utf-8")
        assert f"{name} is added: 1 busy time." in run("busy", "file", file).out
    assert set(own_records.all(FamilyCalendar)) == {"hers", "his"}
