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
from tripplan.planning.outing.weather.visit_weather import weather_there
from tripplan.planning.travel.drive import Drive
from tripplan.values.cost_kind import CostKind
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
        return say("answers-nobody-naps")
    children = naps_by_child(naps)
    if len(children) == 1:
        return child_naps_sentence(naps)
    return "; ".join(
        say("answers-child", name=member, what=child_naps_sentence(of_child))
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
        return say("answers-nap-lost", usual=wording.minutes(usual))
    where = tuple(dict.fromkeys(place.where for nap in naps for place, _ in nap.kept))
    return say("answers-nap-kept", kept=wording.minutes(kept), usual=wording.minutes(usual), where=where)


def naps_in_short(outing: Outing) -> str:
    """What becomes of the naps in two or three words, such as 'whole nap' or 'most of the nap'."""
    naps = outing.plan.naps
    kept, usual = sum(nap.kept_minutes for nap in naps), sum(nap.usual_minutes for nap in naps)
    if not usual:
        return say("answers-no-nap-needed")
    if kept == usual:
        return say("answers-all-kept", naps=len(naps))
    if not kept:
        return say("answers-all-lost", naps=len(naps))
    if 2 * kept >= usual:
        return say("answers-most-kept", naps=len(naps))
    return say("answers-some-kept", naps=len(naps))


def leaving_sentence(plan: DayPlan, at: Callable[[datetime], str] = wording.clock) -> str:
    """When to leave home, which is two times: 'load up at 12:35 PM, drive off at 12:50 PM'.

    Args:
        plan: the day.
        at: how moments are written.
    """
    if plan.drive_off == plan.leave_home:
        return say("answers-drive-off", off=at(plan.drive_off))
    return say("answers-load-up", load=at(plan.leave_home), off=at(plan.drive_off))


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
    rows = {
        "answers-row-total": [total_sentence(outing.cost) for outing in outings],
        "answers-row-best-day": [wording.day(outing.day) for outing in outings],
        "answers-row-leave-home": [leaving_sentence(outing.plan) for outing in outings],
        "answers-row-home-again": [wording.clock(outing.plan.home) for outing in outings],
        "answers-row-drive": [way_known(outing.way_there.drive, units) for outing in outings],
        "answers-row-there": [wording.minutes(outing.plan.visit_minutes) for outing in outings],
        "answers-row-nap": [nap_sentence(outing) for outing in outings],
        **(
            {"answers-row-weather": [weather_there(outing.weather).text for outing in outings]}
            if any(outing.weather for outing in outings)
            else {}
        ),
        "answers-row-crowds": [crowd_sentence(outing.crowd) for outing in outings],
        "answers-row-hassle": [wording.money(outing.generalized_cost) for outing in outings],
    }
    return {say(name): cells for name, cells in rows.items()}


def way_sentence(drive: Drive, units: str) -> str:
    """How far it is and how long it takes, such as '43 mi, 50 min to 1 h 5 min'."""
    return say(
        "answers-way",
        far=wording.distance(drive.km.likely, units),
        minutes=wording.minutes_range(drive.minutes),
    )


def way_known(drive: Drive, units: str) -> str:
    """The same with how it is known, such as '43 mi, 50 min (an estimate)'."""
    return say("answers-way-known", way=way_sentence(drive, units), known=drive.known_in_words)


def cars_sentence(outing: Outing, household: Household) -> str:
    """How many cars it takes where one is not enough; empty where it is."""
    people = len(outing.party)
    cars = cars_needed(household, people)
    if cars == 1:
        return ""
    return say("answers-cars", cars=cars, people=people, seats=seats_in_a_car(household))


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
        told = "; ".join(
            say("answers-known-for", known=known, places=tuple(places)) for known, places in names.items()
        )
    credit = dict.fromkeys(drive.source.credit for drive in drives.values() if drive.source.credit)
    return say("answers-drives", drives=len(drives), known="; ".join((told, *credit)))


def total_sentence(cost: OutingCost) -> str:
    """The total with its range, and 'at least' where something is not known."""
    return range_sentence(cost.total, at_least=bool(cost.unknown))


def range_sentence(amounts: MoneyRange, *, at_least: bool) -> str:
    """An amount with its range, and 'at least' where a part of it is not known."""
    total = wording.money_range(amounts)
    return say("answers-at-least", total=total) if at_least else total


def amount_sentence(item: CostItem) -> str:
    """An item's amount with its range; what is unknown is never zero."""
    return say("answers-not-known") if item.amount is None else wording.money_range(item.amount)


def item_sentence(item: CostItem) -> str:
    """An item of the cost, such as 'Food for 7, packed: $20 ($17 to $22)'."""
    kind = kind_word(item.kind)
    label = item.label.text if item.label.text.startswith(kind) else f"{kind}, {item.label}"
    return f"{wording.capital(label)}: {amount_sentence(item)}"


KIND_CODES = {
    CostKind.ADMISSION: "answers-kind-tickets",
    CostKind.CAR: "answers-kind-car",
    CostKind.PARKING: "answers-kind-parking",
    CostKind.FOOD: "answers-kind-food",
    CostKind.EXTRAS: "answers-kind-extras",
    CostKind.RESERVE: "answers-kind-reserve",
}


def kind_word(kind: CostKind) -> str:
    """What a kind of cost is called."""
    return say(KIND_CODES[kind])


def price_not_known() -> str:
    """What stands in the place of an idea's tickets."""
    return say("answers-price-not-known")


def tickets_known(place: Place) -> bool:
    """Whether what entry costs is known; of an idea it is not, whatever was taken for it."""
    return not isinstance(place, IdeaPlace)


def at_the_door(outing: Outing) -> str:
    """What the tickets come to, or that nobody knows."""
    known = tickets_known(outing.place)
    return wording.money(outing.admission.total) if known else price_not_known()


def purchase_sentence(purchase: Purchase) -> str:
    """One line of the order, such as '2 x Adult for Ann and Bo'."""
    number, name = purchase.quantity, purchase.name
    if not purchase.covers:
        return say("answers-purchase", number=number, name=name)
    return say("answers-purchase-for", number=number, name=name, people=tuple(purchase.covers))
