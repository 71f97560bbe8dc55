"""`tripplan days`: the days of a span in order of money and nuisances."""

from argparse import Namespace
from collections.abc import Mapping

from tripplan.commands.console import Console
from tripplan.commands.json_answers import days_answer
from tripplan.commands.outing_text import spread_note
from tripplan.commands.question import ask
from tripplan.planning import wording
from tripplan.planning.choose import Ranking, days_in, rank
from tripplan.planning.sentences import crowd_sentence, nap_sentence, total_sentence


def run(options: Namespace, console: Console, environment: Mapping[str, str]) -> int:
    """Rank the days that can be done; 1 where there is none."""
    question = ask(options, console, environment)
    span, most = question.span, options.most
    places = question.places or question.family.places
    ranking = rank(question.family, question.party, places, days_in(span), today=question.today)
    if options.json:
        console.json(days_answer(question, ranking, most).model_dump(mode="json"))
        return 0 if ranking.outings else 1
    question.say_whose(console)
    who = wording.listed([member.name for member in question.party])
    console.line(f"{who}; {wording.day(span.first)} to {wording.day(span.last)}.")
    console.line()
    if ranking.outings:
        _say_best(ranking, most, console)
    else:
        console.line("No day in this span can be done.")
    if options.why:
        _say_crowds(ranking, most, console)
        _say_passed_over(ranking, console)
    elif ranking.passed_over:
        console.line(f"{_count(len(ranking.passed_over))} passed over; add --why for the reasons.")
    return 0 if ranking.outings else 1


def _say_best(ranking: Ranking, most: int, console: Console) -> None:
    shown = ranking.outings[:most]
    console.table(
        ("day", "place", "in all", "with nuisances", "away", "nap", "full house"),
        [
            (
                wording.day(outing.day),
                outing.place.name,
                total_sentence(outing.cost),
                wording.money(outing.felt_cost),
                f"{wording.clock(outing.plan.leave_home)} to {wording.clock(outing.plan.home)}",
                nap_sentence(outing),
                wording.percent(outing.crowd.chance),
            )
            for outing in shown
        ],
    )
    console.line()
    console.line(
        "Ranked by money plus what the household says a lost nap, a full house, an hour in the car or a "
        f"visit cut short is worth. {spread_note(shown)}"
    )
    if len(shown) < len(ranking.outings):
        console.line(f"{len(ranking.outings)} can be done in all; --most tells more of them.")


def _say_crowds(ranking: Ranking, most: int, console: Console) -> None:
    for outing in ranking.outings[:most]:
        heading = (
            f"{wording.day(outing.day)}, {outing.place.name}, full house {crowd_sentence(outing.crowd)}:"
        )
        console.listed(heading, [reason.text for reason in outing.crowd.reasons])


def _say_passed_over(ranking: Ranking, console: Console) -> None:
    """The days that cannot be done, those with the same reasons together, the nearest first."""
    days: dict[tuple[str, tuple[str, ...]], list[str]] = {}
    for missed in ranking.passed_over:
        days.setdefault((missed.place.name, missed.reasons), []).append(f"{missed.day:%b} {missed.day.day}")
    places: dict[tuple[tuple[str, ...], str], list[str]] = {}
    for (place, reasons), on in days.items():
        places.setdefault((reasons, ", ".join(on)), []).append(place)
    console.listed(
        f"{_count(len(ranking.passed_over))} passed over:",
        [f"{'; '.join(names)}: {'; '.join(why)} ({on})" for (why, on), names in places.items()],
    )


def _count(days: int) -> str:
    return "1 day" if days == 1 else f"{days} days"
