"""The parts of an outing as text: its cost, its tickets, its day."""

from collections.abc import Sequence
from datetime import datetime

from tripplan.commands.output.console import Console
from tripplan.files.day_sheet.day_sheet import clock_of, nap_lines
from tripplan.language import wording
from tripplan.language.sentences import told
from tripplan.planning.admission.result import OtherWay
from tripplan.planning.cost import OutingCost
from tripplan.planning.day import DayPlan, DaySearch
from tripplan.planning.opening.hours import DayHours
from tripplan.planning.outing.idea_notes import asking
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.sentences import at_the_door, item_sentence, purchase_sentence, tickets_known
from tripplan.planning.outing.window_facts import span_sentence, window_facts


def spread_note(outings: Sequence[Outing]) -> str:
    """What the ranges mean, and which items nobody knows."""
    unknown = dict.fromkeys(label for outing in outings for label in outing.cost.unknown)
    note = "Totals are estimates; they usually fall within the range in parentheses."
    return f"{note} Not known and not counted: {wording.listed(told(unknown))}." if unknown else note


def asking_about(outings: Sequence[Outing]) -> list[str]:
    """What to ask the places of these outings that are only ideas."""
    if not outings:
        return []
    months = [member.months_on(outings[0].day) for member in outings[0].party]
    return list(told(asking([outing.place for outing in outings], months)))


def say_cost(cost: OutingCost, console: Console) -> None:
    """Every item with its amount, and where it comes from."""
    for item in cost.items:
        console.line(item_sentence(item), 2)
        console.line(f"{item.source.origin}: {item.source.text}", 6)


def say_tickets(outing: Outing, console: Console) -> None:
    """What to buy, and what other ways there are; of an idea, that nobody knows."""
    admission = outing.admission
    console.line()
    console.line(f"Tickets: {at_the_door(outing)}")
    if not tickets_known(outing.place):
        return
    for purchase in admission.purchases:
        console.line(f"{purchase_sentence(purchase)}: {wording.money(purchase.total)}", 2)
        console.line(purchase.rule, 6)
    if admission.why_not_single_tickets:
        console.line(admission.why_not_single_tickets, 2)
    for way in admission.other_ways:
        console.line(_other_way(way), 2)


def _other_way(way: OtherWay) -> str:
    bought = ", ".join(f"{purchase.quantity} x {purchase.name}" for purchase in way.purchases)
    return f"Or {bought}: {wording.money(way.costs_more)} more."


def say_timeline(plan: DayPlan, console: Console) -> None:
    """The day, one step a line, by the clock of where it happens, and when each child sleeps where."""
    at = clock_of(plan)
    rows = [(at(step.start), step.label.text, _lasts(step.start, step.end)) for step in plan.steps]
    console.table(("at", "what", "how long"), [*rows, (at(plan.home), "home again", "")])
    console.listed("Naps:", tuple(nap_lines(plan)))


def _lasts(start: datetime, end: datetime) -> str:
    return wording.minutes((end - start).total_seconds() / 60)


def leave_sentence(search: DaySearch) -> str:
    """The spans of departures that are about equally good."""
    spans = [span_sentence(window) for window in search.windows]
    return f"About equally good times to leave: {'; '.join(spans)}." if spans else ""


def say_windows(outing: Outing, console: Console) -> None:
    """What each of the good times to leave gives, where there are several."""
    windows = outing.search.windows
    if len(windows) < 2:
        return
    rows = [(fact.name, *fact.of_each) for fact in window_facts(outing.hours, windows)]
    console.line()
    console.table(("leave between", *map(span_sentence, windows)), rows)
    console.line()


def hours_sentence(hours: DayHours) -> str:
    """When the place can be visited that day."""
    spans = []
    for span in hours.spans:
        said = f"{wording.clock(span.opens)} to {wording.clock(span.closes)}"
        if span.last_entry < span.closes:
            said += f", last entry {wording.clock(span.last_entry)}"
        spans.append(said)
    entries = wording.listed([wording.clock(moment) for moment in hours.entry_times])
    timed = f"; people are let in only at {entries}" if entries else ""
    return f"Open {'; '.join(spans)}{timed} ({hours.reason})."
