"""The days as a calendar of months: each says in a word how good it is, and is shaded by it."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import groupby

import numpy as np

from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.sweep.dates import Numbers
from tripplan.planning.sweep.table import DayTable
from tripplan.planning.sweep.wishes import Mask
from tripplan.screens.look.cards import text

GRADES = ("days-best", "days-good", "days-fair", "days-poor")
"""How good a day is: the one best of all, then by thirds of all days that can be done."""

SHEET = """
.tp-months { display: grid; grid-template-columns: repeat(auto-fill, minmax(17rem, 1fr));
  gap: 1rem; align-items: start; }
.tp-month { border-collapse: separate; border-spacing: 2px; width: 100%; table-layout: fixed; }
.tp-month caption { text-align: left; font-weight: 650; padding: .2rem 0; }
.tp-month :is(th, td) { text-align: center; padding: 0; font-size: var(--small); font-weight: 400;
  border: none; }
.tp-month td > * { display: block; border-radius: .5rem; padding: .2rem 0; line-height: 1.15;
  min-height: 2.6rem; }
.tp-month a { color: inherit !important; text-decoration: none; }
.tp-month a:hover { outline: 2px solid var(--accent); }
.tp-month small { display: block; font-size: .75rem; }
.tp-month .never { color: var(--faint); position: relative; }
.tp-month .unseen { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); }
.tp-month .g0 { background: var(--part-0); color: var(--paper) !important; font-weight: 650; }
.tp-month .g1 { background: light-dark(#9fcdc6, #2f6b63); }
.tp-month .g2 { background: light-dark(#d3e8e4, #27453f); }
.tp-month .g3 { background: var(--soft); }
"""


@dataclass(frozen=True)
class DayInGrid:
    """One day of the grid.

    Attributes:
        day: the date.
        grade: an index into `GRADES`; None where nothing can be done.
        place: the id of its best place.
        said: what pressing it is about, in words.
        in_term: whether most schools near that place are in session.
    """

    day: date
    grade: int | None = None
    place: str = ""
    said: str = ""
    in_term: bool = False


def graded(table: DayTable, wanted: Mask) -> list[DayInGrid]:
    """Every day of a table with its best place and how good it is among all of them.

    Args:
        table: the days.
        wanted: which of its entries count.
    """
    felt = np.where(wanted, table.felt, np.iinfo(np.int64).max)
    rows = felt.argmin(axis=0)
    columns = np.arange(felt.shape[1])
    can_go, least = wanted[rows, columns], felt[rows, columns]
    going: Numbers = least[can_go]
    if not going.size:
        return [DayInGrid(day) for day in table.days]
    # Limits of the thirds; equal days have equal words.
    limits = [int(going.min()), *(float(np.quantile(going, share)) for share in (1 / 3, 2 / 3))]
    found = []
    for column, day in enumerate(table.days):
        if not can_go[column]:
            found.append(DayInGrid(day))
            continue
        place = table.places[rows[column]]
        grade = sum(bool(least[column] > limit) for limit in limits)
        said = say(
            "days-told",
            day=day,
            grade=say(GRADES[grade]),
            place=place.name,
            total=wording.whole_money(table.money(table.likely[rows[column], column])),
        )
        found.append(
            DayInGrid(
                day,
                grade,
                str(place.id),
                said,
                bool(table.in_term[rows[column], column]),
            )
        )
    return found


def month_grid(days: list[DayInGrid]) -> str:
    """The days as HTML tables, one a month.

    Args:
        days: in order, each following the one before.
    """
    months = groupby(days, key=lambda one: (one.day.year, one.day.month))
    tables = "".join(_month(list(of_month)) for _, of_month in months)
    return f'<div class="tp-months">{tables}</div>'


def _month(days: list[DayInGrid]) -> str:
    names = (text(wording.short_weekday(day)) for day in wording.week())
    head = "".join(f'<th scope="col">{name}</th>' for name in names)
    weeks = "".join(f"<tr>{''.join(map(_cell, week))}</tr>" for week in _weeks(days))
    name = wording.month_and_year(days[0].day)
    return f'<table class="tp-month"><caption>{name}</caption><tr>{head}</tr>{weeks}</table>'


def _weeks(days: list[DayInGrid]) -> Iterator[list[DayInGrid | None]]:
    """The days in rows of seven, with nothing where the month does not reach."""
    by_day = {one.day: one for one in days}
    first = days[0].day
    first -= timedelta(days=(first.weekday() - wording.week()[0]) % 7)
    while first <= days[-1].day:
        yield [by_day.get(first + timedelta(days=n)) for n in range(7)]
        first += timedelta(days=7)


def _cell(one: DayInGrid | None) -> str:
    if one is None:
        return "<td></td>"
    number = f"{one.day.day}{' ·' if one.in_term else ''}"
    if one.grade is None:
        said = f'<small aria-hidden="true">-</small><span class="unseen">{text(say("days-never"))}</span>'
        return f'<td><span class="never">{number}{said}</span></td>'
    address = f"day_plan?place={text(one.place)}&amp;day={one.day.isoformat()}"
    return (
        f'<td><a class="g{one.grade}" href="{address}" title="{text(one.said)}">'
        f"{number}<small>{text(say(GRADES[one.grade]))}</small></a></td>"
    )
