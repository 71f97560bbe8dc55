"""`tripplan idea`: the wish list."""

import json

from tests.commands.conftest import Run, assert_fits_schema

TODAY = ("--demo", "--today", "2026-11-25")


def test_an_idea_is_added_told_compared_and_removed(run: Run) -> None:
    """From a line to a comparison that marks what is guessed, and off the list again."""
    added = run("idea", "add", "Fish ladder, about $20 for us, an hour away", *TODAY, "--topics", "animals")
    assert added.status == 0, added.err
    assert "a guess of yours" in added.out
    told = run("idea", "list", *TODAY)
    assert "Fish ladder" in told.out
    compared = run("compare", "fish-ladder", "ledgewing", *TODAY)
    assert compared.status == 0, compared.err
    assert "Fish ladder (idea)" in compared.out
    assert "only a guess" in compared.out
    assert "to know more, ask:" in compared.out
    day = run("day", "fish-ladder", "2026-12-17", *TODAY)
    assert "Tickets: not known yet" in day.out
    removed = run("idea", "remove", "fish ladder", *TODAY)
    assert removed.status == 0, removed.err
    assert "There are no ideas yet." in run("idea", "list", *TODAY).out


def test_the_answer_in_json_says_what_is_not_known(run: Run) -> None:
    """Null stands for what nobody knows; what is taken for it is told beside it."""
    run("idea", "add", "Old mill", *TODAY, "--hours", "Sat-Sun 10-4", "--where", "Dubuque, IA")
    answer = json.loads(run("idea", "list", *TODAY, "--json").out)
    assert_fits_schema(answer, "idea-list")
    (idea,) = answer["ideas"]
    assert (idea["money"], idea["drive_minutes"]) == (None, None)
    assert idea["hours"] == "Sa-Su 10:00-16:00"
    assert idea["where"]["town"] == "Dubuque"
    assert idea["to_ask"]


def test_bad_ideas_are_told_and_change_nothing(run: Run) -> None:
    """A line without a name, and a town that nobody knows."""
    assert run("idea", "add", " ", *TODAY).status == 2
    refused = run("idea", "add", "Mill", *TODAY, "--where", "Nosuchtown, IA")
    assert refused.status == 2
    assert "--where" in refused.err
    assert json.loads(run("idea", "list", *TODAY, "--json").out)["ideas"] == []


def test_an_unknown_idea_is_not_removed(run: Run) -> None:
    """Those on record are named."""
    run("idea", "add", "Old mill", *TODAY)
    refused = run("idea", "remove", "New mill", *TODAY)
    assert refused.status != 0
    assert "Old mill" in refused.err


def test_an_idea_cannot_be_gone_to_together(run: Run) -> None:
    """Shares of an unknown price would be guesses told as facts."""
    run("idea", "add", "Old mill", *TODAY)
    refused = run("together", "old-mill", "2026-12-12", *TODAY, "--group", "Marsh", "36, 8")
    assert "only an idea" in refused.out + refused.err
