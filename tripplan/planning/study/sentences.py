"""Study units and programmes as plain sentences, the same on screens and command line."""

from collections.abc import Mapping, Sequence

from tripplan.documents.study.units import StudyUnit
from tripplan.documents.study.wishes import ProgrammeWishes
from tripplan.language import wording
from tripplan.language.sentences import told
from tripplan.planning.outing.sentences import range_sentence, span_sentence
from tripplan.planning.study.options import Option
from tripplan.planning.study.programme import Alternative, Programme, UnitOuting
from tripplan.planning.topic_fit import CloseSpelling, Fits, PlaceFit
from tripplan.values.money import Money


def unit_sentences(unit: StudyUnit) -> tuple[str, ...]:
    """When a unit runs, what is studied, for whom its outing is and what it may cost."""
    who = wording.listed(unit.members) if unit.members else "everybody"
    most = unit.spends_at_most
    money = "no limit of its own" if most is None else f"at most {wording.money(most)}"
    return (
        f"{span_sentence(unit.weeks)}; topics: {', '.join(unit.topics)}.",
        f"Its outing is for {who}; {money}.",
    )


def fit_sentence(fit: PlaceFit) -> str:
    """Why a place fits, such as 'Old Mill: its card names grain and bread'."""
    if fit.topics:
        own = ", and you named it" if fit.by_parent else ""
        return f"{fit.place.name}: its card names {', '.join(fit.topics)}{own}."
    return f"{fit.place.name}: you named it; its card has none of the topics."


def close_sentence(close: CloseSpelling) -> str:
    """A topic that may be meant, such as ''caves' may be what Deep Cave calls 'limestone and caves''."""
    call = "calls" if len(close.places) == 1 else "call"
    places = wording.listed([place.name for place in close.places])
    return (
        f"'{close.topic}' may be what {places} {call} '{close.on_cards}'. It does not count until you say so."
    )


def nowhere_sentences(fits: Fits) -> tuple[str, ...]:
    """Topics that no card names and none is spelled like."""
    offered = {close.topic for close in fits.close}
    return tuple(f"No place card names '{topic}'." for topic in fits.nowhere if topic not in offered)


def option_sentence(option: Option, names: Mapping[str, str]) -> str:
    """A place and day with what it costs, such as 'Thu, Feb 4, 2027, Old Mill: $92 ($81 to $110) in all'."""
    cost = range_sentence(option.cost, at_least=option.at_least)
    unknown = f" Not known: {wording.listed(told(option.unknown))}." if option.unknown else ""
    return (
        f"{wording.day(option.day)}, {names.get(option.place, option.place)}: {cost} in all, "
        f"{wording.money(option.felt)} with hassle counted.{unknown}"
    )


def standing_sentence(one: UnitOuting) -> str:
    """How firm a unit's outing is."""
    if one.planned is not None:
        outside = "" if one.option.day in one.unit.weeks else " It lies outside the unit's weeks."
        return f"It is a planned outing already; Calendar changes it or calls it off.{outside}"
    if one.settled:
        return "You fixed this; the rest is planned around it."
    return ""


def elsewhere_sentence(found: Alternative, names: Mapping[str, str]) -> str:
    """What another place would do to the whole, such as '... the term costs $12.00 more'."""
    others = wording.listed([f"'{name}'" for name in found.moves])
    moves = f", and {others} would move" if found.moves else ""
    return (
        f"{option_sentence(found.option, names)} The whole programme then costs {_more(found.more)} and "
        f"weighs {_more(found.felt_more)} with hassle counted{moves}."
    )


def limit_sentences(wishes: ProgrammeWishes, units: Sequence[StudyUnit]) -> tuple[str, ...]:
    """What a programme keeps to, in words."""
    most = wishes.spends_at_most
    high = ", counted at the high end of every range" if wishes.careful else ""
    kept = {unit.name for unit in units}
    without = [f"'{name}'" for name in wishes.without if name in kept]
    return (
        f"At most {wording.money(most)} in all{high}." if most else "No budget for the whole.",
        "Two outings may lie in one week." if wishes.several_a_week else "No two outings in one week.",
        "A place may be visited twice." if wishes.same_place_again else "No place twice.",
        "As little as can be of cost plus hassle."
        if wishes.weigh == "felt"
        else "As little money as can be; hassle does not count.",
        *((f"No outing this time for {wording.listed(without)}.",) if without else ()),
    )


def pick_sentences(wishes: ProgrammeWishes, names: Mapping[str, str]) -> tuple[str, ...]:
    """What the parent fixed and ruled out, in words.

    Args:
        wishes: what the programme keeps to.
        names: of the places, by the ids of their cards.
    """
    fixed = (
        f"'{one.unit}' is fixed"
        f"{f' to {names.get(one.place, one.place)}' if one.place else ''}"
        f"{f' on {wording.day(one.day)}' if one.day else ''}."
        for one in wishes.settled
    )
    ruled_out = (
        f"'{one.unit}' does not go to {names.get(one.place, one.place)}"
        f"{f' on {wording.day(one.day)}' if one.day else ''}."
        for one in wishes.ruled_out
    )
    return (*fixed, *ruled_out)


def programme_sentences(programme: Programme, wishes: ProgrammeWishes) -> tuple[str, ...]:
    """What a programme comes to, and how far that may be trusted."""
    most = wishes.spends_at_most
    lines = [
        f"{wording.counted(len(programme.outings), 'outing')}: "
        f"{range_sentence(programme.total, at_least=programme.unknown)} in all, "
        f"{wording.money(programme.felt)} with hassle counted."
    ]
    if most is not None:
        lines.append(_left_sentence(most, programme))
    if programme.unknown:
        lines.append("Some costs are not known, so the total is a lower bound and more may be spent.")
    return tuple(lines)


def _left_sentence(most: Money, programme: Programme) -> str:
    left = most - programme.total.likely  # never below zero: a programme keeps to its budget
    sentence = f"{wording.money(left)} of the {wording.money(most)} is left by the likely figures"
    if programme.total.high > most:
        return f"{sentence}; at the high end of every range the budget would not be enough."
    return f"{sentence}."


def _more(amount: Money) -> str:
    if not amount.amount:
        return "the same"
    return f"{wording.money(_size(amount))} {'less' if amount.amount < 0 else 'more'}"


def _size(amount: Money) -> Money:
    return Money(abs(amount.amount), amount.currency)
