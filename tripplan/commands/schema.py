"""`tripplan schema`: the JSON schemas of the files a parent writes and of the answers in JSON."""

from argparse import Namespace
from collections.abc import Callable, Mapping
from importlib import import_module
from typing import Any

from tripplan.commands.console import Console

# By name, so that a schema loads only what it describes.
_WRITTEN = {
    "place": "cards.place_card.place_card_schema",
    "household": "cards.household_file.household_schema",
    "logbook": "cards.logbook_file.logbook_entry_schema",
}
ANSWERS = {
    "compare": "days.CompareAnswer",
    "days": "days.DaysAnswer",
    "day": "day.DayAnswer",
    "passes": "passes.PassesAnswer",
    "together": "together.TogetherAnswer",
    "check": "files.CheckAnswer",
    "import": "files.ImportAnswer",
    "logbook-list": "logbook.LogbookListAnswer",
    "logbook-year": "logbook.LogbookYearAnswer",
    "logbook-record": "logbook.LogbookRecordAnswer",
    "logbook-learned": "logbook.LogbookLearnedAnswer",
    "study-list": "study.StudyListAnswer",
    "study-programme": "study.StudyProgrammeAnswer",
    "study-limits": "study.StudyLimitsAnswer",
    "busy-list": "family.BusyListAnswer",
    "holidays-list": "family.HolidaysListAnswer",
    "schools-list": "family.SchoolsListAnswer",
}


def run(options: Namespace, console: Console, environment: Mapping[str, str]) -> int:  # noqa: ARG001
    """Print one schema (draft 2020-12)."""
    if options.form in _WRITTEN:
        console.json(_named("tripplan.files", _WRITTEN[options.form])())
    else:
        answer_schema = _named("tripplan.commands.answers", "json_schema.answer_schema")
        console.json(answer_schema(_named("tripplan.commands.answers", ANSWERS[options.form])))
    return 0


def _named(package: str, path: str) -> Callable[..., dict[str, Any]]:
    module, _, name = path.rpartition(".")
    found: Callable[..., dict[str, Any]] = getattr(import_module(f"{package}.{module}"), name)
    return found
