"""The language of the answers is the household's."""

import json

import pytest

from tests.builders import make_household
from tests.commands.conftest import Files, Run
from tripplan.files.cards.household_file import write_household


@pytest.mark.parametrize(
    ("language", "date", "crowds", "money"),
    [("country", "Tue, Dec 8, 2026", "quiet", ".00"), ("de", "Di., 8. Dez. 2026", "ruhig", ",00 $")],
)
def test_a_household_is_answered_in_its_language(
    run: Run, files: Files, language: str, date: str, crowds: str, money: str
) -> None:
    """Dates, amounts and what is said of the crowds; the codes in JSON are the same in any language."""
    files.household.write_text(write_household(make_household(language=language)), encoding="utf-8")
    files.add()
    asked = ("day", "test-museum", "2026-12-08", *files.options)
    said = run(*asked).out.replace("\xa0", " ")
    assert date in said
    assert crowds in said
    assert money in said
    told = json.loads(run(*asked, "--json").out)["outing"]
    assert told["hours"]["reason"]["code"] == "hours-open"
    assert told["crowd"]["fullness"] == "plenty of room"
    assert "cautions-tired-driver" in {caution["code"] for caution in told["cautions"]}


def test_the_next_answer_is_in_the_next_familys_language(run: Run, files: Files) -> None:
    """What one household chose ends with its answer."""
    files.add()
    asked = ("day", "test-museum", "2026-12-08", *files.options)
    files.household.write_text(write_household(make_household(language="de")), encoding="utf-8")
    assert "Tue, Dec 8" not in run(*asked).out
    files.household.write_text(write_household(make_household()), encoding="utf-8")
    assert "Tue, Dec 8, 2026" in run(*asked).out
