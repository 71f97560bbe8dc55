"""The sweep says for every place and day what planning that day by itself says."""

import re
from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta

from hypothesis import HealthCheck, given, settings

from tests.builders import make_outing
from tests.planning.sweep.families import SPANS, TODAY, families
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.places.forecast import ForecastDay, PlaceForecast
from tripplan.planning.climate.stations import stations
from tripplan.planning.day import StepKind
from tripplan.planning.family.family import Family
from tripplan.planning.outing.outing import Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.planning.sweep.sweeping import sweep
from tripplan.planning.sweep.table import DayTable, Verdict


def _dark_minutes(outing: Outing) -> bool:
    return any(re.match(r"drive-(polar|before-sun|after-sun)", note.code) for note in outing.notes)


def _figures(outing: Outing) -> dict[str, object]:
    """What a day planned by itself says, by the columns of the table."""
    total, plan = outing.cost.total, outing.plan
    drives = [step for step in plan.steps if step.kind is StepKind.DRIVE]
    ways = [
        sum(
            (step.end - step.start).total_seconds() / 60
            for step in drives
            if step.label.values["there"] is there
        )
        for there in (True, False)
    ]
    return {
        "verdict": Verdict.CAN_GO,
        "low": total.low.minor,
        "likely": total.likely.minor,
        "high": total.high.minor,
        "at_least": bool(outing.cost.unknown),
        "felt": outing.generalized_cost.minor,
        "weather": outing.weather.weighs.minor if outing.weather else 0,
        "chance": outing.crowd.chance,
        "nap_kept": sum(nap.kept_minutes for nap in plan.naps),
        "nap_lost": sum(nap.lost_minutes for nap in plan.naps),
        "visit": plan.visit_minutes,
        "in_car": plan.car_minutes,
        "longest_drive": max(ways),
        "leave": plan.leave_home,
        "back": plan.home,
        "dark": _dark_minutes(outing),
    }


FIGURES = (
    "verdict",
    "low",
    "likely",
    "high",
    "at_least",
    "felt",
    "weather",
    "chance",
    "nap_kept",
    "nap_lost",
    "visit",
    "in_car",
    "longest_drive",
)
"""The columns that a day planned by itself says in the same form."""


def _swept(table: DayTable, row: int, column: int) -> dict[str, object]:
    return {name: getattr(table, name)[row, column] for name in FIGURES} | {
        "leave": table.at_home(column, table.leave_home[row, column]),
        "back": table.at_home(column, table.home[row, column]),
        "dark": bool(table.dark_there[row, column] + table.dark_back[row, column]),
    }


REASONS = {
    Verdict.OVER: r"outing-over",
    Verdict.OTHER_CURRENCY: r"outing-no-rate",
    Verdict.CLOSED: r"hours-(guess|closed|last|no-entry|unless).*",
    Verdict.HOURS_UNKNOWN: r"hours-(guess|ask)",
    Verdict.TOO_LATE_TO_BOOK: r"outing-book-ahead",
    Verdict.FAMILY_BUSY: r"plan-(no-room|limits-together)",
    Verdict.TOO_LITTLE_TIME: r"plan-.*",
    Verdict.TOO_COLD_OR_HOT: r"outing-barred",
    Verdict.NO_TICKETS: r"outing-not-admitted",
}
"""The codes of the reasons of a day planned by itself, by what the table says."""


def check(family: Family, span: DateSpan) -> int:
    """Compare every day; how many could be done."""
    table = sweep(family, family.party(), family.places, span, today=TODAY)
    for row, place in enumerate(family.places):
        facts = place_facts(family, place, range(span.first.year, span.last.year + 1))
        for column, day in enumerate(table.days):
            single = plan_outing(family, family.party(), facts, day, today=TODAY)
            if isinstance(single, Outing):
                assert _swept(table, row, column) == _figures(single), (place.id, day)
            else:
                verdict = Verdict(table.verdict[row, column])
                assert verdict is not Verdict.CAN_GO, (place.id, day, single.reasons)
                codes = [reason.code for reason in single.reasons]
                assert any(re.fullmatch(REASONS[verdict], code) for code in codes), (verdict, codes)
    return int(table.can_go.sum())


@settings(max_examples=20, suppress_health_check=list(HealthCheck))
@given(families(), SPANS)
def test_a_sweep_says_what_every_day_says_by_itself(family: Family, span: DateSpan) -> None:
    """Whatever tells one day from another (hours, ages, rush, engagements, prices), no figure differs.

    One day has got to eleven o'clock, on another something is planned for some of the party, and of two the
    weather is forecast.
    """
    now = datetime.combine(span.first + timedelta(days=3), time(17), UTC)
    planned = make_outing(span.first + timedelta(days=5), "10:00", "15:00")
    told = (
        ForecastDay(day=span.first + timedelta(days=2), low=-30, high=-20, wet=1, known_at=now),
        ForecastDay(day=span.first + timedelta(days=4), high=25, known_at=now),
    )
    forecasts = tuple(PlaceForecast(place=place.id, days=told) for place in family.places)
    check(replace(family, planned=(planned,), forecasts=forecasts).at(now), span)


def test_a_whole_year_of_the_demo_says_what_many_days_says_by_itself(demo_family: Family) -> None:
    """Over a year with both clock changes, at every place of the invented family, no figure differs."""
    span = DateSpan(first=TODAY + timedelta(days=1), last=TODAY + timedelta(days=365))
    demo_family = replace(demo_family, stations=stations())
    table = sweep(demo_family, demo_family.party(), demo_family.places, span, today=TODAY)
    clock_changes = {date(2027, 3, 14), date(2027, 11, 7)}
    for row, place in enumerate(demo_family.places):
        facts = place_facts(demo_family, place, (2026, 2027))
        for column, day in enumerate(table.days):
            if (column + row) % 15 and day not in clock_changes:
                continue
            single = plan_outing(demo_family, demo_family.party(), facts, day, today=TODAY)
            if isinstance(single, Outing):
                assert _swept(table, row, column) == _figures(single), (place.id, day)
            else:
                assert not table.can_go[row, column], (place.id, day)
