"""`tripplan day`: one day at one place, hour by hour."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import datetime

from tripplan.commands.answers.day import DayAnswer
from tripplan.commands.input.question import Question, ask, clock_in
from tripplan.commands.input.settings import ASKED
from tripplan.commands.options.outings import WHEREABOUTS, DayOptions, LeavingOptions
from tripplan.commands.output.console import Console
from tripplan.commands.output.day_text import say_replanned, say_slack, say_trade_offs
from tripplan.commands.output.outing_text import (
    hours_sentence,
    leave_sentence,
    say_cost,
    say_tickets,
    say_timeline,
    say_windows,
    spread_note,
)
from tripplan.documents.places.forecast import ForecastDay, PlaceForecast
from tripplan.documents.study.units import StudyUnit
from tripplan.errors import Finding, InputFaults, LookupFailed, PlanError, UnknownName
from tripplan.forecasts.asking import real_forecasts, sent
from tripplan.language import wording
from tripplan.language.sentences import fact, told
from tripplan.planning.climate.typed_weather import too_far, typed_weather
from tripplan.planning.day import ViolatedLimit, against_best, helps_most, plan_choice, slack, trade_offs
from tripplan.planning.on_the_day.rain_plan import RainPlan, rain_plan
from tripplan.planning.on_the_day.recovery_options import RevisedDay
from tripplan.planning.on_the_day.replan import replan
from tripplan.planning.on_the_day.trouble import Trouble, Whereabouts, clock_there
from tripplan.planning.outing.outing import USUAL_GRID_MINUTES, NoOuting, Outing, plan_outing
from tripplan.planning.outing.place_facts import place_facts
from tripplan.planning.outing.sentences import crowd_reasons, crowd_sentence, nap_sentence, total_sentence
from tripplan.planning.outing.weather.visit_weather import weather_there


def run(options: DayOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Plan one day at one place; 1 where it cannot be done."""
    question = ask(options, console, environment, options.place)
    question = _with_forecast(question, console) if options.forecast else _with_weather(question, options)
    answer = planned(question, options)
    replanned = None
    if isinstance(answer, Outing) and _is_wrong(options):
        replanned = _replanned(question, answer, options)
    if options.json:
        console.json(_answer(question, answer, replanned))
    else:
        question.say_whose(console)
        if replanned is not None:
            say_replanned(replanned, console)
        elif isinstance(answer, Outing):
            _say(answer, question.family.household.units, console)
            found = _rain_plan(question, answer)
            if found is not None:
                console.line(f"If it rains: {found.sentence}.")
        else:
            say_no(answer, console)
    return 0 if isinstance(answer, Outing) else 1


def _with_weather(question: Question, options: DayOptions) -> Question:
    """The question with the weather that is typed, in the place of the usual.

    Raises:
        InputFaults: it cannot be read, or is for another day.
    """
    if options.weather is None:
        return question
    family, day = question.family, question.span.first
    now = question.clock().astimezone(family.household.home.zone)
    try:
        told = typed_weather(options.weather, day, family.household.degrees, now, question.today)
    except InputFaults as faults:
        named = (replace(one, file=ASKED, field="--weather") for one in faults.findings)
        raise InputFaults(tuple(named)) from None
    if told.day != day:
        message = f"that is the weather of {wording.day(told.day)}; what is planned is {wording.day(day)}"
        raise InputFaults((Finding(ASKED, "--weather", options.weather, message),))
    return _counting(question, (told,))


def _with_forecast(question: Question, console: Console) -> Question:
    """The question with the forecast of that day; with what there was before where none can be had.

    Raises:
        InputFaults: no service tells of a day so far ahead.
    """
    day, (place,) = question.span.first, question.places
    far = too_far(day, question.today)
    if far:
        raise InputFaults((Finding(ASKED, "--forecast", day.isoformat(), far),))
    forecasts, where = real_forecasts(), place.where
    provider = forecasts.provider(where.country)
    console.aside().line(f"Asks {provider.in_words}; sends {', '.join(sent(where.point))} and its own name.")
    try:
        found = forecasts.ask(where.point, where.country, where.zone, question.clock().astimezone(where.zone))
    except LookupFailed as failed:
        console.aside().line(f"No forecast: {failed}. The usual weather counts.")
        return question
    if all(one.day != day for one in found):
        console.aside().line(f"The forecast does not tell of {wording.day(day)}. The usual weather counts.")
    return _counting(question, found)


def _counting(question: Question, days: tuple[ForecastDay, ...]) -> Question:
    """The question with what is known of the weather of some days in the place of the usual."""
    family, (place,) = question.family, question.places
    kept = family.forecast_for(place.id) or PlaceForecast(place=place.id)
    others = tuple(one for one in family.forecasts if one.place != place.id)
    forecasts = (*others, kept.updated(days, question.today))
    return replace(question, family=replace(family, forecasts=forecasts))


def _answer(question: Question, answer: Outing | NoOuting, replanned: RevisedDay | None) -> DayAnswer:
    outing = answer if isinstance(answer, Outing) else None
    best = outing.search.best if outing else None
    return DayAnswer(
        question=question,
        outing=outing,
        passed_over=answer if isinstance(answer, NoOuting) else None,
        against_best=against_best(outing.question, outing.plan, best) if outing and best else None,
        trade_offs=trade_offs(outing.question) if outing else None,
        slack=slack(outing.question, outing.plan) if outing else None,
        replanned=replanned,
        rain_plan=_rain_plan(question, outing) if outing else None,
    )


def _rain_plan(question: Question, outing: Outing) -> RainPlan | None:
    """What there is to do indoors that day; where the outing is on record, for its study unit."""
    planned = next(
        (one for one in question.family.planned if (one.place, one.day) == (outing.place.id, outing.day)),
        None,
    )
    unit = None
    if planned and planned.study_unit and question.records:
        unit = question.records.get(StudyUnit, planned.study_unit)
    return rain_plan(question.family, outing, unit.value if unit else None, today=question.today)


def planned(question: Question, options: LeavingOptions) -> Outing | NoOuting:
    """The one place and day that are asked about: its best plan, or what leaving at the times named gives.

    Raises:
        InputFaults: a time cannot be read, or only one of the two is named.
    """
    findings: list[Finding] = []
    leave_home = clock_in(options.leave_home, "--leave-home", findings)
    leave_place = clock_in(options.leave_place, "--leave-place", findings)
    if (options.leave_home is None) != (options.leave_place is None):
        missing = "--leave-home" if options.leave_home is None else "--leave-place"
        findings.append(Finding(ASKED, missing, "", "--leave-home and --leave-place are named together"))
    if findings:
        raise InputFaults(tuple(findings))
    best = _planned(question, options)
    asked, day = best.question, question.span.first
    if leave_home is None or leave_place is None or asked is None:
        return best
    leaves = datetime.combine(day, leave_home, asked.home_zone)
    returns = datetime.combine(day, leave_place, asked.place_zone)
    picked = plan_choice(asked, leaves, returns)
    if isinstance(picked, ViolatedLimit):
        others = best.reasons if isinstance(best, NoOuting) else ()
        whenever = (fact("outing-at-any-time", reason=reason) for reason in others)
        return NoOuting(best.place, day, (*picked.limits, *whenever), asked)
    return _planned(question, options, leaves, returns)


def _planned(
    question: Question,
    options: LeavingOptions,
    leave_at: datetime | None = None,
    leave_place_at: datetime | None = None,
) -> Outing | NoOuting:
    (place,), day = question.places, question.span.first
    family = question.family.about(place.id, day)
    return plan_outing(
        family,
        question.party,
        place_facts(family, place, (day.year,)),
        day,
        today=question.today,
        leave_at=leave_at,
        leave_place_at=leave_place_at,
        grid_minutes=options.grid or USUAL_GRID_MINUTES,
    )


def _is_wrong(options: DayOptions) -> bool:
    """Whether anything is said to have gone wrong."""
    said = (options.asleep, options.ill, options.rain or None, options.late)
    return options.where != WHEREABOUTS[0] or any(one is not None for one in said)


def _replanned(question: Question, outing: Outing, options: DayOptions) -> RevisedDay:
    """What can be done now that the day goes wrong.

    Raises:
        InputFaults: a name is nobody's, a time cannot be read, or it is so late that the day is over.
    """
    findings: list[Finding] = []
    now = clock_in(options.now, "--now", findings)
    if findings:
        raise InputFaults(tuple(findings))
    trouble = Trouble(
        late_minutes=options.late or 0,
        where=dict(zip(WHEREABOUTS, Whereabouts, strict=True))[options.where],
        still_to_drive_minutes=options.to_drive,
        now=None if now is None else clock_there(outing, now),
        asleep=options.asleep,
        ill=options.ill,
        stays_home=options.stays,
        rain=options.rain,
        tickets_paid=options.paid,
    )
    try:
        return replan(question.family, outing, trouble, today=question.today)
    except UnknownName as error:
        named = {options.asleep: "--asleep", options.ill: "--ill"}
        field = named.get(error.name, "--stays")
        message = f"nobody of that name goes; the party is {', '.join(error.known)}"
        raise InputFaults((Finding(ASKED, field, error.name[:60], message),)) from error
    except PlanError as error:
        raise InputFaults((Finding(ASKED, "--late", str(options.late), str(error)),)) from error


def say_no(answer: NoOuting, console: Console) -> None:
    """Why the day cannot be done."""
    console.line(f"{answer.place.name} cannot be visited on {wording.day(answer.day)}:")
    for reason in answer.reasons:
        console.line(reason.text, 2)
    helps = None if answer.question is None else helps_most(answer.question, None)
    if helps is not None:
        console.line(helps.brings.text, 2)


def _say(outing: Outing, units: str, console: Console) -> None:
    drive = outing.way_there.drive
    console.line(f"{outing.place.name}, {wording.day(outing.day)}")
    console.line(wording.listed([member.name for member in outing.party]))
    console.line()
    say_timeline(outing.plan, console)
    console.line()
    console.line(leave_sentence(outing.search))
    say_windows(outing, console)
    best = outing.search.best
    if best is not None and outing.plan != best:
        console.line(f"Leaving as asked: {against_best(outing.question, outing.plan, best)}")
    say_slack(outing, console)
    console.line()
    say_trade_offs(outing, console)
    console.line()
    console.line(hours_sentence(outing.hours))
    console.line(
        f"Drive, one way: {wording.distance_range(drive.km, units)}, {wording.minutes_range(drive.minutes)}, "
        "without rests."
    )
    console.line(f"{drive.source.origin}: {drive.source.text}", 6)
    console.line(f"Nap: {nap_sentence(outing)}.")
    console.line(f"Weather there: {weather_there(outing.weather)}.")
    console.line(f"Crowds: {crowd_sentence(outing.crowd)}.")
    *reasons, source = crowd_reasons(outing.crowd)
    for reason in reasons:
        console.line(reason, 2)
    console.line(source, 6)
    console.line()
    console.line(f"Cost in all: {total_sentence(outing.cost)}")
    say_cost(outing.cost, console)
    console.line(spread_note([outing]))
    say_tickets(outing, console)
    console.listed("Good to know:", outing.notes)
    console.listed("Please mind:", told(outing.cautions))
