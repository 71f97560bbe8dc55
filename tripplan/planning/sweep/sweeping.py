"""Every place on every day: equal days are answered once, and the answers spread over the calendar."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

import numpy as np

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.family.member import Member
from tripplan.documents.places.place import Place
from tripplan.planning.family.family import Family
from tripplan.planning.outing.place_facts import place_facts
from tripplan.planning.sweep.answer_cache import AnswerCache
from tripplan.planning.sweep.dates import DateRow
from tripplan.planning.sweep.gc_pause import gc_paused
from tripplan.planning.sweep.place_days import Columns, PlaceDays, fill
from tripplan.planning.sweep.table import COLUMNS, DayTable

TOGETHER = 250
"""The days of so many places are searched together, and progress is still told often enough [-]."""


@dataclass
class Progress:
    """How far a sweep has come.

    Attributes:
        done: places finished.
        of: places in all.
        table: the answers, once all are there.
    """

    done: int
    of: int
    table: DayTable | None = None


def sweep(
    family: Family, party: Sequence[Member], places: Sequence[Place], span: DateSpan, *, today: date
) -> DayTable:
    """Every place on every day of a span.

    Args:
        family: people, car, home, calendars.
        party: who goes.
        places: where to.
        span: when.
        today: for booking deadlines.

    Returns:
        The same figures as `plan_outing` gives for each place and day.
    """
    *_, last = sweeping(family, party, places, span, today=today)
    if last.table is None:
        raise AssertionError("a sweep ends with its table")
    return last.table


def sweeping(
    family: Family, party: Sequence[Member], places: Sequence[Place], span: DateSpan, *, today: date
) -> Iterator[Progress]:
    """As `sweep`, but tells how far it is, place by place; whoever asks no further stops it.

    Places that are searched together are told one right after the other.
    """
    row = DateRow(span.first, (span.last - span.first).days + 1, family, tuple(party))
    columns: Columns = {
        name: np.zeros((len(places), row.count), dtype=kind) for name, kind in COLUMNS.items()
    }
    known = AnswerCache()
    years = range(span.first.year, span.last.year + 1)
    for begin in range(0, len(places), TOGETHER):
        with gc_paused():
            every_fact = [place_facts(family, place, years) for place in places[begin : begin + TOGETHER]]
            together = [
                PlaceDays(number, family, row, facts, today=today, known=known)
                for number, facts in enumerate(every_fact, begin)
            ]
            for place_days in together:
                if place_days.visits is not None:
                    place_days.visits.ask()
            known.search()
            fill(columns, row, together)
        yield from (Progress(begin + done, len(places)) for done in range(1, len(together) + 1))
    table = DayTable(family, row.party, today, tuple(places), span.first, **columns)  # type: ignore[arg-type]
    yield Progress(len(places), len(places), table)
