"""What a day should be like, and what a nuisance weighs, as the command line says it."""

import re
from collections.abc import Sequence
from dataclasses import replace
from decimal import Decimal

from pydantic import ValidationError

from tripplan.commands.input.question import Question, clock_in
from tripplan.commands.input.settings import ASKED
from tripplan.commands.options.outings import DaysOptions
from tripplan.documents.calendars.family_days import WEEKDAYS
from tripplan.documents.family.worth import Worth
from tripplan.documents.model import Weekday
from tripplan.documents.study.units import StudyUnit
from tripplan.errors import Finding, InputFaults
from tripplan.planning.family.family import Family
from tripplan.planning.sweep.wishes import Weeks, Wishes

_AMOUNT = re.compile(r"\d{1,6}(?:\.\d{1,3})?")


def wishes_asked(options: DaysOptions, question: Question) -> Wishes:
    """Read what is wished of a day.

    Raises:
        InputFaults: something cannot be understood; every fault at once.
    """
    findings: list[Finding] = []
    wishes = Wishes(
        weekdays=_weekdays(options.weekdays, findings),
        budget=_amount(options.budget, "--budget", findings),
        drive_minutes=options.drive,
        nap_percent=_percent(options.nap, "--nap", findings) or 0,
        full_house_percent=_percent(options.full_house, "--full-house", findings),
        air=options.air,
        in_term=options.in_term,
        in_daylight=options.daylight,
        home_by=clock_in(options.home_by, "--home-by", findings),
        weeks=_unit(options.unit, question, findings),
    )
    if findings:
        raise InputFaults(tuple(findings))
    return wishes


def weighed_as_asked(family: Family, asked: Sequence[Sequence[str]]) -> Family:
    """The family with what it says nuisances are worth, where the command line says otherwise.

    Raises:
        InputFaults: a nuisance is not known, or its amount is no price.
    """
    names = {name.replace("_", "-"): name for name in Worth.model_fields}
    findings: list[Finding] = []
    amounts: dict[str, Decimal] = {}
    for name, text in asked:
        amount = _amount(text, f"--worth {name}", findings)
        if name not in names:
            findings.append(Finding(ASKED, "--worth", name, f"a hassle is one of {', '.join(names)}"))
        elif amount is not None:
            amounts[names[name]] = amount
    if findings:
        raise InputFaults(tuple(findings))
    if not amounts:
        return family
    try:
        worth = Worth.model_validate({**dict(family.household.worth), **amounts})
    except ValidationError as trouble:
        message = "; ".join(str(fault["msg"]) for fault in trouble.errors())
        raise InputFaults((Finding(ASKED, "--worth", "", message),)) from trouble
    return replace(family, household=family.household.model_copy(update={"worth": worth}))


def _weekdays(names: Sequence[str] | None, findings: list[Finding]) -> frozenset[Weekday]:
    if names is None:
        return frozenset(WEEKDAYS)
    known: dict[str, Weekday] = {day.casefold(): day for day in WEEKDAYS}
    found = [known.get(name[:2].casefold()) for name in names]
    for name, day in zip(names, found, strict=True):
        if day is None:
            findings.append(Finding(ASKED, "--weekdays", name, f"a weekday is one of {', '.join(WEEKDAYS)}"))
    return frozenset(day for day in found if day is not None)


def _amount(text: str | None, option: str, findings: list[Finding]) -> Decimal | None:
    if text is None:
        return None
    if not _AMOUNT.fullmatch(text):
        findings.append(Finding(ASKED, option, text, "an amount reads like 120 or 9.50"))
        return None
    return Decimal(text)


def _percent(text: int | None, option: str, findings: list[Finding]) -> int | None:
    if text is not None and text > 100:
        findings.append(Finding(ASKED, option, str(text), "a percentage lies between 0 and 100"))
        return None
    return text


def _unit(name: str | None, question: Question, findings: list[Finding]) -> Weeks | None:
    if name is None:
        return None
    kept = question.records.all(StudyUnit).values() if question.records else ()
    units = {one.value.name.casefold(): one.value for one in kept}
    unit = units.get(name.strip().casefold())
    if unit is None:
        known = f"known: {', '.join(one.name for one in units.values())}" if units else "none is on record"
        findings.append(Finding(ASKED, "--unit", name, f"no study unit is called that; {known}"))
        return None
    return Weeks.of(unit, question.family.places)
