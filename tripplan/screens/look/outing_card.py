"""One outing as a card: what it costs, when, and in a word each what matters."""

from collections.abc import Sequence

from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.outing.outing import Outing
from tripplan.planning.outing.sentences import kind_word, naps_in_short
from tripplan.screens.look import cards
from tripplan.screens.look.cards import Chip
from tripplan.screens.look.drawings import kind_of
from tripplan.values.cost_kind import CostKind
from tripplan.values.money import Money, total


def outing_face(outing: Outing, scale: float, *, level: int = 2) -> str:
    """The inside of a card about an outing.

    Args:
        outing: what it is about.
        scale: the total that the full width of the bar stands for, as `scale_of` says [household currency].
        level: of the heading.
    """
    plan = outing.plan
    return cards.face(
        cards.name(outing.place.name, likely_total(outing), drawing=kind_of(outing.place), level=level),
        cards.small(
            say("cards-load-up", at=plan.leave_home, home=plan.home),
            _give_or_take(outing),
        ),
        cards.chips(chips_of(outing)),
        money_bar(outing, scale),
    )


def likely_total(outing: Outing) -> str:
    """The likely total in whole units, such as '$88'; '$88+' where something in it is unknown."""
    total = wording.whole_money(outing.cost.total.likely)
    return f"{total}+" if outing.cost.unknown else total


def _give_or_take(outing: Outing) -> str:
    """Such as 'usually $84 to $93' or '$84 to $93, plus parking'."""
    cost = outing.cost
    ends = wording.money(cost.total.likely) if cost.total.is_exact else wording.money_ends(cost.total)
    if cost.unknown:
        return say("cards-usually-plus", ends=ends, unknown=tuple(cost.unknown))
    return say("cards-usually", ends=ends)


def chips_of(outing: Outing) -> list[Chip]:
    """Day, drive, naps and crowd of an outing in a word or two each."""
    return [
        Chip("day", wording.short_day(outing.day)),
        Chip("drive", say("cards-drive", minutes=wording.minutes(outing.way_there.drive_minutes))),
        Chip("nap", naps_in_short(outing)),
        Chip("crowd", outing.crowd.word),
    ]


def money_bar(outing: Outing, scale: float) -> str:
    """What the likely total is made of, as a bar; the arguments are those of `outing_face`."""
    parts = [
        (f"{kind_word(kind)} {wording.whole_money(much)}", float(much.amount))
        for kind, much in _by_kind(outing)
    ]
    said = ", ".join(what for what, _ in parts)
    return cards.bar(parts, scale, say("cards-money-goes-to", parts=said))


def scale_of(outings: Sequence[Outing]) -> float:
    """The largest likely total of some outings, which fills the width of a bar [household currency]."""
    return max((float(outing.cost.total.likely.amount) for outing in outings), default=0.0) or 1.0


def _by_kind(outing: Outing) -> list[tuple[CostKind, Money]]:
    found = []
    for kind in CostKind:
        known = [item.likely for item in outing.cost.items if item.kind is kind and item.likely is not None]
        if known:
            found.append((kind, total(known, known[0].currency)))
    return found
