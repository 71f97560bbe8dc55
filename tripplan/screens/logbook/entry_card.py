"""One outing of the logbook as a card: what was paid against the plan, how it was, and a word about it."""

from collections.abc import Collection
from datetime import date

from tripplan.documents.logbook.entry import LogbookEntry
from tripplan.documents.logbook.outdoors import Outdoors
from tripplan.documents.places.place import Place
from tripplan.language import wording
from tripplan.language.sentences import say
from tripplan.planning.crowds.risk import fullness_code
from tripplan.planning.logbook.against_plan import LEAVING, AgainstPlan
from tripplan.screens.look import cards
from tripplan.screens.look.cards import Chip
from tripplan.screens.look.drawings import kind_of
from tripplan.screens.widgets.markdown import plain
from tripplan.values.money import Money

_WEATHER = {
    Outdoors.FINE: "sun",
    Outdoors.TOO_COLD: "cold",
    Outdoors.TOO_HOT: "sun",
    Outdoors.TOO_WET: "rain",
}
_LONGEST_WORD = 160
"""So much of what was noted stands on a card [characters]."""


def entry_face(entry: LogbookEntry, place: Place | None, scale: float, today: date) -> str:
    """The inside of a card about an outing that is over.

    Args:
        entry: the outing.
        place: its card; None where there is none.
        scale: the amount that the full width of the bar stands for, as `scale_of` says.
        today: the date; days of another year are told with theirs.
    """
    day = wording.short_day(entry.day) if entry.day.year == today.year else wording.day(entry.day)
    spent, planned = entry.spent, entry.as_planned
    return cards.face(
        cards.name(
            entry.title,
            "" if spent is None else wording.money(spent) if spent.amount else wording.whole_money(spent),
            drawing="both" if place is None else kind_of(place),
        ),
        cards.small(
            day,
            "" if planned is None else planned_in_short(planned.likely_total),
        ),
        cards.chips(_chips(entry)),
        _bar(entry, scale) if spent is not None and spent.amount else "",
        cards.said(_word(entry)),
    )


def planned_in_short(likely: Money) -> str:
    """What an outing was likely to cost, such as 'planned $84'."""
    return say("afterwards-planned", planned=wording.whole_money(likely))


def scale_of(entries: Collection[LogbookEntry]) -> float:
    """The most that one of some outings cost, which fills the width of a bar [their currency]."""
    return max((float(one.spent.amount) for one in entries if one.spent is not None), default=0.0) or 1.0


def _chips(entry: LogbookEntry) -> list[Chip]:
    stay = entry.moments.stay_minutes
    weather = _WEATHER.get(entry.outdoors, "weather") if entry.outdoors else "weather"
    outdoors = "" if entry.outdoors is None else say("afterwards-outdoors", how=str(entry.outdoors))
    return [
        Chip(weather, entry.weather or outdoors),
        Chip("clock", "" if stay is None else say("afterwards-there", stay=wording.minutes(stay))),
        Chip("crowd", say(fullness_code(entry.fullness)) if entry.fullness else ""),
        Chip("money", say("afterwards-not-noted") if entry.spent is None else ""),
    ]


def _bar(entry: LogbookEntry, scale: float) -> str:
    """What the money went to."""
    items = [(one.what or str(one.kind), Money(one.amount, entry.currency)) for one in entry.paid]
    parts = [(f"{what} {wording.money(amount)}", float(amount.amount)) for what, amount in items]
    rest = entry.not_itemised
    if rest.amount:
        parts.append((say("afterwards-other", amount=rest), float(rest.amount)))
    return cards.bar(parts, scale, say("afterwards-money-went-to", what=tuple(what for what, _ in parts)))


def _word(entry: LogbookEntry) -> str:
    """What was noted about it; else the first thing that somebody learned."""
    told = (entry.notes, *(child.learned or child.did for child in entry.children))
    word = next((one for one in told if one.strip()), "")
    return word if len(word) <= _LONGEST_WORD else f"{word[:_LONGEST_WORD].rsplit(' ', 1)[0]} …"


def against_table(against: AgainstPlan) -> str:
    """An outing against its plan, as a Markdown table with a row a figure that somebody noted."""
    rows = [
        (one.what, "?" if one.planned is None else wording.money(one.planned), wording.money(one.real))
        for one in against.money
        if one.real is not None and one.what != "reserve"
    ]
    rows += [
        (one.what, "?" if one.planned is None else wording.minutes(one.planned), wording.minutes(one.real))
        for one in (*against.minutes, *against.naps)
        if one.real is not None and one.what != LEAVING
    ]
    lines = [f"| {' | '.join((plain(wording.capital(what)), *map(plain, said)))} |" for what, *said in rows]
    return "\n".join(
        [f"| | {say('afterwards-table-planned')} | {say('afterwards-table-was')} |", "|---|--:|--:|", *lines]
    )
