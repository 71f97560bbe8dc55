"""`tripplan compare`: places side by side by what an outing costs in all."""

from collections.abc import Mapping

from tripplan.commands.answers.days import CompareAnswer
from tripplan.commands.input.question import Question, ask
from tripplan.commands.options.outings import CompareOptions
from tripplan.commands.output.console import Console
from tripplan.commands.output.outing_text import asking_about, say_cost, say_tickets, spread_note
from tripplan.documents.places.place import Place
from tripplan.language import wording
from tripplan.language.sentences import told
from tripplan.planning.compare.certainty import how_sure
from tripplan.planning.compare.choose import Candidate, compare, days_in, suggested
from tripplan.planning.compare.flips.every_input import first_of_each, what_would_flip
from tripplan.planning.compare.flips.flip import flips_in_short
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.passed_over import passed_over_together
from tripplan.planning.outing.sentences import (
    compared_facts,
    crowd_reasons,
    crowd_sentence,
    drive_sources,
    total_sentence,
)
from tripplan.planning.sweep.sweeping import sweep
from tripplan.records.kinds import ComparedPlaces


def run(options: CompareOptions, console: Console, environment: Mapping[str, str]) -> int:
    """Compare places, each on its best day; 1 where no place can be visited."""
    question = ask(options, console, environment, options.place)
    span, places = question.span, question.places or _usual(question)
    candidates = compare(question.family, question.party, places, days_in(span), today=question.today)
    outings = [candidate.best for candidate in candidates if candidate.best]
    if options.json:
        certainty = how_sure(outings) if outings else None
        console.json(
            CompareAnswer(
                question=question,
                candidates=tuple(candidates),
                chances_cheapest=certainty.chances if certainty else (),
                too_close_to_call=certainty is not None and certainty.too_close,
                flips=tuple(what_would_flip(question.family, question.party, outings, today=question.today)),
            )
        )
        return 0 if outings else 1
    question.say_whose(console)
    when = wording.day(span.first)
    if span.last != span.first:
        when = f"each on its best day from {when} to {wording.day(span.last)}"
    console.line(f"{wording.listed([member.name for member in question.party])}; {when}.")
    if outings:
        console.line()
        _side_by_side(question, outings, console)
        console.line()
        console.line(spread_note(outings))
        console.listed("Only ideas so far:", asking_about(outings))
    if len(outings) > 1:
        console.line()
        console.line(" ".join(told((*how_sure(outings).facts, *first_of_each(outings)))))
        if options.why:
            flips = what_would_flip(question.family, question.party, outings, today=question.today)
            console.listed("What would change the order:", flips_in_short(flips))
    for candidate in candidates:
        if candidate.best is None:
            _say_why_not(candidate, console)
        elif options.why:
            _say_why(candidate.best, console)
    if outings and not options.why:
        console.line("Add --why for what every total is made of and what would change the order.")
    return 0 if outings else 1


def _usual(question: Question) -> tuple[Place, ...]:
    """The places kept for comparison as far as they are still there, else the best few."""
    kept = question.records.get(ComparedPlaces) if question.records else None
    by_id = {place.id: place for place in question.family.places}
    chosen = tuple(by_id[name] for name in (kept.value.places if kept else ()) if name in by_id)
    return chosen or suggested(
        question.family,
        question.today,
        lambda places: sweep(question.family, question.party, places, question.span, today=question.today),
    )


def _side_by_side(question: Question, outings: list[Outing], console: Console) -> None:
    rows = compared_facts(outings, question.family.household.units)
    heads = ["", *(o.place.name for o in outings)]
    console.side_by_side(heads, [[name, *cells] for name, cells in rows.items()])
    console.line(drive_sources({one.place.name: one.way_there.drive for one in outings}))


def _say_why(outing: Outing, console: Console) -> None:
    console.line()
    console.line(f"{outing.place.name}, {wording.day(outing.day)}: {total_sentence(outing.cost)}")
    say_cost(outing.cost, console)
    say_tickets(outing, console)
    console.listed(f"Crowds, {crowd_sentence(outing.crowd)}:", crowd_reasons(outing.crowd))
    console.listed("Good to know:", outing.notes)
    console.listed("Please mind:", told(outing.cautions))


def _say_why_not(candidate: Candidate, console: Console) -> None:
    console.line()
    console.line(f"{candidate.place.name}: no day can be done.")
    for one in passed_over_together(candidate.passed_over):
        console.line(one.sentence, 2)
