"""Answers as plain sentences, the same on screens and command line."""

from collections.abc import Callable, Mapping, Sequence
from datetime import datetime

from tripplan.documents.calendars.calendars import DateSpan
from tripplan.documents.family.household import Household
from tripplan.documents.logbook.crowd_note import Fullness
from tripplan.documents.places.idea import IdeaPlace
from tripplan.documents.places.place import Place
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.admission.result import Purchase
from tripplan.planning.cost import CostItem, OutingCost
from tripplan.planning.cost.driving import cars_needed, seats_in_a_car
from tripplan.planning.crowds.risk import CrowdRisk
from tripplan.planning.day import DayPlan, NapOutcome
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.weather.visit_weather import weather_sentence
from tripplan.planning.travel.drive import Drive
from tripplan.values.money import MoneyRange


def span_sentence(span: DateSpan) -> str:
    """Some days in a row, such as 'Mon, Jan 4, 2027 to Sun, Feb 7, 2027'."""
    return f"{wording.day(span.first)} to {wording.day(span.last)}"


def nap_sentence(outing: Outing) -> str:
    """What becomes of the naps, such as '1 h 20 min of 1 h 40 min kept, in the car'."""
    return naps_sentence(outing.plan.naps)


def naps_sentence(naps: Sequence[NapOutcome]) -> str:
    """What becomes of some naps, one sentence a child; the child is named where there are several."""
    if not naps:
        return "nobody needs one"
    children = naps_by_child(naps)
    return "; ".join(
        f"{member}: {child_naps_sentence(of_child)}" if len(children) > 1 else child_naps_sentence(of_child)
        for member, of_child in children.items()
    )


def naps_by_child(naps: Sequence[NapOutcome]) -> dict[str, list[NapOutcome]]:
    """The naps of each child, in order."""
    found: dict[str, list[NapOutcome]] = {}
    for nap in naps:
        found.setdefault(nap.member, []).append(nap)
    return found


def child_naps_sentence(naps: Sequence[NapOutcome]) -> str:
    """What becomes of one child's naps together, such as '1 h 20 min of 1 h 40 min kept, in the car'."""
    kept, usual = sum(nap.kept_minutes for nap in naps), sum(nap.usual_minutes for nap in naps)
    if not kept:
        return f"lost ({wording.minutes(usual)})"
    where = wording.listed(list(dict.fromkeys(place.where for nap in naps for place, _ in nap.kept)))
    return f"{wording.minutes(kept)} of {wording.minutes(usual)} kept, {where}"


def naps_in_short(outing: Outing) -> str:
    """What becomes of the naps in two or three words, such as 'whole nap' or 'most of the nap'."""
    naps = outing.plan.naps
    kept, usual = sum(nap.kept_minutes for nap in naps), sum(nap.usual_minutes for nap in naps)
    one = "naps" if len(naps) > 1 else "nap"
    if not usual:
        return "nobody naps"
    if kept == usual:
        return f"all {one}" if len(naps) > 1 else "whole nap"
    if not kept:
        return f"no {one}" if len(naps) > 1 else "nap lost"
    return f"{'most' if 2 * kept >= usual else 'some'} of the {one}"


def leaving_sentence(plan: DayPlan, at: Callable[[datetime], str] = wording.clock) -> str:
    """When to leave home, which is two times: 'load up at 12:35 PM, drive off at 12:50 PM'.

    Args:
        plan: the day.
        at: how moments are written.
    """
    off = f"drive off at {at(plan.drive_off)}"
    return off if plan.drive_off == plan.leave_home else f"load up at {at(plan.leave_home)}, {off}"


def crowd_sentence(risk: CrowdRisk) -> str:
    """Crowd risk in words, such as 'some company; chance of a packed day: about 1 in 7'."""
    if risk.fullness is Fullness.PLENTY_OF_ROOM:
        return risk.word
    return say("crowds-risk", word=risk.word, odds=wording.odds(risk.chance))


def crowd_reasons(risk: CrowdRisk) -> list[str]:
    """Why a day is so full or empty: each reason with its size, and last where the figures come from."""
    return [*(reason.text for reason in risk.reasons), f"{risk.source.origin}: {risk.source.text}"]


def compared_facts(outings: Sequence[Outing], units: str) -> dict[str, list[str]]:
    """What a comparison shows of each outing, one row a fact, one cell an outing.

    Args:
        outings: in the order of the cells.
        units: the household's unit of distance, 'mi' or 'km'.
    """
    return {
        "in all": [total_sentence(outing.cost) for outing in outings],
        "best day": [wording.day(outing.day) for outing in outings],
        "leave home": [leaving_sentence(outing.plan) for outing in outings],
        "home again": [wording.clock(outing.plan.home) for outing in outings],
        "drive, one way": [
            f"{way_sentence(outing.way_there.drive, units)} ({outing.way_there.drive.known_in_words})"
            for outing in outings
        ],
        "at the place": [wording.minutes(outing.plan.visit_minutes) for outing in outings],
        "nap": [nap_sentence(outing) for outing in outings],
        **(
            {"weather there": [weather_sentence(outing.weather) for outing in outings]}
            if any(outing.weather for outing in outings)
            else {}
        ),
        "crowds": [crowd_sentence(outing.crowd) for outing in outings],
        "cost plus hassle": [wording.money(outing.generalized_cost) for outing in outings],
    }


def way_sentence(drive: Drive, units: str) -> str:
    """How far it is and how long it takes, such as '43 mi, 50 min to 1 h 5 min'."""
    return f"{wording.distance(drive.km.likely, units)}, {wording.minutes_range(drive.minutes)}"


def cars_sentence(outing: Outing, household: Household) -> str:
    """How many cars it takes where one is not enough; empty where it is."""
    people = len(outing.party)
    cars = cars_needed(household, people)
    if cars == 1:
        return ""
    return f"{cars} cars for {people} people, as yours seats {seats_in_a_car(household)}"


def drive_source(outing: Outing) -> str:
    """Where the figures of an outing's drive come from, with the credit that their license asks for."""
    return drive_sources({outing.place.name: outing.way_there.drive})


def drive_sources(drives: Mapping[str, Drive]) -> str:
    """The same for the drives to several places.

    Args:
        drives: by the name of the place; at least one.

    Returns:
        Such as 'Drives: an estimate for Mill and Cave; road network for Barn; map data ©….'
    """
    names: dict[str, list[str]] = {}
    for name, drive in drives.items():
        names.setdefault(drive.known_in_words, []).append(name)
    if len(names) == 1:
        told = next(iter(names))
    else:
        told = "; ".join(f"{known} for {wording.listed(places)}" for known, places in names.items())
    credit = dict.fromkeys(drive.source.credit for drive in drives.values() if drive.source.credit)
    return f"{'Drives' if len(drives) > 1 else 'Drive'}: {'; '.join((told, *credit))}."


def total_sentence(cost: OutingCost) -> str:
    """The total with its range, and 'at least' where something is not known."""
    return range_sentence(cost.total, at_least=bool(cost.unknown))


def range_sentence(amounts: MoneyRange, *, at_least: bool) -> str:
    """An amount with its range, and 'at least' where a part of it is not known."""
    total = wording.money_range(amounts)
    return f"at least {total}" if at_least else total


def amount_sentence(item: CostItem) -> str:
    """An item's amount with its range; what is unknown is never zero."""
    return "not known" if item.amount is None else wording.money_range(item.amount)


def item_sentence(item: CostItem) -> str:
    """An item of the cost, such as 'Food for 7, packed: $20 ($17 to $22)'."""
    label = item.label if item.label.startswith(item.kind) else f"{item.kind}, {item.label}"
    return f"{wording.capital(label)}: {amount_sentence(item)}"


PRICE_NOT_KNOWN = "not known yet; this is only an idea"
"""What stands in the place of an idea's tickets."""


def tickets_known(place: Place) -> bool:
    """Whether what entry costs is known; of an idea it is not, whatever was taken for it."""
    return not isinstance(place, IdeaPlace)


def at_the_door(outing: Outing) -> str:
    """What the tickets come to, or that nobody knows."""
    known = tickets_known(outing.place)
    return wording.money(outing.admission.total) if known else PRICE_NOT_KNOWN


def purchase_sentence(purchase: Purchase) -> str:
    """One line of the order, such as '2 x Adult for Ann and Bo'."""
    covered = f" for {wording.listed(purchase.covers)}" if purchase.covers else ""
    return f"{purchase.quantity} x {purchase.name}{covered}"
