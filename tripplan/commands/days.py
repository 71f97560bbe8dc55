"""`tripplan days`: the days of a span in order of money and nuisances, and those that nearly came first."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from datetime import datetime

from tripplan.commands.answers.days import DaysAnswer, LeftOut, NearMiss
from tripplan.commands.input.question import Question, ask, clock_in
from tripplan.commands.input.settings import ASKED
from tripplan.commands.input.wishes_asked import weighed_as_asked, wishes_asked
from tripplan.commands.options.outings import DaysOptions
from tripplan.commands.output.console import Console
from tripplan.commands.output.outing_text import asking_about, spread_note
from tripplan.commands.output.progress_bar import ProgressBar
from tripplan.commands.output.writing import ending_faults, write_file
from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.places.place import Place
from tripplan.errors import Finding, InputFaults
from tripplan.files.tables import csv_table
from tripplan.language import wording
from tripplan.language.sentences import fact, say
from tripplan.planning.family.variety import LATELY, lately, places_to_choose_among
from tripplan.planning.outing.outing import NoOuting, Outing
from tripplan.planning.outing.passed_over import passed_over_together
from tripplan.planning.outing.sentences import crowd_reasons, crowd_sentence, nap_sentence, total_sentence
from tripplan.planning.outing.weather.visit_weather import weather_in_short
from tripplan.planning.sweep.dates import Numbers
from tripplan.planning.sweep.listing import HEADINGS, day_rows, each_place_first
from tripplan.planning.sweep.misses import nearest_misses
from tripplan.planning.sweep.sweeping import sweeping
from tripplan.planning.sweep.table import DayTable, Verdict
from tripplan.planning.sweep.wishes import Wish, all_met, wished

MANY_PLACE_DAYS = 5_000
"""From so many on it is told how far the work has come [places times days]."""


def run(options: DaysOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Rank the days that can be done as wished; 1 where there is none."""
    if options.table is not None and (faults := ending_faults(options.table, "--table", "a table", ".csv")):
        raise InputFaults(faults)
    question = _when_free(ask(options, console, environment, options.place), options)
    question = replace(question, family=weighed_as_asked(question.family, options.worth))
    wishes = wishes_asked(options, question)
    places = question.places or _places(question, options)
    left_out = _left_out(question, places)
    table = _swept(question, places, console)
    made = wished(wishes, table)
    ranked = table.ranked(all_met(made, table))
    if options.table is not None:
        text = csv_table(HEADINGS, list(day_rows(table, ranked)))
        if not write_file(options.table, text.encode("utf-8"), console, replace=options.replace):
            return 1
        if options.table == "-":
            return 0 if len(ranked) else 1
    best = tuple(_outings(table, each_place_first(ranked)[: options.most]))
    misses = nearest_misses(table, made)
    if options.json:
        console.json(
            DaysAnswer(
                question=question,
                count=len(ranked),
                outings=best,
                passed_over=_passed_over(table),
                wishes=tuple(made),
                not_as_wished=int(table.can_go.sum()) - len(ranked),
                nearly=tuple(
                    NearMiss(table.places[miss.spot.row].id, table.day(miss.spot.column), miss)
                    for miss in misses
                ),
                left_out=left_out,
            )
        )
        return 0 if best else 1
    question.say_whose(console)
    span = question.span
    who = wording.listed([member.name for member in question.party])
    console.line(f"{who}; {wording.days(span.first, span.last)}{_free_time(question, options)}.")
    if made:
        console.line(f"Wished: {'; '.join(wish.words.text for wish in made)}.")
    console.line()
    if best:
        _say_best(best, len(ranked), console)
    else:
        console.line("No day in this span can be done." if not made else "No day is as you wish.")
    if misses:
        console.listed("Nearly:", [miss.sentence for miss in misses])
    why = options.why or (not best and span.first == span.last)
    if why:
        _say_crowds(best, console)
        _say_passed_over(_passed_over(table), console)
    _say_left_out(table, made, console, told=why)
    _say_lately(question, left_out, console)
    return 0 if best else 1


def _when_free(question: Question, options: DaysOptions) -> Question:
    """The question about an hour that opens up, where one is told: today's, unless days are named.

    Raises:
        InputFaults: a time cannot be read, or they are out of order.
    """
    if options.free_from is None and options.free_until is None:
        return question
    findings: list[Finding] = []
    start = clock_in(options.free_from, "--free-from", findings)
    end = clock_in(options.free_until, "--free-until", findings)
    habits = question.family.household.habits
    if not findings:
        start, end = start or habits.earliest_departure, end or habits.home_by
        if end <= start:
            message = f"the free time begins at {start:%H:%M} and has to end later"
            findings.append(Finding(ASKED, "--free-until", f"{end:%H:%M}", message))
    if findings or start is None or end is None:
        raise InputFaults(tuple(findings))
    free = replace(question, family=question.family.free_between(start, end))
    if options.first is None and options.last is None:
        free = replace(free, span=DateSpan(first=question.today, last=question.today))
    return free


def _free_time(question: Question, options: DaysOptions) -> str:
    if options.free_from is None and options.free_until is None:
        return ""
    habits, day = question.family.household.habits, question.today
    start, end = (
        wording.clock(datetime.combine(day, at)) for at in (habits.earliest_departure, habits.home_by)
    )
    return f", free from {start} to {end}"


def _places(question: Question, options: DaysOptions) -> Sequence[Place]:
    """Where none is named: all, or those where the family was not lately and is not going anyway."""
    family = question.family
    return family.places if options.again else places_to_choose_among(family, question.today)


def _swept(question: Question, places: Sequence[Place], console: Console) -> DayTable:
    steps = sweeping(question.family, question.party, places, question.span, today=question.today)
    days = (question.span.last - question.span.first).days + 1
    many = len(places) * days >= MANY_PLACE_DAYS
    with ProgressBar(console) as bar:
        for step in steps:
            if step.table is not None:
                return step.table
            if many and (step.done % max(1, step.of // 10) == 0):
                bar.show(step.done / step.of, f"{step.done} of {step.of} places")
    raise AssertionError("a sweep ends with its table")


def _left_out(question: Question, places: Sequence[Place]) -> tuple[LeftOut, ...]:
    apart = {} if question.places else lately(question.family, question.today)
    asked = {place.id for place in places}
    return tuple(LeftOut(place, day) for place, day in apart.items() if place not in asked)


def _say_lately(question: Question, left_out: Sequence[LeftOut], console: Console) -> None:
    names = {place.id: place.name for place in question.family.places}
    visits = tuple(fact("days-visit", place=names[one.place], day=one.day) for one in left_out)
    if visits:
        console.line(say("days-lately", weeks=LATELY.days // 7, visits=visits))
        console.line(say("days-lately-again"))


def _outings(table: DayTable, spots: Numbers) -> Iterator[Outing]:
    for row, column in spots.tolist():
        found = table.outing(row, column)
        if isinstance(found, Outing):
            yield found


def _passed_over(table: DayTable) -> tuple[NoOuting, ...]:
    """The days that cannot be done, by date and then place."""
    missed: list[NoOuting] = []
    for column in range(len(table.days)):
        for row in range(len(table.places)):
            if not table.can_go[row, column]:
                found = table.outing(row, column)
                if isinstance(found, NoOuting):
                    missed.append(found)
    return tuple(sorted(missed, key=lambda one: (one.day, one.place.id)))


def _say_best(shown: Sequence[Outing], count: int, console: Console) -> None:
    console.table(
        ("day", "place", "in all", "cost plus hassle", "away", "nap", "weather there", "crowds"),
        [
            (
                wording.day(outing.day),
                outing.place.name,
                total_sentence(outing.cost),
                wording.money(outing.generalized_cost),
                f"{wording.clock(outing.plan.leave_home)} to {wording.clock(outing.plan.home)}",
                nap_sentence(outing),
                weather_in_short(outing.weather).text,
                outing.crowd.word,
            )
            for outing in shown
        ],
    )
    console.line()
    console.line(
        "The best day of each place first, then more of each. "
        "Ranked by money plus what the household says a lost nap, a full house, an hour in the car, a "
        f"visit cut short or an hour outdoors in cold, heat or rain is worth. {spread_note(shown)}"
    )
    console.listed("Only ideas so far:", asking_about(shown))
    if len(shown) < count:
        console.line(f"{count} can be done in all; --most tells more of them.")


def _say_crowds(shown: Sequence[Outing], console: Console) -> None:
    for outing in shown:
        heading = f"{wording.day(outing.day)}, {outing.place.name}, crowds: {crowd_sentence(outing.crowd)}:"
        console.listed(heading, crowd_reasons(outing.crowd))


def _say_passed_over(passed_over: Sequence[NoOuting], console: Console) -> None:
    """The days that cannot be done, those with the same reasons together, the nearest first."""
    if passed_over:
        console.listed(
            f"{wording.counted(len(passed_over), 'day')} passed over:",
            [f"{'; '.join(one.places)}: {one.sentence}" for one in passed_over_together(passed_over)],
        )


def _say_left_out(table: DayTable, made: Sequence[Wish], console: Console, *, told: bool) -> None:
    not_wished = int((table.can_go & ~all_met(made, table)).sum())
    if not_wished:
        console.line(f"{wording.counted(not_wished, 'day')} can be done, but not as you wish.")
    counts = Counter(table.verdict[~table.can_go].tolist())
    if counts and not told:
        why = ", ".join(Verdict(verdict).on_days(number) for verdict, number in counts.most_common())
        total = sum(counts.values())
        console.line(f"{wording.counted(total, 'day')} passed over ({why}); add --why for the reasons.")
