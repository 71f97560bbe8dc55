"""`tripplan schema`: the JSON schemas of the files a parent writes and of the answers in JSON."""

from collections.abc import Callable, Mapping
from importlib import import_module
from typing import Any

from tripplan.commands.options.files import SchemaOptions
from tripplan.commands.output.console import Console

_ANSWERS_FOLDER = "tripplan.commands.answers"
# By name, so that a schema loads only what it describes.
_WRITTEN = {
    "place": "tripplan.files.cards.place_card.place_card_schema",
    "household": "tripplan.files.cards.household_file.household_schema",
    "logbook": "tripplan.files.cards.logbook_file.logbook_entry_schema",
}
ANSWERS = {
    "compare": "days.CompareAnswer",
    "days": "days.DaysAnswer",
    "day": "day.DayAnswer",
    "passes": "passes.PassesAnswer",
    "together": "together.TogetherAnswer",
    "check": "files.CheckAnswer",
    "read": "reading.ReadAnswer",
    "nearby": "nearby.NearbyAnswer",
    "idea-list": "ideas.IdeaListAnswer",
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


def run(options: SchemaOptions, console: Console, environment: Mapping[str, str]) -> int:  # noqa: ARG001
    """Print one schema (draft 2020-12)."""
    if options.form in _WRITTEN:
        console.json(_named(_WRITTEN[options.form])())
    else:
        answer_schema = _named(f"{_ANSWERS_FOLDER}.json_schema.answer_schema")
        console.json(answer_schema(_named(f"{_ANSWERS_FOLDER}.{ANSWERS[options.form]}")))
    return 0


def _named(path: str) -> Callable[..., dict[str, Any]]:
    module, _, name = path.rpartition(".")
    found: Callable[..., dict[str, Any]] = getattr(import_module(module), name)
    return found
