"""`tripplan holidays`: the coming year's public holidays, and the local days that the parent adds."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from typing import Any

from tripplan.commands.answers.family import HolidaysListAnswer
from tripplan.commands.input.on_record import OnRecord, needed, opened
from tripplan.commands.input.question import place_called
from tripplan.commands.input.reading import as_asked, where_in
from tripplan.commands.input.settings import ASKED, settings_from
from tripplan.commands.options.shared import TaskOptions
from tripplan.commands.output.console import Console
from tripplan.documents.calendars.local_days import LocalDay, LocalDays
from tripplan.errors import Finding, UnknownName
from tripplan.files.toml.toml_text import write_toml
from tripplan.files.toml.written import read_form
from tripplan.language import wording
from tripplan.planning.family.family import Family
from tripplan.planning.holidays.coming_holidays import (
    ComingHoliday,
    coming_holidays,
    holiday_source_sentences,
)
from tripplan.planning.holidays.local_days import local_day_sentence
from tripplan.planning.outing.sentences import span_sentence
from tripplan.services import family_in

_OPTIONS = {
    "name": "NAME",
    "first": "DATE",
    "last": "LAST",
    "place": "--place",
    "town": "--town",
    "reach_km": "--within",
    "crowd_factor": "--crowd",
}
_ANYWHERE = "anywhere"
"""Stands for a place or town that was not found, so that the other faults are told along with that one."""


@dataclass(frozen=True)
class _Asked:
    """What every task has at hand."""

    options: TaskOptions
    console: Console
    on_record: OnRecord
    family: Family

    @property
    def today(self) -> date:
        """The date at home."""
        return self.on_record.services.today(self.family)

    @property
    def local_days(self) -> tuple[LocalDay, ...]:
        """Those on record."""
        kept = self.on_record.records.get(LocalDays)
        return kept.value.days if kept else ()

    def others(self, name: str) -> tuple[LocalDay, ...]:
        """Those on record that are called otherwise."""
        return tuple(one for one in self.local_days if one.name.casefold() != name.strip().casefold())

    def save(self, days: tuple[LocalDay, ...], said: str) -> int:
        """Put these on record in the place of all, and say so."""
        records, now = self.on_record.records, self.on_record.services.clock()
        kept = records.get(LocalDays)
        records.save(LocalDays(days=days), now, kept.revision if kept else 0)
        self.console.line(said)
        return 0


def run(task: str, options: TaskOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Carry out one of the tasks."""
    on_record = opened(options, settings_from(options, environment))
    family = needed(family_in(on_record.records))
    return _TASKS[task](_Asked(options, console, on_record, family))


def _list(asked: _Asked) -> int:
    family, console = asked.family, asked.console
    coming = coming_holidays(family.household.home, (place.where for place in family.places), asked.today)
    sources = holiday_source_sentences(family.household.home, (place.where for place in family.places))
    if asked.options.json:
        answer = HolidaysListAnswer(
            data=asked.on_record.data,
            today=asked.today,
            holidays=tuple(coming),
            local_days=asked.local_days,
            sources=sources,
        )
        console.json(answer)
        return 0
    if coming:
        console.table(("day", "holiday", "where", "days off in a row"), [_row(one) for one in coming])
    else:
        console.line("No public holidays are on record for these countries.")
    for sentence in sources:
        console.line()
        console.line(sentence)
    names = {place.id: place.name for place in family.places}
    units = family.household.units
    console.listed("Added by you:", [local_day_sentence(one, names, units) for one in asked.local_days])
    return 0


def _row(one: ComingHoliday) -> tuple[str, ...]:
    return (
        wording.day(one.day),
        one.name,
        ", ".join(one.where),
        span_sentence(one.row) if one.row else "",
    )


def _add(asked: _Asked) -> int:
    options, findings = asked.options, list[Finding]()
    values: dict[str, Any] = {
        "name": options.name,
        "first": options.first,
        "last": options.last or options.first,
        "every_year": options.every_year,
        "day_off": options.day_off,
        "hours_as_on_holidays": options.holiday_hours,
        "reach_km": options.within,
        "crowd_factor": options.crowd,
    }
    if options.place is not None:
        place = place_called(options.place, asked.family.places, findings, "--place")
        values["place"] = place.id if place else _ANYWHERE
    else:
        town = where_in(options.town, "--town", asked.family.household.home, findings)
        if town is None:
            values["place"] = _ANYWHERE
        else:
            values["town"] = town.model_dump(exclude_none=True)
    given = {name: value for name, value in values.items() if value is not None}
    local = as_asked(read_form(write_toml(given), ASKED, LocalDay), _OPTIONS, findings)
    others = asked.others(local.name)
    done = "added" if len(others) == len(asked.local_days) else "changed"
    return asked.save((*others, local), f"{local.name} is {done}.")


def _remove(asked: _Asked) -> int:
    name = asked.options.name
    others = asked.others(name)
    if len(others) == len(asked.local_days):
        raise UnknownName("local day", name, tuple(one.name for one in asked.local_days))
    return asked.save(others, f"{name.strip()} is removed.")


_TASKS: Mapping[str, Callable[[_Asked], int]] = {"list": _list, "add": _add, "remove": _remove}
