"""`tripplan schema`: the JSON schemas of the files a parent writes and of the answers in JSON."""

from argparse import Namespace
from collections.abc import Callable, Mapping
from typing import Any

from tripplan.commands.answers.busy import BusyListAnswer
from tripplan.commands.answers.compare import CompareAnswer
from tripplan.commands.answers.day import DayAnswer
from tripplan.commands.answers.days import DaysAnswer
from tripplan.commands.answers.files import CheckAnswer, ImportAnswer
from tripplan.commands.answers.holidays import HolidaysListAnswer
from tripplan.commands.answers.logbook import (
    LogbookLearnedAnswer,
    LogbookListAnswer,
    LogbookRecordAnswer,
    LogbookYearAnswer,
)
from tripplan.commands.answers.parts import Told
from tripplan.commands.answers.passes import PassesAnswer
from tripplan.commands.answers.schools import SchoolsListAnswer
from tripplan.commands.answers.study import StudyLimitsAnswer, StudyListAnswer, StudyProgrammeAnswer
from tripplan.commands.answers.together import TogetherAnswer
from tripplan.commands.console import Console
from tripplan.files.household_file import household_schema
from tripplan.files.logbook_file import logbook_entry_schema
from tripplan.files.place_card import place_card_schema

_WRITTEN: Mapping[str, Callable[[], dict[str, Any]]] = {
    "place": place_card_schema,
    "household": household_schema,
    "logbook": logbook_entry_schema,
}
_ANSWERS: Mapping[str, type[Told]] = {
    "compare": CompareAnswer,
    "days": DaysAnswer,
    "day": DayAnswer,
    "passes": PassesAnswer,
    "together": TogetherAnswer,
    "check": CheckAnswer,
    "import": ImportAnswer,
    "logbook-list": LogbookListAnswer,
    "logbook-year": LogbookYearAnswer,
    "logbook-record": LogbookRecordAnswer,
    "logbook-learned": LogbookLearnedAnswer,
    "study-list": StudyListAnswer,
    "study-programme": StudyProgrammeAnswer,
    "study-limits": StudyLimitsAnswer,
    "busy-list": BusyListAnswer,
    "holidays-list": HolidaysListAnswer,
    "schools-list": SchoolsListAnswer,
}


def run(options: Namespace, console: Console, environment: Mapping[str, str]) -> int:  # noqa: ARG001
    """Print one schema (draft 2020-12)."""
    if options.form in _WRITTEN:
        console.json(_WRITTEN[options.form]())
    else:
        console.json(answer_schema(_ANSWERS[options.form]))
    return 0


def answer_schema(answer: type[Told]) -> dict[str, Any]:
    """The JSON schema of an answer, with each key's description."""
    schema = answer.model_json_schema(mode="serialization")
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema}
